"""Why: the wrong fuse pulled, or a wrong number named, leaves an owner in the dark."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from hatchleaf.blocks.model import Library
from hatchleaf.blocks.text import Fault, Shown
from hatchleaf.manual.guards import Guards
from hatchleaf.manual.places import places_by_id
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.dc import Fuse
from hatchleaf.spec.model.unit import UnitSpec


def guards(spec: UnitSpec, library: Library) -> Guards:
    """Return the fuses and breakers of a unit that has all topics."""
    return Guards(
        spec,
        places_by_id(spec),
        library.topics,
        lambda reading, _: Shown("", f"{reading.quantity:~g}"),  # type: ignore[attr-defined]
    )


def names(spec: UnitSpec, library: Library, block: str = "water-pump-demand") -> Any:
    """Return what the text of a block may call."""

    class One:
        pass

    one: Any = One()
    one.block = library.blocks[block]
    return guards(spec, library).names(one)


def with_fuses(spec: UnitSpec, *fuses: Fuse | str) -> UnitSpec:
    """Return the unit with other fuses; ``none`` for no list."""
    listed: Any = "none" if fuses == ("none",) else fuses
    return spec.model_copy(update={"dc": spec.dc.model_copy(update={"fuses": listed})})


@pytest.fixture
def spec(samples: Mapping[str, LoadedUnit]) -> UnitSpec:
    """Return the sample whose file lists its fuses."""
    return samples["heron-a"].spec


def test_a_listed_fuse_is_named_and_leads_to_the_table(
    spec: UnitSpec, library: Library
) -> None:
    """Number, amps and place, as they stand in the unit's file."""
    shown = names(spec, library)["fuse"]("water.pump")
    assert shown.plain == "fuse 2 (10 A) at the breaker and fuse panel"
    assert shown.markdown.startswith("[fuse 2 &#40;10 A&#41;](topic:415)")
    at_home = names(spec, library, "breakers-fuses-blade")["fuse"]("water.pump")
    assert "topic:" not in at_home.markdown


def test_a_breaker_among_fuses_is_called_by_its_name(
    spec: UnitSpec, library: Library
) -> None:
    """The word that stands on the panel, once: no "fuse (breaker B)"."""
    fuses = spec.dc.fuses
    assert isinstance(fuses, tuple)
    pump = next(one for one in fuses if one.part == "water.pump")
    named = with_fuses(spec, pump.model_copy(update={"position": "breaker B"}))
    assert names(named, library)["fuse"]("water.pump").plain == (
        "breaker B (10 A) at the breaker and fuse panel"
    )


def test_an_item_has_its_own_fuse(spec: UnitSpec, library: Library) -> None:
    """Two awnings, two fuses: the item's comes before that of the whole part."""
    fuse = names(spec, library)["fuse"]
    assert fuse("awnings", "patio").plain.startswith("fuse 7 (15 A)")
    assert fuse("dc.solar", "port").plain == (
        "the fuse (beside the port, 15 A) at the solar port"
    )
    assert fuse("water.filter", also="water.pump").plain.startswith("fuse 2")


def test_without_a_list_no_number_is_made_up(spec: UnitSpec, library: Library) -> None:
    """The sentence stands all the same, and sends to the panel."""
    bare = with_fuses(spec, "none")
    found = names(bare, library)
    assert found["fuse"]("water.pump").plain == "its fuse at the breaker and fuse panel"
    assert not found["has_fuse"]("water.pump")
    assert names(spec, library)["has_fuse"]("water.pump")
    panel: Any = "unknown"
    dc = bare.dc.model_copy(update={"panel": panel})
    nowhere = bare.model_copy(update={"dc": dc})
    assert names(nowhere, library)["fuse"]("water.pump").plain == "its fuse"


def test_breakers_are_named_the_same_way(spec: UnitSpec, library: Library) -> None:
    """The main one by its name, the others by their numbers."""
    breaker = names(spec, library)["breaker"]
    assert breaker("hot_water").plain.startswith("breaker 3 (15 A)")
    assert breaker("ac.shore").plain.startswith("the main breaker (30 A)")


def test_a_path_that_nothing_has_is_told(spec: UnitSpec, library: Library) -> None:
    """A slip of the pen would print 'its fuse' on every unit for ever."""
    with pytest.raises(Fault, match=r"'water\.pumps' is no part of a unit"):
        names(spec, library)["fuse"]("water.pumps")


def test_one_table_for_each_place(spec: UnitSpec, library: Library) -> None:
    """All that is listed, in the file's order, below the place's name."""
    shown = names(spec, library)["fuse_tables"]()
    fuses = spec.dc.fuses
    assert isinstance(fuses, tuple)
    rows = [
        line
        for line in shown.markdown.splitlines()
        if line.startswith("| ") and "---" not in line
    ]
    heads = [row for row in rows if row.startswith("| Fuse")]
    assert len(heads) == len({fuse.at for fuse in fuses}) == 2
    assert len(rows) - len(heads) == len(fuses)
    assert "At the breaker and fuse panel (inside, road side" in shown.plain
    with pytest.raises(Fault, match="lists no fuses"):
        names(with_fuses(spec, "none"), library)["fuse_tables"]()


def test_legs_are_printed_where_there_are_two(spec: UnitSpec, library: Library) -> None:
    """On one leg the column would say the same in every row."""
    breakers = spec.ac.breakers
    assert isinstance(breakers, tuple)
    assert "Leg" not in names(spec, library)["breaker_tables"]().markdown
    both = (breakers[0].model_copy(update={"leg": "both"}), *breakers[1:])
    two = spec.model_copy(update={"ac": spec.ac.model_copy(update={"breakers": both})})
    shown = names(two, library)["breaker_tables"]().markdown
    assert "| Breaker | Feeds | Amps | Leg |" in shown
    assert "A and B" in shown


def test_the_page_of_breakers_has_the_tables(
    spec: UnitSpec, library: Library, guides: Mapping[str, Any]
) -> None:
    """A list in the unit's file that no page prints would be work for nothing."""
    page = guides["heron-a"].pages.by_number[415]
    for fuse in spec.dc.fuses:
        assert isinstance(fuse, Fuse)
        assert fuse.feeds in page.text
