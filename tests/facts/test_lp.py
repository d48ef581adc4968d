"""LP facts of the samples, and what happens when something is not known."""

from __future__ import annotations

import pytest

from facts.samples import UNKNOWN, facts, reading, with_
from hatchleaf import units
from hatchleaf.facts import names
from hatchleaf.spec.model.ac import Generator
from hatchleaf.spec.model.gas import FixedTank


@pytest.mark.parametrize(
    ("unit", "name", "shown"),
    [
        # By hand: 2 x 30 lb x 21,548 = 1,292,880; 20 x 21,548 = 430,960.
        ("heron-a", "lp.stored", "60 lb"),
        ("heron-a", "lp.energy", "1,290,000 BTU"),
        ("heron-a", "lp.cylinder_energy[left]", "646,000 BTU"),
        ("heron-b", "lp.energy", "430,000 BTU"),
        # 24,500 + 11,800 + 21,300 + 1,450 = 59,050.
        ("heron-a", "lp.load", "59,100 BTU/h"),
        # 1,292,880 / 24,500 = 52.8; / 11,800 = 109.6; / 21,300 = 60.7; / 1,450 = 891.
        ("heron-a", "lp.hours[furnace]", "52 hours"),
        ("heron-a", "lp.hours[water-heater]", "100 hours"),
        ("heron-a", "lp.hours[cooktop]", "60 hours"),
        ("heron-a", "lp.hours[fridge]", "890 hours"),
        # 24,500 x 3.5 / 21,548 = 3.979; 60 / 3.979 = 15.08.
        ("heron-a", "lp.furnace_night", "4 lb"),
        ("heron-a", "lp.furnace_nights", "15 nights"),
        # 15,700 x 3.5 / 21,548 = 2.550; 20 / 2.550 = 7.84.
        ("heron-b", "lp.furnace_night", "2.6 lb"),
        ("heron-b", "lp.furnace_nights", "7 nights"),
    ],
)
def test_numbers_of_the_samples(unit: str, name: str, shown: str) -> None:
    """Worked by hand beside each row; time and stock down, loads up."""
    assert facts(unit)[name].shown() == shown


def test_the_basis_is_one_an_owner_can_follow() -> None:
    """It counts the cylinders and names the heat of a pound."""
    assert (
        facts("heron-a")["lp.energy"].basis
        == "Two 30 lb cylinders at 21,548 BTU per lb."
    )
    assert (
        facts("heron-b")["lp.hours[furnace]"].basis
        == "One 20 lb cylinder at 21,548 BTU per lb, for the furnace alone at "
        "15,700 BTU/h, lit all the time."
    )


def test_a_night_states_its_hours_and_its_share() -> None:
    """The two guesses behind the number stand beside it."""
    for name in ("lp.furnace_night", "lp.furnace_nights"):
        basis = facts("heron-a")[name].basis
        assert "10 hours with the burner lit 35 % of the time" in basis


def test_a_unit_without_gas_has_no_gas_facts() -> None:
    """Nothing about LP, and nothing missing either."""
    electric = facts("heron-c")

    assert not [name for name in electric if name.startswith("lp.")]
    assert not [name for name in electric.missing if name.startswith("lp.")]


def test_only_fitted_appliances_have_hours() -> None:
    """The molded trailer's fridge runs on 12 V: gas says nothing of it."""
    items = {fact.item for fact in facts("heron-b").of("lp.hours")}

    assert items == {"furnace", "water-heater", "cooktop"}


def test_one_unknown_input_stops_what_rests_on_it_alone() -> None:
    """The furnace's plate could not be read; the rest stays."""
    some = with_("heron-a", climate__furnace__lp_input=UNKNOWN)
    path = ("climate.furnace.lp_input",)

    stopped = ("lp.load", "lp.hours[furnace]", "lp.furnace_night", "lp.furnace_nights")
    assert {name: some.missing[name] for name in stopped} == dict.fromkeys(
        stopped, path
    )
    assert not [name for name in stopped if name in some]
    assert some["lp.hours[cooktop]"].shown() == "60 hours"


