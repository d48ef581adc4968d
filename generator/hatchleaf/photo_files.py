"""Photos on disk: files read for a unit, and pictures kept that may be deleted."""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Iterator, MutableMapping
from pathlib import Path
from typing import TYPE_CHECKING, Final

from hatchleaf.library import UNITS
from hatchleaf.photos.model import LARGEST_FILE, Sources
from hatchleaf.problems import Problem, listed, suggestion

if TYPE_CHECKING:
    from hatchleaf.spec.load import LoadedUnit

FOLDER: Final = "photos"
"""Below the cache."""
_MANY: Final = 2_000
_DIGEST: Final = hashlib.sha256().digest_size


def photo_sources(loaded: LoadedUnit, root: Path, cache: Path) -> Sources:
    """
    Return the files of a unit's photos.

    Args:
        loaded: The unit; its photos' files count from ``unit_specs/``.
        root: The workspace.
        cache: The workspace's cache, where finished pictures are kept.

    Returns:
        What could be read, and the problems of what could not.
    """
    photos = loaded.spec.photos
    files: dict[str, bytes] = {}
    problems: list[Problem] = []
    for photo in () if isinstance(photos, str) else photos:
        path = f"photos[{photo.id}].file"
        try:
            files[photo.id] = _read(root / UNITS, photo.file)
        except _NotReadError as error:
            place = loaded.place_of(path)
            problems.append(Problem(place, path, error.what, error.allowed, error.hint))
    return Sources(files, KeptPictures(cache / FOLDER), tuple(problems))


class _NotReadError(Exception):
    def __init__(self, what: str, allowed: str = "", hint: str = "") -> None:
        super().__init__(what)
        self.what, self.allowed, self.hint = what, allowed, hint


def _read(folder: Path, name: str) -> bytes:
    """Return the bytes of a file below *folder*, wherever links may lead."""
    path = folder / name
    try:
        real = path.resolve()
        if not real.is_relative_to(folder.resolve()):
            what = f"'{name}' is a link that leads out of {UNITS}/"
            raise _NotReadError(what, hint="put the file itself there")
        if not real.is_file():
            raise _NotReadError(f"there is no file {UNITS}/{name}", *_others(path))
        with real.open("rb") as stream:
            # What is longer is refused anyway.
            return stream.read(LARGEST_FILE + 1)
    except (OSError, RuntimeError) as error:  # the second: links in a ring
        what = getattr(error, "strerror", None) or "links lead in a ring"
        raise _NotReadError(f"{UNITS}/{name}: {what.lower()}") from None


def _others(path: Path) -> tuple[str, str]:
    """Return what is there instead, and what may have been meant."""
    found = []
    if path.parent.is_dir():
        found = [other.name for other in path.parent.iterdir() if other.is_file()]
    few = listed(found[:12]) if found else ""
    return few, suggestion(path.name, found)


class KeptPictures(MutableMapping[str, bytes]):
    """
    Pictures kept from one build to the next, a file each.

    A key holds the digest of the photo and all else that the picture depends on, so
    an old one can never stand for a new one; a file that was cut short counts as none.
    """

    def __init__(self, folder: Path) -> None:
        """Keep the pictures in *folder*, which need not be there."""
        self._folder = folder

    def __getitem__(self, key: str) -> bytes:
        """Return a kept picture."""
        try:
            content = (self._folder / key).read_bytes()
        except OSError:
            raise KeyError(key) from None
        digest, data = content[:_DIGEST], content[_DIGEST:]
        if hashlib.sha256(data).digest() != digest:
            raise KeyError(key)
        return data

    def __setitem__(self, key: str, data: bytes) -> None:
        """Keep a picture; a disk that refuses is no matter."""
        waiting = self._folder / f".{key}.{os.getpid()}"
        with contextlib.suppress(OSError):
            self._folder.mkdir(parents=True, exist_ok=True)
            if len(self) >= _MANY:
                self.clear()
            waiting.write_bytes(hashlib.sha256(data).digest() + data)
            waiting.replace(self._folder / key)

    def __delitem__(self, key: str) -> None:
        """Forget a picture."""
        try:
            (self._folder / key).unlink()
        except OSError:
            raise KeyError(key) from None

    def __iter__(self) -> Iterator[str]:
        """Iterate over the keys."""
        if self._folder.is_dir():
            yield from (path.name for path in list(self._folder.iterdir()))

    def __len__(self) -> int:
        """Return how many are kept."""
        return sum(1 for _ in self)
