"""Facts of gas, hot water, water, waste, furnace and food in use."""

from __future__ import annotations

import datetime as dt

import pytest

from facts.samples import UNKNOWN, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.facts.model import Facts
from hatchleaf.spec.model.ac import Generator
from hatchleaf.spec.model.gas import FixedTank
from hatchleaf.spec.model.living import HouseholdFridge
from hatchleaf.spec.model.waste import SewerOutlet
from hatchleaf.spec.model.water import CombiBoiler, ElectricHeater

NEW = [
    "lp.regulator_use",
    "lp.cylinder_weight",
    "lp.requalify",
    "lp.hot_water",
    "lp.day",
    "lp.mix",
    "lp.days",
    "lp.furnace_nights_by_duty",
    "lp.furnace_nights_by_cold",
    "furnace.gas_by_cold",
    "furnace.charge_night",
    "furnace.charge_by_cold",
    "hot_water.reheat",
    "hot_water.recovery",
    "hot_water.mixed",
    "hot_water.shower",
    "hot_water.rise",
    "hot_water.scald",
    "water.fill_minutes",
    "water.pump_minutes",
    "water.push",
    "water.antifreeze",
    "waste.days",
    "waste.drain_seconds",
    "waste.hose_fall",
    "waste.rinse_fill",
    "waste.rinse_fills",
    "food.holds",
    "food.warm_limit",
]
EXACT = [
    "lp.regulator_use",
    "lp.requalify",
    "hot_water.scald",
    "water.pump_minutes",
    "water.push",
    "waste.hose_fall",
    "food.holds",
    "food.warm_limit",
]


