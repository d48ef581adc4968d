"""Why: a guide that owners open must never be half old and half new."""

from __future__ import annotations

import multiprocessing
import os
import shutil
import stat
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest

from hatchleaf.outputs import land
from hatchleaf.problems import ProblemsFound

OLD = {"000/index.html": b"old home", "210/index.html": b"old inlet"}
NEW = {"000/index.html": b"new home", "230/index.html": b"new pump"}


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file below the folder by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def cannot(one: Path, other: Path) -> bool:
    """Stand for a system without an exchange of two folders."""
    return False


WAYS = pytest.mark.parametrize("exchange", [None, cannot], ids=["one step", "renames"])


@WAYS
def test_a_folder_is_made_and_replaced(
    tmp_path: Path, exchange: land.Exchange | None
) -> None:
    """Files that the new folder lacks must go: they speak of what is not fitted."""
    site = tmp_path / "site"
    target = site / "839201743651830"
    land.land_folder(target, OLD, exchange)
    assert contents(target) == OLD
    land.land_folder(target, NEW, exchange)
    assert contents(site) == {f"839201743651830/{k}": v for k, v in NEW.items()}


def test_what_has_not_changed_is_left_alone(tmp_path: Path) -> None:
    """Whoever copies changed files onward finds none; one more file is a change."""
    target = tmp_path / "site" / "1"
    assert land.land_folder(target, OLD)
    before = (target / "000").stat()
    assert not land.land_folder(target, OLD)
    after = (target / "000").stat()
    assert (before.st_ino, before.st_mtime_ns) == (after.st_ino, after.st_mtime_ns)
    (target / "more.html").touch()
    assert land.land_folder(target, OLD)
    assert contents(target) == OLD
    assert land.land_folder(target, {**OLD, "000/index.html": b"new home"})


@pytest.mark.skipif(sys.platform != "linux", reason="renameat2 is Linux's")
def test_two_folders_change_places_in_one_step(tmp_path: Path) -> None:
    """On Linux the one-step way is the one that is used."""
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    (tmp_path / "a" / "one").touch()
    assert land.exchanged(tmp_path / "a", tmp_path / "b")
    assert [item.name for item in (tmp_path / "b").iterdir()] == ["one"]
    with pytest.raises(FileNotFoundError):
        land.exchanged(tmp_path / "a", tmp_path / "missing")


@pytest.mark.skipif(sys.platform != "linux", reason="renameat2 is Linux's")
def test_there_is_no_moment_without_the_guide(tmp_path: Path) -> None:
    """Whoever asks while folders are exchanged finds one; two renames leave a gap."""
    target = tmp_path / "site" / "1"
    land.land_folder(target, OLD)
    seen: set[bool] = set()
    done = threading.Event()

    def look() -> None:
        while not done.is_set():
            seen.add(target.is_dir())

    reader = threading.Thread(target=look)
    reader.start()
    for _ in range(60):
        land.land_folder(target, NEW)
        land.land_folder(target, OLD)
    done.set()
    reader.join()
    assert seen == {True}


class Crashed(BaseException):
    """The machine stopped here."""


@pytest.mark.parametrize("step", range(12))
@WAYS
def test_a_crash_at_any_step_leaves_old_or_new(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    exchange: land.Exchange | None,
    step: int,
) -> None:
    """
    After `finish` there is the whole old or the whole new folder, nothing else.

    Every call that changes a name or a file counts as one step; the stop comes
    in the place of step number ``step``, and cleaning up is stopped as well.
    """
    target = tmp_path / "site" / "1"
    land.land_folder(target, OLD)
    left = step

    def stopping(original: Callable[..., object]) -> Callable[..., object]:
        def call(*arguments: object, **named: object) -> object:
            nonlocal left
            if left <= 0:
                raise Crashed
            left -= 1
            return original(*arguments, **named)

        return call

    with monkeypatch.context() as patch:
        for name in ("rename", "replace", "mkdir", "write_bytes"):
            patch.setattr(Path, name, stopping(getattr(Path, name)))
        patch.setattr(shutil, "rmtree", stopping(shutil.rmtree))
        try:
            land.land_folder(target, NEW, exchange)
        except Crashed:
            crashed = True
        else:
            crashed = False
    assert crashed or step > 4
    land.finish(tmp_path / "site")
    assert contents(tmp_path / "site") in (
        {f"1/{k}": v for k, v in OLD.items()},
        {f"1/{k}": v for k, v in NEW.items()},
    )
    assert os.listdir(tmp_path / "site") == ["1"]  # noqa: PTH208


