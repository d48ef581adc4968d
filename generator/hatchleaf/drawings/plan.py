"""
The plan of the unit from above: its outline and the hatches, sides and distances true.

Drawn in classes and `currentColor`, so that night, print and a dealer's colour come
free; the front is to the left, the road side above.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import number_in

_TONGUE: Final = 56.0
_MOTORISED: Final = ("class_a", "class_b", "class_c", "truck_camper")
_WIDTH: Final = 360.0
_NEAR: Final = 22.5
"""Marks closer than this overlap: one is moved."""
_SAME: Final = 45.0
"""A topic's second hatch this close needs no second mark among all topics."""


@dataclass(frozen=True)
class Mark:
    """One hatch on the plan: what stands in the circle, and where it leads."""

    place: PlaceOnUnit
    text: str
    number: str = ""
    """Three digits to make it a link, empty for none."""
    title: str = ""


@cache
def _template() -> Template:
    # Autoescape: a place's name comes from the unit's file.
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("plan.svg.j2").read_text(encoding="utf-8")
    return environment.from_string(source)


def plan(spec: UnitSpec, marks: Iterable[Mark], *, key: str, title: str) -> str:
    """
    Return the SVG of the plan with *marks*.

    Args:
        spec: The unit; its type decides on a tongue, its axles on the wheels.
        marks: The hatches to show.
        key: Part of the title's id, unique in the manual.
        title: What a screen reader says of the drawing.
    """
    shown = tuple(marks)
    tongue = spec.body.type not in _MOTORISED
    left = 8 + _TONGUE if tongue else 8
    frame = _Frame(left, 352.0, 22.0, 56.0)
    if any(mark.number for mark in shown):
        # All topics at once need room: marks stand beside the walls, not on them.
        frame = _Frame(left if tongue else 32, 326.0, 60.0, 112.0, crowded=True)
    return _template().render(
        key=key,
        title=title,
        left=frame.left,
        width=frame.right - frame.left,
        top=frame.top,
        beam=frame.beam,
        height=frame.bottom + (60 if frame.crowded else 24),
        tongue=tongue,
        crowded=frame.crowded,
        wheels=_wheels(spec, frame.left, frame.right - frame.left),
        marks=_placed(shown, frame, tongue=tongue),
    )


@dataclass(frozen=True)
class _Frame:
    """The body's outline in the drawing's own units, the front to the left."""

    left: float
    right: float
    top: float
    beam: float
    crowded: bool = False

    @property
    def bottom(self) -> float:
        return self.top + self.beam

    @property
    def middle(self) -> float:
        return self.top + self.beam / 2

    def room(self, place: PlaceOnUnit) -> tuple[float, float, float, float]:
        """Return where a mark of *place* may stand: x from, x to, y from, y to."""
        across = self.left + 12, self.right - 12
        if place.where == "inside":
            return *across, self.top + 14, self.bottom - 14
        return {
            "road": (*across, self.top - 38, self.top - 14),
            "curb": (*across, self.bottom + 14, self.bottom + 38),
            "center": (*across, self.top + 14, self.bottom - 14),
            "front": (12, self.left - 14, self.top - 38, self.bottom + 38),
            "rear": (self.right + 14, _WIDTH - 12, self.top - 38, self.bottom + 38),
        }[place.side]


def _placed(
    marks: tuple[Mark, ...], frame: _Frame, *, tongue: bool
) -> list[dict[str, object]]:
    """Return the marks with their spots; when crowded, none upon another."""
    spots: dict[int, tuple[float, float, float, float]] = {}
    # The words front and rear keep their spots too.
    taken = [(frame.left + 18, frame.middle), (frame.right - 16, frame.middle)]
    wanted = [_position(mark.place, frame, tongue=tongue) for mark in marks]
    for index in sorted(range(len(marks)), key=lambda each: wanted[each]):
        mark, (at_x, at_y) = marks[index], wanted[index]
        if not frame.crowded:
            spots[index] = at_x, at_y, at_x, at_y
            continue
        if any(
            marks[other].number == mark.number
            and math.hypot(spot[2] - at_x, spot[3] - at_y) < _SAME
            for other, spot in spots.items()
        ):
            continue
        x, y = _free((at_x, at_y), frame.room(mark.place), taken)
        taken.append((x, y))
        spots[index] = x, y, at_x, at_y
    return [
        {
            "x": round(spots[index][0], 1),
            "y": round(spots[index][1], 1),
            "at_x": round(spots[index][2], 1),
            "at_y": round(spots[index][3], 1),
            "text": mark.text,
            "number": mark.number,
            "title": mark.title,
            "inside": mark.place.where == "inside",
        }
        for index, mark in enumerate(marks)
        if index in spots
    ]


def _wheels(spec: UnitSpec, left: float, width: float) -> list[float]:
    axles = spec.gear.axles if isinstance(spec.gear.axles, tuple) else ()
    count = max(1, len(axles))
    if spec.body.type in _MOTORISED:
        return [round(left + width * share, 1) for share in (0.12, 0.7)]
    middle = left + width * 0.6
    return [round(middle + (i - (count - 1) / 2) * 30 - 13, 1) for i in range(count)]


def _position(
    place: PlaceOnUnit, frame: _Frame, *, tongue: bool
) -> tuple[float, float]:
    """Return the spot of a hatch itself: on its wall, or inside behind it."""
    share = (
        0.5
        if place.from_front.quantity is None
        else number_in(place.from_front.quantity, "percent") / 100
    )
    inside = place.where == "inside"
    if place.side == "front":
        before = frame.left - (24 if tongue and not inside else -14)
        return before, frame.middle
    if place.side == "rear":
        return frame.right - (14 if inside else 0), frame.middle
    along = frame.left + (frame.right - frame.left) * share
    across = {
        "road": frame.top + (14 if inside else 0),
        "curb": frame.bottom - (14 if inside else 0),
        "center": frame.middle,
    }[place.side]
    return min(max(along, frame.left + 8), frame.right - 8), across


def _free(
    wanted: tuple[float, float],
    room: tuple[float, float, float, float],
    taken: list[tuple[float, float]],
) -> tuple[float, float]:
    """Return the nearest spot in *room* that is clear of all taken ones."""
    x_from, x_to, y_from, y_to = room
    start = min(max(wanted[0], x_from), x_to), min(max(wanted[1], y_from), y_to)
    for away in range(0, 300, 3):
        for turn in range(24 if away else 1):
            x = start[0] + away * math.cos(turn * math.pi / 12)
            y = start[1] + away * math.sin(turn * math.pi / 12)
            if not (x_from - 0.1 <= x <= x_to + 0.1 and y_from <= y <= y_to + 0.1):
                continue
            if all(math.hypot(x - a, y - b) >= _NEAR for a, b in taken):
                return x, y
    return start
