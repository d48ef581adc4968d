"""
Copper wire: its resistance by gauge, and the voltage lost on the way.

Worked from the material: copper of 100 % IACS at 20 degC (IEC 60028), its temperature
coefficient, and the definition of the American wire gauge (ASTM B258).
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, number_in, quantity

RESISTIVITY: Final = quantity(1.7241e-8, "ohm * meter")
"""Annealed copper at 20 degC."""

_RISE_TO_HOT: Final = 1 + 0.00393 * (75 - 20)
"""Resistance at 75 degC, the temperature of the code's tables, over that at 20 degC."""

_STRANDING: Final = 1.02
"""Strands are longer than the wire that they make up."""

_GAUGE_36: Final = quantity(0.005, "inch")
_STEP: Final = 92.0 ** (1 / 39)


def resistance(gauge: int, length: Quantity) -> Quantity:
    """
    Return the resistance of stranded uncoated copper wire at 75 degC.

    Args:
        gauge: AWG number; 1/0 is 0, 2/0 is -1, 4/0 is -3.
        length: Length of the wire, one way.  [length]

    Returns:
        Resistance in ohms.

    Raises:
        ValueError: *gauge* is outside -3 to 36.
        pint.DimensionalityError: *length* is not a length.
    """
    if not -3 <= gauge <= 36:  # noqa: PLR2004  # ends of the gauge's definition
        raise ValueError(f"gauge must be -3 to 36, got {gauge}")
    # Area of a round wire by its diameter; pi / 4 written out.
    diameter = _GAUGE_36 * _STEP ** (36 - gauge)
    area = diameter**2 * 0.7853981633974483
    hot = RESISTIVITY * _RISE_TO_HOT * _STRANDING
    return convert(hot * length / area, "ohm")


def drop(current: Quantity, gauge: int, one_way: Quantity) -> Quantity:
    """
    Return the voltage lost on the way out and back.

    Args:
        current: What flows.  [current]
        gauge: AWG number.
        one_way: Length of the cord or the run, one way.  [length]

    Returns:
        Voltage in volts.

    Raises:
        ValueError: *gauge* is outside its range.
        pint.DimensionalityError: *current* or *one_way* has another dimension.
    """
    return convert(2 * current * resistance(gauge, one_way), "volt")


FUSE_COLORS: Final[Mapping[float, str]] = MappingProxyType(
    {
        1: "black",
        2: "gray",
        3: "violet",
        4: "pink",
        5: "tan",
        7.5: "brown",
        10: "red",
        15: "blue",
        20: "yellow",
        25: "clear",
        30: "green",
        35: "blue-green",
        40: "orange",
    }
)
"""Color of the common blade fuse by its amperes (ISO 8820-3, SAE J1284)."""


def fuse_color(rating: Quantity) -> str:
    """
    Return the color of a common blade fuse, or nothing where there is none.

    Larger kinds of fuse use the same colors for other ratings.

    Args:
        rating: Amperes on the fuse.  [current]

    Raises:
        pint.DimensionalityError: *rating* is not a current.
    """
    return FUSE_COLORS.get(round(number_in(rating, "ampere"), 3), "")


CORD_GAUGE: Final[Mapping[str, int]] = MappingProxyType(
    {"5_15": 12, "5_20": 12, "tt_30": 10, "14_50": 6}
)
"""Usual gauge of a shore cord by its plug; from memory."""
