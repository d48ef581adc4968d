"""Broken files are told in whole: where, what, what is allowed, a hint."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.problems import ProblemsFound
from hatchleaf.spec.load import load_unit

HERE: Final = Path(__file__).parent
CASES: Final[list[dict[str, Any]]] = yaml.safe_load(
    (HERE / "broken_files.yml").read_text(encoding="utf-8")
)
FILES: Final = {"unit": "unit_specs/unit.yml", "model": "unit_specs/models/model.yml"}


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """Return a copy of the sound workspace, to break."""
    return Path(shutil.copytree(HERE / "workspace", tmp_path / "workspace"))


def test_the_workspace_is_sound(workspace: Path) -> None:
    """Without this, a case could pass by a problem that is not its own."""
    assert load_unit(workspace / FILES["unit"], workspace).notes == ()


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_a_broken_file_is_told(case: dict[str, Any], workspace: Path) -> None:
    """The whole text is compared: a person mends the file by nothing else."""
    for change in case["change"]:
        path = workspace / FILES[change["in"]]
        text = path.read_text(encoding="utf-8")
        assert text.count(change["from"]) == 1, change["from"]
        path.write_text(text.replace(change["from"], change["to"]), encoding="utf-8")

    with pytest.raises(ProblemsFound) as found:
        load_unit(workspace / FILES["unit"], workspace)

    assert f"{found.value}\n" == case["says"]


def test_each_case_is_another() -> None:
    """Two cases of one text would count twice what is tried once."""
    told = [case["says"] for case in CASES]
    assert len(set(told)) == len(told) > 100
    words = " ".join(told)
    for leaked in ("Input should", "pydantic", "validation error", "union_tag", "<"):
        assert leaked not in words.replace("'<b>'", "").replace("'<<'", "").replace(
            "<U+", ""
        )
