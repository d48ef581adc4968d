"""Batteries and all on 12 V."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    Id,
    Maybe,
    OrUnknown,
    Part,
    PartPath,
    PlaceId,
    PlaceOrNone,
    Several,
    Text,
)
from hatchleaf.spec.model.readings import (
    Charge,
    Current,
    CurrentOrNone,
    Power,
    Share,
    Voltage,
)


class Battery(Part):
    """One house battery; `usable` is the maker's share that may be taken out."""

    id: Id
    chemistry: OrUnknown[Literal["flooded", "agm", "gel", "lfp"]]
    volts: Voltage
    charge: Charge
    usable: Share
    at: PlaceId


class Disconnect(Part):
    """The switch that cuts the house battery off."""

    kind: OrUnknown[Literal["rotary", "key", "electronic"]]
    at: PlaceId
    stays_on: Text
    """What stays live with the switch off, in words, or ``unknown``."""


class Converter(Part):
    """
    What charges the battery from shore power; `draw` is its 120 V side.

    `lithium` tells whether its maker made it for LFP batteries too.
    """

    kind: OrUnknown[Literal["converter", "inverter_charger"]]
    at: PlaceId
    output: Current
    draw: Power
    lithium: Literal["yes", "no", "unknown"]


class DcPanel(Part):
    """The 12 V fuse panel."""

    kind: OrUnknown[Literal["blade_fuses", "breakers"]]
    at: PlaceId


class SolarPort(Part):
    """A socket outside for a portable panel."""

    id: Id
    kind: Literal["side_port"]
    at: PlaceId
    fuse: Current
    controller: Literal["built_in", "none", "unknown"]
    controller_amps: CurrentOrNone
    """What the built-in controller may give, or ``none`` where there is none."""


class RoofSolar(Part):
    """Panels fixed to the roof; `isc` is their short-circuit current together."""

    id: Id
    kind: Literal["roof"]
    at: PlaceId
    watts: Power
    isc: Current
    fuse: Current
    controller_amps: CurrentOrNone


SolarSource: TypeAlias = Annotated[
    Annotated[SolarPort, Tag("<side_port>")] | Annotated[RoofSolar, Tag("<roof>")],
    BY_KIND,
]


class DcLoad(Part):
    """Something on 12 V, with the current it draws while it runs, and when it runs."""

    id: Id
    name: Text
    draw: Current
    runs: Literal["always", "evenings", "nights", "at_times", "unknown"]


class Fuse(Part):
    """
    One 12 V fuse as the list at its panel has it; `position` is its own name.

    `part` is what of the unit's file it feeds, so that a text can name this fuse.
    """

    id: Id
    position: Text
    feeds: Text
    rating: Current
    at: PlaceId
    part: PartPath = "none"


class DcCharger(Part):
    """A charger that feeds the house battery while the engine runs."""

    kind: OrUnknown[Literal["from_engine", "from_tow_vehicle"]]
    at: PlaceId
    output: Current


class BatteryMonitor(Part):
    """What shows the state of the house battery."""

    kind: OrUnknown[Literal["shunt", "volt_meter", "in_battery"]]
    at: PlaceId


class EngineBattery(Part):
    """The battery that starts a motorhome's engine."""

    kind: OrUnknown[Literal["flooded", "agm"]]
    at: PlaceId
    disconnect_at: PlaceOrNone
    charged_on_shore: Literal["yes", "no", "unknown"]
    start_help_at: PlaceOrNone
    """Where a switch lends the house battery to the starter."""


class Dc(Part):
    """The 12 V side."""

    batteries: Several[Battery]
    disconnect: Maybe[Disconnect]
    converter: Maybe[Converter]
    panel: Maybe[DcPanel]
    fuses: Several[Fuse]
    solar: Several[SolarSource]
    dc_charger: Maybe[DcCharger]
    monitor: Maybe[BatteryMonitor]
    engine_battery: Maybe[EngineBattery]
    loads: Several[DcLoad]
