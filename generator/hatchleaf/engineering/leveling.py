"""
Leveling: how high a block lifts a side, and how far a lean shows on a level.

A unit that leans by an angle has one wheel lower than the other by the track times the
sine of it: the track lies along the slope.
"""

from __future__ import annotations

import math
from typing import Final

from hatchleaf.units import Quantity, convert

FRIDGE_LEAN: Final = 3
"""Degrees that a fridge with a flame may lean where its book is silent; from memory."""

_UPRIGHT: Final = 90.0


def block_height(track: Quantity, *, slope: float) -> Quantity:
    """
    Return the height of the blocks that level a unit side to side.

    Args:
        track: From the middle of one wheel to that of the other.  [length]
        slope: How much the ground slopes from side to side, degrees.

    Returns:
        Length in inches.

    Raises:
        ValueError: The slope is no slope: below 0 or above 90 degrees.
        pint.DimensionalityError: *track* is not a length.
    """
    return convert(track * math.sin(math.radians(_known_slope(slope))), "inch")


def lean(length: Quantity, *, slope: float) -> Quantity:
    """
    Return how far one end of something lies below the other.

    Args:
        length: Its length along the slope, such as that of a level.  [length]
        slope: The lean, degrees.

    Returns:
        Length in inches.

    Raises:
        ValueError: The slope is no slope: below 0 or above 90 degrees.
        pint.DimensionalityError: *length* is not a length.
    """
    return block_height(length, slope=slope)


def _known_slope(slope: float) -> float:
    if not 0 <= slope <= _UPRIGHT:
        raise ValueError(f"no ground slopes by {slope} degrees")
    return slope
