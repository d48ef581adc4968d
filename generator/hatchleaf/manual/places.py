"""Places of the unit in words, and the order of a walk round it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from hatchleaf.drawings.sides import side_words
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import number_in

_ENDS: Final = {
    "front": "front",
    "rear": "rear",
    "center": "between the sides",
}
# In thirds, which is as exactly as people point: (up to percent from the front, words).
_LENGTHWISE: Final = (
    (25, "near the front"),
    (45, "ahead of the middle"),
    (55, "at the middle"),
    (75, "behind the middle"),
    (100, "near the rear"),
)
_HEIGHTS: Final = {
    "under": "underneath",
    "low": "low down",
    "middle": "",
    "high": "high up",
    "roof": "",
}


def places_by_id(spec: UnitSpec) -> Mapping[str, PlaceOnUnit]:
    """Return the unit's places by id."""
    return {place.id: place for place in spec.places}


def in_words(place: PlaceOnUnit, market: str) -> str:
    """
    Return where *place* is: ``road side, near the rear, low down``.

    Args:
        place: A place of the unit.
        market: Where the unit is used; it decides how its sides are called.
    """
    roof = place.height == "roof"
    words = ["inside" if place.where == "inside" else "", "on the roof" if roof else ""]
    if not (roof and place.side == "center"):
        words.append((side_words(market) | _ENDS)[place.side])
    if place.side not in ("front", "rear") and place.from_front.quantity is not None:
        percent = number_in(place.from_front.quantity, "percent")
        words.append(next(text for limit, text in _LENGTHWISE if percent <= limit))
    words.append(_HEIGHTS[place.height])
    return ", ".join(word for word in words if word)


def walk_key(place: PlaceOnUnit) -> tuple[int, float]:
    """
    Return the sort key of *place* on a walk round the unit.

    From the coupling down the curb side, round the rear, up the road side, then
    inside from front to rear: the way a walk-round is walked.
    """
    percent = (
        0.0
        if place.from_front.quantity is None
        else number_in(place.from_front.quantity, "percent")
    )
    if place.where == "inside":
        return 5, percent
    stretch = {"front": 0, "curb": 1, "rear": 2, "road": 3, "center": 4}[place.side]
    return stretch, -percent if place.side == "road" else percent


def round_trip(stops: Iterable[tuple[int, tuple[PlaceOnUnit, ...]]]) -> tuple[int, ...]:
    """Return the topic numbers that have a place, in the order of the walk."""
    placed = [
        (min(walk_key(place) for place in places), number)
        for number, places in stops
        if places
    ]
    return tuple(number for _, number in sorted(placed))
