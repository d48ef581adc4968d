"""
A chart of days: a bar for each row, its length the days, in groups under a name.

Every bar has its days beside it and each group a hatch of its own, so that it reads
in black and white, by night and by those who do not see colors.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

from jinja2 import Environment, StrictUndefined, Template

MOST: Final = 14
"""Days at the right edge; a longer bar is cut off there, open at its end."""
_DAY: Final = 14
"""Width of a day."""
_LEFT: Final = 90
_ROW: Final = 18
_BAR: Final = 12
_HEAD: Final = 26
_NUMBERS: Final = 20
_BESIDE: Final = 56
"""Room for the days beside the longest bar."""
_TICKS: Final = (0, 2, 4, 6, 8, 10, 12, 14)

# One for each group, told apart at a glance: lines, dots, none, all.
_HATCHES: Final = (
    (6, "M0 6L6 0"),
    (6, "M0 0L6 6M0 6L6 0"),
    (3, "M0 1.5H3M1.5 0V3"),
    (5, "M2.5 0V5"),
    (5, "M0 2.5H5"),
    (7, "M2 3.5H5"),
)


@dataclass(frozen=True)
class Bar:
    """One row: what it stands for, its days, and the days in words."""

    words: str
    days: float
    says: str


@dataclass(frozen=True)
class Group:
    """The rows of one thing."""

    words: str
    bars: tuple[Bar, ...]


@cache
def _template() -> Template:
    environment = Environment(autoescape=True, undefined=StrictUndefined)
    source = Path(__file__).with_name("days.svg.j2").read_text(encoding="utf-8")
    return environment.from_string(source)


def chart(groups: Sequence[Group], *, title: str, says: str) -> str:
    """
    Return the SVG of the chart.

    Args:
        groups: What ends, each with its rows; no more than there are hatches.
        title: What a screen reader says of the drawing.
        says: The same as the bars, in words.
    """
    shown: list[dict[str, Any]] = []
    top = 0
    for index, group in enumerate(groups):
        shown.append(_group(group, top, index))
        top += _HEAD + _ROW * len(group.bars)
    height = top + _NUMBERS + 6
    body = _template().render(
        width=_LEFT + _DAY * MOST + _BESIDE,
        height=height,
        left=_LEFT,
        title=title,
        says=says,
        groups=shown,
        grid="".join(f"M{_LEFT + _DAY * day} 22V{top + 4}" for day in _TICKS),
        ticks=[{"x": _LEFT + _DAY * day, "words": day} for day in _TICKS],
        unit_at=_LEFT + _DAY * MOST + 10,
    )
    return body.strip()


def _group(group: Group, top: int, index: int) -> dict[str, Any]:
    step, path = _HATCHES[index]
    rows = [(top + _HEAD + _ROW * at, bar) for at, bar in enumerate(group.bars)]
    return {
        "words": group.words,
        "y": top + 18,
        "hatch": {"step": step, "path": path},
        "fill": f"url(#chart-days-{index + 1})",
        "path": "".join(_outline(y, bar.days) for y, bar in rows),
        "bars": [
            {
                "words": bar.words,
                "says": bar.says,
                "y": y + _BAR - 1,
                "end": _LEFT + _wide(bar.days),
            }
            for y, bar in rows
        ],
    }


def _wide(days: float) -> int:
    return round(min(days, MOST) * _DAY)


def _outline(top: int, days: float) -> str:
    """Return the outline of a bar; one that goes on beyond the edge stays open."""
    across = _wide(days)
    if days <= MOST:
        return f"M{_LEFT} {top}h{across}v{_BAR}h-{across}z"
    return f"M{_LEFT + across} {top}h-{across}v{_BAR}h{across}"
