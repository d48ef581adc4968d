"""Batteries, 12 V, shore power and what they feed; climate and kitchen."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    Count,
    Id,
    Maybe,
    NotFitted,
    NotKnown,
    OrUnknown,
    Part,
    PlaceId,
    Several,
    Text,
)
from hatchleaf.spec.model.readings import (
    Charge,
    Current,
    CurrentOrNone,
    HeatRate,
    Length,
    Power,
    PowerOrNone,
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


class Dc(Part):
    """The 12 V side."""

    batteries: Several[Battery]
    disconnect: Maybe[Disconnect]
    converter: Maybe[Converter]
    panel: Maybe[DcPanel]
    solar: Several[SolarSource]
    loads: Several[DcLoad]


class ShoreCord(Part):
    """The power inlet and what it may carry."""

    kind: OrUnknown[Literal["detachable", "fixed", "reel"]]
    at: PlaceId
    plug: OrUnknown[Literal["5_15", "5_20", "tt_30", "14_50", "iec_16"]]
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

    kind: OrUnknown[Literal["outlet", "breaker"]]
    at: PlaceId


class Inverter(Part):
    """Makes 120 V from the battery."""

    kind: OrUnknown[Literal["stand_alone", "inverter_charger"]]
    at: PlaceId
    watts: Power


class Generator(Part):
    """A built-in generator."""

    kind: OrUnknown[Literal["lp", "petrol", "diesel"]]
    at: PlaceId
    watts: Power


class AcLoad(Part):
    """Something on shore power, with its rated watts and its leg of the panel."""

    id: Id
    name: Text
    watts: Power
    leg: Literal["a", "b", "unknown"]


class Ac(Part):
    """The shore power side."""

    shore: Maybe[ShoreCord]
    panel: Maybe[AcPanel]
    gfci: Maybe[GroundFault]
    inverter: Maybe[Inverter]
    generator: Maybe[Generator]
    loads: Several[AcLoad]


class Furnace(Part):
    """A furnace; `blower` is the current of its fan."""

    kind: OrUnknown[Literal["forced_air", "radiant"]]
    at: PlaceId
    thermostat_at: PlaceId
    lp_input: HeatRate
    blower: Current


class AirConditioner(Part):
    """One air conditioner: its rated watts while it cools, and of its heat strip."""

    id: Id
    kind: OrUnknown[Literal["roof", "under_bench"]]
    at: PlaceId
    watts: Power
    heat_strip: PowerOrNone
    leg: Literal["a", "b", "unknown"]


class Climate(Part):
    """Heating and cooling."""

    furnace: Maybe[Furnace]
    air_conditioners: Several[AirConditioner]


class GasCooktop(Part):
    """A gas cooktop; `lp_input` is all burners together."""

    kind: Literal["lp"]
    at: PlaceId
    burners: OrUnknown[Count]
    lp_input: HeatRate


class InductionPlate(Part):
    """An induction cooktop."""

    kind: Literal["induction"]
    at: PlaceId
    watts: Power


Cooktop: TypeAlias = Annotated[
    Annotated[GasCooktop, Tag("<lp>")]
    | Annotated[InductionPlate, Tag("<induction>")]
    | NotFitted
    | NotKnown,
    BY_KIND,
]


class AbsorptionFridge(Part):
    """A fridge that runs on gas or shore power."""

    kind: Literal["absorption"]
    at: PlaceId
    lp_input: HeatRate
    watts: Power


class CompressorFridge(Part):
    """A fridge with a 12 V compressor; `draw` is while it runs."""

    kind: Literal["compressor_12v"]
    at: PlaceId
    draw: Current


class HouseholdFridge(Part):
    """A household fridge on 120 V."""

    kind: Literal["household"]
    at: PlaceId
    watts: Power


Fridge: TypeAlias = Annotated[
    Annotated[AbsorptionFridge, Tag("<absorption>")]
    | Annotated[CompressorFridge, Tag("<compressor_12v>")]
    | Annotated[HouseholdFridge, Tag("<household>")]
    | NotFitted
    | NotKnown,
    BY_KIND,
]


class Kitchen(Part):
    """Cooking and the fridge."""

    cooktop: Cooktop
    fridge: Fridge
