"""
House batteries: the energy they hold, and how long it feeds a load.

Capacity is the maker's, at the 20-hour rate and room temperature; cold and heavy
loads leave less.  What is called typical here is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, number_in, quantity

TYPICAL_USABLE: Final[Mapping[str, float]] = MappingProxyType(
    {"flooded": 0.50, "agm": 0.50, "gel": 0.50, "lfp": 0.80}
)
"""Share that may be taken out, by chemistry, where the maker states none."""

TYPICAL_PEUKERT: Final[Mapping[str, float]] = MappingProxyType(
    {"flooded": 1.25, "agm": 1.15, "gel": 1.20, "lfp": 1.05}
)
"""Peukert exponent by chemistry, on the careful side of what handbooks print."""

RATED_HOURS: Final = 20.0
"""Capacity is stated for a discharge that takes this long."""

_ROOM: Final = 77.0
_COLD_LEAD: Final = ((0.0, 0.45), (14.0, 0.61), (32.0, 0.80), (_ROOM, 1.0))
COLD_LFP: Final = ((0.0, 0.60), (32.0, 0.85), (_ROOM, 1.0))
"""Share of an LFP battery's capacity by its temperature in degF; from memory."""

NOMINAL: Final = quantity(12, "volt")
"""What the 12 V side is called; two 6 V batteries in series make it too."""


def energy(charge: Quantity, volts: Quantity) -> Quantity:
    """
    Return the energy in one full battery.

    Energies add up whether batteries stand in series or in parallel, while
    ampere-hours do not: sum these.

    Args:
        charge: Rated capacity.  [charge]
        volts: Nominal voltage of that battery.  [voltage]

    Returns:
        Energy in watt-hours.

    Raises:
        pint.DimensionalityError: *charge* or *volts* has another dimension.
    """
    return convert(charge * volts, "watt_hour")


def hours(
    usable: Quantity, draw: Quantity, volts: Quantity, *, duty: float = 1.0
) -> Quantity:
    """
    Return how long the usable energy feeds one load alone.

    Args:
        usable: Energy that may be taken out.  [energy]
        draw: Current of the load while it runs.  [current]
        volts: Voltage of the battery bank.  [voltage]
        duty: Share of the time that the load runs, above 0 and up to 1.

    Returns:
        Time in hours.

    Raises:
        ValueError: *duty* is outside its range.
        pint.DimensionalityError: An argument has another dimension.
    """
    if not 0 < duty <= 1:
        raise ValueError(f"duty must be above 0 and up to 1, got {duty}")
    return convert(usable / (draw * volts * duty), "hour")


def cold_share(chemistry: str, degrees: float) -> float:
    """
    Return the typical share of the capacity that a cold battery still gives.

    Straight lines between the figures that makers and handbooks print: lead-acid
    80 % at 32 degF, 61 % at 14 degF (a maker's multiplier of 1.65), 45 % at 0 degF.
    This is not the cranking power, which falls faster.

    Args:
        chemistry: ``flooded``, ``agm``, ``gel`` or ``lfp``.
        degrees: Temperature of the battery in degF; above 77 degF counts as that.

    Raises:
        ValueError: Colder than 0 degF, where no figure is worth printing.
    """
    points = COLD_LFP if chemistry == "lfp" else _COLD_LEAD
    if degrees < points[0][0]:
        raise ValueError(f"no figure below {points[0][0]:.0f} degF, got {degrees}")
    for (cold, less), (warm, more) in pairwise(points):
        if degrees <= warm:
            return less + (more - less) * (degrees - cold) / (warm - cold)
    return 1.0


def peukert_hours(charge: Quantity, draw: Quantity, exponent: float) -> Quantity:
    """
    Return how long a full battery lasts at a steady current, to its very end.

    Peukert: ``t = H (C / (I H)) ** k`` with the capacity *C* at the *H* hour rate.

    Args:
        charge: Capacity at the 20-hour rate.  [charge]
        draw: Current.  [current]
        exponent: 1 or more.

    Returns:
        Time in hours.

    Raises:
        ValueError: *exponent* is below 1.
        pint.DimensionalityError: An argument has another dimension.
    """
    if exponent < 1:
        raise ValueError(f"exponent must be 1 or more, got {exponent}")
    rate = number_in(charge / draw, "hour") / RATED_HOURS
    return quantity(RATED_HOURS * rate**exponent, "hour")


def heavy_share(charge: Quantity, draw: Quantity, exponent: float) -> float:
    """
    Return the share of the rated capacity that a heavy load leaves to be used.

    A load below the 20-hour rate gets no more than was rated: 1.

    Args:
        charge: Capacity at the 20-hour rate.  [charge]
        draw: Current.  [current]
        exponent: Peukert's, 1 or more.

    Raises:
        ValueError: *exponent* is below 1.
        pint.DimensionalityError: An argument has another dimension.
    """
    straight = convert(charge / draw, "hour")
    lasts = peukert_hours(charge, draw, exponent)
    return min(1.0, number_in(lasts / straight, "dimensionless"))
