"""
Portable propane cylinders: what they weigh, what they may hold, when they come due.

The limits are those of the US rules for transport: filling density 49 CFR 173.304a(d),
requalification 49 CFR 180.209(e) and (g) with the marks of 180.213(f).  Read where
others quote them; the filler who holds the cylinder decides.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

from hatchleaf.units import Quantity, convert, number_in, quantity

Mark: TypeAlias = Literal["", "S", "E"]

FILLING_DENSITY: Final = 0.42
"""Weight of propane for each weight of water that the cylinder holds (its WC)."""

FIRST_YEARS: Final = 12
"""Years from the original test to the first requalification, 180.209(e) and (g)."""

NEXT_YEARS: Final[Mapping[Mark, int]] = MappingProxyType({"": 12, "S": 10, "E": 5})
"""Years after a requalification by the letter that ends its mark, 180.213(f)."""

TARES: Final[Mapping[int, float]] = MappingProxyType({20: 19, 30: 27})
"""Empty steel cylinders, the heavy end of a range: pounds held -> pounds of steel."""

TARE_40: Final = 33
"""The same of a 40 lb cylinder; from memory."""

_ALIKE: Final = 0.02


def fill_limit(water_capacity: Quantity) -> Quantity:
    """
    Return the propane that a cylinder may hold.

    Args:
        water_capacity: Weight of water, as stamped after the letters WC.  [mass]

    Returns:
        Mass of propane of specific gravity 0.504 to 0.510, in pounds.

    Raises:
        pint.DimensionalityError: *water_capacity* is not a mass.
    """
    return convert(water_capacity * FILLING_DENSITY, "pound")


def usual_tare(holds: Quantity) -> Quantity | None:
    """
    Return what a steel cylinder of a usual size weighs when it is empty.

    Args:
        holds: Gas at the legal fill.  [mass]

    Returns:
        Mass in pounds, the heavy end of the usual range; None for other sizes.

    Raises:
        pint.DimensionalityError: *holds* is not a mass.
    """
    pounds = number_in(holds, "pound")
    for size, tare in (*TARES.items(), (40, TARE_40)):
        if abs(pounds - size) <= _ALIKE * size:
            return quantity(tare, "pound")
    return None


def requalify_first(made: dt.date) -> dt.date:
    """
    Return the month in which a coated cylinder first comes due.

    Args:
        made: The month of the original test, stamped on the collar; its day is
            kept at the first of the month.

    Returns:
        The first day of the month, 12 years later.
    """
    return dt.date(made.year + FIRST_YEARS, made.month, 1)


def requalify_next(last: dt.date, mark: Mark) -> dt.date:
    """
    Return the month in which a cylinder comes due after a requalification.

    Args:
        last: The month of the last requalification, stamped on the collar.
        mark: The letter that ends its mark; none, ``S`` or ``E``.

    Returns:
        The first day of the month, 12, 10 or 5 years later.

    Raises:
        KeyError: There is no such mark.
    """
    return dt.date(last.year + NEXT_YEARS[mark], last.month, 1)
