"""Photos of a unit, by topic: which file, and what to say of it."""

from __future__ import annotations

import re
from typing import Annotated, Final, TypeAlias

from pydantic import Field, PlainValidator, Tag

from hatchleaf.spec.model.fields import (
    BY_PRESENCE,
    Form,
    Id,
    NotFitted,
    Part,
    Text,
    wrong,
)
from hatchleaf.spec.told import quoted

_ALLOWED: Final = "a JPEG, PNG or WebP file below unit_specs/, like photos/valves.jpg"
_PATH: Final = re.compile(r"(?:[\w][\w .()-]*/){0,5}[\w][\w .()-]*")
_ENDING: Final = re.compile(r"\.(?:jpe?g|png|webp)", re.IGNORECASE)
_LONGEST: Final = 200


def _file(value: object) -> str:
    if not isinstance(value, str):
        raise wrong(f"{quoted(value)} is not a file's name", _ALLOWED)
    ending = value[value.rfind(".") :] if "." in value else ""
    if ending.lower() in (".heic", ".heif", ".avif"):
        hint = "export it as JPEG, or set the camera to JPEG"
        raise wrong(f"{quoted(value)} cannot be shown by many phones", _ALLOWED, hint)
    if ".." in value or value.startswith(("/", "~")) or ":" in value:
        raise wrong(f"{quoted(value)} leads out of unit_specs/", _ALLOWED)
    if "\\" in value:
        raise wrong(f"{quoted(value)} has backslashes", _ALLOWED, "write /")
    if len(value) > _LONGEST or not _PATH.fullmatch(value):
        raise wrong(f"{quoted(value)} is not a file's name", _ALLOWED)
    if not _ENDING.fullmatch(ending):
        raise wrong(f"{quoted(value)} is no photo by its ending", _ALLOWED)
    return value


PhotoFile: TypeAlias = Annotated[str, PlainValidator(_file), Form("text")]
"""Counted from ``unit_specs/``, in a unit's file and in its model's alike."""


class Photo(Part):
    """
    A photo on the page of one topic.

    It is public: the caption says what an owner sees, and nothing on it or in it
    helps a thief.  `alt` is for whom cannot see it; the caption when left out.
    """

    id: Id
    topic: Id
    file: PhotoFile
    caption: Text
    alt: Text = ""


Photos: TypeAlias = Annotated[
    Annotated[tuple[Photo, ...], Tag("<list>"), Field(min_length=1)] | NotFitted,
    BY_PRESENCE,
]
"""A list, or ``none``, which is meant where a file says nothing of photos."""
