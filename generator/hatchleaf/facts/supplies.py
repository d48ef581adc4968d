"""Which supply each thing on shore power needs, alone and with each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import Final

from hatchleaf.engineering.shore_power import (
    CONTINUOUS,
    Outlet,
    outlets_for,
    smallest_outlet,
)
from hatchleaf.facts.sheet import Given, Sheet, capital, plus
from hatchleaf.units import number_in, quantity, shown

TOO_MUCH: Final = "too much"
NOT_KNOWN: Final = "not known"
MOST_LOADS: Final = 12
"""More things than these make no table that anybody reads: the largest are kept."""

_SOURCE: Final = "nec-continuous-load"


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
    unit: Outlet,
    volts: float,
    given: tuple[Given, ...],
    sheet: Sheet,
) -> None:
    """
    Write down what each supply gives, and which one each load and each pair needs.

    Args:
        loads: All that draws shore power.
        unit: The unit's own connection.
        volts: Voltage of one leg, in volts.
        given: What of the file the connection rests on.
        sheet: Where the facts go.
    """
    for outlet in outlets_for(unit):
        _supply(outlet, volts, given, sheet)
    listed = _largest(loads)
    for several in (*((one,) for one in listed), *combinations(listed, 2)):
        _needs(several, unit, volts, given, sheet)


def _largest(loads: Sequence[ShoreLoad]) -> list[ShoreLoad]:
    ranked = sorted(loads, key=lambda load: -(load.watts or float("inf")))
    keep = {load.item for load in ranked[:MOST_LOADS]}
    return [load for load in loads if load.item in keep]


def _name(outlet: Outlet) -> str:
    return f"{outlet.amps:g} A"


def _limit(outlet: Outlet, volts: float) -> float:
    return outlet.amps * volts * CONTINUOUS


def _supply(
    outlet: Outlet, volts: float, given: tuple[Given, ...], sheet: Sheet
) -> None:
    legs = "" if outlet.legs == 1 else ", on each of two legs"
    sheet.add(
        f"shore.supply[{_name(outlet)}]",
        quantity(_limit(outlet, volts), "watt"),
        "watt",
        how="down",
        basis=(
            f"80 % of {_name(outlet)} times {volts:g} V{legs}, for three hours or more."
        ),
        given=given,
        source=_SOURCE,
    )


def _needs(
    loads: tuple[ShoreLoad, ...],
    unit: Outlet,
    volts: float,
    given: tuple[Given, ...],
    sheet: Sheet,
) -> None:
    known = [(load.watts, load.leg) for load in loads if load.watts is not None]
    least = max(load.least_amps for load in loads)
    found = smallest_outlet(known, unit, volts, least)
    by_watts = smallest_outlet(known, unit, volts)
    raised = "" if found == by_watts else _raised(loads, least)
    sure = len(known) == len(loads)
    value = _name(found) if found and sure else NOT_KNOWN if found else TOO_MUCH
    sheet.add(
        f"shore.needs[{plus([load.item for load in loads])}]",
        value,
        basis=_why(loads, found or unit, volts, raised, fits=found is not None),
        given=(*given, *(load.given for load in loads if load.given.known)) or given,
        source=_SOURCE,
        label=plus([load.words for load in loads]),
    )


def _raised(loads: tuple[ShoreLoad, ...], least: float) -> str:
    """Return why a supply that carries the watts is still too small."""
    why = next(load.least_why for load in loads if load.least_amps == least)
    return f"; less than {least:g} A will not do: {why}"


def _why(
    loads: tuple[ShoreLoad, ...],
    outlet: Outlet,
    volts: float,
    raised: str,
    *,
    fits: bool,
) -> str:
    each = plus(
        [
            f"{load.words} {load.given.text if load.given.known else '(not known)'}"
            for load in loads
        ]
    )
    limit = shown(quantity(_limit(outlet, volts), "watt"), "watt", how="down")
    than = "the smallest that carries it" if fits else "less than it takes"
    if any(load.watts is None for load in loads):
        than = "and nobody can tell whether that is enough" if fits else than
    legs = "" if outlet.legs == 1 else " on each leg"
    return f"{capital(each)}; 80 % of {_name(outlet)} is {limit}{legs}, {than}{raised}."
