"""
Links between topics: symbolic in every fragment, resolved by each output.

The check is ours, since site generators miss links in raw HTML and anchors.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Final

from hatchleaf.manual.model import Page, Pages

_LINK: Final = re.compile(r'href="topic:(\d{3})(?:#([^"]*))?"')
_HREF: Final = re.compile(r'(?:href|src|srcset|data)="([^"]*)"')
_ID: Final = re.compile(r'\sid="([^"]*)"')
_ALLOWED: Final = re.compile(r"topic:\d{3}(#[^\s]+)?|#[^\s]+|tel:[\d+-]+")


def resolve(fragment: str, target: Callable[[int, str], str]) -> str:
    """Return *fragment* with each symbolic link as *target* (number, id) gives it."""
    return _LINK.sub(
        lambda found: f'href="{target(int(found[1]), found[2] or "")}"', fragment
    )


def fragments_of(page: Page) -> Iterator[str]:
    """Yield every piece of HTML of *page* that an output may print."""
    yield page.body
    yield page.normal
    yield page.plan
    yield page.normal_drawing
    yield from (f'<a href="{tile.link}"></a>' for tile in page.tiles if tile.link)


def ids_in(fragment: str) -> list[str]:
    """Return the ids in *fragment*, in order."""
    return _ID.findall(fragment)


def faults_in(pages: Pages) -> Iterable[tuple[int, str]]:
    """
    Yield ``(page number, what is wrong)`` for broken links and repeated ids.

    A link leads to a topic of this unit and to an id on its page; nothing is loaded
    from elsewhere; an id stands once in the whole manual.
    """
    where: dict[str, int] = {}
    for page in pages.pages:
        for fragment in fragments_of(page):
            for name in ids_in(fragment):
                if name in where:
                    yield page.number, f"id '{name}' stands twice"
                where[name] = page.number
    for page in pages.pages:
        for fragment in fragments_of(page):
            for target in _HREF.findall(fragment):
                fault = _fault(target, page.number, where, pages)
                if fault:
                    yield page.number, fault


def _fault(target: str, number: int, where: dict[str, int], pages: Pages) -> str:
    if not _ALLOWED.fullmatch(target):
        return f"'{target}' is no link of this guide"
    link, _, anchor = target.partition("#")
    if link.startswith("tel:"):
        return ""
    leads_to = int(link.removeprefix("topic:")) if link else number
    if leads_to not in pages.by_number:
        return f"'{target}' leads to no page of this unit"
    if anchor and where.get(anchor) != leads_to:
        return f"'{target}' leads to no heading there"
    return ""
