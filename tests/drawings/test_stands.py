"""Why: a handle that is drawn the wrong way floods a floor or cracks a heater."""

from __future__ import annotations

import re
from collections.abc import Mapping
from xml.etree import ElementTree

import pytest

from hatchleaf.blocks.text import Fault
from hatchleaf.drawings.normal import DRAWINGS, drawing
from hatchleaf.drawings.stands import MODES, STANDS, Stand, panel
from hatchleaf.manual.drawn import drawn
from hatchleaf.spec import paths
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.water import ModePanel

ALL = [
    pytest.param(stand, id=f"{name}-{state}")
    for name, states in STANDS.items()
    for state, stand in states.items()
]
VALVES = {(46, 18): "level", (26, 37): "upright", (46, 56): "level"}
"""Each valve of a three-valve bypass, and how its pipe runs there."""


def handles(stand: Stand) -> dict[tuple[int, int], str]:
    """Return which way the handle of each valve lies."""
    found = re.findall(r'class="bold" d="M(\d+) (\d+)(h|v)', stand.lines)
    return {
        (int(x), int(y)): "level" if way == "h" else "upright" for x, y, way in found
    }


def test_three_valves_stand_against_their_pipes() -> None:
    """
    Along is open, across is shut (common practice, no source).

    In NORMAL the valves on the tank's two pipes are open and the one between is shut;
    in WINTER it is the other way round.
    """
    normal = handles(STANDS["bypass_three_valve"]["normal"])
    winter = handles(STANDS["bypass_three_valve"]["winter"])
    between = (26, 37)
    assert set(normal) == set(winter) == set(VALVES)
    for valve, pipe in VALVES.items():
        along = pipe
        opened_in_normal = valve != between
        assert (normal[valve] == along) is opened_in_normal
        assert (winter[valve] == along) is not opened_in_normal


@pytest.mark.parametrize("kind", ["one_valve", "two_valve", "lever"])
def test_no_handle_is_drawn_where_makers_differ(kind: str) -> None:
    """A three-way valve's handle tells nothing by itself: the marks at it do."""
    for stand in STANDS[f"bypass_{kind}"].values():
        assert "bold" not in stand.lines
        assert "mark" in stand.words
        assert "not the handle" in stand.words


def test_water_passes_the_tank_in_winter_alone() -> None:
    """The thick line is the way of the water: to the tank's wall, or not."""
    for name in (name for name in STANDS if name.startswith("bypass")):
        through, past = (
            re.findall(r'class="flow" d="([^"]*)"', STANDS[name][state].lines)
            for state in ("normal", "winter")
        )
        assert "H66" in through[0]
        assert "66" not in past[0]


def test_each_kind_of_bypass_of_the_vocabulary_is_drawn() -> None:
    """A new kind without a drawing would end a build at a unit that has it."""
    kinds = paths.fields()["hot_water.bypass"].words - {"none", "unknown"}
    assert {f"bypass_{kind}" for kind in kinds} == {
        name for name in STANDS if name.startswith("bypass")
    }
    modes = paths.shape(paths.hints(ModePanel)["modes"]).item
    assert set(MODES) == set(paths.shape(modes).words)


@pytest.mark.parametrize("stand", ALL)
def test_a_drawing_is_sound_and_said(stand: Stand) -> None:
    """Markup without styles, within its box; state and sentence for who cannot see."""
    svg = ElementTree.fromstring(f"<svg>{stand.lines}</svg>")  # noqa: S314  # our own
    assert list(svg)
    assert all("style" not in element.attrib for element in svg.iter())
    assert stand.says
    assert stand.words.endswith(".")
    assert len(stand.words.split()) < 25


def test_states_of_one_thing_look_different() -> None:
    """Else the drawing says nothing."""
    for states in STANDS.values():
        assert len({stand.lines for stand in states.values()}) == len(states)


def test_a_panel_shows_its_own_words_and_one_pointer() -> None:
    """What the panel does not name is not drawn."""
    stand = panel(("city", "pump"), "pump")
    assert re.findall(r"<text[^>]*>([^<]*)<", stand.lines) == ["CITY", "PUMP"]
    assert stand.lines.count('class="full"') == 1
    assert stand.says == "PUMP"


def test_every_normal_position_is_a_drawing() -> None:
    """The words beside it are its text: it is hidden from screen readers."""
    for name in DRAWINGS - {"none"}:
        assert drawing(name).startswith("<svg ")
        assert 'aria-hidden="true"' in drawing(name)
    assert drawing("none") == ""


def test_a_block_places_drawings(samples: Mapping[str, LoadedUnit]) -> None:
    """Side by side, in order, each with its words; as text, the words alone."""
    shown = drawn(samples["heron-a"].spec)("drain_valve", "closed", "open")
    assert shown.markdown.count("<figure") == 2
    assert shown.markdown.index("Closed") < shown.markdown.index("Open")
    assert shown.plain.startswith("Closed: A lever handle lies across its pipe.")


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (("drain_valv", "open"), "no drawing 'drain_valv'"),
        (("drain_valve", "opened"), "no state 'opened'"),
        (("drain_valve",), "needs its states"),
        (("inlet_panel", "city"), "no inlet with a panel"),
    ],
)
def test_a_wrong_call_is_told(
    call: tuple[str, ...], says: str, samples: Mapping[str, LoadedUnit]
) -> None:
    """An editor reads what is wrong instead of a page without its drawing."""
    with pytest.raises(Fault, match=says):
        drawn(samples["heron-a"].spec)(*call)
