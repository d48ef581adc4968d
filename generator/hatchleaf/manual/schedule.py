"""
The schedule of regular care: each task with this unit's days, from its delivery.

Days count from the delivery, never from today.  The days after the 28th of a month
count as its 28th: then all months have the day, every calendar agrees on it, and
nothing comes late.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import count
from typing import Final

from hatchleaf import units
from hatchleaf.blocks.choose import Chosen, Selection
from hatchleaf.blocks.intervals import Interval
from hatchleaf.blocks.model import Care, Topic
from hatchleaf.engineering.dates import months_after
from hatchleaf.facts.model import Fact, Facts
from hatchleaf.manual.convert import convert_line
from hatchleaf.manual.filling import Filler
from hatchleaf.manual.model import CareTask

_LAST_DAY: Final = 28
_MONTHS: Final = {"month": 1, "year": 12}
_DAYS: Final = {"day": 1, "week": 7}
_SEASONS: Final = {"each spring": 3, "each autumn": 9}
"""The month in which a season of the meteorologists begins north of the equator."""
_HALF_A_YEAR: Final = 6
_SOUTH: Final = frozenset({"au"})
_MILES: Final = frozenset({"us", "uk"})
"""The markets that drive by miles."""
_FIGURES: Final = 2
"""Figures of a distance that was stated in the other unit."""


@dataclass(frozen=True)
class CareText:
    """One row of a chosen block's `every`, its text filled in."""

    key: str
    """Block, item and row: the same from one build to the next."""
    topic: Topic
    care: Care
    item_id: str
    markdown: str
    plain: str


def care_texts(
    selection: Selection, topics: Mapping[str, Topic], filler: Filler
) -> tuple[CareText, ...]:
    """
    Return the tasks of the chosen blocks, the same words at the same times once.

    Args:
        selection: What is in the guide.
        topics: The registry; a text without a topic of its own has no task.
        filler: Fills in the texts and gathers what cannot be filled.
    """
    found: dict[tuple[object, ...], CareText] = {}
    for one in selection.chosen:
        topic = topics.get(one.block.topic)
        if topic is None:
            continue
        for row, care in enumerate(one.block.care, start=1):
            text = _text(one, row, topic, filler)
            # Two cylinders, one task; yet each alarm has a day of its own.
            own = text.item_id if care.due else ""
            same = (text.plain, care.interval, care.first, care.due, own)
            found.setdefault(same, text)
    return tuple(found.values())


def _text(one: Chosen, row: int, topic: Topic, filler: Filler) -> CareText:
    care = one.block.care[row - 1]
    names = filler.wording.names(one)
    return CareText(
        f"{one.block.id}/{one.item_id}/{row}",
        topic,
        care,
        one.item_id,
        filler.markdown(care.task, names),
        filler.plain(care.task, names),
    )


def schedule(
    texts: Iterable[CareText], facts: Facts, delivered: dt.date, market: str
) -> tuple[CareTask, ...]:
    """
    Return all tasks with their days, by topic number.

    Args:
        texts: The tasks, filled in.
        facts: All facts of the unit; some say a day.
        delivered: The day from which all is counted.
        market: Decides on miles or kilometers, and when spring begins.
    """
    made: list[CareTask] = []
    for text in texts:
        if text.care.due:
            made.extend(_on_days(text, facts, delivered))
        else:
            made.append(_again(text, delivered, market))
    return tuple(sorted(made, key=lambda task: task.topic))


def _again(text: CareText, delivered: dt.date, market: str) -> CareTask:
    interval, start = text.care.interval, text.care.first
    first: dt.date | None = None
    counted = start if start and start.span else interval
    if counted and counted.span:
        first = _after(delivered, counted)
    every, span = (interval.count, interval.span) if interval else (0, "")
    if first and span in _MONTHS:
        first = _in_each_month(first, delivered)
    occasion = interval.occasion if interval else ""
    if occasion in _SEASONS:
        first, every, span = _season(occasion, delivered, market), 1, "year"
    far = interval or Interval()
    begin = start or Interval()
    return CareTask(
        key=text.key,
        topic=text.topic.number,
        title=text.topic.title,
        task=convert_line(text.markdown),
        says=text.plain,
        first=first,
        every=every if first and interval else 0,
        span=span if first and interval else "",
        occasion=occasion,
        distance=_way(far, market),
        first_distance=_way(begin, market),
        note="",
    )


def _after(day: dt.date, interval: Interval) -> dt.date:
    """Return the day that comes one interval after *day*."""
    if interval.span in _DAYS:
        return day + dt.timedelta(days=interval.count * _DAYS[interval.span])
    start = day.replace(day=min(day.day, _LAST_DAY))
    return months_after(start, interval.count * _MONTHS[interval.span])


def _in_each_month(day: dt.date, delivered: dt.date) -> dt.date:
    """Return *day*, or one that all months have, yet none before the delivery."""
    capped = day.replace(day=min(day.day, _LAST_DAY))
    return capped if capped >= delivered else months_after(day.replace(day=1), 1)


def _season(occasion: str, delivered: dt.date, market: str) -> dt.date:
    """Return the first day of that season which is not before the delivery."""
    month = _SEASONS[occasion]
    if market in _SOUTH:
        month = (month + _HALF_A_YEAR - 1) % 12 + 1
    start = dt.date(delivered.year, month, 1)
    return start if start >= delivered else start.replace(year=start.year + 1)


def _way(interval: Interval, market: str) -> str:
    """Return the distance as *market* drives it, never farther: ``12,000 miles``."""
    if not interval.distance:
        return ""
    there = "mile" if market in _MILES else "kilometer"
    number = float(interval.distance)
    if there != interval.measure:
        way = units.quantity(number, interval.measure)
        number = units.rounded(units.number_in(way, there), _FIGURES, "down")
    return f"{number:,.10g} {'miles' if there == 'mile' else 'km'}"


def _on_days(text: CareText, facts: Facts, delivered: dt.date) -> Iterator[CareTask]:
    """Yield a task for each day that the facts say; items of one day are one task."""
    by_day: dict[tuple[dt.date, bool], list[Fact]] = {}
    for fact in _due(text, facts):
        if fact.day:
            by_day.setdefault((fact.day, fact.typical), []).append(fact)
    for (day, typical), found in by_day.items():
        items = "" if text.item_id else ", ".join(f.item_words for f in found if f.item)
        marks = ["typical"] if typical else []
        # A month that was over at the delivery is told as it is, and is due at once.
        shown = found[0].shown()
        yield CareTask(
            key=f"{text.key}/{found[0].item}",
            topic=text.topic.number,
            title=text.topic.title,
            task=convert_line(text.markdown),
            says=text.plain,
            first=max(day, delivered),
            every=0,
            span="",
            occasion="due",
            distance="",
            first_distance="",
            note=f"{shown} ({', '.join(marks)})" if marks else shown,
            items=items,
        )


def _due(text: CareText, facts: Facts) -> tuple[Fact, ...]:
    if not text.item_id:
        return facts.of(text.care.due)
    found = facts.get(f"{text.care.due}[{text.item_id}]")
    return (found,) if found else ()


def days(task: CareTask) -> Iterator[dt.date]:
    """Yield the days of a task in order: without end for what comes round again."""
    if task.first is None:
        return
    if not task.every:
        yield task.first
        return
    for number in count():
        if task.span in _DAYS:
            step = number * task.every * _DAYS[task.span]
            yield task.first + dt.timedelta(days=step)
        else:
            yield months_after(task.first, number * task.every * _MONTHS[task.span])
