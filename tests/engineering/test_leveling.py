"""Leveling, held against a table of sines and against the small-angle rule."""

from __future__ import annotations

import math

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import leveling
from hatchleaf.units import number_in, quantity


def _inches(track: float, slope: float) -> float:
    return number_in(
        leveling.block_height(quantity(track, "inch"), slope=slope), "inch"
    )


@pytest.mark.parametrize(
    ("slope", "sine"),
    # A four-place table of sines, as printed in any handbook.
    [(1, 0.0175), (2, 0.0349), (3, 0.0523), (4, 0.0698), (5, 0.0872), (6, 0.1045)],
)
def test_block_agrees_with_a_table_of_sines(slope: float, sine: float) -> None:
    """The track of 78 inches times the printed sine."""
    assert _inches(78, slope) == pytest.approx(78 * sine, abs=78 * 0.00005)


@pytest.mark.parametrize(("slope", "tangent"), [(1, 1.36), (2, 2.72), (3, 4.09)])
def test_a_level_s_tangent_is_as_good(slope: float, tangent: float) -> None:
    """By tangent instead of sine the block differs by less than a hundredth."""
    # 78 tan(1, 2, 3 degrees), worked by hand: 1.36, 2.72, 4.09 inches.
    assert _inches(78, slope) == pytest.approx(tangent, abs=0.01)


@pytest.mark.parametrize(("slope", "inches"), [(1, 0.42), (2, 0.84), (3, 1.26)])
def test_a_lean_on_a_two_foot_level(slope: float, inches: float) -> None:
    """Three degrees lift one end of a two-foot level by an inch and a quarter."""
    # Worked by hand: 24 sin(1, 2, 3 degrees).
    found = leveling.lean(quantity(2, "foot"), slope=slope)

    assert number_in(found, "inch") == pytest.approx(inches, abs=0.005)


def test_level_ground_needs_no_block() -> None:
    """And a metric track gives inches all the same."""
    assert _inches(78, 0) == 0
    found = leveling.block_height(quantity(2, "meter"), slope=30)
    assert number_in(found, "meter") == pytest.approx(1)


@pytest.mark.parametrize("slope", [-1, 91])
def test_no_such_slope(slope: float) -> None:
    """A slip of sign is told."""
    with pytest.raises(ValueError, match="no ground slopes"):
        _inches(78, slope)


def test_a_weight_is_no_track() -> None:
    """Dimensions are kept."""
    with pytest.raises(pint.DimensionalityError):
        leveling.block_height(quantity(78, "pound"), slope=1)


@given(st.floats(40, 110), st.floats(0, 20), st.floats(0.1, 5))
def test_steeper_or_wider_needs_more(track: float, slope: float, more: float) -> None:
    """And the block stands in the same relation to any track."""
    assert _inches(track, slope + more) > _inches(track, slope)
    assert _inches(track + 1, slope + more) > _inches(track, slope + more)
    assert _inches(track, slope) / track == pytest.approx(
        math.sin(math.radians(slope)), abs=1e-12
    )
