"""Rules on gas, fresh water, hot water and waste."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem, listed, suggestion
from hatchleaf.spec.checked import Checked, items, number
from hatchleaf.spec.model.ac import Ac, Generator
from hatchleaf.spec.model.gas import Cylinders, Lp
from hatchleaf.spec.model.living import (
    AbsorptionFridge,
    Climate,
    Furnace,
    GasCooktop,
    Kitchen,
    OutsideKitchen,
)
from hatchleaf.spec.model.waste import RinseInlet, Toilet, Waste
from hatchleaf.spec.model.water import (
    CombiBoiler,
    GravityFill,
    ModePanel,
    OnDemandHeater,
    PressureInlet,
    Pump,
    TankHeater,
    Water,
)
from hatchleaf.units import number_in

_FED_FROM_A_TANK: Final = ("gravity_flush",)


def gas_is_complete(unit: Checked) -> Iterator[Problem]:
    """Yield gas parts without a supply, and a supply without what it needs."""
    lp = unit.section("lp", Lp)
    if lp is None or lp.supply == "unknown":
        return
    if lp.supply == "none":
        for name in ("regulator", "outlets"):
            if getattr(lp, name) not in ("none", "unknown"):
                what = "gas parts are fitted, but lp.supply is none"
                yield unit.problem(f"lp.{name}", what)
        for path in _gas_appliances(unit):
            what = "the appliance burns gas, but lp.supply is none"
            yield unit.problem(path, what)
        return
    if lp.regulator == "none":
        what = "a gas supply has a regulator"
        yield unit.problem("lp.regulator", what, "the regulator, unknown")
    supply = lp.supply
    alone = isinstance(supply, Cylinders) and len(supply.cylinders) == 1
    if alone and getattr(supply, "changeover", "none") not in ("none", "unknown"):
        what = "a change-over needs two cylinders"
        yield unit.problem("lp.supply.changeover", what, "none")


def _gas_appliances(unit: Checked) -> Iterator[str]:
    heater = unit.values.get("hot_water")
    burns = isinstance(heater, TankHeater) and heater.lp_input != "none"
    if burns or isinstance(heater, (OnDemandHeater, CombiBoiler)):
        yield "hot_water.lp_input"
    climate, kitchen = (
        unit.section("climate", Climate),
        unit.section("kitchen", Kitchen),
    )
    if climate and isinstance(climate.furnace, Furnace):
        yield "climate.furnace.lp_input"
    if kitchen and isinstance(kitchen.cooktop, GasCooktop):
        yield "kitchen.cooktop.kind"
    if kitchen and isinstance(kitchen.fridge, AbsorptionFridge):
        yield "kitchen.fridge.lp_input"
    outside = kitchen.outside if kitchen else "none"
    if isinstance(outside, OutsideKitchen) and outside.burner == "lp":
        yield "kitchen.outside.burner"
    ac = unit.section("ac", Ac)
    if ac and isinstance(ac.generator, Generator) and ac.generator.kind == "lp":
        yield "ac.generator.kind"


def water_pressure_is_said(unit: Checked) -> Iterator[Problem]:
    """Yield regulators and pressures that contradict one another."""
    water = unit.section("water", Water)
    if water is None:
        return
    pressed = [
        item
        for item in items(water.inlets)
        if isinstance(item, PressureInlet | ModePanel)
    ]
    if pressed and water.most_pressure == "none":
        what = "an inlet for city water is fitted, so the pipes have a most pressure"
        allowed = "the maker's number, unknown"
        yield unit.problem("water.most_pressure", what, allowed)
    known = number(water.most_pressure) is not None
    if not pressed and known and water.inlets != "unknown":
        what = "no inlet for city water is fitted"
        yield unit.problem("water.most_pressure", what, "none")
    for inlet in pressed:
        path = f"water.inlets[{inlet.id}].regulator_set"
        built_in = number(inlet.regulator_set)
        if inlet.regulator == "none" and built_in is not None:
            yield unit.problem(path, "no regulator is built in", "none")
        if inlet.regulator == "built_in" and inlet.regulator_set == "none":
            what = "a built-in regulator is set to some pressure"
            yield unit.problem(path, what, "its number, unknown")
        most = number(water.most_pressure)
        if most is None or built_in is None:
            continue
        if number_in(built_in, "psi") > number_in(most, "psi"):
            what = "the regulator lets through more than water.most_pressure"
            yield unit.problem(path, what)


def water_has_a_tank(unit: Checked) -> Iterator[Problem]:
    """Yield what fills or empties a fresh tank where there is none."""
    water = unit.section("water", Water)
    if water is None or water.tanks != "none":
        return
    for inlet in items(water.inlets):
        if isinstance(inlet, GravityFill) or inlet.kind in ("diverter", "panel"):
            what = "the inlet fills a tank, but water.tanks is none"
            yield unit.problem(f"water.inlets[{inlet.id}].kind", what)
    if isinstance(water.pump, Pump) and water.pump.kind == "demand":
        what = "the pump draws from a tank, but water.tanks is none"
        yield unit.problem("water.pump", what)


def heater_heats(unit: Checked) -> Iterator[Problem]:
    """Yield a water heater with neither gas nor an element."""
    heater = unit.values.get("hot_water")
    if isinstance(heater, TankHeater) and heater.lp_input == heater.element == "none":
        what = "a heater has gas, an element or both"
        yield unit.problem("hot_water.element", what)


def outside_burner_has_its_gas(unit: Checked) -> Iterator[Problem]:
    """Yield an outside kitchen whose burner and gas input contradict each other."""
    kitchen = unit.section("kitchen", Kitchen)
    if kitchen is None or not isinstance(kitchen.outside, OutsideKitchen):
        return
    outside, path = kitchen.outside, "kitchen.outside.lp_input"
    if outside.burner == "lp" and outside.lp_input == "none":
        what = "the burner burns gas, so it has an input"
        yield unit.problem(path, what, "its plate's number, unknown")
    if outside.burner in ("electric", "none") and number(outside.lp_input) is not None:
        what = f"the burner is {outside.burner}, but gas is stated for it"
        yield unit.problem(path, what, "none")


def rinse_has_its_tank(unit: Checked) -> Iterator[Problem]:
    """Yield a rinse inlet whose tank is not one of the waste tanks."""
    waste = unit.section("waste", Waste)
    if waste is None or not isinstance(waste.rinse, RinseInlet):
        return
    ids = [tank.id for tank in items(waste.tanks)]
    tank = waste.rinse.tank
    if waste.tanks != "unknown" and tank not in ids:
        what = f"no waste tank has the id '{tank}'"
        yield unit.problem(
            "waste.rinse.tank", what, listed(ids) or "none", suggestion(tank, ids)
        )


def toilet_has_its_tank(unit: Checked) -> Iterator[Problem]:
    """Yield a toilet without the tank it empties into, or with one too many."""
    waste = unit.section("waste", Waste)
    if waste is None or not isinstance(waste.toilet, Toilet):
        return
    toilet = waste.toilet
    if toilet.kind == "unknown":
        return
    if toilet.kind not in _FED_FROM_A_TANK:
        if toilet.holds == "none" and toilet.kind != "composting":
            what = f"a toilet of the kind '{toilet.kind}' has a tank of its own"
            yield unit.problem("waste.toilet.holds", what, "its volume, unknown")
        return
    if number(toilet.holds) is not None:
        what = "a gravity-flush toilet has no tank of its own"
        yield unit.problem("waste.toilet.holds", what, "none")
    holds = {tank.holds for tank in items(waste.tanks)}
    if waste.tanks != "unknown" and not holds & {"black", "combined", "unknown"}:
        what = "a gravity-flush toilet needs a black or combined tank"
        yield unit.problem("waste.toilet.kind", what)


RULES: Final = (
    gas_is_complete,
    water_pressure_is_said,
    water_has_a_tank,
    heater_heats,
    outside_burner_has_its_gas,
    rinse_has_its_tank,
    toilet_has_its_tank,
)
