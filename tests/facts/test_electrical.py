"""Battery and shore power facts of the samples, and of units changed in one thing."""

from __future__ import annotations

from itertools import combinations

import pytest

from facts.samples import UNKNOWN, changed, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.facts import shore
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.model.ac import AcLoad
from hatchleaf.spec.model.dc import Battery


@pytest.mark.parametrize(
    ("sample", "name", "shown"),
    [
        # By hand: 2 x 94 x 12 = 2,256, half 1,128; 105 x 12.8 = 1,344, 90 % 1,209.6.
        ("heron-a", "battery.capacity", "2,250 Wh"),
        ("heron-a", "battery.usable", "1,120 Wh"),
        ("heron-b", "battery.capacity", "1,340 Wh"),
        ("heron-b", "battery.usable", "1,200 Wh"),
        ("heron-c", "battery.usable", "490 Wh"),
        # 1,128 / (2.2 x 12) = 42.7; 1,209.6 / (4.7 x 12.8) = 20.1.
        ("heron-a", "battery.hours[fan]", "42 hours"),
        ("heron-b", "battery.hours[fridge]", "20 hours"),
        # 1,128 / (6.8 x 12 x 0.35) = 39.5; 1,209.6 / (3.4 x 12.8 x 0.35) = 79.4.
        ("heron-a", "battery.furnace_hours", "39 hours"),
        ("heron-b", "battery.furnace_hours", "79 hours"),
        ("heron-a", "shore.service", "3,600 W"),
        ("heron-a", "shore.continuous", "2,880 W"),
        ("heron-a", "shore.amps_continuous", "24 A"),
        ("heron-c", "shore.service", "2,400 W"),
        ("heron-c", "shore.continuous", "1,920 W"),
        ("heron-c", "shore.amps_continuous", "16 A"),
        ("heron-a", "shore.load[water-heater]", "1,420 W"),
        ("heron-c", "shore.load[cooktop]", "1,680 W"),
        # 1,480 + 1,420 = 2,900 W is above 2,880 W; 1,480 + 1,350 = 2,830 W is not.
        ("heron-a", "shore.together[roof + water-heater]", "too much"),
        ("heron-a", "shore.together[roof + microwave]", "fits"),
        # 1,190 + 1,080 + 610 = 2,880 W is the limit itself.
        ("heron-b", "shore.together[roof + microwave + charger]", "fits"),
        # 1,680 + 740 = 2,420 W; nobody could read the charger's plate.
        ("heron-c", "shore.together[cooktop + cabin-heater]", "too much"),
        ("heron-c", "shore.together[cooktop + charger]", "not known"),
    ],
)
def test_numbers_of_the_samples(sample: str, name: str, shown: str) -> None:
    """Worked by hand beside each row."""
    assert facts(sample)[name].shown() == shown


def test_what_is_not_fitted_is_not_counted() -> None:
    """The first unit came without its model's television; the second has no element."""
    assert "shore.load[television]" not in facts("heron-a")
    assert {fact.item for fact in facts("heron-b").of("shore.load")} == {
        "roof",
        "microwave",
        "charger",
    }
    assert not facts("heron-c").of("battery.furnace_hours")


def test_an_unstated_share_takes_the_usual_one_and_says_so() -> None:
    """Half for lead-acid, and the word typical on all that rests on it."""
    some = with_(
        "heron-a",
        dc__batteries__front__usable=UNKNOWN,
        dc__batteries__back__usable=UNKNOWN,
    )
    fact = some["battery.usable"]

    assert fact.shown() == "1,100 Wh"
    assert fact.typical
    assert "50 %, typical for lead-acid" in fact.basis
    assert "dc.batteries[front].chemistry" in {one.path for one in fact.inputs}
    assert some["battery.hours[fan]"].typical


def test_two_six_volt_batteries_in_series_are_one_bank_of_twelve() -> None:
    """Their energies add up, and a load draws its amperes at 12 V."""
    six = tuple(
        Battery(
            id=name,
            chemistry="flooded",
            volts=reading("6 V", units.VOLTAGE),
            charge=reading("220 Ah", units.CHARGE),
            usable=reading("50 %", units.SHARE),
            at="battery-box",
        )
        for name in ("one", "two")
    )
    some = with_("heron-a", dc__batteries=six)

    # 2 x 220 x 6 = 2,640, half 1,320 Wh; 1,320 / (2.2 x 12) = 50.
    assert some["battery.usable"].shown() == "1,320 Wh"
    assert some["battery.hours[fan]"].shown() == "50 hours"


def test_an_unknown_battery_stops_all_hours() -> None:
    """No hours without the capacity."""
    some = with_("heron-c", dc__batteries__house__charge=UNKNOWN)

    assert some.missing["battery.hours"] == ("dc.batteries[house].charge",)
    assert not some.of("battery.hours")


def test_together_says_by_the_main_breaker_only() -> None:
    """Each branch has a breaker of its own, which this does not know."""
    for sample in ("heron-a", "heron-b", "heron-c"):
        for fact in facts(sample).of("shore.together"):
            assert "By the main breaker only" in fact.basis


def test_no_row_repeats_what_a_pair_has_said() -> None:
    """Three loads of which two are too much already need no row."""
    rows = facts("heron-a").of("shore.together")
    clash = [set(row.item.split(" + ")) for row in rows if row.value == "too much"]
    pairs = [one for one in clash if len(one) == 2]

    assert pairs == [{"roof", "water-heater"}]
    for row in rows:
        loads = set(row.item.split(" + "))
        assert len(loads) == 2 or not any(pair <= loads for pair in pairs)


