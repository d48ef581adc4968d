"""Which way the unit lies on a drawing, and where on it a place truly is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import number_in

ROAD_ON_THE_RIGHT: Final = frozenset({"uk", "au"})
"""
Markets where traffic keeps left, so that the side to the road is the right-hand one.

Common knowledge of each country.
"""
_NORTH_AMERICA: Final = frozenset({"us", "ca"})
_COUPLED: Final = frozenset(
    {
        "travel_trailer",
        "molded_trailer",
        "teardrop",
        "folding_trailer",
        "caravan",
    }
)
"""Types with a drawbar ahead of the body; the length counts from its coupling."""
_USUAL_DRAWBAR: Final = 0.1


@dataclass(frozen=True)
class Spot:
    """
    Where a place is on the unit seen from above.

    `along` goes from 0 at the foremost point to 1 at the rear; `across` from -1 on
    the left-hand side, facing forward, to 1 on the right-hand one.
    """

    along: float
    across: float


@dataclass(frozen=True)
class Lie:
    """
    How the unit lies on the drawing: upright with its front up, or its front left.

    Seen from above either way, so that left and right are never mirrored.
    """

    start: float
    """Of the foremost point: y when upright, else x."""
    length: float
    middle: float
    """Of the line from front to rear: x when upright, else y."""
    half: float
    """From there to a wall."""
    upright: bool

    def at(self, spot: Spot) -> tuple[float, float]:
        """Return x and y of *spot*."""
        along = self.start + spot.along * self.length
        if self.upright:
            return _rounded(self.middle + spot.across * self.half, along)
        # With the front to the left, the right-hand side is the upper one.
        return _rounded(along, self.middle - spot.across * self.half)


def _rounded(x: float, y: float) -> tuple[float, float]:
    """Return a point rounded as it is drawn."""
    return round(x, 1), round(y, 1)


def percent(place: PlaceOnUnit) -> float | None:
    """Return how far *place* is from the front, 0 to 1; None when not known."""
    if place.from_front.quantity is None:
        return None
    return number_in(place.from_front.quantity, "percent") / 100


def spot_of(place: PlaceOnUnit, market: str) -> Spot:
    """Return where *place* is; one whose distance is not known is in the middle."""
    share = percent(place)
    if share is None:
        share = {"front": 0.0, "rear": 1.0}.get(place.side, 0.5)
    return Spot(share, side_of(place.side, market))


def side_words(market: str) -> dict[str, str]:
    """
    Return what the two long sides are called.

    Elsewhere a curb is a kerb, and the United Kingdom speaks of the nearside, which
    is the left-hand one, and the offside.
    """
    if market == "uk":
        return {"road": "offside", "curb": "nearside"}
    curb = "curb side" if market in _NORTH_AMERICA else "kerb side"
    return {"road": "road side", "curb": curb}


def side_of(side: str, market: str) -> float:
    """Return -1 for a side on the left, facing forward, 1 for the right, 0 between."""
    road = 1.0 if market in ROAD_ON_THE_RIGHT else -1.0
    return {"road": road, "curb": -road}.get(side, 0.0)


def front_wall(spec: UnitSpec) -> float:
    """
    Return how far behind the foremost point the body begins, 0 to 1.

    The spec does not say how long a drawbar is: what is outside at the front stands
    on it, and the body reaches past every other place.
    """
    if spec.body.type not in _COUPLED:
        return 0.0
    ahead, on_body = [0.0], [1.0]
    for place in spec.places:
        share = percent(place)
        if share is None:
            continue
        if place.side == "front" and place.where == "outside":
            ahead.append(share)
        elif place.side != "front":
            on_body.append(share)
    wall = max(_USUAL_DRAWBAR, max(ahead) + 0.015)
    return max(0.03, min(wall, min(on_body) - 0.015))
