"""What things are called in each market: titles, plain words, and words of texts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final, Literal, TypeAlias

from hatchleaf.blocks.model import Library

Market: TypeAlias = Literal["us", "ca", "uk", "eu", "au"]

_THEN: Final[Mapping[str, tuple[str, ...]]] = {
    "us": ("us",),
    "ca": ("ca", "us"),
    "uk": ("uk", "us"),
    "eu": ("eu", "uk", "us"),
    "au": ("au", "uk", "us"),
}
"""Market -> whose words it takes, its own first: English is written in two ways."""


def called(names: Mapping[str, str], market: str, otherwise: str = "") -> str:
    """
    Return what a thing is called in *market*.

    Args:
        names: Market -> name; one of the United Kingdom serves Europe and Australia
            too, one of the United States serves all, unless they have their own.
        market: Where the unit is used.
        otherwise: The name where *names* has none.
    """
    return next((names[one] for one in _THEN[market] if one in names), otherwise)


def for_market(library: Library, market: str) -> Library:
    """Return *library* with the titles and the plain words of *market*."""
    own_words = {
        key: called(names, market, library.phrases.get(key, key))
        for key, names in library.phrases_by_market.items()
    }
    return replace(
        library,
        topics={
            key: replace(topic, title=called(dict(topic.titles), market, topic.title))
            for key, topic in library.topics.items()
        },
        journeys={
            key: replace(
                journey,
                phases=tuple(
                    replace(one, title=called(dict(one.titles), market, one.title))
                    for one in journey.phases
                ),
            )
            for key, journey in library.journeys.items()
        },
        phrases={**library.phrases, **own_words},
    )
