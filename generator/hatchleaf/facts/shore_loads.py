"""All that draws shore power, each with its watts and where they stand."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.facts.sheet import Sheet, fitted, items, number, stated
from hatchleaf.facts.supplies import ShoreLoad
from hatchleaf.spec.model.living import (
    AbsorptionFridge,
    Fireplace,
    HouseholdFridge,
    InductionPlate,
)
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec

_NOT_ON_15: Final = 20.0
"""Amperes: what the page of shore power keeps off a 15 A outlet needs this much."""


def loads_of(spec: UnitSpec, sheet: Sheet, *, starts: bool) -> tuple[ShoreLoad, ...]:
    """
    Return all that draws shore power, in the order of the table, and write it down.

    Args:
        spec: The unit.
        sheet: Where the watts, and what is missing, are noted.
        starts: True to keep what starts hard or heats off the smallest outlets; that
            is the practice of North America, where those are 15 A at 120 V.
    """
    loads = tuple(_all(spec, sheet, _NOT_ON_15 if starts else 0.0))
    for load in loads:
        _load(load, sheet)
    return loads


def _all(spec: UnitSpec, sheet: Sheet, least: float) -> Iterator[ShoreLoad]:
    parts = {
        "climate.air_conditioners": spec.climate.air_conditioners,
        "hot_water": spec.hot_water,
        "kitchen.cooktop": spec.kitchen.cooktop,
        "ac.loads": spec.ac.loads,
        "dc.converter": spec.dc.converter,
        "kitchen.fridge": spec.kitchen.fridge,
    }
    for path, part in parts.items():
        if part == "unknown":
            sheet.stop([path], "shore.load")
    yield from _coolers(spec, least)
    element = getattr(spec.hot_water, "element", "none")
    if isinstance(element, Reading):
        given = number("hot_water.element", element)
        yield ShoreLoad(
            "water-heater",
            "water heater",
            given,
            _leg_of(spec, "hot_water"),
            least_amps=least,
            least_why="it leaves too little for the rest",
        )
    if isinstance(spec.climate.fireplace, Fireplace):
        given = number("climate.fireplace.watts", spec.climate.fireplace.watts)
        leg = _leg_of(spec, "climate.fireplace")
        yield ShoreLoad("fireplace", "fireplace on heat", given, leg)
    if isinstance(spec.kitchen.cooktop, InductionPlate):
        given = number("kitchen.cooktop.watts", spec.kitchen.cooktop.watts)
        yield ShoreLoad("cooktop", "induction plate", given)
    for load in items(spec.ac.loads):
        given = number(f"ac.loads[{load.id}].watts", load.watts)
        yield ShoreLoad(load.id, load.name, given, load.leg)
    if converter := fitted(spec.dc.converter):
        given = number("dc.converter.draw", converter.draw)
        yield ShoreLoad(
            "charger", "battery charger", given, _leg_of(spec, "dc.converter")
        )
    if isinstance(spec.kitchen.fridge, (AbsorptionFridge, HouseholdFridge)):
        given = number("kitchen.fridge.watts", spec.kitchen.fridge.watts)
        power = "shore power" if spec.body.market in ("us", "ca") else "the mains"
        yield ShoreLoad(
            "fridge", f"fridge on {power}", given, _leg_of(spec, "kitchen.fridge")
        )


def _leg_of(spec: UnitSpec, part: str) -> str:
    """Return the leg that the list of breakers has for a part, else ``unknown``."""
    legs = {one.leg for one in items(spec.ac.breakers) if one.part == part}
    return legs.pop() if len(legs) == 1 else "unknown"


def _coolers(spec: UnitSpec, least: float) -> Iterator[ShoreLoad]:
    coolers = items(spec.climate.air_conditioners)
    for one in coolers:
        which = "" if len(coolers) == 1 else f"{one.id} "
        given = number(f"climate.air_conditioners[{one.id}].watts", one.watts)
        yield ShoreLoad(
            one.id,
            f"{which}air conditioner",
            given,
            one.leg,
            least_amps=least,
            least_why="it takes more when it starts",
        )


def _load(load: ShoreLoad, sheet: Sheet) -> None:
    name = f"shore.load[{load.item}]"
    if sheet.lacks([load.given], name):
        return
    sheet.add(
        name,
        load.given.quantity,
        "watt",
        how="up",
        digits=stated(load.given.quantity, "watt"),
        basis=f"The {load.words} takes {load.given.text} while it runs.",
        given=[load.given],
        source="own-labels",
        label=load.words,
    )
