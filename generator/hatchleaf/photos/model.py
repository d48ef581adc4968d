"""Photos as values: the files as they came, and the pictures made from them."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, MutableMapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.problems import Problem

LARGEST_FILE: Final = 25_000_000
"""Bytes; a 50-megapixel photo takes about half of it."""
_DIGITS: Final = 20


@dataclass(frozen=True)
class Sources:
    """What the edge read for one unit."""

    files: Mapping[str, bytes]
    """The bytes of each photo's file, by the photo's id."""
    kept: MutableMapping[str, bytes]
    """Pictures made before, by key; new ones are added.  It changes no byte."""
    problems: tuple[Problem, ...] = ()
    """What was wrong with files, to be told with all else that is wrong."""


@dataclass(frozen=True)
class Picture:
    """A JPEG that holds pixels and nothing else; width and height are in pixels."""

    data: bytes
    width: int
    height: int

    @property
    def name(self) -> str:
        """Its file's name, which follows from its bytes."""
        return f"{hashlib.sha256(self.data).hexdigest()[:_DIGITS]}.jpg"


@dataclass(frozen=True)
class Prepared:
    """One photo, ready for both outputs."""

    site: Picture
    copy: Picture
    """Smaller: the phone copy carries it within itself."""


@dataclass(frozen=True)
class Fault:
    """Why a photo, or all of them together, cannot be published."""

    id: str
    """The photo's id; empty where it is about all of them."""
    what: str
    allowed: str = ""
    hint: str = ""


class PhotosRefusedError(Exception):
    """Some photos cannot be published; all faults at once."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(f"{fault.id}: {fault.what}" for fault in faults))
        self.faults = faults
