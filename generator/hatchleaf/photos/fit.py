"""
Photos made to fit: as good as the budget lets them be, all of a unit alike.

A page is opened with one bar of signal, and the phone copy is sent by message, so
both have a budget.  While a unit's photos are beyond it they are all made smaller, down
to where a lever can just be told from another; then there are too many.
"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Mapping, MutableMapping
from dataclasses import dataclass
from functools import cache
from itertools import accumulate
from typing import Final

import PIL
from PIL import Image, features

from hatchleaf.photos.decode import UnreadableError, decoded, resized
from hatchleaf.photos.model import Fault, PhotosRefusedError, Picture, Prepared

RECIPE: Final = "1"
"""To be changed with anything in this package that changes a pixel."""


@dataclass(frozen=True)
class Step:
    """One quality: pixels of the longer side, and the encoder's setting."""

    longest: int
    quality: int


@dataclass(frozen=True)
class Budget:
    """What the photos of one output may take, in bytes, and how they step down."""

    output: str
    each: int
    """At the last step no picture of any content is larger."""
    together: int
    steps: tuple[Step, ...]


SITE: Final = Budget(
    "the website",
    each=200_000,
    together=3_000_000,
    steps=(
        Step(1200, 76),
        Step(1200, 66),
        Step(1000, 64),
        Step(1000, 56),
        Step(800, 54),
        Step(640, 45),
    ),
)
COPY: Final = Budget(
    "the phone copy",
    each=75_000,
    # Six hundred thousand once they are written as text.
    together=450_000,
    steps=(
        Step(720, 68),
        Step(640, 64),
        Step(640, 56),
        Step(560, 52),
        Step(480, 46),
        Step(400, 40),
    ),
)


def fitted(
    files: Mapping[str, bytes], kept: MutableMapping[str, bytes]
) -> Mapping[str, Prepared]:
    """
    Return the photos of one unit, ready to be published.

    Args:
        files: The bytes of each photo's file, by its id.
        kept: Pictures made before, by key; new ones are added.

    Raises:
        PhotosRefusedError: Files that cannot be used; or too many of them.
    """
    photos = {name: _Photo(data, kept) for name, data in files.items()}
    faults = tuple(_faults(photos))
    if faults:
        raise PhotosRefusedError(faults)
    site, copy = _within(photos, SITE), _within(photos, COPY)
    return {name: Prepared(site[name], copy[name]) for name in photos}


def _faults(photos: Mapping[str, _Photo]) -> list[Fault]:
    found = []
    for name, photo in photos.items():
        try:
            photo.at(SITE.steps[0])
        except UnreadableError as error:
            found.append(Fault(name, error.what, error.allowed, error.hint))
    return found


def _within(photos: Mapping[str, _Photo], budget: Budget) -> Mapping[str, Picture]:
    made: dict[str, Picture] = {}
    for index in range(len(budget.steps)):
        made = {name: photo.best(budget, index) for name, photo in photos.items()}
        if _total(made) <= budget.together:
            return made
    sizes = accumulate(len(picture.data) for picture in made.values())
    fit = sum(size <= budget.together for size in sizes)
    what = f"the first {fit} of these {len(made)} photos fit into {budget.output}"
    allowed = f"{budget.together / 1e6:g} MB at their least quality"
    hint = f"take out {len(made) - fit}; one photo of a whole panel may show as much"
    raise PhotosRefusedError((Fault("", what, allowed, hint),))


def _total(made: Mapping[str, Picture]) -> int:
    return sum(len(picture.data) for picture in made.values())


class _Photo:
    """One photo at any step; decoded once, and only when nothing was kept."""

    def __init__(self, data: bytes, kept: MutableMapping[str, bytes]) -> None:
        self._data = data
        self._kept = kept
        self._digest = hashlib.sha256(data).hexdigest()
        self._pixels: Image.Image | None = None

    def best(self, budget: Budget, index: int) -> Picture:
        """Return it at step *index*, or the first one below that is small enough."""
        made = [self.at(budget.steps[index])]
        for step in budget.steps[index + 1 :]:
            if len(made[-1].data) <= budget.each:
                break
            made.append(self.at(step))
        return made[-1]

    def at(self, step: Step) -> Picture:
        """Return it at one step."""
        key = f"{_maker()}-{self._digest}-{step.longest}-{step.quality}"
        data = self._kept.get(key)
        if data is None:
            data = self._kept[key] = self._encoded(step)
        width, height = Image.open(io.BytesIO(data)).size
        return Picture(data, width, height)

    def _encoded(self, step: Step) -> bytes:
        if self._pixels is None:
            self._pixels = decoded(self._data, SITE.steps[0].longest)
        out = io.BytesIO()
        resized(self._pixels, step.longest).save(
            out,
            "JPEG",
            quality=step.quality,
            optimize=True,
            progressive=True,
            subsampling="4:2:0",
        )
        return out.getvalue()


@cache
def _maker() -> str:
    """Return what else the bytes depend on: our recipe and the libraries."""
    parts = [RECIPE, PIL.__version__]
    parts += [str(features.version(name)) for name in ("libjpeg_turbo", "littlecms2")]
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()[:12]
