"""
Charging a house battery, and how long it keeps while the unit stands still.

Efficiency, the currents that a battery takes, the slow end of a charge and the
self-discharge are usual figures of the trade: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, number_in, quantity


@dataclass(frozen=True)
class Habits:
    """How batteries of one chemistry take a charge and lose it; all typical."""

    efficiency: float
    """Share of the charge put in that comes out again."""
    takes: float
    """The most it takes at once, in amperes for each ampere-hour of capacity."""
    slow_end: float
    """Hours at the end of a charge while the current falls off."""
    monthly_loss: float
    """Share of the capacity lost in a month at 77 degF with nothing connected."""


TYPICAL: Final[Mapping[str, Habits]] = MappingProxyType(
    {
        "flooded": Habits(0.80, 0.20, 4.0, 0.05),
        "agm": Habits(0.85, 0.30, 4.0, 0.03),
        "gel": Habits(0.85, 0.20, 4.0, 0.03),
        "lfp": Habits(0.95, 0.50, 1.0, 0.03),
    }
)
"""By chemistry; from memory but for the monthly loss of flooded ones."""

CHARGE_LINE: Final = quantity(8, "ampere")
"""What the plug of a tow vehicle gives, through long thin wire; from memory."""

ALARM_DRAW: Final = quantity(0.1, "ampere")
"""What a gas alarm and the like draw with the battery switch off; from memory."""

LONGEST_REST: Final[Mapping[str, Quantity]] = MappingProxyType(
    {"lead": quantity(90, "day"), "lfp": quantity(180, "day")}
)
"""How long a battery may be left alone, however slowly it falls; from memory."""

_MONTH: Final = 30.0


def hours(
    taken: Quantity, current: Quantity, *, efficiency: float, slow_end: float = 0.0
) -> Quantity:
    """
    Return how long it takes to put back what was taken out.

    Args:
        taken: Charge that was used.  [charge]
        current: What the charger gives and the battery takes.  [current]
        efficiency: Share that comes out again, above 0 and up to 1.
        slow_end: Hours to add for the end of the charge.

    Returns:
        Time in hours.

    Raises:
        ValueError: *efficiency* is outside its range.
        pint.DimensionalityError: *taken* or *current* has another dimension.
    """
    if not 0 < efficiency <= 1:
        raise ValueError(f"efficiency must be above 0 and up to 1, got {efficiency}")
    steady = convert(taken / (current * efficiency), "hour")
    return quantity(number_in(steady, "hour") + slow_end, "hour")


def days_to_half(
    charge: Quantity, standing: Quantity, *, monthly_loss: float
) -> Quantity:
    """
    Return how long a full battery takes to fall to half while it stands.

    Args:
        charge: Capacity.  [charge]
        standing: What draws from it all the time; zero if nothing does.  [current]
        monthly_loss: Share of the capacity that it loses by itself in 30 days.

    Returns:
        Time in days.

    Raises:
        ValueError: Neither load nor loss: it would last for ever.
        pint.DimensionalityError: *charge* or *standing* has another dimension.
    """
    whole = number_in(charge, "ampere_hour")
    daily = number_in(standing, "ampere") * 24 + whole * monthly_loss / _MONTH
    if daily <= 0:
        raise ValueError("a battery that loses nothing has no time to half")
    return quantity(0.5 * whole / daily, "day")
