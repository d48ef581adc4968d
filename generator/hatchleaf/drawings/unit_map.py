"""
The map of the unit: every hatch that has a page, each with its number and name.

The unit stands upright, its front up, seen from above; labels stand in a column on
either side, spread so that a thumb can hit each, and lines lead to the true spots.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from hatchleaf.drawings.outline import outline
from hatchleaf.drawings.sides import Lie, percent, side_of, side_words
from hatchleaf.drawings.spots import LEGEND, Dot, dot_of, shaped
from hatchleaf.drawings.spread import spread
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

WIDTH: Final = 360.0
"""As wide as the page of a phone leaves, so that a unit is about a CSS pixel."""
STEP: Final = 50.0
"""From label to label: 44 CSS pixels where a screen is but 320 wide."""
_HALF: Final = 29.0
_TOP: Final = 46.0
_LEAST: Final = 330.0
_PLATE: Final = 36.0
_LEAD: Final = 24.0
_NEAR: Final = 0.12
"""Hatches of a topic this near, with nothing between, share a label."""


@dataclass(frozen=True)
class Sheet:
    """What the map is drawn on, in the drawing's units."""

    width: float
    step: float
    """From label to label."""

    @property
    def middle(self) -> float:
        """The unit's own middle."""
        return self.width / 2

    @property
    def words(self) -> float:
        """Room for a name beside its plate."""
        return self.middle - _HALF - _LEAD - _PLATE - 21


SCREEN: Final = Sheet(WIDTH, STEP)
PAPER: Final = Sheet(width=600.0, step=22.0)
"""Nobody taps on paper: names stand in one line each, one close below another."""


@dataclass(frozen=True)
class Hatch:
    """A place that a topic speaks of."""

    place: PlaceOnUnit
    number: int
    title: str
    where: str
    """The place in words, for those who do not see the drawing."""


@dataclass
class _Label:
    """A topic's label in a column, with its hatches."""

    number: int
    title: str
    hatches: list[Hatch]
    along: float
    middle: float = 0.0


@dataclass
class _Column:
    """The labels on one side, -1 left or 1 right."""

    side: int
    middle: float
    labels: list[_Label] = field(default_factory=list)

    @property
    def wall(self) -> float:
        return self.middle + self.side * (_HALF + 5)

    @property
    def edge(self) -> float:
        """Of the plates, toward the unit."""
        return self.middle + self.side * (_HALF + _LEAD)


@cache
def _template() -> Template:
    # Autoescape: titles and names of places come from files.
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("unit_map.svg.j2").read_text(encoding="utf-8")
    return environment.from_string(source)


def unit_map(
    spec: UnitSpec, hatches: Iterable[Hatch], *, title: str, sheet: Sheet = SCREEN
) -> str:
    """
    Return the SVG of the map.

    Args:
        spec: The unit.
        hatches: What has a page, each place of it.
        title: What a screen reader says of the drawing.
        sheet: What it is drawn on.
    """
    market = spec.body.market
    columns = _columns(tuple(hatches), market, sheet)
    rows = max(len(column.labels) for column in columns)
    length = max(_LEAST, sheet.step * (rows - 1))
    lie = Lie(_TOP, length, sheet.middle, _HALF, upright=True)
    for column in columns:
        wanted = [_TOP + label.along * lie.length for label in column.labels]
        middles = spread(wanted, sheet.step, _TOP, _TOP + lie.length)
        for label, middle in zip(column.labels, middles, strict=True):
            label.middle = middle
    drawn = {
        (label.number, hatch.place.id): dot_of(hatch.place, lie, market)
        for column in columns
        for label in column.labels
        for hatch in label.hatches
    }
    end = _TOP + lie.length
    return (
        _template()
        .render(
            title=title,
            width=f"{sheet.width:g}",
            height=f"{end + 70:g}",
            middle=f"{sheet.middle:g}",
            rear=f"{end + 15:g}",
            strokes=outline(spec, lie),
            sides=_sides(market, sheet),
            leads=[path for column in columns for path in _leads(column, drawn)],
            dots=_different(drawn.values()),
            labels=[
                _shown(label, column, sheet)
                for column in columns
                for label in column.labels
            ],
            legend=_legend(drawn.values(), end + 52),
        )
        .strip()
    )


def _sides(market: str, sheet: Sheet) -> list[tuple[str, str, str]]:
    """Return x, anchor and words of the heads of the columns."""
    road = side_of("road", market)
    names = side_words(market)
    left, right = ("road", "curb") if road < 0 else ("curb", "road")
    return [("2", "start", names[left]), (f"{sheet.width - 2:g}", "end", names[right])]


