"""Findings on batteries, their chargers, solar and the inverter."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import battery as formulas
from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.sheet import fitted, items, total
from hatchleaf.facts.solar import TOO_SMALL
from hatchleaf.spec.model.dc import SolarPort
from hatchleaf.units import number_in, shown

SOLAR_BEYOND_FUSE = Rule(
    "solar-beyond-fuse",
    "stop",
    "A fuse too small for the panels blows in bright sun, and its holder overheats.",
    "nec-690",
)
SOLAR_BEYOND_CONTROLLER = Rule(
    "solar-beyond-controller",
    "warn",
    "A controller below its panels throws the best hours away, or overheats.",
    "common-practice",
)
SOLAR_WITHOUT_CONTROLLER = Rule(
    "solar-without-controller",
    "note",
    "A panel without its own controller overcharges the battery through this port.",
    "common-practice",
)
SOLAR_CONTROLLER_UNKNOWN = Rule(
    "solar-controller-unknown",
    "warn",
    "Two controllers in a row disturb each other; no controller at all can ruin the "
    "battery.",
    "common-practice",
)
MIXED_BATTERIES = Rule(
    "mixed-batteries",
    "stop",
    "Batteries of unlike chemistry on one charger overcharge one and starve the other.",
    "common-practice",
)
UNEQUAL_BATTERIES = Rule(
    "unequal-batteries",
    "warn",
    "Unlike batteries side by side age fast: the weak one drags the strong one down.",
    "common-practice",
)
LFP_ON_WRONG_CHARGER = Rule(
    "lfp-on-wrong-charger",
    "stop",
    "A charger for lead acid does not fill LFP, and may harm it by its last stage.",
    "lfp-cell-charging",
)
LFP_CHARGER_UNKNOWN = Rule(
    "lfp-charger-unknown",
    "warn",
    "Nobody can tell whether the charger suits the LFP battery.",
    "lfp-cell-charging",
)
INVERTER_WITHOUT_BATTERY = Rule(
    "inverter-without-battery",
    "stop",
    "An inverter without a battery gives nothing, so something is missing.",
    "common-practice",
)
INVERTER_ABOVE_BATTERY = Rule(
    "inverter-above-battery",
    "warn",
    "At full load it pulls the battery down within minutes and switches off.",
    "common-practice",
)
NO_DISCONNECT = Rule(
    "no-disconnect",
    "note",
    "The battery runs down in storage, and cannot be cut off in a fault.",
    "common-practice",
)
SHORT_FURNACE_NIGHT = Rule(
    "short-furnace-night",
    "note",
    "Owners who camp without a plug wake up cold: show them the number.",
    "common-practice",
)
RULES: Final = (
    SOLAR_BEYOND_FUSE,
    SOLAR_BEYOND_CONTROLLER,
    SOLAR_WITHOUT_CONTROLLER,
    SOLAR_CONTROLLER_UNKNOWN,
    MIXED_BATTERIES,
    UNEQUAL_BATTERIES,
    LFP_ON_WRONG_CHARGER,
    LFP_CHARGER_UNKNOWN,
    INVERTER_WITHOUT_BATTERY,
    INVERTER_ABOVE_BATTERY,
    NO_DISCONNECT,
    SHORT_FURNACE_NIGHT,
)
_NIGHT_HOURS: Final = 8.0
# Watts for each watt-hour: LFP gives its capacity in an hour, lead acid in two;
# common practice, no source.
_MOST_RATE: Final = {"lfp": 1.0, "agm": 0.5, "gel": 0.5, "flooded": 0.5}


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on the 12 V side."""
    yield from _solar(case)
    yield from _batteries(case)
    yield from _inverter(case)


