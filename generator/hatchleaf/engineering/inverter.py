"""
An inverter: how long the battery feeds a load of 120 V through it.

Common practice, no source: 85 % of what the battery gives reaches the load.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import Quantity, convert

EFFICIENCY: Final = 0.85
"""Share of the battery's energy that reaches the load; from memory."""


def draw(load: Quantity, volts: Quantity) -> Quantity:
    """
    Return the current that a load takes from the battery.

    Args:
        load: Power at 120 V.  [power]
        volts: Voltage of the bank.  [voltage]

    Returns:
        Current in amperes.

    Raises:
        pint.DimensionalityError: *load* or *volts* has another dimension.
    """
    return convert(load / (volts * EFFICIENCY), "ampere")


def hours(usable: Quantity, load: Quantity) -> Quantity:
    """
    Return how long the usable energy feeds a load.

    Args:
        usable: Energy that may be taken out of the battery.  [energy]
        load: Power at 120 V.  [power]

    Returns:
        Time in hours.

    Raises:
        pint.DimensionalityError: *usable* or *load* has another dimension.
    """
    return convert(usable * EFFICIENCY / load, "hour")
