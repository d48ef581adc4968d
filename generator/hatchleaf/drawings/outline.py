"""
The unit from above by its type: body, what it is coupled by, cab, wheels, door.

A list of strokes in shares of length and width; `Lie` sets them down.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from hatchleaf.drawings.sides import (
    Lie,
    Spot,
    front_wall,
    percent,
    side_of,
)
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in

_DRIVEN: Final = frozenset({"class_a", "class_b", "class_c"})
_TIRE: Final = 27.0
"""Inches across; the usual trailer tire stands about so high."""
_BETWEEN_AXLES: Final = 33.0
"""Inches; common practice, no source."""
_USUAL_AXLES: Final = 0.64
_ROUND: Final = {
    "molded_trailer": 20.0,
    "caravan": 18.0,
    "teardrop": 26.0,
    "class_a": 12.0,
}
"""Corners at the front, in the drawing's units; others are nearly square."""


_FRONT_WORD: Final = {
    "class_a": 0.085,
    "class_b": 0.17,
    "class_c": 0.145,
    "fifth_wheel": 0.09,
}
"""Where the word begins that marks the front, clear of cab and coupling."""


@dataclass(frozen=True)
class Stroke:
    """One line of the drawing: its class, and the path."""

    kind: str
    path: str


@dataclass(frozen=True)
class _Pen:
    """Writes paths in shares, as the unit lies."""

    lie: Lie

    def to(self, along: float, across: float) -> str:
        x, y = self.lie.at(Spot(along, across))
        return f"{_short(x)} {_short(y)}"

    def line(self, *points: tuple[float, float]) -> str:
        return "M" + "L".join(self.to(*point) for point in points)

    def body(self, first: float, half: float, front: float, rear: float) -> str:
        """Return a box from *first* to the end with rounded corners."""
        a, b = front / self.lie.length, rear / self.lie.length
        c, d = front / self.lie.half, rear / self.lie.half
        to = self.to
        return (
            f"M{to(first, -half + c)}Q{to(first, -half)} {to(first + a, -half)}"
            f"L{to(1 - b, -half)}Q{to(1, -half)} {to(1, -half + d)}"
            f"L{to(1, half - d)}Q{to(1, half)} {to(1 - b, half)}"
            f"L{to(first + a, half)}Q{to(first, half)} {to(first, half - c)}Z"
        )

    def dot(self, along: float, across: float, radius: float) -> str:
        x, y = self.lie.at(Spot(along, across))
        r = _short(radius)
        arc = f"a{r} {r} 0 1 0"
        wide = _short(2 * radius)
        return f"M{_short(x - radius)} {_short(y)}{arc} {wide} 0{arc} -{wide} 0"


