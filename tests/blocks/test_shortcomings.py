"""What a guide would fail to say is a problem at the unit's own line, never silence."""

from __future__ import annotations

import shutil
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
    ("old", "new", "what"),
    [
        (
            "brakes: {kind: electric}",
            "brakes: {kind: surge}",
            "gear.brakes.kind: no block of topic 820 speaks of kind 'surge' yet",
        ),
        (
            "plug: tt_30, cord_length: 30 ft, service: {value: 30 A, from: plate}, volts: 120 V",
            "plug: iec_16, cord_length: 30 ft, service: {value: 16 A, from: plate}, volts: 230 V",
            "ac.shore.plug: no block of topic 410 speaks of plug 'iec_16' yet",
        ),
        (
            "outlet: {kind: three_inch",
            "outlet: {kind: macerator",
            "waste.outlets.kind: no block of topic 310 speaks of kind 'macerator' yet",
        ),
    ],
)
def test_a_kind_without_content_is_told(
    tmp_path: Path, library: Library, old: str, new: str, what: str
) -> None:
    """It parses, since the vocabulary knows it; the guide cannot speak of it."""
    assert any(
        problem.startswith(what) for problem in _problems(tmp_path, library, old, new)
    )


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