@pytest.mark.parametrize(
    ("sample", "name", "shown"),
    [
        # By hand: 59,050 / 150,000 = 39.4 %; 69,800 / 125,000 = 55.8 %.
        ("heron-a", "lp.regulator_use", "40 %"),
        ("heron-b", "lp.regulator_use", "56 %"),
        # 30 + 27; 20 + 19.
        ("heron-a", "lp.cylinder_weight[left]", "57 lb"),
        ("heron-b", "lp.cylinder_weight[tongue]", "39 lb"),
        # August 2026 + 12 years.
        ("heron-a", "lp.requalify[left]", "August 2038"),
        ("heron-a", "lp.requalify[right]", "September 2038"),
        # 30 x 21,548 x 0.75 / (8.34 x 60) = 968.8; 20 x 21,548 x 0.82 / 500.4 = 706.2.
        ("heron-a", "lp.hot_water[left]", "960 gal"),
        ("heron-b", "lp.hot_water[tongue]", "700 gal"),
        # 24,500 x 3.5 = 85,750; 11,800; 21,300 / 3 x 0.75 = 5,325; 1,450 x 12 = 17,400;
        # in all 120,275 BTU = 5.58 lb; without the furnace 34,525 = 1.602 lb.
        ("heron-a", "lp.day[furnace]", "4 lb a day"),
        ("heron-a", "lp.day[water-heater]", "0.55 lb a day"),
        ("heron-a", "lp.day[cooktop]", "0.25 lb a day"),
        ("heron-a", "lp.day[fridge]", "0.81 lb a day"),
        ("heron-a", "lp.mix[cold days]", "5.6 lb a day"),
        ("heron-a", "lp.mix[warm days]", "1.7 lb a day"),
        # 60 / 5.58 = 10.7; 60 / 1.602 = 37.4.
        ("heron-a", "lp.days[cold days]", "10 days"),
        ("heron-a", "lp.days[warm days]", "37 days"),
        # 1,292,880 / (24,500 x 10) = 5.277 nights always lit.
        ("heron-a", "lp.furnace_nights_by_duty[100 %]", "5 nights"),
        ("heron-a", "lp.furnace_nights_by_duty[25 %]", "21 nights"),
        # 0.35 x 35 / 33 = 0.3712 at 30 degF: 14.2 nights; 0.35 x 65 / 33 at 0: 7.65.
        ("heron-a", "lp.furnace_nights_by_cold[30 °F]", "14 nights"),
        ("heron-a", "lp.furnace_nights_by_cold[0 °F]", "7 nights"),
        # 11.37 lb x 0.3712 = 4.22 lb; 68 Ah x 0.3712 = 25.2 Ah.
        ("heron-a", "furnace.gas_by_cold[30 °F]", "4.3 lb"),
        ("heron-a", "furnace.charge_by_cold[30 °F]", "26 Ah"),
        # 6.8 x 10 x 0.35 = 23.8.
        ("heron-a", "furnace.charge_night", "24 Ah"),
        # 3,002.4 / (11,800 x 0.75) = 20.4 min; / (1,420 x 3.412) = 37.2 min.
        ("heron-a", "hot_water.reheat[gas]", "21 minutes"),
        ("heron-a", "hot_water.reheat[electric]", "38 minutes"),
        ("heron-a", "hot_water.reheat[gas and electric]", "14 minutes"),
        ("heron-a", "hot_water.recovery[gas]", "17 gal an hour"),
        # 4.2 gal / 0.75 = 5.6 gal; / 2 = 2.8 min.
        ("heron-a", "hot_water.mixed", "5.6 gal"),
        ("heron-a", "hot_water.shower", "2 minutes"),
        # 41,500 x 0.82 / 500.4 = 68.0; / 1.5 = 45.3.
        ("heron-b", "hot_water.rise[1 gal a minute]", "68 °F"),
        ("heron-b", "hot_water.rise[1.5 gal a minute]", "45 °F"),
        ("heron-b", "hot_water.scald[120 °F]", "5 minutes"),
        ("heron-a", "hot_water.scald[150 °F]", "2 seconds"),
        # 46 / 3 = 15.3; 46 / 2.9 = 15.9; 11 / 1.3 = 8.5.
        ("heron-a", "water.fill_minutes", "15 minutes"),
        ("heron-a", "water.pump_minutes", "15 minutes"),
        ("heron-c", "water.pump_minutes", "8 minutes"),
        # 60 x 144 = 8,640.
        ("heron-a", "water.push", "8,700 lb of force"),
        ("heron-a", "water.antifreeze[at most]", "3 gal"),
        # (33 - 2) / 4 = 7.75; 41 / (4 x 4) = 2.6; (27 - 2) / (5 x 2) = 2.5; 9 / 8 = 1.1.
        ("heron-a", "waste.days[black, 4 people]", "7 days"),
        ("heron-a", "waste.days[gray, 4 people]", "2 days"),
        ("heron-b", "waste.days[combined, 2 people]", "2 days"),
        ("heron-c", "waste.days[gray, 2 people]", "1 day"),
        # 40 gal by 3 in at 0.25 m take 48.4 s: x 33 / 40 x sqrt(0.25 / 0.254) = 39.6 s.
        ("heron-a", "waste.drain_seconds[black]", "40 seconds"),
        ("heron-c", "waste.drain_seconds[gray]", "25 seconds"),
        ("heron-a", "waste.hose_fall[15 ft]", "3.8 in"),
        # A third of 27 gal thins 1 gal to a tenth each time.
        ("heron-b", "waste.rinse_fill[combined]", "9 gal"),
        ("heron-b", "waste.rinse_fills[combined]", "2 fills"),
        ("heron-a", "food.holds[fridge]", "4 hours"),
        ("heron-c", "food.warm_limit", "2 hours"),
    ],
)
def test_numbers_of_the_samples(sample: str, name: str, shown: str) -> None:
    """Worked by hand beside each row; time and stock down, loads and waits up."""
    assert facts(sample)[name].shown() == shown


