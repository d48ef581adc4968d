"""
One unit sent to a host, so that an interruption leaves the version before it.

All that is new waits in a folder beside the pages until it is there whole.  Only then
is it moved in place: shared files, pages, the ways in, and last the worker, whose list
of hashes tells phones that there is something to fetch.  While files are moved the unit
has no edition record, so that whoever comes after an interruption trusts nothing and
uploads all of it.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from hatchleaf.outputs.offline import WORKER
from hatchleaf.outputs.published import Published
from hatchleaf.outputs.website.assets import FOLDER as SHARED
from hatchleaf.outputs.website.assets import RECORD, may_replace, named_in

WAITING: Final = ".upload"
"""Folder of the site on a host that holds what is not in place yet."""

_TYPES: Final = {
    "css": "text/css; charset=utf-8",
    "html": "text/html; charset=utf-8",
    "ics": "text/calendar; charset=utf-8",
    "jpg": "image/jpeg",
    "js": "text/javascript; charset=utf-8",
    "json": "application/json",
    "png": "image/png",
    "txt": "text/plain; charset=utf-8",
    "svg": "image/svg+xml",
    "webmanifest": "application/manifest+json",
    "webp": "image/webp",
}
"""What an object store is told of a file: it serves that and guesses nothing."""

_CODE: Final = re.compile(r"[1-9]\d{14}")
_PAGE: Final = re.compile(r"\d{3}/index\.html")
_WAYS_IN: Final = ("000/index.html", "index.html", "manual.html")
_FOR_GOOD: Final = "public, max-age=31536000, immutable"
_ASK_FIRST: Final = "no-cache"
"""What browsers and whatever is on the way to them do before they show an old file."""


@dataclass(frozen=True)
class Sent:
    """What a publishing came to, by path below the target."""

    put: tuple[str, ...]
    taken_away: tuple[str, ...]


@dataclass
class Upload:
    """One unit on its way to a host."""

    disk: Any
    """A file system of fsspec."""
    base: str
    """The site's path there, without a slash at its end."""
    code: str
    files: Mapping[str, bytes]
    """All that the unit's part of the site is to hold, by path below it."""
    stores: bool
    """True for a store of objects, which knows no folders and is told of types."""
    _made: set[str] = field(default_factory=set)

    def run(self, before: Published | None) -> Sent:
        """
        Upload what is not there yet and take away what is no longer part of it.

        Args:
            before: What was last published to this host.
        """
        self.disk.invalidate_cache()
        there = self._there()
        record = f"{self.code}/{RECORD}"
        sure = before is not None and self._complete(there, before)
        known = before.files if before and sure else {}
        put = self._changed(there, known)
        gone = sorted(there.keys() - self.files.keys())
        waiting = f"{WAITING}/{self.code}"
        self._clear(waiting)
        if not put and not gone:
            self._drop_folder(WAITING)
            return Sent((), ())
        new = sorted({*put, record}, key=self._turn)
        for name in new:
            self._write(f"{waiting}/{name}", self.files[name])
        if record in there:
            self.disk.rm_file(self._at(record))
        for name in new:
            self._move(f"{waiting}/{name}", name)
        for name in gone:
            self.disk.rm_file(self._at(name))
            self._drop_folder(name.rpartition("/")[0])
        self._clear(waiting)
        self._drop_folder(WAITING)
        if not sure or any(name.startswith(f"{SHARED}/") for name in put):
            self._sweep()
        return Sent(tuple(sorted(put)), tuple(gone))

    def _at(self, name: str) -> str:
        return f"{self.base}/{name}"

    def _there(self) -> dict[str, int]:
        """Return the sizes of what the host has of this unit and its shared files."""
        folders = {name.rpartition("/")[0] for name in self.files if "/" in name}
        tops = {self.code} | {one for one in folders if one.startswith(f"{SHARED}/")}
        sizes: dict[str, int] = {}
        for top in tops:
            found = self.disk.find(self._at(top), detail=True)
            sizes.update({self._name(path): row["size"] for path, row in found.items()})
        for name in self._root():
            with contextlib.suppress(FileNotFoundError):
                sizes[name] = self.disk.info(self._at(name))["size"]
        # What is beside ours in a shared folder is not this unit's to take away.
        return {
            name: size
            for name, size in sizes.items()
            if name in self.files or name.startswith(f"{self.code}/")
        }

    def _name(self, path: str) -> str:
        return str(path).removeprefix(f"{self.base}/")

    def _changed(
        self, there: Mapping[str, int], known: Mapping[str, str]
    ) -> tuple[str, ...]:
        """Return what the host has not, or with another digest than is *known*."""
        return tuple(name for name in self.files if self._differs(name, there, known))

    def _differs(
        self, name: str, there: Mapping[str, int], known: Mapping[str, str]
    ) -> bool:
        content = self.files[name]
        if name not in there:
            return True
        if "/" not in name:
            # Each unit brings the root's pages along: the record of one does not tell.
            return may_replace(self.disk.cat_file(self._at(name)), content)
        # A shared file is named by its content, and so is there or is not.
        return there[name] != len(content) or not (
            name.startswith(f"{SHARED}/") or known.get(name) == _sha256(content)
        )

    def _root(self) -> tuple[str, ...]:
        """Return the pages of the root, which all units share."""
        return tuple(name for name in self.files if "/" not in name)

    def _complete(self, there: Mapping[str, int], before: Published) -> bool:
        """Return True when the host has the whole version that we remember."""
        name = f"{self.code}/{RECORD}"
        if name not in there:
            return False
        return _sha256(self.disk.cat_file(self._at(name))) == before.files.get(name)

    def _turn(self, name: str) -> tuple[int, str]:
        """Return when a file is moved in place: what others lead to comes first."""
        own = name.removeprefix(f"{self.code}/")
        if own == name:
            return (0 if "/" in name else 3), name
        last = {RECORD: 5, WORKER: 4} | dict.fromkeys(_WAYS_IN, 3)
        return last.get(own, 2 if _PAGE.fullmatch(own) else 1), name

    def _write(self, name: str, content: bytes) -> None:
        self._make_folder(name)
        told = {}
        if self.stores:
            ending = name.rpartition(".")[2]
            told["ContentType"] = _TYPES.get(ending, "application/octet-stream")
            place = name.removeprefix(f"{WAITING}/{self.code}/")
            shared = place.startswith(f"{SHARED}/")
            told["CacheControl"] = _FOR_GOOD if shared else _ASK_FIRST
        self.disk.pipe_file(self._at(name), content, **told)

    def _move(self, name: str, to: str) -> None:
        self._make_folder(to)
        self.disk.mv(self._at(name), self._at(to))

    def _make_folder(self, name: str) -> None:
        folder = name.rpartition("/")[0]
        if not self.stores and folder not in self._made:
            self.disk.makedirs(self._at(folder), exist_ok=True)
            self._made.add(folder)

    def _clear(self, folder: str) -> None:
        """Take away a folder of ours with all that an interruption left in it."""
        path = self._at(folder)
        found = self.disk.find(path, detail=True, withdirs=not self.stores)
        for name in sorted(found, reverse=True):
            if found[name]["type"] == "directory":
                self.disk.rmdir(name)
            else:
                self.disk.rm_file(name)
        self._drop_folder(folder)
        self._made = {one for one in self._made if not one.startswith(folder)}

    def _drop_folder(self, folder: str) -> None:
        """Take away a folder if it is empty."""
        if not self.stores:
            # Another unit's files may wait there, or it was gone before.
            with contextlib.suppress(OSError):
                self.disk.rmdir(self._at(folder))

    def _sweep(self) -> None:
        """Take away shared folders that no unit names; none while one may be moving."""
        self.disk.invalidate_cache()
        named = set()
        for page in self._root():
            named |= named_in(self.files[page])
        for unit in self._folders(""):
            if _CODE.fullmatch(unit):
                try:
                    record = json.loads(
                        self.disk.cat_file(self._at(f"{unit}/{RECORD}"))
                    )
                    named.add(str(record["shared"]))
                except (OSError, ValueError, KeyError, TypeError):
                    return
        for folder in self._folders(f"/{SHARED}"):
            if f"{SHARED}/{folder}" not in named:
                self._clear(f"{SHARED}/{folder}")

    def _folders(self, below: str) -> list[str]:
        rows = self.disk.ls(f"{self.base}{below}" or "/", detail=True)
        return [
            str(row["name"]).rstrip("/").rpartition("/")[2]
            for row in rows
            if row["type"] == "directory"
        ]


def _sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
