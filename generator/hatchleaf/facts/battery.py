"""House battery facts: what is stored, what may be used, how long a load runs."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hatchleaf.engineering import battery, furnace
from hatchleaf.facts import (
    battery_charge,
    battery_state,
    battery_use,
    inverter,
    names,
)
from hatchleaf.facts.bank import Bank
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    capital,
    fitted,
    items,
    number,
    same_counted,
    total,
    word,
)
from hatchleaf.spec.model.dc import Battery
from hatchleaf.spec.model.living import CompressorFridge
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, number_in, shown

_FROM_USABLE = tuple(
    name
    for name in names.KNOWN
    if name.startswith(("battery.", "inverter.")) and name != "battery.capacity"
)
"""What fails with the usable energy: all else that is told of the battery."""


@dataclass(frozen=True)
class _Load:
    """Something on 12 V."""

    item: str
    words: str
    given: Given


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all battery facts; a unit without a battery has none."""
    if spec.dc.batteries == "unknown":
        sheet.stop(["dc.batteries"], "battery.capacity", *_FROM_USABLE)
    fitted_here = items(spec.dc.batteries)
    if not fitted_here:
        return
    bank = _bank(fitted_here, sheet)
    if not bank:
        return
    for load in _loads(spec, sheet):
        name = f"battery.hours[{load.item}]"
        if not sheet.lacks([load.given], name):
            _hours(name, load, bank, sheet)
    _furnace(spec, bank, sheet)
    for part in (battery_use, battery_charge, battery_state, inverter):
        part.work_out(spec, bank, sheet)


def _bank(batteries: tuple[Battery, ...], sheet: Sheet) -> Bank | None:
    given: list[Given] = []
    for one in batteries:
        at = f"dc.batteries[{one.id}]"
        given += [number(f"{at}.charge", one.charge), number(f"{at}.volts", one.volts)]
    if sheet.lacks(given, "battery.capacity", *_FROM_USABLE):
        return None
    each = [
        battery.energy(charge.quantity, volts.quantity)
        for charge, volts in zip(given[::2], given[1::2], strict=True)
    ]
    texts = [
        f"{charge.text}, {volts.text}"
        for charge, volts in zip(given[::2], given[1::2], strict=True)
    ]
    words = same_counted(texts, "battery").replace("batterys", "batteries")
    sheet.add(
        "battery.capacity",
        total(each, "watt_hour"),
        "watt_hour",
        how="down",
        basis=f"{capital(words)}: ampere-hours times volts.",
        given=given,
        source="own-labels",
    )
    return _usable(batteries, each, words, given, sheet)


def _usable(
    batteries: tuple[Battery, ...],
    each: list[Quantity],
    words: str,
    given: list[Given],
    sheet: Sheet,
) -> Bank | None:
    shares: list[float] = []
    said: dict[str, None] = {}
    inputs = list(given)
    typical = False
    for one in batteries:
        at = f"dc.batteries[{one.id}]"
        share = number(f"{at}.usable", one.usable)
        chemistry = word(f"{at}.chemistry", one.chemistry)
        if not share.known and sheet.lacks([chemistry], *_FROM_USABLE):
            return None
        if share.known:
            inputs.append(share)
            shares.append(number_in(share.quantity, "dimensionless"))
            said[f"the maker's {share.text}"] = None
        else:
            inputs.append(chemistry)
            shares.append(battery.TYPICAL_USABLE[one.chemistry])
            kind = "LFP" if one.chemistry == "lfp" else "lead-acid"
            said[f"{shares[-1] * 100:.0f} %, typical for {kind},"] = None
            typical = True
    usable = total([e * s for e, s in zip(each, shares, strict=True)], "watt_hour")
    source = "common-practice" if typical else "own-labels"
    sheet.add(
        "battery.usable",
        usable,
        "watt_hour",
        how="down",
        basis=(
            f"{capital(words)}, of which {' and '.join(said)} may be used; full, new "
            "and warm."
        ),
        given=inputs,
        source=source,
        typical=typical,
    )
    kinds = {one.chemistry for one in batteries}
    return Bank(
        capacity=total(each, "watt_hour"),
        usable=usable,
        volts=max(battery.NOMINAL, *(one.quantity for one in given[1::2])),
        chemistry=kinds.pop() if len(kinds) == 1 else "unknown",
        chemistry_given=tuple(
            word(f"dc.batteries[{one.id}].chemistry", one.chemistry)
            for one in batteries
        ),
        given=tuple(inputs),
        typical=typical,
        source=source,
    )


def _loads(spec: UnitSpec, sheet: Sheet) -> Iterator[_Load]:
    listed = items(spec.dc.loads)
    if spec.dc.loads == "unknown":
        sheet.stop(["dc.loads"], "battery.hours")
    for one in listed:
        yield _Load(one.id, one.name, number(f"dc.loads[{one.id}].draw", one.draw))
    taken = {one.id for one in listed}
    fridge = spec.kitchen.fridge
    if isinstance(fridge, CompressorFridge) and "fridge" not in taken:
        given = number("kitchen.fridge.draw", fridge.draw)
        yield _Load("fridge", "fridge with its compressor on", given)
    pump = fitted(spec.water.pump)
    if pump and "water-pump" not in taken:
        yield _Load("water-pump", "water pump", number("water.pump.draw", pump.draw))


def _hours(name: str, load: _Load, bank: Bank, sheet: Sheet) -> None:
    left, why, more = battery_use.under_load(bank, load.given.quantity)
    sheet.add(
        name,
        battery.hours(left, load.given.quantity, bank.volts),
        "hour",
        how="down",
        digits=2,
        basis=(
            f"{bank.usable_words} for {load.words} alone, {load.given.text} at "
            f"{_volts(bank)}, running all the time.{why}"
        ),
        given=tuple(dict.fromkeys((*bank.given, *more, load.given))),
        source="common-practice" if why else bank.source,
        typical=bank.typical or bool(why),
        label=load.words,
    )


def _furnace(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    name = "battery.furnace_hours"
    if spec.climate.furnace == "unknown":
        sheet.stop(["climate.furnace"], name)
    heating = fitted(spec.climate.furnace)
    if heating is None:
        return
    blower = number("climate.furnace.blower", heating.blower)
    if sheet.lacks([blower], name):
        return
    share = f"{furnace.DUTY * 100:.0f} %"
    sheet.add(
        name,
        battery.hours(bank.usable, blower.quantity, bank.volts, duty=furnace.DUTY),
        "hour",
        how="down",
        digits=2,
        basis=(
            f"{bank.usable_words} for the furnace's blower alone, {blower.text} at "
            f"{_volts(bank)}, running {share} of the time (typical for a cold night)."
        ),
        given=(*bank.given, blower),
        source="common-practice",
        typical=True,
    )


def _volts(bank: Bank) -> str:
    return shown(bank.volts, "volt")
