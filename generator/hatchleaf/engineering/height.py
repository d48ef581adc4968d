"""Height: what stands on a bridge's sign is compared with the whole unit."""

from __future__ import annotations

import math
from typing import Final

from hatchleaf.units import Quantity, number_in

_NOISE: Final = 1e-9
"""What a float adds to a whole number, which must not become one more inch."""


def whole_inches(height: Quantity) -> tuple[int, int]:
    """
    Return a height in feet and inches, never below what it is.

    Args:
        height: Of the highest part above the ground.  [length]

    Returns:
        Whole feet, and the inches above them from 0 to 11.

    Raises:
        pint.DimensionalityError: *height* is not a length.
    """
    return divmod(_up(number_in(height, "inch")), 12)


def whole_centimeters(height: Quantity) -> int:
    """
    Return a height in whole centimeters, never below what it is.

    Args:
        height: Of the highest part above the ground.  [length]

    Raises:
        pint.DimensionalityError: *height* is not a length.
    """
    return _up(number_in(height, "centimeter"))


def _up(number: float) -> int:
    return math.ceil(number - _NOISE)
