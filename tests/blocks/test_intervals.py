"""Why: a slip in an interval would put every owner's reminder on a wrong day."""

from __future__ import annotations

import pytest

from hatchleaf.blocks.intervals import OCCASIONS, Interval, NoInterval, interval


@pytest.mark.parametrize(
    ("text", "stated"),
    [
        ("1 day", Interval(1, "day")),
        ("10 days", Interval(10, "day")),
        ("2 weeks", Interval(2, "week")),
        ("1 month", Interval(1, "month")),
        ("6 months", Interval(6, "month")),
        ("1 year", Interval(1, "year")),
        ("12 years", Interval(12, "year")),
        ("50 miles", Interval(distance=50, measure="mile")),
        ("12000 miles", Interval(distance=12_000, measure="mile")),
        ("12,000 miles", Interval(distance=12_000, measure="mile")),
        ("20,000 km", Interval(distance=20_000, measure="kilometer")),
        ("12 months or 12,000 miles", Interval(12, "month", 12_000, "mile")),
        ("20000 km or 1 year", Interval(1, "year", 20_000, "kilometer")),
        *((each, Interval(occasion=each)) for each in OCCASIONS),
    ],
)
def test_what_is_stated(text: str, stated: Interval) -> None:
    """Times, distances in either unit, the sooner of both, occasions."""
    assert interval(text) == stated


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("6 month", "write '6 months'"),
        ("1 months", "write '1 month'"),
        ("6months", "write '6 months'"),
        ("monthly", "write '1 month'"),
        ("each fall", "write 'each autumn'"),
        ("every trip", "write 'each trip'"),
        ("12000 mi", "write '12000 miles'"),
        ("20,000 kilometres", "write '20,000 km'"),
        ("400 days", "at most 99 days"),
        ("121 months", "at most 120 months"),
        (
            "12 months and 12,000 miles",
            "join a time and a distance by 'or': the sooner counts",
        ),
        ("6 months or 12 months", "one time, one distance, or one of each"),
        ("1,000 miles or 1,000 km", "one time, one distance, or one of each"),
        ("0 months", ""),
        ("-1 month", ""),
        ("06 months", ""),
        ("1e3 miles", ""),
        ("12,00 miles", ""),
        ("1,2000 miles", ""),
        ("999,999 miles", ""),
        ("٦ months", ""),
        ("6 months ", "write '6 months'"),
        ("6 months or ", ""),
        ("sometimes", ""),
        ("", ""),
    ],
)
def test_what_states_none(text: str, hint: str) -> None:
    """Nothing is guessed at; what was probably meant is the hint."""
    with pytest.raises(NoInterval) as found:
        interval(text)
    assert found.value.hint == hint
    assert f"'{text}'" in found.value.what
