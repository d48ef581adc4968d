"""
Why: an owner trusts these days for years; a late one is a cracked pipe or a dead alarm.

The calendar of the reference is that of `python-dateutil`.
"""

from __future__ import annotations

import datetime as dt
import re
from itertools import islice

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.blocks.intervals import interval
from hatchleaf.blocks.model import Care, Topic, Worded
from hatchleaf.facts.model import Fact, Facts
from hatchleaf.manual.care_page import by_distance, care_page
from hatchleaf.manual.model import CareTask
from hatchleaf.manual.schedule import CareText, days, schedule
from hatchleaf.problems import Place

DELIVERED = dt.date(2027, 4, 16)
TIRES = Topic(810, "tires", "gear", "Tires", "default", ())


def text(task: str = "Look at it.", **form: str) -> CareText:
    """Return a task as a block's row states it: interval, first, due, item."""
    care = Care(
        Worded(task, Place("x.md")),
        interval(form["interval"]) if "interval" in form else None,
        interval(form["first"]) if "first" in form else None,
        form.get("due", ""),
    )
    item = form.get("item", "")
    return CareText(f"block/{item}/1", TIRES, care, item, task, task)


def one(delivered: dt.date = DELIVERED, market: str = "us", **form: str) -> CareTask:
    """Return the only task of a schedule."""
    (task,) = schedule([text("Look at it.", **form)], Facts(), delivered, market)
    return task


def some_days(task: CareTask, number: int) -> list[dt.date]:
    """Return the first days of a task."""
    return list(islice(days(task), number))


@pytest.mark.parametrize(
    ("delivered", "every", "expected"),
    [
        # By hand, with a wall calendar.
        ("2027-04-16", "1 month", ["2027-05-16", "2027-06-16", "2027-07-16"]),
        ("2027-04-16", "6 months", ["2027-10-16", "2028-04-16", "2028-10-16"]),
        ("2027-04-16", "10 days", ["2027-04-26", "2027-05-06", "2027-05-16"]),
        ("2027-12-27", "2 weeks", ["2028-01-10", "2028-01-24", "2028-02-07"]),
        ("2027-01-31", "1 month", ["2027-02-28", "2027-03-28", "2027-04-28"]),
        ("2028-02-29", "1 year", ["2029-02-28", "2030-02-28", "2031-02-28"]),
        ("2027-08-30", "6 months", ["2028-02-28", "2028-08-28", "2029-02-28"]),
    ],
)
def test_days_count_from_the_delivery(
    delivered: str, every: str, expected: list[str]
) -> None:
    """Also from the ends of months, where a month has no such day."""
    task = one(dt.date.fromisoformat(delivered), interval=every)
    assert [day.isoformat() for day in some_days(task, 3)] == expected


@given(
    delivered=st.dates(dt.date(2020, 1, 1), dt.date(2040, 12, 31)),
    months=st.integers(1, 120),
)
def test_never_late_and_at_most_three_days_early(
    delivered: dt.date, months: int
) -> None:
    """Against dateutil's months: a 31st counts as the 28th, never as the 1st."""
    task = one(delivered, interval=f"{months} month{'s' if months > 1 else ''}")
    for number, day in enumerate(some_days(task, 12), start=1):
        exact = delivered + relativedelta(months=number * months)
        assert dt.timedelta() <= exact - day <= dt.timedelta(days=3)
        assert day.day <= 28


@given(
    delivered=st.dates(dt.date(2020, 1, 1), dt.date(2040, 12, 31)),
    start=st.integers(1, 99),
)
def test_no_start_lies_before_the_delivery(delivered: dt.date, start: int) -> None:
    """A first time after some days also has a day that all months have."""
    task = one(
        delivered, interval="1 month", first=f"{start} day{'s' if start > 1 else ''}"
    )
    assert task.first is not None
    assert task.first >= delivered
    assert task.first.day <= 28
    assert abs((task.first - delivered).days - start) <= 3


def test_a_first_time_of_its_own() -> None:
    """Sooner once, when all is new; then it goes on from there."""
    task = one(interval="12 months or 12,000 miles", first="1 month or 1,000 miles")
    assert [d.isoformat() for d in some_days(task, 2)] == ["2027-05-16", "2028-05-16"]
    assert by_distance(task) == (
        "The first time, after 1,000 miles if that comes sooner. "
        "Or each 12,000 miles if that comes sooner."
    )


def test_what_is_done_once() -> None:
    """Wheel nuts after the first miles: no interval, and a day only if one is stated."""
    far = one(first="50 miles")
    assert far.first is None
    assert not some_days(far, 3)
    assert by_distance(far) == "After 50 miles."
    both = one(first="1 month or 1,000 miles")
    assert some_days(both, 3) == [dt.date(2027, 5, 16)]
    assert by_distance(both) == "Or after 1,000 miles if that comes sooner."


@pytest.mark.parametrize(
    ("market", "stated", "read"),
    [
        # 1 mile is 1.609344 km (NIST SP 811): 19,312 km and 12,427 miles, rounded down.
        ("us", "12,000 miles", "12,000 miles"),
        ("uk", "12,000 miles", "12,000 miles"),
        ("eu", "12,000 miles", "19,000 km"),
        ("au", "12,000 miles", "19,000 km"),
        ("ca", "50 miles", "80 km"),
        ("eu", "20,000 km", "20,000 km"),
        ("us", "20,000 km", "12,000 miles"),
    ],
)
def test_distances_in_the_unit_of_the_market(
    market: str, stated: str, read: str
) -> None:
    """The odometer of the tow vehicle decides; never farther than was stated."""
    assert one(market=market, interval=stated).distance == read


