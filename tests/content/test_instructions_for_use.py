"""
Each guide holds what a standard on instructions for use asks for.

The list is from memory (see the head of the table), so it is a check of what is left
out and no proof of conformity.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.manual.make import Made
from hatchleaf.manual.model import UnitCard, day_in_words

TABLE: Final = Path(__file__).with_name("instructions_for_use.yml")
ROWS: Final[list[dict[str, Any]]] = yaml.safe_load(TABLE.read_text("utf-8"))
SIGNAL: Final = re.compile(r'<div class="box (danger|warning|caution|notice)"')
WORDS: Final = ("danger", "warning", "caution", "notice")


def _filled(pattern: str, unit: UnitCard) -> str:
    values = {
        "name": unit.name,
        "maker": unit.maker,
        "year": unit.year,
        "dealer": unit.dealer_name,
        "phone": unit.dealer_phone,
        "emergency": unit.emergency_number,
        "delivered": day_in_words(unit.delivered),
    }
    for name, value in values.items():
        pattern = pattern.replace(f"{{{name}}}", re.escape(value))
    return pattern


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row["asks"]))
def test_it_is_there(row: dict[str, Any], guides: Mapping[str, Made]) -> None:
    """On the named page of every sample, or of those that have its topic."""
    looked_at = 0
    for made in guides.values():
        pages = {page.id: page for page in made.pages.pages}
        if "has" in row and row["has"] not in pages:
            continue
        looked_at += 1
        text = pages[row["page"]].text
        patterns = [_filled(one, made.pages.unit) for one in row["says"]]
        assert [one for one in patterns if not re.search(one, text)] == []
    assert looked_at


def test_contents_name_every_page(guides: Mapping[str, Made]) -> None:
    """Title and number of each page are unlike all others, so contents find it."""
    for made in guides.values():
        titles = [page.title for page in made.pages.pages]
        assert len(set(titles)) == len(titles)
        assert all(title.strip() for title in titles)


def test_warnings_come_before_the_steps(guides: Mapping[str, Made]) -> None:
    """Under one heading, whatever can hurt someone is said before the first step."""
    late = set()
    for made in guides.values():
        for page in made.pages.pages:
            for section in re.split(r"(?=<h[2-4][ >])|(?=<details)", page.body):
                steps = section.find('<ol class="steps"')
                boxes = [
                    found.start()
                    for found in SIGNAL.finditer(section)
                    if found[1] in ("danger", "warning")
                ]
                if steps >= 0 and boxes and min(boxes) > steps:
                    heading = re.search(r">([^<]+)</h", section)
                    late.add((page.id, heading[1] if heading else ""))
    assert late == set()


def test_signal_words_are_explained_by_their_use(guides: Mapping[str, Made]) -> None:
    """Only the four signal words, each box with what it is about."""
    for made in guides.values():
        for page in made.pages.pages:
            for found in re.finditer(
                r'<div class="box (\w+)"[^>]*>(.*?)</div>', page.body, re.DOTALL
            ):
                assert found[1] in WORDS
                assert 'class="hazard"' in found[2], (page.id, found[2][:80])
