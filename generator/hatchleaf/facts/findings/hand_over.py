"""Findings on recalls, tests at the hand-over, brakes and coupling."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Final

from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.sheet import fitted, items
from hatchleaf.units import quantity, shown

OPEN_RECALL = Rule(
    "open-recall",
    "hold",
    "A new unit with an open safety recall may not be delivered.",
    "cfr-573-11",
)
OPEN_RECALL_USED = Rule(
    "open-recall-used",
    "stop",
    "A used unit with an open safety recall should be remedied first.",
    "cfr-573-11",
)
RECALL_NOT_LOOKED_UP = Rule(
    "recall-not-looked-up",
    "stop",
    "Nobody looked whether the VIN has an open safety recall.",
    "cfr-573-11",
)
RECALL_NOT_LOOKED_UP_USED = Rule(
    "recall-not-looked-up-used",
    "warn",
    "Nobody looked whether the VIN has an open safety recall.",
    "cfr-573-11",
)
RECALL_LOOK_UP_OLD = Rule(
    "recall-look-up-old",
    "warn",
    "A recall may have come since: look it up again in the week of the hand-over.",
    "common-practice",
)
FAILED_TEST = Rule(
    "failed-test",
    "hold",
    "A unit that failed a test of gas, brakes, breakaway or alarms stays here.",
    "common-practice",
)
FAILED_OTHER_TEST = Rule(
    "failed-other-test",
    "stop",
    "What failed a test is mended, or somebody answers for it.",
    "common-practice",
)
NO_BRAKE_TEST = Rule(
    "no-brake-test",
    "warn",
    "Brakes that were never tried may not be connected.",
    "common-practice",
)
NO_BREAKAWAY_TEST = Rule(
    "no-breakaway-test",
    "warn",
    "It has one chance on the road, and only with a live battery: try it first.",
    "breakaway-laws",
)
NO_ALARM_TEST = Rule(
    "no-alarm-test",
    "warn",
    "An alarm that nobody tried may be dead: press each one with the owners.",
    "common-practice",
)
NO_BRAKES = Rule(
    "no-brakes",
    "stop",
    "Some states ask for brakes from 1,500 lb on, others from 3,000 lb: check yours.",
    "state-brake-laws",
)
NO_BREAKAWAY = Rule(
    "no-breakaway",
    "stop",
    "A trailer with brakes has to brake itself when it comes loose.",
    "breakaway-laws",
)
BREAKAWAY_WITHOUT_BATTERY = Rule(
    "breakaway-without-battery",
    "stop",
    "The breakaway switch brakes by the unit's own battery.",
    "breakaway-laws",
)
FEW_CHAINS = Rule(
    "few-chains",
    "stop",
    "Two chains, crossed, catch a coupling that comes off.",
    "towing-practice",
)
FOUND_LONG_AGO = Rule(
    "found-long-ago",
    "warn",
    "A used unit that was looked over long ago may not be as its file says.",
    "common-practice",
)
TOWING_PART_UNKNOWN = Rule(
    "towing-part-unknown",
    "stop",
    "The guide tells the owners not to tow before a technician has looked at it.",
    "common-practice",
)
PARTS_UNKNOWN = Rule(
    "parts-unknown",
    "warn",
    "The guide can say nothing of what nobody looked at.",
    "common-practice",
)
RULES: Final = (
    OPEN_RECALL,
    OPEN_RECALL_USED,
    RECALL_NOT_LOOKED_UP,
    RECALL_NOT_LOOKED_UP_USED,
    RECALL_LOOK_UP_OLD,
    FAILED_TEST,
    FAILED_OTHER_TEST,
    NO_BRAKE_TEST,
    NO_BREAKAWAY_TEST,
    NO_ALARM_TEST,
    NO_BRAKES,
    NO_BREAKAWAY,
    BREAKAWAY_WITHOUT_BATTERY,
    FEW_CHAINS,
    FOUND_LONG_AGO,
    TOWING_PART_UNKNOWN,
    PARTS_UNKNOWN,
)
_HOLDING: Final = ("gas_leak", "brakes", "breakaway", "alarms")
_LOOK_UP_DAYS: Final = dt.timedelta(days=30)
_LOOKED_OVER_DAYS: Final = dt.timedelta(days=90)
_BRAKES_FROM: Final = quantity(3000, "pound")
_CHAINS: Final = 2
_PARTS: Final = (
    ("lp", "supply"),
    ("lp", "regulator"),
    ("water", "tanks"),
    ("water", "inlets"),
    ("water", "low_points"),
    ("waste", "tanks"),
    ("dc", "batteries"),
    ("dc", "converter"),
    ("ac", "shore"),
    ("climate", "furnace"),
    ("gear", "axles"),
    ("gear", "tires"),
    ("gear", "hitch"),
    ("gear", "brakes"),
    ("gear", "breakaway"),
    ("safety", "alarms"),
    ("safety", "extinguisher"),
)
"""Parts that a hand-over should not leave unlooked at."""
_TOWED_BY: Final = ("tires", "hitch", "brakes", "breakaway")
"""Parts of the running gear that the guide forbids to tow with while unknown."""


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on the hand-over itself."""
    yield from _recall(case)
    yield from _tests(case)
    yield from _towing(case)
    yield from _used(case)


