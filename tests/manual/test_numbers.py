"""The page of numbers: every fact, in both systems of units, with what ends it."""

from __future__ import annotations

import html
import re
from collections.abc import Mapping

import pytest

from facts.samples import NAMES
from hatchleaf.manual.fact_words import slug
from hatchleaf.manual.make import Made
from hatchleaf.manual.numbers import numbers_page


def _entries(made: Made) -> dict[str, str]:
    """Return the text of each fact's entry, with its head and source, by its id."""
    page, _ = numbers_page(made.facts, made.manual.library, "us")
    entries = {}
    for group in re.findall(r"<h3>.*?</p>", page, re.DOTALL):
        head, _, _ = group.partition("<ul")
        source = group[group.index('<p class="source">') :]
        for line in re.findall(r"<li .*?</li>", group, re.DOTALL):
            for name in re.findall(r'id="([^"]+)"', line):
                entries[name] = html.unescape(head + line + source)
    return entries


@pytest.mark.parametrize("name", NAMES)
def test_every_fact_has_its_line(guides: Mapping[str, Made], name: str) -> None:
    """Value in both systems, sentence, inputs, source: nothing is left out."""
    made = guides[name]
    entries = _entries(made)

    assert len(entries) == len(made.facts)
    for fact in made.facts.values():
        entry = entries[f"fact-{slug(fact.name)}"]
        assert f"<b>{fact.shown_with_other()}</b>" in entry, fact.name
        assert fact.basis in entry, fact.name
        assert fact.item_words in entry, fact.name
        for one in fact.inputs:
            assert one.text in entry, fact.name
        assert "ource" in entry, fact.name


@pytest.mark.parametrize("name", NAMES)
def test_a_mark_stands_once_at_what_it_is_for(
    guides: Mapping[str, Made], name: str
) -> None:
    """At the head where all of a name carry it, else at each that does."""
    made = guides[name]
    entries = _entries(made)
    for fact in made.facts.values():
        entry = entries[f"fact-{slug(fact.name)}"]
        for mark, on in (("typical", fact.typical), ("brochure", fact.brochure)):
            assert entry.count(f'class="{mark}"') == on, fact.name


def test_what_differs_in_its_item_alone_is_one_line(
    guides: Mapping[str, Made],
) -> None:
    """The battery lasts as long for one as for six: said once, found by each."""
    page, _ = numbers_page(
        guides["heron-a"].facts, guides["heron-a"].manual.library, "us"
    )
    lines = re.findall(r"<li [^\n]*?</li>", page)
    (summer,) = [one for one in lines if "fact-endurance-battery-6-people-su" in one]
    assert summer.count("id=") == 4
    assert "fact-endurance-battery-1-person-summer-night" in summer
    assert "frost" not in summer


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
