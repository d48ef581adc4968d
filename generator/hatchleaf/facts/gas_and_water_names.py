"""The names of facts of gas in use, hot water, water, waste, furnace and food."""

from __future__ import annotations

from typing import Final

_GAS: Final = (
    "lp.supply",
    "lp.supply.kind",
    "lp.supply.cylinders",
    "lp.supply.cylinders.id",
    "lp.supply.cylinders.holds",
    "lp.supply.volume",
)
_CYLINDER: Final = _GAS[:-1]
_FURNACE: Final = ("climate.furnace", "climate.furnace.lp_input")
_BLOWER: Final = ("climate.furnace", "climate.furnace.blower")
_BURNERS: Final = (
    *_FURNACE,
    "hot_water",
    "hot_water.lp_input",
    "kitchen.cooktop",
    "kitchen.cooktop.lp_input",
    "kitchen.cooktop.burners",
    "kitchen.oven",
    "kitchen.oven.lp_input",
    "kitchen.outside",
    "kitchen.outside.burner",
    "kitchen.outside.lp_input",
    "kitchen.fridge",
    "kitchen.fridge.lp_input",
)
_HEATER: Final = ("hot_water", "hot_water.kind")
_TANK_HEATER: Final = (
    *_HEATER,
    "hot_water.volume",
    "hot_water.lp_input",
    "hot_water.element",
)
_TANKS: Final = ("water.tanks", "water.tanks.id", "water.tanks.volume")
_WASTE: Final = (
    "waste.tanks",
    "waste.tanks.id",
    "waste.tanks.volume",
    "waste.tanks.holds",
)
_OUTLET: Final = ("waste.outlets", "waste.outlets.kind")
_FRIDGE: Final = ("kitchen.fridge", "kitchen.fridge.kind", "body.market")
_COLD: Final = "[50 °F | 40 °F | 30 °F | 20 °F | 10 °F | 0 °F]"

ROWS: Final[dict[str, tuple[str, tuple[str, ...]]]] = {
    "lp.regulator_use": (
        "all burners as a share of what the regulator can pass: 40 %",
        ("lp.regulator", "lp.regulator.capacity", "lp.outlets", *_BURNERS),
    ),
    "lp.cylinder_weight": (
        "one full cylinder with its steel (typical) [cylinder id]: 57 lb",
        _CYLINDER,
    ),
    "lp.requalify": (
        "when a cylinder's first requalification is due [cylinder id]: August 2038",
        (*_CYLINDER, "lp.supply.cylinders.made", "body.market"),
    ),
    "lp.hot_water": (
        "hot water from one full cylinder (typical) [cylinder id]: 960 gal",
        (*_CYLINDER, *_HEATER, "hot_water.lp_input", "hot_water.efficiency"),
    ),
    "lp.day": (
        (
            "gas that one appliance burns in a usual day (typical) "
            "[furnace | water-heater | cooktop | fridge]: 4 lb a day"
        ),
        _BURNERS,
    ),
    "lp.mix": (
        (
            "gas that all appliances burn in a usual day (typical) "
            "[cold days | warm days]: 5.6 lb a day"
        ),
        _BURNERS,
    ),
    "lp.days": (
        "usual days on all the gas (typical) [cold days | warm days]: 10 days",
        (*_GAS, *_BURNERS),
    ),
    "lp.furnace_nights_by_duty": (
        (
            "nights on all the gas by how much the furnace runs (typical) "
            "[25 % | 50 % | 75 % | 100 %]: 10 nights"
        ),
        (*_GAS, *_FURNACE),
    ),
    "lp.furnace_nights_by_cold": (
        f"nights on all the gas by the cold outside (typical) {_COLD}: 14 nights",
        (*_GAS, *_FURNACE),
    ),
    "furnace.gas_by_cold": (
        f"gas that the furnace burns in a night (typical) {_COLD}: 4.3 lb",
        _FURNACE,
    ),
    "furnace.charge_night": (
        "battery that the furnace's fan takes in a cold night (typical): 24 Ah",
        _BLOWER,
    ),
    "furnace.charge_by_cold": (
        f"battery that the furnace's fan takes in a night (typical) {_COLD}: 26 Ah",
        _BLOWER,
    ),
    "hot_water.reheat": (
        (
            "time to heat a tank of cold water (typical) "
            "[gas | electric | gas and electric]: 21 minutes"
        ),
        _TANK_HEATER,
    ),
    "hot_water.recovery": (
        (
            "hot water that the heater makes (typical) "
            "[gas | electric | gas and electric]: 17 gal an hour"
        ),
        _TANK_HEATER,
    ),
    "hot_water.mixed": (
        "warm water from a hot tank (typical): 5.6 gal",
        _TANK_HEATER,
    ),
    "hot_water.shower": (
        "one shower from a hot tank (typical): 2 minutes",
        _TANK_HEATER,
    ),
    "hot_water.rise": (
        (
            "how much warmer the water gets on its way through "
            "[1 gal a minute | 1.5 gal a minute | 2 gal a minute | 2.5 gal a minute]: "
            "68 °F"
        ),
        (
            *_HEATER,
            "hot_water.lp_input",
            "hot_water.efficiency",
            "hot_water.least_flow",
        ),
    ),
    "hot_water.scald": (
        (
            "time in which water burns an adult's skin deeply "
            "[150 °F | 140 °F | 130 °F | 120 °F]: 2 seconds"
        ),
        _HEATER,
    ),
    "water.fill_minutes": (
        "time to fill empty fresh tanks from a park tap (typical): 15 minutes",
        _TANKS,
    ),
    "water.pump_minutes": (
        "soonest that the pump empties full fresh tanks: 15 minutes",
        (*_TANKS, "water.pump", "water.pump.flow"),
    ),
    "water.push": (
        (
            "push on each square foot of a tank that got the most pressure of the "
            "pipes: 8,700 lb of force"
        ),
        ("water.most_pressure",),
    ),
    "water.antifreeze": (
        "antifreeze to winterize the pipes (typical) [at least | at most]: 3 gal",
        (
            "water.pump",
            "water.pump.kind",
            "hot_water",
            "hot_water.kind",
            "hot_water.bypass",
            "hot_water.volume",
        ),
    ),
    "waste.days": (
        (
            "days until waste tanks are full, used with care (typical) "
            "[gray | black | combined, 1 person | 2 people | 4 people | 6 people]: "
            "5 days"
        ),
        _WASTE,
    ),
    "waste.drain_seconds": (
        "time that a full waste tank takes to run out (typical) [tank id]: 40 seconds",
        (*_WASTE, *_OUTLET),
    ),
    "waste.hose_fall": (
        "how much lower the hose must end [10 ft | 15 ft | 20 ft]: 2.5 in",
        _OUTLET,
    ),
    "waste.rinse_fill": (
        "clean water for one rinse of a tank (typical) [tank id]: 9 gal",
        (*_WASTE, "waste.rinse"),
    ),
    "waste.rinse_fills": (
        "how often to fill and dump it to rinse it (typical) [tank id]: 2 fills",
        (*_WASTE, "waste.rinse"),
    ),
    "food.holds": (
        "time that a shut fridge keeps food safe [fridge | full freezer]: 4 hours",
        _FRIDGE,
    ),
    "food.warm_limit": (
        "longest that food may be above 40 °F: 2 hours",
        _FRIDGE,
    ),
}
"""Base name -> what it says with an example of its print, and the fields it reads."""
