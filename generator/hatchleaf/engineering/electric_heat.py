"""Electric heat: every watt of a heat strip becomes heat in the room."""

from __future__ import annotations

from hatchleaf.units import Quantity, convert


def heat(power: Quantity) -> Quantity:
    """
    Return the heat of an electric element.

    Args:
        power: What it takes.  [power]

    Returns:
        Heat rate in BTU an hour: 3.412 for each watt.

    Raises:
        pint.DimensionalityError: *power* is not a power.
    """
    return convert(power, "Btu / hour")
