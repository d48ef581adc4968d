"""Dates: what is due after so many years, and how old a thing is on a day."""

from __future__ import annotations

import calendar
import datetime as dt

from hatchleaf.units import Quantity, quantity

_DAYS_IN_YEAR = 365.25


def years_after(day: dt.date, years: int) -> dt.date:
    """
    Return the same day *years* later; a 29th of February becomes the 28th.

    Args:
        day: The day to count from, such as the first of the month of make.
        years: Whole years.
    """
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return day.replace(year=day.year + years, day=28)


def months_after(day: dt.date, months: int) -> dt.date:
    """
    Return the same day *months* later, or the last of the month that has no such day.

    Args:
        day: The day to count from, such as the delivery.
        months: Whole months, 0 or more.
    """
    years, month = divmod(day.month - 1 + months, 12)
    first = dt.date(day.year + years, month + 1, 1)
    last = calendar.monthrange(first.year, first.month)[1]
    return first.replace(day=min(day.day, last))


def age(made: dt.date, on: dt.date) -> Quantity:
    """
    Return how old something is.

    Args:
        made: The day it was made.
        on: The day to count to.

    Returns:
        Time in years of 365.25 days.

    Raises:
        ValueError: *on* lies before *made*.
    """
    if on < made:
        raise ValueError(f"nothing made on {made} was there on {on}")
    return quantity((on - made).days / _DAYS_IN_YEAR, "year")
