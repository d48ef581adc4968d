"""
The safety order of running gear that no sample has, and the walk round by station.

`variants.yml` lays each kind over a sample; its lists are held to the order beside it.
"""

from __future__ import annotations

import html
import re
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.blocks.choose import choose
from hatchleaf.blocks.model import Library
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.assemble import Manual, assemble
from hatchleaf.manual.journey_steps import StepText
from hatchleaf.manual.make import Made
from hatchleaf.manual.places import walk_key
from hatchleaf.spec.load import load_unit
from hatchleaf.spec.source import read

ROOT: Final = Path(__file__).parents[2]
VARIANTS: Final[Mapping[str, Any]] = yaml.safe_load(
    Path(__file__).with_name("variants.yml").read_text("utf-8")
)
LAST_LOOK: Final = 30
"""The rank of the rows of the walk round that name a station."""


def _texts(value: Any) -> Any:
    """Return *value* as a unit's file is read: scalars as text."""
    if isinstance(value, dict):
        return {key: _texts(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_texts(one) for one in value]
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


@pytest.fixture(scope="module", params=VARIANTS)
def variant(
    request: pytest.FixtureRequest,
    library: Library,
    tmp_path_factory: pytest.TempPathFactory,
) -> tuple[str, Manual]:
    """Return a variant's name, and its manual as plain data."""
    name: str = request.param
    row = VARIANTS[name]
    folder = tmp_path_factory.mktemp(name)
    shutil.copytree(ROOT / "unit_specs", folder / "unit_specs")
    file = folder / "unit_specs" / f"{row['over']}.yml"
    own = read(file, folder).plain()
    own |= {"condition": "used", "found_on": "2027-03-12"}
    own.setdefault("gear", {}).update(_texts(row.get("gear", {})))
    if "slides" in row:
        own["slides"] = _texts(row["slides"])
    file.write_text(yaml.safe_dump(own), encoding="utf-8")
    spec = load_unit(file, folder).spec
    facts = work_out(spec)
    selection = choose(library, spec, facts)
    manual = assemble(
        library,
        spec,
        facts,
        selection,
        dealer_name="Two Herons",
        dealer_phone="555-0142",
    )
    return name, manual


def _at(steps: tuple[StepText, ...], pattern: str) -> list[int]:
    return [i for i, step in enumerate(steps) if re.search(pattern, step.markdown)]


def test_each_variant_keeps_its_order(variant: tuple[str, Manual]) -> None:
    """Both halves of each row are there, and the first comes first."""
    name, manual = variant
    wrong = []
    for journey, orders in VARIANTS[name]["orders"].items():
        steps = manual.steps[journey]
        for first, then in orders:
            before, after = _at(steps, first), _at(steps, then)
            after = [i for i in after if i not in before]
            if not before or not after or max(before) > min(after):
                wrong.append((journey, first, then))
    assert wrong == []


def test_what_a_kind_has_not_is_not_a_step(variant: tuple[str, Manual]) -> None:
    """A king pin has no chains; a slide of unknown order gets no step that moves it."""
    name, manual = variant
    found = [
        step.markdown
        for pattern in VARIANTS[name].get("never", ())
        for steps in manual.steps.values()
        for step in steps
        if re.search(pattern, step.markdown, re.IGNORECASE)
    ]
    assert found == []


def test_every_unhitching_ends_clear(variant: tuple[str, Manual]) -> None:
    """Whatever couples it: plug and cable are off before the vehicle drives."""
    _, manual = variant
    steps = manual.steps["arrive"]
    if not any(step.phase == "unhitch" for step in steps):
        assert manual.spec.vehicle not in ("none", "unknown")
        return
    drive = min(_at(steps, r"^Drive (?:the (?:vehicle|truck)|forward)"))
    plug = max(_at(steps, r"(?:Pull|Turn) the plug"))
    cable = max(_at(steps, r"breakaway cable off"))
    assert max(plug, cable) < drive
    assert max(_at(steps, "^Put chocks")) < min(
        _at(steps, r"[Oo]pen|handle of the head")
    )


def _stations(manual: Manual) -> list[str]:
    return [
        html.unescape(found[1])
        for step in manual.steps["before_towing"]
        if step.phase == "walk_round"
        and (found := re.match(r"\*\*(.+?):\*\*", step.markdown))
    ]


@pytest.mark.parametrize(
    "name", ["heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f"]
)
def test_the_last_look_goes_round_the_unit(
    name: str, guides: Mapping[str, Made]
) -> None:
    """Station by station, in the order of the unit's places, as one walks."""
    manual = guides[name].manual
    places = {place.name: walk_key(place) for place in manual.spec.places}
    stations = _stations(manual)
    assert len(stations) > 5
    keys = [places[station] for station in stations]
    assert keys == sorted(keys)


def test_rows_with_a_station_have_one_rank(library: Library) -> None:
    """Only rows of one rank can be put in the order of the walk."""
    other = {
        block.id: step.rank
        for block in library.blocks.values()
        for step in block.steps
        if step.at and (step.phase, step.rank) != ("walk_round", LAST_LOOK)
    }
    assert other == {}
