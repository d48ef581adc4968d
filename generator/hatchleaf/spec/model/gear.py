"""Running gear, coupling, legs and slide-outs."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from hatchleaf.spec.model.fields import (
    UNIT_ONLY,
    Count,
    Id,
    Maybe,
    OrUnknown,
    Part,
    PlaceId,
    PlaceOrNone,
    Several,
    Text,
    TireWeek,
    YesNo,
)
from hatchleaf.spec.model.readings import (
    Current,
    CurrentOrNone,
    Length,
    Mass,
    MassOrNone,
    Pressure,
    Torque,
    Voltage,
    Volume,
)


class Slide(Part):
    """A slide-out room."""

    id: Id
    kind: OrUnknown[Literal["rack", "in_wall", "cable", "hydraulic", "manual"]]
    name: Text
    at: PlaceId
    switch_at: PlaceOrNone
    order: Literal["before_stabilizers", "after_stabilizers", "unknown"]
    """Its maker's order: out before the stabilizers or leveling jacks, or after."""
    after: Id | Literal["none", "unknown"]
    """The slide that must be out before this one, ``none`` when it goes alone."""
    override: Literal["crank", "drill", "push", "hand_pump", "none", "unknown"]
    override_at: PlaceOrNone
    fuse: CurrentOrNone
    least_volts: Voltage
    travel_lock: OrUnknown[Literal["bar", "clamp", "none"]]
    topper: OrUnknown[YesNo]


class Axle(Part):
    """
    One axle and its rating (GAWR).

    `tires`: one at each end, or two side by side at each end.  `track` is from the
    middle of one tire, or pair, to the middle of the other.
    """

    id: Id
    gawr: Mass
    tires: OrUnknown[Literal["single", "dual"]]
    track: Length


class FittedTire(Part):
    """One tire on this unit, with its own date."""

    id: Id
    made: TireWeek = Field(json_schema_extra=UNIT_ONLY)


class Tires(Part):
    """
    The tires; `pressure` is the placard's, cold.

    `load` is of one tire at it, `dual_load` of one of two that stand side by side.
    """

    at: PlaceId
    size: Text
    pressure: Pressure
    load: Mass
    dual_load: MassOrNone
    fitted: Several[FittedTire] = Field(json_schema_extra=UNIT_ONLY)


class Hitch(Part):
    """
    How the unit is coupled to the vehicle.

    `to_axles` is from the coupling to the middle of the axles.
    """

    kind: OrUnknown[
        Literal["ball", "stabilizer_head", "fifth_wheel", "gooseneck", "pintle"]
    ]
    at: PlaceId
    ball: OrUnknown[Literal["1_7_8_in", "2_in", "2_5_16_in", "50_mm", "none"]]
    plug: OrUnknown[Literal["four_way", "seven_way", "thirteen_pin"]]
    chains: OrUnknown[Count]
    to_axles: Length


class Jack(Part):
    """The tongue jack, jockey wheel or landing legs; `by_hand_at`: its hand crank."""

    kind: OrUnknown[
        Literal[
            "manual", "electric", "jockey_wheel", "landing_legs", "landing_electric"
        ]
    ]
    at: PlaceId
    by_hand_at: PlaceOrNone


class Brakes(Part):
    """The trailer's own brakes."""

    kind: OrUnknown[Literal["electric", "surge", "hydraulic", "overrun"]]


class Breakaway(Part):
    """The switch that brakes a trailer that has come loose."""

    kind: OrUnknown[Literal["pull_pin", "cable_to_handbrake"]]
    at: PlaceId


class Stabilizers(Part):
    """Legs that stop the rocking; they do not lift."""

    kind: OrUnknown[Literal["scissor", "drop_leg", "powered"]]
    at: PlaceId
    legs: OrUnknown[Count]


class Distribution(Part):
    """A hitch that spreads the load over the axles, fitted to this unit's frame."""

    kind: OrUnknown[Literal["round_bars", "friction_bars", "cams"]]
    at: PlaceId


class SwayControl(Part):
    """What damps sway: a friction bar of its own, or an electronic one."""

    kind: OrUnknown[Literal["friction_bar", "electronic"]]
    at: PlaceId


class Leveling(Part):
    """Jacks or air bags that level the unit; `least_volts` is their maker's."""

    kind: OrUnknown[Literal["hydraulic", "electric", "air"]]
    at: PlaceId
    """Where it is worked."""
    legs: OrUnknown[Count]
    automatic: OrUnknown[YesNo]
    fluid_at: PlaceOrNone
    by_hand: Text
    """How its maker has it brought up without power, in words, or ``unknown``."""
    least_volts: Voltage


class Mover(Part):
    """Driven rollers that move a caravan by remote control."""

    kind: OrUnknown[Literal["one_axle", "two_axles"]]
    at: PlaceId
    """Where its rollers are put on and off."""
    draw: Current


class Spare(Part):
    """The spare wheel's carrier; ``kit`` is foam and a pump in its stead."""

    kind: OrUnknown[Literal["rear_carrier", "under_frame", "front", "bay", "kit"]]
    at: PlaceId
    tools_at: PlaceOrNone


class Wheels(Part):
    """The wheels; `torque` is their own maker's figure for the nuts."""

    kind: OrUnknown[Literal["steel", "alloy"]]
    torque: Torque


class Hubs(Part):
    """The hubs of the axles."""

    kind: OrUnknown[Literal["grease_fitting", "hand_packed", "sealed", "oil"]]


class TireMonitor(Part):
    """Sensors of the tires' pressure and their display."""

    kind: OrUnknown[Literal["caps", "in_wheel"]]
    at: PlaceId


class Receiver(Part):
    """A motorhome's receiver for a trailer or car; `rating` is its label's."""

    kind: OrUnknown[Literal["receiver"]]
    at: PlaceId
    rating: Mass
    plug: OrUnknown[Literal["four_way", "seven_way", "thirteen_pin"]]


class Vehicle(Part):
    """The road vehicle under a motorhome; `kind` is its fuel."""

    kind: OrUnknown[Literal["petrol", "diesel"]]
    at: PlaceId
    """Where it is fueled."""
    fuel: Volume
    swivel_seats: OrUnknown[YesNo]
    belts: OrUnknown[Count]
    """Seats with belts."""
    step_alarm: OrUnknown[YesNo]
    """Whether it warns of a step that is out with the engine on."""


class Gear(Part):
    """Running gear and the coupling."""

    axles: Several[Axle]
    tires: Maybe[Tires]
    hitch: Maybe[Hitch]
    jack: Maybe[Jack]
    distribution: Maybe[Distribution]
    sway_control: Maybe[SwayControl]
    brakes: Maybe[Brakes]
    breakaway: Maybe[Breakaway]
    stabilizers: Maybe[Stabilizers]
    leveling: Maybe[Leveling]
    mover: Maybe[Mover]
    spare: Maybe[Spare]
    wheels: Maybe[Wheels]
    hubs: Maybe[Hubs]
    tire_monitor: Maybe[TireMonitor]
    receiver: Maybe[Receiver]
