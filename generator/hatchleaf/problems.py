"""
Problems that a person can fix in a file: where, what, what is allowed, a hint.

Everything else that goes wrong is a bug and keeps its traceback.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, order=True)
class Place:
    """A position in a file; lines and columns count from 1."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        """Return ``file:line:column``, which editors make clickable."""
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, order=True)
class Problem:
    """
    One thing to put right.

    A ``note`` is worth reading and stops nothing; a ``problem`` stops the work.
    """

    place: Place
    field: str
    what: str
    allowed: str = ""
    hint: str = ""
    severity: Literal["problem", "note"] = "problem"

    def __str__(self) -> str:
        """Return the text for a terminal: one line, then what helps."""
        head = f"{self.place}: {self.field}: " if self.field else f"{self.place}: "
        if self.severity == "note":
            head += "note: "
        lines = [head + self.what]
        if self.allowed:
            lines.append(f"    allowed: {self.allowed}")
        if self.hint:
            lines.append(f"    hint: {self.hint}")
        return "\n".join(lines)


class ProblemsFound(Exception):  # noqa: N818  # it reports findings, all at once
    """Raised once a stage has looked at everything and cannot go on."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        """Keep the problems, sorted by place, each once."""
        self.problems: tuple[Problem, ...] = tuple(sorted(set(problems)))
        super().__init__("\n".join(str(problem) for problem in self.problems))


def suggestion(word: str, allowed: Iterable[str]) -> str:
    """Return ``did you mean 'x'?`` for the nearest allowed word, else nothing."""
    near = difflib.get_close_matches(word, sorted(allowed), n=1, cutoff=0.6)
    return f"did you mean '{near[0]}'?" if near else ""


def listed(words: Iterable[str]) -> str:
    """Return the words in one line, as the ``allowed`` text of a problem."""
    return ", ".join(sorted(words))
