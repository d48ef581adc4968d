"""
Why: the file lands in an owner's own calendar, in a program that nobody of us knows.

What was written is read back with two parsers, icalendar and vobject, and expanded by
python-dateutil; the rules are those of RFC 5545.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from dataclasses import replace
from itertools import islice
from typing import Any

import icalendar
import pytest
import vobject
from dateutil.rrule import rrulestr

from hatchleaf.manual.make import Made
from hatchleaf.manual.model import CareTask, Pages
from hatchleaf.manual.schedule import days
from hatchleaf.outputs.calendar import FILE_NAME, calendar
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.settings import Settings
from hatchleaf.spec.load import LoadedUnit
from outputs.made_pages import CODE, page, pages

URL = "https://manuals.example/"
SETTINGS = Settings(
    site_url=URL,
    host="manuals.example",
    site_name="Two Herons",
    phone="555-0142",
    brand="",
    preview="",
)
HOSTILE = (
    'a\\nb;c,d:e"f',
    "x\nEND:VEVENT\nBEGIN:VEVENT\nSUMMARY:other",
    "x\r\nEND:VCALENDAR\r\n",
    "ends in a backslash \\",
    "rings the bell\a twice",
    "\N{LATIN SMALL LETTER U WITH DIAERESIS}" * 90,
    "\N{BLACK TELEPHONE}\N{BICYCLE}" * 40,
)


def task(key: str = "block//1", **named: object) -> CareTask:
    """Return a task; what is not named is plain."""
    fields: dict[str, object] = {
        "key": key,
        "topic": 230,
        "title": "Water pump",
        "task": "Look.",
        "says": "Look at the strainer.",
        "first": dt.date(2027, 10, 16),
        "every": 6,
        "span": "month",
        "occasion": "",
        "distance": "",
        "first_distance": "",
        "note": "",
    }
    return CareTask(**{**fields, **named})  # type: ignore[arg-type]


def with_care(*tasks: CareTask, **card: object) -> Pages:
    """Return the hand-made pages with a schedule, and a page that shows it."""
    made = pages(page(80, id="care", system="home", title="Regular care"))
    unit = replace(made.unit, **card)  # type: ignore[arg-type]
    return replace(made, care=tasks, unit=unit)


def read_twice(data: bytes) -> tuple[list[Any], list[Any]]:
    """Return the entries of a file as both parsers see them, in the file's order."""
    ours = icalendar.Calendar.from_ical(data).walk("VEVENT")
    (whole,) = vobject.readComponents(data.decode())
    theirs = list(getattr(whole, "vevent_list", []))
    assert len(ours) == len(theirs)
    return ours, theirs


def test_what_both_parsers_read() -> None:
    """Day, repetition, words and the printed address of the topic's page."""
    (ours,), (theirs,) = read_twice(calendar(with_care(task()), URL))
    address = f"https://manuals.example/{CODE}/230/"
    assert ours["DTSTART"].dt == theirs.dtstart.value == dt.date(2027, 10, 16)
    assert theirs.dtstart.params == {"VALUE": ["DATE"]}
    assert "DTEND" not in ours
    assert "DURATION" not in ours
    assert ours["RRULE"].to_ical() == b"FREQ=MONTHLY;INTERVAL=6"
    assert theirs.rrule.value == "FREQ=MONTHLY;INTERVAL=6"
    assert str(ours["SUMMARY"]) == theirs.summary.value
    assert theirs.summary.value == "Marlpit 24: Look at the strainer"
    assert str(ours["URL"]) == theirs.url.value == address
    assert f"Page 230, Water pump: {address}" in theirs.description.value
    # The stamp is needed (3.6.1), and must not be the time of the build.
    assert ours["DTSTAMP"].dt == dt.datetime(2027, 4, 16, tzinfo=dt.UTC)
    assert str(ours["UID"]) == theirs.uid.value


def test_lines_are_those_of_the_standard() -> None:
    """CRLF, 75 octets at most, no character cut in two (RFC 5545, 3.1)."""
    long = task(says="\N{LATIN SMALL LETTER U WITH DIAERESIS}x" * 80 + ".")
    data = calendar(with_care(long), URL)
    assert data.endswith(b"END:VCALENDAR\r\n")
    lines = data.split(b"\r\n")
    assert not any(b"\r" in line or b"\n" in line for line in lines)
    assert all(len(line) <= 75 for line in lines)
    for line in lines:
        line.decode()
    assert any(line.startswith(b" ") for line in lines)
    unfolded = data.replace(b"\r\n ", b"").decode().split("\r\n")
    for needed in ("VERSION:2.0", "PRODID:-//Hatchleaf//Regular care//EN"):
        assert unfolded.count(needed) == 1


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("where", ["says", "items", "title", "note", "name"])
def test_no_text_becomes_a_line_of_its_own(text: str, where: str) -> None:
    """A name with a line break in it adds no entry and ends none."""
    if where == "name":
        made = with_care(task(), name=text)
    else:
        made = with_care(task(**{where: text}))
    data = calendar(made, URL)
    (ours,), (theirs,) = read_twice(data)
    assert str(ours["SUMMARY"]) == theirs.summary.value
    told = str(ours["SUMMARY"] if where != "title" else ours["DESCRIPTION"])
    assert " ".join(text.split()).replace("\a", "") in told
    lines = data.replace(b"\r\n ", b"").split(b"\r\n")
    assert lines.count(b"BEGIN:VEVENT") == 1
    assert lines.count(b"END:VCALENDAR") == 1
    assert b"\a" not in data