@pytest.mark.parametrize("base", NEW)
def test_what_is_typical_says_so(base: str) -> None:
    """Only what rests on the unit or on a published figure alone does not."""
    found = [one for name in ("heron-a", "heron-b") for one in facts(name).of(base)]

    assert found, base
    assert {one.typical for one in found} == {base not in EXACT}


def test_a_unit_without_gas_hears_nothing_of_it() -> None:
    """Nor of a furnace or hot water that are not fitted."""
    electric = facts("heron-c")

    for system in ("lp.", "furnace.", "hot_water.", "water.push"):
        assert not [name for name in electric if name.startswith(system)]
        assert not [name for name in electric.missing if name.startswith(system)]


def test_a_rinse_inlet_stands_in_for_rinse_fills() -> None:
    """It rinses with the valve open; nobody fills a tank behind a shut valve."""
    assert not facts("heron-a").of("waste.rinse_fills")
    some = with_("heron-a", waste__rinse="none")
    assert [one.item for one in some.of("waste.rinse_fills")] == ["black"]


@pytest.mark.parametrize(
    ("path", "value", "names"),
    [
        ("lp.regulator.capacity", UNKNOWN, ["lp.regulator_use"]),
        ("lp.regulator", "unknown", ["lp.regulator_use"]),
        ("climate.furnace.blower", UNKNOWN, ["furnace.charge_night"]),
        (
            "climate.furnace.lp_input",
            UNKNOWN,
            ["furnace.gas_by_cold", "lp.furnace_nights_by_cold", "lp.day[furnace]"],
        ),
        ("hot_water.lp_input", UNKNOWN, ["hot_water.reheat[gas]", "lp.mix", "lp.days"]),
        ("hot_water.element", UNKNOWN, ["hot_water.reheat[electric]"]),
        ("hot_water.volume", UNKNOWN, ["hot_water.mixed", "hot_water.shower"]),
        ("hot_water", "unknown", ["hot_water.scald", "water.antifreeze[at least]"]),
        ("water.pump.flow", UNKNOWN, ["water.pump_minutes"]),
        ("water.pump", "unknown", ["water.pump_minutes", "water.antifreeze[at most]"]),
        ("water.most_pressure", UNKNOWN, ["water.push"]),
        ("water.tanks.fresh.volume", UNKNOWN, ["water.fill_minutes"]),
        ("waste.tanks.gray.volume", UNKNOWN, ["waste.days[gray, 2 people]"]),
        ("waste.tanks", "unknown", ["waste.days", "waste.drain_seconds"]),
        ("waste.outlets", "unknown", ["waste.hose_fall[10 ft]"]),
        ("waste.outlets.outlet.kind", "unknown", ["waste.drain_seconds[black]"]),
        ("kitchen.fridge", "unknown", ["food.holds", "food.warm_limit"]),
        ("lp.supply.cylinders.left.made", "unknown", ["lp.requalify[left]"]),
        ("lp.supply.cylinders.left.holds", UNKNOWN, ["lp.cylinder_weight[left]"]),
        ("lp.supply", "unknown", ["lp.requalify", "lp.days", "lp.hot_water"]),
    ],
)
def test_what_is_not_known_stops_what_rests_on_it(
    path: str, value: object, names: list[str]
) -> None:
    """The field is named; nothing is guessed in its place."""
    some = with_("heron-a", **{path.replace(".", "__"): value})

    for name in names:
        assert name not in some
        field = path if "." not in path else path.rsplit(".", 1)[-1]
        assert any(field in one for one in some.missing[name]), name


def test_a_regulator_that_feeds_a_generator_has_no_share() -> None:
    """What the generator burns is on no plate: a share without it would be too low."""
    generator = Generator(
        kind="lp",
        at="coupler",
        switch_at="coupler",
        oil_hours=reading("100 h", units.DURATION),
        watts=reading("3500 W", units.POWER),
    )

    assert "lp.regulator_use" not in with_("heron-a", ac__generator=generator)


