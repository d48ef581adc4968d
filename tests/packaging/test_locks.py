"""The lock files: exact, hashed, complete, and silent about where they were made."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
FILES = ("requirements.lock", "requirements-dev.lock")


def _locked(name: str) -> Mapping[str, set[str]]:
    """Return the versions of each package; there are two where Pythons differ."""
    found: dict[str, set[str]] = {}
    for line in (ROOT / name).read_text(encoding="utf-8").splitlines():
        if exact := re.match(r"([A-Za-z0-9._-]+)==([^\s;\\]+)", line):
            found.setdefault(canonicalize_name(exact[1]), set()).add(exact[2])
    return found


def _asked(name: str) -> list[str]:
    project: dict[str, Any] = tomllib.loads(
        (ROOT / "pyproject.toml").read_text("utf-8")
    )
    groups = project["dependency-groups"]
    asked = [*project["project"]["dependencies"], *groups["backend"]]
    return asked + groups["dev"] if "dev" in name else asked


@pytest.mark.parametrize("name", FILES)
def test_complete(name: str) -> None:
    """Whoever adds a dependency runs ``make lock``, or nobody else can install it."""
    locked = _locked(name)
    for wanted in map(Requirement, _asked(name)):
        versions = locked.get(canonicalize_name(wanted.name))
        assert versions, f"{wanted} is missing: run make lock"
        assert all(wanted.specifier.contains(version) for version in versions), wanted


def test_same_versions() -> None:
    """Tests run with what users get."""
    run_time, development = map(_locked, FILES)
    assert run_time == {name: development[name] for name in run_time}


@pytest.mark.parametrize("name", FILES)
def test_hashed_and_silent(name: str) -> None:
    """Each package has hashes; no host, address or path of a machine is told."""
    text = (ROOT / name).read_text(encoding="utf-8")
    entries = re.split(r"(?m)^(?=[A-Za-z0-9])", text)[1:]
    assert len(entries) > 30
    assert all("--hash=sha256:" in entry for entry in entries)
    assert "://" not in text
    assert "--index" not in text
    assert not re.search(r"(^|\s)/", text)
