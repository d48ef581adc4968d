"""A journey's steps as a list to tick, in safety order, by phase."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape
from typing import Final

from hatchleaf.blocks.model import Journey
from hatchleaf.manual.convert import convert_line
from hatchleaf.manual.journey_steps import StepText
from hatchleaf.manual.model import Heading

_SEE: Final = '<a class="see" href="topic:{0:03d}">{0:03d}</a>'


def checklist(
    journey: Journey, steps: Iterable[StepText], own: int
) -> tuple[str, tuple[Heading, ...]]:
    """
    Return the HTML of *journey* and its headings.

    Each step leads to the topic it comes from, by number, unless that is the
    journey's own page, number *own*.
    Phases of which this unit has nothing are left out.
    """
    rows = tuple(steps)
    made: list[str] = []
    headings: list[Heading] = []
    count = 0
    name = journey.topic
    for phase in journey.phases:
        of_phase = [row for row in rows if row.phase == phase.id]
        if not of_phase:
            continue
        anchor = f"{name}-{phase.id.replace('_', '-')}"
        headings.append(Heading(anchor, phase.title, 2))
        made.append(f'<h2 class="stage" id="{anchor}">{escape(phase.title)}</h2>')
        made.append('<ul class="ticks">')
        for row in of_phase:
            count += 1
            tick = f"tick-{name}-{count}"
            see = "" if row.topic == own else _SEE.format(row.topic)
            made.append(
                f'<li><label><input type="checkbox" id="{tick}">'
                f"<span>{_bare(convert_line(row.markdown))}</span></label>{see}</li>"
            )
        made.append("</ul>")
    return "\n".join(made), tuple(headings)


def _bare(text: str) -> str:
    # A link inside a label would be pressed instead of the tick.
    return re.sub(r"</?a\b[^>]*>", "", text)
