"""
The chart of what may run together: one square for each pair of things.

Each square holds a word and a hatch, so that it reads in black and white, by night
and by those who do not see colors; a list of the same in words goes with it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, StrictUndefined, Template

_SIZE: Final = 32
_LETTER: Final = 6.4
"""Width of a letter at the chart's size of text, a little on the wide side."""
_WIDEST_WORDS: Final = 26
_KEY_ROW: Final = 22

# From the lightest supply to what no supply carries: ever denser lines.
_HATCHES: Final = (
    (),
    (8, "M0 8L8 0"),
    (5, "M0 5L5 0"),
    (5, "M0 5L5 0M0 0L5 5"),
)
_NONE: Final = (3, "M0 1.5H3M1.5 0V3")


@dataclass(frozen=True)
class Level:
    """One answer: the word in its squares, what the key says, its hatch."""

    word: str
    says: str
    none: bool = False
    """True for what no supply carries."""


@cache
def _template() -> Template:
    # Autoescape: the names of things come from the unit's file.
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("together.svg.j2").read_text(encoding="utf-8")
    return environment.from_string(source)


def chart(
    names: Sequence[str],
    answers: Mapping[tuple[int, int], int],
    levels: Sequence[Level],
    *,
    title: str,
    says: str,
) -> str:
    """
    Return the SVG of the chart.

    Args:
        names: The things, in the order of the table.
        answers: Level of each thing alone ``(i, i)`` and each pair ``(i, j)``, i < j.
        levels: The answers there can be, the lightest first.
        title: What a screen reader says of the drawing.
        says: The same as the squares, in words.
    """
    short = [_cut(name) for name in names]
    left = round(max(len(name) for name in short) * _LETTER + 32)
    fills, shown = _hatches(levels)
    height = 24 + _SIZE * len(names) + 12
    body = _template().render(
        width=max(left + _SIZE * len(names) + 4, 300),
        height=height + _KEY_ROW * len(levels),
        size=_SIZE,
        title=title,
        says=says,
        levels=shown,
        columns=[
            {"x": left + _SIZE * index + _SIZE // 2, "y": 16, "number": index + 1}
            for index in range(len(names))
        ],
        rows=[
            {
                "x": left - 8,
                "y": 24 + _SIZE * index + 20,
                "words": name,
                "number": index + 1,
            }
            for index, name in enumerate(short)
        ],
        cells=[
            {
                "x": left + _SIZE * first,
                "y": 24 + _SIZE * second,
                "text": levels[level].word,
                "fill": fills[level],
            }
            for (first, second), level in answers.items()
        ],
        keys=[
            {
                "x": 8,
                "y": height + _KEY_ROW * index,
                "words": level.says,
                "fill": fills[index],
            }
            for index, level in enumerate(levels)
        ],
    )
    return body.replace("\n", "")


def _cut(name: str) -> str:
    return name if len(name) <= _WIDEST_WORDS else name[: _WIDEST_WORDS - 1] + "…"


def _hatches(levels: Sequence[Level]) -> tuple[list[str], list[dict[str, Any]]]:
    """Return the id of each level's hatch, empty for none, and the hatches."""
    fills: list[str] = []
    shown: list[dict[str, Any]] = []
    for index, level in enumerate(levels):
        hatch = _NONE if level.none else _HATCHES[min(index, len(_HATCHES) - 1)]
        if hatch and level.word != "?":
            shown.append({"hatch": {"step": hatch[0], "path": hatch[1]}})
            fills.append(f"chart-together-{len(shown)}")
        else:
            fills.append("")
    return fills, shown
