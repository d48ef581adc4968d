"""
A generator: what it must start, and what thin air leaves of it.

Common practice, no source: an engine without a blower loses about 3.5 % of its power
with each 1,000 ft, which is near what the air itself loses; an air conditioner takes
about twice its running power while it starts.  Pages differ by half on the second.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert, number_in

LOSS_PER_1000_FT: Final = 0.035
START: Final = 2.0
"""Power of an air conditioner at its start, over that while it runs."""

_HIGHEST: Final = 15_000.0


def at_altitude(rated: Quantity, height: Quantity) -> Quantity:
    """
    Return what an engine-driven generator gives at *height*.

    Args:
        rated: Rated power at sea level.  [power]
        height: Above the sea, 0 to 15,000 ft.  [length]

    Returns:
        Power in watts.

    Raises:
        ValueError: *height* is outside its range.
        pint.DimensionalityError: *rated* or *height* has another dimension.
    """
    feet = number_in(height, "foot")
    if not 0 <= feet <= _HIGHEST:
        raise ValueError(f"height must be 0 to 15,000 ft, got {feet:g}")
    return convert(rated * (1 - LOSS_PER_1000_FT * feet / 1000), "watt")


def start(running: Quantity) -> Quantity:
    """
    Return the power that an air conditioner typically takes while it starts.

    Args:
        running: Rated power while it runs.  [power]

    Returns:
        Power in watts.

    Raises:
        pint.DimensionalityError: *running* is not a power.
    """
    return convert(running * START, "watt")


def needed(largest: Quantity, charger: Quantity | None) -> Quantity:
    """
    Return what a generator must give while an air conditioner starts.

    One air conditioner alone; nothing but the charger, which comes on by itself as
    soon as there is power, runs beside it.

    Args:
        largest: Rated power of the largest air conditioner while it runs.  [power]
        charger: What the battery charger takes, or None where there is none.  [power]

    Returns:
        Power in watts.

    Raises:
        pint.DimensionalityError: An argument is not a power.
    """
    moment = start(largest)
    return moment if charger is None else convert(moment + charger, "watt")
