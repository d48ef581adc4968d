"""
Finished files put in place whole: a folder is exchanged with the one before it.

A reader of the folder, and whoever looks after a crash, sees all of the old
files or all of the new ones. Linux exchanges two folders in one step; elsewhere
it takes two renames, with a journal that the next command completes.
Contents are not forced to disk one by one: a build can always be run again.
"""

from __future__ import annotations

import contextlib
import ctypes
import errno
import os
import shutil
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path, PurePosixPath
from typing import BinaryIO, Final

from hatchleaf.problems import Place, Problem, ProblemsFound

WAITING: Final = ".landing"
"""Folder below the target's parent that holds what is not in place yet."""

_NEW: Final = "new"
_OLD: Final = "old"
_JOURNAL: Final = "journal"
_AT_FDCWD: Final = -100
_RENAME_EXCHANGE: Final = 2
_TRIES: Final = 5
_NO_EXCHANGE: Final = (errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP)

Exchange = Callable[[Path, Path], bool]


def land_folder(
    target: Path, files: Mapping[str, bytes], exchange: Exchange | None = None
) -> bool:
    """
    Make ``target`` hold exactly ``files``, in one step; if it does, leave it alone.

    Args:
        target: The folder to replace or make; its parent is made when missing.
        files: Bytes by path below the folder, with forward slashes.
        exchange: How two folders change places; it says False when it cannot.
            The system's own way when left out.

    Returns:
        True when the folder was made or replaced.

    Raises:
        ValueError: A path leads out of the folder.
        ProblemsFound: Another command is at work there.

    """
    finish(target.parent)
    if _holds(target, files):
        return False
    with _alone(target.parent) as waiting:
        _finish(target.parent, waiting)
        place = waiting / target.name
        _write(place / _NEW, files)
        _put(place, target, exchange or exchanged)
        shutil.rmtree(place)
    return True


def land_once(target: Path, files: Mapping[str, bytes]) -> bool:
    """
    Make ``target`` with ``files`` unless it is there; what is there stays as it is.

    Args:
        target: A folder named after its contents, so it never has to change.
        files: Bytes by path below the folder, with forward slashes.

    Returns:
        True when the folder was made.

    Raises:
        ValueError: A path leads out of the folder.
        ProblemsFound: Another command is at work there.

    """
    if target.is_dir():
        return False
    with _alone(target.parent) as waiting:
        _finish(target.parent, waiting)
        place = waiting / target.name
        _write(place / _NEW, files)
        (place / _NEW).rename(target)
        shutil.rmtree(place)
    return True


def land_file(target: Path, content: bytes) -> None:
    """
    Write one file in one step, on disk before it takes its name.

    Args:
        target: The file to replace or make; its folder is made when missing.
        content: Its bytes.

    """
    target.parent.mkdir(parents=True, exist_ok=True)
    waiting = target.with_name(f".{target.name}.{os.getpid()}")
    try:
        with waiting.open("wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        waiting.replace(target)
    finally:
        waiting.unlink(missing_ok=True)


def finish(parent: Path) -> None:
    """
    Complete or undo what an interrupted command left below ``parent``.

    Args:
        parent: The folder whose sub-folders are put in place, such as ``site``.

    Raises:
        ProblemsFound: Another command is at work there.

    """
    if (parent / WAITING).is_dir():
        with _alone(parent) as waiting:
            _finish(parent, waiting)


def exchanged(one: Path, other: Path) -> bool:
    """
    Let two folders change places in one step, where the system can.

    Args:
        one: A folder.
        other: A folder on the same file system.

    Returns:
        False when the system or the file system knows no such step; nothing has
        moved then.

    Raises:
        OSError: The step exists and failed.

    """
    if sys.platform != "linux":
        return False
    rename = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if rename is None:
        return False
    paths = (os.fsencode(one), os.fsencode(other))
    if not rename(_AT_FDCWD, paths[0], _AT_FDCWD, paths[1], _RENAME_EXCHANGE):
        return True
    error = ctypes.get_errno()
    if error in _NO_EXCHANGE:
        return False
    raise OSError(error, os.strerror(error), str(one), None, str(other))


def _put(place: Path, target: Path, exchange: Exchange) -> None:
    if not target.exists():
        (place / _NEW).rename(target)
    elif not exchange(place / _NEW, target):
        # From here on the new folder is whole: whatever happens, it will be used.
        land_file(place / _JOURNAL, b"complete\n")
        target.rename(place / _OLD)
        (place / _NEW).rename(target)


def _finish(parent: Path, waiting: Path) -> None:
    for place in sorted(item for item in waiting.iterdir() if item.is_dir()):
        target = parent / place.name
        new, old = place / _NEW, place / _OLD
        if (place / _JOURNAL).exists() and new.exists():
            if target.exists():
                shutil.rmtree(old, ignore_errors=True)
                target.rename(old)
            new.rename(target)
        shutil.rmtree(place)


def _holds(folder: Path, files: Mapping[str, bytes]) -> bool:
    found = [path for path in folder.rglob("*") if not path.is_dir()]
    names = {path.relative_to(folder).as_posix() for path in found}
    return names == set(files) and all(
        (folder / name).read_bytes() == content for name, content in files.items()
    )


def _write(folder: Path, files: Mapping[str, bytes]) -> None:
    for name in files:
        parts = PurePosixPath(name).parts
        if not parts or name.startswith("/") or ".." in parts or "\\" in name:
            message = f"{name!r} leads out of the folder"
            raise ValueError(message)
    folder.mkdir(parents=True)
    made = {folder}
    for name, content in sorted(files.items()):
        path = folder / name
        if path.parent not in made:
            path.parent.mkdir(parents=True, exist_ok=True)
            made.add(path.parent)
        path.write_bytes(content)


@contextlib.contextmanager
def _alone(parent: Path) -> Iterator[Path]:
    """Hold the waiting folder for one command; the system frees it after a crash."""
    waiting = parent / WAITING
    lock = waiting / "lock"
    with _held(lock) as stream:
        if not _locked(stream.fileno()) or not _named(stream.fileno(), lock):
            raise ProblemsFound(
                [
                    Problem(
                        Place(str(parent)),
                        "",
                        "another command is writing here",
                        hint="wait until it has ended",
                    )
                ]
            )
        try:
            yield waiting
        finally:
            # A waiting folder with leftovers stays for the next command.
            if [item.name for item in waiting.iterdir()] == [lock.name]:
                with contextlib.suppress(OSError):
                    lock.unlink()
                    waiting.rmdir()


def _held(lock: Path) -> BinaryIO:
    for _ in range(_TRIES):
        lock.parent.mkdir(parents=True, exist_ok=True)
        # The command before us may take its emptied folder away at this moment.
        with contextlib.suppress(FileNotFoundError):
            return lock.open("ab")
    return lock.open("ab")


def _named(descriptor: int, lock: Path) -> bool:
    """Say whether the locked file still has its name, which its last user removes."""
    try:
        return os.path.samestat(os.fstat(descriptor), lock.stat())
    except FileNotFoundError:
        return False


def _locked(descriptor: int) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt  # noqa: PLC0415  # only there

            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl  # noqa: PLC0415  # not everywhere

            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