def test_between_two_renames_the_next_command_completes(tmp_path: Path) -> None:
    """With the old folder away and the new one not yet there, the new one wins."""
    site = tmp_path / "site"
    place = site / land.WAITING / "1"
    for name, files in (("old", OLD), ("new", NEW)):
        for path, content in files.items():
            (place / name / path).parent.mkdir(parents=True)
            (place / name / path).write_bytes(content)
    (place / "journal").write_bytes(b"complete\n")
    land.land_folder(site / "2", OLD)
    assert contents(site / "1") == NEW
    assert sorted(os.listdir(site)) == ["1", "2"]  # noqa: PTH208


def test_once_means_never_changed(tmp_path: Path) -> None:
    """A folder named by its contents is not touched again, whatever is offered."""
    target = tmp_path / "site" / "a" / "c0ffee"
    assert land.land_once(target, {"page.css": b"body{}"})
    assert not land.land_once(target, {"page.css": b"other"})
    assert contents(tmp_path) == {"site/a/c0ffee/page.css": b"body{}"}
    assert os.listdir(target.parent) == ["c0ffee"]  # noqa: PTH208


@pytest.mark.parametrize("name", ["../out", "/etc/out", "a/../../out", "", "a\\..\\b"])
def test_no_path_leads_out(tmp_path: Path, name: str) -> None:
    """A path that leaves the folder is refused before anything is written."""
    target = tmp_path / "site" / "1"
    land.land_folder(target, OLD)
    with pytest.raises(ValueError, match="leads out"):
        land.land_folder(target, {name: b"x"})
    assert contents(tmp_path / "site") == {f"1/{k}": v for k, v in OLD.items()}


@pytest.mark.skipif(sys.platform == "win32", reason="permission bits")
def test_a_web_server_may_read_what_is_landed(tmp_path: Path) -> None:
    """Folders have the usual permissions, not those of a private temporary one."""
    mask = os.umask(0o022)
    try:
        land.land_folder(tmp_path / "site" / "1", OLD)
    finally:
        os.umask(mask)
    for path in (tmp_path / "site").rglob("*"):
        assert stat.S_IMODE(path.stat().st_mode) & 0o044 == 0o044, path


def hold(parent: Path, held: object, free: object) -> None:
    """Hold the folder in another process until told to let go."""
    with land._alone(parent):
        held.set()  # type: ignore[attr-defined]
        free.wait(30)  # type: ignore[attr-defined]


def test_two_commands_do_not_write_at_once(tmp_path: Path) -> None:
    """The second is told; once the first has ended, even by force, it may."""
    site = tmp_path / "site"
    context = multiprocessing.get_context("fork")
    held, free = context.Event(), context.Event()
    other = context.Process(target=hold, args=(site, held, free))
    other.start()
    assert held.wait(30)
    with pytest.raises(ProblemsFound, match="another command is writing here"):
        land.land_folder(site / "1", OLD)
    other.kill()
    other.join()
    land.land_folder(site / "1", OLD)
    assert os.listdir(site) == ["1"]  # noqa: PTH208


def test_a_file_is_replaced_whole(tmp_path: Path) -> None:
    """A failed write leaves the old file and no leftover."""
    target = tmp_path / "ledger" / "row.json"
    land.land_file(target, b"one")
    with pytest.raises(TypeError):
        land.land_file(target, "not bytes")  # type: ignore[arg-type]
    assert contents(tmp_path) == {"ledger/row.json": b"one"}
