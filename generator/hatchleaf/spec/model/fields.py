"""
The types of single fields, read from text and never by YAML's or pydantic's guess.

A spec arrives as a tree of strings.  Each type here matches the whole text, so
that ``nan``, ``1_000``, ``22:30`` or a date of ``0`` is a problem, not a value.
Errors carry ``allowed`` and ``hint`` in their context for `hatchleaf.problems`.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, Final, Literal, TypeAlias, TypeVar, get_args

from pydantic import (
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    GetCoreSchemaHandler,
    PlainValidator,
    Tag,
)
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from hatchleaf import units
from hatchleaf.spec import code, vin
from hatchleaf.spec.told import quoted, unseen

UNIT_ONLY: Final[dict[str, Any]] = {"unit_only": True}
"""Mark of a field that belongs to one unit: a model file may not state it."""


def wrong(
    what: str, allowed: str = "", hint: str = "", at: str = ""
) -> PydanticCustomError:
    """Return the error of one field; *at* names the key inside it that is meant."""
    # Braces would be read as a template by pydantic: pass the text as context.
    return PydanticCustomError(
        "field", "{what}", {"what": what, "allowed": allowed, "hint": hint, "at": at}
    )


class Part(BaseModel):
    """Something fitted, or a group of such things; unknown keys are refused."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", arbitrary_types_allowed=True, defer_build=True
    )


def _matched(
    pattern: str, name: str, allowed: str, convert: Callable[[str], Any]
) -> Any:
    compiled = re.compile(pattern, re.ASCII)

    def check(text: object) -> Any:
        if not isinstance(text, str) or not compiled.fullmatch(text):
            raise wrong(f"{quoted(text)} is not {name}", allowed)
        try:
            return convert(text)
        except ValueError:
            raise wrong(f"{quoted(text)} is not {name}", allowed) from None

    return PlainValidator(check)


_LONGEST_TEXT: Final = 200
_LAST_WEEK: Final = 53
DAY_FORM: Final = "year-month-day, like 2027-04-16"


@dataclass(frozen=True)
class Form:
    """What a field holds, for conditions and the schema."""

    name: str
    """``count``, ``yes or no``, ``day``, ``text`` ... or the name of `kind`."""
    kind: units.Kind | None = None
    words: tuple[str, ...] = ()
    """Words allowed in place of the value, such as ``none``."""


def _month(text: str) -> dt.date:
    return dt.date.fromisoformat(text + "-01")


def _week(text: str) -> str:
    if not 1 <= int(text[:2]) <= _LAST_WEEK:
        raise ValueError(text)
    return text


Count: TypeAlias = Annotated[
    int,
    _matched(r"[1-9]\d{0,3}|0", "a count", "a whole number from 0 to 9999", int),
    Form("count"),
]
Year: TypeAlias = Annotated[
    int,
    _matched(r"(19|20)\d\d", "a year", "four digits, like 2027", int),
    Form("count"),
]
YesNo: TypeAlias = Annotated[
    bool,
    _matched(r"yes|no", "yes or no", "yes, no", lambda t: t == "yes"),
    Form("yes or no"),
]
Day: TypeAlias = Annotated[
    dt.date,
    _matched(
        r"\d{4}-\d\d-\d\d",
        "a date",
        DAY_FORM,
        dt.date.fromisoformat,
    ),
    Form("day"),
]
Month: TypeAlias = Annotated[
    dt.date | Literal["unknown"],
    _matched(
        r"\d{4}-\d\d|unknown",
        "a month",
        "year-month, like 2026-10, or unknown",
        lambda t: t if t == "unknown" else _month(t),
    ),
    Form("month", words=("unknown",)),
]
"""The first day of the month, or ``unknown``."""
Months: TypeAlias = Annotated[
    int,
    _matched(
        r"[1-9]\d{0,2} months?",
        "a number of months",
        "a number from 1 to 999 and months, like 12 months",
        lambda t: int(t.split()[0]),
    ),
    Form("months"),
]
"""How long something lasts, in whole months."""
TireWeek: TypeAlias = Annotated[
    str,
    _matched(
        r"\d{4}|unknown",
        "a tire's week and year",
        'the last four digits of the tire\'s code in quotes, like "0927", or unknown',
        lambda t: t if t == "unknown" else _week(t),
    ),
    Form("tire week", words=("unknown",)),
]
"""``WWYY``: week and year, the last four digits of the tire identification number."""
Id: TypeAlias = Annotated[
    str,
    _matched(
        r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*",
        "an id",
        "small letters, digits and single hyphens, like left-front",
        str,
    ),
    Form("id"),
]
PlaceId: TypeAlias = Annotated[
    str,
    _matched(
        r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*",
        "the id of a place",
        "an id listed under places",
        str,
    ),
    Form("place"),
]
"""The id of a place; ``none`` and ``unknown`` are ids that no place may have."""
PlaceOrNone: TypeAlias = Annotated[
    str,
    _matched(
        r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*",
        "the id of a place",
        "an id listed under places, or none",
        str,
    ),
    Form("place", words=("none",)),
]
"""The place of something that may be missing, or ``none``."""
PartPath: TypeAlias = Annotated[
    str,
    _matched(
        r"[a-z_]+(?:\.[a-z0-9_]+(?:-[a-z0-9]+)*){0,3}",
        "the path of a part",
        "the part's path, like water.pump or awnings.patio, or none",
        str,
    ),
    Form("text", words=("none",)),
]
"""A part by its path, an item of a list by its id; ``none`` for no one part."""
DayOrNone: TypeAlias = Annotated[
    dt.date | Literal["none"],
    _matched(
        r"\d{4}-\d\d-\d\d|none",
        "a date",
        f"{DAY_FORM}, or none",
        lambda t: t if t == "none" else dt.date.fromisoformat(t),
    ),
    Form("day", words=("none",)),
]


