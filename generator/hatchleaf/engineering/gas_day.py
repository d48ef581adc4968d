"""
A usual day's gas: how long each burner is lit, never the figures of one unit.

Common practice, no source: the hours are those of the trade's worked examples.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from hatchleaf.engineering.propane import HEAT_PER_MASS
from hatchleaf.units import Quantity, convert, quantity

FRIDGE_HOURS: Final = 12.0
"""Hours a day that the flame of an absorption fridge is lit: half the time."""

COOKTOP_HOURS: Final = 0.75
"""Hours a day that one burner of a cooktop is lit."""

TANK_HEATER_HOURS: Final = 1.0
"""Hours a day that the flame of a tank water heater is lit."""

ON_DEMAND_HOURS: Final = 0.3
"""Hours a day that hot water runs: about three short showers; from memory."""


def burned_a_day(uses: Iterable[tuple[Quantity, float]]) -> Quantity:
    """
    Return the gas that some burners use in a day.

    Args:
        uses: Input of each burner [power], and the hours a day that it is lit,
            from 0 to 24.

    Returns:
        Mass of propane by time, in pounds a day.

    Raises:
        ValueError: A burner is lit for less than none or more than all of the day.
        pint.DimensionalityError: An input is not a power.
    """
    heat = quantity(0, "Btu / day")
    for burner, hours in uses:
        if not 0 <= hours <= 24:  # noqa: PLR2004  # the hours of a day
            raise ValueError(f"hours must be from 0 to 24, got {hours}")
        heat = heat + burner * (hours / 24)
    return convert(heat / HEAT_PER_MASS, "pound / day")
