"""
Lead-acid batteries: the acid's density and voltage by charge, and when it freezes.

Density and rest voltage by charge are those that the battery industry's council
prints; freezing points by density are those of army manuals.  A much-copied list
that calls a half-full battery safe to -34 degF mixes up the two temperature scales.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from types import MappingProxyType
from typing import Final

GRAVITY: Final = (
    (0.0, 1.120),
    (0.25, 1.155),
    (0.5, 1.190),
    (0.75, 1.225),
    (1.0, 1.265),
)
"""Specific gravity of the acid at 80 degF by state of charge (BCI)."""

_FREEZES: Final = (
    (1.000, 32.0),
    (1.050, 27.0),
    (1.100, 18.0),
    (1.150, 5.0),
    (1.200, -16.0),
    (1.250, -62.0),
    (1.280, -90.0),
)
"""Freezing point in degF by specific gravity; the warmer where manuals differ."""

FULL_FROM: Final[Mapping[str, float]] = MappingProxyType(
    {"flooded": 12.6, "agm": 12.8, "gel": 12.8}
)
"""Volts at rest from which a 12 V battery is full or nearly; gel from memory."""

HALF_AT: Final[Mapping[str, float]] = MappingProxyType(
    {"flooded": 12.2, "agm": 12.3, "gel": 12.3}
)
"""Volts at rest of a 12 V battery that is half full; gel from memory."""


def _between(points: tuple[tuple[float, float], ...], at: float) -> float:
    """Return the value on the straight lines through *points*."""
    for (low, first), (high, last) in pairwise(points):
        if low <= at <= high:
            return first + (last - first) * (at - low) / (high - low)
    raise ValueError(f"{at} is outside {points[0][0]} to {points[-1][0]}")


def gravity(charged: float) -> float:
    """
    Return the specific gravity of the acid at 80 degF.

    Args:
        charged: State of charge, 0 to 1.

    Raises:
        ValueError: *charged* is outside 0 to 1.
    """
    return _between(GRAVITY, charged)


def freezes_at(specific_gravity: float) -> float:
    """
    Return the temperature in degF at which acid of this density begins to freeze.

    Args:
        specific_gravity: 1.000 (water) to 1.280.

    Raises:
        ValueError: *specific_gravity* is outside the table.
    """
    return _between(_FREEZES, specific_gravity)
