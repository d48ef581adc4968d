"""The index of a printed guide: what owners say for a thing, and where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from hatchleaf.facts.market_words import in_words_of
from hatchleaf.manual.model import Pages

_DIGITS: Final = "0-9"


@dataclass(frozen=True)
class Entry:
    """What owners say, and the topics that speak of it, by number."""

    words: str
    topics: tuple[int, ...]


def index_of(pages: Pages) -> tuple[tuple[str, tuple[Entry, ...]], ...]:
    """
    Return the index: a heading for each first letter, and its entries in order.

    Args:
        pages: All pages of the unit.
    """
    found: dict[str, tuple[str, set[int]]] = {}
    for page in pages.pages:
        for said in page.ask:
            words = in_words_of(pages.unit.market, said)
            found.setdefault(_sorted_as(words), (words, set()))[1].add(page.number)
    entries = (
        Entry(words, tuple(sorted(topics)))
        for _, (words, topics) in sorted(found.items())
    )
    return tuple(_by_letter(entries))


def _by_letter(entries: Iterable[Entry]) -> Iterable[tuple[str, tuple[Entry, ...]]]:
    for letter, group in groupby(entries, key=_heading):
        yield letter, tuple(group)


def _heading(entry: Entry) -> str:
    first = _sorted_as(entry.words)[:1].upper()
    return _DIGITS if first.isdigit() else first


def _sorted_as(words: str) -> str:
    """Return what a reader goes by: letters and digits alone."""
    plain = words.casefold().replace("'", "")
    return re.sub(r"[^a-z0-9]+", " ", plain).strip()
