"""The emergency card for inside the entry door: what it says, as data for its page."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final


@dataclass(frozen=True)
class ShutOff:
    """Something to turn off in an emergency: what, where in words, on which topic."""

    name: str
    place: str
    topic: int


@dataclass(frozen=True)
class Alarm:
    """An alarm and the sounds it makes; a sound that nobody knows is empty."""

    name: str
    alarm_sound: str = ""
    fault_sound: str = ""
    end_sound: str = ""


@dataclass(frozen=True)
class Card:
    """
    What the emergency card of a unit says.

    ``plan_svg`` is a drawing of the unit, empty where there is none; what is not
    fitted is simply not among ``shut_offs``, ``exits`` and ``alarms``.
    """

    title: str
    shut_offs: tuple[ShutOff, ...]
    exits: tuple[str, ...]
    extinguisher: str
    alarms: tuple[Alarm, ...]
    emergency_number: str
    plan_svg: str
    dealer_name: str
    dealer_phone: str


# A drawing takes its color and its lines from the style sheet of the page it is in;
# on paper there is none, so the card brings its own.
_PRINTED_STYLE: Final = (
    "<style>"
    "path,line,polyline,rect,circle,ellipse,polygon"
    "{fill:none;stroke:#16202b;stroke-width:1.6}"
    "text{fill:#4a5560;font-family:Barlow;font-weight:500;font-size:12px}"
    ".plan-wheel,.plan-pin{fill:#16202b}"
    ".plan-gap{stroke:#fff;stroke-width:3}"
    ".plan-thin{stroke-dasharray:3 3;stroke-width:1}"
    ".plan-leads{stroke-width:1}"
    ".plan-dots path{fill:#16202b;stroke:#fff;stroke-width:1}"
    ".plan-dots .plan-in{fill:#fff;stroke:#16202b}"
    ".plan-mark rect{fill:#16202b;stroke:#fff}"
    ".plan-mark text{fill:#fff;font-weight:700;font-size:12px}"
    ".plan-inside rect{fill:#fff;stroke:#16202b}"
    ".plan-inside text{fill:#16202b}"
    "</style>"
)
_OPENING: Final = re.compile(r"<svg\b[^>]*>")


def data_of(card: Card) -> Mapping[str, Any]:
    """Return the card as the typst template takes it."""
    return {
        "title": card.title,
        "shut_offs": [
            {"name": s.name, "where": s.place, "number": f"{s.topic:03d}"}
            for s in card.shut_offs
        ],
        "exits": list(card.exits),
        "extinguisher": card.extinguisher,
        "alarms": [
            {
                "name": alarm.name,
                "sounds": [alarm.alarm_sound, alarm.fault_sound, alarm.end_sound],
            }
            for alarm in card.alarms
        ],
        "call": card.emergency_number,
        "plan": printable(card.plan_svg),
        "dealer": card.dealer_name,
        "phone": card.dealer_phone,
    }


def printable(svg: str) -> str:
    """Return a drawing that also shows where no page's style sheet reaches it."""
    opening = _OPENING.search(svg)
    if opening is None or "<style" in svg:
        return svg
    tag = opening[0]
    if "xmlns=" not in tag:
        tag = tag.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"', 1)
    return svg[: opening.start()] + tag + _PRINTED_STYLE + svg[opening.end() :]
