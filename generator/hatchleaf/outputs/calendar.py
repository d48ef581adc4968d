"""
The calendar: regular care as an iCalendar file (RFC 5545), whole days that repeat.

Its bytes rest on the unit's pages alone: what a calendar asks for of the present, the
time stamp, is the day of the delivery.
"""

from __future__ import annotations

import datetime as dt
import uuid
from typing import Final

from icalendar import Calendar, Event, vRecur, vText

from hatchleaf.manual.care_page import by_distance
from hatchleaf.manual.model import CareTask, Pages

FILE_NAME: Final = "care.ics"
"""Beside the pages of one unit: ``site/<code>/care.ics``."""

_SPACE: Final = uuid.UUID("a0ae3d33-d0b6-4efb-b277-aeb2e0e957e2")
"""Ours alone, so that nobody else's entry has the name of one of ours."""
_FREQUENCY: Final = {
    "day": "DAILY",
    "week": "WEEKLY",
    "month": "MONTHLY",
    "year": "YEARLY",
}


def calendar(pages: Pages, site_url: str) -> bytes:
    """
    Return the calendar of one unit, empty when it has no task with a day.

    Args:
        pages: All pages of the unit, with its schedule.
        site_url: ``https://HOST/``, as printed on the stickers.
    """
    if not pages.dated:
        return b""
    unit = pages.unit
    made = Calendar()
    made.add("prodid", "-//Hatchleaf//Regular care//EN")
    made.add("version", "2.0")
    # The second is the name as most programs read it, from before there was one.
    for name in ("name", "x-wr-calname"):
        made.add(name, vText(_line(f"Care of {unit.name}")))
    for task in pages.dated:
        made.add_component(_event(task, pages, f"{site_url}{unit.code}/"))
    return bytes(made.to_ical())


def _event(task: CareTask, pages: Pages, root: str) -> Event:
    unit = pages.unit
    address = f"{root}{task.topic:03d}/"
    made = Event()
    made.add("uid", str(uuid.uuid5(_SPACE, f"{unit.code}/{task.key}")))
    made.add("dtstamp", dt.datetime.combine(unit.delivered, dt.time(), dt.UTC))
    made.add("dtstart", task.first)
    if task.every:
        rule = vRecur({"FREQ": _FREQUENCY[task.span], "INTERVAL": task.every})
        made.add("rrule", rule)
    made.add("summary", _line(f"{unit.name}: {_summary(task)}"))
    lines = [
        f"Page {task.topic:03d}, {task.title}: {address}",
        by_distance(task),
        f"{unit.dealer_name} {unit.dealer_phone}".strip(),
        "The maker's manual and the labels come first.",
    ]
    made.add("description", "\n".join(_line(line) for line in lines if line))
    made.add("url", address)
    # It is a day to do it on, not one to be away on.
    made.add("transp", "TRANSPARENT")
    return made


def _line(text: str) -> str:
    """Return *text* in one line, without the control characters that TEXT may not."""
    return "".join(c for c in " ".join(text.split()) if c.isprintable())


def _summary(task: CareTask) -> str:
    said = task.says.removesuffix(".")
    if task.items:
        said = f"{said}: {task.items}"
    return f"{said}, by {task.note}" if task.note else said
