"""The page of numbers: every fact, in both systems of units, with what ends it."""

from __future__ import annotations

import html
import re
from collections.abc import Mapping

import pytest

from facts.samples import NAMES
from hatchleaf.manual.make import Made
from hatchleaf.manual.numbers import numbers_page


def _entries(made: Made) -> dict[str, str]:
    """Return the text of each entry by the id of its line."""
    page, _ = numbers_page(made.facts, made.manual.library)
    entries = {}
    for group in re.findall(r'<ul class="working">.*?</p>', page, re.DOTALL):
        source = group[group.index('<p class="source">') :]
        for name, text in re.findall(r'<li id="([^"]+)">(.*?)</li>', group, re.DOTALL):
            entries[name] = html.unescape(text + source)
    return entries


@pytest.mark.parametrize("name", NAMES)
def test_every_fact_has_its_line(guides: Mapping[str, Made], name: str) -> None:
    """Value in both systems, sentence, inputs, source: nothing is left out."""
    made = guides[name]
    entries = _entries(made)

    assert len(entries) == len(made.facts)
    for entry, fact in zip(entries.values(), made.facts.values(), strict=False):
        assert "source" in entry, fact.name
    together = " ".join(entries.values())
    for fact in made.facts.values():
        assert f"<b>{fact.shown_with_other()}</b>" in together, fact.name
        assert fact.basis in together, fact.name


@pytest.mark.parametrize(
    ("line", "ends"),
    [
        ("fact-battery-usable", "Changed the battery? This no longer holds."),
        ("fact-tires-pressure", "Changed the tires? This no longer holds."),
        ("fact-lp-stored", "Changed the cylinders? This no longer holds."),
        (
            "fact-lp-hours-fridge",
            "Changed the cylinders or the fridge? This no longer holds.",
        ),
        ("fact-weights-gvwr", ""),
        ("fact-water-capacity", ""),
    ],
)
def test_a_number_says_what_ends_it(
    guides: Mapping[str, Made], line: str, ends: str
) -> None:
    """Only where it rests on a part that owners change."""
    entry = _entries(guides["heron-a"])[line]

    assert ("no longer holds" in entry) == bool(ends)
    assert ends in entry


def test_tiles_say_both(guides: Mapping[str, Made]) -> None:
    """A tile has room for the other system in its note; running text has not."""
    tiles = [
        (tile.value, tile.note)
        for page in guides["heron-a"].pages.pages
        for tile in page.tiles
    ]

    assert ("7,400 lb", "loaded, 3,350 kg") in tiles
    assert next(note for value, note in tiles if value == "46 gal").count("174 l") == 1
