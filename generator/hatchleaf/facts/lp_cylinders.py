"""LP facts of each cylinder: its weight, its date, the hot water in it."""

from __future__ import annotations

import datetime as dt
from typing import Final

from hatchleaf.engineering import cylinders, hot_water, propane
from hatchleaf.facts.burners import warmths
from hatchleaf.facts.sheet import Given, Sheet, number, word
from hatchleaf.spec.model.gas import Cylinder, Cylinders
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import shown

OF_GAS: Final = ("lp.cylinder_weight", "lp.requalify", "lp.hot_water")
"""What cannot be told where nobody knows what gas is carried."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the facts of each cylinder; other supplies have none."""
    supply = spec.lp.supply
    if not isinstance(supply, Cylinders):
        return
    for one in supply.cylinders:
        _weight(one, sheet)
    # The rule is of the United States; other countries have their own.
    if spec.body.market == "us":
        for one in supply.cylinders:
            _date(one, sheet)
    for one in supply.cylinders:
        _hot_water(one, spec, sheet)


def _holds(one: Cylinder) -> Given:
    return number(f"lp.supply.cylinders[{one.id}].holds", one.holds)


def _weight(one: Cylinder, sheet: Sheet) -> None:
    name = f"lp.cylinder_weight[{one.id}]"
    holds = _holds(one)
    if sheet.lacks([holds], name):
        return
    tare = cylinders.usual_tare(holds.quantity)
    if tare is None:
        return
    sheet.add(
        name,
        holds.quantity + tare,
        "pound",
        how="up",
        digits=2,
        basis=(
            f"{holds.text} of gas and about {shown(tare, 'pound', how='up')} of steel "
            "(typical); the number after TW on the collar is the cylinder's own."
        ),
        given=[holds],
        source="common-practice",
        typical=True,
    )


def _date(one: Cylinder, sheet: Sheet) -> None:
    name = f"lp.requalify[{one.id}]"
    path = f"lp.supply.cylinders[{one.id}].made"
    if not isinstance(one.made, dt.date):
        sheet.stop([path], name)
        return
    made = _month(one.made)
    due = cylinders.requalify_first(one.made)
    sheet.add(
        name,
        _month(due),
        basis=(
            f"Made {made}; the first requalification is due {cylinders.FIRST_YEARS} "
            "years after the original test. Information only: the filler decides."
        ),
        given=[word(path, made), word("body.market", "us")],
        source="cfr-49-180",
        day=due,
    )


def _month(first: dt.date) -> str:
    return f"{first:%B} {first.year}"


def _hot_water(one: Cylinder, spec: UnitSpec, sheet: Sheet) -> None:
    name = f"lp.hot_water[{one.id}]"
    if spec.hot_water == "unknown":
        sheet.stop(["hot_water"], name)
    flames = [way for way in warmths(spec) if way.item == "gas"]
    holds = _holds(one)
    if not flames or sheet.lacks([holds], name):
        return
    flame = flames[0]
    rise = hot_water.SET_POINT - hot_water.COLD
    heat = propane.stored_heat(holds.quantity) * flame.efficiency
    sheet.add(
        name,
        hot_water.warmed(heat, rise),
        "gallon",
        how="down",
        digits=2,
        basis=(
            f"{holds.text} of gas at 21,548 BTU per lb, {flame.words}, warmed "
            f"from {hot_water.COLD:g} °F to {hot_water.SET_POINT:g} °F, with no other "
            "flame (typical)."
        ),
        given=[holds, word("hot_water.kind", _kind(spec)), *flame.stated],
        source="common-practice",
        typical=True,
    )


def _kind(spec: UnitSpec) -> str:
    return str(getattr(spec.hot_water, "kind", "")).replace("_", " ")
