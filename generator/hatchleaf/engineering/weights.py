"""
Weights the US way: they start from the unit's own label, never from a brochure.

The cargo label of units since June 2008 (72 FR 68442; FMVSS 110 and 120) states the
cargo that this unit may carry.  Water counts as cargo, and so does all that was added
after the label; full gas is already taken off and is not taken off again.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.units import Quantity, convert, quantity

ADDED_SHARE: Final = 0.015
"""Share of the GVWR above which additions ask for a corrected label."""
USUAL_SHARE: Final[Mapping[str, tuple[int, int]]] = MappingProxyType(
    {"ball": (10, 15), "caravan": (5, 7)}
)
"""Percent of the loaded unit on the hitch: towing guidance in North America, the UK."""
PIN_SHARE: Final = (15, 25)
"""The same in percent for a fifth wheel or gooseneck; from memory."""
ADDED_MOST: Final = quantity(100, "pound")
"""Weight above which they do, whatever the GVWR; the lesser of the two counts."""


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


def dealer_allowance(gvwr: Quantity) -> Quantity:
    """
    Return what may be added before the first sale without correcting the label.

    Source: 72 FR 68442 (4 December 2007), for 49 CFR 571.110 and 571.120: the lesser
    of 1.5 % of the GVWR and 100 lb.

    Args:
        gvwr: The most the loaded unit may weigh.  [mass]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: *gvwr* is not a mass.
    """
    share = convert(gvwr * ADDED_SHARE, "pound")
    return min(share, ADDED_MOST)


def on_axles(total: Quantity, hitch: Quantity) -> Quantity:
    """
    Return what the wheels carry: the whole less what rests on the tow vehicle.

    Args:
        total: Weight of the whole unit.  [mass]
        hitch: The part of it on the hitch.  [mass]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: An argument is not a mass.
    """
    return convert(total - hitch, "pound")


def reserve(carries: Quantity, load: Quantity) -> Quantity:
    """
    Return by how much something is rated above its load; below zero if it is not.

    Args:
        carries: Rating, such as that of two tires.  [mass]
        load: Load, such as an axle's rating.  [mass]

    Returns:
        Share of the load in percent.

    Raises:
        pint.DimensionalityError: The two differ in dimension.
    """
    return convert((carries - load) / load, "percent")


def hitch_change(moved: Quantity, ahead: Quantity, to_axles: Quantity) -> Quantity:
    """
    Return how the weight on the hitch changes when cargo is moved towards the front.

    A lever about the axles: weight times way, over the way from the coupling to the
    middle of the axles.  Moved to the rear, the same comes off.

    Args:
        moved: The cargo.  [mass]
        ahead: How far it is moved towards the front.  [length]
        to_axles: From the coupling to the middle of the axles.  [length]

    Returns:
        Mass in pounds.

    Raises:
        pint.DimensionalityError: An argument is of another dimension.
    """
    return convert(moved * ahead / to_axles, "pound")