def _short(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")


def outline(spec: UnitSpec, lie: Lie) -> tuple[Stroke, ...]:
    """
    Return the strokes of the unit.

    Args:
        spec: Its type, drawbar, axles and entry door.
        lie: Where and which way it is drawn.
    """
    return (
        *_wheels(spec, lie),
        *_body(spec, _Pen(lie)),
        *_doors(spec, _Pen(lie)),
    )


def _body(spec: UnitSpec, pen: _Pen) -> Iterator[Stroke]:
    kind = spec.body.type
    rounded = _ROUND.get(kind, 6.0)
    if kind == "class_c":
        # The engine's hood, the doors of the cab, then the body, and the bed over it.
        yield Stroke(
            "plan-shell",
            f"M{pen.to(0.12, -0.78)}L{pen.to(0.03, -0.68)}Q{pen.to(0, -0.62)} "
            f"{pen.to(0, -0.3)}L{pen.to(0, 0.3)}Q{pen.to(0, 0.62)} {pen.to(0.03, 0.68)}"
            f"L{pen.to(0.12, 0.78)}",
        )
        yield Stroke("plan-shell", pen.body(0.12, 1, 8, 6))
        yield Stroke("plan-thin", pen.line((0.24, -1), (0.24, 1)))
        return
    if kind == "class_b":
        yield Stroke(
            "plan-shell",
            f"M{pen.to(0.16, -1)}L{pen.to(0.05, -0.84)}Q{pen.to(0, -0.76)} "
            f"{pen.to(0, -0.4)}L{pen.to(0, 0.4)}Q{pen.to(0, 0.76)} {pen.to(0.05, 0.84)}"
            f"L{pen.to(0.16, 1)}L{pen.to(0.985, 1)}Q{pen.to(1, 1)} {pen.to(1, 0.8)}"
            f"L{pen.to(1, -0.8)}Q{pen.to(1, -1)} {pen.to(0.985, -1)}Z",
        )
        yield Stroke("plan-thin", _arc(pen, 0.16, 0.11))
        return
    if kind == "class_a":
        yield Stroke("plan-shell", pen.body(0, 1, rounded, 6))
        yield Stroke("plan-thin", _arc(pen, 0.07, 0.035))
        yield Stroke("plan-thin", pen.line((0.17, -1), (0.17, -0.45)))
        yield Stroke("plan-thin", pen.line((0.17, 1), (0.17, 0.45)))
        return
    if kind == "truck_camper":
        # The part over the truck's cab is before the line.
        yield Stroke("plan-shell", pen.body(0, 1, 10, 6))
        yield Stroke("plan-thin", pen.line((0.3, -1), (0.3, 1)))
        return
    if kind == "fifth_wheel":
        pin = _coupling(spec) or 0.06
        yield Stroke("plan-shell", pen.body(0, 1, 16, 6))
        # The raised nose ends at the step down; its pin hangs below.
        yield Stroke("plan-thin", pen.line((0.24, -1), (0.24, 1)))
        yield Stroke("plan-pin", pen.dot(pin, 0, 4))
        return
    wall = front_wall(spec)
    yield Stroke("plan-bar", pen.line((wall, -0.72), (0.012, 0), (wall, 0.72)))
    yield Stroke("plan-shell", pen.body(wall, 1, rounded, 6))
    yield Stroke("plan-pin", pen.dot(0.012, 0, 4))
    if kind == "folding_trailer":
        yield Stroke("plan-thin", pen.line((wall + 0.12, -1), (wall + 0.12, 1)))
        yield Stroke("plan-thin", pen.line((0.88, -1), (0.88, 1)))


def _arc(pen: _Pen, sides: float, middle: float) -> str:
    """Return a windscreen: a curve from wall to wall."""
    bend = 2 * middle - sides
    return f"M{pen.to(sides, -0.92)}Q{pen.to(bend, 0)} {pen.to(sides, 0.92)}"


def front_word(spec: UnitSpec) -> float:
    """Return how far from the front its word begins on a unit that lies, 0 to 1."""
    return _FRONT_WORD.get(spec.body.type, front_wall(spec) + 0.02)


def axles(spec: UnitSpec) -> tuple[float, ...]:
    """Return how far from the front each axle is, 0 to 1; none on a truck's camper."""
    kind = spec.body.type
    if kind == "truck_camper":
        return ()
    if kind in _DRIVEN:
        return (0.2, 0.78) if kind == "class_b" else (0.12, 0.72)
    length = _inches(spec.body.length)
    fitted = spec.gear.axles if isinstance(spec.gear.axles, tuple) else ()
    middle = _USUAL_AXLES
    to_axles = _inches(getattr(spec.gear.hitch, "to_axles", None))
    if length and to_axles:
        middle = (_coupling(spec) or 0.0) + to_axles / length
    # A paper can err; the wheels are under the unit all the same.
    middle = min(max(middle, 0.4), 0.85)
    between = _BETWEEN_AXLES / length if length else 0.11
    count = max(1, len(fitted))
    return tuple(middle + (each - (count - 1) / 2) * between for each in range(count))


def _coupling(spec: UnitSpec) -> float | None:
    """Return where the coupling is along the unit; None when the spec does not say."""
    at = getattr(spec.gear.hitch, "at", "")
    return next((percent(place) for place in spec.places if place.id == at), None)


def _inches(reading: object) -> float | None:
    quantity = getattr(reading, "quantity", None)
    return None if quantity is None else number_in(quantity, "inch")


def _wheels(spec: UnitSpec, lie: Lie) -> Iterator[Stroke]:
    pen = _Pen(lie)
    length = _inches(spec.body.length)
    half = min(_TIRE / length / 2 if length else 0.05, 0.06)
    # Always as thick on paper, however wide the unit is drawn.
    inner, outer = 1 + 1 / lie.half, 1 + 6 / lie.half
    for axle in axles(spec):
        for side in (-1, 1):
            near, far = side * inner, side * outer
            yield Stroke(
                "plan-wheel",
                pen.line(
                    (axle - half, near),
                    (axle + half, near),
                    (axle + half, far),
                    (axle - half, far),
                )
                + "Z",
            )


def _doors(spec: UnitSpec, pen: _Pen) -> Iterator[Stroke]:
    """Yield the entry doors as gaps in the wall, each door standing open."""
    places = {place.id: place for place in spec.places}
    length = _inches(spec.body.length)
    half = min(14 / length if length else 0.05, 0.05)
    for door in spec.doors if isinstance(spec.doors, tuple) else ():
        place = places.get(door.at)
        if door.kind not in ("entry", "second") or place is None:
            continue
        side, at = side_of(place.side, spec.body.market), percent(place)
        if not side or at is None:
            continue
        at = min(max(at, front_wall(spec) + half), 1 - half)
        yield Stroke("plan-gap", pen.line((at - half, side), (at + half, side)))
        swing = side * (1 + 9 / pen.lie.half)
        yield Stroke("plan-door", pen.line((at - half, side), (at - half * 0.2, swing)))
