"""
Wind on an open awning, by the velocity pressure of ASCE 7.

``q = 0.00256 V^2`` in lb of force per square foot with V in miles an hour, for air at
sea level and 59 degF.  It is taken over the whole cloth at a coefficient of 1, a flat
plate square to the wind: a figure to fear, not one to design with.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, quantity

_PER_SPEED_SQUARED: Final = quantity(0.00256, "psf * hour ** 2 / mile ** 2")


def velocity_pressure(speed: Quantity) -> Quantity:
    """
    Return the pressure of wind brought to rest.

    Args:
        speed: Wind speed; a gust, not the mean of a forecast.  [speed]

    Returns:
        Pressure in lb of force per square foot.

    Raises:
        pint.DimensionalityError: *speed* is not a speed.
    """
    return convert(_PER_SPEED_SQUARED * speed**2, "psf")


def force(speed: Quantity, area: Quantity) -> Quantity:
    """
    Return the force of wind on a cloth.

    Args:
        speed: Wind speed.  [speed]
        area: The cloth.  [area]

    Returns:
        Force in lb of force.

    Raises:
        pint.DimensionalityError: *speed* or *area* has another dimension.
    """
    return convert(velocity_pressure(speed) * area, "pound_force")
