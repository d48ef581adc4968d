"""
Wind on an open awning, by the velocity pressure of ASCE 7.

``q = 0.00256 V^2`` in lb of force per square foot with V in miles an hour, for air at
sea level and 59 degF.  It is taken over the whole cloth at a coefficient of 1, a flat
plate square to the wind: a figure to fear, not one to design with.

Beaufort's scale says what a wind looks like; the ranges are those of the United
States' weather service.  Rain that stays on the cloth weighs 62.4 lb per cubic foot.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from hatchleaf.units import Quantity, convert, number_in, quantity

_PER_SPEED_SQUARED: Final = quantity(0.00256, "psf * hour ** 2 / mile ** 2")
_RAIN: Final = quantity(62.4, "pound / foot ** 3")


@dataclass(frozen=True)
class Beaufort:
    """One step of the scale."""

    number: int
    name: str
    sign: str
    """What it looks like on land."""


_SCALE: Final = (
    (1, Beaufort(0, "calm", "smoke rises straight up")),
    (4, Beaufort(1, "light air", "smoke drifts")),
    (8, Beaufort(2, "light breeze", "leaves rustle")),
    (13, Beaufort(3, "gentle breeze", "leaves move all the time")),
    (19, Beaufort(4, "moderate breeze", "small branches move")),
    (25, Beaufort(5, "fresh breeze", "small trees sway")),
    (32, Beaufort(6, "strong breeze", "large branches move")),
    (39, Beaufort(7, "near gale", "whole trees move")),
    (47, Beaufort(8, "gale", "twigs break off")),
    (55, Beaufort(9, "strong gale", "shingles blow off")),
    (64, Beaufort(10, "storm", "trees are uprooted")),
    (73, Beaufort(11, "violent storm", "damage all round")),
)
"""Miles an hour at which the next step begins; 4 to 7 were read, others from memory."""
_HURRICANE: Final = Beaufort(12, "hurricane", "ruin")


def beaufort(speed: Quantity) -> Beaufort:
    """
    Return the step of Beaufort's scale that a wind is on.

    Source: the weather service's table in miles an hour (13 to 18 is 4, and so on);
    the signs are in our own words.

    Args:
        speed: Wind speed, whole miles an hour in the table.  [speed]

    Raises:
        pint.DimensionalityError: *speed* is not a speed.
    """
    mph = number_in(speed, "mile / hour")
    return next((step for below, step in _SCALE if mph < below), _HURRICANE)


def rain(area: Quantity, depth: Quantity) -> Quantity:
    """
    Return the weight of rain that stays on a cloth.

    Args:
        area: The part of the cloth that holds it.  [area]
        depth: How deep it stands.  [length]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: An argument is of another dimension.
    """
    return convert(area * depth * _RAIN, "pound")


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
