"""LP gas: what holds it, its regulator and outlets."""

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
from hatchleaf.spec.model.readings import GasPressure, HeatRate, Mass, Volume


class Cylinder(Part):
    """One portable cylinder; `holds` is the weight of gas at the legal fill."""

    id: Id
    holds: Mass
    gauge: OrUnknown[YesNo]
    made_of: OrUnknown[Literal["steel", "aluminum", "composite"]]
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
    filler_at: PlaceId
    switch_at: PlaceOrNone
    """Where a switch inside shuts the gas off at the tank."""


class Bottles(Part):
    """Bottles behind a 30 mbar regulator on the vehicle."""

    kind: Literal["bottles"]
    at: PlaceId
    changeover: OrUnknown[Literal["automatic", "manual", "none"]]
    crash_shutoff: OrUnknown[YesNo]
    """Whether a device shuts the gas off after a crash or when a hose breaks."""
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
