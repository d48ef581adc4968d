"""LP facts of use: a usual day, nights by duty and by cold, the regulator's share."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import furnace, gas_day, propane
from hatchleaf.facts.burners import Burner, Gas
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    capital,
    fitted,
    number,
    plus,
    whole,
)
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, number_in, quantity, shown

OF_GAS: Final = ("lp.days", "lp.furnace_nights_by_duty", "lp.furnace_nights_by_cold")
"""What cannot be told where nobody knows what gas is carried."""

_HEAT = "at 21,548 BTU per lb"
_WARM, _COLD = "warm days", "cold days"


def degrees(fahrenheit: float) -> str:
    """Return a temperature as the item of a fact: ``30 °F``."""
    return f"{fahrenheit:g} °F"


def regulator(spec: UnitSpec, load: Quantity, given: list[Given], sheet: Sheet) -> None:
    """Write down how much of its capacity the regulator must pass for *load*."""
    name = "lp.regulator_use"
    if spec.lp.regulator == "unknown":
        sheet.stop(["lp.regulator"], name)
    there = fitted(spec.lp.regulator)
    if there is None:
        return
    capacity = number("lp.regulator.capacity", there.capacity)
    if sheet.lacks([capacity], name):
        return
    outlet = "" if spec.lp.outlets == "none" else ", the outside outlet left out"
    sheet.add(
        name,
        propane.regulator_use(load, capacity.quantity),
        "percent",
        how="up",
        digits=2,
        basis=(
            f"All burners at once, {shown(load, 'Btu / hour', how='up')}, as a share "
            f"of the {capacity.text} that the regulator can pass{outlet}."
        ),
        given=[capacity, *given],
        source="own-labels",
    )


def day(lit: tuple[Burner, ...], gas: Gas, sheet: Sheet) -> None:
    """Write down what each appliance burns in a usual day, and how long gas lasts."""
    usual = [one for one in lit if one.hours is not None or not one.given.known]
    each: dict[str, Quantity] = {}
    for burner in usual:
        burned = _in_a_day(burner, sheet)
        if burned is not None:
            each[burner.item] = burned
    # A sum without one of its parts would be too low.
    if not lit or len(usual) < len(lit) or len(each) < len(lit):
        for burner in lit:
            parts = [one for one in (burner.given, burner.flames) if one]
            sheet.lacks(parts, "lp.mix", "lp.days")
        return
    kinds = {_WARM: [one for one in lit if one.item != "furnace"]}
    if len(kinds[_WARM]) < len(lit):
        kinds = {_COLD: list(lit), **kinds}
    for kind, burning in kinds.items():
        if burning:
            _mix(kind, burning, each, gas, sheet)


def _in_a_day(burner: Burner, sheet: Sheet) -> Quantity | None:
    name = f"lp.day[{burner.item}]"
    given = [one for one in (burner.given, burner.flames) if one]
    if sheet.lacks(given, name) or burner.hours is None:
        return None
    rate = burner.given.quantity
    burned = gas_day.burned_a_day([(rate / _flames(burner), burner.hours)])
    sheet.add(
        name,
        burned,
        "pound / day",
        how="up",
        digits=2,
        basis=(
            f"{capital(_usual(burner))} a day (typical), at {burner.given.text}"
            f"{' for all burners' if burner.flames else ''}, {_HEAT}."
        ),
        given=given,
        source="common-practice",
        typical=True,
        label=burner.item.replace("-", " "),
    )
    return burned


def _flames(burner: Burner) -> int:
    return int(burner.flames.word) if burner.flames else 1


def _usual(burner: Burner) -> str:
    words = burner.item.replace("-", " ")
    what = f"one {words} burner" if burner.flames else f"{words}'s flame"
    time = shown(quantity(burner.hours or 0, "hour"), "hour")
    return f"{what} lit {time}"


def _mix(
    kind: str,
    burning: list[Burner],
    each: dict[str, Quantity],
    gas: Gas,
    sheet: Sheet,
) -> None:
    burned = each[burning[0].item]
    for burner in burning[1:]:
        burned = burned + each[burner.item]
    given = [g for one in burning for g in (one.given, one.flames) if g]
    usual = plus([_usual(one) for one in burning])
    sheet.add(
        f"lp.mix[{kind}]",
        burned,
        "pound / day",
        how="up",
        digits=2,
        basis=f"{capital(usual)} a day (typical), {_HEAT}.",
        given=given,
        source="common-practice",
        typical=True,
    )
    if gas.mass is None:
        sheet.lacks(gas.given, f"lp.days[{kind}]")
        return
    days = quantity(
        number_in(gas.mass, "pound") / number_in(burned, "pound / day"), "day"
    )
    sheet.add(
        f"lp.days[{kind}]",
        days,
        "day",
        how="down",
        digits=whole(days, "day"),
        basis=f"{capital(gas.words)}, with {usual} a day (typical).",
        given=[*gas.given, *given],
        source="common-practice",
        typical=True,
    )


def nights(burner: Burner, gas: Gas, sheet: Sheet) -> None:
    """Write down the nights on the furnace by its share of time and by cold."""
    names = OF_GAS[1:]
    given = [*gas.given, burner.given]
    if sheet.lacks(given, *names) or gas.mass is None:
        return
    always = propane.burned(burner.given.quantity, furnace.NIGHT)
    # Nights with the flame always lit; a share of the time makes more of them.
    least = number_in(gas.mass, "pound") / number_in(always, "pound")
    hours = shown(furnace.NIGHT, "hour")
    of = f"{capital(gas.words)}, with the furnace at {burner.given.text}"
    for duty in furnace.DUTIES:
        found = quantity(least / duty, "night")
        share = f"{100 * duty:g} %"
        sheet.add(
            f"lp.furnace_nights_by_duty[{share}]",
            found,
            "night",
            how="down",
            digits=whole(found, "night"),
            basis=(
                f"{of} as the only flame, lit {share} of {hours}, a typical night's "
                "heating."
            ),
            given=given,
            source="common-practice",
            typical=True,
        )
    for outside in furnace.BANDS:
        duty = furnace.duty_at(outside)
        found = quantity(least / duty, "night")
        sheet.add(
            f"lp.furnace_nights_by_cold[{degrees(outside)}]",
            found,
            "night",
            how="down",
            digits=whole(found, "night"),
            basis=(
                f"{of} as the only flame: {hours} at {degrees(outside)} outside, "
                f"typically lit {100 * duty:.0f} % of the time."
            ),
            given=given,
            source="common-practice",
            typical=True,
        )
