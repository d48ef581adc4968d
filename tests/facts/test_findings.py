"""
Each rule that stops or warns: a unit that it finds, and one that just escapes it.

The limits are those that the rules name; where a rule has a published source, its id
stands with the rule and is checked to be listed.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from typing import Any

import pytest

from facts.samples import NAMES, UNKNOWN, changed, loaded, reading, unit
from facts.test_every_fact import SOURCES
from hatchleaf import units
from hatchleaf.facts.findings.acknowledged import judge, names_a_rule
from hatchleaf.facts.findings.find import RULES, findings
from hatchleaf.facts.findings.model import SEVERITIES, Finding
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.model.ac import Generator, Inverter
from hatchleaf.spec.model.gear import FittedTire
from hatchleaf.spec.model.safety import Exit
from hatchleaf.spec.model.unit import Acknowledgement, HandOverReading, Recall, UnitSpec

DELIVERED = dt.date(2027, 4, 16)


def lb(text: str, origin: Any = "scale") -> Any:
    """Return a weight as a file would state it."""
    return reading(text, units.MASS, origin)


def amps(text: str) -> Any:
    """Return a current as a file would state it."""
    return reading(text, units.CURRENT)


def tried(kind: Any, result: Any = "passed") -> HandOverReading:
    """Return the record of a test at the hand-over."""
    return HandOverReading(
        id=kind.replace("_", "-"), kind=kind, result=result, found="as the paper says"
    )


def recall(**changes: Any) -> Recall:
    """Return a look-up of recalls a few days before the hand-over."""
    return Recall(
        looked_up=changes.get("on", "2027-04-12"),
        by="service_manager",
        open=changes.get("open", "no"),
    )


def tires(*weeks: str) -> tuple[FittedTire, ...]:
    """Return tires of those weeks."""
    return tuple(
        FittedTire(id=f"tire-{number}", made=week) for number, week in enumerate(weeks)
    )


GENERATOR = Generator(
    kind="lp",
    at="furnace",
    switch_at="furnace",
    oil_hours=reading("100 h", units.DURATION),
    watts=reading("2800 W", units.POWER),
)


def built_in(watts: str) -> Generator:
    """Return a built-in generator of so many watts."""
    return Generator(
        kind="lp",
        at="furnace",
        switch_at="furnace",
        oil_hours=reading("100 h", units.DURATION),
        watts=reading(watts, units.POWER),
    )


WINDOW = Exit(id="window", kind="window", at="bed-window")
DOOR = Exit(id="door", kind="door", at="entry-door")


def inverter(watts: str) -> Inverter:
    """Return an inverter of so many watts."""
    return Inverter(
        kind="stand_alone",
        at="battery-box",
        switch_at="battery-box",
        feeds="all outlets",
        watts=reading(watts, units.POWER),
    )


@dataclass(frozen=True)
class Row:
    """A rule, what makes a sample break it, and what just does not."""

    rule: str
    breaks: dict[str, Any]
    keeps: dict[str, Any] = field(default_factory=dict)
    sample: str = "heron-a"
    item: str = ""


ROWS = (
    # --- weights: GVWR 7,400 lb, 744 lb on the hitch, two axles of 3,500 lb
    Row(
        "over-gvwr",
        {"weights.scale_total": lb("7401 lb")},
        {"weights.scale_total": lb("7400 lb")},
    ),
    Row(
        "over-axles",
        # 7,745 - 744 = 7,001 lb on the axles.
        {"weights.scale_total": lb("7745 lb"), "weights.gvwr": lb("8000 lb", "label")},
        {"weights.scale_total": lb("7744 lb"), "weights.gvwr": lb("8000 lb", "label")},
    ),
    Row(
        "over-tires",
        # 5,963 - 744 = 5,219 lb; four tires of 1,304 carry 5,216, of 1,305 5,220.
        {"gear.tires.load": lb("1304 lb", "plate")},
        {"gear.tires.load": lb("1305 lb", "plate")},
    ),
    Row("rating-unknown", {"weights.gvwr": UNKNOWN}),
    Row(
        "cargo-unknown",
        {"weights.cargo_label": UNKNOWN},
        {"weights.cargo_label": UNKNOWN, "condition": "used"},
    ),
    Row(
        "cargo-below-water",
        # 46 gal x 8.34 = 383.6 lb of water, and 104 lb that were added.
        {"weights.cargo_label": lb("487 lb", "label")},
        {"weights.cargo_label": lb("488 lb", "label")},
    ),
    Row(
        "added-label",
        # The rack of 43 lb and a battery: 101 lb, and 100 lb.
        {"added.second-battery.weight": lb("58 lb")},
        {"added.second-battery.weight": lb("57 lb")},
    ),
    Row(
        "added-unknown",
        {"added.rack.weight": UNKNOWN},
        {"added.rack.weight": UNKNOWN, "condition": "used"},
        item="rack",
    ),
    Row(
        "axles-below-rating",
        # 7,400 - 744 = 6,656 lb.
        {
            "gear.axles.front.gawr": lb("3000 lb", "label"),
            "gear.axles.rear.gawr": lb("3655 lb", "label"),
        },
        {
            "gear.axles.front.gawr": lb("3000 lb", "label"),
            "gear.axles.rear.gawr": lb("3656 lb", "label"),
        },
    ),
    Row(
        "hitch-light",
        # 10 % of 5,963 lb is 596.3 lb.
        {"weights.hitch": lb("596 lb")},
        {"weights.hitch": lb("597 lb")},
    ),
    Row(
        "hitch-heavy",
        # 15 % of 5,963 lb is 894.45 lb.
        {"weights.hitch": lb("895 lb")},
        {"weights.hitch": lb("894 lb")},
    ),
    Row(
        "hitch-not-weighed",
        {"weights.hitch": lb("744 lb", "brochure")},
        {"weights.hitch": lb("744 lb")},
    ),
    Row("not-weighed", {"weights.scale_total": UNKNOWN}),
    # --- tires: 1,760 lb each, axles of 3,500 lb, delivered on 16 April 2027
    Row(
        "tires-below-axle",
        {"gear.tires.load": lb("1749 lb", "plate")},
        {"gear.tires.load": lb("1750 lb", "plate")},
        item="front",
    ),
    Row(
        "tires-small-reserve",
        {"gear.tires.load": lb("1924 lb", "plate")},
        {"gear.tires.load": lb("1925 lb", "plate")},
        item="rear",
    ),
    Row("tire-pressure-unknown", {"gear.tires.pressure": UNKNOWN}),
    Row("tire-load-unknown", {"gear.tires.load": UNKNOWN}),
    # Beside another a tire carries less: 4 of the dual load for the 9,600 lb axle.
    Row(
        "tires-below-axle",
        {"gear.tires.dual_load": lb("2399 lb", "plate")},
        {"gear.tires.dual_load": lb("2400 lb", "plate")},
        sample="heron-e",
        item="rear",
    ),
    Row("tire-load-unknown", {"gear.tires.dual_load": "none"}, sample="heron-e"),
    # Nothing of a motorhome rests on a hitch: 5,000 + 9,600 lb for all of it.
    Row(
        "over-axles",
        {"weights.scale_total": lb("14601 lb")},
        {"weights.scale_total": lb("14600 lb")},
        sample="heron-e",
    ),
    Row(
        "tire-old",
        # Week 15 of 2021 began on 12 April, week 16 on the 19th.
        {"gear.tires.fitted.spare.made": "1521"},
        {"gear.tires.fitted.spare.made": "1621"},
        item="spare",
    ),
    Row(
        "tires-mixed",
        {"gear.tires.fitted": tires("1025", "1025", "1126", "1126")},
        {"gear.tires.fitted": tires("1025", "1025", "1026", "1026")},
    ),
    Row("tire-date-unknown", {"gear.tires.fitted.spare.made": "unknown"}, item="spare"),
    Row(
        "tires-not-listed",
        {"gear.tires.fitted": tires("3126", "3126", "3126")},
        {"gear.tires.fitted": tires("3126", "3126", "3126", "3126")},
    ),
    # --- gas: furnace 24,500 + heater 11,800 + cooktop 21,300 + fridge 1,450 BTU/h
    Row(
        "gas-beyond-regulator",
        {"lp.regulator.capacity": reading("59000 BTU/h", units.HEAT_RATE)},
        {"lp.regulator.capacity": reading("59050 BTU/h", units.HEAT_RATE)},
    ),
    Row("regulator-unknown", {"lp.regulator.capacity": UNKNOWN}),
    Row(
        "gas-pressure-off",
        {"lp.regulator.outlet": reading("37 mbar", units.GAS_PRESSURE)},
        {"lp.regulator.outlet": reading("10.5 inwc", units.GAS_PRESSURE)},
    ),
    Row(
        "cylinder-due",
        # 12 years after April 2015 is April 2027, the month of the hand-over.
        {"lp.supply.cylinders.left.made": dt.date(2015, 4, 1)},
        {"lp.supply.cylinders.left.made": dt.date(2015, 5, 1)},
        item="left",
    ),
    Row(
        "cylinder-near",
        {"lp.supply.cylinders.left.made": dt.date(2016, 4, 1)},
        {"lp.supply.cylinders.left.made": dt.date(2016, 5, 1)},
        item="left",
    ),
    Row(
        "cylinder-date-unknown",
        {"lp.supply.cylinders.right.made": "unknown"},
        item="right",
    ),
    Row(
        "no-leak-test",
        {"readings": (tried("breakaway"),)},
        {"readings": (tried("gas_leak"),)},
    ),
    Row(
        "no-leak-test",
        {"readings": "none"},
        {"readings": "none", "lp.supply": "none"},
    ),
    Row(
        "generator-gas",
        {"ac.generator": GENERATOR},
        {"ac.generator": GENERATOR.model_copy(update={"kind": "diesel"})},
    ),
    # --- alarms, extinguisher, ways out
    Row(
        "no-lp-alarm",
        {"safety.alarms.co-and-lp.detects": "co"},
        {"safety.alarms.co-and-lp.detects": "lp"},
    ),
    Row(
        "no-co-alarm",
        {"safety.alarms.co-and-lp.detects": "lp"},
        {
            "safety.alarms.co-and-lp.detects": "lp",
            "safety.alarms.smoke.detects": "smoke_and_co",
        },
    ),
    Row(
        "generator-without-co-alarm",
        {"safety.alarms.co-and-lp.detects": "lp", "ac.generator": GENERATOR},
        {"safety.alarms.co-and-lp.detects": "lp"},
    ),
    Row(
        "no-smoke-alarm",
        {"safety.alarms.smoke.detects": "co"},
        {"safety.alarms.smoke.detects": "smoke_and_co"},
    ),
    Row(
        "alarm-at-end",
        {"safety.alarms.smoke.replace_by": dt.date(2027, 4, 1)},
        {"safety.alarms.smoke.replace_by": dt.date(2027, 5, 1)},
        item="smoke",
    ),
    Row(
        "alarm-near-end",
        {"safety.alarms.smoke.replace_by": dt.date(2028, 4, 1)},
        {"safety.alarms.smoke.replace_by": dt.date(2028, 5, 1)},
        item="smoke",
    ),
    Row(
        "alarm-without-date",
        {"safety.alarms.smoke.replace_by": "unknown"},
        item="smoke",
    ),
    Row(
        "alarm-sound-unknown",
        {"safety.alarms.smoke.alarm_sound": "unknown"},
        item="smoke",
    ),
    Row("one-smoke-alarm", {"body.sleeps": 5}, {"body.sleeps": 4}),
    Row("no-extinguisher", {"safety.extinguisher": "none"}),
    Row(
        "extinguisher-out-of-date",
        {"safety.extinguisher.made": dt.date(2015, 4, 1)},
        {"safety.extinguisher.made": dt.date(2015, 5, 1)},
    ),
    Row("extinguisher-without-date", {"safety.extinguisher.made": "unknown"}),
    Row(
        "no-second-way-out",
        {"safety.exits": (DOOR,)},
        {"safety.exits": (DOOR, WINDOW)},
    ),
    Row("ways-out-unknown", {"safety.exits": "unknown"}),
    # --- batteries, solar, inverter
    Row(
        "solar-beyond-fuse",
        # NEC 690.8 and 690.9: 10.2 A x 1.25 x 1.25 = 15.94 A.
        {"dc.solar.roof.fuse": amps("15 A")},
        {"dc.solar.roof.fuse": amps("16 A")},
        sample="heron-b",
        item="roof",
    ),
    Row(
        "solar-beyond-controller",
        {"dc.solar.roof.controller_amps": amps("10 A")},
        {"dc.solar.roof.controller_amps": amps("20 A")},
        sample="heron-b",
        item="roof",
    ),
    Row(
        "solar-without-controller",
        {"dc.solar.port.controller": "none"},
        {"dc.solar.port.controller": "built_in"},
        item="port",
    ),
    Row(
        "solar-controller-unknown",
        {"dc.solar.port.controller": "unknown"},
        {"dc.solar.port.controller": "none"},
        item="port",
    ),
    Row(
        "mixed-batteries",
        {"dc.batteries.back.chemistry": "flooded"},
        {"dc.batteries.back.chemistry": "unknown"},
    ),
    Row(
        "unequal-batteries",
        {"dc.batteries.back.charge": reading("95 Ah", units.CHARGE)},
        {"dc.batteries.back.charge": reading("94 Ah", units.CHARGE)},
    ),
    Row(
        "lfp-on-wrong-charger",
        {"dc.converter.lithium": "no"},
        {"dc.converter.lithium": "yes"},
        sample="heron-b",
    ),
    Row(
        "lfp-charger-unknown",
        {"dc.converter.lithium": "unknown"},
        {"dc.converter.lithium": "no"},
        sample="heron-b",
    ),
    Row(
        "inverter-without-battery",
        {"ac.inverter": inverter("300 W"), "dc.batteries": "none"},
        {"ac.inverter": inverter("300 W"), "dc.batteries": "unknown"},
    ),
    Row(
        "inverter-above-battery",
        # Two AGM batteries of 94 Ah at 12 V, half of it each hour: 1,128 W.
        {"ac.inverter": inverter("1129 W")},
        {"ac.inverter": inverter("1128 W")},
    ),
    Row("no-disconnect", {"dc.disconnect": "none"}),
    Row(
        "short-furnace-night",
        {"climate.furnace.blower": amps("60 A")},
        {"climate.furnace.blower": amps("5 A")},
    ),
    # --- shore power, water, awnings
    Row(
        "loads-clash",
        {},
        {
            "climate.air_conditioners": "none",
            "ac.loads": "none",
            "kitchen.fridge.watts": reading("100 W", units.POWER),
        },
    ),
    Row(
        "load-above-shore",
        # 80 % of 30 A at 120 V is 2,880 W.
        {"ac.loads.microwave.watts": reading("2881 W", units.POWER)},
        {"ac.loads.microwave.watts": reading("2880 W", units.POWER)},
        item="microwave",
    ),
    Row(
        "generator-too-small",
        # Twice 1,480 W for the start of the cooler and 940 W for the charger.
        {"ac.generator": built_in("3899 W")},
        {"ac.generator": built_in("3900 W")},
    ),
    Row("no-gfci", {"ac.gfci": "none"}, {"ac.gfci": "none", "ac.shore": "none"}),
    Row(
        "water-unregulated",
        {"water.inlets.inlet.regulator": "none"},
        {"water.inlets.inlet.regulator": "unknown"},
        item="inlet",
    ),
    Row("water-limit-unknown", {"water.most_pressure": UNKNOWN}),
    Row(
        "element-without-switch",
        {"hot_water.element_switch_at": "none"},
        {"hot_water.element_switch_at": "none", "hot_water.element": "none"},
    ),
    Row("wind-limit-unknown", {"awnings.patio.wind_limit": UNKNOWN}, item="patio"),
    # --- the hand-over: recalls, tests, brakes, coupling
    Row("open-recall", {"recall": recall(open="yes")}, {"recall": recall(open="no")}),
    Row(
        "open-recall-used",
        {"recall": recall(open="yes"), "condition": "used"},
        {"recall": recall(open="no"), "condition": "used"},
    ),
    Row("recall-not-looked-up", {"recall": "none"}),
    Row("recall-not-looked-up", {"recall": recall(open="unknown")}),
    Row("recall-not-looked-up-used", {"recall": "none"}, sample="heron-c"),
    Row(
        "recall-look-up-old",
        {"recall": recall(on="2027-03-16")},
        {"recall": recall(on="2027-03-17")},
    ),
    *(
        Row(
            "failed-test",
            {"readings": (tried(kind, "failed"),)},
            {"readings": (tried(kind, "passed"),)},
            item=kind.replace("_", "-"),
        )
        for kind in ("gas_leak", "brakes", "breakaway", "alarms")
    ),
    Row(
        "failed-other-test",
        {"readings": (tried("lights", "failed"),)},
        {"readings": (tried("gas_leak", "failed"),)},
        item="lights",
    ),
    Row(
        "no-brake-test",
        {"readings": (tried("gas_leak"),)},
        {"readings": (tried("brakes"),)},
    ),
    Row(
        "no-breakaway-test",
        {"readings": (tried("brakes"),)},
        {"readings": (tried("breakaway"),)},
    ),
    Row(
        "no-alarm-test",
        {"readings": (tried("brakes"),)},
        {"readings": (tried("alarms"),)},
    ),
    Row(
        "no-brakes",
        {"gear.brakes": "none", "weights.gvwr": lb("3001 lb", "label")},
        {"gear.brakes": "none", "weights.gvwr": lb("3000 lb", "label")},
        sample="heron-b",
    ),
    Row(
        "no-breakaway",
        {"gear.breakaway": "none"},
        {"gear.breakaway": "none", "gear.brakes": "none"},
    ),
    Row(
        "breakaway-without-battery",
        {"dc.batteries": "none"},
        {"dc.batteries": "none", "gear.breakaway": "none"},
    ),
    Row("few-chains", {"gear.hitch.chains": 1}, {"gear.hitch.chains": 2}),
    Row(
        "found-long-ago",
        # Delivered on 19 March 2027, 90 days after 19 December.
        {"found_on": dt.date(2026, 12, 18)},
        {"found_on": dt.date(2026, 12, 19)},
        sample="heron-c",
    ),
    Row(
        "parts-unknown",
        {"water.low_points": "unknown"},
        {"water.low_points": "none"},
        sample="heron-c",
        item="water-low-points",
    ),
    Row(
        "towing-part-unknown",
        {"gear.brakes": "unknown"},
        {"gear.brakes": "none"},
        sample="heron-c",
        item="gear-brakes",
    ),
)


def found(spec: UnitSpec, on: dt.date = DELIVERED) -> dict[str, Finding]:
    """Return the findings of a unit by their ids."""
    return {one.id: one for one in findings(spec, work_out(spec), on)}


@pytest.mark.parametrize(
    "row", ROWS, ids=[f"{row.rule}-{number}" for number, row in enumerate(ROWS)]
)
def test_rule_finds_it_and_just_not(row: Row) -> None:
    """The unit that breaks it has the finding; the unit on the limit has not."""
    broken = changed(unit(row.sample), row.breaks)
    sound = changed(unit(row.sample), row.keeps)
    wanted = f"{row.rule}-{row.item}" if row.item else row.rule
    ids = {one for one, f in found(broken).items() if f.rule == row.rule}

    if row.item:
        assert wanted in ids
        assert wanted not in found(sound)
    else:
        assert ids
        assert not [f for f in found(sound).values() if f.rule == row.rule]


def test_every_rule_is_tried() -> None:
    """A rule without a row could be dead; and there are more than thirty."""
    assert {row.rule for row in ROWS} == set(RULES)
    assert len(RULES) > 60


@pytest.mark.parametrize("name", NAMES)
def test_each_finding_leads_to_a_line(name: str) -> None:
    """What, why, a listed source, and a place in the unit's file or its model's."""
    for one in found(unit(name)).values():
        assert loaded(name).place_of(one.where).line > 1, one.id
        assert one.what[0].islower() or one.what[0].isdigit(), one.what
        assert not one.what.endswith("."), one.what
        assert one.severity in SEVERITIES


@pytest.mark.parametrize("rule", RULES.values(), ids=list(RULES))
def test_each_rule_says_why_and_by_whom(rule: Any) -> None:
    """A sentence that a manager can weigh, and a source of the list."""
    assert rule.why.endswith(".")
    assert 5 <= len(rule.why.split()) <= 25
    assert rule.source in SOURCES


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.rule)
def test_each_place_is_a_field(row: Row) -> None:
    """The path of every finding that a row makes is one that the file can state."""
    from hatchleaf.spec import paths  # noqa: PLC0415  # only here

    fields = paths.fields()
    spec = changed(unit(row.sample), row.breaks)
    for one in found(spec).values():
        bare = ".".join(part.split("[")[0] for part in one.where.split("."))
        assert bare in fields, one


def test_the_hand_over_counts_where_it_is_later() -> None:
    """Looked at in winter, an alarm that ends before the hand-over is found."""
    spec = changed(
        unit("heron-a"), {"safety.alarms.smoke.replace_by": dt.date(2027, 3, 1)}
    )

    assert "alarm-at-end-smoke" in found(spec, dt.date(2027, 1, 5))


def test_a_later_day_finds_more() -> None:
    """Years on, the same unit has old tires and alarms, by the date alone."""
    now, later = found(unit("heron-a")), found(unit("heron-a"), dt.date(2040, 1, 1))

    for wanted in (
        "tire-old-spare",
        "alarm-at-end-smoke",
        "cylinder-due-left",
        "extinguisher-out-of-date",
    ):
        assert wanted in later
        assert wanted not in now
    assert set(later) >= set(now) - {"recall-look-up-old"}


def test_worst_comes_first() -> None:
    """Who reads only the first line reads the one that holds the unit."""
    spec = changed(
        unit("heron-a"),
        {"recall": recall(open="yes"), "safety.exits": (DOOR,)},
    )
    order = [SEVERITIES.index(one.severity) for one in found(spec).values()]

    assert order == sorted(order)
    assert order[0] == 0


@pytest.mark.parametrize("name", NAMES)
def test_samples_may_be_handed_over(name: str) -> None:
    """No sample is stopped, and each acknowledgement is of something found."""
    spec = unit(name)
    judged = judge(spec, found(spec).values())

    assert judged.stopping == ()
    assert judged.idle == ()


def acknowledging(*ids: str) -> tuple[Acknowledgement, ...]:
    """Return acknowledgements of those findings."""
    return tuple(
        Acknowledgement(id=one, role="service_manager", reason="it was seen to today")
        for one in ids
    )


def test_a_stop_needs_somebody_who_answers() -> None:
    """Without the acknowledgement the unit stays; with it, it goes."""
    spec = changed(unit("heron-a"), {"acknowledged": "none"})
    judged = judge(spec, found(spec).values())
    assert [one.id for one in judged.stopping] == ["added-label"]

    answered = changed(spec, {"acknowledged": acknowledging("added-label")})
    assert judge(answered, found(answered).values()).stopping == ()


def test_nobody_answers_for_a_hold() -> None:
    """An open recall stays a hold, and the acknowledgement is told as idle."""
    spec = changed(
        unit("heron-a"),
        {
            "recall": recall(open="yes"),
            "acknowledged": acknowledging("open-recall", "added-label"),
        },
    )
    judged = judge(spec, found(spec).values())

    assert [one.id for one in judged.stopping] == ["open-recall"]
    assert [one.id for one in judged.idle] == ["open-recall"]


def test_one_item_s_acknowledgement_is_not_another_s() -> None:
    """Two old tires need two answers."""
    spec = changed(
        unit("heron-a"),
        {
            "gear.tires.fitted.spare.made": "0119",
            "gear.tires.fitted.road-rear.made": "0119",
            "acknowledged": acknowledging("added-label", "tire-old-spare"),
        },
    )

    stopping = judge(spec, found(spec).values()).stopping
    assert [one.id for one in stopping] == ["tire-old-road-rear"]


def test_ids_name_their_rule() -> None:
    """A misspelt acknowledgement can be told from one that is out of date."""
    assert names_a_rule("added-label")
    assert names_a_rule("tire-old-spare")
    assert not names_a_rule("tyre-old")
    assert not names_a_rule("added")
