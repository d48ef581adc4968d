"""Height, held against the definition of the inch and a height of the law."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import height
from hatchleaf.units import quantity

# International yard and pound agreement of 1959: an inch is 25.4 mm.
INCH = Fraction(254, 10)


@pytest.mark.parametrize(
    ("millimeters", "feet", "inches"),
    [
        # 13 ft 6 in is 4,114.8 mm: exactly that is not one inch more.
        (4114.8, 13, 6),
        (4114.9, 13, 7),
        (3048, 10, 0),
        (3657.5, 12, 0),
    ],
)
def test_feet_and_inches(millimeters: float, feet: int, inches: int) -> None:
    """A unit that is a hair above a whole inch is told as the next."""
    size = quantity(millimeters, "millimeter")

    assert height.whole_inches(size) == (feet, inches)


@given(st.integers(500, 5000))
def test_never_below_and_never_an_inch_above(millimeters: int) -> None:
    """By whole numbers alone, as the definition has it."""
    size = quantity(millimeters, "millimeter")
    feet, inches = height.whole_inches(size)
    told = (feet * 12 + inches) * INCH

    assert 0 <= told - millimeters < INCH
    assert 0 <= inches < 12
    assert 0 <= height.whole_centimeters(size) * 10 - millimeters < 10
