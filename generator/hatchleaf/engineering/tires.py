"""
Tires: what the gauge shows when the weather changes, and how old they are.

The air in a tire keeps to the gas law at constant volume, with absolute pressure and
absolute temperature, while a gauge reads from the air outside.
"""

from __future__ import annotations

import datetime as dt
from typing import Final

from hatchleaf.units import Quantity, convert, fahrenheit_point, quantity

ATMOSPHERE: Final = quantity(14.696, "psi")
"""Standard atmosphere at sea level, which a gauge leaves out."""

_LAST_WEEK: Final = 53


def pressure_at(cold: Quantity, *, set_at: float, now: float) -> Quantity:
    """
    Return the gauge pressure of a tire at another temperature.

    Args:
        cold: Gauge pressure as set.  [pressure]
        set_at: Temperature of the tire when it was set, degF.
        now: Temperature of the tire now, degF.

    Returns:
        Gauge pressure in psi.

    Raises:
        ValueError: A temperature is at or below absolute zero.
        pint.DimensionalityError: *cold* is not a pressure.
    """
    was, is_now = fahrenheit_point(set_at), fahrenheit_point(now)
    if was <= 0 or is_now <= 0:
        raise ValueError(f"no tire is at {min(set_at, now)} degF")
    return convert((cold + ATMOSPHERE) * (is_now / was) - ATMOSPHERE, "psi")


def made_in(code: str) -> dt.date:
    """
    Return the Monday of the week that a tire was made in.

    Source: 49 CFR 574.5: the last four digits of the tire identification number are
    the week and the year of make, for tires made since 2000.

    Args:
        code: Two digits for the week, two for the year: ``2319``.

    Raises:
        ValueError: The code names no week.
    """
    week, year = int(code[:2]), 2000 + int(code[2:])
    # A maker's year may have a week 53 where the calendar's has not: count on.
    if not 1 <= week <= _LAST_WEEK:
        raise ValueError(f"there is no week {week}")
    return dt.date.fromisocalendar(year, 1, 1) + dt.timedelta(weeks=week - 1)


def carried(load: Quantity, count: int) -> Quantity:
    """
    Return what the tires of one axle carry together.

    Args:
        load: Load of one tire at its pressure.  [mass]
        count: How many tires the axle has.

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: *load* is not a mass.
    """
    return convert(load * count, "pound")
