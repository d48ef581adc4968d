"""
What owners ask in public is answered, each point of it, on one page of a sample.

The table is written by hand.  A pattern is a fact of the answer for that very unit:
its own number, limit or warning, not a word that any page would hold.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.manual.make import Made

TEXT: Final = Path(__file__).with_name("answers.yml").read_text("utf-8")
TABLE: Final[dict[str, dict[str, Any]]] = yaml.safe_load(TEXT)
ANSWERED: Final = TABLE["answered"]

ASKED: Final = 120
"""So many public questions the table is drawn from."""

LEAST: Final = 110
"""So many of them are answered at least."""

PAGES_WITH_IT: Final = 3
"""On so many pages of a guide a point may stand at most: its own, and two journeys."""


@dataclass(frozen=True)
class Answer:
    """One page that answers a question, with the patterns of each point."""

    unit: str
    page: str
    points: tuple[tuple[str, ...], ...]

    def text(self, guides: Mapping[str, Made]) -> str:
        """Return the words of the page."""
        pages = guides[f"heron-{self.unit}"].pages.pages
        return next(page.text for page in pages if page.id == self.page)


def _answers(row: Mapping[str, Any]) -> Iterator[Answer]:
    yield Answer(row["unit"], row["page"], tuple(map(tuple, row["says"])))
    for other in row.get("also", ()):
        yield Answer(other["unit"], other["page"], (tuple(other["says"]),))


def _held_by(text: str, point: tuple[str, ...]) -> bool:
    return all(re.search(pattern, text) for pattern in point)


@pytest.mark.parametrize("question", ANSWERED)
def test_the_page_makes_each_point(question: str, guides: Mapping[str, Made]) -> None:
    """Every point of the answer stands on the named page of the named sample."""
    for answer in _answers(ANSWERED[question]):
        text = answer.text(guides)
        missing = [
            pattern
            for point in answer.points
            for pattern in point
            if not re.search(pattern, text)
        ]
        assert missing == [], f"{answer.unit} {answer.page}"


@pytest.mark.parametrize("question", ANSWERED)
def test_a_point_is_not_on_every_page(
    question: str, guides: Mapping[str, Made]
) -> None:
    """A point whose patterns many pages hold would be found wherever one looks."""
    for answer in _answers(ANSWERED[question]):
        # The page of the numbers quotes each number of the guide once more.
        pages = [
            page
            for page in guides[f"heron-{answer.unit}"].pages.pages
            if page.id != "numbers"
        ]
        for point in answer.points:
            found = [page.id for page in pages if _held_by(page.text, point)]
            assert len(found) <= PAGES_WITH_IT, f"{point}: {found}"


def test_each_question_has_one_row() -> None:
    """A question written twice would lose its first row, and count once too often."""
    ids = re.findall(r"^  (q-\w+-\d+):", TEXT, re.MULTILINE)
    assert len(ids) == len(set(ids)) == ASKED
    assert set(ids) == {*ANSWERED, *TABLE["not_answered"]}


def test_enough_questions_are_answered() -> None:
    """Nearly all of the questions are held, and the rest have a reason."""
    assert len(ANSWERED) >= LEAST
    for question, reason in TABLE["not_answered"].items():
        assert len(reason.split()) >= 5, question
    for question, row in ANSWERED.items():
        assert all(row["says"]), question


def test_every_system_and_sample_is_asked_about(guides: Mapping[str, Made]) -> None:
    """No system of the guide and no sample is left out of the table."""
    systems = {
        page.id: page.system for made in guides.values() for page in made.pages.pages
    }
    answers = [answer for row in ANSWERED.values() for answer in _answers(row)]
    asked = {systems[answer.page] for answer in answers if answer.page in systems}
    assert asked == set(systems.values())
    assert {f"heron-{answer.unit}" for answer in answers} == set(guides)
