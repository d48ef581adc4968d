"""The front matter of a block as pydantic reads it: forms, before any meaning."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, PlainValidator

from hatchleaf.blocks.intervals import (
    ALLOWED,
    ALLOWED_START,
    Interval,
    NoInterval,
    interval,
)
from hatchleaf.drawings.normal import DRAWINGS
from hatchleaf.problems import listed, suggestion
from hatchleaf.spec.model.fields import Count, Day, Id, Text, YesNo, wrong


def _drawing(value: object) -> str:
    if not isinstance(value, str) or value not in DRAWINGS:
        raise wrong(
            f"'{value}' is no drawing",
            listed(DRAWINGS),
            suggestion(str(value), DRAWINGS),
        )
    return value


def _rank(value: object) -> int:
    if isinstance(value, str) and value.isascii() and value.isdigit():
        rank = int(value)
        if 1 <= rank <= _LAST_RANK:
            return rank
    raise wrong(f"'{value}' is not a rank", "a whole number from 1 to 99")


def _says(value: object) -> str:
    # A tile reads like a rating plate, never like a gauge that shows a live level.
    if not isinstance(value, str) or not 1 <= len(value) <= _LONGEST_SAYS:
        raise wrong(f"'{value}' is too long for a tile", "1 to 20 characters")
    if set(value.lower().split()) & _GAUGE_WORDS:
        raise wrong(
            f"'{value}' reads like a gauge", "words such as holds, set to, takes"
        )
    return value


_LAST_RANK = 99
_LONGEST_SAYS = 20
_GAUGE_WORDS = frozenset({"left", "now", "level", "remaining", "currently"})


def _interval(value: object) -> Interval:
    try:
        return interval(str(value))
    except NoInterval as fault:
        raise wrong(fault.what, ALLOWED, fault.hint) from None


def _start(value: object) -> Interval:
    try:
        found = interval(str(value))
    except NoInterval as fault:
        raise wrong(fault.what, ALLOWED_START, fault.hint) from None
    if found.occasion:
        what = f"'{value}' is no start: it is counted from the delivery"
        raise wrong(what, ALLOWED_START)
    return found


class Form(BaseModel):
    """A mapping of the front matter; unknown keys are refused."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


class NormalForm(Form):
    """``normal: {draw: lever_along, text: ...}``."""

    draw: Annotated[str, PlainValidator(_drawing)]
    text: Text


class TileForm(Form):
    """``tiles: [{says: holds, fact: water.capacity, note: fresh tank}]``."""

    says: Annotated[str, PlainValidator(_says)]
    fact: Text | None = None
    value: Text | None = None
    note: Text


class StickerForm(Form):
    """``sticker: {line: ..., fact: ..., extra: ..., signal: warning}``."""

    line: Text
    fact: Text | None = None
    extra: Text | None = None
    signal: Literal["danger", "warning", "caution", "notice"] | None = None


class StepForm(Form):
    """One row of ``do``."""

    phase: Text
    rank: Annotated[int, PlainValidator(_rank)]
    at: Text | None = None
    step: Text


class CareForm(Form):
    """One row of ``every``: what comes round again, or is due on a fact's day."""

    task: Text
    interval: Annotated[Interval, PlainValidator(_interval)] | None = None
    first: Annotated[Interval, PlainValidator(_start)] | None = None
    due: Text | None = None


Reviewer: TypeAlias = Literal[
    "licensed_technician",
    "gas_technician",
    "electrician",
    "brake_and_tire_technician",
    "service_manager",
]
"""Who may be qualified to review; local codes say who is, for gas and mains."""


def _wording(value: object) -> str:
    if isinstance(value, str) and re.fullmatch("[0-9a-f]{12}", value):
        return value
    raise wrong(
        f"'{value}' is no fingerprint of a text",
        "12 digits and letters a to f",
        "'hatchleaf check --unreviewed' prints it",
    )


class ReviewForm(Form):
    """A review in one language; a role, never a person's name."""

    role: Reviewer
    date: Day
    against: Text
    text: Annotated[str, PlainValidator(_wording)]


class Head(Form):
    """The whole front matter."""

    id: Id
    topic: Text
    order: Count
    also: dict[str, Count] = Field(default_factory=dict)
    when: dict[str, Any] = Field(default_factory=dict)
    each: Text | None = None
    always: YesNo = False
    facts: tuple[Text, ...] = ()
    needs: tuple[Text, ...] = ()
    normal: NormalForm | None = None
    tiles: tuple[TileForm, ...] = ()
    sticker: StickerForm | None = None
    show: tuple[dict[str, Text], ...] = ()
    do: dict[str, tuple[StepForm, ...]] = Field(default_factory=dict)
    every: tuple[CareForm, ...] = ()
    ask: tuple[Text, ...] = ()
    words: tuple[Text, ...] = ()
    sources: tuple[Text, ...] = ()
    reviewed: dict[str, ReviewForm] = Field(default_factory=dict)
    mandated: YesNo = False
    replaces: Text | None = None
