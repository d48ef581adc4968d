"""A unit is read about in the words, standards and numbers of its own market."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Final

import pytest
import yaml

from hatchleaf.blocks.markets import called, for_market
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made
from hatchleaf.manual.model import Page

LISTS: Final = Path(__file__).with_name("markets.yml")
OTHERS: Final = {
    "us": "elsewhere",
    "ca": "elsewhere",
    "uk": "north_america",
    "eu": "north_america",
    "au": "north_america",
}
"""Market -> whose words are not its own."""
SHARED_UNITS: Final = frozenset({"numbers"})
"""Pages that print each number in both systems of units; the words are held all the same."""


@cache
def patterns(group: str) -> Mapping[str, re.Pattern[str]]:
    """Return what finds the words of *group*, by the kind of word."""
    lists = yaml.safe_load(LISTS.read_text("utf-8"))[group]
    return {
        kind: re.compile(
            rf"(?<![\w,.-])(?:{'|'.join(map(str, words))})(?![\w-])",
            # A standard's letters are a standard only as capitals.
            0 if kind == "standards" else re.IGNORECASE,
        )
        for kind, words in lists.items()
    }


def texts_of(page: Page) -> Iterator[str]:
    """Yield what a reader sees of *page*; the words for search alone are not seen."""
    yield page.title
    yield page.where
    text = page.text
    for tile in page.tiles:
        # Tiles print both systems of units, the market's own first.
        yield tile.says
        text = text.replace(tile.note, " ")
    yield text


def _without_titles(text: str, library: Library) -> str:
    """Return *text* without the titles of sources, which are what they are."""
    for source in library.sources.values():
        text = text.replace(source["title"], " ")
    return text


def foreign(made: Made, market: str) -> list[tuple[str, str, str]]:
    """Return ``(page, word, what stands there)`` for words of the other markets."""
    found = []
    for page in made.pages.pages:
        for kind, pattern in patterns(OTHERS[market]).items():
            if kind == "numbers" and page.id in SHARED_UNITS:
                continue
            for whole in texts_of(page):
                text = _without_titles(whole, made.manual.library)
                for match in pattern.finditer(text):
                    around = text[max(0, match.start() - 50) : match.end() + 30]
                    found.append((page.id, match[0], around.replace("\n", " ")))
    return found


def test_no_sample_speaks_another_markets_words(guides: Mapping[str, Made]) -> None:
    """A number to call, a voltage or a rule of another country can hurt."""
    found = {
        name: words
        for name, made in guides.items()
        if (words := foreign(made, made.manual.spec.body.market))
    }
    assert found == {}


@pytest.mark.parametrize(
    ("group", "kind", "text"),
    [
        ("north_america", "spelling", "the tires of"),
        ("north_america", "numbers", "fill 12.5 gal of"),
        ("north_america", "numbers", "at 120 V now"),
        ("north_america", "standards", "the GFCI there"),
        ("north_america", "standards", "call 911."),
        ("north_america", "words", "Curb side, low"),
        ("elsewhere", "spelling", "the Tyre is"),
        ("elsewhere", "numbers", "at 230 V"),
        ("elsewhere", "standards", "the RCD is"),
        ("elsewhere", "words", "offside, low"),
    ],
)
def test_a_word_of_another_market_is_found(group: str, kind: str, text: str) -> None:
    """A list that finds nothing would hold nothing."""
    assert patterns(group)[kind].search(text)


@pytest.mark.parametrize("text", ["entires", "a dot of", "1,120 V", "1911", "the post"])
def test_a_word_inside_another_is_none(text: str) -> None:
    """Only whole words count, and letters of a standard only in capitals."""
    assert not any(
        pattern.search(text) for pattern in patterns("north_america").values()
    )


def test_a_market_takes_its_neighbors_words() -> None:
    """Canada reads the words of the States, Europe and Australia British ones."""
    names = {"us": "tire", "uk": "tyre"}
    assert [called(names, market) for market in ("us", "ca", "uk", "eu", "au")] == [
        "tire",
        "tire",
        "tyre",
        "tyre",
        "tyre",
    ]
    assert called({"uk": "x", "au": "y"}, "au") == "y"
    assert called({"uk": "x"}, "us", "z") == "z"


def test_titles_and_phrases_follow_the_market(library: Library) -> None:
    """A page is called what its reader calls the thing."""
    titles = {m: for_market(library, m).topics["tires"].title for m in ("us", "uk")}
    assert titles == {"us": "Tires", "uk": "Tyres"}
    assert for_market(library, "us").phrases["gray"].startswith("gray")
    assert for_market(library, "eu").phrases["gray"].startswith("grey")


def test_every_word_has_both_ways(library: Library) -> None:
    """One way alone needs no table."""
    assert [
        w for w, names in library.words.items() if not {"us", "uk"} <= set(names)
    ] == []
    assert [
        w for w, names in library.words.items() if len(set(names.values())) < 2
    ] == []


def test_no_word_of_the_table_is_idle(library: Library) -> None:
    """What no text calls for is forgotten, and then wrong."""
    texts = "\n".join(
        path.read_text("utf-8")
        for path in (Path(__file__).parents[2] / "content_blocks").rglob("*")
        if path.suffix in (".md", ".yml")
    )
    said = {
        name if name in library.words else name[:1].lower() + name[1:]
        for name in re.findall(r"""word\(\s*["']+([^"']+)["']+\s*\)""", texts)
    }
    assert sorted(set(library.words) - said) == []
