"""Alarms, the extinguisher and ways out."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from hatchleaf.spec.model.fields import (
    UNIT_ONLY,
    Id,
    Maybe,
    Month,
    OrUnknown,
    Part,
    PlaceId,
    Several,
    Text,
)


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
