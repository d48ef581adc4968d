"""
The icon of a guide on a home screen: the stamped plate, on the dealership's colour.

Some phones cut an icon to a shape of their own.  For these it has no rounded corners
and all that matters lies within the middle, a circle of four fifths of its width
(W3C, Web Application Manifest, "maskable" icons).
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from PIL import Image

FOLDER: Final = "icons"
"""Beside the pages of one unit."""

_DRAWN: Final = 1024
"""Pixels: drawn at this size, then made smaller, so that edges are smooth."""


@dataclass(frozen=True)
class Icon:
    """A size and a shape."""

    size: int
    """Pixels, both ways."""
    bleeds: bool
    """True where the phone cuts it to shape."""


ICONS: Final[Mapping[str, Icon]] = {
    f"{FOLDER}/192.png": Icon(192, bleeds=False),
    f"{FOLDER}/512.png": Icon(512, bleeds=False),
    f"{FOLDER}/512-cut.png": Icon(512, bleeds=True),
    f"{FOLDER}/180-cut.png": Icon(180, bleeds=True),
}
"""By path below the unit's folder."""
TOUCH: Final = f"{FOLDER}/180-cut.png"
"""The one for phones that read no manifest."""


@cache
def icons(ground: str, plate: str, paper: str) -> Mapping[str, bytes]:
    """
    Return all icons as PNG, by path below the unit's folder.

    Args:
        ground: Colour behind the plate, ``#rrggbb``.

        plate: Colour of the plate.

        paper: Colour of what is stamped on it.
    """
    drawn = {
        bleeds: _drawn(ground, plate, paper, bleeds=bleeds) for bleeds in (True, False)
    }
    return {path: _png(drawn[icon.bleeds], icon) for path, icon in ICONS.items()}


def _drawn(ground: str, plate: str, paper: str, *, bleeds: bool) -> Image.Image:
    # Here, since it is slow to import and most commands draw none.
    from PIL import Image, ImageDraw  # noqa: PLC0415

    image = Image.new("RGBA", (_DRAWN, _DRAWN), (0, 0, 0, 0))
    draw = ImageDraw.Draw(image)

    def box(wide: float, high: float, round_: float, color: str, at: float = 0) -> None:
        """Draw a rounded box about the middle; all in shares of the icon's width."""
        left, top = (0.5 - wide / 2) * _DRAWN, (0.5 + at - high / 2) * _DRAWN
        place = (left, top, left + wide * _DRAWN, top + high * _DRAWN)
        draw.rounded_rectangle(place, round_ * _DRAWN, color)

    def dot(across: float, size: float, color: str) -> None:
        middle, half = (0.5 + across) * _DRAWN, size / 2 * _DRAWN
        up, down = 0.5 * _DRAWN - half, 0.5 * _DRAWN + half
        draw.ellipse((middle - half, up, middle + half, down), color)

    box(1, 1, 0 if bleeds else 0.18, ground)
    # The plate's corners stay within the circle: 0.37 from the middle at most.
    scale = 0.82 if bleeds else 1.0
    box(0.80 * scale, 0.50 * scale, 0.07 * scale, plate)
    box(0.74 * scale, 0.44 * scale, 0.05 * scale, paper)
    box(0.71 * scale, 0.41 * scale, 0.04 * scale, plate)
    for across in (-0.29, 0.29):
        dot(across * scale, 0.06 * scale, paper)
    for at in (-0.11, 0.0, 0.11):
        box(0.38 * scale, 0.055 * scale, 0.0275 * scale, paper, at * scale)
    return image


def _png(drawn: Image.Image, icon: Icon) -> bytes:
    from PIL import Image  # noqa: PLC0415

    small = drawn.resize((icon.size, icon.size), Image.Resampling.BOX)
    if icon.bleeds:
        small = small.convert("RGB")
    out = io.BytesIO()
    small.save(out, "PNG")
    return out.getvalue()
