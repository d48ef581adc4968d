"""
Waste tanks: their starting water, how soon they are full, how they empty and rinse.

The starting water is common practice, no source: 5 % of the tank, at least 2 gallons.
So are what a person adds in a day and the depth of water in a usual tank.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, quantity

PRECHARGE_SHARE: Final = 0.05
"""Share of a tank that is put back as clean water after dumping."""

LEAST_PRECHARGE: Final = quantity(2, "gallon")
"""The least that covers the floor of a tank."""

DAILY: Final[Mapping[str, Quantity]] = MappingProxyType(
    {
        "gray": quantity(4, "gallon / day"),
        "black": quantity(1, "gallon / day"),
        "combined": quantity(5, "gallon / day"),
    }
)
"""What one careful person adds a day: of 5 gal, 1 by the toilet; from memory."""

RESIDUE: Final = quantity(1, "gallon")
"""What stays on the floor of a drained tank; from memory."""

CLEAN_ENOUGH: Final = 0.01
"""Share of the old content that may stay after a rinse; common practice, no source."""

RINSE_FILL: Final = 1 / 3
"""Share of a tank that is filled for one rinse; common practice, no source."""

FALL: Final = quantity(0.25, "inch / foot")
"""Least fall of a drain of 2-1/2 in or less (IRC and IPC, table of drain slopes).

Larger pipes may do with half; a 3 in sewer hose sags, so the stricter one is taken."""

DEPTH: Final = quantity(10, "inch")
"""How deep the water stands in a usual full tank; from memory."""

ORIFICE: Final = 0.62
"""Discharge coefficient of a sharp-edged opening (handbooks of hydraulics)."""

_GRAVITY: Final = quantity(9.80665, "meter / second ** 2")


def precharge(tank: Quantity) -> Quantity:
    """
    Return the water to put into an emptied black or combined tank.

    Args:
        tank: Volume of the tank.  [volume]

    Returns:
        Volume in gallons.

    Raises:
        pint.DimensionalityError: *tank* is not a volume.
    """
    share = convert(tank * PRECHARGE_SHARE, "gallon")
    return max(share, LEAST_PRECHARGE)


def time_to_overflow(tank: Quantity, flow: Quantity) -> Quantity:
    """
    Return how soon a rinse can overflow an empty tank whose valve is shut.

    It is the soonest that harm can come, never time allowed: a tank that holds
    anything overflows sooner.

    Args:
        tank: Volume of the tank.  [volume]
        flow: The highest flow of the rinse inlet.  [volume / time]

    Returns:
        Time in minutes.

    Raises:
        pint.DimensionalityError: *tank* or *flow* has another dimension.
    """
    return convert(tank / flow, "minute")


def days(tank: Quantity, *, people: int, each: Quantity, start: Quantity) -> Quantity:
    """
    Return how long a tank takes to get full.

    Args:
        tank: Volume of the tank.  [volume]
        people: How many use it, 1 or more.
        each: What one person adds.  [volume / time]
        start: Water that it starts with.  [volume]

    Returns:
        Time in days; none if *start* fills it.

    Raises:
        ValueError: *people* is below 1.
        pint.DimensionalityError: An argument has another dimension.
    """
    if people < 1:
        raise ValueError(f"people must be 1 or more, got {people}")
    left = max(convert(tank - start, "gallon"), quantity(0, "gallon"))
    return convert(left / (each * people), "day")


def rinse_fills(
    fill: Quantity, *, residue: Quantity = RESIDUE, leave: float = CLEAN_ENOUGH
) -> int:
    """
    Return how often to fill and drain a tank until it is clean enough.

    Each fill thins what stayed behind to residue / (residue + fill) of itself.

    Args:
        fill: Clean water for one rinse.  [volume]
        residue: What stays when the tank has drained.  [volume]
        leave: Share of the old content that may stay, above 0 and below 1.

    Returns:
        How many times, 1 or more.

    Raises:
        ValueError: *fill* or *residue* is not above 0, or *leave* is outside its range.
        pint.DimensionalityError: *fill* or *residue* is not a volume.
    """
    thinned = convert(residue / (residue + fill), "dimensionless").magnitude
    if not (0 < thinned < 1 and 0 < leave < 1):
        raise ValueError(f"fill {fill:~P} and residue {residue:~P} must be above 0")
    # The logarithms of an exact number of fills may differ in their last bit.
    return max(1, math.ceil(math.log(leave) / math.log(thinned) - 1e-9))


def hose_fall(length: Quantity) -> Quantity:
    """
    Return how much lower the end of a sewer hose must lie.

    Args:
        length: Of the hose.  [length]

    Returns:
        Height in inches.

    Raises:
        pint.DimensionalityError: *length* is not a length.
    """
    return convert(length * FALL, "inch")


def drain_time(
    tank: Quantity, outlet: Quantity, *, depth: Quantity = DEPTH
) -> Quantity:
    """
    Return how long a full tank of straight walls takes to run out.

    Torricelli's law: the flow follows the square root of the depth, so the time is
    twice that at the first rate.  Solids and a long hose make it longer.

    Args:
        tank: Volume of the tank.  [volume]
        outlet: Width of the round outlet.  [length]
        depth: How deep the water stands when the tank is full.  [length]

    Returns:
        Time in seconds.

    Raises:
        pint.DimensionalityError: An argument has another dimension.
    """
    # Area of a round outlet by its width; pi / 4 written out.
    area = outlet**2 * 0.7853981633974483
    speed = (2 * _GRAVITY * depth) ** 0.5
    return convert(2 * tank / (ORIFICE * area * speed), "second")
