"""
Waste tanks: the water they start with, and how soon a rinse fills them.

The starting water is common practice, no source: 5 % of the tank, at least 2 gallons.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, quantity

PRECHARGE_SHARE: Final = 0.05
"""Share of a tank that is put back as clean water after dumping."""

LEAST_PRECHARGE: Final = quantity(2, "gallon")
"""The least that covers the floor of a tank."""


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
