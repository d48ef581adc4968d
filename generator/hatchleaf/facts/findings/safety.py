"""Findings on alarms, the extinguisher and the ways out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import dates
from hatchleaf.facts.dates import EXTINGUISHER_YEARS
from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.sheet import fitted, items
from hatchleaf.spec.model.safety import Alarm

NO_LP_ALARM = Rule(
    "no-lp-alarm",
    "stop",
    "Leaking gas lies on the floor, where nobody smells it asleep.",
    "nfpa-1192",
)
NO_CO_ALARM = Rule(
    "no-co-alarm",
    "stop",
    "Carbon monoxide has no smell, and the neighbor's generator makes it too.",
    "nfpa-1192",
)
GENERATOR_WITHOUT_CO = Rule(
    "generator-without-co-alarm",
    "stop",
    "A generator's exhaust can reach the beds.",
    "nfpa-1192",
)
NO_SMOKE_ALARM = Rule(
    "no-smoke-alarm",
    "stop",
    "A unit burns out in minutes, and people sleep in it.",
    "nfpa-1192",
)
ALARM_AT_END = Rule(
    "alarm-at-end",
    "stop",
    "Past its date an alarm may stay silent.",
    "own-labels",
)
ALARM_NEAR_END = Rule(
    "alarm-near-end",
    "warn",
    "It has to be replaced within a year: do it before the hand-over.",
    "common-practice",
)
ALARM_WITHOUT_DATE = Rule(
    "alarm-without-date",
    "warn",
    "Without a date nobody knows when it has to be replaced.",
    "usfa-smoke-alarms",
)
ALARM_SOUND_UNKNOWN = Rule(
    "alarm-sound-unknown",
    "warn",
    "Owners who cannot tell an alarm from a chirp take the battery out.",
    "common-practice",
)
ONE_ALARM = Rule(
    "one-smoke-alarm",
    "note",
    "One alarm at one end may not wake those at the other.",
    "common-practice",
)
NO_EXTINGUISHER = Rule(
    "no-extinguisher",
    "stop",
    "A unit that cooks or heats goes out with an extinguisher by the door.",
    "nfpa-1192",
)
EXTINGUISHER_OUT_OF_DATE = Rule(
    "extinguisher-out-of-date",
    "stop",
    "One that cannot be refilled leaves service 12 years after its make.",
    "nfpa-10",
)
EXTINGUISHER_WITHOUT_DATE = Rule(
    "extinguisher-without-date",
    "warn",
    "Without a date nobody knows whether it still works.",
    "nfpa-10",
)
NO_SECOND_WAY_OUT = Rule(
    "no-second-way-out",
    "hold",
    "A fire at the only way out is a trap.",
    "nfpa-1192",
)
WAYS_OUT_UNKNOWN = Rule(
    "ways-out-unknown",
    "stop",
    "The way out is shown at the hand-over, so somebody has to find it.",
    "nfpa-1192",
)
RULES: Final = (
    NO_LP_ALARM,
    NO_CO_ALARM,
    GENERATOR_WITHOUT_CO,
    NO_SMOKE_ALARM,
    ALARM_AT_END,
    ALARM_NEAR_END,
    ALARM_WITHOUT_DATE,
    ALARM_SOUND_UNKNOWN,
    ONE_ALARM,
    NO_EXTINGUISHER,
    EXTINGUISHER_OUT_OF_DATE,
    EXTINGUISHER_WITHOUT_DATE,
    NO_SECOND_WAY_OUT,
    WAYS_OUT_UNKNOWN,
)
_DETECTS: Final = {
    "smoke": ("smoke", "smoke_and_co"),
    "co": ("co", "co_and_lp", "smoke_and_co"),
    "lp": ("lp", "co_and_lp"),
}
_MANY_SLEEPERS: Final = 4
_NEAR_YEARS: Final = 1
_WAYS: Final = 2


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on alarms, extinguisher and ways out."""
    yield from _missing_alarms(case)
    for alarm in items(case.spec.safety.alarms):
        yield from _alarm(case, alarm)
    yield from _extinguisher(case)
    yield from _ways_out(case)


def _detecting(case: Case, what: str) -> list[Alarm]:
    return [
        alarm
        for alarm in items(case.spec.safety.alarms)
        if alarm.detects in _DETECTS[what]
    ]


def _missing_alarms(case: Case) -> Iterator[Finding]:
    spec = case.spec
    where = "safety.alarms"
    if spec.lp.supply != "none" and not _detecting(case, "lp"):
        yield NO_LP_ALARM.found("gas, and no LP alarm", where)
    sleeps = spec.body.sleeps
    if not _detecting(case, "co"):
        if spec.ac.generator not in ("none", "unknown"):
            what = "a built-in generator, and no CO alarm"
            yield GENERATOR_WITHOUT_CO.found(what, where)
        elif sleeps:
            yield NO_CO_ALARM.found("people sleep in it, and no CO alarm", where)
    smoke = _detecting(case, "smoke")
    if sleeps and not smoke:
        yield NO_SMOKE_ALARM.found("people sleep in it, and no smoke alarm", where)
    elif isinstance(sleeps, int) and sleeps > _MANY_SLEEPERS and len(smoke) == 1:
        what = f"one smoke alarm for {sleeps} sleepers"
        yield ONE_ALARM.found(what, f"{where}[{smoke[0].id}]")


def _alarm(case: Case, alarm: Alarm) -> Iterator[Finding]:
    at = f"safety.alarms[{alarm.id}]"
    name = f"the alarm {alarm.id.replace('-', ' ')}"
    if alarm.alarm_sound == "unknown":
        what = f"nobody wrote down how {name} sounds"
        yield ALARM_SOUND_UNKNOWN.found(what, f"{at}.alarm_sound", alarm.id)
    end = alarm.replace_by
    if not isinstance(end, dt.date):
        what = f"{name} has no date to replace it by"
        yield ALARM_WITHOUT_DATE.found(what, f"{at}.replace_by", alarm.id)
        return
    said = f"{name} has to be replaced by {end:%B} {end.year}"
    if end <= case.day:
        yield ALARM_AT_END.found(said, f"{at}.replace_by", alarm.id)
    elif end <= dates.years_after(case.day, _NEAR_YEARS):
        yield ALARM_NEAR_END.found(said, f"{at}.replace_by", alarm.id)


def _extinguisher(case: Case) -> Iterator[Finding]:
    where = "safety.extinguisher"
    extinguisher = fitted(case.spec.safety.extinguisher)
    if extinguisher is None:
        yield NO_EXTINGUISHER.found("no fire extinguisher is known", where)
        return
    made = extinguisher.made
    if not isinstance(made, dt.date):
        what = "the extinguisher's date is not known"
        yield EXTINGUISHER_WITHOUT_DATE.found(what, f"{where}.made")
    elif dates.years_after(made, EXTINGUISHER_YEARS) <= case.day:
        what = f"the extinguisher was made in {made:%B} {made.year}"
        yield EXTINGUISHER_OUT_OF_DATE.found(what, f"{where}.made")


def _ways_out(case: Case) -> Iterator[Finding]:
    exits = case.spec.safety.exits
    if not case.spec.body.sleeps:
        return
    if exits == "unknown":
        yield WAYS_OUT_UNKNOWN.found("the ways out are not known", "safety.exits")
    elif len(items(exits)) < _WAYS:
        what = "there is no second way out"
        yield NO_SECOND_WAY_OUT.found(what, "safety.exits")
