"""A journey may be like another: the rows it takes, and what is refused."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

import pytest

from hatchleaf.blocks.model import Journey, Library, Phase, Step, Worded
from hatchleaf.blocks.reading import read_library
from hatchleaf.manual.make import Made
from hatchleaf.problems import Place, ProblemsFound

BUILT_IN: Final = Path(__file__).parents[2] / "content_blocks"


def _step(journey: str, phase: str) -> Step:
    return Step(journey, phase, 1, Worded("Go.", Place("x")))


def test_it_takes_the_other_ones_rows_but_for_what_it_leaves_out() -> None:
    """Its own rows always; a third journey's never."""
    without = Journey("dry", "dry", (Phase("spot", "Spot"),), "arrive", ("power",))
    assert without.takes(_step("dry", "power"))
    assert without.takes(_step("arrive", "spot"))
    assert not without.takes(_step("arrive", "power"))
    assert not without.takes(_step("leave", "spot"))


def test_a_journey_of_its_own_takes_its_own_alone() -> None:
    """A row that names no journey belongs to none."""
    arrive = Journey("arrive", "arrive", (Phase("spot", "Spot"),))
    assert arrive.takes(_step("arrive", "spot"))
    assert not arrive.takes(_step("", "spot"))


@pytest.mark.parametrize(
    "name", ["heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f"]
)
def test_the_taken_rows_keep_their_order(
    name: str, library: Library, guides: dict[str, Made]
) -> None:
    """Chocks before unhitching, whichever way the unit arrives."""
    steps = guides[name].manual.steps
    like = [j for j in library.journeys.values() if j.like]
    assert like
    for journey in like:
        base = [
            s.markdown for s in steps[journey.like] if s.phase not in journey.leaves_out
        ]
        assert base
        assert [s.markdown for s in steps[journey.id] if s.markdown in base] == base


GOOD: Final = """\
arrive:
  topic: arrive
  phases: [{id: spot, title: A}, {id: unhitch, title: B}, {id: power, title: C}]
dry:
  topic: arrive
  like: {journey: arrive, leaves_out: [power]}
  phases: [{id: spot, title: A}, {id: unhitch, title: B}]
"""


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("journey: arrive", "journey: arive", "'arive' is not a journey of its own"),
        ("journey: arrive", "journey: dry", "'dry' is not a journey of its own"),
        ("[power]", "[powr]", "'powr' is not a phase of 'arrive'"),
        ("[power]", "[]", "rows of phase 'power' of 'arrive' would have no place"),
        (
            "[{id: spot, title: A}, {id: unhitch, title: B}]\n",
            "[{id: unhitch, title: B}, {id: spot, title: A}]\n",
            "the phases of 'arrive' stand in another order",
        ),
    ],
)
def test_what_would_lose_or_turn_steps_is_refused(
    old: str, new: str, says: str, tmp_path: Path
) -> None:
    """A row without a place would be a step that nobody is told."""
    folder = tmp_path / "content_blocks"
    folder.mkdir()
    for path in BUILT_IN.glob("*.yml"):
        shutil.copy(path, folder)
    path = folder / "journeys.yml"
    path.write_text(GOOD, "utf-8")
    read_library([folder], tmp_path)
    path.write_text(GOOD.replace(old, new), "utf-8")
    with pytest.raises(ProblemsFound) as found:
        read_library([folder], tmp_path)
    assert says in str(found.value)
