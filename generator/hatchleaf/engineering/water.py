"""
Fresh water: what it weighs, and how many days it lasts.

A gallon at 60 degF weighs 8.337 lb (IAPWS-95).  Sums here take 8.34, the usual
engineering figure.  The federal cargo label rounds to 8.3 (72 FR 68442, 2007): that
figure is for repeating the label, and the two never meet in one sum.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, quantity

DENSITY: Final = quantity(8.34, "pound / gallon")
"""Weight of a US gallon of water in every sum of ours."""

LABEL_DENSITY: Final = quantity(8.3, "pound / gallon")
"""The same as the federal cargo label states it."""

CAREFUL_USE: Final = quantity(5, "gallon / day")
"""What one careful person uses a day; common practice, no source."""


def weight(volume: Quantity, *, density: Quantity = DENSITY) -> Quantity:
    """
    Return the weight of water, fresh or waste.

    Args:
        volume: How much water.  [volume]
        density: `DENSITY`, or `LABEL_DENSITY` to repeat the federal label.

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: *volume* is not a volume.
    """
    return convert(volume * density, "pound")


def days(volume: Quantity, *, people: int, each: Quantity = CAREFUL_USE) -> Quantity:
    """
    Return how long a full tank lasts.

    Args:
        volume: Water in the tank.  [volume]
        people: How many share it, 1 or more.
        each: What one person uses.  [volume / time]

    Returns:
        Time in days.

    Raises:
        ValueError: *people* is below 1.
        pint.DimensionalityError: *volume* or *each* has another dimension.
    """
    if people < 1:
        raise ValueError(f"people must be 1 or more, got {people}")
    return convert(volume / (each * people), "day")
