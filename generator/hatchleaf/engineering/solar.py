"""
Solar: what wire and fuse must carry, and what a flat panel gives in a day.

A panel can exceed its rated current: the electrical code takes 125 % of the
short-circuit current, and 125 % of that for wire and fuse (NEC 690.8, 690.9).

The table of yield was made once with pvlib (version 0.16.1): the 15th of each month
of 2025 in steps of five minutes, sea level, clear sky by Ineichen's model with a
Linke turbidity of 3, panel flat on a roof, air at 20 degC and wind of 1 m/s, cell
temperature by the model of Sandia (close mount, glass and glass), -0.4 % a kelvin.
The tests make it again.  Losses are the default of PVWatts, 14.08 %.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, number_in, quantity

CIRCUIT: Final = 1.25
"""The most a panel's circuit may carry, over its short-circuit current."""

FUSE: Final = 1.25
"""A wire or fuse in use for hours, over what it carries."""

KEPT: Final = 1 - 0.140757
"""What the losses of PVWatts leave: dirt, shade, mismatch, wiring, age and others."""

WEATHER: Final = 0.70
"""Share of a clear day that clouds, trees and parking leave; from memory."""

# Latitude -> watt-hours of one watt of flat panel on a clear day, January first.
CLEAR_DAY: Final[Mapping[int, tuple[float, ...]]] = MappingProxyType(
    {
        30: (3.64, 4.57, 5.57, 6.48, 7.02, 7.21, 7.10, 6.66, 5.88, 4.88, 3.88, 3.37),
        40: (2.49, 3.57, 4.84, 6.12, 6.98, 7.34, 7.15, 6.44, 5.30, 3.98, 2.78, 2.20),
        50: (1.33, 2.44, 3.91, 5.56, 6.76, 7.31, 7.04, 6.02, 4.51, 2.92, 1.62, 1.06),
    }
)
"""Before losses; south of the equator the months are those half a year away."""

_MONTHS: Final = 12


def circuit_current(short_circuit: Quantity) -> Quantity:
    """
    Return the current that wire and fuse of a panel must be made for.

    Args:
        short_circuit: Isc of all panels side by side.  [current]

    Returns:
        1.25 x 1.25 Isc in amperes.

    Raises:
        pint.DimensionalityError: *short_circuit* is not a current.
    """
    return convert(short_circuit * CIRCUIT * FUSE, "ampere")


def most_short_circuit(fuse: Quantity) -> Quantity:
    """
    Return the largest Isc that may feed a port with this fuse.

    Args:
        fuse: Rating of the fuse.  [current]

    Returns:
        Current in amperes.

    Raises:
        pint.DimensionalityError: *fuse* is not a current.
    """
    return convert(fuse / (CIRCUIT * FUSE), "ampere")


def clear_day(latitude: int, month: int) -> float:
    """
    Return the hours of full rated power in a clear day, before losses.

    Args:
        latitude: 30, 40 or 50; negative south of the equator.
        month: 1 to 12.

    Raises:
        KeyError: No such latitude in the table.
        ValueError: *month* is outside 1 to 12.
    """
    if not 1 <= month <= _MONTHS:
        raise ValueError(f"month must be 1 to 12, got {month}")
    turned = month if latitude > 0 else (month + 5) % _MONTHS + 1
    return CLEAR_DAY[abs(latitude)][turned - 1]


def day_energy(
    watts: Quantity, *, latitude: int, month: int, weather: float = WEATHER
) -> Quantity:
    """
    Return what a flat panel gives in a day.

    Args:
        watts: Rated power of all panels.  [power]
        latitude: 30, 40 or 50; negative south of the equator.
        month: 1 to 12.
        weather: Share of a clear day, 0 to 1.

    Returns:
        Energy in watt-hours.

    Raises:
        KeyError: No such latitude in the table.
        ValueError: *month* or *weather* is outside its range.
        pint.DimensionalityError: *watts* is not a power.
    """
    if not 0 <= weather <= 1:
        raise ValueError(f"weather must be 0 to 1, got {weather}")
    full = clear_day(latitude, month) * KEPT * weather
    return quantity(number_in(watts, "watt") * full, "watt_hour")
