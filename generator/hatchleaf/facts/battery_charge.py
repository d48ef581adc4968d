"""How long it takes to fill the batteries again, by each thing that charges them."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import charging
from hatchleaf.facts.bank import Bank
from hatchleaf.facts.sheet import Given, Sheet, fitted, number, word
from hatchleaf.facts.solar import MONTHS, USUAL_LATITUDE, day_energy, roof
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, number_in, quantity, shown

_HOURS: Final = "battery.charge_hours"
_DAYS: Final = "battery.charge_days"
_CHARGES: Final = ("seven_way", "thirteen_pin")


def work_out(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    """Write down the times to charge; those of a battery of unknown kind fail."""
    if not bank.known:
        sheet.stop([one.path for one in bank.chemistry_given], _HOURS, _DAYS)
        return
    _charger(spec, bank, sheet)
    hitch = fitted(spec.gear.hitch)
    if hitch and hitch.plug in _CHARGES:
        plug = word("gear.hitch.plug", hitch.plug)
        _hours("charge line", "the plug of the tow vehicle", plug, bank, sheet)
    _sun(spec, bank, sheet)


def _charger(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    name = f"{_HOURS}[charger]"
    if spec.dc.converter == "unknown":
        sheet.stop(["dc.converter"], name)
    converter = fitted(spec.dc.converter)
    if converter is None:
        return
    output = number("dc.converter.output", converter.output)
    if not sheet.lacks([output], name):
        _hours("charger", "the charger on shore power", output, bank, sheet)


def _hours(item: str, words: str, given: Given, bank: Bank, sheet: Sheet) -> None:
    habits = charging.TYPICAL[bank.chemistry]
    takes = bank.charge / quantity(1, "hour") * habits.takes
    from_line = given.number is None
    gives: Quantity = charging.CHARGE_LINE if from_line else given.quantity
    current = min(gives, takes.to("ampere"))
    slow_end = 0.0 if from_line else habits.slow_end
    hours = "hour" if round(slow_end) == 1 else "hours"
    end = f", and {slow_end:.0f} {hours} for the slow end" if slow_end else ""
    time = charging.hours(
        bank.taken, current, efficiency=habits.efficiency, slow_end=slow_end
    )
    sheet.add(
        f"{_HOURS}[{item}]",
        time,
        "hour",
        how="up",
        digits=2,
        basis=(
            f"{shown(bank.taken, 'ampere_hour', how='up')} put back by {words} at "
            f"{shown(current, 'ampere', digits=2, how='down')}, of which "
            f"{habits.efficiency * 100:.0f} % stay in{end}; typical for {bank.kind}, "
            "with nothing else running."
        ),
        given=tuple(dict.fromkeys((*bank.with_chemistry, given))),
        source="common-practice",
        typical=True,
        label=words,
    )


def _sun(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    panels = roof(spec)
    watts = [number(f"dc.solar[{one.id}].watts", one.watts) for one in panels]
    if not panels or sheet.lacks(watts, _DAYS):
        return
    efficiency = charging.TYPICAL[bank.chemistry].efficiency
    market = spec.body.market
    for month in MONTHS:
        item, gives = day_energy(watts, month, USUAL_LATITUDE.get(market, 40), market)
        sheet.add(
            f"{_DAYS}[{item}]",
            quantity(number_in(bank.usable / (gives * efficiency), ""), "day"),
            "day",
            how="up",
            digits=2,
            basis=(
                f"{shown(bank.usable, 'watt_hour', how='up')} put back by "
                f"{shown(gives, 'watt_hour', digits=2, how='down')} a day from the "
                f"roof, of which {efficiency * 100:.0f} % stay in; a typical day, with "
                "nothing running."
            ),
            given=tuple(
                dict.fromkeys(
                    (*bank.with_chemistry, *watts, word("body.market", market))
                )
            ),
            source="pvlib-clear-sky",
            typical=True,
        )
