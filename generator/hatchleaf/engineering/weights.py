"""
Weights the US way: they start from the unit's own label, never from a brochure.

The cargo label of units since June 2008 (72 FR 68442; FMVSS 110 and 120) states the
cargo that this unit may carry.  Water counts as cargo, and so does all that was added
after the label; full gas is already taken off and is not taken off again.
"""

from __future__ import annotations

from collections.abc import Iterable

from hatchleaf.units import Quantity, convert


def empty(gvwr: Quantity, cargo: Quantity) -> Quantity:
    """
    Return the weight of the unit as labelled, without cargo.

    Args:
        gvwr: The most the loaded unit may weigh.  [mass]
        cargo: Cargo by the label.  [mass]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: An argument is not a mass.
    """
    return convert(gvwr - cargo, "pound")


def cargo_left(cargo: Quantity, taken: Iterable[Quantity]) -> Quantity:
    """
    Return what may still be loaded; below zero if more is on board than allowed.

    Args:
        cargo: Cargo by the label.  [mass]
        taken: Water and each addition.  [mass]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: An argument is not a mass.
    """
    left = convert(cargo, "pound")
    for weight in taken:
        left = left - weight
    return left


def share(part: Quantity, whole: Quantity) -> Quantity:
    """
    Return *part* of *whole*, such as the hitch weight of the loaded trailer.

    Args:
        part: A mass.  [mass]
        whole: A mass.  [mass]

    Returns:
        Share in percent.

    Raises:
        pint.DimensionalityError: The two differ in dimension.
    """
    return convert(part / whole, "percent")