def _text(value: object) -> str:
    allowed = f"1 to {_LONGEST_TEXT} characters"
    if not isinstance(value, str) or not value.strip():
        raise wrong(f"{quoted(value)} is not a line of text", allowed)
    if len(value) > _LONGEST_TEXT:
        raise wrong(f"{quoted(value)} is too long", allowed)
    # Format marks may turn the direction of a line or hide in a serial number.
    if not value.isprintable() and any(
        unseen(c) and c != "\N{NO-BREAK SPACE}" for c in value
    ):
        raise wrong(
            f"{quoted(value)} holds a character that cannot be seen",
            allowed,
            "write it on one line, without copied marks",
        )
    return value.strip()


Text: TypeAlias = Annotated[str, PlainValidator(_text), Form("text")]


def _code(value: object) -> str:
    if not isinstance(value, str) or not code.well_formed(value):
        raise wrong(f"{quoted(value)} is not a code", "15 digits, the first not 0")
    if not code.valid(value):
        raise wrong(f"the last digit of {quoted(value)} does not fit", hint="mistyped?")
    return value


def _vin(value: object) -> str:
    allowed = "17 capital letters and digits, without I, O and Q"
    if value == "none":
        return "none"
    if not isinstance(value, str) or not vin.well_formed(value):
        raise wrong(f"{quoted(value)} is not a VIN", allowed, _vin_hint(value))
    if vin.all_one_character(value):
        raise wrong(f"{quoted(value)} is one character repeated", allowed)
    return value


def _vin_hint(value: object) -> str:
    if not isinstance(value, str):
        return ""
    if len(value) != vin.LENGTH:
        return f"it has {len(value)} characters"
    return "write capital letters" if vin.well_formed(value.upper()) else ""


Code: TypeAlias = Annotated[str, PlainValidator(_code), Form("code")]
"""The unit's code, whose last digit guards against mistyping."""
Vin: TypeAlias = Annotated[str, PlainValidator(_vin), Form("vin", words=("none",))]
"""The VIN, or ``none`` for what has none; its check digit is a matter of the market."""


NotFitted: TypeAlias = Annotated[Literal["none"], Tag("<none>")]
NotKnown: TypeAlias = Annotated[Literal["unknown"], Tag("<unknown>")]


def _kind(value: object) -> str | None:
    """Return the tag of one member: its kind, or ``<none>`` or ``<unknown>``."""
    if isinstance(value, dict):
        kind = value.get("kind")
        return f"<{kind}>" if kind not in ("none", "unknown") else "<>"
    if isinstance(value, BaseModel):
        return f"<{getattr(value, 'kind', None)}>"
    return f"<{value}>" if value in ("none", "unknown") else None


def _presence(value: object) -> str | None:
    """Return the tag of a part by its form alone."""
    if isinstance(value, (dict, BaseModel)):
        return "<part>"
    if isinstance(value, (list, tuple)):
        return "<list>"
    return f"<{value}>" if value in ("none", "unknown") else None


# Tags are written <so>, to be told from fields in the path of an error and dropped
# when the error's place in the file is looked up.
BY_KIND: Final = Discriminator(_kind)
"""Chooses the member of a union by its ``kind``, where kinds have other fields."""
BY_PRESENCE: Final = Discriminator(_presence)
"""Tells a part, a list, ``none`` and ``unknown`` apart."""

T = TypeVar("T")


@dataclass(frozen=True)
class UsedMayNotKnow:
    """
    Mark of a field of which a used unit, and no other, may say ``unknown``.

    The field is read by its own type alone, so that what is wrong with it has one
    place and one list of what is allowed.
    """

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Return the schema of the field's own type, with the word let through."""
        return core_schema.no_info_wrap_validator_function(
            lambda value, read: value if value == "unknown" else read(value),
            handler.generate_schema(get_args(source)[0]),
        )


OrUnknown: TypeAlias = Annotated[T | Literal["unknown"], UsedMayNotKnow()]
"""A word, count or yes-or-no of something fitted, which nobody may be left to tell."""

Maybe: TypeAlias = Annotated[
    Annotated[T, Tag("<part>")] | NotFitted | NotKnown, BY_PRESENCE
]
"""A part that is fitted once, not at all, or not known."""
Several: TypeAlias = Annotated[
    Annotated[tuple[T, ...], Tag("<list>"), Field(min_length=1)] | NotFitted | NotKnown,
    BY_PRESENCE,
]
"""A part that can be fitted more than once: a list of items with ids."""
