"""Weights, held against sums by hand on a federal label."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import water, weights
from hatchleaf.units import number_in, quantity


def test_cargo_left_agrees_with_the_label_s_own_sum() -> None:
    """1,600 lb of cargo and 40 gal at the label's 8.3 lb leave 1,268 lb."""
    # 72 FR 68442: water counts as cargo at 8.3 lb/gal; 1,600 - 332 by hand.
    full = water.weight(quantity(40, "gallon"), density=water.LABEL_DENSITY)

    left = weights.cargo_left(quantity(1600, "pound"), [full])

    assert number_in(left, "pound") == pytest.approx(1268, abs=0.05)


def test_empty_weight_and_cargo_make_the_rating() -> None:
    """GVWR 7,000 lb with 1,600 lb of cargo: 5,400 lb empty."""
    # FMVSS 110 and 120: cargo capacity is GVWR less the unloaded weight.
    empty = weights.empty(quantity(7000, "pound"), quantity(1600, "pound"))

    assert number_in(empty, "pound") == pytest.approx(5400)


@pytest.mark.parametrize(("hitch", "percent"), [(600, 10), (900, 15)])
def test_share_agrees_with_the_towing_range(hitch: float, percent: float) -> None:
    """10 to 15 % of 6,000 lb are 600 to 900 lb."""
    # Towing guidance to the public (secondary): 10 to 15 % on the hitch.
    share = weights.share(quantity(hitch, "pound"), quantity(6000, "pound"))

    assert number_in(share, "percent") == pytest.approx(percent)


def test_an_overloaded_unit_is_told_so() -> None:
    """Below zero stays below zero: no clipping hides it."""
    left = weights.cargo_left(quantity(300, "pound"), [quantity(340, "pound")])

    assert number_in(left, "pound") == pytest.approx(-40)


def test_kilograms_and_pounds_may_meet() -> None:
    """A metric scale slip and a US label are one sum."""
    left = weights.cargo_left(quantity(500, "kilogram"), [quantity(100, "pound")])

    assert number_in(left, "pound") == pytest.approx(500 / 0.45359237 - 100)


def test_water_by_volume_is_refused() -> None:
    """Gallons are no weight until they are weighed."""
    with pytest.raises(pint.DimensionalityError):
        weights.cargo_left(quantity(1600, "pound"), [quantity(40, "gallon")])


@given(st.floats(100, 5_000), st.lists(st.floats(0.1, 500), max_size=6))
def test_nothing_added_makes_room(cargo: float, added: list[float]) -> None:
    """Every addition takes its weight off, all of it."""
    left = weights.cargo_left(
        quantity(cargo, "pound"), [quantity(one, "pound") for one in added]
    )

    assert number_in(left, "pound") == pytest.approx(cargo - sum(added), abs=1e-6)
