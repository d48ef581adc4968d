"""
Photos in the outputs: files beside the website's pages, data within the phone copy.

The names follow from the bytes, so a browser never shows an old photo for a new one.
"""

from __future__ import annotations

import base64
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.manual.model import Page, Pages

FOLDER: Final = "photos"
"""Beside the pages of one unit: ``site/<code>/photos/``."""


@dataclass(frozen=True)
class Shown:
    """A photo as a template writes it; width and height are in pixels."""

    address: str
    width: int
    height: int
    caption: str
    alt: str


def shown(page: Page, pages: Pages, *, copy: bool) -> tuple[Shown, ...]:
    """
    Return the photos of a page.

    Args:
        page: The page.

        pages: All pages of the unit, with the photos' bytes.

        copy: True in the phone copy, which has nothing beside it.
    """
    found = []
    for photo in page.photos:
        image = photo.copy if copy else photo.site
        address = (
            f"data:image/jpeg;base64,{_text(pages.pictures[image.name])}"
            if copy
            else f"../{FOLDER}/{image.name}"
        )
        found.append(
            Shown(address, image.width, image.height, photo.caption, photo.alt)
        )
    return tuple(found)


def photos_of_site(pages: Pages) -> Mapping[str, bytes]:
    """Return the photos that the website's pages show, by path below the unit's."""
    names = sorted({photo.site.name for page in pages.pages for photo in page.photos})
    return {f"{FOLDER}/{name}": pages.pictures[name] for name in names}


def _text(data: bytes) -> str:
    return base64.b64encode(data).decode("ascii")
