"""Handles, switches and caps in their normal position, as small line drawings."""

from __future__ import annotations

from typing import Final

_PIPE: Final = '<path d="M4 24h40"/>'
_SHAPES: Final = {
    "lever_along": _PIPE
    + '<circle cx="24" cy="24" r="8"/><path class="bold" d="M24 24h16"/>',
    "lever_across": _PIPE
    + '<circle cx="24" cy="24" r="8"/><path class="bold" d="M24 24V8"/>',
    "switch_off": '<rect x="15" y="6" width="18" height="36" rx="3"/>'
    '<rect class="full" x="18" y="25" width="12" height="14" rx="2"/>'
    '<circle cx="24" cy="14" r="3"/>',
    "switch_on": '<rect x="15" y="6" width="18" height="36" rx="3"/>'
    '<rect class="full" x="18" y="9" width="12" height="14" rx="2"/>'
    '<path d="M24 30v8"/>',
    "cap_on": '<path d="M4 17h18v14H4"/><path class="bold" d="M24 13h10v22H24z"/>'
    '<path d="M34 24h8"/>',
    "valve_closed": '<path d="M4 18h12v12H4M44 18H32v12h12"/>'
    '<path class="bold" d="M24 12v26"/><path d="M18 12h12"/>',
    "plug_out": '<path d="M6 24h12M18 15h8v18h-8z"/>'
    '<path class="bold" d="M26 20h6M26 28h6"/>'
    '<path d="M40 14v20"/>',
    "latch_closed": '<path d="M8 6v36M8 24h10"/>'
    '<path class="bold" d="M18 24h16"/><path d="M40 6v36"/>',
    "breaker_on": '<rect x="12" y="8" width="24" height="32" rx="2"/>'
    '<rect class="full" x="19" y="12" width="10" height="12"/><path d="M17 34h14"/>',
}
DRAWINGS: Final = frozenset({*_SHAPES, "none"})
"""What a block may ask for as its normal position."""


def drawing(name: str) -> str:
    """Return the SVG of *name*, or nothing for ``none``; the words say it too."""
    if name == "none":
        return ""
    return (
        '<svg class="normal-drawing" viewBox="0 0 48 48" aria-hidden="true">'
        f"{_SHAPES[name]}</svg>"
    )
