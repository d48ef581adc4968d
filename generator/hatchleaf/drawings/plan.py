"""
The plan of the unit from above with one topic's hatches: a strip, the front left.

Drawn in classes, so that night, print and a dealer's colour come free.  Beside the
marks there are only the outline, the wheels and the entry door, to find one's way.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from hatchleaf.drawings.outline import front_word, outline
from hatchleaf.drawings.sides import Lie, side_of, side_words
from hatchleaf.drawings.spots import Dot, dot_of
from hatchleaf.drawings.spread import spread
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

_LIE: Final = Lie(start=8, length=344, middle=56, half=28, upright=False)
_STEP: Final = 38.0
_ROWS: Final = {1: 12.0, -1: 100.0}
"""Middles of the plates beside the right-hand wall, which is above, and the left."""
_FIRST, _LAST = 20.0, 340.0
_REAR: Final = 346.0
"""Where the word of the rear ends."""
_WORD: Final = 28.0
"""Room of the words of front and rear on the line between the sides."""
_BETWEEN: Final = 14.0
"""From that line, half of a word and of a dot."""
_CLEAR: Final = 48.0
"""From the middle of a plate to that of the words beside it."""


@dataclass(frozen=True)
class Mark:
    """One hatch on the plan, and what stands on its plate."""

    place: PlaceOnUnit
    text: str


@cache
def _template() -> Template:
    # Autoescape: titles hold names of places from the unit's file.
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("plan.svg.j2").read_text(encoding="utf-8")
    return environment.from_string(source)


def plan(spec: UnitSpec, marks: Iterable[Mark], *, key: str, title: str) -> str:
    """
    Return the SVG of the plan with *marks*.

    Args:
        spec: The unit: its type, places, axles and door.
        marks: The hatches to show; of one place and text, one is drawn.
        key: Part of the title's id, unique in the manual.
        title: What a screen reader says of the drawing.
    """
    market = spec.body.market
    road = int(side_of("road", market))
    names = side_words(market)
    rows = _rows(tuple(dict.fromkeys(marks)), market)
    middles = {side: _spread(row) for side, row in rows.items()}
    placed = [
        _plate(label, x, side)
        for side, row in rows.items()
        for label, x in zip(row, middles[side], strict=True)
    ]
    crossed = [x for row in rows.values() for label in row for x in _crossed(label)]
    front_x = _LIE.start + front_word(spec) * _LIE.length
    return (
        _template()
        .render(
            key=key,
            title=title,
            front_x=f"{_beside(front_x, 1, crossed):.1f}",
            rear_x=f"{_beside(_REAR, -1, crossed):.1f}",
            strokes=outline(spec, _LIE),
            words=[
                (
                    x,
                    f"{_ROWS[side] + 4:g}",
                    names["road" if side == road else "curb"],
                )
                for side in rows
                if (x := _room_for_words(middles[side]))
            ],
            marks=placed,
        )
        .strip()
    )


@dataclass
class _Label:
    """One plate and the dots that it stands for, from front to rear."""

    text: str
    dots: list[Dot]

    @property
    def wanted(self) -> float:
        return sum(dot.x for dot in self.dots) / len(self.dots)


def _rows(marks: tuple[Mark, ...], market: str) -> dict[int, list[_Label]]:
    sides: dict[int, list[tuple[Dot, str]]] = {1: [], -1: []}
    for mark in sorted(marks, key=lambda each: not side_of(each.place.side, market)):
        side = int(side_of(mark.place.side, market))
        # What is between the sides comes last, and goes where there is room.
        row = sides[side or min(sides, key=lambda each: len(sides[each]))]
        row.append((dot_of(mark.place, _LIE, market), mark.text))
    return {side: _labels(row) for side, row in sides.items()}


def _labels(row: list[tuple[Dot, str]]) -> list[_Label]:
    made: list[_Label] = []
    for dot, text in sorted(row, key=lambda each: (each[0].x, each[1])):
        last = made[-1] if made else None
        if last and last.text == text and dot.x - last.dots[0].x < _STEP:
            last.dots.append(dot)
        else:
            made.append(_Label(text, [dot]))
    return made


def _spread(row: list[_Label]) -> list[float]:
    return spread([label.wanted for label in row], _STEP, _FIRST, _LAST)


def _plate(label: _Label, x: float, side: int) -> dict[str, object]:
    middle = _ROWS[side]
    # The line ends at the plate, on the way from its wall.
    wall, end = _LIE.middle - side * (_LIE.half + 2), middle + side * 9
    return {
        "dots": label.dots,
        "leads": "".join(
            f"M{dot.x:g} {dot.y:g}V{wall:g}L{x:.1f} {end:g}" for dot in label.dots
        ),
        "x": f"{x - 18:.1f}",
        "y": f"{middle - 9:g}",
        "text_x": f"{x:.1f}",
        "text_y": f"{middle + 4:g}",
        "text": label.text,
        "inside": all(dot.inside for dot in label.dots),
    }


def _crossed(label: _Label) -> list[float]:
    """Return where dots or leads of *label* lie on the line between the sides."""
    return [dot.x for dot in label.dots if abs(dot.y - _LIE.middle) < _BETWEEN]


def _beside(wanted: float, way: int, crossed: list[float]) -> float:
    """Return the nearest start of a word from *wanted* on that nothing crosses."""
    starts = [wanted + way * step for step in range(0, 61, 4)]
    for start in starts:
        if all(abs(start + way * _WORD / 2 - x) > _WORD / 2 + 6 for x in crossed):
            return start
    return wanted


def _room_for_words(taken: list[float]) -> str:
    """Return where on a row its side is named, clear of the plates."""
    middle = _LIE.start + _LIE.length / 2
    for x in sorted(range(90, 321, 5), key=lambda at: abs(at - middle)):
        if all(abs(x - each) >= _CLEAR for each in taken):
            return str(x)
    return ""
