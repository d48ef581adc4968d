"""Which supply each thing on shore power needs, alone and with each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import Final

from hatchleaf.engineering.shore_power import (
    Outlet,
    Rule,
    outlets_for,
    smallest_outlet,
)
from hatchleaf.facts.sheet import Given, Sheet, capital, plus
from hatchleaf.units import number_in, quantity, shown

TOO_MUCH: Final = "too much"
NOT_KNOWN: Final = "not known"
MOST_LOADS: Final = 12
"""More things than these make no table that anybody reads: the largest are kept."""

_EIGHTY_PERCENT: Final = "nec-continuous-load"
_SITES: Final = "site-supplies"


@dataclass(frozen=True)
class Connection:
    """The unit's own inlet and the rule that it is used by."""

    own: Outlet
    volts: float
    """Of one leg."""
    rule: Rule

    @property
    def source(self) -> str:
        """Where the rule stands."""
        return _EIGHTY_PERCENT if self.rule.share < 1 else _SITES

    def limit(self, outlet: Outlet) -> float:
        """Return the watts that one leg of *outlet* may carry for hours."""
        return outlet.amps * self.volts * self.rule.share

    def share_of(self, outlet: Outlet) -> str:
        """Return "80 % of 15 A" or "10 A", as the rule has it."""
        share = f"{self.rule.share:.0%}".replace("%", " % of ")
        return f"{share if self.rule.share < 1 else ''}{_name(outlet)}"


@dataclass(frozen=True)
class ShoreLoad:
    """Something on shore power; `watts` is None where they are not known."""

    item: str
    words: str
    given: Given
    leg: str = "unknown"
    least_amps: float = 0.0
    """The smallest supply for it, whatever its watts: common practice, no source."""
    least_why: str = ""
    """Why it needs that much."""

    @cached_property
    def watts(self) -> float | None:
        """Rated watts while it runs."""
        return number_in(self.given.quantity, "watt") if self.given.known else None


def work_out(
    loads: Sequence[ShoreLoad],
    inlet: Connection,
    given: tuple[Given, ...],
    sheet: Sheet,
) -> None:
    """
    Write down what each supply gives, and which one each load and each pair needs.

    Args:
        loads: All that draws shore power.
        inlet: The unit's own connection.
        given: What of the file the connection rests on.
        sheet: Where the facts go.
    """
    for outlet in outlets_for(inlet.own, inlet.rule):
        _supply(outlet, inlet, given, sheet)
    listed = _largest(loads)
    for several in (*((one,) for one in listed), *combinations(listed, 2)):
        _needs(several, inlet, given, sheet)


def _largest(loads: Sequence[ShoreLoad]) -> list[ShoreLoad]:
    ranked = sorted(loads, key=lambda load: -(load.watts or float("inf")))
    keep = {load.item for load in ranked[:MOST_LOADS]}
    return [load for load in loads if load.item in keep]


def _name(outlet: Outlet) -> str:
    return f"{outlet.amps:g} A"


def _supply(
    outlet: Outlet, inlet: Connection, given: tuple[Given, ...], sheet: Sheet
) -> None:
    legs = "" if outlet.legs == 1 else ", on each of two legs"
    hours = ", for three hours or more" if inlet.rule.share < 1 else ""
    sheet.add(
        f"shore.supply[{_name(outlet)}]",
        quantity(inlet.limit(outlet), "watt"),
        "watt",
        how="down",
        basis=f"{inlet.share_of(outlet)} times {inlet.volts:g} V{legs}{hours}.",
        given=given,
        source=inlet.source,
    )


def _needs(
    loads: tuple[ShoreLoad, ...],
    inlet: Connection,
    given: tuple[Given, ...],
    sheet: Sheet,
) -> None:
    known = [(load.watts, load.leg) for load in loads if load.watts is not None]
    least = max(load.least_amps for load in loads)
    found = smallest_outlet(known, inlet.own, inlet.volts, least, inlet.rule)
    by_watts = smallest_outlet(known, inlet.own, inlet.volts, rule=inlet.rule)
    raised = "" if found == by_watts else _raised(loads, least)
    sure = len(known) == len(loads)
    value = _name(found) if found and sure else NOT_KNOWN if found else TOO_MUCH
    sheet.add(
        f"shore.needs[{plus([load.item for load in loads])}]",
        value,
        basis=_why(loads, found, inlet, raised),
        given=(*given, *(load.given for load in loads if load.given.known)) or given,
        source=inlet.source,
        label=plus([load.words for load in loads]),
    )


def _raised(loads: tuple[ShoreLoad, ...], least: float) -> str:
    """Return why a supply that carries the watts is still too small."""
    why = next(load.least_why for load in loads if load.least_amps == least)
    return f"; less than {least:g} A will not do: {why}"


def _why(
    loads: tuple[ShoreLoad, ...], found: Outlet | None, inlet: Connection, raised: str
) -> str:
    outlet = found or inlet.own
    each = plus(
        [
            f"{load.words} {load.given.text if load.given.known else '(not known)'}"
            for load in loads
        ]
    )
    limit = shown(quantity(inlet.limit(outlet), "watt"), "watt", how="down")
    than = "the smallest that carries it" if found else "less than it takes"
    if any(load.watts is None for load in loads):
        than = "and nobody can tell whether that is enough" if found else than
    legs = "" if outlet.legs == 1 else " on each leg"
    return (
        f"{capital(each)}; {inlet.share_of(outlet)} is {limit}{legs}, {than}{raised}."
    )
