"""
Templates as earlier runs compiled them, in a folder that may be deleted any time.

Jinja names a compiled template by a hash of its text, so an edit is seen at once.
"""

from __future__ import annotations

import atexit
import base64
import contextlib
import json
import os
from functools import cache
from pathlib import Path
from typing import Final

import jinja2
from jinja2.bccache import Bucket

CACHE_VARIABLE: Final = "HATCHLEAF_CACHE"
"""As `hatchleaf.units` has it, whose import would cost more than is saved here."""


_MANY: Final = 3_000
"""Templates to keep; beyond, those that no build of today has asked for are dropped."""


def kept_templates(rules: str) -> jinja2.BytecodeCache | None:
    """
    Return where an environment keeps its compiled templates, None for nowhere.

    Args:
        rules: A name for the environment's settings that change what is compiled.

    Returns:
        A cache in the folder that the edge has named, the one that pint uses too.
    """
    named = os.environ.get(CACHE_VARIABLE)
    if not named:
        return None
    return _shared(Path(named) / f"templates-{jinja2.__version__}-{rules}.json")


class _OneFile(jinja2.BytecodeCache):
    """All compiled templates of one environment in one file, written at the end."""

    def __init__(self, path: Path) -> None:
        """Read the file at *path*; one that cannot be read counts as empty."""
        self._path = path
        self._changed = False
        self._process = os.getpid()
        self._used: dict[str, str] = {}
        try:
            self._kept: dict[str, str] = dict(json.loads(path.read_text("utf-8")))
        except (OSError, ValueError):
            self._kept = {}
        _OPEN.append(self)

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill *bucket* with what is kept of it; Jinja checks that it fits."""
        key = self._key(bucket)
        found = self._kept.get(key)
        if found is not None:
            self._used[key] = found
            with contextlib.suppress(ValueError, EOFError, TypeError):
                bucket.bytecode_from_string(base64.b64decode(found))

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep what was compiled."""
        made = base64.b64encode(bucket.bytecode_to_string()).decode("ascii")
        key = self._key(bucket)
        self._kept[key] = self._used[key] = made
        self._changed = True

    def write(self) -> None:
        """Write the file, unless nothing is new; a disk that refuses is no matter."""
        if not self._changed or os.getpid() != self._process:
            return
        waiting = self._path.with_name(f".{self._path.name}.{os.getpid()}")
        with contextlib.suppress(OSError):
            self._path.parent.mkdir(parents=True, exist_ok=True)
            keep = self._kept if len(self._kept) < _MANY else self._used
            waiting.write_text(json.dumps(keep), "utf-8")
            waiting.replace(self._path)
        with contextlib.suppress(OSError):
            waiting.unlink(missing_ok=True)

    @staticmethod
    def _key(bucket: Bucket) -> str:
        # A key is the template's name; the checksum is of its text, so that an edit
        # is seen at once.
        return f"{bucket.key}-{bucket.checksum}"


_OPEN: Final[list[_OneFile]] = []


@cache
def _shared(path: Path) -> _OneFile:
    # Two that write the same file would lose what the other has compiled.
    return _OneFile(path)


@atexit.register
def write_kept() -> None:
    """Write what this process has compiled; at its end, or before it is cut short."""
    for one in _OPEN:
        one.write()
