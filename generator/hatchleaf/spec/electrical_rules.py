"""Rules on batteries and shore power."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem
from hatchleaf.spec.checked import Checked, items, number
from hatchleaf.spec.model.ac import Ac, Inverter, ShoreCord
from hatchleaf.spec.model.dc import Converter, Dc
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.model.living import Climate
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in

# The rating in the plug's own name; NEMA WD 6 and IEC 60309 name plugs by it.
_PLUG_AMPERES: Final = {
    "5_15": 15.0,
    "5_20": 20.0,
    "tt_30": 30.0,
    "14_50": 50.0,
    "iec_16": 16.0,
}
_TWO_LEGS: Final = "14_50"
_MOST_VOLTS: Final = {"iec_16": (220.0, 250.0)}
_US_VOLTS: Final = (110.0, 130.0)
_WHOLE: Final = 100.0


def shore_fits_its_plug(unit: Checked) -> Iterator[Problem]:
    """Yield a service, a voltage or legs that the plug does not have."""
    ac = unit.section("ac", Ac)
    if ac is None or not isinstance(ac.shore, ShoreCord):
        return
    shore = ac.shore
    if shore.legs == 1:
        yield from _second_leg(unit, ac)
    if shore.plug == "unknown":
        return
    service, volts = number(shore.service), number(shore.volts)
    most = _PLUG_AMPERES[shore.plug]
    if service is not None and number_in(service, "ampere") > most:
        what = f"the service is above the plug's {most:g} A"
        yield unit.problem("ac.shore.service", what)
    low, high = _MOST_VOLTS.get(shore.plug, _US_VOLTS)
    if volts is not None and not low <= number_in(volts, "volt") <= high:
        what = f"a plug {shore.plug} does not have this voltage from leg to neutral"
        yield unit.problem("ac.shore.volts", what, f"{low:g} V to {high:g} V")
    legs = 2 if shore.plug == _TWO_LEGS else 1
    if shore.legs not in (legs, "unknown"):
        what = f"a plug {shore.plug} does not have {shore.legs} legs"
        yield unit.problem("ac.shore.legs", what, str(legs))


def _second_leg(unit: Checked, ac: Ac) -> Iterator[Problem]:
    climate = unit.section("climate", Climate)
    found = [f"ac.loads[{load.id}].leg" for load in items(ac.loads) if load.leg == "b"]
    found += [
        f"climate.air_conditioners[{cooler.id}].leg"
        for cooler in items(climate.air_conditioners if climate else None)
        if cooler.leg == "b"
    ]
    found += [
        f"ac.breakers[{breaker.id}].leg"
        for breaker in items(ac.breakers)
        if breaker.leg in ("b", "both")
    ]
    for path in found:
        yield unit.problem(path, "the shore power has one leg", "a, unknown")


def batteries_are_possible(unit: Checked) -> Iterator[Problem]:
    """Yield a usable share that no battery has."""
    dc = unit.section("dc", Dc)
    for battery in items(dc.batteries if dc else None):
        share = number(battery.usable)
        if share is not None and not 0 < number_in(share, "percent") <= _WHOLE:
            what = "the usable share of a battery is above 0 % and at most 100 %"
            yield unit.problem(f"dc.batteries[{battery.id}].usable", what)


def charger_is_told_twice_alike(unit: Checked) -> Iterator[Problem]:
    """Yield an inverter-charger that only one of its two fields names."""
    dc, ac = unit.section("dc", Dc), unit.section("ac", Ac)
    if dc is None or ac is None:
        return
    kinds = _kind(dc.converter), _kind(ac.inverter)
    if "unknown" in kinds:
        return
    charges, inverts = (kind == "inverter_charger" for kind in kinds)
    if charges != inverts:
        path = "ac.inverter" if charges else "dc.converter"
        what = "an inverter-charger stands under dc.converter and under ac.inverter"
        yield unit.problem(path, what)


def _kind(part: Converter | Inverter | str) -> str:
    return part if isinstance(part, str) else part.kind


def fuses_feed_what_is_there(unit: Checked) -> Iterator[Problem]:
    """Yield a fuse or breaker of a part that the unit does not have."""
    dc, ac = unit.section("dc", Dc), unit.section("ac", Ac)
    fed = {
        f"dc.fuses[{one.id}].part": one.part for one in items(dc.fuses if dc else None)
    }
    fed |= {
        f"ac.breakers[{one.id}].part": one.part
        for one in items(ac.breakers if ac else None)
    }
    for path, part in fed.items():
        section, *rest = part.split(".")
        # Of a section that did not validate, another problem has been told.
        if part == "none" or (
            section in UnitSpec.model_fields and section not in unit.values
        ):
            continue
        found: object = unit.values.get(section)
        for step in rest:
            found = _below(found, step)
        if found is None:
            hint = "the path of a part, with the id of an item of a list"
            yield unit.problem(path, f"'{part}' is no part of this unit", hint=hint)
        elif found == "none":
            yield unit.problem(path, f"the unit's file says that {part} is none")


def _below(value: object, step: str) -> object:
    """Return the field or the item *step* of *value*, None where there is none."""
    if isinstance(value, tuple):
        return next((each for each in value if getattr(each, "id", "") == step), None)
    if isinstance(value, Part) and step in type(value).model_fields:
        return getattr(value, step)
    # Below a part that nobody could look at, anything may be.
    return value if value in ("none", "unknown") else None


RULES: Final = (
    shore_fits_its_plug,
    fuses_feed_what_is_there,
    batteries_are_possible,
    charger_is_told_twice_alike,
)
