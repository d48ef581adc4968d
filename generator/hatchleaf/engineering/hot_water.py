"""
Hot water: how fast it warms, how far it goes, and how fast it burns skin.

A BTU is the heat that warms a pound of water by one Fahrenheit degree; with 8.34 lb
in a gallon, a flow of one gallon a minute takes 500.4 BTU an hour for each degree.
Efficiencies and usual temperatures are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.engineering.water import DENSITY
from hatchleaf.units import Quantity, convert, fahrenheit_difference, quantity

HEAT_CAPACITY: Final = quantity(1, "Btu / pound / delta_degF")
"""Heat that warms water: 1 BTU for a pound and a degree."""

TANK_EFFICIENCY: Final = 0.75
"""Share of the gas's heat that a tank heater puts into the water (trade pages)."""

ON_DEMAND_EFFICIENCY: Final = 0.82
"""The same of a heater without a tank, where its papers say nothing; from memory."""

COLD: Final = 60.0
"""degF of the water that comes in; colder in the north and in winter."""

SET_POINT: Final = 120.0
"""degF at the tap that public advice on scalds asks for."""

AT_THE_SHOWER: Final = 105.0
"""degF of a warm shower."""

USABLE_SHARE: Final = 0.70
"""Share of a tank that comes out hot before cold water thins it.

The same share as in the first-hour rating of water heaters (trade pages)."""

SHOWER_FLOW: Final = quantity(2.0, "gallon / minute")
"""The most that a water-saving shower head lets through (EPA WaterSense)."""

FLOWS: Final = tuple(quantity(one, "gallon / minute") for one in (1.0, 1.5, 2.0, 2.5))
"""Flows to show side by side; 2.5 is the federal limit of a shower head."""

SCALDS: Final[Mapping[float, Quantity]] = MappingProxyType(
    {
        150.0: quantity(2, "second"),
        140.0: quantity(6, "second"),
        130.0: quantity(30, "second"),
        120.0: quantity(5, "minute"),
    }
)
"""degF at the tap -> time until an adult's skin burns deeply (CPSC, tap water scalds).

Other tables differ by some seconds; a child's skin burns sooner."""


def heat(volume: Quantity, rise: float) -> Quantity:
    """
    Return the heat that warms some water.

    Args:
        volume: How much water.  [volume]
        rise: By how many Fahrenheit degrees.

    Returns:
        Heat in Btu.

    Raises:
        pint.DimensionalityError: *volume* is not a volume.

    >>> f"{heat(quantity(6, 'gallon'), 60):,.0f~P}"
    '3,002 Btu'
    """
    degrees = quantity(rise, "delta_degF")
    return convert(volume * DENSITY * HEAT_CAPACITY * degrees, "Btu")


def warmed(gained: Quantity, rise: float) -> Quantity:
    """
    Return how much water some heat warms.

    Args:
        gained: Heat that gets into the water.  [energy]
        rise: By how many Fahrenheit degrees, above 0.

    Returns:
        Volume in gallons.

    Raises:
        ValueError: *rise* is not above 0.
        pint.DimensionalityError: *gained* is not an energy.
    """
    degrees = quantity(_above_zero(rise, "rise"), "delta_degF")
    return convert(gained / (DENSITY * HEAT_CAPACITY * degrees), "gallon")


def rise(rate: Quantity, flow: Quantity, *, efficiency: float) -> Quantity:
    """
    Return by how much water gets warmer on its way through a heater.

    Args:
        rate: The heater's rated input.  [power]
        flow: Water through it.  [volume / time]
        efficiency: Share of the input that gets into the water, from 0 to 1.

    Returns:
        Difference of temperature in Fahrenheit degrees.

    Raises:
        ValueError: *efficiency* is outside its range.
        pint.DimensionalityError: *rate* or *flow* has another dimension.
    """
    gained = rate * _share(efficiency)
    return convert(gained / (flow * DENSITY * HEAT_CAPACITY), "delta_degF")


def reheat_time(
    volume: Quantity, rise: float, rate: Quantity, *, efficiency: float = 1.0
) -> Quantity:
    """
    Return how long a tank takes to get hot.

    Args:
        volume: Water in the tank.  [volume]
        rise: By how many Fahrenheit degrees.
        rate: The flame's rated input, or the element's power.  [power]
        efficiency: Share of it that gets into the water, above 0 and up to 1; all
            of an element's does.

    Returns:
        Time in minutes.

    Raises:
        ValueError: *efficiency* is outside its range.
        pint.DimensionalityError: *volume* or *rate* has another dimension.
    """
    gained = rate * _above_zero(_share(efficiency), "efficiency")
    return convert(heat(volume, rise) / gained, "minute")


def recovery(rate: Quantity, rise: float, *, efficiency: float = 1.0) -> Quantity:
    """
    Return how much water a heater warms in an hour.

    Args:
        rate: The flame's rated input, or the element's power.  [power]
        rise: By how many Fahrenheit degrees, above 0.
        efficiency: Share of it that gets into the water, from 0 to 1.

    Returns:
        Flow in gallons an hour.

    Raises:
        ValueError: *rise* or *efficiency* is outside its range.
        pint.DimensionalityError: *rate* is not a power.
    """
    degrees = quantity(_above_zero(rise, "rise"), "delta_degF")
    gained = rate * _share(efficiency)
    return convert(gained / (DENSITY * HEAT_CAPACITY * degrees), "gallon / hour")


def hot_share(cold: float, hot: float, mixed: float) -> float:
    """
    Return the share of hot water in a mix.

    Args:
        cold: degF of the cold water.
        hot: degF of the hot water, above *cold*.
        mixed: degF wanted, from *cold* to *hot*.

    Raises:
        ValueError: The temperatures are not in that order.
    """
    if not cold <= mixed <= hot or cold == hot:
        raise ValueError(f"cold {cold}, mixed {mixed} and hot {hot} are out of order")
    return fahrenheit_difference(mixed, cold) / fahrenheit_difference(hot, cold)


def mixed_volume(
    stored: Quantity, *, cold: float = COLD, hot: float = SET_POINT, mixed: float
) -> Quantity:
    """
    Return how much warm water some hot water makes.

    Args:
        stored: Hot water.  [volume]
        cold: degF of the water that it is mixed with.
        hot: degF of the hot water.
        mixed: degF wanted, above *cold* and up to *hot*.

    Returns:
        Volume in gallons.

    Raises:
        ValueError: The temperatures are not in that order.
        pint.DimensionalityError: *stored* is not a volume.
    """
    share = _above_zero(hot_share(cold, hot, mixed), "mixed above cold")
    return convert(stored / share, "gallon")


def shower_time(warm: Quantity, *, flow: Quantity = SHOWER_FLOW) -> Quantity:
    """
    Return how long warm water lasts under a shower.

    Args:
        warm: Water at the temperature of the shower.  [volume]
        flow: What the shower head lets through.  [volume / time]

    Returns:
        Time in minutes.

    Raises:
        pint.DimensionalityError: *warm* or *flow* has another dimension.
    """
    return convert(warm / flow, "minute")


def _share(efficiency: float) -> float:
    if not 0 <= efficiency <= 1:
        raise ValueError(f"efficiency must be from 0 to 1, got {efficiency}")
    return efficiency


def _above_zero(value: float, what: str) -> float:
    if not value > 0:
        raise ValueError(f"{what} must be above 0, got {value}")
    return value
