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


@pytest.mark.parametrize(
    ("gvwr", "limit"),
    [(5000, 75), (7500, 100), (3000, 45), (6666, 99.99), (26000, 100)],
)
def test_additions_agree_with_the_federal_rule(gvwr: float, limit: float) -> None:
    """The lesser of 1.5 % of the GVWR and 100 lb; they meet at 6,667 lb."""
    # 72 FR 68442 (4 December 2007): 5,000 lb gives 75 lb, 7,500 lb gives 100 lb.
    found = weights.dealer_allowance(quantity(gvwr, "pound"))

    assert number_in(found, "pound") == pytest.approx(limit)


def test_a_metric_rating_has_the_same_allowance() -> None:
    """100 lb is 45.4 kg, as the rule prints it for metric labels."""
    # 72 FR 68442 prints 45.4 kg beside 100 lb.
    found = weights.dealer_allowance(quantity(3500, "kilogram"))

    assert number_in(found, "kilogram") == pytest.approx(45.4, abs=0.05)


@pytest.mark.parametrize(
    ("ahead", "change"), [(8, 50), (4, 25), (-4, -25), (16, 100), (0, 0)]
)
def test_cargo_moved_agrees_with_the_lever(ahead: float, change: float) -> None:
    """100 lb from 4 ft behind the axles to 4 ft ahead of them, 16 ft to the ball."""
    # Statics, worked by hand: 100 lb x 8 ft / 16 ft = 50 lb; over the ball, all of it.
    found = weights.hitch_change(
        quantity(100, "pound"), quantity(ahead, "foot"), quantity(16, "foot")
    )

    assert number_in(found, "pound") == pytest.approx(change)


def test_wheels_carry_what_the_hitch_does_not() -> None:
    """6,000 lb with 12 % on the hitch: 5,280 lb on the axles."""
    # Worked by hand: 6,000 - 720.
    found = weights.on_axles(quantity(6000, "pound"), quantity(720, "pound"))

    assert number_in(found, "pound") == pytest.approx(5280)


@pytest.mark.parametrize(
    ("load", "gawr", "percent"),
    [
        # ST225/75R15 at 65 psi: 2,540 lb (public table of special-trailer tires).
        (2540, 4400, 15.5),
        # ST205/75R14 at 50 psi: 1,760 lb on a 3,500 lb axle, hardly any reserve.
        (1760, 3500, 0.6),
        # ST175/80R13 at 35 psi: 1,100 lb on a 2,200 lb axle, none.
        (1100, 2200, 0.0),
        # The same tire on a 3,500 lb axle is short by more than a third.
        (1100, 3500, -37.1),
    ],
)
def test_reserve_of_table_tires(load: float, gawr: float, percent: float) -> None:
    """Two tires of the public load table against an axle's rating, by hand."""
    found = weights.reserve(quantity(2 * load, "pound"), quantity(gawr, "pound"))

    assert number_in(found, "percent") == pytest.approx(percent, abs=0.05)


def test_uk_noseweight_is_a_share_too() -> None:
    """5 to 7 % of 1,500 kg are 75 to 105 kg."""
    # Advice to caravan owners in the UK (secondary).
    for kilograms, percent in ((75, 5), (105, 7)):
        share = weights.share(
            quantity(kilograms, "kilogram"), quantity(1500, "kilogram")
        )
        assert number_in(share, "percent") == pytest.approx(percent)


@given(st.floats(10, 500), st.floats(0.5, 20), st.floats(8, 30))
def test_there_and_back_leaves_the_hitch_as_it_was(
    moved: float, way: float, to_axles: float
) -> None:
    """What goes forward and back again changes nothing; farther changes more."""
    cargo, lever = quantity(moved, "pound"), quantity(to_axles, "foot")
    forward = weights.hitch_change(cargo, quantity(way, "foot"), lever)
    back = weights.hitch_change(cargo, quantity(-way, "foot"), lever)

    assert number_in(forward + back, "pound") == pytest.approx(0, abs=1e-9)
    assert weights.hitch_change(cargo, quantity(way * 2, "foot"), lever) > forward


@given(st.floats(500, 40_000))
def test_a_heavier_rating_never_allows_less(gvwr: float) -> None:
    """And never more than 100 lb."""
    here = weights.dealer_allowance(quantity(gvwr, "pound"))
    there = weights.dealer_allowance(quantity(gvwr + 100, "pound"))

    assert here <= there <= weights.ADDED_MOST
