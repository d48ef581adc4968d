"""Fresh water and hot water."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Field, Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    Id,
    Maybe,
    NotFitted,
    NotKnown,
    OrUnknown,
    Part,
    PlaceId,
    PlaceOrNone,
    Several,
    Text,
)
from hatchleaf.spec.model.readings import (
    Current,
    Flow,
    HeatRate,
    HeatRateOrNone,
    Power,
    PowerOrNone,
    PressureOrNone,
    Share,
    Volume,
)

WaterMode: TypeAlias = Literal[
    "city", "tank_fill", "pump", "winterize", "sanitize", "drain"
]
"""What a water panel can be set to."""


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
    kind: Literal["city", "diverter"]
    at: PlaceId
    regulator: Literal["built_in", "none", "unknown"]
    regulator_set: PressureOrNone


class ModePanel(Part):
    """One inlet whose valve, or valves, choose among several ways of the water."""

    id: Id
    kind: Literal["panel"]
    at: PlaceId
    regulator: Literal["built_in", "none", "unknown"]
    regulator_set: PressureOrNone
    modes: tuple[WaterMode, ...] = Field(min_length=1)
    """The positions that its label names, each once."""
    labels: Text
    """How the label at the panel shows them, in words, or ``unknown``."""


class SocketInlet(Part):
    """A socket for a submersible pump in a jerry can or barrel."""

    id: Id
    kind: Literal["socket"]
    at: PlaceId


WaterInlet: TypeAlias = Annotated[
    Annotated[GravityFill, Tag("<gravity_fill>")]
    | Annotated[PressureInlet, Tag("<city>")]
    | Annotated[PressureInlet, Tag("<diverter>")]
    | Annotated[ModePanel, Tag("<panel>")]
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


class Softener(Part):
    """A water softener, which salt brings back to work."""

    kind: OrUnknown[Literal["salt"]]
    at: PlaceId


class Purifier(Part):
    """A lamp that makes germs in the water harmless, or a filter that holds them."""

    kind: OrUnknown[Literal["uv_lamp", "fine_filter"]]
    at: PlaceId


class Accumulator(Part):
    """A small pressure tank by the pump."""

    kind: OrUnknown[Literal["pressure_tank"]]
    at: PlaceId


class WinterHose(Part):
    """A hose with a valve at the pump that draws antifreeze from its jug."""

    kind: OrUnknown[Literal["at_pump", "at_panel"]]
    at: PlaceId


class Shower(Part):
    """A shower or bath inside."""

    id: Id
    kind: OrUnknown[Literal["stall", "tub", "wet_bath"]]
    at: PlaceId


class Tap(Part):
    """A tap inside, with hot and cold water unless it says cold only."""

    id: Id
    name: Text
    kind: OrUnknown[Literal["mixer", "cold_only", "microswitch"]]
    at: PlaceId


class Water(Part):
    """Fresh water from the inlets to the taps."""

    tanks: Several[FreshTank]
    inlets: Several[WaterInlet]
    most_pressure: PressureOrNone
    pump: Maybe[Pump]
    low_points: Maybe[LowPoints]
    filter: Maybe[WaterFilter]
    softener: Maybe[Softener]
    purifier: Maybe[Purifier]
    accumulator: Maybe[Accumulator]
    winter_hose: Maybe[WinterHose]
    outside_shower: Maybe[OutsideShower]
    showers: Several[Shower]
    taps: Several[Tap]


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
    lp_input: HeatRateOrNone
    element: PowerOrNone
    frost_valve_at: PlaceOrNone
    """Where the valve is that empties the boiler in frost, and by hand."""


class HydronicHeater(Part):
    """A heat exchanger in a loop of hot liquid; `climate.hydronic` heats the loop."""

    kind: Literal["hydronic"]
    at: PlaceId
    controls_at: PlaceId
    engine_heat: Literal["yes", "no", "unknown"]
    """Whether the engine heats the water too while it runs."""


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
    | Annotated[HydronicHeater, Tag("<hydronic>")]
    | Annotated[ElectricHeater, Tag("<electric>")]
    | NotFitted
    | NotKnown,
    BY_KIND,
]
