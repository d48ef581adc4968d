"""Waste tanks, held against a public test of flow."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import waste
from hatchleaf.units import number_in, quantity


def test_time_agrees_with_the_bucket_test() -> None:
    """Half a gallon at 2.0 gpm takes 15 seconds."""
    # EPA WaterSense (NEPIS P100WT70): at most 0.5 gal in 15 s is 2.0 gpm.
    time = waste.time_to_overflow(
        quantity(0.5, "gallon"), quantity(2, "gallon / minute")
    )

    assert number_in(time, "second") == pytest.approx(15)


@pytest.mark.parametrize(("gallons", "water"), [(20, 2), (40, 2), (60, 3), (100, 5)])
def test_starting_water_follows_the_rule(gallons: float, water: float) -> None:
    """5 % of the tank, at least 2 gal."""
    # Common practice, no source; worked by hand.
    assert number_in(
        waste.precharge(quantity(gallons, "gallon")), "gallon"
    ) == pytest.approx(water)


def test_a_length_is_refused() -> None:
    """A tank's length says nothing of its volume."""
    with pytest.raises(pint.DimensionalityError):
        waste.precharge(quantity(40, "inch"))


@given(st.floats(1, 100), st.floats(0.2, 10), st.floats(1.01, 3))
def test_a_stronger_rinse_overflows_sooner(
    gallons: float, gpm: float, by: float
) -> None:
    """The highest flow gives the soonest time, a bigger tank a later one."""
    tank, flow = quantity(gallons, "gallon"), quantity(gpm, "gallon / minute")
    base = waste.time_to_overflow(tank, flow)

    assert waste.time_to_overflow(tank, flow * by) < base
    assert waste.time_to_overflow(tank * by, flow) > base
