"""Dates, held against the calendar and against published terms of service."""

from __future__ import annotations

import datetime as dt

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import dates
from hatchleaf.units import number_in


@pytest.mark.parametrize(
    ("made", "years", "due"),
    [
        # NFPA 10: a disposable extinguisher leaves service 12 years after its make.
        ((2026, 5, 1), 12, (2038, 5, 1)),
        # NFPA 72, US Fire Administration: smoke alarms, 10 years from their make.
        ((2026, 6, 1), 10, (2036, 6, 1)),
        # 49 CFR 180.209(e): a cylinder's first requalification after 12 years.
        ((2026, 8, 1), 12, (2038, 8, 1)),
        ((2024, 2, 29), 1, (2025, 2, 28)),
        ((2024, 2, 29), 4, (2028, 2, 29)),
    ],
)
def test_terms_of_service(
    made: tuple[int, int, int], years: int, due: tuple[int, int, int]
) -> None:
    """The month of make, so many years on."""
    assert dates.years_after(dt.date(*made), years) == dt.date(*due)


def test_age_agrees_with_the_calendar() -> None:
    """Four years of 1,461 days are four years."""
    found = dates.age(dt.date(2023, 3, 1), dt.date(2027, 3, 1))

    assert number_in(found, "year") == pytest.approx(4)


def test_nothing_is_made_after_it_was_seen() -> None:
    """A slip of the year is told, not counted backwards."""
    with pytest.raises(ValueError, match="nothing made on 2028-01-01"):
        dates.age(dt.date(2028, 1, 1), dt.date(2027, 1, 1))


@given(st.dates(dt.date(1980, 1, 1), dt.date(2060, 1, 1)), st.integers(0, 30))
def test_age_of_whole_years(made: dt.date, years: int) -> None:
    """Leap days aside, so many years later a thing is so many years old."""
    found = dates.age(made, dates.years_after(made, years))

    assert number_in(found, "year") == pytest.approx(years, abs=0.004)


@given(st.dates(dt.date(1980, 1, 1), dt.date(2060, 1, 1)), st.integers(0, 240))
def test_months_agree_with_the_reference(day: dt.date, months: int) -> None:
    """As dateutil's relativedelta counts them, the end of a month too."""
    wanted = day + relativedelta(months=months)

    assert dates.months_after(day, months) == wanted


@pytest.mark.parametrize(
    ("months", "ends"), [(1, (2027, 2, 28)), (13, (2028, 2, 29)), (3, (2027, 4, 30))]
)
def test_a_month_without_that_day_ends_on_its_last(
    months: int, ends: tuple[int, int, int]
) -> None:
    """From the 31st of January, read off a wall calendar."""
    assert dates.months_after(dt.date(2027, 1, 31), months) == dt.date(*ends)
