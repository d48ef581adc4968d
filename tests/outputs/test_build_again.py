"""Why: an address is printed for years; the same files must give the same guide."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from hatchleaf.library import builtin

COMMAND = "from hatchleaf.cli.main import main; main()"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a workspace of its own with the sample units."""
    root = tmp_path / "dealer"
    shutil.copytree(builtin() / "unit_specs", root / "unit_specs")
    shutil.copy(builtin() / "mkdocs.yml", root)
    return root


def built(root: Path, cwd: Path, **variables: str) -> dict[str, bytes]:
    """Build every sample in a process of its own; return what is published."""
    done = subprocess.run(
        [sys.executable, "-c", COMMAND, "build", "--workspace", str(root)],
        cwd=cwd,
        env={**os.environ, **variables},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return contents(root / "site")


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file below the folder by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_the_same_bytes_with_and_without_what_is_kept(
    root: Path, tmp_path: Path
) -> None:
    """
    Run after run, elsewhere, in another zone, with the cache and without.

    What is kept from earlier runs only saves time.
    """
    first = built(root, root, PYTHONHASHSEED="0", TZ="UTC")
    assert sum(name.endswith("000/index.html") for name in first) == 6
    assert (root / ".hatchleaf").is_dir()
    kept = built(root, tmp_path, PYTHONHASHSEED="7", TZ="Pacific/Kiritimati")
    assert kept == first
    shutil.rmtree(root / ".hatchleaf")
    anew = built(root, tmp_path, PYTHONHASHSEED="8", TZ="Asia/Kathmandu", LC_ALL="C")
    assert anew == first


def test_a_build_writes_its_site_and_its_cache_alone(root: Path) -> None:
    """Nothing is left beside the files that people edit."""
    before = contents(root)
    built(root, root)
    after = contents(root)
    kept = {name for name in after if not name.startswith(("site/", ".hatchleaf/"))}
    assert {name: after[name] for name in kept} == before


def test_a_damaged_cache_is_no_matter(root: Path) -> None:
    """A disk that was full, or a run that was cut off, leaves half a file."""
    first = built(root, root)
    looked = 0
    for path in (root / ".hatchleaf").rglob("*"):
        if path.is_file():
            path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
            looked += 1
    assert looked > 2
    assert built(root, root) == first
