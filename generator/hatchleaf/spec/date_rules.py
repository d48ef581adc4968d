"""Rules on dates: nothing is made, read or found after the hand-over."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem
from hatchleaf.spec import paths
from hatchleaf.spec.checked import Checked, items
from hatchleaf.spec.model.safety import Safety
from hatchleaf.spec.model.unit import Body, Delivery
from hatchleaf.spec.tree import without_items

_READ_ON: Final = re.compile(r"(?P<reading>.*)\.read_on")
_EARLIEST_YEAR: Final = 1980
_YEARS_AHEAD: Final = 2
"""A model year may be sold well before its calendar year; common practice."""


def _delivered(unit: Checked) -> dt.date | None:
    delivery = unit.section("delivery", Delivery)
    return delivery.date if delivery else None


def nothing_after_the_delivery(unit: Checked) -> Iterator[Problem]:
    """Yield dates of making, reading and finding that lie after the hand-over."""
    delivered = _delivered(unit)
    if delivered is None:
        return
    for path, node in unit.tree.walk():
        day = _day(path, node.text or "")
        if day and day > delivered:
            what = f"'{node.text}' is after the delivery on {delivered}"
            yield Problem(node.place, path, what)


def _day(path: str, text: str) -> dt.date | None:
    """Return the day that a field of making, reading or finding states."""
    field = without_items(path)
    form = paths.fields().get(field)
    reading = _READ_ON.fullmatch(field)
    try:
        if field == "found_on":
            return dt.date.fromisoformat(text)
        if reading and paths.fields().get(reading["reading"]):
            return dt.date.fromisoformat(text)
        if form and form.form == "month" and field.endswith(".made"):
            return dt.date.fromisoformat(f"{text}-01")
    except ValueError:
        # Not a date: the field's own check has said so.
        return None
    return None


def tire_weeks(unit: Checked) -> Iterator[Problem]:
    """Yield tires made after the hand-over: often the year written before the week."""
    delivered = _delivered(unit)
    fitted = unit.tree.find("gear.tires.fitted")
    if delivered is None or fitted is None:
        return
    for tire in fitted.items:
        made = tire.fields.get("made")
        text = made.text if made else None
        if made is None or text is None or not re.fullmatch(r"\d{4}", text, re.ASCII):
            continue
        # 49 CFR 574.5(b)(4): two figures for the week, then two for the year.
        week, year = int(text[:2]), 2000 + int(text[2:])
        if dt.date(year, 1, 1) + dt.timedelta(weeks=max(week - 1, 0)) > delivered:
            what = f"week {week} of {year} is after the delivery on {delivered}"
            path = f"gear.tires.fitted[{tire.id}].made"
            yield Problem(made.place, path, what, hint="week first, then year")


def alarms_end_after_they_are_made(unit: Checked) -> Iterator[Problem]:
    """Yield alarms that are to be replaced before they were made."""
    safety = unit.section("safety", Safety)
    for alarm in items(safety.alarms if safety else None):
        made, end = alarm.made, alarm.replace_by
        if isinstance(made, dt.date) and isinstance(end, dt.date) and end <= made:
            what = f"{end:%Y-%m} is not after {made:%Y-%m}, when it was made"
            yield unit.problem(f"safety.alarms[{alarm.id}].replace_by", what)


def year_is_possible(unit: Checked) -> Iterator[Problem]:
    """Yield a model year that cannot be that of a unit handed over then."""
    delivered = _delivered(unit)
    body = unit.section("body", Body)
    if delivered is None or body is None:
        return
    last = delivered.year + _YEARS_AHEAD
    if not _EARLIEST_YEAR <= body.year <= last:
        what = f"the model year {body.year} does not fit the delivery on {delivered}"
        yield unit.problem("body.year", what, f"{_EARLIEST_YEAR} to {last}")


RULES: Final = (
    nothing_after_the_delivery,
    tire_weeks,
    alarms_end_after_they_are_made,
    year_is_possible,
)