def _solar(case: Case) -> Iterator[Finding]:
    for fact in case.facts.of("solar.fuse"):
        if fact.value == TOO_SMALL:
            needs = case.facts[f"solar.circuit_current[{fact.item}]"].shown()
            what = f"the fuse of the panels {fact.item} is below the {needs} they need"
            yield SOLAR_BEYOND_FUSE.found(
                what, f"dc.solar[{fact.item}].fuse", fact.item
            )
    for fact in case.facts.of("solar.controller"):
        if fact.value == TOO_SMALL:
            where = f"dc.solar[{fact.item}].controller_amps"
            what = f"the controller is too small for the panels {fact.item}"
            yield SOLAR_BEYOND_CONTROLLER.found(what, where, fact.item)
    for port in items(case.spec.dc.solar):
        if not isinstance(port, SolarPort):
            continue
        where = f"dc.solar[{port.id}].controller"
        if port.controller == "none":
            what = f"no controller is built in behind the solar port '{port.id}'"
            yield SOLAR_WITHOUT_CONTROLLER.found(what, where, port.id)
        elif port.controller == "unknown":
            what = f"nobody knows whether a controller is behind the port {port.id}"
            yield SOLAR_CONTROLLER_UNKNOWN.found(what, where, port.id)


def _batteries(case: Case) -> Iterator[Finding]:
    dc = case.spec.dc
    batteries = items(dc.batteries)
    kinds = {one.chemistry for one in batteries} - {"unknown"}
    if len(kinds) > 1:
        what = f"batteries of unlike chemistry are fitted: {', '.join(sorted(kinds))}"
        yield MIXED_BATTERIES.found(what, "dc.batteries")
    sizes = {
        number_in(one.charge.quantity, "ampere_hour")
        for one in batteries
        if one.charge.quantity is not None
    }
    if len(sizes) > 1:
        said = ", ".join(f"{size:g} Ah" for size in sorted(sizes))
        what = f"batteries of unlike size are fitted: {said}"
        yield UNEQUAL_BATTERIES.found(what, "dc.batteries")
    converter = fitted(dc.converter)
    if converter is not None and "lfp" in kinds:
        where = "dc.converter.lithium"
        if converter.lithium == "no":
            what = "an LFP battery hangs on a charger that is not made for it"
            yield LFP_ON_WRONG_CHARGER.found(what, where)
        elif converter.lithium == "unknown":
            what = "an LFP battery hangs on a charger of which nobody knows the kind"
            yield LFP_CHARGER_UNKNOWN.found(what, where)
    if batteries and dc.disconnect == "none":
        what = "no switch cuts the battery off"
        yield NO_DISCONNECT.found(what, "dc.disconnect")
    night = case.facts.get("battery.furnace_hours")
    if night is None or isinstance(night.value, str | bool):
        return
    if number_in(night.value, "hour") < _NIGHT_HOURS:
        what = f"the batteries feed the furnace's blower for {night.shown()} alone"
        yield SHORT_FURNACE_NIGHT.found(what, "dc.batteries")


def _inverter(case: Case) -> Iterator[Finding]:
    inverter = fitted(case.spec.ac.inverter)
    if inverter is None:
        return
    batteries = items(case.spec.dc.batteries)
    if not batteries:
        if case.spec.dc.batteries == "none":
            what = "an inverter is fitted, and no battery"
            yield INVERTER_WITHOUT_BATTERY.found(what, "ac.inverter")
        return
    watts = inverter.watts.quantity
    given = []
    for one in batteries:
        charge, volts = one.charge.quantity, one.volts.quantity
        if charge is None or volts is None or one.chemistry not in _MOST_RATE:
            return
        given.append(formulas.energy(charge, volts) * _MOST_RATE[one.chemistry])
    most = total(given, "watt_hour")
    if watts is None or number_in(watts, "watt") <= number_in(most, "watt_hour"):
        return
    what = (
        f"the inverter of {shown(watts, 'watt')} is above what the batteries can give "
        f"for long, about {number_in(most, 'watt_hour'):.0f} W"
    )
    yield INVERTER_ABOVE_BATTERY.found(what, "ac.inverter.watts")
