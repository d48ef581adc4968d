"""Awnings, doors, windows and what is on the outer walls."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    Id,
    Maybe,
    OrUnknown,
    Part,
    PlaceId,
    PlaceOrNone,
    Several,
    Text,
    YesNo,
)
from hatchleaf.spec.model.readings import Current, Length, Mass, MassOrNone, Speed


class StrapAwning(Part):
    """A roller awning pulled out by a strap; `reach` is how far it comes out."""

    id: Id
    kind: Literal["strap"]
    at: PlaceId
    width: Length
    reach: Length
    wind_limit: Speed


class PoweredAwning(Part):
    """An awning driven by a motor; `override` is how it is brought in without."""

    id: Id
    kind: Literal["powered"]
    at: PlaceId
    width: Length
    reach: Length
    wind_limit: Speed
    switch_at: PlaceId
    fuse: Current
    override: Literal["crank", "drill", "none", "unknown"]
    override_at: PlaceOrNone
    wind_sensor: Literal["yes", "no", "unknown"]


class CrankAwning(Part):
    """A cassette awning wound out by a crank, or a roll-out one in a bag."""

    id: Id
    kind: Literal["crank", "bag"]
    at: PlaceId
    width: Length
    reach: Length
    wind_limit: Speed


Awning: TypeAlias = Annotated[
    Annotated[StrapAwning, Tag("<strap>")]
    | Annotated[PoweredAwning, Tag("<powered>")]
    | Annotated[CrankAwning, Tag("<crank>")]
    | Annotated[CrankAwning, Tag("<bag>")],
    BY_KIND,
]


class EntryDoor(Part):
    """A door for people."""

    id: Id
    kind: Literal["entry", "second"]
    at: PlaceId
    lock: OrUnknown[Literal["key", "keypad"]]
    dead_bolt: OrUnknown[YesNo]
    screen: OrUnknown[Literal["own_latch", "latches_to_door", "none"]]
    grab_handle: OrUnknown[Literal["folding", "fixed", "none"]]


class Hatch(Part):
    """A hatch over a galley, a bay or a ramp; `holds_open` is what keeps it up."""

    id: Id
    kind: Literal["galley", "bay", "ramp"]
    at: PlaceId
    lock: OrUnknown[Literal["key", "keypad", "none"]]
    holds_open: OrUnknown[Literal["gas_struts", "catch", "magnet", "none"]]
    load: MassOrNone
    """What a ramp carries, by its label; ``none`` for all others."""


Door: TypeAlias = Annotated[
    Annotated[EntryDoor, Tag("<entry>")]
    | Annotated[EntryDoor, Tag("<second>")]
    | Annotated[Hatch, Tag("<galley>")]
    | Annotated[Hatch, Tag("<bay>")]
    | Annotated[Hatch, Tag("<ramp>")],
    BY_KIND,
]


class Step(Part):
    """
    An entry step; `switch_at` is where an electric one is worked.

    `override` is how an electric one is brought in without its motor.
    """

    id: Id
    kind: OrUnknown[Literal["fold_down", "drop_leg", "electric", "slide_in", "loose"]]
    at: PlaceId
    switch_at: PlaceOrNone
    override: Literal["crank", "pin", "push", "none", "unknown"]


class Window(Part):
    """Windows of one kind; `name` tells which, in words."""

    id: Id
    kind: OrUnknown[Literal["sliding", "crank", "top_hung", "frameless", "fixed"]]
    name: Text


class CentralLocking(Part):
    """Doors that lock together by remote control."""

    kind: OrUnknown[Literal["doors", "doors_and_hatches"]]
    at: PlaceId
    """Where the lock is that a key opens when the remote fails."""


class OutsideLight(Part):
    """A light outside and its switch."""

    id: Id
    name: Text
    at: PlaceId
    switch_at: PlaceId


class Camera(Part):
    """A camera, or the wiring for one; `fed_by` is what gives it power."""

    id: Id
    kind: OrUnknown[Literal["wired", "wireless", "prepared"]]
    at: PlaceId
    shown_at: PlaceOrNone
    fed_by: OrUnknown[Literal["running_lights", "twelve_volt"]]


class Roof(Part):
    """What the roof is made of, and whether its maker lets people walk on it."""

    kind: OrUnknown[Literal["membrane", "fiberglass", "aluminum"]]
    walk: Literal["yes", "no", "unknown"]


class Ladder(Part):
    """A ladder to the roof; `load` is its label's."""

    kind: OrUnknown[Literal["fixed", "folding", "loose"]]
    at: PlaceId
    load: Mass


class Rack(Part):
    """A rack for bicycles or other loads; `load` is its label's."""

    id: Id
    kind: OrUnknown[Literal["bicycle", "roof", "cargo"]]
    at: PlaceId
    load: Mass


class Clothesline(Part):
    """A line or rack for drying."""

    kind: OrUnknown[Literal["pull_out", "folding"]]
    at: PlaceId


class Opening(Part):
    """An exhaust or vent in the wall; `screen` tells of a screen against insects."""

    id: Id
    kind: OrUnknown[Literal["exhaust", "air_intake", "fridge_vent", "drain_vent"]]
    of: Text
    """Of which appliance, in words."""
    at: PlaceId
    screen: OrUnknown[Literal["fitted", "allowed", "not_allowed", "none"]]


class Stowed(Part):
    """A loose part or tool that belongs to the unit, and where it lives."""

    id: Id
    what: Text
    at: PlaceId


class LiftingRoof(Part):
    """A roof that goes up when the unit stands."""

    kind: OrUnknown[Literal["crank", "electric", "springs"]]
    at: PlaceId
    """Where it is worked."""
    locks: Text
    """What holds it down, in words, or ``unknown``."""


class Outside(Part):
    """Small things on the outer walls and the roof."""

    lights: Several[OutsideLight]
    cameras: Several[Camera]
    roof: Maybe[Roof]
    ladder: Maybe[Ladder]
    racks: Several[Rack]
    clothesline: Maybe[Clothesline]
    openings: Several[Opening]
    stowed: Several[Stowed]
