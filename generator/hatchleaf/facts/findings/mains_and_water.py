"""Findings on shore power, water pressure, the water heater and awnings."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.sheet import fitted, items
from hatchleaf.facts.shore import TOO_MUCH
from hatchleaf.spec.model.water import ModePanel, PressureInlet, TankHeater
from hatchleaf.units import number_in

LOADS_CLASH = Rule(
    "loads-clash",
    "note",
    "The main breaker trips: show the owners what may run together.",
    "nec-continuous-load",
)
LOAD_ABOVE_SHORE = Rule(
    "load-above-shore",
    "warn",
    "One thing alone takes more than the plug may give for hours.",
    "nec-continuous-load",
)
GENERATOR_TOO_SMALL = Rule(
    "generator-too-small",
    "note",
    "The air conditioner may not start on it: show the owners what to switch off.",
    "common-practice",
)
NO_GFCI = Rule(
    "no-gfci",
    "stop",
    "A wet hand and a fault can kill where there is no ground-fault protection.",
    "nec-551",
)
WATER_UNREGULATED = Rule(
    "water-unregulated",
    "note",
    "Some park taps pass 100 psi: the owners need a regulator for the hose.",
    "trade-water-pressure",
)
WATER_LIMIT_UNKNOWN = Rule(
    "water-limit-unknown",
    "warn",
    "Nobody can say what the pipes stand.",
    "trade-water-pressure",
)
ELEMENT_WITHOUT_SWITCH = Rule(
    "element-without-switch",
    "warn",
    "It comes on with the shore power, and burns out in an empty tank.",
    "common-practice",
)
WIND_LIMIT_UNKNOWN = Rule(
    "wind-limit-unknown",
    "warn",
    "Only the maker knows when the awning has to come in.",
    "common-practice",
)
RULES: Final = (
    LOADS_CLASH,
    LOAD_ABOVE_SHORE,
    GENERATOR_TOO_SMALL,
    NO_GFCI,
    WATER_UNREGULATED,
    WATER_LIMIT_UNKNOWN,
    ELEMENT_WITHOUT_SWITCH,
    WIND_LIMIT_UNKNOWN,
)


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on shore power, water and awnings."""
    yield from _shore(case)
    yield from _generator(case)
    yield from _water(case)
    for awning in items(case.spec.awnings):
        if not awning.wind_limit.known:
            where = f"awnings[{awning.id}].wind_limit"
            what = f"the wind limit of the awning {awning.id} is not known"
            yield WIND_LIMIT_UNKNOWN.found(what, where, awning.id)


def _shore(case: Case) -> Iterator[Finding]:
    if fitted(case.spec.ac.shore) is None:
        return
    if case.spec.ac.gfci == "none":
        yield NO_GFCI.found("shore power, and no ground-fault protection", "ac.gfci")
    service = case.facts.get("shore.continuous")
    if service is not None and not isinstance(service.value, str | bool):
        legs = max(1, _legs(case))
        most = number_in(service.value, "watt") / legs
        for load in case.facts.of("shore.load"):
            if isinstance(load.value, str | bool):
                continue
            if number_in(load.value, "watt") > most:
                what = (
                    f"the {load.item_words} takes {load.shown()} alone, above the "
                    f"{most:.0f} W of the plug for hours"
                )
                yield LOAD_ABOVE_SHORE.found(what, load.inputs[0].path, load.item)
    clash = [fact for fact in case.facts.of("shore.together") if fact.value == TOO_MUCH]
    if clash:
        first = clash[0].item_words
        more = f", and {len(clash) - 1} more" if clash[1:] else ""
        what = f"cannot run together on the main breaker: {first}{more}"
        yield LOADS_CLASH.found(what, "ac.shore")


def _generator(case: Case) -> Iterator[Finding]:
    needed = case.facts.get("generator.needed")
    rated = case.facts.get("generator.rated")
    if needed is None or rated is None:
        return
    if isinstance(needed.value, str | bool) or isinstance(rated.value, str | bool):
        return
    if number_in(rated.value, "watt") < number_in(needed.value, "watt"):
        beside = " with the charger on" if fitted(case.spec.dc.converter) else ""
        what = (
            f"the built-in generator gives {rated.shown()} at sea level; the start of "
            f"the air conditioner typically asks for {needed.shown()}{beside}"
        )
        yield GENERATOR_TOO_SMALL.found(what, "ac.generator.watts")


def _legs(case: Case) -> int:
    shore = fitted(case.spec.ac.shore)
    return shore.legs if shore is not None and isinstance(shore.legs, int) else 1


def _water(case: Case) -> Iterator[Finding]:
    water = case.spec.water
    pressed = [
        one for one in items(water.inlets) if isinstance(one, PressureInlet | ModePanel)
    ]
    for inlet in pressed:
        if inlet.regulator == "none":
            what = f"no regulator is built in behind the water inlet '{inlet.id}'"
            where = f"water.inlets[{inlet.id}].regulator"
            yield WATER_UNREGULATED.found(what, where, inlet.id)
    limit = water.most_pressure
    if pressed and not isinstance(limit, str) and not limit.known:
        what = "the most pressure of the water pipes is not known"
        yield WATER_LIMIT_UNKNOWN.found(what, "water.most_pressure")
    heater = case.spec.hot_water
    if not isinstance(heater, TankHeater):
        return
    if heater.element != "none" and heater.element_switch_at == "none":
        what = "the water heater's element has no switch"
        yield ELEMENT_WITHOUT_SWITCH.found(what, "hot_water.element_switch_at")
