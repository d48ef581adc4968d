"""
Fresh water: its weight and pressure, how many days it lasts, how long a fill takes.

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

TAP_FLOW: Final = quantity(3, "gallon / minute")
"""What a park tap gives through a drinking hose; common practice, no source."""

GRAVITY: Final = quantity(1, "pound_force / pound")
"""Standard gravity (CGPM 1901): a pound of mass weighs a pound of force."""

ANTIFREEZE: Final = (quantity(2, "gallon"), quantity(3, "gallon"))
"""Antifreeze for the pipes, pump and traps of a camper, least and most.

Three public texts; without what the water heater's tank holds."""


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


def fill_time(volume: Quantity, *, flow: Quantity = TAP_FLOW) -> Quantity:
    """
    Return how long a flow takes to fill a tank, or to empty it.

    Args:
        volume: Water in the tank.  [volume]
        flow: What runs in or out.  [volume / time]

    Returns:
        Time in minutes.

    Raises:
        pint.DimensionalityError: *volume* or *flow* has another dimension.
    """
    return convert(volume / flow, "minute")


def pressure_of(height: Quantity) -> Quantity:
    """
    Return the pressure at the foot of a column of water at rest.

    Args:
        height: How high the water stands, whatever the shape.  [length]

    Returns:
        Gauge pressure in psi: 0.433 for each foot.

    Raises:
        pint.DimensionalityError: *height* is not a length.
    """
    return convert(height * DENSITY * GRAVITY, "psi")


def push(pressure: Quantity, area: Quantity) -> Quantity:
    """
    Return the force of water under pressure on a wall.

    Args:
        pressure: Gauge pressure.  [pressure]
        area: Of the wall.  [area]

    Returns:
        Force in pounds of force.

    Raises:
        pint.DimensionalityError: *pressure* or *area* has another dimension.
    """
    return convert(pressure * area, "pound_force")