def test_every_pair_of_the_samples_has_a_row() -> None:
    """Nothing fitted is left out of the question."""
    for sample in ("heron-a", "heron-b", "heron-c"):
        loads = [fact.item for fact in facts(sample).of("shore.load")]
        for one, other in combinations(loads, 2):
            assert f"shore.together[{one} + {other}]" in facts(sample)


def _with_loads(count: int) -> tuple[AcLoad, ...]:
    return tuple(
        AcLoad(
            id=f"load-{number}",
            name=f"load {number}",
            watts=reading(f"{300 + 90 * number} W", units.POWER),
            leg="a",
        )
        for number in range(count)
    )


def test_many_loads_keep_the_rows_that_matter() -> None:
    """At most 48 rows: all that is too much stays, what fits easily goes."""
    some = with_("heron-a", ac__loads=_with_loads(12))
    rows = some.of("shore.together")

    assert len(rows) == shore.MOST_ROWS
    too_much = [row for row in rows if row.value == "too much"]
    assert "shore.together[roof + water-heater]" in {row.name for row in too_much}
    # 1,480 + 1,290 = 2,770 W fits; the heaviest twelfth load is 300 + 990 = 1,290 W.
    assert len(too_much) > 10


@pytest.mark.parametrize(
    ("leg", "value"), [("a", "too much"), ("b", "fits"), ("unknown", "too much")]
)
def test_an_unknown_leg_counts_as_the_same_leg(leg: str, value: str) -> None:
    """Two legs of 30 A, two loads of 1,480 and 1,350 W and a third of 900 W."""
    spec = changed(
        unit("heron-a"),
        {
            "ac.shore.legs": 2,
            "ac.shore.service": reading("20 A", units.CURRENT),
            "ac.loads": (
                AcLoad(
                    id="kettle",
                    name="kettle",
                    watts=reading("1350 W", units.POWER),
                    leg=leg,
                ),
            ),
        },
    )
    fact = work_out(spec)["shore.together[roof + kettle]"]

    # 80 % of 20 A at 120 V is 1,920 W on each leg; 1,480 + 1,350 = 2,830 W.
    assert fact.value == value
    assert ("kettle is not known and counts as the same" in fact.basis) == (
        leg == "unknown"
    )
    assert "on one leg" in fact.basis


def test_the_list_of_breakers_tells_the_leg() -> None:
    """The element is on breaker 3, leg A; the charger is on none of the list."""
    fact = facts("heron-d")["shore.together[front + water-heater]"]
    assert "water heater is not known" not in fact.basis
    # Front and element share leg A: 1,650 + 1,400 = 3,050 W, below 4,800 W.
    assert "3,050 W on one leg" in fact.basis
    # The list has no breaker of the charger's own.
    other = facts("heron-d")["shore.together[rear + charger]"]
    assert "battery charger is not known and counts as the same" in other.basis


def test_an_electric_fireplace_is_a_load() -> None:
    """It draws as much as a heater does, whether or not a list of loads has it."""
    assert facts("heron-d")["shore.load[fireplace]"].shown() == "1,480 W"
    without = with_("heron-d", climate__fireplace="none")
    assert "shore.load[fireplace]" not in without


def test_an_unknown_load_is_never_called_fitting() -> None:
    """But what is known may be too much already."""
    some = with_("heron-a", hot_water__element=UNKNOWN)

    assert some.missing["shore.load[water-heater]"] == ("hot_water.element",)
    row = some["shore.together[roof + water-heater]"]
    assert row.value == "not known"
    assert "water heater (not known): 1,480 W or more" in row.basis
    # 3,000 W alone is above the limit, whatever the other takes.
    heavy = with_(
        "heron-a",
        hot_water__element=UNKNOWN,
        ac__loads__microwave__watts=reading("3000 W", units.POWER),
    )
    assert heavy["shore.together[water-heater + microwave]"].value == "too much"


def test_an_unknown_inlet_stops_the_question() -> None:
    """The loads stay; what they may do together is not known."""
    some = with_("heron-a", ac__shore="unknown")

    assert some.missing["shore.together"] == ("ac.shore",)
    assert some["shore.load[roof]"].shown() == "1,480 W"
    assert not some.of("shore.together")


def test_a_unit_without_inlet_has_no_shore_facts() -> None:
    """Nothing is said of power that cannot come in."""
    none = with_("heron-a", ac__shore="none")

    assert not [name for name in none if name.startswith("shore.")]


def test_the_share_of_80_percent_is_that_of_north_america() -> None:
    """Elsewhere a breaker carries its whole rating: 16 A at 230 V, printed 3,680 W."""
    elsewhere = with_(
        "heron-a",
        body__market="uk",
        ac__shore__plug="iec_16",
        ac__shore__service=reading("16 A", units.CURRENT),
        ac__shore__volts=reading("230 V", units.VOLTAGE),
    )

    assert elsewhere["shore.service"].shown() == "3,680 W"
    assert not elsewhere.of("shore.continuous")
    assert not elsewhere.of("shore.amps_continuous")
    # 1,480 W and 1,420 W of heron-a, together 2,900 W.
    assert elsewhere["shore.together[roof + water-heater]"].value == "fits"
    assert all("80 %" not in fact.basis for fact in elsewhere.of("shore.together"))
    assert "shore power" not in elsewhere["shore.load[fridge]"].label
