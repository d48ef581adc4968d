"""
What owners ask in public is answered on the page where they would look.

The table is written by hand.  A pattern is a fact of the answer for that very unit:
its own number, limit or warning, not a word that any page would hold.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.manual.make import Made

TABLE: Final = Path(__file__).with_name("questions.yml")
ROWS: Final[list[dict[str, Any]]] = yaml.safe_load(TABLE.read_text("utf-8"))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['page']}: {row['ask']}")
def test_the_page_answers(row: dict[str, Any], guides: Mapping[str, Made]) -> None:
    """Every fact of the answer stands on the named page of the named sample."""
    pages = guides[f"heron-{row['unit']}"].pages.pages
    page = next(page for page in pages if page.id == row["page"])
    missing = [fact for fact in row["says"] if not re.search(fact, page.text)]
    assert missing == []


def test_the_facts_are_of_their_page(guides: Mapping[str, Made]) -> None:
    """A row whose every fact stood on the home page as well would ask nothing."""
    for row in ROWS:
        home = guides[f"heron-{row['unit']}"].pages.pages[0]
        assert home.number == 0
        assert not all(re.search(fact, home.text) for fact in row["says"]), row["ask"]


def test_every_system_is_asked_about(guides: Mapping[str, Made]) -> None:
    """No system of the guide is left out of the table."""
    systems = {
        page.id: page.system for made in guides.values() for page in made.pages.pages
    }
    asked = {systems[row["page"]] for row in ROWS}
    assert asked >= {"lp", "water", "waste", "electrical", "awning", "doors", "living"}
    assert len(ROWS) >= 40
