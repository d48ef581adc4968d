"""
Propane: how much heat a unit carries, and how long it lasts.

Constants are for commercial propane at 60 degF, from the table of approximate
properties of LP-gases in the LP-gas code (NFPA 58, annex B; trade copies of it).
Heat is reckoned by weight alone: the table's heat per gallon contradicts its own
heat per pound times its own density by 1 %.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, quantity

HEAT_PER_MASS: Final = quantity(21_548, "Btu / pound")
"""Total (gross) heating value after vaporisation."""

LIQUID_DENSITY: Final = quantity(4.20, "pound / gallon")
"""Mass of one US gallon of liquid."""

TANK_FILL: Final = 0.80
"""Share of a fixed tank's water volume that may be filled with liquid."""


def fixed_tank_fill(volume: Quantity) -> Quantity:
    """
    Return the gas in a fixed (ASME) tank filled to its limit.

    Args:
        volume: Water volume on the tank's plate.  [volume]

    Returns:
        Mass of propane, in pounds.

    Raises:
        pint.DimensionalityError: *volume* is not a volume.
    """
    return convert(volume * TANK_FILL * LIQUID_DENSITY, "pound")


def stored_heat(fill: Quantity) -> Quantity:
    """
    Return the heat in a full cylinder or tank.

    Args:
        fill: Mass of propane when filled to the legal limit.  [mass]

    Returns:
        Heat released by burning all of it, in Btu.

    Raises:
        pint.DimensionalityError: *fill* is not a mass.

    >>> f"{stored_heat(quantity(20, 'pound')):,.0f~P}"
    '430,960 Btu'
    """
    return convert(fill * HEAT_PER_MASS, "Btu")


def runtime(fill: Quantity, burner: Quantity, *, duty: float = 1.0) -> Quantity:
    """
    Return how long *fill* feeds one burner.

    Args:
        fill: Mass of propane at the start.  [mass]
        burner: Rated input of the appliance, not its output.  [power]
        duty: Share of the time that the burner is lit, above 0 and up to 1.

    Returns:
        Time until the gas is used up, in hours.

    Raises:
        ValueError: *duty* is outside its range.
        pint.DimensionalityError: *fill* or *burner* has another dimension.
    """
    return convert(stored_heat(fill) / (burner * _share(duty)), "hour")


def burned(burner: Quantity, time: Quantity, *, duty: float = 1.0) -> Quantity:
    """
    Return the gas that one burner uses.

    Args:
        burner: Rated input of the appliance, not its output.  [power]
        time: How long it is switched on.  [time]
        duty: Share of that time that the burner is lit, above 0 and up to 1.

    Returns:
        Mass of propane, in pounds.

    Raises:
        ValueError: *duty* is outside its range.
        pint.DimensionalityError: *burner* or *time* has another dimension.
    """
    return convert(burner * _share(duty) * time / HEAT_PER_MASS, "pound")


def regulator_use(load: Quantity, capacity: Quantity) -> Quantity:
    """
    Return how much of its capacity a regulator must pass.

    Args:
        load: Inputs of all burners that may be lit at once.  [power]
        capacity: The most that the regulator can pass, as its plate says.  [power]

    Returns:
        Share in percent; above 100 it cannot feed them all.

    Raises:
        pint.DimensionalityError: *load* or *capacity* is not a power.
    """
    return convert(load / capacity, "percent")


def _share(duty: float) -> float:
    if not 0 < duty <= 1:
        raise ValueError(f"duty must be above 0 and up to 1, got {duty}")
    return duty
