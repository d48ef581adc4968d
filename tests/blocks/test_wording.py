"""Why: a date that is printed wrong sends an owner off with a dead alarm."""

from __future__ import annotations

import datetime

import pytest

from hatchleaf.blocks.text import Fault, Shown, Unfillable, fill
from hatchleaf.manual.wording import month
from hatchleaf.problems import Place


def test_a_month_is_printed_in_letters() -> None:
    """Numbers alone are read as day, month and year in any order."""
    assert month(datetime.date(2026, 10, 1)).plain == "October 2026"
    assert month(datetime.date(2026, 10, 1)).markdown == "October 2026"


def test_an_unknown_month_sends_to_the_thing_itself() -> None:
    """No date is made up: the owner reads it where it stands."""
    assert month("unknown").plain == "read its label"
    assert month("unknown", "read its collar").plain == "read its collar"


@pytest.mark.parametrize("value", ["2026-10", "none", "", 2026, None])
def test_anything_else_is_a_fault_of_the_block(value: object) -> None:
    """A block that names the wrong field is told so, and prints nothing."""
    with pytest.raises(Fault, match="month"):
        month(value)


@pytest.mark.parametrize(
    "text", ["Hob ({{ at({{ name }}) }}).", "It burns {{ name", "It burns {{ name }."]
)
def test_a_call_that_is_not_closed_is_a_problem(text: str) -> None:
    """Else its own braces stand on the page."""
    with pytest.raises(Unfillable):
        fill(text, Place("block.md", 9, 1), {"name": "x", "at": str}, "markdown")


def test_a_value_that_is_joined_gives_its_words() -> None:
    """Else what the page shows is how Python writes it down."""
    word = Shown("[nose&#119;eight](topic:850)", "noseweight")
    for text in ("{{ 'the ' ~ word }}", "the {{ word | string }}"):
        place = Place("block.md", 1, 1)
        assert fill(text, place, {"word": word}, "markdown") == "the noseweight"