def test_the_share_of_the_regulator_says_that_the_outlet_is_left_out() -> None:
    """A grill on the outside outlet adds to it."""
    assert "outside outlet left out" in facts("heron-b")["lp.regulator_use"].basis
    assert "outlet" not in facts("heron-a")["lp.regulator_use"].basis


def test_too_much_for_the_regulator_shows() -> None:
    """59,050 on a regulator for 50,000 BTU/h: 118.1 %, rounded up."""
    some = with_(
        "heron-a", lp__regulator__capacity=reading("50000 BTU/h", units.HEAT_RATE)
    )

    assert some["lp.regulator_use"].shown() == "120 %"


def test_dates_are_for_the_united_states_alone() -> None:
    """49 CFR is theirs; another country has a rule of its own."""
    assert not with_("heron-a", body__market="ca").of("lp.requalify")


def test_a_date_is_information_and_no_more() -> None:
    """The filler decides, and the basis says so."""
    assert facts("heron-a")["lp.requalify[left]"].basis.endswith(
        "Information only: the filler decides."
    )
    some = with_("heron-a", lp__supply__cylinders__left__made=dt.date(2015, 2, 1))
    assert some["lp.requalify[left]"].shown() == "February 2027"


def test_an_odd_cylinder_has_no_weight() -> None:
    """No guess at the steel of a size that the usual table does not have."""
    eleven = reading("11 lb", units.MASS)
    some = with_("heron-b", lp__supply__cylinders__tongue__holds=eleven)

    assert not some.of("lp.cylinder_weight")
    assert "lp.requalify[tongue]" in some


def test_a_fixed_tank_lasts_by_its_gas() -> None:
    """17.5 gal x 0.8 x 4.2 = 58.8 lb; no cylinder's weight or date."""
    tank = FixedTank(
        kind="tank",
        at="coupler",
        volume=reading("17.5 gal", units.VOLUME),
        gauge_at="coupler",
        filler_at="coupler",
        switch_at="none",
    )
    some = with_("heron-a", lp__supply=tank)

    assert some["lp.days[cold days]"].shown() == "10 days"
    for base in ("lp.cylinder_weight", "lp.requalify", "lp.hot_water"):
        assert not some.of(base)


def test_a_heater_s_own_efficiency_takes_the_place_of_the_usual_one() -> None:
    """90 % of 41,500 into 1 gpm: 74.6 degrees; it is no typical figure any more."""
    own = reading("90 %", units.SHARE)
    some = with_("heron-b", hot_water__efficiency=own)
    fact = some["hot_water.rise[1 gal a minute]"]

    assert fact.shown() == "74 °F"
    assert not fact.typical
    assert "hot_water.efficiency" in {one.path for one in fact.inputs}


def test_an_impossible_efficiency_warms_no_more_than_all_the_heat() -> None:
    """120 % is taken for the whole."""
    some = with_("heron-b", hot_water__efficiency=reading("120 %", units.SHARE))

    # 41,500 / 500.4 = 82.9.
    assert some["hot_water.rise[1 gal a minute]"].shown() == "82 °F"


def test_a_flow_that_does_not_light_the_heater_has_no_rise() -> None:
    """Below the least flow it stays cold."""
    some = with_("heron-b", hot_water__least_flow=reading("1.2 gpm", units.FLOW))

    assert [one.item for one in some.of("hot_water.rise")] == [
        "1.5 gal a minute",
        "2 gal a minute",
        "2.5 gal a minute",
    ]


