"""Texts of blocks filled in with the unit's values; what cannot be is gathered."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from hatchleaf.blocks.model import Worded
from hatchleaf.blocks.text import Unfillable, fill
from hatchleaf.manual.wording import CALLED, CONTINUED, Wording
from hatchleaf.problems import Problem

_BEFORE: Final = re.compile(r"( *)((?:\d+\.|[-*]) )?")


@dataclass
class Filler:
    """Fills texts and gathers what goes wrong."""

    wording: Wording
    problems: list[Problem] = field(default_factory=list)

    def markdown(self, text: Worded, names: Mapping[str, object]) -> str:
        """Return *text* as Markdown."""
        return indented(self._fill(text, names, "markdown"))

    def plain(self, text: Worded | None, names: Mapping[str, object]) -> str:
        """Return *text* as plain text for a label; "" when there is none."""
        return self._fill(text, names, "plain") if text else ""

    def _fill(self, text: Worded, names: Mapping[str, object], mode: str) -> str:
        try:
            return fill(
                text.text, text.place, names, "plain" if mode == "plain" else "markdown"
            )
        except Unfillable as error:
            self.problems.append(error.problem)
            return ""


def indented(markdown: str) -> str:
    """
    Return *markdown* with each shared text's later lines below its first.

    A text that is called for inside a box or a trouble stays inside it; below a step
    it belongs to the step.
    """
    if CALLED not in markdown:
        return markdown
    made: list[str] = []
    before = ""
    for line in markdown.split("\n"):
        if line.startswith(CONTINUED):
            bare = line.removeprefix(CONTINUED).replace(CALLED, "")
            made.append(before + bare if bare else "")
            continue
        host, called, _ = line.partition(CALLED)
        found = _BEFORE.match(host)
        if called and found:
            before = found[1] + "    " * bool(found[2])
        made.append(line.replace(CALLED, ""))
    return "\n".join(made)
