"""Awnings, doors and steps, running gear, alarms and exits."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Field, Tag

from hatchleaf.spec.model.fields import (
    BY_KIND,
    UNIT_ONLY,
    Count,
    Id,
    Maybe,
    Month,
    OrUnknown,
    Part,
    PlaceId,
    PlaceOrNone,
    Several,
    Text,
    TireWeek,
    YesNo,
)
from hatchleaf.spec.model.readings import Current, Length, Mass, Pressure, Speed


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
    holds_open: OrUnknown[Literal["gas_struts", "catch", "none"]]


Door: TypeAlias = Annotated[
    Annotated[EntryDoor, Tag("<entry>")]
    | Annotated[EntryDoor, Tag("<second>")]
    | Annotated[Hatch, Tag("<galley>")]
    | Annotated[Hatch, Tag("<bay>")]
    | Annotated[Hatch, Tag("<ramp>")],
    BY_KIND,
]


class Step(Part):
    """An entry step."""

    id: Id
    kind: OrUnknown[Literal["fold_down", "drop_leg", "electric"]]
    at: PlaceId


class Slide(Part):
    """A slide-out room."""

    id: Id
    kind: OrUnknown[Literal["rack", "in_wall", "cable", "hydraulic"]]
    at: PlaceId


class Axle(Part):
    """
    One axle and its rating (GAWR), of two wheels.

    `track` is from the middle of one tire to the middle of the other.
    """

    id: Id
    gawr: Mass
    track: Length


class FittedTire(Part):
    """One tire on this unit, with its own date."""

    id: Id
    made: TireWeek = Field(json_schema_extra=UNIT_ONLY)


class Tires(Part):
    """The tires; `pressure` is the placard's, cold; `load` is of one tire at it."""

    at: PlaceId
    size: Text
    pressure: Pressure
    load: Mass
    fitted: Several[FittedTire] = Field(json_schema_extra=UNIT_ONLY)


class Hitch(Part):
    """
    How the unit is coupled to the vehicle.

    `to_axles` is from the coupling to the middle of the axles.
    """

    kind: OrUnknown[Literal["ball", "fifth_wheel", "gooseneck", "pintle"]]
    at: PlaceId
    ball: OrUnknown[Literal["1_7_8_in", "2_in", "2_5_16_in", "50_mm", "none"]]
    plug: OrUnknown[Literal["four_way", "seven_way", "thirteen_pin"]]
    chains: OrUnknown[Count]
    to_axles: Length


class Jack(Part):
    """The tongue jack or landing legs."""

    kind: OrUnknown[Literal["manual", "electric"]]
    at: PlaceId


class Brakes(Part):
    """The trailer's own brakes."""

    kind: OrUnknown[Literal["electric", "surge", "hydraulic"]]


class Breakaway(Part):
    """The switch that brakes a trailer that has come loose."""

    kind: OrUnknown[Literal["pull_pin"]]
    at: PlaceId


class Stabilizers(Part):
    """Legs that stop the rocking; they do not lift."""

    kind: OrUnknown[Literal["scissor", "drop_leg", "powered"]]
    at: PlaceId
    legs: OrUnknown[Count]


class Gear(Part):
    """Running gear and the coupling."""

    axles: Several[Axle]
    tires: Maybe[Tires]
    hitch: Maybe[Hitch]
    jack: Maybe[Jack]
    brakes: Maybe[Brakes]
    breakaway: Maybe[Breakaway]
    stabilizers: Maybe[Stabilizers]


class Alarm(Part):
    """One alarm; the sounds are the maker's own words, or ``unknown``."""

    id: Id
    detects: OrUnknown[Literal["smoke", "co", "lp", "co_and_lp", "smoke_and_co"]]
    at: PlaceId
    power: OrUnknown[Literal["twelve_volt", "battery"]]
    alarm_sound: Text
    fault_sound: Text
    end_sound: Text
    made: Month = Field(json_schema_extra=UNIT_ONLY)
    replace_by: Month = Field(json_schema_extra=UNIT_ONLY)


class Extinguisher(Part):
    """The fire extinguisher."""

    kind: OrUnknown[Literal["dry_chemical", "foam", "other"]]
    at: PlaceId
    made: Month = Field(json_schema_extra=UNIT_ONLY)


class Exit(Part):
    """A way out."""

    id: Id
    kind: OrUnknown[Literal["door", "window", "hatch"]]
    at: PlaceId


class Safety(Part):
    """Alarms, the extinguisher and the ways out."""

    alarms: Several[Alarm]
    extinguisher: Maybe[Extinguisher]
    exits: Several[Exit]
