"""Shore power and what feeds the outlets."""

from __future__ import annotations

from typing import Literal

from hatchleaf.spec.model.fields import (
    Count,
    Id,
    Maybe,
    OrUnknown,
    Part,
    PartPath,
    PlaceId,
    Several,
    Text,
)
from hatchleaf.spec.model.readings import Current, Duration, Length, Power, Voltage


class ShoreCord(Part):
    """The power inlet and what it may carry."""

    kind: OrUnknown[Literal["detachable", "fixed", "reel"]]
    at: PlaceId
    plug: OrUnknown[Literal["5_15", "5_20", "tt_30", "14_50", "iec_16", "as_15"]]
    cord_length: Length
    service: Current
    volts: Voltage
    legs: OrUnknown[Count]


class AcPanel(Part):
    """The breaker panel with the main breaker."""

    kind: OrUnknown[Literal["breakers"]]
    at: PlaceId


class GroundFault(Part):
    """The ground-fault protection (GFCI) of the outlets."""

    kind: OrUnknown[Literal["outlet", "breaker", "rcd"]]
    at: PlaceId


class Inverter(Part):
    """Makes house current from the battery; `feeds` names its outlets in words."""

    kind: OrUnknown[Literal["stand_alone", "inverter_charger"]]
    at: PlaceId
    switch_at: PlaceId
    watts: Power
    feeds: Text


class Generator(Part):
    """A built-in generator."""

    kind: OrUnknown[Literal["lp", "petrol", "diesel"]]
    at: PlaceId
    switch_at: PlaceId
    watts: Power
    oil_hours: Duration
    """Running hours from one oil change to the next, by its maker."""


class AcLoad(Part):
    """Something on shore power, with its rated watts and its leg of the panel."""

    id: Id
    name: Text
    watts: Power
    leg: Literal["a", "b", "unknown"]


class PowerGuard(Part):
    """What watches shore power and cuts off a bad supply, or takes surges alone."""

    kind: OrUnknown[Literal["built_in_guard", "portable_guard", "surge_only"]]
    at: PlaceId


class TransferSwitch(Part):
    """What changes over between shore power and the generator."""

    kind: OrUnknown[Literal["automatic", "manual"]]
    at: PlaceId
    delay: Duration


class LoadManager(Part):
    """What turns large loads off before the main breaker trips."""

    kind: OrUnknown[Literal["sheds_loads", "one_air_conditioner"]]
    at: PlaceId


class Breaker(Part):
    """
    One breaker as the list at its panel has it; `position` is its own name.

    `part` is what of the unit's file it feeds, so that a text can name this breaker.
    """

    id: Id
    position: Text
    feeds: Text
    rating: Current
    leg: Literal["a", "b", "both", "unknown"]
    at: PlaceId
    part: PartPath = "none"


class Ac(Part):
    """The shore power side."""

    shore: Maybe[ShoreCord]
    guard: Maybe[PowerGuard]
    transfer: Maybe[TransferSwitch]
    load_manager: Maybe[LoadManager]
    panel: Maybe[AcPanel]
    breakers: Several[Breaker]
    gfci: Maybe[GroundFault]
    inverter: Maybe[Inverter]
    generator: Maybe[Generator]
    loads: Several[AcLoad]