def _columns(
    hatches: tuple[Hatch, ...], market: str, sheet: Sheet
) -> tuple[_Column, _Column]:
    sides: dict[int, list[Hatch]] = {-1: [], 1: []}
    between: list[Hatch] = []
    for hatch in sorted(hatches, key=_in_order):
        side = int(side_of(hatch.place.side, market))
        (sides[side] if side else between).append(hatch)
    # What is in the middle goes where it moves the others least, a topic's places
    # together.
    about = max(_LEAST, sheet.step * (len({h.number for h in hatches}) / 2))
    for hatch in between:
        own = [s for s in sides if any(h.number == hatch.number for h in sides[s])]
        side = (
            own[0]
            if own
            else min(sides, key=lambda each: _moved(sides[each], hatch, about, sheet))
        )
        sides[side].append(hatch)
    return _column(-1, sides[-1], sheet), _column(1, sides[1], sheet)


def _moved(hatches: Sequence[Hatch], one: Hatch, length: float, sheet: Sheet) -> float:
    """Return how much further labels stand from their hatches with *one* more."""

    def way(column: _Column) -> float:
        wanted = [label.along * length for label in column.labels]
        found = spread(wanted, sheet.step, 0, length)
        return sum((a - b) ** 2 for a, b in zip(found, wanted, strict=True))

    return way(_column(1, [*hatches, one], sheet)) - way(_column(1, hatches, sheet))


def _in_order(hatch: Hatch) -> tuple[float, int]:
    share = percent(hatch.place)
    return (0.5 if share is None else share), hatch.number


def _column(side: int, hatches: Sequence[Hatch], sheet: Sheet) -> _Column:
    made = _Column(side, sheet.middle)
    for hatch in sorted(hatches, key=_in_order):
        along, number = _in_order(hatch)
        last = made.labels[-1] if made.labels else None
        if last and last.number == number and along - last.along <= _NEAR:
            last.hatches.append(hatch)
        else:
            made.labels.append(_Label(number, hatch.title, [hatch], along))
    return made


def _leads(column: _Column, drawn: dict[tuple[int, str], Dot]) -> list[str]:
    """Return a line for each hatch: across to the wall, then to its label."""
    return [
        f"M{dot.x:g} {dot.y:g}H{column.wall:g}L{column.edge:g} {label.middle:.1f}"
        for label in column.labels
        for dot in (drawn[label.number, each.place.id] for each in label.hatches)
    ]


def _different(dots: Iterable[Dot]) -> list[Dot]:
    return list({(dot.path, dot.inside): dot for dot in dots}.values())


def _shown(label: _Label, column: _Column, sheet: Sheet) -> dict[str, object]:
    left = column.side < 0
    plate = column.edge - _PLATE if left else column.edge
    lines = wrapped(label.title, sheet.words)
    first = label.middle + 4 - (len(lines) - 1) * 6.5
    where = "; ".join(dict.fromkeys(hatch.where for hatch in label.hatches))
    return {
        "number": f"{label.number:03d}",
        "says": f"{label.number:03d} {label.title}: {where}",
        "inside": all(hatch.place.where == "inside" for hatch in label.hatches),
        "x": f"{plate:g}",
        "y": f"{label.middle - 10:.1f}",
        "text_x": f"{plate + _PLATE / 2:g}",
        "text_y": f"{label.middle + 4.2:.1f}",
        "hit_x": "0" if left else f"{plate:g}",
        "hit_y": f"{label.middle - sheet.step / 2:.1f}",
        "hit_width": f"{plate + _PLATE if left else sheet.width - plate:g}",
        "hit_height": f"{sheet.step:g}",
        "words_x": f"{plate - 5 if left else plate + _PLATE + 5:g}",
        "anchor": "end" if left else "start",
        "lines": [(f"{first + 13 * i:.1f}", line) for i, line in enumerate(lines)],
    }


def wrapped(text: str, room: float) -> list[str]:
    """Return *text* in lines no wider than *room*, as far as its words allow."""
    lines: list[str] = []
    for word in text.split():
        if lines and _wide(f"{lines[-1]} {word}") <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def _wide(text: str) -> float:
    """Return about how wide *text* is in 12 px letters of a plain typeface."""
    return sum(
        3.4
        if c in "iljtfrI.,:;'()- "
        else 10.2
        if c in "mwMW"
        else 8
        if c.isupper()
        else 6.6
        for c in text
    )


def _legend(dots: Iterable[Dot], y: float) -> list[dict[str, object]]:
    """Return what the shapes mean, of those that are on the map."""
    used = {dot.kind for dot in dots}
    rows: list[dict[str, object]] = []
    x = 8.0
    for kind, words in LEGEND:
        if kind in used:
            rows.append(
                {
                    "path": shaped(kind, x, y),
                    "inside": kind == "inside",
                    "x": f"{x + 9:g}",
                    "y": f"{y + 4:g}",
                    "words": words,
                }
            )
            x += 24 + 6.1 * len(words)
    return rows
