"""Waste water and the toilet."""

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
)
from hatchleaf.spec.model.readings import Current, Duration, Flow, Volume, VolumeOrNone


class WasteTank(Part):
    """A waste tank; `at` is where its valve is worked."""

    id: Id
    holds: OrUnknown[Literal["black", "gray", "combined"]]
    volume: Volume
    valve: OrUnknown[Literal["pull", "cable", "electric", "tap"]]
    at: PlaceId
    by_hand: Literal["yes", "no", "none", "unknown"]
    """Of an electric valve: whether it can be worked by hand; else ``none``."""


class SewerOutlet(Part):
    """Where the sewer hose goes on."""

    id: Id
    kind: OrUnknown[Literal["three_inch", "two_inch", "small_hose", "drain_tap"]]
    at: PlaceId


class RinseInlet(Part):
    """An inlet that sprays the inside of one waste tank; `flow` is its highest."""

    kind: OrUnknown[Literal["rinse_inlet"]]
    at: PlaceId
    tank: Id
    flow: Flow


class Toilet(Part):
    """The toilet; `holds` is a portable tank's or cassette's own volume."""

    kind: OrUnknown[
        Literal[
            "gravity_flush",
            "portable",
            "cassette",
            "composting",
            "vacuum",
            "incinerating",
        ]
    ]
    at: PlaceId
    holds: VolumeOrNone
    hatch_at: PlaceOrNone
    """Where a cassette is taken out."""


class TankMonitor(Part):
    """The panel that shows how full the tanks are."""

    kind: OrUnknown[Literal["probes", "strip"]]
    at: PlaceId


class Macerator(Part):
    """A pump that grinds the waste and drives it through a small hose."""

    kind: OrUnknown[Literal["built_in"]]
    at: PlaceId
    switch_at: PlaceId
    draw: Current
    longest_run: Duration


class Waste(Part):
    """Waste water and the toilet."""

    tanks: Several[WasteTank]
    outlets: Several[SewerOutlet]
    macerator: Maybe[Macerator]
    rinse: Maybe[RinseInlet]
    toilet: Maybe[Toilet]
    monitor: Maybe[TankMonitor]
