"""
What people install: a wheel made from the sdist, used far away from the checkout.

Slow, since it fetches every dependency by the lock file, as an owner of a bare
machine would.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
import zipfile
from collections.abc import Mapping
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
UNIT = "heron-a"
CODE = "656572583566170"

pytestmark = pytest.mark.slow


def _run(*command: str | Path, within: Path) -> str:
    """Run a command that must succeed, as if no checkout were near."""
    environment = {k: v for k, v in os.environ.items() if k != "PYTHONPATH"}
    done = subprocess.run(
        [str(part) for part in command],
        cwd=within,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    return done.stdout


def _built(kind: str, source: Path, to: Path) -> Path:
    _run(
        sys.executable,
        "-m",
        "build",
        "--no-isolation",
        f"--{kind}",
        "--outdir",
        to,
        source,
        within=to,
    )
    (made,) = to.glob("*.tar.gz" if kind == "sdist" else "*.whl")
    return made


def _bytes_below(folder: Path) -> Mapping[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.name != ".gitignore"
    }


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a wheel that was built from the unpacked sdist, not from the checkout."""
    folder = tmp_path_factory.mktemp("dist")
    archive = _built("sdist", ROOT, folder)
    with tarfile.open(archive) as packed:
        packed.extractall(folder, filter="data")
    (source,) = (path for path in folder.iterdir() if path.is_dir())
    return _built("wheel", source, folder)


def test_wheel_carries_data(wheel: Path) -> None:
    """Content, samples, theme, fonts and drawings are data that no import would miss."""
    with zipfile.ZipFile(wheel) as packed:
        names = packed.namelist()
    assert len(names) == len(set(names))
    for wanted in (
        "hatchleaf/_builtin/mkdocs.yml",
        "hatchleaf/_builtin/content_blocks/topics.yml",
        f"hatchleaf/_builtin/unit_specs/{UNIT}.yml",
        "hatchleaf/_builtin/unit_specs/models/marlpit-24.yml",
        "hatchleaf/_builtin/unit_specs/photos/waste-valves.png",
        "hatchleaf/drawings/plan.svg.j2",
        "hatchleaf/drawings/unit_map.svg.j2",
        "hatchleaf/theme/page.html",
        "hatchleaf/theme/book.css",
        "hatchleaf/theme/book.html",
        "hatchleaf/theme/door.html",
        "hatchleaf/theme/door.js",
        "hatchleaf/_builtin/content_blocks/search.yml",
        "hatchleaf/theme/assets/inflate.js",
        "hatchleaf/theme/assets/reader.js",
        "hatchleaf/theme/assets/search.js",
        "hatchleaf/theme/fonts/OFL.txt",
        "hatchleaf/theme/typst/stickers.typ",
    ):
        assert wanted in names
    ours = {p.relative_to(ROOT).as_posix() for p in ROOT.glob("content_blocks/**/*.md")}
    packed_blocks = {
        name.removeprefix("hatchleaf/_builtin/")
        for name in names
        if name.endswith(".md")
    }
    assert packed_blocks == ours
    # Records of what was printed belong to whoever printed it.
    assert not [n for n in names if "/printed/" in n or "/published/" in n]


def test_installed_builds_same_bytes(wheel: Path, tmp_path: Path) -> None:
    """Installed from the lock, the command makes in an empty folder what the checkout does."""
    environment = tmp_path / "environment"
    _run(sys.executable, "-m", "venv", environment, within=tmp_path)
    binaries = environment / ("Scripts" if os.name == "nt" else "bin")
    pip = (binaries / "python", "-m", "pip", "install", "--quiet")
    lock = ROOT / "requirements.lock"
    _run(*pip, "--require-hashes", "--requirement", lock, within=tmp_path)
    _run(*pip, "--no-deps", "--no-index", wheel, within=tmp_path)

    empty = tmp_path / "empty"
    empty.mkdir()
    hatchleaf = binaries / "hatchleaf"
    _run(hatchleaf, "init", "--samples", ".", within=empty)
    _run(hatchleaf, "build", UNIT, within=empty)
    _run(hatchleaf, "stickers", UNIT, "--to", "sheet.pdf", within=empty)
    assert (empty / "sheet.pdf").read_bytes().startswith(b"%PDF-")

    own = Path(sys.executable).with_name("hatchleaf")
    _run(own, "build", UNIT, "--site", tmp_path / "site", within=ROOT)
    here = _bytes_below(empty / "site")
    assert f"{CODE}/210/index.html" in here
    assert here == _bytes_below(tmp_path / "site")