@pytest.mark.parametrize(
    ("first", "every", "span"),
    [
        ("2027-05-16", 1, "month"),
        ("2027-02-28", 1, "month"),
        ("2028-02-28", 6, "month"),
        ("2029-02-28", 1, "year"),
        ("2028-03-01", 1, "year"),
        ("2027-12-27", 2, "week"),
        ("2027-01-31", 10, "day"),
        ("2027-10-28", 120, "month"),
    ],
)
def test_the_rule_gives_the_days_of_the_page(first: str, every: int, span: str) -> None:
    """What dateutil and vobject make of the rule is what the page tells."""
    one = task(first=dt.date.fromisoformat(first), every=every, span=span)
    (ours,), (theirs,) = read_twice(calendar(with_care(one), URL))
    start = dt.datetime.combine(ours["DTSTART"].dt, dt.time())
    rule = rrulestr(ours["RRULE"].to_ical().decode(), dtstart=start)
    expected = list(islice(days(one), 40))
    assert [when.date() for when in islice(rule, 40)] == expected
    other = theirs.getrruleset(addRDate=True)
    assert [when.date() for when in islice(other, 40)] == expected


def test_what_falls_due_once_does_not_come_again() -> None:
    """An alarm's end is told by its month, on the first day of it."""
    end = task(
        first=dt.date(2036, 8, 1), every=0, span="", occasion="due", note="August 2036"
    )
    (ours,), (theirs,) = read_twice(calendar(with_care(end), URL))
    assert "RRULE" not in ours
    assert not hasattr(theirs, "rrule")
    assert theirs.summary.value == "Marlpit 24: Look at the strainer, by August 2036"


def test_names_of_entries() -> None:
    """The same task keeps its name when its words or days change; no two share one."""

    def names(made: Pages) -> list[str]:
        entries, _ = read_twice(calendar(made, URL))
        return [str(entry["UID"]) for entry in entries]

    one, other = task("block/left/1"), task("block/right/1")
    both = names(with_care(one, other))
    assert len(set(both)) == 2
    assert names(with_care(one)) == [both[0]]
    changed = task("block/left/1", says="Other.", first=dt.date(2028, 1, 1))
    assert names(with_care(changed)) == [both[0]]
    assert names(with_care(one, code="123456789012344")) != [both[0]]
    assert all(re.fullmatch(r"[0-9a-f-]{36}", name) for name in both)


def test_order_of_what_is_given_does_not_matter() -> None:
    """Entries stand by their days, so the bytes are the same."""
    some = [task(f"b//{n}", first=dt.date(2027, 5, 1 + n % 3)) for n in range(9)]
    assert calendar(with_care(*some), URL) == calendar(with_care(*some[::-1]), URL)


def test_no_file_and_no_link_without_a_day() -> None:
    """A calendar without an entry is none (3.6); by distance alone there is no day."""
    far = task(first=None, every=0, span="", distance="12,000 miles")
    assert calendar(with_care(far), URL) == b""
    assert calendar(with_care(), URL) == b""
    site = build_site(with_care(far), SETTINGS)
    assert f"{CODE}/{FILE_NAME}" not in site
    assert b"care.ics" not in site[f"{CODE}/080/index.html"]


def test_the_website_links_to_it_and_the_phone_copy_does_not() -> None:
    """Nothing lies beside the phone copy once it is saved."""
    made = with_care(task())
    site = build_site(made, SETTINGS)
    assert site[f"{CODE}/{FILE_NAME}"] == calendar(made, URL)
    assert f'href="../../{CODE}/care.ics"' in site[f"{CODE}/080/index.html"].decode()
    assert b"care.ics" not in site[f"{CODE}/manual.html"]
    assert b"care.ics" not in site[f"{CODE}/230/index.html"]


def test_samples_are_whole_and_tell_nothing_private(
    guides: Mapping[str, Made], samples: Mapping[str, LoadedUnit]
) -> None:
    """Each dated task is an entry that leads to a page of the guide; no VIN, no stock."""
    for name, made in guides.items():
        data = calendar(made.pages, URL)
        ours, _ = read_twice(data)
        assert len(ours) == len(made.pages.dated) > 10
        assert len({str(entry["UID"]) for entry in ours}) == len(ours)
        code = made.pages.unit.code
        pages_of = {page.number for page in made.pages.pages}
        for entry in ours:
            found = re.fullmatch(rf"{URL}{code}/(\d{{3}})/", str(entry["URL"]))
            assert found
            assert int(found[1]) in pages_of
            assert entry["DTSTART"].dt >= made.pages.unit.delivered
            assert "RRULE" in entry or "by " in str(entry["SUMMARY"])
        spec = samples[name].spec
        whole = data.replace(b"\r\n ", b"").decode()
        for private in (spec.vin, spec.stock):
            assert private
            assert str(private) not in whole


def test_every_sample_has_the_page(guides: Mapping[str, Made]) -> None:
    """Where a task comes round again there is a page 080 that tells each of them."""
    for made in guides.values():
        body = made.pages.by_number[80].body
        assert made.pages.by_number[80].system == "home"
        assert body.count("<li>") >= len(made.pages.care) > 10
        for one in made.pages.care:
            assert one.task.removesuffix(".") in body
