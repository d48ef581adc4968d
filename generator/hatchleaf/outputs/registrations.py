"""Which makers' cards an owner sends in: what is fitted, with its serial number."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from hatchleaf.blocks.conditions import MISSING, values
from hatchleaf.spec.checked import items
from hatchleaf.spec.model.unit import UnitSpec

UNIT: Final = "The unit itself"

CARDED: Final = (
    ("vehicle", "Base vehicle", "vehicle"),
    ("gear.axles", "Axles", "axles"),
    ("gear.tires", "Tires", "tires"),
    ("gear.hitch", "Coupling", "coupling"),
    ("gear.leveling", "Leveling", "leveling"),
    ("gear.mover", "Mover", "mover"),
    ("slides", "Slide-out", "slide"),
    ("hot_water", "Water heater", "water-heater"),
    ("water.pump", "Water pump", "pump"),
    ("waste.toilet", "Toilet", "toilet"),
    ("climate.furnace", "Furnace", "furnace"),
    ("climate.fuel_heater", "Fuel heater", "fuel-heater"),
    ("climate.hydronic", "Hydronic heating", "hydronic"),
    ("climate.fireplace", "Fireplace", "fireplace"),
    ("climate.air_conditioners", "Air conditioner", "air-conditioner"),
    ("kitchen.cooktop", "Cooktop", "cooktop"),
    ("kitchen.oven", "Oven", "oven"),
    ("kitchen.microwave", "Microwave", "microwave"),
    ("kitchen.fridge", "Fridge", "fridge"),
    ("kitchen.second_fridge", "Second fridge", "second-fridge"),
    ("kitchen.ice_maker", "Ice maker", "ice-maker"),
    ("kitchen.dishwasher", "Dishwasher", "dishwasher"),
    ("kitchen.laundry", "Washer", "washer"),
    ("kitchen.outside", "Outside kitchen", "outside-kitchen"),
    ("dc.batteries", "House battery", "battery"),
    ("dc.converter", "Battery charger", "charger"),
    ("dc.solar", "Solar", "solar"),
    ("ac.inverter", "Inverter", "inverter"),
    ("ac.generator", "Generator", "generator"),
    ("awnings", "Awning", "awning"),
    ("media.televisions", "Television", "television"),
    ("media.stereo", "Stereo", "stereo"),
    ("media.router", "Router", "router"),
    ("safety.alarms", "Alarm", "alarm"),
)
"""Path of a part that makers take cards for, its name, and its serial number's id."""

_TOGETHER: Final = ("gear.axles",)
"""Parts of which one card speaks for all."""
_NO_MACHINE: Final = ("prepared",)
"""Kinds of a part that are its taps and wires alone."""


@dataclass(frozen=True)
class Registration:
    """One maker's card: of what, and its serial number where the file has it."""

    what: str
    number: str
    """Empty where it has to be read from the part."""


def registrations(spec: UnitSpec) -> tuple[Registration, ...]:
    """
    Return the cards that the owners of *spec* may have to send.

    A serial number belongs to the part that it is named after: ``furnace``, or
    ``air-conditioner-front`` where there are several.  One that is named otherwise
    gets a line of its own.
    """
    serials = {one.id: one.number for one in items(spec.serials)}
    rows = [Registration(UNIT, "" if spec.vin == "none" else spec.vin)]
    for path, name, base in CARDED:
        for item in _apart(spec, path):
            named = (f"{base}-{item}", item) if item else (base,)
            found = next((one for one in named if one in serials), "")
            words = f"{name} ({item.replace('-', ' ')})" if item else name
            rows.append(Registration(words, serials.pop(found, "")))
    rows += [
        Registration(one.replace("-", " ").capitalize(), number)
        for one, number in serials.items()
    ]
    return tuple(rows)


def not_known(spec: UnitSpec) -> tuple[str, ...]:
    """Return the names of parts of which nobody could tell whether they are fitted."""
    return tuple(
        name for path, name, _ in CARDED if "unknown" in tuple(values(spec, path))
    )


def _apart(spec: UnitSpec, path: str) -> Iterator[str]:
    """Yield the id of each fitted part that is told from others, nothing for one."""
    found = [
        part
        for part in values(spec, path)
        if part is not MISSING
        and not isinstance(part, str)
        and getattr(part, "kind", "") not in _NO_MACHINE
    ]
    if len(found) > 1 and path not in _TOGETHER:
        yield from (getattr(part, "id", "") for part in found)
    elif found:
        yield ""
