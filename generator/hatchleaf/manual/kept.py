"""
Fragments kept from one build to the next, in a file that may be deleted any time.

A key is a hash of the text and the converter's version, so that an old fragment
can never stand for a new text.
"""

from __future__ import annotations

import contextlib
import json
import os
from collections.abc import Iterator, MutableMapping
from pathlib import Path
from types import TracebackType
from typing import Final, Self

_MANY: Final = 5_000


class Kept(MutableMapping[str, str]):
    """The kept fragments; when they are many, only those asked for are kept on."""

    def __init__(self, path: Path) -> None:
        """Read the file at *path*; one that cannot be read counts as empty."""
        self._path = path
        self._used: dict[str, str] = {}
        self._changed = False
        try:
            self._kept: dict[str, str] = dict(json.loads(path.read_text("utf-8")))
        except (OSError, ValueError):
            self._kept = {}

    def __getitem__(self, key: str) -> str:
        """Return a kept fragment, and keep it for another build."""
        value = self._used[key] = self._kept[key]
        return value

    def __setitem__(self, key: str, value: str) -> None:
        """Keep a new fragment."""
        self._kept[key] = self._used[key] = value
        self._changed = True

    def __delitem__(self, key: str) -> None:
        """Forget a fragment."""
        del self._kept[key]
        self._used.pop(key, None)

    def __iter__(self) -> Iterator[str]:
        """Iterate over the keys."""
        return iter(self._kept)

    def __len__(self) -> int:
        """Return how many are kept."""
        return len(self._kept)

    def __enter__(self) -> Self:
        """Return itself."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Write the file, unless nothing is new; a disk that refuses is no matter."""
        if not self._changed:
            return
        waiting = self._path.with_name(f".{self._path.name}.{os.getpid()}")
        with contextlib.suppress(OSError):
            keep = self._kept if len(self._kept) < _MANY else self._used
            waiting.write_text(json.dumps(keep), "utf-8")
            waiting.replace(self._path)
        with contextlib.suppress(OSError):
            waiting.unlink(missing_ok=True)
