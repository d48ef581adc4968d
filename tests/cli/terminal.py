"""Running the command in a folder, as a person at a terminal would."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

COMMAND: Final = Path(sys.executable).with_name("hatchleaf")
NAMES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")


@dataclass(frozen=True)
class Done:
    """What a command came to."""

    code: int
    out: str
    err: str


@dataclass(frozen=True)
class Folder:
    """A folder to run the command in, as a person at a terminal would."""

    path: Path

    def run(self, *arguments: str | Path) -> Done:
        """Run ``hatchleaf`` with the arguments; a traceback is never an answer."""
        done = subprocess.run(
            [COMMAND, *map(str, arguments)],
            cwd=self.path,
            env={**os.environ, "COLUMNS": "200"},
            capture_output=True,
            text=True,
            check=False,
            timeout=300,
        )
        assert "Traceback" not in done.stderr, done.stderr
        return Done(done.returncode, done.stdout, done.stderr)

    def files(self) -> Mapping[str, bytes]:
        """Return the bytes of all files by path."""
        return {
            path.relative_to(self.path).as_posix(): path.read_bytes()
            for path in self.path.rglob("*")
            if path.is_file()
        }

    def edit(self, name: str, old: str, new: str) -> None:
        """Replace a text that stands in a file once."""
        path = self.path / name
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1
        path.write_text(text.replace(old, new), encoding="utf-8")

    def place(self, name: str, text: str) -> str:
        """Return where a text stands in a file, as problems name it."""
        before = (self.path / name).read_text(encoding="utf-8").split(text)[0]
        line, column = before.count("\n") + 1, len(before.split("\n")[-1]) + 1
        return f"{name}:{line}:{column}"