def test_an_unknown_cylinder_stops_the_stock_but_not_the_other_cylinder() -> None:
    """What one cylinder holds says nothing of both."""
    some = with_("heron-a", lp__supply__cylinders__left__holds=UNKNOWN)

    assert "lp.cylinder_energy[right]" in some
    for name in ("lp.stored", "lp.energy", "lp.hours[furnace]", "lp.furnace_nights"):
        assert name not in some
        assert some.missing[name] == ("lp.supply.cylinders[left].holds",)
    assert some["lp.furnace_night"].shown() == "4 lb"


def test_an_unknown_supply_is_named_by_every_fact_of_the_gas() -> None:
    """Nobody knows what is fitted: the part itself is the missing field."""
    some = with_("heron-a", lp__supply="unknown")

    assert some.missing["lp.energy"] == ("lp.supply",)
    assert some.missing_for("lp.hours") == ("lp.supply",)
    assert some["lp.load"].shown() == "59,100 BTU/h"


def test_an_unknown_appliance_stops_the_load() -> None:
    """A sum without one of its parts would be too low."""
    some = with_("heron-a", kitchen__cooktop="unknown")

    assert some.missing["lp.load"] == ("kitchen.cooktop",)
    assert some.missing["lp.hours[cooktop]"] == ("kitchen.cooktop",)


def test_a_fixed_tank_is_filled_to_four_fifths() -> None:
    """Its plate states water volume, of which 80 % may be liquid."""
    tank = FixedTank(
        kind="tank",
        at="coupler",
        volume=reading("17.5 gal", units.VOLUME),
        gauge_at="coupler",
        filler_at="coupler",
        switch_at="none",
    )

    some = with_("heron-a", lp__supply=tank)

    # A club magazine's 14 gal at 91,502 BTU: 1,281,028 (secondary); ours goes by
    # weight, 1.1 % below: 17.5 x 0.8 x 4.2 x 21,548 = 1,267,022.
    assert some["lp.energy"].shown() == "1,200,000 BTU"
    exact = some["lp.energy"].value
    assert not isinstance(exact, str | bool)
    assert units.number_in(exact, "Btu") == pytest.approx(1_281_028, rel=0.012)
    assert not some.of("lp.cylinder_energy")


def test_a_gas_generator_is_said_to_be_left_out() -> None:
    """Its plate does not say what it burns; silence would make the sum look whole."""
    generator = Generator(
        kind="lp",
        at="coupler",
        switch_at="coupler",
        oil_hours=reading("100 h", units.DURATION),
        watts=reading("3500 W", units.POWER),
    )

    some = with_("heron-a", ac__generator=generator)

    assert some["lp.load"].basis.endswith("all burning at once, without the generator.")


def test_unlike_cylinders_are_told_apart() -> None:
    """A 30 and a 20 lb cylinder side by side."""
    some = with_(
        "heron-a", lp__supply__cylinders__right__holds=reading("20 lb", units.MASS)
    )

    assert some["lp.stored"].shown() == "50 lb"
    assert some["lp.energy"].basis.startswith(
        "One 30 lb cylinder and one 20 lb cylinder at"
    )


def test_every_name_is_known() -> None:
    """A block can only name what is written down."""
    for unit in ("heron-a", "heron-b", "heron-c"):
        assert {fact.base for fact in facts(unit).values()} <= names.KNOWN.keys()


def test_a_burner_outside_counts_too() -> None:
    """Furnace 40,000, heater 12,000, cooktop 22,500, oven 7,100, outside 14,000."""
    whole = facts("heron-d")
    other = with_("heron-d", kitchen__outside__lp_input=UNKNOWN)

    assert whole["lp.load"].shown() == "95,600 BTU/h"
    assert other.missing["lp.load"] == ("kitchen.outside.lp_input",)
    assert "lp.hours[outside]" in whole
    assert "lp.day[outside]" not in whole
