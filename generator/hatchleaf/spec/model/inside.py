"""What is inside: beds, storage, light, television, sound and remote control."""

from __future__ import annotations

from typing import Literal

from hatchleaf.spec.model.fields import (
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
from hatchleaf.spec.model.readings import Mass


class Bed(Part):
    """A bed, or a table that becomes one; `load` is what its maker lets on it."""

    id: Id
    kind: OrUnknown[
        Literal["fixed", "dinette", "bunk", "wall", "sofa", "drop_down", "slide_out"]
    ]
    at: PlaceId
    load: Mass


class Store(Part):
    """A drawer, shelf or cupboard; `load` is what its maker lets in it."""

    id: Id
    kind: OrUnknown[Literal["drawer", "shelf", "cupboard", "wardrobe", "bay"]]
    name: Text
    at: PlaceId
    load: Mass
    latch: OrUnknown[Literal["push_knob", "catch", "magnet", "strap", "none"]]


class InsideLight(Part):
    """A group of lights inside, and where their switch is."""

    id: Id
    name: Text
    switch_at: PlaceId


class Inside(Part):
    """Beds, what things are stowed in, and light."""

    beds: Several[Bed]
    storage: Several[Store]
    lights: Several[InsideLight]


class Antenna(Part):
    """The television antenna; `booster_at` is where its amplifier is switched."""

    kind: OrUnknown[Literal["fixed", "crank_up", "turns"]]
    at: PlaceId
    booster_at: PlaceOrNone


class Satellite(Part):
    """A satellite dish."""

    kind: OrUnknown[Literal["roof", "portable", "prepared"]]
    at: PlaceId


class CableInlet(Part):
    """A socket outside for the site's television cable."""

    kind: OrUnknown[Literal["coaxial"]]
    at: PlaceId


class Television(Part):
    """A television and how it is held on the road."""

    id: Id
    kind: OrUnknown[Literal["mains", "twelve_volt"]]
    at: PlaceId
    locks: OrUnknown[Literal["bracket_pin", "strap", "lift", "fixed"]]


class Stereo(Part):
    """The radio; `zones` names its speakers in words."""

    kind: OrUnknown[Literal["built_in"]]
    at: PlaceId
    zones: Text


class Router(Part):
    """What brings the internet on board."""

    kind: OrUnknown[Literal["cellular", "site_wifi", "prepared"]]
    at: PlaceId


class ControlPanel(Part):
    """A panel that works lights, pumps and more."""

    kind: OrUnknown[Literal["touch", "switches"]]
    at: PlaceId
    app: OrUnknown[YesNo]
    """Whether a phone can work it too."""


class Remote(Part):
    """
    A remote control: what it works, and where it lives.

    One that opens, unlocks or moves the unit is carried like a key: `kept_at: none`.
    """

    id: Id
    works: Text
    kept_at: PlaceOrNone
    battery: Text


class Media(Part):
    """Television, sound, internet and remote control."""

    antenna: Maybe[Antenna]
    satellite: Maybe[Satellite]
    cable_inlet: Maybe[CableInlet]
    televisions: Several[Television]
    stereo: Maybe[Stereo]
    router: Maybe[Router]
    control_panel: Maybe[ControlPanel]
    remotes: Several[Remote]
