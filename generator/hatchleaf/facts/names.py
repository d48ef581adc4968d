"""
The names of all facts, what they say, and the spec fields that they rest on.

A block names facts by these; a fact's text is printed with its unit, so that a
block writes ``{{ fact("lp.furnace_nights") }}`` and gets ``12 nights``.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.facts import gas_and_water_names

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
    "kitchen.oven",
    "kitchen.oven.lp_input",
    "kitchen.outside",
    "kitchen.outside.burner",
    "kitchen.outside.lp_input",
    "kitchen.fridge",
    "kitchen.fridge.lp_input",
)
_TANKS: Final = ("water.tanks", "water.tanks.id", "water.tanks.volume")
_TREATED: Final = (
    *_TANKS,
    "hot_water",
    "hot_water.volume",
    "hot_water.bypass",
    "body.length",
)
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
_CHEMISTRY: Final = ("dc.batteries", "dc.batteries.id", "dc.batteries.chemistry")
_TWELVE_VOLT: Final = (
    "dc.loads",
    "dc.loads.id",
    "dc.loads.draw",
    "dc.loads.runs",
    "kitchen.fridge",
    "kitchen.fridge.draw",
    "water.pump",
    "water.pump.draw",
    "climate.furnace",
    "climate.furnace.blower",
)
_ROOF: Final = ("dc.solar", "dc.solar.id", "dc.solar.watts", "body.market")
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
    "climate.fireplace.watts",
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
            "[furnace | water-heater | cooktop | oven | outside | fridge]: 43 hours"
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
        "water that the bleach must treat, with the heater's tank and pipes: 37 gal",
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
    "battery.usable_cold": (
        "what may be taken out of cold batteries (typical) [32 °F | 0 °F]: 890 Wh",
        _USABLE,
    ),
    "battery.night_use": (
        "what a night takes from them (typical) [mild | frost]: 420 Wh",
        _TWELVE_VOLT,
    ),
    "battery.nights": (
        "such nights on a full battery (typical) [mild | frost]: 2.6 nights",
        (*_USABLE, *_TWELVE_VOLT),
    ),
    "battery.day_use": (
        "what a whole day takes from them (typical) [mild | frost]: 700 Wh",
        _TWELVE_VOLT,
    ),
    "battery.days": (
        "days off the grid without any charge (typical) [mild | frost]: 1.5 days",
        (*_USABLE, *_TWELVE_VOLT),
    ),
    "battery.charge_hours": (
        "hours to fill them again (typical) [charger | charge line]: 8 hours",
        (
            *_USABLE,
            "dc.converter",
            "dc.converter.output",
            "gear.hitch",
            "gear.hitch.plug",
        ),
    ),
    "battery.charge_days": (
        (
            "days for the roof panels to fill them again (typical) "
            "[June at 40° north | December at 40° north]: 2.1 days"
        ),
        (*_USABLE, *_ROOF),
    ),
    "battery.at_rest": (
        (
            "what a meter shows at rest (typical) "
            "[full or nearly | half full | charge it now | any reading]: below 12.1 V"
        ),
        _CHEMISTRY,
    ),
    "battery.storage_days": (
        "days in storage until they are half full (typical) [switch on | switch off]",
        (
            *_USABLE,
            "dc.loads",
            "dc.loads.id",
            "dc.loads.draw",
            "dc.loads.runs",
            "dc.disconnect",
            "dc.disconnect.stays_on",
        ),
    ),
    "battery.freezes": (
        (
            "when a lead-acid battery begins to freeze (typical) [full "
            "| three quarters full | half full | a quarter full | empty]: 15 °F"
        ),
        _CHEMISTRY,
    ),
    "battery.coldest_charge": (
        "the cold below which an LFP battery must not be charged (typical): 32 °F",
        _CHEMISTRY,
    ),
    "inverter.hours": (
        (
            "hours of one thing alone through the inverter (typical) "
            "[all-it-can-give | load id | fridge]: 1.2 hours"
        ),
        (
            *_USABLE,
            "ac.inverter",
            "ac.inverter.watts",
            "ac.loads",
            "ac.loads.id",
            "ac.loads.name",
            "ac.loads.watts",
            "kitchen.fridge",
            "kitchen.fridge.watts",
        ),
    ),
    "solar.most_isc": (
        "the most short-circuit current at a port [port id]: 9.6 A",
        ("dc.solar", "dc.solar.id", "dc.solar.fuse"),
    ),
    "solar.most_watts": (
        "the most panel for the controller of a port [port id]: 120 W",
        ("dc.solar", "dc.solar.id", "dc.solar.controller_amps"),
    ),
    "solar.circuit_current": (
        "what the fuse of roof panels must be made for [panel id]: 16 A",
        ("dc.solar", "dc.solar.id", "dc.solar.isc"),
    ),
    "solar.fuse": (
        "whether that fuse is large enough [panel id]: fits or too small",
        ("dc.solar", "dc.solar.id", "dc.solar.isc", "dc.solar.fuse"),
    ),
    "solar.controller_current": (
        "the most that roof panels feed the battery [panel id]: 16 A",
        ("dc.solar", "dc.solar.id", "dc.solar.watts"),
    ),
    "solar.controller": (
        "whether the controller is large enough [panel id]: fits or too small",
        ("dc.solar", "dc.solar.id", "dc.solar.watts", "dc.solar.controller_amps"),
    ),
    "solar.day_energy": (
        (
            "what the roof panels give in a day (typical) [June at 30° north | June at "
            "40° north | June at 50° north | December at the same]: 780 Wh"
        ),
        _ROOF,
    ),
    "solar.day_charge": (
        (
            "the same in ampere-hours (typical) [June at 30° north | June at 40° north "
            "| June at 50° north | December at the same]: 65 Ah"
        ),
        _ROOF,
    ),
    "fuses.color": (
        "the blade fuse of one thing [solar-port id | awning-awning id]: 15 A, blue",
        (
            "dc.panel",
            "dc.panel.kind",
            "dc.solar",
            "dc.solar.id",
            "dc.solar.fuse",
            "awnings",
            "awnings.id",
            "awnings.fuse",
        ),
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
    "shore.supply": (
        "what each supply gives for hours, each leg [15 A | 20 A | 30 A | 50 A]",
        _SHORE,
    ),
    "shore.needs": (
        (
            "the smallest supply for one or two things [load | load + load]: "
            "15 A, 20 A, 30 A, 50 A, too much or not known"
        ),
        (
            *_SHORE,
            *_AC_LOADS,
            "ac.loads.leg",
            "climate.air_conditioners.leg",
        ),
    ),
    "shore.cord_drop": (
        "volts lost in the shore cord at its most for hours (typical): 1.8 V",
        ("ac.shore", "ac.shore.plug", "ac.shore.cord_length", "ac.shore.service"),
    ),
    "shore.extension_drop": (
        "volts lost in 50 ft of extension cord [14 gauge | 12 gauge | 10 gauge]: 2.4 V",
        ("ac.shore", "ac.shore.plug"),
    ),
    "generator.start": (
        "what an air conditioner takes at its start (typical) [its id]: 2,960 W",
        (
            "climate.air_conditioners",
            "climate.air_conditioners.id",
            "climate.air_conditioners.watts",
        ),
    ),
    "generator.needed": (
        (
            "what a generator must give to start the largest air conditioner beside "
            "the battery charger (typical): 3,600 W"
        ),
        (
            "ac.shore",
            "climate.air_conditioners",
            "climate.air_conditioners.id",
            "climate.air_conditioners.watts",
            "dc.converter",
            "dc.converter.draw",
        ),
    ),
    "generator.rated": (
        "what the built-in generator gives: 2,800 W",
        ("ac.generator", "ac.generator.watts"),
    ),
    "generator.at_height": (
        (
            "what is left of it up high (typical) "
            "[3,000 ft | 5,000 ft | 8,000 ft]: 2,300 W"
        ),
        ("ac.generator", "ac.generator.watts"),
    ),
    "climate.strip_heat": (
        "heat of an air conditioner's heat strip [its id]: 5,100 BTU/h",
        (
            "climate.air_conditioners",
            "climate.air_conditioners.id",
            "climate.air_conditioners.heat_strip",
        ),
    ),
    "body.height": (
        "height of the highest part, rounded up: 10 ft 9 in",
        ("body.height", "body.market"),
    ),
    "weights.gvwr": ("the most the loaded unit may weigh: 7,450 lb", ("weights.gvwr",)),
    "weights.cargo": ("cargo as its label says: 1,490 lb", _LABEL),
    "weights.empty": (
        "GVWR less the label's cargo: 5,960 lb",
        (*_LABEL, "weights.gvwr"),
    ),
    "weights.lp": (
        "full gas, which the cargo label has counted already: 60 lb",
        (*_GAS, "weights.regime"),
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
    "weights.water_share": (
        "full fresh tanks as a share of the label's cargo: 24 %",
        (*_LABEL, *_TANKS),
    ),
    "weights.added_limit": (
        "what a dealer may add without a corrected label: 100 lb",
        ("weights.gvwr", "weights.regime", "condition"),
    ),
    "weights.scale_left": (
        "GVWR less what the scale said: 1,430 lb",
        ("weights.gvwr", "weights.scale_total"),
    ),
    "weights.hitch_usual": (
        "usual hitch weight at full load (typical) [at least | at most]: 740 lb",
        ("weights.gvwr", "gear.hitch", "gear.hitch.kind", "body.market"),
    ),
    "weights.hitch_moved": (
        "hitch weight gained by a load moved forward [2 ft | 4 ft | 8 ft]: 25 lb",
        ("gear.hitch", "gear.hitch.to_axles", "body.market"),
    ),
    "weights.axles": (
        "what all axles may carry together: 7,000 lb",
        ("gear.axles", "gear.axles.gawr"),
    ),
    "weights.axle_room": (
        "what was left on the axles when the unit was weighed: 1,780 lb",
        (
            "gear.axles",
            "gear.axles.gawr",
            "weights.hitch",
            "weights.scale_total",
        ),
    ),
    "weights.tire_reserve": (
        "by how much its tires are rated above an axle [axle id]: 3.2 %",
        (
            "gear.axles",
            "gear.axles.id",
            "gear.axles.gawr",
            "gear.axles.tires",
            "gear.tires",
            "gear.tires.load",
            "gear.tires.dual_load",
        ),
    ),
    "leveling.block": (
        "block under the low wheels [1 degree | 2 degrees | 3 degrees | 4 degrees]",
        ("gear.axles", "gear.axles.track"),
    ),
    "leveling.fridge_gap": (
        "gap under a 2 ft level at the most lean of the fridge (typical): 1.2 in",
        ("kitchen.fridge", "kitchen.fridge.kind", "body.market"),
    ),
    "dates.alarm": (
        "month in which an alarm is replaced [alarm id]: July 2033",
        ("safety.alarms", "safety.alarms.id", "safety.alarms.replace_by"),
    ),
    "dates.extinguisher": (
        "last month of an extinguisher that cannot be refilled: May 2038",
        (
            "safety.extinguisher",
            "safety.extinguisher.kind",
            "safety.extinguisher.made",
        ),
    ),
    "dates.tire": (
        "month to replace a tire by (typical) [tire id]: August 2031",
        ("gear.tires", "gear.tires.fitted", "gear.tires.fitted.made"),
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
    "awnings.rain": ("one inch of rain on one awning [awning id]: 640 lb", _AWNING),
    "awnings.wind_limit": (
        "the maker's wind limit [awning id]: 20 mph",
        ("awnings", "awnings.id", "awnings.wind_limit"),
    ),
    **gas_and_water_names.ROWS,
}

_STAY: Final = "[1 person | 2 people | 4 people | 6 people, summer or frost night]"
# What runs out first takes its days from other facts: it reads what those read.
_ENDS: Final = {
    "fresh": ("days until the fresh water is used up", ("water.days",)),
    "gray": ("days until the gray tank is full", ("waste.days",)),
    "black": ("days until the black tank is full", ("waste.days",)),
    "combined": ("days until the combined tank is full", ("waste.days",)),
    "battery": ("days until the battery is empty", ("battery.days",)),
    "lp": ("days until the LP gas is used up", ("lp.days",)),
    "first": (
        "what comes to its end first",
        ("water.days", "waste.days", "battery.days", "lp.days"),
    ),
}
_TABLE.update(
    {
        f"endurance.{end}": (
            f"{says} (typical) {_STAY}: {'battery' if end == 'first' else '4 days'}",
            tuple(path for base in bases for path in _TABLE[base][1]),
        )
        for end, (says, bases) in _ENDS.items()
    }
)

DATED: Final = ("dates.alarm", "dates.extinguisher", "dates.tire", "lp.requalify")
"""The bases of facts that say a day, for the schedule of regular care."""

KNOWN: Final[Mapping[str, str]] = MappingProxyType(
    {base: says for base, (says, _) in _TABLE.items()}
)
"""Base name -> what it says, its items in brackets, and how it prints."""

READS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {base: tuple(dict.fromkeys(fields)) for base, (_, fields) in _TABLE.items()}
)
"""Base name -> the spec fields that it may rest on, without items."""
