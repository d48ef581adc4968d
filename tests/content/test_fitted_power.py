"""The pages of an inverter, a generator and 50 A, which no sample has."""

from __future__ import annotations

from dataclasses import replace

import pytest

from facts.fitted import everything
from facts.samples import loaded
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made, make


@pytest.fixture(scope="module")
def guide(library: Library) -> Made:
    """Return the guide of a unit with all of it."""
    unit = replace(loaded("heron-a"), spec=everything())
    return make(unit, library, dealer_name="Two Herons", dealer_phone="555-0142")


@pytest.mark.parametrize(
    ("number", "says"),
    [
        (460, ["2,000 W at most", "live with the unit unplugged", "0.47 hours"]),
        (470, ["2,800 W", "carbon monoxide", "Never sleep while it runs", "2,300 W"]),
        (425, ["4,800 W", "both legs of this unit share it", "50 A"]),
        (410, ["four prongs", "both legs share its one line"]),
    ],
)
def test_its_pages_say_what_is_fitted(
    guide: Made, number: int, says: list[str]
) -> None:
    """Numbers of this unit, and the warnings that go with them."""
    text = guide.pages.by_number[number].text

    assert [one for one in says if one not in text] == []


def test_the_danger_comes_before_the_steps(guide: Made) -> None:
    """Nobody reads a warning after the deed."""
    body = guide.pages.by_number[460].body

    assert body.index("box danger") < body.index("<ol")


def test_before_towing_both_are_off(guide: Made) -> None:
    """A generator must not run, nor outlets be live, on the road."""
    steps = {step.block for step in guide.manual.steps["before_towing"]}

    assert {"inverter-use", "generator-use"} <= steps
