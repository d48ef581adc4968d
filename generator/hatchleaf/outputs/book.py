"""
The guide on paper: one document with cover, contents, topics, index and codes.

It shows the same pages as the website, so it is as public as they are.  How it is set
as PDF is known to `book_paper` alone.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any, Final

from markupsafe import Markup

from hatchleaf.drawings.unit_map import PAPER, unit_map
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.ledger import State
from hatchleaf.manual.assemble import Manual
from hatchleaf.manual.hatches import hatches_of
from hatchleaf.manual.links import resolve
from hatchleaf.manual.model import Page, Pages, day_in_words
from hatchleaf.outputs import qr
from hatchleaf.outputs.book_drawings import (
    body_on_paper,
    map_on_paper,
    normal_on_paper,
    plan_on_paper,
)
from hatchleaf.outputs.book_index import index_of
from hatchleaf.outputs.fragments import (
    DEALERS_OWN,
    SYSTEMS,
    copy_target,
    environment,
    resolved,
)
from hatchleaf.outputs.palette import OUR_BRAND, legible
from hatchleaf.outputs.photos import shown
from hatchleaf.outputs.sticker_sheets import PRESETS, Preset, module_um
from hatchleaf.outputs.stickers import StickerSet

LETTER: Final = "letter"
A4: Final = "a4"
PAPERS: Final = {LETTER: "letter-3x7", A4: "a4-3x8"}
"""The papers, each with the sheet whose labels the page of codes repeats."""

FIRST: Final = "Start here, step by step"
"""What stands before the systems: emergencies, the journeys, dates and numbers."""

_LETTER_MARKETS: Final = ("us", "ca")
_WHITE: Final = "#ffffff"


@dataclass(frozen=True)
class Code:
    """A label of the page of codes."""

    number: str
    title: str
    where: str
    svg: Markup


def paper_of(market: str) -> str:
    """Return the paper that printers of a market hold."""
    return LETTER if market in _LETTER_MARKETS else A4


def book(
    manual: Manual,
    pages: Pages,
    wanted: StickerSet,
    state: State,
    *,
    paper: str,
    brand: str = "",
) -> str:
    """
    Return the whole guide as one HTML document for paper.

    Args:
        manual: The assembled guide, for the map.
        pages: All pages of the unit, links still symbolic.
        wanted: The unit's stickers.
        state: Which of them were printed, so that each code is the same again.
        paper: One of `PAPERS`.
        brand: The dealership's colour as ``#rrggbb``; ours when empty.
    """
    color = legible(brand or OUR_BRAND, _WHITE)
    label = _label(PRESETS[PAPERS[paper]], wanted.host)
    sheets = [_on_paper(page, pages, color) for page in pages.pages]
    drawn = unit_map(
        manual.spec, hatches_of(manual), title="Map of the unit", sheet=PAPER
    )
    return (
        environment()
        .get_template("book.html")
        .render(
            pages=pages,
            unit=pages.unit,
            host=wanted.host,
            delivered=day_in_words(pages.unit.delivered),
            map=map_on_paper(resolve(drawn, copy_target), color),
            parts=list(_parts(sheets, pages.unit.market)),
            photos={p.number: shown(p, pages, copy=True) for p in pages.pages},
            index=index_of(pages),
            home=_code(wanted, state, 0) if label else None,
            codes=list(_codes(wanted, state)) if label else [],
            label=label,
            paper=paper,
            brand=color,
        )
    )


def _on_paper(page: Page, pages: Pages, color: str) -> Page:
    made = resolved(page, copy_target)
    return replace(
        made,
        title=pages.unit.title if page.number == 0 else page.title,
        plan="" if page.number == 0 else plan_on_paper(made.plan, color),
        normal_drawing=normal_on_paper(made.normal_drawing, color),
        body=body_on_paper(made.body, color),
    )


def _parts(pages: Iterable[Page], market: str) -> Iterable[tuple[str, list[Page]]]:
    """Yield the topics by the first digit of their numbers, as on the stickers."""
    names = (FIRST, *(in_words_of(market, name) for name in SYSTEMS.values()))
    for first, group in groupby(pages, key=lambda page: page.number // 100):
        yield names[first] if first < len(names) else DEALERS_OWN, list(group)


def _codes(wanted: StickerSet, state: State) -> Iterable[Code]:
    """Yield one label for each topic that has stickers, with all of its places."""
    by_topic: dict[int, list[str]] = {}
    titles: dict[int, str] = {}
    for label in wanted.labels:
        by_topic.setdefault(label.topic, []).append(label.place)
        titles[label.topic] = label.title
    for topic, places in sorted(by_topic.items()):
        where = ", ".join(dict.fromkeys(places))
        yield Code(f"{topic:03d}", titles[topic], where, _code(wanted, state, topic))


def _code(wanted: StickerSet, state: State, topic: int) -> Markup:
    """Return a topic's code: the one on its stickers, if they were printed."""
    before = state.newest.get(qr.payload(wanted.host, wanted.code, topic))
    symbol = qr.symbol(
        wanted.host,
        wanted.code,
        topic,
        version=before.version if before else None,
        mask=before.mask if before else None,
    )
    return Markup(qr.drawn(symbol))  # noqa: S704  # digits and our own address


def _label(preset: Preset, host: str) -> dict[str, Any] | None:
    """Return the sizes of a sticker in millimeters; None for a host too long for it."""
    version = qr.version_for(host)
    module = module_um(preset, version) if version else None
    if version is None or module is None:
        return None
    width, height = preset.label
    return {
        "width": width / 1000,
        "height": height / 1000,
        "code": module * qr.side_of(version) / 1000,
        "columns": preset.columns,
        "rows": preset.rows,
    }
