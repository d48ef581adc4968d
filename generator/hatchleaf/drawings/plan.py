"""
The plan of the unit from above: its outline and the hatches, sides and distances true.

Drawn in classes and `currentColor`, so that night, print and a dealer's colour come
free; the front is to the left, the road side above.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from jinja2 import Environment, StrictUndefined, Template

from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import number_in

_RIGHT: Final = 352.0
_TONGUE: Final = 56.0
_BEAM: Final = 56.0
_TOP: Final = 22.0
_MOTORISED: Final = ("class_a", "class_b", "class_c", "truck_camper")
_NEAR: Final = 21.0
"""Marks closer than this overlap: one is moved along."""


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
    tongue = spec.body.type not in _MOTORISED
    left = 8 + _TONGUE if tongue else 8
    width = _RIGHT - left
    placed: list[dict[str, object]] = []
    taken: list[tuple[float, float]] = []
    for mark in marks:
        x, y = _free(_position(mark.place, left, width, tongue=tongue), taken)
        taken.append((x, y))
        placed.append(
            {
                "x": round(x, 1),
                "y": round(y, 1),
                "text": mark.text,
                "number": mark.number,
                "title": mark.title,
                "inside": mark.place.where == "inside",
            }
        )
    return _template().render(
        key=key,
        title=title,
        left=left,
        width=width,
        beam=_BEAM,
        height=_TOP + _BEAM + 24,
        tongue=tongue,
        wheels=_wheels(spec, left, width),
        marks=placed,
    )


def _wheels(spec: UnitSpec, left: float, width: float) -> list[float]:
    axles = spec.gear.axles if isinstance(spec.gear.axles, tuple) else ()
    count = max(1, len(axles))
    if spec.body.type in _MOTORISED:
        return [round(left + width * share, 1) for share in (0.12, 0.7)]
    middle = left + width * 0.6
    return [round(middle + (i - (count - 1) / 2) * 30 - 13, 1) for i in range(count)]


def _position(
    place: PlaceOnUnit, left: float, width: float, *, tongue: bool
) -> tuple[float, float]:
    share = (
        0.5
        if place.from_front.quantity is None
        else number_in(place.from_front.quantity, "percent") / 100
    )
    along = left + width * share
    inside = place.where == "inside"
    if place.side == "front":
        before = left - (24 if tongue and not inside else -14)
        return before, _TOP + _BEAM / 2
    if place.side == "rear":
        return left + width - (14 if inside else 0), _TOP + _BEAM / 2
    across = {
        "road": _TOP + (14 if inside else 0),
        "curb": _TOP + _BEAM - (14 if inside else 0),
        "center": _TOP + _BEAM / 2,
    }[place.side]
    return min(max(along, left + 8), left + width - 8), across


def _free(
    wanted: tuple[float, float], taken: list[tuple[float, float]]
) -> tuple[float, float]:
    x, y = wanted
    for step in range(60):
        moved = x + (step + 1) // 2 * 3 * (1 if step % 2 else -1)
        if all(abs(moved - a) > _NEAR or abs(y - b) > _NEAR for a, b in taken):
            return moved, y
    return x, y
