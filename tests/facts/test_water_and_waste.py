"""Water and waste facts of the samples, and of units changed in one thing."""

from __future__ import annotations

import pytest

from facts.samples import UNKNOWN, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.spec.model.water import FreshTank


@pytest.mark.parametrize(
    ("sample", "name", "shown"),
    [
        # By hand: 46 x 8.34 = 383.6; 22 x 8.34 = 183.5; 11 x 8.34 = 91.7.
        ("heron-a", "water.weight", "390 lb"),
        ("heron-b", "water.weight", "184 lb"),
        ("heron-c", "water.weight", "92 lb"),
        # 46 / 5 = 9.2, / 10 = 4.6, / 20 = 2.3, / 30 = 1.5.
        ("heron-a", "water.days[1 person]", "9 days"),
        ("heron-a", "water.days[2 people]", "4 days"),
        ("heron-a", "water.days[4 people]", "2 days"),
        ("heron-a", "water.days[6 people]", "1 day"),
        # 11 / 20 = 0.55: less than a day is said, not rounded to none.
        ("heron-c", "water.days[4 people]", "0.5 days"),
        # 24 ft of cold and hot pipe, 0.475 in wide, hold 0.44 gal.
        # 50 ppm x 52.44 gal x 128 / (percent x 10,000): 6.39, 5.59, 4.48, 4.07.
        ("heron-a", "water.bleach_volume", "53 gal"),
        ("heron-a", "water.bleach[5.25 %]", "6.4 fl oz"),
        ("heron-a", "water.bleach[6 %]", "5.6 fl oz"),
        ("heron-a", "water.bleach[7.5 %]", "4.5 fl oz"),
        ("heron-a", "water.bleach[8.25 %]", "4.1 fl oz"),
        # 33 x 8.34 = 275.2; 41 x 8.34 = 341.9; 9 x 8.34 = 75.06; 27 x 8.34 = 225.2.
        ("heron-a", "waste.weight[black]", "280 lb"),
        ("heron-a", "waste.weight[gray]", "350 lb"),
        ("heron-b", "waste.weight[combined]", "230 lb"),
        ("heron-c", "waste.weight[gray]", "76 lb"),
        ("heron-a", "waste.precharge[black]", "2 gal"),
        # 33 / 3.3 = 10.
        ("heron-a", "waste.rinse_minutes", "9 minutes"),
    ],
)
def test_numbers_of_the_samples(sample: str, name: str, shown: str) -> None:
    """Worked by hand beside each row."""
    assert facts(sample)[name].shown() == shown


def test_the_dose_says_that_the_heater_is_in_it() -> None:
    """And gives the dose without it, for a heater that stays bypassed."""
    basis = facts("heron-a")["water.bleach[8.25 %]"].basis

    # 50 ppm x 46.44 gal x 128 / 82,500 = 3.60 fl oz = 106.6 ml, rounded up.
    assert "46 gal in the tank + 6 gal in the water heater + 0.5 gal in the" in basis
    assert basis.endswith("With the heater bypassed, leave it out: 3.7 fl oz (110 ml).")


@pytest.mark.parametrize("sample", ["heron-b", "heron-c"])
def test_no_heater_tank_and_no_bypass_are_never_mentioned(sample: str) -> None:
    """An on-demand heater holds nothing to treat; a teardrop has no heater."""
    for fact in (
        *facts(sample).of("water.bleach"),
        *facts(sample).of("water.capacity"),
    ):
        assert "heater" not in fact.basis
        assert "bypass" not in fact.basis


def test_a_tank_heater_without_bypass_is_always_treated() -> None:
    """There is no way round it, so none is spoken of."""
    some = with_("heron-a", hot_water__bypass="none")

    assert some["water.bleach_volume"].shown() == "53 gal"
    assert "bypass" not in some["water.bleach[6 %]"].basis


def test_an_unknown_heater_stops_the_dose_alone() -> None:
    """A dose for part of the water would leave it unclean."""
    some = with_("heron-a", hot_water__volume=UNKNOWN)

    assert some.missing["water.bleach"] == ("hot_water.volume",)
    assert not some.of("water.bleach")
    assert some["water.weight"].shown() == "390 lb"
    assert with_("heron-a", hot_water="unknown").missing["water.bleach"] == (
        "hot_water",
    )


def test_an_unknown_tank_stops_all_that_rests_on_it() -> None:
    """Among it the cargo that is left."""
    some = with_("heron-a", water__tanks__fresh__volume=UNKNOWN)

    for name in ("water.capacity", "water.days", "water.bleach", "weights.cargo_left"):
        assert some.missing[name] == ("water.tanks[fresh].volume",)
        assert not some.of(name)


def test_two_tanks_add_up() -> None:
    """The weight and the days are of both."""
    tanks = unit("heron-a").water.tanks
    assert not isinstance(tanks, str)
    second = FreshTank(
        id="rear",
        volume=reading("14 gal", units.VOLUME),
        drain="valve",
        at="fresh-drain",
    )

    some = with_("heron-a", water__tanks=(*tanks, second))

    assert some["water.capacity"].shown() == "60 gal"
    assert some["water.days[6 people]"].shown() == "2 days"
    assert some["water.weight"].basis == (
        "46 gal + 14 gal in all fresh tanks at 8.34 lb per gal."
    )


def test_rinse_minutes_are_never_time_allowed() -> None:
    """Rounded down, from the highest flow, sooner when the tank is not empty."""
    # 33 gal / 3.7 gpm = 8.92 minutes.
    some = with_("heron-a", waste__rinse__flow=reading("3.7 gpm", units.FLOW))
    fact = some["waste.rinse_minutes"]

    assert fact.shown() == "8 minutes"
    assert "highest flow" in fact.basis
    assert "never a time allowed; sooner if the tank is not empty" in fact.basis


def test_rinse_minutes_need_the_flow() -> None:
    """No guess stands in for it."""
    some = with_("heron-a", waste__rinse__flow=UNKNOWN)

    assert some.missing["waste.rinse_minutes"] == ("waste.rinse.flow",)
    assert "waste.rinse_minutes" not in some


def test_only_tanks_that_hold_solids_start_with_water() -> None:
    """A gray tank needs none; a combined one does."""
    assert [one.item for one in facts("heron-a").of("waste.precharge")] == ["black"]
    assert [one.item for one in facts("heron-b").of("waste.precharge")] == ["combined"]
    assert not facts("heron-c").of("waste.precharge")


def test_a_big_black_tank_starts_with_a_twentieth() -> None:
    """5 % of 61 gal is 3.05 gal, shown as 3.1."""
    some = with_("heron-a", waste__tanks__black__volume=reading("61 gal", units.VOLUME))

    assert some["waste.precharge[black]"].shown() == "3.1 gal"


def test_two_tanks_alike_are_told_apart() -> None:
    """Of two lines for a gray tank nobody knows which valve is meant."""
    found = facts("heron-d")
    labels = {fact.label for fact in found.of("waste.capacity")}
    assert labels == {"black tank", "gray tank", "galley gray tank"}
    one_of_each = facts("heron-a").of("waste.capacity")
    assert {fact.label for fact in one_of_each} == {"black tank", "gray tank"}
