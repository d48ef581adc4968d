"""
How long things run in a usual night and day of camping on the battery.

Hours are usual figures of the trade, common practice without a source; the currents
are those of the unit.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, number_in, quantity

NIGHT_HOURS: Final[Mapping[str, float]] = MappingProxyType(
    {"always": 10.0, "evenings": 4.0, "nights": 8.0, "at_times": 0.25}
)
"""Hours in a night, evening to morning, by when a load runs; from memory."""

DAY_HOURS: Final[Mapping[str, float]] = MappingProxyType(
    {"always": 24.0, "evenings": 4.0, "nights": 8.0, "at_times": 0.5}
)
"""Hours in a whole day and night; from memory."""

FRIDGE_DUTY: Final = 0.40
"""Share of the time that a fridge's compressor runs, more in heat; from memory."""

PUMP_NIGHT: Final = 0.1
"""Hours that a water pump runs in a night; from memory."""

PUMP_DAY: Final = 0.3
"""Hours that a water pump runs in a day; from memory."""

FURNACE_DAY: Final = 6.3
"""Hours of the blower in a day of frost: 35 % of 10, 20 % of 14; from memory."""


def energy(loads: Iterable[tuple[Quantity, float]], volts: Quantity) -> Quantity:
    """
    Return the energy that *loads* take together.

    Args:
        loads: Current while it runs [current], and hours, of each.
        volts: Voltage of the bank.  [voltage]

    Returns:
        Energy in watt-hours.

    Raises:
        ValueError: A time is negative.
        pint.DimensionalityError: A current or *volts* has another dimension.
    """
    whole = 0.0
    for current, hours in loads:
        if hours < 0:
            raise ValueError(f"hours must not be negative, got {hours}")
        whole += number_in(current, "ampere") * hours
    return quantity(whole * number_in(volts, "volt"), "watt_hour")
