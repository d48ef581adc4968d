"""Findings on tires: what they carry, how old they are."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import dates, tires
from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.loading import tires_of
from hatchleaf.facts.sheet import fitted, items
from hatchleaf.spec.model.gear import FittedTire, Tires
from hatchleaf.units import number_in, quantity, shown

TIRES_BELOW_AXLE = Rule(
    "tires-below-axle",
    "stop",
    "Tires have to carry what their axle may carry, at the placard's pressure.",
    "common-practice",
)
TIRES_SMALL_RESERVE = Rule(
    "tires-small-reserve",
    "note",
    "Builders leave tires a tenth above the axle; without it, load both sides alike.",
    "nfpa-1192",
)
TIRE_PRESSURE_UNKNOWN = Rule(
    "tire-pressure-unknown",
    "stop",
    "A soft tire bursts: the placard's pressure has to be known at the hand-over.",
    "common-practice",
)
TIRE_LOAD_UNKNOWN = Rule(
    "tire-load-unknown",
    "warn",
    "Nobody can tell whether the tires carry their axle.",
    "common-practice",
)
TIRE_OLD = Rule(
    "tire-old",
    "stop",
    "Tire makers ask for replacement after six to ten years, whatever the tread.",
    "nhtsa-tire-age",
)
TIRES_MIXED = Rule(
    "tires-mixed",
    "warn",
    "Tires of unlike age wear and carry unlike; ask why one was replaced.",
    "common-practice",
)
TIRE_DATE_UNKNOWN = Rule(
    "tire-date-unknown",
    "warn",
    "A tire ages standing still, and only its code tells how old it is.",
    "cfr-574-tin",
)
TIRES_NOT_LISTED = Rule(
    "tires-not-listed",
    "warn",
    "Every tire on the road needs its date looked at.",
    "common-practice",
)
RULES: Final = (
    TIRES_BELOW_AXLE,
    TIRES_SMALL_RESERVE,
    TIRE_PRESSURE_UNKNOWN,
    TIRE_LOAD_UNKNOWN,
    TIRE_OLD,
    TIRES_MIXED,
    TIRE_DATE_UNKNOWN,
    TIRES_NOT_LISTED,
)
_OLD_YEARS: Final = 6
_RESERVE_PERCENT: Final = 10.0


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on the tires."""
    wheels = fitted(case.spec.gear.tires)
    if wheels is None:
        return
    if not wheels.pressure.known:
        what = "the tire pressure of the placard is not known"
        yield TIRE_PRESSURE_UNKNOWN.found(what, "gear.tires.pressure")
    on_axles = [tires_of(axle, wheels) for axle in items(case.spec.gear.axles)]
    loads = {one.load.path for one in on_axles if one and not one.load.known}
    for path in sorted(loads):
        what = "the load of one tire is not known"
        yield TIRE_LOAD_UNKNOWN.found(what, path)
    yield from _reserve(case)
    yield from _dates(case, wheels)


def _reserve(case: Case) -> Iterator[Finding]:
    for fact in case.facts.of("weights.tire_reserve"):
        if isinstance(fact.value, str | bool):
            continue
        reserve = number_in(fact.value, "percent")
        if reserve < 0:
            short = shown(quantity(-reserve, "percent"), "percent", digits=2, how="up")
            what = f"the tires of the {fact.item_words} carry {short} less than it may"
            yield TIRES_BELOW_AXLE.found(what, fact.inputs[0].path, fact.item)
        elif reserve < _RESERVE_PERCENT:
            what = (
                f"the tires carry only {fact.shown()} more than the {fact.item_words}"
            )
            yield TIRES_SMALL_RESERVE.found(what, fact.inputs[0].path, fact.item)


def _dates(case: Case, wheels: Tires) -> Iterator[Finding]:
    listed = items(wheels.fitted)
    # An axle that nobody looked at has two at the least.
    axles = [tires_of(axle, wheels) for axle in items(case.spec.gear.axles)]
    needed = sum(one.count if one else 2 for one in axles)
    if len(listed) < needed:
        what = f"{len(listed)} of at least {needed} tires are listed"
        yield TIRES_NOT_LISTED.found(what, "gear.tires.fitted")
    made = {tire: tires.made_in(tire.made) for tire in listed if _dated(tire)}
    for tire in listed:
        where = f"gear.tires.fitted[{tire.id}].made"
        name = tire.id.replace("-", " ")
        if tire not in made:
            what = f"the date of the tire {name} is not known"
            yield TIRE_DATE_UNKNOWN.found(what, where, tire.id)
        elif dates.years_after(made[tire], _OLD_YEARS) <= case.day:
            what = f"the tire {name} was made in {_month(made[tire])}"
            yield TIRE_OLD.found(what, where, tire.id)
    if not made:
        return
    oldest, newest = min(made.values()), max(made.values())
    if dates.years_after(oldest, 1) < newest:
        what = f"the tires were made from {_month(oldest)} to {_month(newest)}"
        yield TIRES_MIXED.found(what, "gear.tires.fitted")


def _dated(tire: FittedTire) -> bool:
    return tire.made != "unknown"


def _month(day: dt.date) -> str:
    return f"{day:%B} {day.year}"
