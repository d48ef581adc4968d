"""Dates: what is due after so many years, and how old a thing is on a day."""

from __future__ import annotations

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
