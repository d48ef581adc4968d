"""Shore power facts: what the connection carries, and what may run at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import Final

from hatchleaf.engineering import shore_power
from hatchleaf.facts import supplies
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    capital,
    fitted,
    items,
    number,
    plus,
    stated,
)
from hatchleaf.facts.supplies import ShoreLoad as _Load
from hatchleaf.spec.model.ac import ShoreCord
from hatchleaf.spec.model.living import (
    AbsorptionFridge,
    HouseholdFridge,
    InductionPlate,
)
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in, quantity, shown

FITS: Final = "fits"
TOO_MUCH: Final = "too much"
NOT_KNOWN: Final = "not known"
MOST_ROWS: Final = 40
"""Rows of pairs and triples at most; beyond them a table is not read."""

_SERVICE = (
    "shore.service",
    "shore.continuous",
    "shore.amps_continuous",
    "shore.supply",
    "shore.needs",
)
_EIGHTY_PERCENT = "nec-continuous-load"
_NORTH_AMERICA = ("us", "ca")
_TRIPLE = 3
_NOT_ON_15 = 20.0
"""Amperes: what the page of shore power keeps off a 15 A outlet needs this much."""


@dataclass(frozen=True)
class _Limit:
    """What one leg may carry for hours, and how many legs there are."""

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
    loads = list(_loads(spec, sheet))
    for load in loads:
        _load(load, sheet)
    if shore == "unknown":
        sheet.stop(["ac.shore"], *_SERVICE, "shore.together")
        return
    limit = _service(shore, spec.body.market in _NORTH_AMERICA, sheet)
    if limit:
        for row in _rows(loads, limit):
            _together(row, limit, sheet)
        amps = number_in(limit.given[0].quantity, "ampere")
        volts = limit.watts / shore_power.CONTINUOUS / amps
        own = shore_power.Outlet(amps, limit.legs)
        supplies.work_out(loads, own, volts, limit.given, sheet)


def _service(shore: ShoreCord, in_north_america: bool, sheet: Sheet) -> _Limit | None:  # noqa: FBT001  # read by name
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
    # The 80 % rule is that of the code of North America.
    if not in_north_america:
        return None
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
    return _Limit(number_in(held, "watt") / legs, legs, given)


def _loads(spec: UnitSpec, sheet: Sheet) -> Iterator[_Load]:
    """Yield all that draws shore power, in the order of the table."""
    parts = {
        "climate.air_conditioners": spec.climate.air_conditioners,
        "hot_water": spec.hot_water,
        "kitchen.cooktop": spec.kitchen.cooktop,
        "ac.loads": spec.ac.loads,
        "dc.converter": spec.dc.converter,
        "kitchen.fridge": spec.kitchen.fridge,
    }
    for path, part in parts.items():
        if part == "unknown":
            sheet.stop([path], "shore.load")
    yield from _coolers(spec)
    element = getattr(spec.hot_water, "element", "none")
    if isinstance(element, Reading):
        given = number("hot_water.element", element)
        yield _Load(
            "water-heater",
            "water heater",
            given,
            least_amps=_NOT_ON_15,
            least_why="it leaves too little for the rest",
        )
    if isinstance(spec.kitchen.cooktop, InductionPlate):
        given = number("kitchen.cooktop.watts", spec.kitchen.cooktop.watts)
        yield _Load("cooktop", "induction plate", given)
    for load in items(spec.ac.loads):
        given = number(f"ac.loads[{load.id}].watts", load.watts)
        yield _Load(load.id, load.name, given, load.leg)
    if converter := fitted(spec.dc.converter):
        given = number("dc.converter.draw", converter.draw)
        yield _Load("charger", "battery charger", given)
    if isinstance(spec.kitchen.fridge, (AbsorptionFridge, HouseholdFridge)):
        given = number("kitchen.fridge.watts", spec.kitchen.fridge.watts)
        yield _Load("fridge", "fridge on shore power", given)


def _coolers(spec: UnitSpec) -> Iterator[_Load]:
    coolers = items(spec.climate.air_conditioners)
    for one in coolers:
        which = "" if len(coolers) == 1 else f"{one.id} "
        given = number(f"climate.air_conditioners[{one.id}].watts", one.watts)
        yield _Load(
            one.id,
            f"{which}air conditioner",
            given,
            one.leg,
            least_amps=_NOT_ON_15,
            least_why="it takes more when it starts",
        )


def _load(load: _Load, sheet: Sheet) -> None:
    name = f"shore.load[{load.item}]"
    if sheet.lacks([load.given], name):
        return
    sheet.add(
        name,
        load.given.quantity,
        "watt",
        how="up",
        digits=stated(load.given.quantity, "watt"),
        basis=f"The {load.words} takes {load.given.text} while it runs.",
        given=[load.given],
        source="own-labels",
        label=load.words,
    )


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
        source=_EIGHTY_PERCENT,
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
    return (
        f"{capital(each)}: {carried}{leg}, where 80 % of the main breaker is {most}. "
        f"By the main breaker only; a smaller breaker may trip sooner.{same}"
    )
