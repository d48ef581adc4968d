"""Workspaces made by the command itself."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from cli.terminal import Folder


@pytest.fixture(scope="session")
def _samples(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("samples")
    done = Folder(folder).run("init", "--samples")
    assert done.code == 0, done.err
    return folder


@pytest.fixture
def workspace(_samples: Path, tmp_path: Path) -> Folder:
    """Return a fresh workspace with the samples, nothing built yet."""
    path = tmp_path / "guides"
    shutil.copytree(_samples, path)
    return Folder(path)


@pytest.fixture(scope="session")
def built(_samples: Path, tmp_path_factory: pytest.TempPathFactory) -> Folder:
    """Return a workspace with all samples built; only to be looked at."""
    path = tmp_path_factory.mktemp("built") / "guides"
    shutil.copytree(_samples, path)
    done = Folder(path).run("build")
    assert done.code == 0, done.err
    return Folder(path)


@pytest.fixture
def empty(tmp_path: Path) -> Folder:
    """Return an empty folder."""
    path = tmp_path / "empty"
    path.mkdir()
    return Folder(path)
