"""How long the batteries feed things of 120 V through the inverter."""

from __future__ import annotations

from collections.abc import Iterator

from hatchleaf.engineering import inverter
from hatchleaf.facts.bank import Bank
from hatchleaf.facts.battery_use import under_load
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, number
from hatchleaf.spec.model.living import HouseholdFridge
from hatchleaf.spec.model.unit import UnitSpec


def work_out(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    """Write down the hours of each load that the inverter can carry."""
    if spec.ac.inverter == "unknown":
        sheet.stop(["ac.inverter"], "inverter.hours")
    fitted_here = fitted(spec.ac.inverter)
    if fitted_here is None:
        return
    rated = number("ac.inverter.watts", fitted_here.watts)
    if sheet.lacks([rated], "inverter.hours"):
        return
    for item, words, load in _loads(spec, rated):
        name = f"inverter.hours[{item}]"
        if sheet.lacks([load], name) or load.quantity > rated.quantity:
            continue
        draw = inverter.draw(load.quantity, bank.volts)
        left, why, more = under_load(bank, draw)
        sheet.add(
            name,
            inverter.hours(left, load.quantity),
            "hour",
            how="down",
            digits=2,
            basis=(
                f"{bank.usable_words} for {words} alone, {load.text}; "
                f"{inverter.EFFICIENCY * 100:.0f} % of it comes out of the inverter "
                f"(typical).{why}"
            ),
            given=tuple(dict.fromkeys((*bank.given, *more, rated, load))),
            source="common-practice",
            typical=True,
            label=words,
        )


def _loads(spec: UnitSpec, rated: Given) -> Iterator[tuple[str, str, Given]]:
    yield "all-it-can-give", "all that the inverter can give", rated
    for one in items(spec.ac.loads):
        yield one.id, one.name, number(f"ac.loads[{one.id}].watts", one.watts)
    if isinstance(spec.kitchen.fridge, HouseholdFridge):
        given = number("kitchen.fridge.watts", spec.kitchen.fridge.watts)
        yield "fridge", "fridge with its motor on", given
