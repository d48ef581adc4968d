"""
What the page templates are given, the same for the website and the phone copy.

The website's `main.html` and the phone copy's `phone.html` share the macros of
`page.html`; both take exactly the names that `context` returns.  In the website
MkDocs adds its own (`config`, `nav`, `page`), of which our templates use none:
every path of ours is written from `root` and `assets`.

Names in the templates:

``p``
    The `Page` with its links resolved, its HTML fields marked as such.
``pages``
    All pages of the unit; ``pages.unit`` says who the guide is for and from.
``root``
    Relative path to the folder of all units, such as ``../../``; empty in the
    phone copy.
``assets``
    Relative path to the shared folder, such as ``../../a/<hash>/``; empty in the
    phone copy.
``href(number, id="")``
    Relative link to a topic.
``before``, ``after``
    The neighbours for the bottom bar, or ``None``.
``groups``
    The contents by system: pairs of a heading and its pages.
``journeys``
    The pages that are done from top to bottom.
``delivered``
    The day of the delivery in words.
``copy``
    True in the phone copy.
``copy_name``
    The file name that the saved phone copy gets.
``numbers``
    Every number of this unit in one line, for the number box.
``photos``
    The page's photos with their addresses.

Templates of other environments need no more than autoescape or none: every text is
escaped where it is written, every HTML field is `Markup`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Final, Protocol

import jinja2
from markupsafe import Markup

from hatchleaf.facts.market_words import in_words_of
from hatchleaf.manual.links import resolve
from hatchleaf.manual.model import Page, Pages, Tile, day_in_words
from hatchleaf.outputs.photos import shown

Target = Callable[[int, str], str]
"""Gives the address of a topic and of an id in it (empty for its top)."""

SYSTEMS: Final = {
    "lp": "LP gas",
    "water": "Fresh water",
    "waste": "Waste water",
    "electrical": "Electrical",
    "awning": "Awning and outside",
    "doors": "Doors, step, windows",
    "living": "Inside",
    "gear": "Wheels, hitch, leveling",
}
"""The systems in the order of the contents, by the first digit of their numbers."""

DEALERS_OWN: Final = "From your dealer"
HOME: Final = 0
EMERGENCIES: Final = 1


class Environment(Protocol):
    """As much of a Jinja environment as we need; MkDocs brings its own."""

    def get_template(self, name: str) -> jinja2.Template:
        """Return the template of that name."""


def theme_text(name: str) -> str:
    """Return a file of the theme, such as ``assets/reader.js``."""
    return (files("hatchleaf") / "theme" / name).read_text(encoding="utf-8")


@cache
def environment() -> jinja2.Environment:
    """Return our own environment over the theme, for outputs outside of MkDocs."""
    return jinja2.Environment(
        loader=jinja2.FunctionLoader(theme_text),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
    )


def website_target(current: int) -> Target:
    """
    Return the links of one website page.

    Args:
        current: Number of the page that the links stand on.
    """

    def target(number: int, anchor: str = "") -> str:
        ending = f"#{anchor}" if anchor else ""
        if number == current:
            return ending or "./"
        return f"../{number:03d}/{ending}"

    return target


def copy_target(number: int, anchor: str = "") -> str:
    """Return a link within the phone copy, where all ids are in one file."""
    return f"#{anchor}" if anchor else f"#t-{number:03d}"


def resolved(page: Page, target: Target) -> Page:
    """
    Return the page with its symbolic links turned into addresses.

    Args:
        page: A page as the manual made it.

        target: The addresses of this output.

    Returns:
        The same page; its HTML fields are `Markup`, so that a template under
        autoescape leaves them alone.
    """

    def html(text: str) -> Markup:
        # Made by our own converter from escaped text; the only HTML let through.
        return Markup(resolve(text, target))  # noqa: S704

    return replace(
        page,
        plan=html(page.plan),
        normal=html(page.normal),
        normal_drawing=html(page.normal_drawing),
        body=html(page.body),
        tiles=tuple(_tile(tile, target) for tile in page.tiles),
    )


def neighbours(page: Page, pages: Pages) -> tuple[Page | None, Page | None]:
    """
    Return the pages before and after on the bottom bar.

    Args:
        page: The page that the bar stands on.

        pages: All pages of the unit.

    Returns:
        For a hatch, the hatches before and after it on the way round the unit, which
        is a ring.  For home, nothing and the first hatch.  For any other page, its
        neighbours by number among such pages; emergencies are on every bar anyway.
    """
    walk = pages.round
    if page.number in walk and len(walk) > 1:
        at = walk.index(page.number)
        after = walk[(at + 1) % len(walk)]
        return pages.by_number[walk[at - 1]], pages.by_number[after]
    if page.number == HOME:
        return None, pages.by_number[walk[0]] if walk else None
    kept = {HOME, page.number}
    others = [
        each
        for each in pages.pages
        if each.number in kept
        or (each.number != EMERGENCIES and each.number not in walk)
    ]
    at = [each.number for each in others].index(page.number)
    return (
        others[at - 1] if at > 0 else None,
        others[at + 1] if at + 1 < len(others) else None,
    )


def groups(pages: Pages) -> tuple[tuple[str, tuple[Page, ...]], ...]:
    """Return the contents: topics under their systems' names, empty ones left out."""
    named = [
        (
            in_words_of(pages.unit.market, title),
            tuple(each for each in pages.pages if each.system == system),
        )
        for system, title in SYSTEMS.items()
    ]
    known = {*SYSTEMS, "home", "journey"}
    own = tuple(each for each in pages.pages if each.system not in known)
    return tuple(pair for pair in (*named, (DEALERS_OWN, own)) if pair[1])


def copy_name(pages: Pages) -> str:
    """Return the file name of the saved phone copy: letters, digits, hyphens."""
    slug = re.sub(r"[^a-z0-9]+", "-", pages.unit.name.lower()).strip("-")
    return f"guide-{slug or pages.unit.code}.html"


def context(
    page: Page, pages: Pages, *, root: str, assets: str, target: Target, copy: bool
) -> dict[str, object]:
    """
    Return all that a page's template is given.

    Args:
        page: The page, links still symbolic.

        pages: All pages of the unit.

        root: Relative path from the page to the folder of all units.

        assets: Relative path from the page to the shared files, ending in ``/``.

        target: The addresses of this output.

        copy: True for the phone copy.

    Returns:
        The names described at the top of this module.
    """
    before, after = neighbours(page, pages)
    return {
        "p": resolved(page, target),
        "pages": pages,
        "root": root,
        "assets": assets,
        "href": target,
        "before": before,
        "after": after,
        "groups": groups(pages),
        "journeys": tuple(each for each in pages.pages if each.system == "journey"),
        "delivered": day_in_words(pages.unit.delivered),
        "copy": copy,
        "copy_name": copy_name(pages),
        "numbers": " ".join(str(each.number) for each in pages.pages),
        "photos": shown(page, pages, copy=copy),
    }


def website_context(
    page: Page, pages: Pages, *, root: str, assets: str
) -> dict[str, object]:
    """Return `context` for a page at ``<code>/<number>/index.html``."""
    target = website_target(page.number)
    return context(page, pages, root=root, assets=assets, target=target, copy=False)


def _tile(tile: Tile, target: Target) -> Tile:
    """Return the tile with its link resolved; a tile without one keeps none."""
    if not tile.link:
        return tile
    number, _, anchor = tile.link.removeprefix("topic:").partition("#")
    return replace(tile, link=target(int(number), anchor))
