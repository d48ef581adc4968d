"""``hatchleaf private``: written outside of the site, whole or not at all."""

from __future__ import annotations

import subprocess

import pytest

from cli.terminal import NAMES, Folder
from hatchleaf.spec.source import read

PAGE, PAPER = "private-copy.html", "private-copy.pdf"


def _code(workspace: Folder, name: str) -> str:
    tree = read(workspace.path / f"unit_specs/{name}.yml", workspace.path)
    return tree.fields["code"].text or ""


def _below(workspace: Folder, *folders: str) -> dict[str, bytes]:
    files = workspace.files()
    return {k: v for k, v in files.items() if k.startswith(folders)}


@pytest.mark.parametrize("name", NAMES)
def test_both_files_and_nothing_in_the_site(workspace: Folder, name: str) -> None:
    """A page and a PDF in a folder of the unit's own; the site is not touched."""
    code = _code(workspace, name)
    site = _below(workspace, "site/")
    done = workspace.run("private", name)
    assert done.code == 0, done.err
    assert PAGE in done.out
    assert PAPER in done.out
    files = _below(workspace, "private/")
    assert set(files) == {
        "private/.gitignore",
        f"private/{code}/{PAGE}",
        f"private/{code}/{PAPER}",
    }
    assert files["private/.gitignore"] == b"*\n"
    assert _below(workspace, "site/") == site
    again = workspace.run("private", name)
    assert again.code == 0
    assert _below(workspace, "private/") == files, "the same bytes"


def test_git_leaves_it_alone(workspace: Folder) -> None:
    """A VIN must not get into a repository by a careless git add."""
    assert workspace.run("private", "heron-a").code == 0
    (workspace.path / ".gitignore").unlink()  # as in a workspace of long ago
    for command in (["init", "-q"], ["add", "-A"]):
        subprocess.run(["git", *command], cwd=workspace.path, check=True)
    kept = subprocess.run(
        ["git", "ls-files"],
        cwd=workspace.path,
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    assert "unit_specs/heron-a.yml" in kept
    assert "private/" not in kept


@pytest.mark.parametrize("to", ["site", "site/x", "elsewhere", "site/../site/y"])
def test_never_below_the_site(workspace: Folder, to: str) -> None:
    """What is there gets published, by whatever name the folder is reached."""
    (workspace.path / "elsewhere").symlink_to("site", target_is_directory=True)
    before = workspace.files()
    done = workspace.run("private", "heron-a", "--to", to)
    assert done.code == 2
    assert "does not belong in the site folder" in done.err
    assert workspace.files() == before


def test_to_a_folder_of_ones_own(workspace: Folder) -> None:
    """A folder for each unit below it, so that nothing else there is in danger."""
    letters = workspace.path / "handed-over"
    letters.mkdir()
    (letters / "letter.txt").write_text("kept", encoding="utf-8")
    assert workspace.run("private", "heron-a", "--to", "handed-over").code == 0
    code = _code(workspace, "heron-a")
    assert set(_below(workspace, "handed-over/")) == {
        "handed-over/letter.txt",
        f"handed-over/{code}/{PAGE}",
        f"handed-over/{code}/{PAPER}",
    }
    assert not (workspace.path / "private").exists()


def test_what_somebody_put_there_is_not_lost(workspace: Folder) -> None:
    """The folder is exchanged as a whole, so a scan in it stops the command."""
    assert workspace.run("private", "heron-a").code == 0
    folder = workspace.path / "private" / _code(workspace, "heron-a")
    (folder / "scan.jpg").write_bytes(b"scan")
    workspace.edit("unit_specs/heron-a.yml", "MQ24-0173", "MQ24-9999")
    before = _below(workspace, "private/")
    done = workspace.run("private", "heron-a")
    assert done.code == 1
    assert "scan.jpg" in done.err
    assert "would be lost" in done.err
    assert _below(workspace, "private/") == before


def test_a_unit_that_stays_here_has_none(workspace: Folder) -> None:
    """It is part of the hand-over: an open recall refuses it, and nothing is left."""
    workspace.edit("unit_specs/heron-a.yml", "open: no}", "open: yes}")
    done = workspace.run("private", "heron-a")
    assert done.code == 1
    assert "recall" in done.err
    assert not (workspace.path / "private").exists()
