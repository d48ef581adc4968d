"""
Bleach for a fresh-water system, by its strength.

The target is the 50 mg/l of free chlorine for 4 hours that the CDC Vessel Sanitation
Program manual asks for (5.3.4.1.4).  The trade's "quarter cup for 15 gallons" dates
from 5.25 % bleach and gives up to 1.7 times as much with today's.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, quantity

TARGET: Final = quantity(50, "ppm")
"""Free chlorine in the water while the system is cleaned."""

STRENGTHS: Final = tuple(quantity(share, "percent") for share in (5.25, 6, 7.5, 8.25))
"""Strengths of household bleach that are sold, by their label."""

PIPE_BORE: Final = quantity(0.475, "inch")
"""Mean inside width of half-inch plastic water pipe (ASTM F876; trade tables)."""


def dose(
    volume: Quantity, strength: Quantity, *, target: Quantity = TARGET
) -> Quantity:
    """
    Return how much bleach brings *volume* of water to *target*.

    Args:
        volume: Water to treat, the heater's tank included.  [volume]
        strength: Sodium hypochlorite in the bleach, as its label says.  [share]
        target: Chlorine wanted.  [share]

    Returns:
        Volume of bleach, in US fluid ounces.

    Raises:
        ValueError: *strength* is not above *target*.
        pint.DimensionalityError: An argument has another dimension.
    """
    share = convert(target / strength, "dimensionless")
    if not 0 < share.magnitude < 1:
        raise ValueError(f"strength must be above {target:~P}, got {strength:~P}")
    return convert(volume * share, "fluid_ounce")


def in_lines(body: Quantity, *, lines: int) -> Quantity:
    """
    Return about how much water the pipes of a unit hold.

    Args:
        body: Length of the unit; each line is taken to run once along it, which is
            common practice, no source.  [length]
        lines: 1 for cold water alone, 2 with hot water.

    Returns:
        Volume in gallons.

    Raises:
        ValueError: *lines* is below 1.
        pint.DimensionalityError: *body* is not a length.
    """
    if lines < 1:
        raise ValueError(f"lines must be 1 or more, got {lines}")
    # Area of a round bore by its width; pi / 4 written out.
    area = PIPE_BORE**2 * 0.7853981633974483
    return convert(body * lines * area, "gallon")