def _recall(case: Case) -> Iterator[Finding]:
    recall = fitted(case.spec.recall)
    if recall is None or recall.open == "unknown":
        rule = RECALL_NOT_LOOKED_UP if case.new else RECALL_NOT_LOOKED_UP_USED
        where = "recall" if recall is None else "recall.open"
        yield rule.found("safety recalls were not looked up", where)
        return
    if recall.open == "yes":
        rule = OPEN_RECALL if case.new else OPEN_RECALL_USED
        yield rule.found("a safety recall is open", "recall.open")
    # Counted to the hand-over: a look-up does not grow old after it.
    if recall.looked_up + _LOOK_UP_DAYS < case.spec.delivery.date:
        what = f"recalls were last looked up on {recall.looked_up}"
        yield RECALL_LOOK_UP_OLD.found(what, "recall.looked_up")


def _tests(case: Case) -> Iterator[Finding]:
    spec = case.spec
    done = {test.kind for test in items(spec.readings)}
    for test in items(spec.readings):
        if test.result != "failed":
            continue
        rule = FAILED_TEST if test.kind in _HOLDING else FAILED_OTHER_TEST
        what = f"the test of {test.kind.replace('_', ' ')} failed"
        yield rule.found(what, f"readings[{test.id}].result", test.id)
    if fitted(spec.gear.brakes) and "brakes" not in done:
        yield NO_BRAKE_TEST.found("no test of the brakes is recorded", "readings")
    if fitted(spec.gear.breakaway) and "breakaway" not in done:
        what = "no test of the breakaway switch is recorded"
        yield NO_BREAKAWAY_TEST.found(what, "readings")
    if items(spec.safety.alarms) and "alarms" not in done:
        yield NO_ALARM_TEST.found("no test of the alarms is recorded", "readings")


def _towing(case: Case) -> Iterator[Finding]:
    gear, gvwr = case.spec.gear, case.spec.weights.gvwr.quantity
    hitch = fitted(gear.hitch)
    if hitch is None or not case.north_american:
        return
    if gear.brakes == "none" and gvwr is not None and gvwr > _BRAKES_FROM:
        what = f"no brakes at a GVWR of {shown(gvwr, 'pound', digits=4)}"
        yield NO_BRAKES.found(what, "gear.brakes")
    if fitted(gear.brakes) and gear.breakaway == "none":
        yield NO_BREAKAWAY.found("brakes, and no breakaway switch", "gear.breakaway")
    if fitted(gear.breakaway) and case.spec.dc.batteries == "none":
        what = "a breakaway switch, and no battery"
        yield BREAKAWAY_WITHOUT_BATTERY.found(what, "gear.breakaway")
    if (
        hitch.kind == "ball"
        and isinstance(hitch.chains, int)
        and hitch.chains < _CHAINS
    ):
        what = f"the coupling has {hitch.chains} of two chains"
        yield FEW_CHAINS.found(what, "gear.hitch.chains")


def _used(case: Case) -> Iterator[Finding]:
    spec = case.spec
    found_on = spec.found_on
    latest = spec.delivery.date - _LOOKED_OVER_DAYS
    if isinstance(found_on, dt.date) and found_on < latest:
        what = f"the unit was last looked over on {found_on}"
        yield FOUND_LONG_AGO.found(what, "found_on")
    for section, name in _PARTS:
        if getattr(getattr(spec, section), name) == "unknown":
            part = name.replace("_", " ")
            what = f"nobody looked at this part: {section}, {part}"
            item = f"{section}-{name}".replace("_", "-")
            on_the_road = section == "gear" and name in _TOWED_BY
            rule = TOWING_PART_UNKNOWN if on_the_road else PARTS_UNKNOWN
            yield rule.found(what, f"{section}.{name}", item)
