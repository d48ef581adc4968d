"""Shore power facts: what the connection carries, and what may run at once."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import Final

from hatchleaf.engineering import shore_power
from hatchleaf.facts import supplies
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    capital,
    number,
    plus,
)
from hatchleaf.facts.shore_loads import loads_of
from hatchleaf.facts.supplies import ShoreLoad as _Load
from hatchleaf.spec.model.ac import ShoreCord
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in, quantity, shown

FITS: Final = "fits"
TOO_MUCH: Final = "too much"
NOT_KNOWN: Final = "not known"
MOST_ROWS: Final = 48
"""Rows of pairs and triples at most; beyond them a table is not read."""

_SERVICE = (
    "shore.service",
    "shore.continuous",
    "shore.amps_continuous",
    "shore.supply",
    "shore.needs",
)
_EIGHTY_PERCENT = "nec-continuous-load"
_TRIPLE = 3


@dataclass(frozen=True)
class _Limit:
    """What one leg may carry for hours, and how many legs there are."""

    inlet: supplies.Connection
    watts: float
    legs: int
    given: tuple[Given, ...]


@dataclass(frozen=True)
class _Row:
    """Two or three loads, and whether they may run at once."""

    loads: tuple[_Load, ...]
    value: str
    watts: float

    @property
    def items(self) -> tuple[str, ...]:
        """The loads by id, in the order of the table."""
        return _items(self.loads)


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all shore power facts; a unit without an inlet has none."""
    shore = spec.ac.shore
    if shore == "none":
        return
    market = spec.body.market
    rule = shore_power.rule_of(market)
    loads = list(loads_of(spec, sheet, starts=rule.share < 1))
    if shore == "unknown":
        sheet.stop(["ac.shore"], *_SERVICE, "shore.together")
        return
    limit = _service(shore, rule, sheet)
    if limit:
        for row in _rows(loads, limit):
            _together(row, limit, sheet)
        supplies.work_out(loads, limit.inlet, limit.given, sheet)


def _service(shore: ShoreCord, rule: shore_power.Rule, sheet: Sheet) -> _Limit | None:
    amps = number("ac.shore.service", shore.service)
    volts = number("ac.shore.volts", shore.volts)
    given = (amps, volts)
    if sheet.lacks(given, *_SERVICE, "shore.together"):
        return None
    legs = shore.legs
    if legs == "unknown":
        sheet.stop(["ac.shore.legs"], *_SERVICE, "shore.together")
        return None
    leg_volts = shore_power.leg_volts(volts.quantity, legs=legs)
    whole = shore_power.service(amps.quantity, volts.quantity, legs=legs)
    on_legs = "" if legs == 1 else f", on {legs} legs"
    sheet.add(
        "shore.service",
        whole,
        "watt",
        how="down",
        basis=f"{amps.text} times {shown(leg_volts, 'volt')}{on_legs}.",
        given=given,
        source="own-labels",
    )
    inlet = supplies.Connection(
        shore_power.Outlet(number_in(amps.quantity, "ampere"), legs),
        number_in(leg_volts, "volt"),
        rule,
    )
    limit = _Limit(inlet, inlet.limit(inlet.own), legs, given)
    # The 80 % rule is that of the code of North America.
    if rule.share == 1:
        return limit
    held = shore_power.continuous(whole)
    held_amps = shore_power.continuous(amps.quantity)
    each = "" if legs == 1 else ", on each leg"
    sheet.add(
        "shore.continuous",
        held,
        "watt",
        how="down",
        basis=f"80 % of {shown(whole, 'watt')}: the most for three hours or more.",
        given=given,
        source=_EIGHTY_PERCENT,
    )
    sheet.add(
        "shore.amps_continuous",
        held_amps,
        "ampere",
        how="down",
        basis=f"80 % of {amps.text}{each}: the most for three hours or more.",
        given=given,
        source=_EIGHTY_PERCENT,
    )
    return limit


def _rows(loads: list[_Load], limit: _Limit) -> list[_Row]:
    """Return the pairs and triples that are worth a row, pairs first."""
    pairs = [_judged(two, limit) for two in combinations(loads, 2)]
    clash = {row.items for row in pairs if row.value == TOO_MUCH}
    known = [load for load in loads if load.given.known]
    triples = [
        _judged(three, limit)
        for three in combinations(known, _TRIPLE)
        # A pair that is too much says it for every triple that holds it.
        if not any(_items(two) in clash for two in combinations(three, 2))
    ]
    kept = sorted(
        (*pairs, *triples),
        key=lambda row: (row.value == FITS, len(row.loads), -row.watts),
    )[:MOST_ROWS]
    keep = {row.items for row in kept}
    return [row for row in (*pairs, *triples) if row.items in keep]


def _items(loads: tuple[_Load, ...]) -> tuple[str, ...]:
    return tuple(load.item for load in loads)


def _judged(loads: tuple[_Load, ...], limit: _Limit) -> _Row:
    known = [(load.watts, load.leg) for load in loads if load.watts is not None]
    heaviest = (
        sum(watts for watts, _ in known)
        if limit.legs == 1
        else shore_power.heaviest_leg(known)
    )
    if heaviest > limit.watts:
        return _Row(loads, TOO_MUCH, heaviest)
    return _Row(loads, FITS if len(known) == len(loads) else NOT_KNOWN, heaviest)


def _together(row: _Row, limit: _Limit, sheet: Sheet) -> None:
    item = plus([load.item for load in row.loads])
    given = tuple(load.given for load in row.loads if load.given.known)
    sheet.add(
        f"shore.together[{item}]",
        row.value,
        basis=_why(row, limit),
        given=(*limit.given, *given),
        source=limit.inlet.source,
        label=plus([load.words for load in row.loads]),
    )


def _why(row: _Row, limit: _Limit) -> str:
    each = plus(
        [
            f"{load.words} {load.given.text if load.given.known else '(not known)'}"
            for load in row.loads
        ]
    )
    most = shown(quantity(limit.watts, "watt"), "watt", how="down")
    carried = shown(quantity(row.watts, "watt"), "watt", digits=4, how="up")
    leg = "" if limit.legs == 1 else " on one leg"
    if any(not load.given.known for load in row.loads):
        leg += " or more"
    unsure = [load.words for load in row.loads if load.leg not in ("a", "b")]
    same = ""
    if limit.legs > 1 and unsure:
        same = (
            f" The leg of {' and '.join(unsure)} is not known and counts as the same."
        )
    if limit.inlet.rule.share == 1:
        # The supply of the site has no main breaker of the unit behind it.
        own = limit.inlet.share_of(limit.inlet.own)
        return (
            f"{capital(each)}: {carried}{leg}, where a supply of {own} gives {most}. "
            f"A smaller supply or breaker trips sooner.{same}"
        )
    return (
        f"{capital(each)}: {carried}{leg}, where 80 % of the main breaker is {most}. "
        f"By the main breaker only; a smaller breaker may trip sooner.{same}"
    )
