"""
A furnace's cold night: usual figures of the trade, never those of one unit.

Common practice, no source: a thermostat lights the burner for about a third of a
night near freezing.  From there the share follows the difference of temperature
between inside and outside, as heat loss through a wall does (the degree-day method,
US National Weather Service, base 65 degF).  Wind and an open roof vent raise it.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, fahrenheit_difference, quantity

NIGHT: Final = quantity(10, "hour")
"""How long the heat is on in a typical cold night."""

DUTY: Final = 0.35
"""Share of that time that burner and blower run."""

DUTIES: Final = (0.25, 0.5, 0.75, 1.0)
"""Shares to show side by side; nobody can run a furnace for more than all the time."""

BASE: Final = 65.0
"""degF up to which a building needs heat: the base of US heating degree days."""

NEAR_FREEZING: Final = 32.0
"""degF outside that `DUTY` is meant for; common practice, no source."""

BANDS: Final = (50.0, 40.0, 30.0, 20.0, 10.0, 0.0)
"""degF outside to show side by side."""


def duty_at(outside: float) -> float:
    """
    Return the typical share of a night that the furnace runs.

    Args:
        outside: Temperature in degF.

    Returns:
        0 in warm air, `DUTY` near freezing, never more than 1.
    """
    share = fahrenheit_difference(BASE, outside) / fahrenheit_difference(
        BASE, NEAR_FREEZING
    )
    return min(1.0, max(0.0, DUTY * share))


def charge(blower: Quantity, *, duty: float = DUTY, time: Quantity = NIGHT) -> Quantity:
    """
    Return the charge that the blower takes out of the battery.

    Args:
        blower: Its current while it runs.  [current]
        duty: Share of *time* that it runs, from 0 to 1.
        time: How long the heat is on.  [time]

    Returns:
        Charge in ampere hours.

    Raises:
        ValueError: *duty* is outside its range.
        pint.DimensionalityError: *blower* or *time* has another dimension.
    """
    if not 0 <= duty <= 1:
        raise ValueError(f"duty must be from 0 to 1, got {duty}")
    return convert(blower * time * duty, "ampere_hour")
