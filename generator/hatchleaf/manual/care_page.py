"""The page of regular care: every task by how often it comes round, with its days."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import groupby, islice, takewhile
from typing import Final, TypeAlias

from hatchleaf.engineering.dates import months_after
from hatchleaf.manual.fact_words import slug
from hatchleaf.manual.model import CareTask, Heading, day_in_words
from hatchleaf.manual.schedule import days

_Key: TypeAlias = tuple[int, int, str, dt.date]
_SHOWN: Final = 4
"""How many days of a group are told: with them anyone can go on counting."""
_IN_DAYS: Final = {"day": 1, "week": 7}
_IN_MONTHS: Final = {"month": 1, "year": 12}
_YEAR: Final = 12
_TRIPS: Final = {
    "before each trip": "Before each trip",
    "each trip": "On each trip",
    "each use": "Each time you use it",
}
_SEASONS: Final = {
    "each spring": (
        "In spring",
        "The calendar says {}. Your weather has the last word.",
    ),
    "each autumn": (
        "In autumn",
        "The calendar says {}. Be done before the first frost.",
    ),
    "each season": ("Once a season", ""),
}
_SEE: Final = '<a class="see" href="topic:{0:03d}">{0:03d}</a>'
_TRIP, _DAYS, _MONTHS, _SEASON, _WAY, _ONCE = range(6)
"""The order of the groups: by occasion, from short to long, by distance, once."""


@dataclass(frozen=True)
class _Group:
    """Tasks that fall due together."""

    title: str
    when: str
    """When that is, in a sentence; empty where the title says it."""
    tasks: tuple[CareTask, ...]
    in_year: bool
    """True for what is worth a line in the first year: what comes each month is not."""

    @property
    def id(self) -> str:
        """The id of its heading."""
        return f"care-{slug(self.title)}"


def care_page(
    tasks: Sequence[CareTask], delivered: dt.date
) -> tuple[str, tuple[Heading, ...]]:
    """
    Return the HTML of all *tasks*, and its headings.

    Args:
        tasks: The schedule, by topic.
        delivered: The day that all is counted from.
    """
    groups = tuple(_groups(tasks))
    made = list(_first_year(groups, delivered))
    headings = [Heading("care-first-year", "The first year", 2)] if made else []
    for group in groups:
        headings.append(Heading(group.id, group.title, 2))
        made.append(f'<h2 id="{group.id}">{escape(group.title)}</h2>')
        if group.when:
            made.append(f"<p>{escape(group.when, quote=False)}</p>")
        rows = "".join(_row(task) for task in group.tasks)
        made.append(f'<ul class="care">{rows}</ul>')
    return "\n".join(made), tuple(headings)


def _row(task: CareTask) -> str:
    text = task.task
    if task.items:
        text = f"{text.removesuffix('.')}: {escape(task.items, quote=False)}."
    if task.note:
        text = f"<b>{escape(task.note, quote=False)}.</b> {text}"
    if more := by_distance(task):
        text = f"{text} {escape(more, quote=False)}"
    return f"<li><span>{text}</span>{_SEE.format(task.topic)}</li>"


def by_distance(task: CareTask) -> str:
    """Return what the miles add to a task's days, as sentences; empty for nothing."""
    said = []
    sooner = " if that comes sooner" if task.first else ""
    again = task.every or task.distance or task.occasion
    if task.first_distance and again:
        said.append(f"The first time, after {task.first_distance}{sooner}.")
    elif task.first_distance:
        said.append(
            f"{'Or after' if sooner else 'After'} {task.first_distance}{sooner}."
        )
    if task.distance and task.every:
        said.append(f"Or each {task.distance}{sooner}.")
    return " ".join(said)


