"""
How a valve, handle or switch stands in each of its states: lines, and words for them.

A handle is drawn against its pipe only where that is the same on every make, which is
so for quarter-turn valves: along is open, across is shut (common practice, no source).
Where makers differ, the drawing shows the way of the water, or the word to point at.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.drawings.bypass import BYPASSES


@dataclass(frozen=True)
class Stand:
    """One thing in one state."""

    says: str
    """The state in a word or two."""
    words: str
    """What the drawing shows, in a sentence."""
    lines: str
    """SVG, in a box of 48 by 48 unless `box` says otherwise."""
    box: str = "0 0 48 48"


_DOWN_PIPE: Final = '<path d="M24 4v32"/><circle cx="24" cy="20" r="7"/>'
_DROPS: Final = '<path d="M24 39v2M24 44v2"/>'
_SWITCH: Final = '<rect x="15" y="6" width="18" height="36" rx="3"/>'
_BREAKER: Final = (
    '<rect x="12" y="6" width="24" height="36" rx="2"/><path d="M24 11v26"/>'
)
_BLADE: Final = '<path d="M4 14h12v20H4M16 10v28M22 10v28"/>'
_PIPE_END: Final = '<path d="M4 16h18v16H4"/>'
_CYLINDER: Final = '<path d="M12 44V30q0-6 12-6t12 6v14M24 24v-6"/>'
_KNOB: Final = '<path class="bold" d="M15 15h18"/>'
_BALL: Final = '<circle cx="17" cy="33" r="7"/><path d="M17 40v4M6 26h24l14 8"/>'
_BOX: Final = '<rect x="8" y="16" width="24" height="16" rx="2"/>'
_LEG: Final = '<path d="M4 10h40"/>'
_GROUND: Final = '<path d="M4 44h40"/>'
_BASIN: Final = '<path d="M8 34h32M24 34V16q0-6 8-6h6v6"/>'


def _pointer(left: str, right: str, *, to_left: bool) -> str:
    """Return a round handle that points to one of two words."""
    end = 18 if to_left else 54
    tip = f"M{end} 18l{6 if to_left else -6} -5v10z"
    return (
        f'<circle cx="36" cy="18" r="8"/><path class="bold" d="M36 18H{end}"/>'
        f'<path class="full" d="{tip}"/>'
        f'<text x="18" y="42" text-anchor="middle">{left}</text>'
        f'<text x="54" y="42" text-anchor="middle">{right}</text>'
    )


_POINTED: Final = "0 0 72 48"

STANDS: Final[Mapping[str, Mapping[str, Stand]]] = {
    **{
        name: {state: Stand(*parts, box="0 0 96 72") for state, parts in states.items()}
        for name, states in BYPASSES.items()
    },
    "inlet_diverter": {
        "city": Stand(
            "CITY",
            "The handle points to CITY: from the hose to the taps.",
            _pointer("CITY", "TANK", to_left=True),
            _POINTED,
        ),
        "tank": Stand(
            "TANK",
            "The handle points to TANK: from the hose into the fresh tank.",
            _pointer("CITY", "TANK", to_left=False),
            _POINTED,
        ),
    },
    "drain_valve": {
        "closed": Stand(
            "Closed",
            "A lever handle lies across its pipe.",
            _DOWN_PIPE + '<path class="bold" d="M24 20h18"/>',
        ),
        "open": Stand(
            "Open",
            "A lever handle lies along its pipe.",
            _DOWN_PIPE + _DROPS + '<path class="bold" d="M24 20V3"/>',
        ),
    },
    "drain_plug": {
        "in": Stand(
            "Plug in",
            "The plug sits in the end of the pipe.",
            '<path d="M16 4v24M32 4v24"/><path class="full" d="M13 28h22v8H13z"/>'
            '<path d="M24 36v6"/>',
        ),
        "out": Stand(
            "Plug out",
            "The plug is off, and the pipe is open.",
            '<path d="M16 4v20M32 4v20M24 20v4M24 28v3"/>'
            '<path class="full" d="M13 36h22v6H13z"/><path d="M24 42v4"/>',
        ),
    },
    "waste_valve": {
        "closed": Stand(
            "Closed",
            "The handle is pushed in to its stop.",
            _BLADE + '<path class="bold" d="M24 24h6M31 16v16"/>',
        ),
        "open": Stand(
            "Open",
            "The handle is pulled out to its stop.",
            _BLADE + '<path class="bold" d="M24 24h18M43 16v16"/>',
        ),
    },
    "waste_cap": {
        "on": Stand(
            "Cap on",
            "The cap is turned on tight.",
            _PIPE_END + '<path class="bold" d="M25 11v26"/><path d="M28 16h8v16h-8"/>',
        ),
        "off": Stand(
            "Cap off",
            "The cap hangs down, and the pipe is open.",
            _PIPE_END + '<path d="M22 32q6 2 8 5"/><path class="bold" d="M27 40h14"/>',
        ),
    },
    "cylinder_valve": {
        "closed": Stand(
            "Closed",
            "The hand wheel is turned clockwise to its stop.",
            _CYLINDER + _KNOB + '<path d="M14 10q10-8 20 0M34 10v-6M34 10h-6"/>',
        ),
        "open": Stand(
            "Open",
            "The hand wheel is turned the other way, slowly.",
            _CYLINDER + _KNOB + '<path d="M14 10q10-8 20 0M14 10v-6M14 10h6"/>',
        ),
    },
    "changeover": {
        "left": Stand(
            "Left",
            "The lever points to the left cylinder.",
            '<path d="M4 44V32q8-8 16 0v12M28 44V32q8-8 16 0v12"/>'
            '<circle cx="24" cy="14" r="6"/><path class="bold" d="M24 14H9"/>',
        ),
        "right": Stand(
            "Right",
            "The lever points to the right cylinder.",
            '<path d="M4 44V32q8-8 16 0v12M28 44V32q8-8 16 0v12"/>'
            '<circle cx="24" cy="14" r="6"/><path class="bold" d="M24 14h15"/>',
        ),
    },
    "switch": {
        "off": Stand(
            "OFF",
            "The end marked OFF, or with the ring, is pressed.",
            _SWITCH + '<rect class="full" x="18" y="25" width="12" height="14" rx="2"/>'
            '<circle cx="24" cy="14" r="3"/>',
        ),
        "on": Stand(
            "ON",
            "The end marked ON, or with the line, is pressed.",
            _SWITCH + '<rect class="full" x="18" y="9" width="12" height="14" rx="2"/>'
            '<path d="M24 30v8"/>',
        ),
    },
    "battery_switch": {
        "off": Stand(
            "OFF",
            "The knob points to OFF.",
            _pointer("OFF", "ON", to_left=True),
            _POINTED,
        ),
        "on": Stand(
            "ON",
            "The knob points to ON.",
            _pointer("OFF", "ON", to_left=False),
            _POINTED,
        ),
    },
    "breaker": {
        "on": Stand(
            "ON",
            "The handle is all the way over to ON.",
            _BREAKER + '<rect class="full" x="18" y="10" width="12" height="10"/>',
        ),
        "tripped": Stand(
            "Tripped",
            "The handle often stands in the middle, or feels loose.",
            _BREAKER + '<rect class="full" x="18" y="19" width="12" height="10"/>',
        ),
        "off": Stand(
            "OFF",
            "The handle is all the way over to OFF.",
            _BREAKER + '<rect class="full" x="18" y="28" width="12" height="10"/>',
        ),
    },
    "coupler": {
        "latched": Stand(
            "Latched",
            "The coupler sits down over the ball, its latch down and pinned.",
            _BALL + '<path class="bold" d="M20 21h16"/><path d="M30 16v10"/>',
        ),
        "open": Stand(
            "Open",
            "The latch stands up.",
            _BALL + '<path class="bold" d="M20 21L32 8"/>',
        ),
    },
    "breakaway_pin": {
        "in": Stand(
            "Pin in",
            "The pin sits in its switch all the way.",
            _BOX + '<path class="bold" d="M24 24h12"/><path d="M38 24q6 0 6 10"/>',
        ),
        "out": Stand(
            "Pin out",
            "The pin is out: the trailer's brakes are on.",
            '<rect x="4" y="16" width="20" height="16" rx="2"/>'
            '<path class="bold" d="M29 24h9"/><path d="M40 24q5 0 5 10"/>',
        ),
    },
    "stabilizer": {
        "up": Stand(
            "Up",
            "The leg is folded up under the frame.",
            _LEG + _GROUND + '<path class="bold" d="M10 15h26"/>',
        ),
        "down": Stand(
            "Down",
            "The leg stands on its pad on the ground.",
            _LEG
            + _GROUND
            + '<path class="bold" d="M12 12l20 26"/><path d="M24 39h16"/>',
        ),
    },
    "step": {
        "in": Stand(
            "In",
            "The step is stowed under the floor.",
            '<path d="M4 12h24v30"/><path class="bold" d="M8 20h18"/>',
        ),
        "out": Stand(
            "Out",
            "The step is out to its stop.",
            '<path d="M4 12h20v30M24 20l12 10"/><path class="bold" d="M28 32h16"/>',
        ),
    },
    "awning": {
        "in": Stand(
            "In",
            "The roller lies against the wall.",
            '<path d="M12 4v40"/><circle class="full" cx="19" cy="12" r="5"/>',
        ),
        "out": Stand(
            "Out",
            "The roller stands away from the wall.",
            '<path d="M8 4v40M8 8l28 9M8 34l28-16"/>'
            '<circle class="full" cx="39" cy="18" r="4"/>',
        ),
    },
    "taps": {
        "closed": Stand(
            "Closed",
            "All taps are shut.",
            _BASIN + '<path class="bold" d="M14 12h14"/>',
        ),
        "open": Stand(
            "Open",
            "All taps are open, hot and cold.",
            _BASIN + '<path class="bold" d="M20 14V2"/><path d="M38 20v3M38 26v3"/>',
        ),
    },
}
"""Name -> state -> how it stands."""

MODES: Final = {
    "city": ("CITY", "From the hose to the taps."),
    "tank_fill": ("TANK FILL", "From the hose into the fresh tank."),
    "pump": ("PUMP", "From the tank, by the pump, to the taps."),
    "winterize": ("WINTERIZE", "From the jug of antifreeze, by the pump, to the taps."),
    "sanitize": ("SANITIZE", "For cleaning the system, as the panel's label tells."),
    "drain": ("DRAIN", "Out of the system, as the panel's label tells."),
}
"""Ways of the water on a panel: the word to look for, and where the water goes."""


def panel(modes: tuple[str, ...], mode: str) -> Stand:
    """
    Return a panel whose handle points to one of its words.

    The words stand in the order of the unit's file: where they are on the panel is
    its maker's matter, so they are a list and not a dial.
    """
    rows = []
    for at, each in enumerate(modes):
        y = 4 + 20 * at
        word = MODES[each][0]
        if each == mode:
            rows.append(
                f'<path class="full" d="M4 {y + 2}l10 6l-10 6z"/>'
                f'<rect x="20" y="{y}" width="86" height="16" rx="3"/>'
            )
        rows.append(f'<text x="26" y="{y + 12}">{word}</text>')
    says, words = MODES[mode]
    return Stand(says, words, "".join(rows), f"0 0 110 {8 + 20 * len(modes)}")
