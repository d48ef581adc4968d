"""The bypass of a water heater: the way of the water, and three valves' handles."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

_TANK: Final = (
    '<rect x="66" y="8" width="26" height="56" rx="4"/>'
    '<text x="79" y="39" text-anchor="middle">tank</text>'
)
_WORDS: Final = '<text x="2" y="12">hot</text><text x="2" y="68">cold</text>'
_PIPES: Final = '<path d="M4 18H66M4 56H66M26 18V56"/>'
_THROUGH: Final = (
    '<path class="flow" d="M4 56H66M66 18H4"/><path class="full" d="M4 18l8-5v10z"/>'
)
_PAST: Final = (
    '<path class="flow" d="M4 56H26V18H4"/><path class="full" d="M4 18l8-5v10z"/>'
)


def _round(*spots: tuple[int, int]) -> str:
    return "".join(f'<circle cx="{x}" cy="{y}" r="5"/>' for x, y in spots)


def _handles(*spots: tuple[int, int, bool]) -> str:
    """Return valves with their levers: (x, y, level)."""
    return _round(*((x, y) for x, y, _ in spots)) + "".join(
        f'<path class="bold" d="M{x} {y}{"h11" if level else "v-11"}"/>'
        for x, y, level in spots
    )


def _drawn(flow: str, valves: str) -> str:
    return _PIPES + flow + _TANK + valves + _WORDS


_BY_MARK: Final = "The drawing shows the water, not the handle."
BYPASSES: Final[Mapping[str, Mapping[str, tuple[str, str, str]]]] = {
    "bypass_three_valve": {
        "normal": (
            "NORMAL",
            (
                "The two handles at the tank lie along their pipes: open. "
                "The one between lies across: shut."
            ),
            _drawn(_THROUGH, _handles((46, 18, True), (26, 37, True), (46, 56, True))),
        ),
        "winter": (
            "WINTER",
            (
                "The two handles at the tank lie across their pipes: shut. "
                "The one between lies along: open."
            ),
            _drawn(_PAST, _handles((46, 18, False), (26, 37, False), (46, 56, False))),
        ),
    },
    "bypass_two_valve": {
        "normal": (
            "NORMAL",
            (
                f"Both handles at their NORMAL marks: water runs through the tank. "
                f"{_BY_MARK}"
            ),
            _drawn(_THROUGH, _round((26, 18), (26, 56))),
        ),
        "winter": (
            "WINTER",
            f"Both handles at their WINTER marks: water goes past the tank. {_BY_MARK}",
            _drawn(_PAST, _round((26, 18), (26, 56))),
        ),
    },
    "bypass_one_valve": {
        "normal": (
            "NORMAL",
            (
                f"The one handle at its NORMAL mark: water runs through the tank. "
                f"{_BY_MARK}"
            ),
            _drawn(_THROUGH, _round((26, 56))),
        ),
        "winter": (
            "WINTER",
            f"The one handle at its WINTER mark: water goes past the tank. {_BY_MARK}",
            _drawn(_PAST, _round((26, 56))),
        ),
    },
    "bypass_lever": {
        "normal": (
            "NORMAL",
            f"The lever at its NORMAL mark: water runs through the tank. {_BY_MARK}",
            _drawn(
                _THROUGH,
                _round((26, 18), (26, 56)) + '<path class="thin" d="M16 18V56"/>',
            ),
        ),
        "winter": (
            "WINTER",
            f"The lever at its WINTER mark: water goes past the tank. {_BY_MARK}",
            _drawn(
                _PAST, _round((26, 18), (26, 56)) + '<path class="thin" d="M16 18V56"/>'
            ),
        ),
    },
}
"""Kind -> state -> the state's name, what is seen in words, and the lines."""