def _groups(tasks: Iterable[CareTask]) -> Iterator[_Group]:
    in_order = sorted(tasks, key=lambda task: (_key(task), task.topic))
    found = [(key, tuple(group)) for key, group in groupby(in_order, key=_key)]
    lengths = Counter(key[:2] for key, _ in found)
    for key, of_group in found:
        if key[0] in (_DAYS, _MONTHS):
            yield _of_time(of_group, key, starts=lengths[key[:2]] > 1)
        elif key[0] == _ONCE:
            by_day = sorted(of_group, key=lambda task: task.first or dt.date.min)
            yield _Group("Once", "", tuple(by_day), in_year=True)
        elif key[0] == _SEASON:
            title, says = _SEASONS[key[2]]
            first = of_group[0].first
            day = f"{first.day} {first:%B}" if first else ""
            yield _Group(title, says.format(day), of_group, in_year=True)
        else:
            title = _TRIPS.get(key[2], f"Each {key[2]}")
            yield _Group(title, "", of_group, in_year=False)


def _key(task: CareTask) -> _Key:
    """Return what tasks of one group share, in the order of the groups."""
    never = dt.date.min
    if task.occasion in _TRIPS:
        return _TRIP, list(_TRIPS).index(task.occasion), task.occasion, never
    if task.occasion in _SEASONS:
        return _SEASON, list(_SEASONS).index(task.occasion), task.occasion, never
    if task.every and task.first and task.span in _IN_DAYS:
        return _DAYS, task.every * _IN_DAYS[task.span], "", task.first
    if task.every and task.first:
        return _MONTHS, task.every * _IN_MONTHS[task.span], "", task.first
    if task.distance:
        number = int(task.distance.split(" ", 1)[0].replace(",", ""))
        return _WAY, number, task.distance, never
    return _ONCE, 0, "", never


def _of_time(tasks: tuple[CareTask, ...], key: _Key, *, starts: bool) -> _Group:
    """Return the group of one interval; *starts* when another group has the same."""
    kind, number, _, first = key
    title = f"Each {_length(kind, number)}"
    if starts:
        title = f"{title}, from {day_in_words(first)}"
    if (kind, number) == (_MONTHS, 1):
        when = f"First on {day_in_words(first)}, then on day {first.day} of each month."
    elif kind == _DAYS:
        when = f"First on {day_in_words(first)}."
    else:
        told = ", ".join(day_in_words(day) for day in islice(days(tasks[0]), _SHOWN))
        when = f"On {told} and so on."
    return _Group(title, when, tasks, in_year=kind == _MONTHS and number > 1)


def _length(kind: int, number: int) -> str:
    """Return an interval as words that follow "each": ``3 months``, ``week``."""
    if kind == _DAYS:
        count, span = (number // 7, "week") if number % 7 == 0 else (number, "day")
    elif number % _YEAR == 0:
        count, span = number // _YEAR, "year"
    else:
        count, span = number, "month"
    return span if count == 1 else f"{count} {span}s"


def _first_year(groups: Sequence[_Group], delivered: dt.date) -> Iterator[str]:
    """Yield the days of the first year, each with what is due then."""
    end = months_after(delivered, _YEAR)
    by_day: dict[dt.date, list[_Group]] = {}
    for group in (one for one in groups if one.in_year):
        for task in group.tasks:
            for day in takewhile(lambda day: day <= end, days(task)):
                of_day = by_day.setdefault(day, [])
                if group not in of_day:
                    of_day.append(group)
    if not by_day:
        return
    yield '<h2 id="care-first-year">The first year</h2>'
    yield f"<p>Delivered on {day_in_words(delivered)}."
    yield "What comes each month or more often is left out here.</p>"
    yield '<div class="table"><table><thead><tr><th>Day</th><th>What is due</th></tr>'
    yield "</thead><tbody>"
    for day in sorted(by_day):
        due = ", ".join(_link(group) for group in by_day[day])
        # A day stays on one line, however narrow the phone.
        shown = day_in_words(day).replace(" ", "\N{NO-BREAK SPACE}")
        yield f"<tr><td>{shown}</td><td>{due}</td></tr>"
    yield "</tbody></table></div>"


def _link(group: _Group) -> str:
    words = group.title[0].lower() + group.title[1:]
    return f'<a href="#{group.id}">{escape(words)}</a>'
