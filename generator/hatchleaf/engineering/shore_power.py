"""
Shore power: what the connection carries, and what may run on it at once.

In North America a load of three hours or more may take 80 % of its breaker (NEC
210.20(A), which asks for a breaker of 125 % of it).  Loads of unknown length are held
to that limit too.  Elsewhere a breaker carries its rated current for as long as need be
(EN 60898-1, from memory: no trip within an hour at 1.13 times it).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from hatchleaf.units import Quantity, convert, quantity

CONTINUOUS: Final = 0.80
"""Share of a breaker that a load may take for three hours or more."""

_HIGHEST_OF_ONE_LEG: Final = quantity(150, "volt")
"""Above this a voltage is that between two legs of a split service."""


def leg_volts(volts: Quantity, *, legs: int) -> Quantity:
    """
    Return the voltage of one leg.

    A 50 A site is called 120/240 V: whichever of the two is stated, it has two legs
    of 120 V, and so 12,000 W.

    Args:
        volts: Voltage of the service.  [voltage]
        legs: How many legs, 1 or more.

    Raises:
        ValueError: *legs* is below 1.
        pint.DimensionalityError: *volts* is not a voltage.
    """
    if legs < 1:
        raise ValueError(f"legs must be 1 or more, got {legs}")
    if legs == 2 and volts > _HIGHEST_OF_ONE_LEG:  # noqa: PLR2004  # split phase
        return convert(volts / legs, "volt")
    return convert(volts, "volt")


def service(amps: Quantity, volts: Quantity, *, legs: int) -> Quantity:
    """
    Return the power of the whole connection.

    Args:
        amps: Rating of the main breaker, the same on each leg.  [current]
        volts: Voltage of the service.  [voltage]
        legs: How many legs, 1 or more.

    Returns:
        Power in watts.

    Raises:
        ValueError: *legs* is below 1.
        pint.DimensionalityError: *amps* or *volts* has another dimension.
    """
    return convert(amps * leg_volts(volts, legs=legs) * legs, "watt")


def continuous(rating: Quantity) -> Quantity:
    """
    Return what of *rating* may be used for hours on end.

    Args:
        rating: A current or a power.  [any]
    """
    held: Quantity = rating * CONTINUOUS
    return held


def heaviest_leg(loads: Iterable[tuple[float, str]]) -> float:
    """
    Return the most that one leg can have to carry.

    Args:
        loads: Watts and leg of each load; a leg other than ``a`` or ``b`` is not
            known and counts on whichever leg it hurts most.

    Returns:
        Watts on the heavier leg.
    """
    on: dict[str, float] = {"a": 0.0, "b": 0.0}
    anywhere = 0.0
    for watts, leg in loads:
        if leg in on:
            on[leg] += watts
        else:
            anywhere += watts
    return max(on.values()) + anywhere


@dataclass(frozen=True)
class Outlet:
    """A supply: amperes of its breaker on each leg, and how many legs."""

    amps: float
    legs: int = 1


OUTLETS: Final = (Outlet(15), Outlet(20), Outlet(30), Outlet(50, 2))
"""What posts and houses of North America offer (NEC 551.71), smallest first."""
OUTLETS_230_V: Final = (Outlet(6), Outlet(10), Outlet(16))
"""What sites with blue 16 A sockets offer: many guard them with 6 A or 10 A."""
OUTLETS_AUSTRALIA: Final = (Outlet(10), Outlet(15))
"""A house's socket, and the one with the large earth pin that a site has."""


@dataclass(frozen=True)
class Rule:
    """What a unit may be plugged into, and what of a breaker may be used for hours."""

    outlets: tuple[Outlet, ...]
    share: float


NORTH_AMERICA: Final = Rule(OUTLETS, CONTINUOUS)
EUROPE: Final = Rule(OUTLETS_230_V, 1.0)
AUSTRALIA: Final = Rule(OUTLETS_AUSTRALIA, 1.0)


def rule_of(market: str) -> Rule:
    """Return the rule of a market of the vocabulary."""
    return {"us": NORTH_AMERICA, "ca": NORTH_AMERICA, "au": AUSTRALIA}.get(
        market, EUROPE
    )


def through_adapter(outlet: Outlet, unit: Outlet) -> Outlet:
    """
    Return what the unit gets: an adapter changes the shape of a plug, no more.

    The smaller breaker wins; a unit of two legs on an outlet of one shares it.
    """
    return Outlet(min(outlet.amps, unit.amps), min(outlet.legs, unit.legs))


def outlets_for(unit: Outlet, rule: Rule = NORTH_AMERICA) -> tuple[Outlet, ...]:
    """Return what each supply gives the unit, its own last, smallest first."""
    got = (through_adapter(one, unit) for one in rule.outlets)
    return tuple(dict.fromkeys((*got, unit)))


def smallest_outlet(
    loads: Iterable[tuple[float, str]],
    unit: Outlet,
    volts: float,
    least: float = 0.0,
    rule: Rule = NORTH_AMERICA,
) -> Outlet | None:
    """
    Return the smallest supply that carries *loads* for hours, None if none does.

    Args:
        loads: Watts and leg of each, as for `heaviest_leg`.
        unit: The unit's own connection.
        volts: Voltage of one leg, in volts.
        least: Amperes below which no supply will do, unless it is the unit's own.
        rule: The outlets there are, and the share of a breaker for hours.
    """
    several = list(loads)
    everything = sum(watts for watts, _ in several)
    for outlet in outlets_for(unit, rule):
        if outlet.amps < min(least, unit.amps):
            continue
        carried = everything if outlet.legs == 1 else heaviest_leg(several)
        if carried <= outlet.amps * volts * rule.share:
            return outlet
    return None
