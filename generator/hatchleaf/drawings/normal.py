"""Handles, switches and caps in their normal position, as small line drawings."""

from __future__ import annotations

import re
from typing import Final

from hatchleaf.drawings.stands import STANDS, Stand

_PIPE: Final = '<path d="M4 24h40"/><circle cx="24" cy="24" r="8"/>'
_SHAPES: Final = {
    "lever_along": _PIPE + '<path class="bold" d="M24 24h16"/>',
    "lever_across": _PIPE + '<path class="bold" d="M24 24V8"/>',
    "cap_on": '<path d="M4 17h18v14H4"/><path class="bold" d="M24 13h10v22H24z"/>'
    '<path d="M34 24h8"/>',
    "valve_closed": '<path d="M4 18h12v12H4M44 18H32v12h12"/>'
    '<path class="bold" d="M24 12v26"/><path d="M18 12h12"/>',
    "plug_out": '<path d="M6 24h12M18 15h8v18h-8z"/>'
    '<path class="bold" d="M26 20h6M26 28h6"/>'
    '<path d="M40 14v20"/>',
    "latch_closed": '<path d="M8 6v36M8 24h10"/>'
    '<path class="bold" d="M18 24h16"/><path d="M40 6v36"/>',
}
_STANDS: Final = {
    f"{name}_{state}": stand
    for name, states in STANDS.items()
    for state, stand in states.items()
} | {name: Stand("", "", lines) for name, lines in _SHAPES.items()}
DRAWINGS: Final = frozenset({*_STANDS, "none"})
"""What a block may ask for as its normal position."""
_WORDS: Final = re.compile(r"<text.*?</text>")


def drawing(name: str) -> str:
    """Return the SVG of *name*, or nothing for ``none``; the words say it too."""
    if name == "none":
        return ""
    stand = _STANDS[name]
    # Too small for the words of a drawing; those beside it say the same.
    lines = _WORDS.sub("", stand.lines) if name.startswith("bypass") else stand.lines
    return (
        f'<svg class="normal-drawing" viewBox="{stand.box}" aria-hidden="true">'
        f"{lines}</svg>"
    )
