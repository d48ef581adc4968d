"""The gas of a unit and the appliances that burn it, as LP facts need them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hatchleaf.engineering import furnace, gas_day, hot_water
from hatchleaf.facts.sheet import Given, fitted, number, word
from hatchleaf.spec.model.living import AbsorptionFridge, GasCooktop
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.water import OnDemandHeater, TankHeater
from hatchleaf.units import Quantity, number_in


@dataclass(frozen=True)
class Burner:
    """One gas appliance; `given` is its input, or the part that is not known."""

    item: str
    words: str
    given: Given
    hours: float | None = None
    """Hours that it is usually lit on a cold day; None: there is no usual figure."""
    flames: Given | None = None
    """How many burners its input is for, where one alone is usually lit."""


@dataclass(frozen=True)
class Gas:
    """All the gas of a unit; `mass` is None where it is not known."""

    mass: Quantity | None
    given: tuple[Given, ...]
    words: str


def burners(spec: UnitSpec) -> Iterator[Burner]:
    """Yield the appliances that burn gas, or may: those that are not known too."""
    yield from _furnace(spec)
    yield from _water_heater(spec)
    yield from _kitchen(spec)
    yield from _outside(spec)


def _furnace(spec: UnitSpec) -> Iterator[Burner]:
    heating = spec.climate.furnace
    night = number_in(furnace.NIGHT, "hour") * furnace.DUTY
    if heating == "unknown":
        yield Burner("furnace", "furnace", Given("climate.furnace"), night)
    elif there := fitted(heating):
        given = number("climate.furnace.lp_input", there.lp_input)
        yield Burner("furnace", "furnace", given, night)


def _water_heater(spec: UnitSpec) -> Iterator[Burner]:
    heater = spec.hot_water
    burns = getattr(heater, "lp_input", "none")
    # A combi boiler heats the rooms too, for hours that nobody can call usual.
    hours = (
        gas_day.TANK_HEATER_HOURS
        if isinstance(heater, TankHeater)
        else gas_day.ON_DEMAND_HOURS
        if isinstance(heater, OnDemandHeater)
        else None
    )
    if heater == "unknown":
        yield Burner("water-heater", "water heater", Given("hot_water"))
    elif not isinstance(burns, str):
        given = number("hot_water.lp_input", burns)
        yield Burner("water-heater", "water heater", given, hours)


def _kitchen(spec: UnitSpec) -> Iterator[Burner]:
    cooktop = spec.kitchen.cooktop
    if cooktop == "unknown":
        yield Burner("cooktop", "cooktop", Given("kitchen.cooktop"))
    elif isinstance(cooktop, GasCooktop):
        count = "" if cooktop.burners in (0, "unknown") else str(cooktop.burners)
        yield Burner(
            "cooktop",
            "cooktop with all burners",
            number("kitchen.cooktop.lp_input", cooktop.lp_input),
            gas_day.COOKTOP_HOURS,
            word("kitchen.cooktop.burners", count),
        )
    oven = spec.kitchen.oven
    if oven == "unknown":
        yield Burner("oven", "oven", Given("kitchen.oven"))
    elif there := fitted(oven):
        given = number("kitchen.oven.lp_input", there.lp_input)
        # Some bake every day and some never: nobody can call hours usual.
        yield Burner("oven", "oven", given)
    fridge = spec.kitchen.fridge
    if fridge == "unknown":
        yield Burner("fridge", "fridge", Given("kitchen.fridge"))
    elif isinstance(fridge, AbsorptionFridge):
        given = number("kitchen.fridge.lp_input", fridge.lp_input)
        yield Burner("fridge", "fridge", given, gas_day.FRIDGE_HOURS)


def _outside(spec: UnitSpec) -> Iterator[Burner]:
    outside = spec.kitchen.outside
    if outside == "unknown":
        yield Burner("outside", "burner outside", Given("kitchen.outside"))
        return
    there = fitted(outside)
    if there is None:
        return
    if there.burner == "unknown":
        yield Burner("outside", "burner outside", Given("kitchen.outside.burner"))
    elif there.burner == "lp" and not isinstance(there.lp_input, str):
        given = number("kitchen.outside.lp_input", there.lp_input)
        # Some cook outside every day and some never: nobody can call hours usual.
        yield Burner("outside", "burner outside", given)


@dataclass(frozen=True)
class Warmth:
    """One way to heat water: a flame or an element, and how well it does."""

    item: str
    given: Given
    efficiency: float
    words: str
    """How well, in words: ``75 % of its heat in the water``."""
    stated: tuple[Given, ...] = ()
    """The efficiency, where the file states it."""


def warmths(spec: UnitSpec) -> list[Warmth]:
    """Return the ways in which the fitted water heater heats; none where unknown."""
    heater = spec.hot_water
    found: list[Warmth] = []
    flame = getattr(heater, "lp_input", "none")
    if not isinstance(flame, str):
        share = hot_water.TANK_EFFICIENCY
        stated: tuple[Given, ...] = ()
        if isinstance(heater, OnDemandHeater):
            share, stated = _on_demand(heater)
        found.append(
            Warmth(
                "gas",
                number("hot_water.lp_input", flame),
                share,
                f"{100 * share:g} % of its heat in the water",
                stated,
            )
        )
    element = getattr(heater, "element", "none")
    if not isinstance(element, str):
        given = number("hot_water.element", element)
        found.append(Warmth("electric", given, 1.0, "all its heat in the water"))
    return found


def _on_demand(heater: OnDemandHeater) -> tuple[float, tuple[Given, ...]]:
    own = number("hot_water.efficiency", heater.efficiency)
    if not own.known:
        return hot_water.ON_DEMAND_EFFICIENCY, ()
    # A share above the whole is a slip of the pen: no heater makes heat.
    return min(1.0, number_in(own.quantity, "dimensionless")), (own,)