def test_an_electric_heater_has_its_element_alone() -> None:
    """And a combi boiler has no usual times, since it heats the rooms too."""
    electric = ElectricHeater(
        kind="electric",
        at="coupler",
        volume=reading("2.6 gal", units.VOLUME),
        element=reading("1440 W", units.POWER),
    )
    some = with_("heron-a", hot_water=electric)
    assert [one.item for one in some.of("hot_water.reheat")] == ["electric"]
    assert not some.of("lp.hot_water")

    combi = CombiBoiler(
        kind="combi",
        at="coupler",
        controls_at="coupler",
        volume=reading("2.6 gal", units.VOLUME),
        lp_input=reading("20000 BTU/h", units.HEAT_RATE),
        element="none",
        frost_valve_at="coupler",
    )
    some = with_("heron-a", hot_water=combi)
    for base in ("hot_water.reheat", "hot_water.recovery", "lp.mix", "lp.days"):
        assert not some.of(base)


@pytest.mark.parametrize(
    ("bypass", "least", "most"),
    [("two_valve", "2 gal", "3 gal"), ("none", "8 gal", "9 gal")],
)
def test_antifreeze_fills_a_heater_that_cannot_be_left_out(
    bypass: str, least: str, most: str
) -> None:
    """Without a bypass its 6 gal are added."""
    some = with_("heron-a", hot_water__bypass=bypass)

    assert some["water.antifreeze[at least]"].shown() == least
    assert some["water.antifreeze[at most]"].shown() == most


def test_an_unknown_bypass_leaves_the_antifreeze_open() -> None:
    """3 or 9 gal is no answer."""
    some = with_("heron-a", hot_water__bypass="unknown")

    assert some.missing["water.antifreeze[at least]"] == ("hot_water.bypass",)


def test_a_macerator_pumps_and_needs_no_fall() -> None:
    """No time to run out either."""
    some = with_(
        "heron-a",
        waste__outlets=(SewerOutlet(id="hose", kind="small_hose", at="coupler"),),
    )

    assert not some.of("waste.hose_fall")
    assert not some.of("waste.drain_seconds")


def test_a_freezer_is_spoken_of_only_with_a_household_fridge() -> None:
    """The others have none that holds its cold for a day."""
    household = HouseholdFridge(
        kind="household", at="coupler", watts=reading("180 W", units.POWER)
    )
    some = with_("heron-a", kitchen__fridge=household)

    assert [one.shown() for one in some.of("food.holds")] == [
        "4 hours",
        "48 hours",
        "24 hours",
    ]


def test_pipes_are_left_out_of_the_dose_when_the_length_is_not_known() -> None:
    """Their part of a gallon matters less than the dose does."""
    some = with_("heron-a", body__length=UNKNOWN)
    fact = some["water.bleach[8.25 %]"]

    assert some["water.bleach_volume"].shown() == "52 gal"
    assert not fact.typical
    assert "pipes" not in fact.basis


def test_two_gray_tanks_are_taken_together() -> None:
    """No one knows how the sinks share them."""
    tanks = unit("heron-a").waste.tanks
    assert not isinstance(tanks, str)
    galley = tanks[1].model_copy(
        update={"id": "galley", "volume": reading("27 gal", units.VOLUME)}
    )

    some = with_("heron-a", waste__tanks=(*tanks, galley))

    # 68 / 4 = 17.
    fact = some["waste.days[gray, 1 person]"]
    assert fact.shown() == "17 days"
    assert "41 gal + 27 gal, taken together" in fact.basis


def _days(some: Facts, base: str, item: str) -> float:
    value = some[f"{base}[{item}]"].value
    assert not isinstance(value, str | bool)
    return float(value.magnitude)


@pytest.mark.parametrize("sample", ["heron-a", "heron-b"])
def test_tables_run_one_way(sample: str) -> None:
    """Colder, longer and more people never last longer."""
    some = facts(sample)
    for base, up in (
        ("lp.furnace_nights_by_cold", False),
        ("lp.furnace_nights_by_duty", False),
        ("furnace.gas_by_cold", True),
        ("furnace.charge_by_cold", True),
        ("waste.hose_fall", True),
    ):
        values = [_days(some, base, one.item) for one in some.of(base)]
        assert values == sorted(values, reverse=not up), base
        assert len(set(values)) == len(values) > 2, base
