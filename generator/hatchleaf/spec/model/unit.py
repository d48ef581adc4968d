"""The whole unit: who it is, its places and weights, and all that is fitted."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Field

from hatchleaf.spec.model.ac import Ac
from hatchleaf.spec.model.dc import Dc
from hatchleaf.spec.model.fields import (
    UNIT_ONLY,
    Code,
    Count,
    Day,
    DayOrNone,
    Id,
    Maybe,
    Months,
    Part,
    Several,
    Text,
    Vin,
    Year,
    YesNo,
)
from hatchleaf.spec.model.gas import Lp
from hatchleaf.spec.model.gear import Gear, Slide, Vehicle
from hatchleaf.spec.model.inside import Inside, Media
from hatchleaf.spec.model.living import Climate, Kitchen
from hatchleaf.spec.model.outside import (
    Awning,
    CentralLocking,
    Door,
    LiftingRoof,
    Outside,
    Step,
    Window,
)
from hatchleaf.spec.model.photos import Photos
from hatchleaf.spec.model.readings import Length, Mass, Share
from hatchleaf.spec.model.safety import Safety
from hatchleaf.spec.model.waste import Waste
from hatchleaf.spec.model.water import HotWater, Water


class Body(Part):
    """What kind of unit this is; `name` and `maker` as on its papers."""

    name: Text
    maker: Text
    year: Year
    type: Literal[
        "travel_trailer",
        "molded_trailer",
        "teardrop",
        "fifth_wheel",
        "folding_trailer",
        "truck_camper",
        "class_a",
        "class_b",
        "class_c",
        "caravan",
    ]
    market: Literal["us", "ca", "uk", "eu", "au"]
    length: Length
    height: Length
    """Of the highest part, with the tires at the pressure of their placard."""
    sleeps: Count


class PlaceOnUnit(Part):
    """A hatch, panel or other place; `from_front` is in percent of the length."""

    id: Id
    name: Text
    side: Literal["road", "curb", "front", "rear", "center"]
    from_front: Share
    height: Literal["under", "low", "middle", "high", "roof"]
    where: Literal["outside", "inside"]


class Weights(Part):
    """Weights; all but the rating are read from this very unit."""

    gvwr: Mass
    regime: Literal["cargo_label_2008", "older_label", "canada", "metric_plate"] = (
        Field(json_schema_extra=UNIT_ONLY)
    )
    cargo_label: Mass = Field(json_schema_extra=UNIT_ONLY)
    hitch: Mass = Field(json_schema_extra=UNIT_ONLY)
    scale_total: Mass = Field(json_schema_extra=UNIT_ONLY)


class Added(Part):
    """Something that the dealership added after the label was made."""

    id: Id
    what: Text
    weight: Mass


class Delivery(Part):
    """The hand-over."""

    date: Day
    winterized: YesNo


class Serial(Part):
    """A serial number; private.  `id` is the part that it is of: ``furnace``."""

    id: Id
    number: Text


class Key(Part):
    """A key and its number; private."""

    id: Id
    number: Text


class HandOverReading(Part):
    """What a test at the hand-over found; private."""

    id: Id
    kind: Literal[
        "gas_leak", "brakes", "breakaway", "alarms", "ground_fault", "lights", "other"
    ]
    result: Literal["passed", "failed"]
    found: Text


Role: TypeAlias = Literal[
    "service_manager",
    "sales_manager",
    "delivery_specialist",
    "parts_manager",
    "licensed_technician",
]
"""Who at the dealership; never a person's name."""


class Recall(Part):
    """
    What a look-up of safety recalls by the unit's VIN found; private.

    `open` tells whether a recall is still to be remedied on this unit.
    """

    looked_up: Day
    by: Role
    open: Literal["yes", "no", "unknown"]


class Warranty(Part):
    """A promise of a maker or the dealership, from the delivery on; private."""

    id: Id
    what: Text
    lasts: Months


class Acknowledgement(Part):
    """
    A finding that somebody answers for, so that the guide is built; private.

    `id` is that of the finding, as ``check`` prints it.
    """

    id: Id
    role: Role
    reason: Text


class UnitSpec(Part):
    """
    One unit as its file and its model's file state it together.

    Identity comes first, then the parts.  A field marked unit-only may not stand
    in a model's file.
    """

    format: Annotated[Literal["1"], Field(json_schema_extra=UNIT_ONLY)]
    code: Code = Field(json_schema_extra=UNIT_ONLY)
    stock: Text = Field(json_schema_extra=UNIT_ONLY)
    vin: Vin = Field(json_schema_extra=UNIT_ONLY)
    condition: Literal["new", "used"] = Field(json_schema_extra=UNIT_ONLY)
    found_on: DayOrNone = Field(default="none", json_schema_extra=UNIT_ONLY)
    delivery: Delivery = Field(json_schema_extra=UNIT_ONLY)
    serials: Several[Serial] = Field(json_schema_extra=UNIT_ONLY)
    keys: Several[Key] = Field(json_schema_extra=UNIT_ONLY)
    readings: Several[HandOverReading] = Field(json_schema_extra=UNIT_ONLY)
    added: Several[Added] = Field(json_schema_extra=UNIT_ONLY)
    recall: Maybe[Recall] = Field(json_schema_extra=UNIT_ONLY)
    """``none`` where nobody has looked."""
    warranties: Several[Warranty] = Field(json_schema_extra=UNIT_ONLY)
    acknowledged: Several[Acknowledgement] = Field(json_schema_extra=UNIT_ONLY)

    body: Body
    places: tuple[PlaceOnUnit, ...]
    weights: Weights
    lp: Lp
    water: Water
    hot_water: HotWater
    waste: Waste
    dc: Dc
    ac: Ac
    climate: Climate
    kitchen: Kitchen
    inside: Inside
    media: Media
    awnings: Several[Awning]
    outside: Outside
    doors: Several[Door]
    central_locking: Maybe[CentralLocking]
    windows: Several[Window]
    lifting_roof: Maybe[LiftingRoof]
    steps: Several[Step]
    slides: Several[Slide]
    vehicle: Maybe[Vehicle]
    gear: Gear
    safety: Safety
    photos: Photos = "none"
