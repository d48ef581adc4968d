"""
House batteries: the energy they hold, and how long it feeds a load.

Capacity is the maker's, at the 20-hour rate and room temperature; cold and heavy
loads leave less.  The typical usable shares are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, quantity

TYPICAL_USABLE: Final[Mapping[str, float]] = MappingProxyType(
    {"flooded": 0.50, "agm": 0.50, "gel": 0.50, "lfp": 0.80}
)
"""Share that may be taken out, by chemistry, where the maker states none."""

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
