"""What a guide would fail to say is a problem at the unit's own line, never silence."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import make
from hatchleaf.problems import ProblemsFound
from hatchleaf.spec.load import load_unit

ROOT = Path(__file__).parents[2]


def _problems(root: Path, library: Library, old: str, new: str) -> list[str]:
    """Return the problems of sample a with a line of its model's file changed."""
    shutil.copytree(ROOT / "unit_specs", root / "unit_specs")
    model = root / "unit_specs" / "models" / "marlpit-24.yml"
    text = model.read_text("utf-8")
    assert old in text
    model.write_text(text.replace(old, new, 1), "utf-8")
    loaded = load_unit(root / "unit_specs" / "heron-a.yml", root)
    with pytest.raises(ProblemsFound) as found:
        make(loaded, library, dealer_name="Two Herons", dealer_phone="555-0142")
    return [str(problem).split(":", 3)[3].strip() for problem in found.value.problems]


@pytest.mark.parametrize(
    ("path", "kind", "what"),
    [
        (
            "gear.brakes.kind",
            "electric",
            "gear.brakes.kind: no block of topic 820 speaks of kind 'electric' yet",
        ),
        (
            "ac.shore.plug",
            "tt_30",
            "ac.shore.plug: no block of topic 410 speaks of plug 'tt_30' yet",
        ),
        (
            "waste.outlets.kind",
            "three_inch",
            "outlets[outlet].kind: no block of topic 310 speaks of kind 'three_inch'",
        ),
    ],
)
def test_a_kind_without_content_is_told(
    library: Library, path: str, kind: str, what: str
) -> None:
    """With its blocks taken out of the library, the unit's own line is named."""
    kept = {
        name: block
        for name, block in library.blocks.items()
        if not any(line.path == path and line.test.holds(kind) for line in block.when)
    }
    loaded = load_unit(ROOT / "unit_specs" / "heron-a.yml", ROOT)
    with pytest.raises(ProblemsFound) as found:
        make(
            loaded,
            replace(library, blocks=kept),
            dealer_name="Two Herons",
            dealer_phone="555-0142",
        )
    assert any(what in str(problem) for problem in found.value.problems)


def test_a_missing_limit_of_the_maker_is_told(tmp_path: Path, library: Library) -> None:
    """No typical figure stands in for the wind that the maker allows."""
    old, new = "wind_limit: {value: 22 mph, from: paper}", "wind_limit: unknown"
    assert _problems(tmp_path, library, old, new) == [
        (
            "awnings[patio].wind_limit: the maker's limit is unknown, and block "
            "'awning-wind-limit' cannot be printed without it\n"
            "    allowed: the number from the maker's plate, label or paper\n"
            "    hint: read it on the unit and write it in the unit's file"
        )
    ]
