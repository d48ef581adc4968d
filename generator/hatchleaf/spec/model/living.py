"""Climate and kitchen."""

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
    PlaceOrNone,
    Several,
    Text,
    YesNo,
)
from hatchleaf.spec.model.readings import (
    Current,
    CurrentOrNone,
    HeatRate,
    HeatRateOrNone,
    Power,
    PowerOrNone,
)


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
    heat_pump: OrUnknown[YesNo]
    leg: Literal["a", "b", "unknown"]


class FuelHeater(Part):
    """A heater that burns diesel or petrol and blows warm air."""

    kind: OrUnknown[Literal["diesel", "petrol"]]
    at: PlaceId
    controls_at: PlaceId
    exhaust_at: PlaceId
    draw: Current


class Hydronic(Part):
    """Heating by a loop of hot liquid; `fuel` is what its boiler burns."""

    kind: OrUnknown[Literal["radiators", "floor", "fans"]]
    at: PlaceId
    controls_at: PlaceId
    fuel: OrUnknown[Literal["lp", "diesel", "electric"]]
    fluid_at: PlaceId
    """Where the level of the liquid is read."""


class FloorHeat(Part):
    """Heating mats under the floor."""

    kind: OrUnknown[Literal["electric"]]
    at: PlaceId
    watts: Power


class Fireplace(Part):
    """A heater that looks like a fire."""

    kind: OrUnknown[Literal["electric"]]
    at: PlaceId
    watts: Power


class Thermostat(Part):
    """The control of heating and cooling; `zones` in words."""

    kind: OrUnknown[Literal["single", "multi_zone"]]
    at: PlaceId
    zones: Text


class Vent(Part):
    """A vent, fan or skylight in the roof."""

    id: Id
    kind: OrUnknown[Literal["hand_vent", "fan", "skylight", "hatch"]]
    at: PlaceId
    rain_sensor: Literal["yes", "no", "unknown"]


class TankHeaters(Part):
    """What keeps the tanks from freezing; `heats` names them in words."""

    kind: OrUnknown[Literal["pads", "furnace_duct", "pads_and_duct"]]
    at: PlaceId
    """Where the switch is."""
    draw: CurrentOrNone
    heats: Text


class Climate(Part):
    """Heating and cooling."""

    furnace: Maybe[Furnace]
    fuel_heater: Maybe[FuelHeater]
    hydronic: Maybe[Hydronic]
    floor_heat: Maybe[FloorHeat]
    fireplace: Maybe[Fireplace]
    thermostat: Maybe[Thermostat]
    air_conditioners: Several[AirConditioner]
    vents: Several[Vent]
    tank_heaters: Maybe[TankHeaters]


class GasCooktop(Part):
    """A gas cooktop; `lp_input` is all burners together."""

    kind: Literal["lp"]
    at: PlaceId
    burners: OrUnknown[Count]
    lp_input: HeatRate
    ignition: OrUnknown[Literal["spark", "match"]]
    cover: OrUnknown[Literal["glass", "metal", "none"]]


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
    on_12v: CurrentOrNone
    """What it draws on 12 V while driving, or ``none`` where it runs on two ways."""


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


class Oven(Part):
    """A gas oven, under the cooktop as a rule."""

    kind: OrUnknown[Literal["lp"]]
    at: PlaceId
    lp_input: HeatRate
    ignition: OrUnknown[Literal["spark", "match"]]
    grill: OrUnknown[YesNo]


class Microwave(Part):
    """A microwave oven; `watts` is what it takes."""

    kind: OrUnknown[Literal["microwave", "convection"]]
    at: PlaceId


class RangeHood(Part):
    """The fan above the cooktop; `flap_at` is where its flap is outside."""

    kind: OrUnknown[Literal["vented", "recirculating"]]
    at: PlaceId
    flap_at: PlaceOrNone


class SecondFridge(Part):
    """A small fridge beside the main one."""

    kind: OrUnknown[Literal["drawer", "outside", "portable"]]
    at: PlaceId


class IceMaker(Part):
    """What makes ice; `valve_at` is where its water is shut off."""

    kind: OrUnknown[Literal["in_fridge", "stand_alone"]]
    at: PlaceId
    valve_at: PlaceOrNone


class Dishwasher(Part):
    """A dishwasher."""

    kind: OrUnknown[Literal["drawer", "full"]]
    at: PlaceId


class Laundry(Part):
    """A washer, a dryer, or both; ``prepared`` has the taps and no machine."""

    kind: OrUnknown[Literal["washer_dryer", "stacked", "prepared"]]
    at: PlaceId
    taps_at: PlaceId


class OutsideKitchen(Part):
    """A kitchen behind a hatch.

    `lp_input` is all its gas burners together, `drains_to` where its sink empties.
    """

    kind: OrUnknown[Literal["built_in", "slide_out"]]
    at: PlaceId
    burner: OrUnknown[Literal["lp", "electric", "none"]]
    lp_input: HeatRateOrNone
    taps: OrUnknown[YesNo]
    drains_to: OrUnknown[Literal["gray", "bucket", "none"]]
    fridge: OrUnknown[YesNo]


class Kitchen(Part):
    """Cooking and the fridge."""

    cooktop: Cooktop
    oven: Maybe[Oven]
    microwave: Maybe[Microwave]
    hood: Maybe[RangeHood]
    fridge: Fridge
    second_fridge: Maybe[SecondFridge]
    ice_maker: Maybe[IceMaker]
    dishwasher: Maybe[Dishwasher]
    laundry: Maybe[Laundry]
    outside: Maybe[OutsideKitchen]
