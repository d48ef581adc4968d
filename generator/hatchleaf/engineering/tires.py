"""
Tires: what the gauge shows when the weather changes.

The air in a tire keeps to the gas law at constant volume, with absolute pressure and
absolute temperature, while a gauge reads from the air outside.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, fahrenheit_point, quantity

ATMOSPHERE: Final = quantity(14.696, "psi")
"""Standard atmosphere at sea level, which a gauge leaves out."""


def pressure_at(cold: Quantity, *, set_at: float, now: float) -> Quantity:
    """
    Return the gauge pressure of a tire at another temperature.

    Args:
        cold: Gauge pressure as set.  [pressure]
        set_at: Temperature of the tire when it was set, degF.
        now: Temperature of the tire now, degF.

    Returns:
        Gauge pressure in psi.

    Raises:
        ValueError: A temperature is at or below absolute zero.
        pint.DimensionalityError: *cold* is not a pressure.
    """
    was, is_now = fahrenheit_point(set_at), fahrenheit_point(now)
    if was <= 0 or is_now <= 0:
        raise ValueError(f"no tire is at {min(set_at, now)} degF")
    return convert((cold + ATMOSPHERE) * (is_now / was) - ATMOSPHERE, "psi")