@pytest.mark.parametrize(
    ("market", "season", "delivered", "expected"),
    [
        # Seasons as meteorologists count them: whole months, spring from 1 March in the
        # north and from 1 September in the south (Met Office; Bureau of Meteorology).
        ("us", "each spring", "2027-04-16", "2028-03-01"),
        ("us", "each spring", "2027-03-01", "2027-03-01"),
        ("eu", "each autumn", "2027-04-16", "2027-09-01"),
        ("au", "each spring", "2027-04-16", "2027-09-01"),
        ("au", "each autumn", "2027-04-16", "2028-03-01"),
    ],
)
def test_seasons_of_both_hemispheres(
    market: str, season: str, delivered: str, expected: str
) -> None:
    """A unit in Australia is made ready for winter in March."""
    task = one(dt.date.fromisoformat(delivered), market, interval=season)
    assert [day.isoformat() for day in some_days(task, 1)] == [expected]
    second = some_days(task, 2)[1]
    assert second == some_days(task, 1)[0] + relativedelta(years=1)


def due_fact(item: str, day: dt.date, *, typical: bool = False) -> Fact:
    """Return a fact that says a month, as those of alarms and tires do."""
    shown = f"{day:%B} {day.year}"
    name = f"dates.tire[{item}]" if item else "dates.tire"
    return Fact(
        name, "dates.tire", item, shown, "", 3, "near", "", (), "", typical, day=day
    )


def test_what_falls_due_on_one_day_is_one_task() -> None:
    """Three tires of one age are one errand; the spare of another age is its own."""
    facts = Facts(
        [
            due_fact("left", dt.date(2031, 5, 1), typical=True),
            due_fact("right", dt.date(2031, 5, 1), typical=True),
            due_fact("spare", dt.date(2030, 11, 1), typical=True),
        ]
    )
    row = text("Replace tires.", due="dates.tire")
    tasks = schedule([row], facts, DELIVERED, "us")
    assert [(t.first, t.items, t.note) for t in tasks] == [
        (dt.date(2031, 5, 1), "left, right", "May 2031 (typical)"),
        (dt.date(2030, 11, 1), "spare", "November 2030 (typical)"),
    ]
    html, _ = care_page(tasks, DELIVERED)
    assert html.index("November 2030") < html.index("May 2031")
    assert "Replace tires: left, right." in html


def test_each_item_has_its_own_day() -> None:
    """A block that stands once for each alarm says the day of that alarm alone."""
    facts = Facts(
        [due_fact("a", dt.date(2031, 5, 1)), due_fact("b", dt.date(2032, 6, 1))]
    )
    tasks = schedule(
        [text(due="dates.tire", item="b"), text(due="dates.tire", item="c")],
        facts,
        DELIVERED,
        "us",
    )
    assert [task.first for task in tasks] == [dt.date(2032, 6, 1)]


def test_what_was_over_at_the_delivery_is_due_at_once() -> None:
    """A used unit may have an alarm past its end: its month is told as it is."""
    facts = Facts([due_fact("", dt.date(2025, 3, 1))])
    (task,) = schedule([text(due="dates.tire")], facts, DELIVERED, "us")
    assert task.first == DELIVERED
    assert "March 2025" in care_page([task], DELIVERED)[0]


def test_the_page_tells_every_task_once_and_where_to_read_on() -> None:
    """Grouped by how often: occasions, times from short to long, seasons, distances."""
    rows = [
        text("Weekly.", interval="1 week"),
        text("Twice a year.", interval="6 months"),
        text("Yearly.", interval="12 months"),
        text("Also yearly.", interval="1 year"),
        text("Yearly, soon.", interval="12 months", first="1 month"),
        text("Trip.", interval="before each trip"),
        text("Use.", interval="each use"),
        text("Frost.", interval="each autumn"),
        text("Far.", interval="12,000 miles"),
        text("Once.", first="50 miles"),
        text("Monthly.", interval="1 month"),
    ]
    tasks = schedule(rows, Facts(), DELIVERED, "us")
    html, headings = care_page(tasks, DELIVERED)
    assert [heading.text for heading in headings] == [
        "The first year",
        "Before each trip",
        "Each time you use it",
        "Each week",
        "Each month",
        "Each 6 months",
        "Each year, from 16 May 2027",
        "Each year, from 16 April 2028",
        "In autumn",
        "Each 12,000 miles",
        "Once",
    ]
    for row in rows:
        assert html.count(row.plain) == 1
    assert html.count('href="topic:810"') == len(rows)
    assert "On 16 October 2027, 16 April 2028, 16 October 2028, 16 April 2029" in html
    ids = re.findall(r'id="([^"]+)"', html)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'href="#([^"]+)"', html)) <= set(ids)


def test_the_first_year_counts_as_a_wall_calendar_does() -> None:
    """What is rare enough to be forgotten, and nothing of the second year."""
    rows = [
        text("A.", interval="1 month"),
        text("B.", interval="6 months"),
        text("B, too.", interval="3 months"),
        text("C.", interval="12 months"),
        text("D.", interval="2 years"),
        text("E.", interval="1 week"),
    ]
    html, _ = care_page(schedule(rows, Facts(), DELIVERED, "us"), DELIVERED)
    table = re.findall(r"<tr><td>(.*?)</td><td>(.*?)</td></tr>", html)
    read = [(day, re.sub(r"<[^>]+>", "", what)) for day, what in table]
    assert [(day.replace("\N{NO-BREAK SPACE}", " "), what) for day, what in read] == [
        ("16 July 2027", "each 3 months"),
        ("16 October 2027", "each 3 months, each 6 months"),
        ("16 January 2028", "each 3 months"),
        ("16 April 2028", "each 3 months, each 6 months, each year"),
    ]
