"""
Numbers as a unit states them: what, where it was read, on which day.

A number is a text such as ``20 lb``, or a mapping of ``value``, ``from`` and
``read_on``.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, Final, Literal, TypeAlias

from pydantic import PlainValidator

from hatchleaf import units
from hatchleaf.problems import suggestion
from hatchleaf.spec.model.fields import DAY_FORM, Form, wrong
from hatchleaf.spec.told import quoted
from hatchleaf.units import Quantity

Origin: TypeAlias = Literal["plate", "label", "scale", "paper", "brochure"]
ORIGINS: Final = ("plate", "label", "scale", "paper", "brochure")


@dataclass(frozen=True)
class Reading:
    """A number as the unit states it: what, read from where, on which day."""

    quantity: Quantity | None
    """None where the file says ``unknown``."""
    origin: Origin | None = None
    """Read from the plate, label, scale, paper or brochure; None: not said."""
    on: dt.date | None = None

    @property
    def known(self) -> bool:
        """True when there is a number."""
        return self.quantity is not None


def _reading(kind: units.Kind) -> Callable[[object], Reading]:
    def check(value: object) -> Reading:
        if isinstance(value, Reading):
            return value
        if isinstance(value, dict):
            return _stated(value, kind)
        return Reading(_number(value, kind, ""))

    return check


def _day(value: object, at: str) -> dt.date:
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d\d-\d\d", value, re.ASCII):
        try:
            return dt.date.fromisoformat(value)
        except ValueError:
            pass
    raise wrong(f"{quoted(value)} is not a date", DAY_FORM, at=at)


def _stated(value: dict[str, Any], kind: units.Kind) -> Reading:
    for key in value:
        if key not in ("value", "from", "read_on"):
            near = suggestion(key, ("value", "from", "read_on"))
            raise wrong("no such field", "value, from, read_on", near, at=key)
    if "value" not in value:
        raise wrong("field is missing", kind.allowed() + ", or unknown", at="value")
    origin = value.get("from")
    if origin is not None and origin not in ORIGINS:
        raise wrong(
            f"{quoted(origin)} is not where a number is read",
            ", ".join(ORIGINS),
            suggestion(str(origin), ORIGINS),
            at="from",
        )
    on = value.get("read_on")
    day = None if on is None else _day(on, "read_on")
    return Reading(_number(value["value"], kind, "value"), origin, day)


def _number(value: object, kind: units.Kind, at: str) -> Quantity | None:
    if value == "unknown":
        return None
    allowed = kind.allowed() + ", or unknown"
    if not isinstance(value, str):
        raise wrong(f"{quoted(value)} is not a {kind.name}", allowed, at=at)
    try:
        return units.parse(value, kind)
    except units.NotAQuantity as error:
        what = str(error).replace(f"'{value}'", quoted(value))
        raise wrong(what, allowed, error.hint, at=at) from None


def _measured(kind: units.Kind) -> tuple[Any, ...]:
    return PlainValidator(_reading(kind)), Form(kind.name, kind, ("unknown",))


def _measured_or_none(kind: units.Kind) -> tuple[Any, ...]:
    read = _reading(kind)

    def check(value: object) -> Reading | str:
        return "none" if value == "none" else read(value)

    return PlainValidator(check), Form(kind.name, kind, ("none", "unknown"))


Mass: TypeAlias = Annotated[Reading, *_measured(units.MASS)]
Volume: TypeAlias = Annotated[Reading, *_measured(units.VOLUME)]
Flow: TypeAlias = Annotated[Reading, *_measured(units.FLOW)]
Length: TypeAlias = Annotated[Reading, *_measured(units.LENGTH)]
Pressure: TypeAlias = Annotated[Reading, *_measured(units.PRESSURE)]
GasPressure: TypeAlias = Annotated[Reading, *_measured(units.GAS_PRESSURE)]
HeatRate: TypeAlias = Annotated[Reading, *_measured(units.HEAT_RATE)]
Power: TypeAlias = Annotated[Reading, *_measured(units.POWER)]
Current: TypeAlias = Annotated[Reading, *_measured(units.CURRENT)]
Voltage: TypeAlias = Annotated[Reading, *_measured(units.VOLTAGE)]
Charge: TypeAlias = Annotated[Reading, *_measured(units.CHARGE)]
Speed: TypeAlias = Annotated[Reading, *_measured(units.SPEED)]
Duration: TypeAlias = Annotated[Reading, *_measured(units.DURATION)]
Torque: TypeAlias = Annotated[Reading, *_measured(units.TORQUE)]
Distance: TypeAlias = Annotated[Reading, *_measured(units.DISTANCE)]
Share: TypeAlias = Annotated[Reading, *_measured(units.SHARE)]
PressureOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.PRESSURE)
]
HeatRateOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.HEAT_RATE)
]
PowerOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.POWER)
]
CurrentOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.CURRENT)
]
VolumeOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.VOLUME)
]
MassOrNone: TypeAlias = Annotated[
    Reading | Literal["none"], *_measured_or_none(units.MASS)
]
