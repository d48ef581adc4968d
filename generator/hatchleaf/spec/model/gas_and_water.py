"""LP gas, fresh water, hot water and waste."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Field, Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    UNIT_ONLY,
    Id,
    Maybe,
    Month,
    NotFitted,
    NotKnown,
    OrUnknown,
    Part,
    PlaceId,
    PlaceOrNone,
    Several,
    YesNo,
)
from hatchleaf.spec.model.readings import (
    Current,
    Flow,
    GasPressure,
    HeatRate,
    HeatRateOrNone,
    Mass,
    Power,
    PowerOrNone,
    PressureOrNone,
    Share,
    Volume,
    VolumeOrNone,
)

# --- LP gas


class Cylinder(Part):
    """One portable cylinder; `holds` is the weight of gas at the legal fill."""

    id: Id
    holds: Mass
    gauge: OrUnknown[YesNo]
    made: Month = Field(default="unknown", json_schema_extra=UNIT_ONLY)


class Cylinders(Part):
    """Portable cylinders that the owner takes off to have them filled."""

    kind: Literal["cylinders"]
    at: PlaceId
    changeover: OrUnknown[Literal["automatic", "manual", "none"]]
    cylinders: tuple[Cylinder, ...] = Field(min_length=1)


class FixedTank(Part):
    """A tank that stays on the vehicle (ASME); `volume` is its water volume."""

    kind: Literal["tank"]
    at: PlaceId
    volume: Volume
    gauge_at: PlaceId


class Bottles(Part):
    """Bottles behind a 30 mbar regulator on the vehicle."""

    kind: Literal["bottles"]
    at: PlaceId
    bottles: tuple[Cylinder, ...] = Field(min_length=1)


LpSupply: TypeAlias = Annotated[
    Annotated[Cylinders, Tag("<cylinders>")]
    | Annotated[FixedTank, Tag("<tank>")]
    | Annotated[Bottles, Tag("<bottles>")]
    | NotFitted
    | NotKnown,
    BY_KIND,
]


class Regulator(Part):
    """The built-in pressure regulator; `capacity` is the most that it can pass."""

    kind: OrUnknown[Literal["two_stage", "single_stage"]]
    at: PlaceId
    outlet: GasPressure
    capacity: HeatRate


class GasOutlet(Part):
    """A push-in coupling for an appliance outside."""

    id: Id
    kind: OrUnknown[Literal["low_pressure", "high_pressure"]]
    at: PlaceId


class Lp(Part):
    """The gas system up to the appliances, which state their own input."""

    supply: LpSupply
    regulator: Maybe[Regulator]
    outlets: Several[GasOutlet]


# --- fresh water


class FreshTank(Part):
    """A fresh-water tank; `at` is where its drain is."""

    id: Id
    volume: Volume
    drain: OrUnknown[Literal["valve", "plug"]]
    at: PlaceId


class GravityFill(Part):
    """An open neck that fills the tank."""

    id: Id
    kind: Literal["gravity_fill"]
    at: PlaceId


class PressureInlet(Part):
    """A threaded inlet: city water, with a valve to the tank, or a mode panel."""

    id: Id
    kind: Literal["city", "diverter", "panel"]
    at: PlaceId
    regulator: Literal["built_in", "none", "unknown"]
    regulator_set: PressureOrNone


class SocketInlet(Part):
    """A socket for a submersible pump in a jerry can or barrel."""

    id: Id
    kind: Literal["socket"]
    at: PlaceId


WaterInlet: TypeAlias = Annotated[
    Annotated[GravityFill, Tag("<gravity_fill>")]
    | Annotated[PressureInlet, Tag("<city>")]
    | Annotated[PressureInlet, Tag("<diverter>")]
    | Annotated[PressureInlet, Tag("<panel>")]
    | Annotated[SocketInlet, Tag("<socket>")],
    BY_KIND,
]


class Pump(Part):
    """The 12 V water pump."""

    kind: OrUnknown[Literal["demand", "submersible"]]
    at: PlaceId
    switch_at: PlaceId
    flow: Flow
    draw: Current


class LowPoints(Part):
    """Drains of the pipes, not of the tank."""

    kind: OrUnknown[Literal["valves", "plugs"]]
    at: PlaceId


class WaterFilter(Part):
    """A cartridge that is changed each season."""

    kind: OrUnknown[Literal["inlet", "whole_unit", "under_sink"]]
    at: PlaceId


class OutsideShower(Part):
    """A shower head and taps behind a hatch."""

    kind: OrUnknown[Literal["mixer", "cold_only"]]
    at: PlaceId


class Water(Part):
    """Fresh water from the inlets to the taps."""

    tanks: Several[FreshTank]
    inlets: Several[WaterInlet]
    most_pressure: PressureOrNone
    pump: Maybe[Pump]
    low_points: Maybe[LowPoints]
    filter: Maybe[WaterFilter]
    outside_shower: Maybe[OutsideShower]


# --- hot water


class TankHeater(Part):
    """A heater with a tank; `element` is its electric element."""

    kind: Literal["tank"]
    at: PlaceId
    switch_at: PlaceId
    volume: Volume
    lp_input: HeatRateOrNone
    element: PowerOrNone
    element_switch_at: PlaceOrNone
    bypass: OrUnknown[Literal["one_valve", "two_valve", "three_valve", "lever", "none"]]
    bypass_at: PlaceOrNone
    anode: Literal["yes", "no", "unknown"]


class OnDemandHeater(Part):
    """
    A gas heater without a tank, which lights when water flows.

    `efficiency` is the share of the gas's heat that gets into the water.
    """

    kind: Literal["on_demand"]
    at: PlaceId
    controls_at: PlaceId
    lp_input: HeatRate
    least_flow: Flow
    efficiency: Share


class CombiBoiler(Part):
    """A boiler that heats air and water together."""

    kind: Literal["combi"]
    at: PlaceId
    controls_at: PlaceId
    volume: Volume
    lp_input: HeatRate


class ElectricHeater(Part):
    """A small electric water heater under the sink."""

    kind: Literal["electric"]
    at: PlaceId
    volume: Volume
    element: Power


HotWater: TypeAlias = Annotated[
    Annotated[TankHeater, Tag("<tank>")]
    | Annotated[OnDemandHeater, Tag("<on_demand>")]
    | Annotated[CombiBoiler, Tag("<combi>")]
    | Annotated[ElectricHeater, Tag("<electric>")]
    | NotFitted
    | NotKnown,
    BY_KIND,
]


# --- waste


class WasteTank(Part):
    """A waste tank; `at` is where its valve is worked."""

    id: Id
    holds: OrUnknown[Literal["black", "gray", "combined"]]
    volume: Volume
    valve: OrUnknown[Literal["pull", "cable", "electric"]]
    at: PlaceId


class SewerOutlet(Part):
    """Where the sewer hose goes on."""

    kind: OrUnknown[Literal["three_inch", "two_inch", "macerator"]]
    at: PlaceId


class RinseInlet(Part):
    """An inlet that sprays the inside of one waste tank; `flow` is its highest."""

    kind: OrUnknown[Literal["rinse_inlet"]]
    at: PlaceId
    tank: Id
    flow: Flow


class Toilet(Part):
    """The toilet; `holds` is a portable tank's or cassette's own volume."""

    kind: OrUnknown[Literal["gravity_flush", "portable", "cassette", "composting"]]
    at: PlaceId
    holds: VolumeOrNone


class TankMonitor(Part):
    """The panel that shows how full the tanks are."""

    kind: OrUnknown[Literal["probes", "strip"]]
    at: PlaceId


class Waste(Part):
    """Waste water and the toilet."""

    tanks: Several[WasteTank]
    outlet: Maybe[SewerOutlet]
    rinse: Maybe[RinseInlet]
    toilet: Maybe[Toilet]
    monitor: Maybe[TankMonitor]
