"""How long one can stay: the table, the chart and the calculator, of facts alone."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from hatchleaf.blocks.text import Shown, escaped
from hatchleaf.drawings import days
from hatchleaf.facts.endurance import (
    ENDS,
    FIRST,
    FROST,
    NIGHTS,
    PEOPLE,
    SUMMER,
    End,
    exact_days,
    item,
    who,
)
from hatchleaf.facts.model import Fact, Facts

BASES: Final = (*(end.base for end in ENDS), FIRST)
"""The facts that all of this rests on."""
ReadIt = Callable[[str], Shown]
"""Says where to read what stands at a path of the spec and is not known."""

_HELP: Final = {
    "endurance.fresh": "fill it on the way",
    "endurance.gray": "empty it on the way",
    "endurance.black": "empty it on the way",
    "endurance.combined": "empty it on the way",
    "endurance.battery": "charge it on the way",
    "endurance.lp": "get more on the way",
}
"""What a trip asks for that is longer than the days."""
_MOST_NIGHTS: Final = 30
"""The longest trip to ask for."""


def fitted(facts: Facts) -> tuple[End, ...]:
    """Return what ends on this unit, known or not."""
    return tuple(
        end for end in ENDS if facts.of(end.base) or facts.missing_for(end.base)
    )


def _of(facts: Facts, base: str, people: int, night: str) -> Fact | None:
    return facts.get(f"{base}[{item(people, night)}]")


def _bare(fact: Fact) -> str:
    """Return the number alone, where the head of the column names the unit."""
    return fact.shown().removesuffix("s").removesuffix(" day")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def table(facts: Facts, link: Callable[[str], str], read_it: ReadIt) -> Shown:
    """
    Return the table: days by people for each night, and what ends first.

    Args:
        facts: All facts of the unit.
        link: Gives the symbolic link to how a fact was worked out.
        read_it: Says where to read what is not known.
    """
    heads = [who(people) for people in PEOPLE]
    typical = 'Days, about <span class="typical">(typical)</span>'
    lines = [
        f"| {typical} | {' | '.join(heads)} |",
        "| --- |" + " --- |" * len(heads),
    ]
    plain: list[str] = []
    marked: dict[str, None] = {}
    for night in NIGHTS:
        lines.append(f"| **{_capital(night)}** |" + " |" * len(PEOPLE))
        for base, words in _rows(facts):
            cells = [_of(facts, base, people, night) for people in PEOPLE]
            known = [one for one in cells if one is not None]
            shown = [
                f"[{escaped(_bare(one))}]({link(one.name)})" if one else ""
                for one in cells
            ]
            if not known:
                missing = facts.missing_for(base)
                shown[0] = read_it(missing[0]).markdown if missing else "none used"
            lines.append(f"| {words} | {' | '.join(shown)} |")
            plain += [f"{words}, {one.item}: {one.shown()}" for one in known]
            if base != FIRST and any(one.brochure for one in known):
                marked[words.replace(words[0], words[0].lower(), 1)] = None
    # Marked below it: in each row the mark would make it too wide for a phone.
    note = (
        '\nBy the maker\'s paper <span class="brochure">(brochure)</span>: '
        f"{', '.join(marked)}.\n"
        if marked
        else ""
    )
    return Shown("\n" + "\n".join(lines) + "\n" + note, "; ".join(plain))


def _rows(facts: Facts) -> Iterator[tuple[str, str]]:
    for end in fitted(facts):
        yield end.base, _capital(end.words)
    yield FIRST, "Ends first"


def chart(facts: Facts) -> Shown:
    """Return the chart: a bar for each number that differs from its neighbors."""
    groups = [
        days.Group(_capital(end.words), bars)
        for end in fitted(facts)
        if (bars := tuple(_bars(facts, end)))
    ]
    if not groups:
        return Shown("", "")
    said = " ".join(
        f"{group.words}, {bar.words}: {bar.says}."
        for group in groups
        for bar in group.bars
    )
    drawn = days.chart(groups, title="Days until each is at its end", says=said)
    cut = any(bar.days > days.MOST for group in groups for bar in group.bars)
    note = f"\nA bar without an end goes on beyond {days.MOST} days.\n" if cut else ""
    return Shown(f'\n<figure class="chart">{drawn}</figure>\n{note}', said)


def _bars(facts: Facts, end: End) -> Iterator[days.Bar]:
    """Yield a bar for each number: by people, by night, or by both, as they differ."""
    found = {
        (people, night): fact
        for people in PEOPLE
        for night in NIGHTS
        if (fact := _of(facts, end.base, people, night)) is not None
    }
    by_people = len({(p, exact_days(f)) for (p, _), f in found.items()}) == len(PEOPLE)
    by_night = len({(n, exact_days(f)) for (_, n), f in found.items()}) <= len(NIGHTS)
    seen: set[str] = set()
    for (people, night), fact in found.items():
        words = night if by_night else who(people) if by_people else item(people, night)
        if words not in seen:
            seen.add(words)
            yield days.Bar(words, exact_days(fact), fact.shown())


def trip(facts: Facts) -> Shown:
    """
    Return the calculator: it picks among the facts, which it carries as data.

    Without scripts it is hidden, and the table says the same.
    """
    ends = [end for end in fitted(facts) if facts.of(end.base)]
    if not ends:
        return Shown("", "")
    days_of = {
        night: {
            str(people): [
                one.shown() if (one := _of(facts, base, people, night)) else ""
                for base in (*(end.base for end in ends), FIRST)
            ]
            for people in PEOPLE
        }
        for night in NIGHTS
    }
    data = {
        "ends": [[_capital(end.words), _HELP[end.base]] for end in ends],
        "summer": days_of[SUMMER],
        "frost": days_of[FROST],
        "most": _MOST_NIGHTS,
    }
    made = _form().render(
        data=json.dumps(data, separators=(",", ":")),
        people=[(people, _up_to(at)) for at, people in enumerate(PEOPLE)],
        most=_MOST_NIGHTS,
    )
    return Shown(f"\n{made.strip()}\n", "")


def _up_to(at: int) -> str:
    """Return the people that a number of the facts stands for: ``3 or 4 people``."""
    most, before = PEOPLE[at], PEOPLE[at - 1] if at else 0
    return who(most) if most - before == 1 else f"{before + 1} or {most} people"


@cache
def _form() -> Template:
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("trip.html.j2").read_text(encoding="utf-8")
    return environment.from_string(source)
