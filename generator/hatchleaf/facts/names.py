"""
The names of all facts, what they say, and the spec fields that they rest on.

A block names facts by these; a fact's text is printed with its unit, so that a
block writes ``{{ fact("lp.furnace_nights") }}`` and gets ``12 nights``.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

_GAS: Final = (
    "lp.supply",
    "lp.supply.kind",
    "lp.supply.cylinders",
    "lp.supply.cylinders.id",
    "lp.supply.cylinders.holds",
    "lp.supply.volume",
)
_BURNERS: Final = (
    "climate.furnace",
    "climate.furnace.lp_input",
    "hot_water",
    "hot_water.lp_input",
    "kitchen.cooktop",
    "kitchen.cooktop.lp_input",
    "kitchen.fridge",
    "kitchen.fridge.lp_input",
)
_TANKS: Final = ("water.tanks", "water.tanks.id", "water.tanks.volume")
_TREATED: Final = (*_TANKS, "hot_water", "hot_water.volume", "hot_water.bypass")
_WASTE: Final = ("waste.tanks", "waste.tanks.id", "waste.tanks.volume")
_BATTERIES: Final = (
    "dc.batteries",
    "dc.batteries.id",
    "dc.batteries.charge",
    "dc.batteries.volts",
)
_USABLE: Final = (
    *_BATTERIES,
    "dc.batteries.usable",
    "dc.batteries.chemistry",
)
_SHORE: Final = (
    "ac.shore",
    "ac.shore.service",
    "ac.shore.volts",
    "ac.shore.legs",
    "body.market",
)
_AC_LOADS: Final = (
    "ac.loads",
    "ac.loads.id",
    "ac.loads.name",
    "ac.loads.watts",
    "climate.air_conditioners",
    "climate.air_conditioners.id",
    "climate.air_conditioners.watts",
    "hot_water",
    "hot_water.element",
    "dc.converter",
    "dc.converter.draw",
    "kitchen.cooktop",
    "kitchen.cooktop.watts",
    "kitchen.fridge",
    "kitchen.fridge.watts",
)
_LABEL: Final = ("weights.regime", "weights.cargo_label")
_ADDED: Final = ("added", "added.weight")
_AWNING: Final = ("awnings", "awnings.id", "awnings.width", "awnings.reach")

# base -> (what it says with an example of its print, spec fields it may read)
_TABLE: Final[dict[str, tuple[str, tuple[str, ...]]]] = {
    "lp.stored": ("gas in all full cylinders or the tank: 60 lb", _GAS),
    "lp.energy": ("heat in all of that gas: 1,290,000 BTU", _GAS),
    "lp.cylinder_energy": ("heat in one full cylinder [cylinder id]", _GAS),
    "lp.load": ("all burners at once, their input: 63,000 BTU/h", _BURNERS),
    "lp.hours": (
        (
            "hours of one appliance on all the gas, its burner always lit "
            "[furnace | water-heater | cooktop | fridge]: 43 hours"
        ),
        (*_GAS, *_BURNERS),
    ),
    "lp.furnace_night": (
        "gas that the furnace burns in a cold night (typical): 4.9 lb",
        ("climate.furnace", "climate.furnace.lp_input"),
    ),
    "lp.furnace_nights": (
        "cold nights on all the gas, furnace alone (typical): 12 nights",
        (*_GAS, "climate.furnace", "climate.furnace.lp_input"),
    ),
    "water.capacity": ("all fresh tanks: 31 gal", _TANKS),
    "water.weight": ("water in full fresh tanks: 259 lb", _TANKS),
    "water.days": (
        (
            "days of fresh water, used with care (typical) "
            "[1 person | 2 people | 4 people | 6 people]: 3 days"
        ),
        _TANKS,
    ),
    "water.bleach_volume": (
        "water that the bleach must treat, the heater's tank included: 37 gal",
        _TREATED,
    ),
    "water.bleach": (
        "bleach for 50 ppm in that water [5.25 % | 6 % | 7.5 % | 8.25 %]: 4.6 fl oz",
        _TREATED,
    ),
    "waste.capacity": ("one waste tank [tank id]: 30 gal", _WASTE),
    "waste.weight": ("one full waste tank [tank id]: 251 lb", _WASTE),
    "waste.precharge": (
        (
            "water to leave in a black or combined tank after dumping (typical) "
            "[tank id]: 2 gal"
        ),
        (*_WASTE, "waste.tanks.holds"),
    ),
    "waste.rinse_minutes": (
        "time until an empty tank can overflow by its rinse inlet: 10 minutes",
        (*_WASTE, "waste.rinse", "waste.rinse.tank", "waste.rinse.flow"),
    ),
    "battery.capacity": ("all house batteries: 2,400 Wh", _BATTERIES),
    "battery.usable": ("what may be taken out of them: 1,200 Wh", _USABLE),
    "battery.hours": (
        (
            "hours of one 12 V load alone, running all the time "
            "[load id | fridge | water-pump]: 24 hours"
        ),
        (
            *_USABLE,
            "dc.loads",
            "dc.loads.id",
            "dc.loads.name",
            "dc.loads.draw",
            "kitchen.fridge",
            "kitchen.fridge.draw",
            "water.pump",
            "water.pump.draw",
        ),
    ),
    "battery.furnace_hours": (
        (
            "hours of a cold night that the batteries feed the furnace's blower "
            "(typical): 33 hours"
        ),
        (*_USABLE, "climate.furnace", "climate.furnace.blower"),
    ),
    "shore.service": ("the whole shore connection: 3,600 W", _SHORE),
    "shore.continuous": ("80 % of it, for hours on end: 2,880 W", _SHORE),
    "shore.amps_continuous": ("the same in amperes, each leg: 24 A", _SHORE),
    "shore.load": (
        (
            "one thing on shore power "
            "[load id | water-heater | charger | cooktop | fridge]: 1,500 W"
        ),
        _AC_LOADS,
    ),
    "shore.together": (
        (
            "whether two or three of them may run at once, by the main breaker only "
            "[load + load]: fits, too much or not known"
        ),
        (
            *_SHORE,
            *_AC_LOADS,
            "ac.loads.leg",
            "climate.air_conditioners.leg",
        ),
    ),
    "weights.gvwr": ("the most the loaded unit may weigh: 7,450 lb", ("weights.gvwr",)),
    "weights.cargo": ("cargo as its label says: 1,490 lb", _LABEL),
    "weights.empty": (
        "GVWR less the label's cargo: 5,960 lb",
        (*_LABEL, "weights.gvwr"),
    ),
    "weights.water": ("water in full fresh tanks: 259 lb", _TANKS),
    "weights.added": ("what the dealership added: 122 lb", _ADDED),
    "weights.cargo_left": (
        "cargo left with full fresh tanks and the additions: 1,100 lb",
        (*_LABEL, *_TANKS, *_ADDED),
    ),
    "weights.hitch": ("weight on the hitch: 690 lb", ("weights.hitch",)),
    "weights.hitch_share": (
        "hitch weight as a share of the whole, both from a scale: 11.4 %",
        ("weights.hitch", "weights.scale_total"),
    ),
    "tires.pressure": (
        "the placard's pressure, cold: 65 psi",
        ("gear.tires", "gear.tires.pressure"),
    ),
    "tires.load": (
        "load of one tire at it: 2,150 lb",
        ("gear.tires", "gear.tires.load"),
    ),
    "tires.pressure_at": (
        (
            "what a tire set cold at 70 °F shows at another temperature "
            "[0 °F | 30 °F | 50 °F | 70 °F | 90 °F | 110 °F]: 59 psi"
        ),
        ("gear.tires", "gear.tires.pressure"),
    ),
    "awnings.area": ("one awning's cloth [awning id]: 128 sq ft", _AWNING),
    "awnings.wind_force": (
        (
            "wind on the open awning "
            "[awning id, 15 mph | 20 mph | 25 mph | 30 mph]: 140 lb of force"
        ),
        _AWNING,
    ),
    "awnings.wind_limit": (
        "the maker's wind limit [awning id]: 20 mph",
        ("awnings", "awnings.id", "awnings.wind_limit"),
    ),
}

KNOWN: Final[Mapping[str, str]] = MappingProxyType(
    {base: says for base, (says, _) in _TABLE.items()}
)
"""Base name -> what it says, its items in brackets, and how it prints."""

READS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {base: tuple(dict.fromkeys(fields)) for base, (_, fields) in _TABLE.items()}
)
"""Base name -> the spec fields that it may rest on, without items."""
