"""
The dot of a place: what it looks like, and how far within the wall it is drawn.

Shape tells the height, an empty one that the place is inside; sides and distances
from the front are as the spec has them, whatever else is drawn there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from hatchleaf.drawings.sides import Lie, Spot, spot_of
from hatchleaf.spec.model.unit import PlaceOnUnit

_R: Final = 4.0
_INWARD: Final = {"under": 8.0, "inside": 15.0}
"""From the wall, in the drawing's units: what is behind it or under the floor."""
LEGEND: Final = (
    ("outside", "outside"),
    ("inside", "inside"),
    ("high", "high up"),
    ("under", "underneath"),
    ("roof", "on the roof"),
)


@dataclass(frozen=True)
class Dot:
    """A place as drawn."""

    x: float
    y: float
    path: str
    inside: bool
    kind: str
    """Which line of the legend explains its shape."""


def dot_of(place: PlaceOnUnit, lie: Lie, market: str) -> Dot:
    """Return the dot of *place* on a drawing that lies as *lie*."""
    true = spot_of(place, market)
    inward = _INWARD.get("inside" if place.where == "inside" else place.height, 0.0)
    x, y = lie.at(Spot(true.along, true.across * (1 - inward / lie.half)))
    shape = place.height if place.height in ("high", "under", "roof") else "level"
    inside = place.where == "inside"
    kind = shape if shape != "level" else "inside" if inside else "outside"
    return Dot(x, y, shaped(shape, x, y), inside, kind)


def shaped(shape: str, x: float, y: float) -> str:
    """Return the path of a dot of that shape, its middle at x and y."""
    if shape == "high":
        return f"M{x:g} {y - 5:g}l5 9h-10z"
    if shape == "under":
        return f"M{x:g} {y + 5:g}l5 -9h-10z"
    if shape == "roof":
        return f"M{x:g} {y - 5.5:g}l5.5 5.5l-5.5 5.5l-5.5 -5.5z"
    return f"M{x - _R:g} {y:g}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z"
