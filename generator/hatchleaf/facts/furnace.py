"""Furnace facts: what a night takes of gas and battery, together, by the cold."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import furnace, propane
from hatchleaf.facts.lp_use import degrees
from hatchleaf.facts.sheet import Given, Sheet, fitted, number
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import shown

_OF_GAS: Final = ("furnace.gas_by_cold",)
_OF_BATTERY: Final = ("furnace.charge_night", "furnace.charge_by_cold")


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what the furnace takes in a night; without one, nothing."""
    if spec.climate.furnace == "unknown":
        sheet.stop(["climate.furnace"], *_OF_GAS, *_OF_BATTERY)
    there = fitted(spec.climate.furnace)
    if there is None:
        return
    _gas(number("climate.furnace.lp_input", there.lp_input), sheet)
    _battery(number("climate.furnace.blower", there.blower), sheet)


def _night(outside: float) -> str:
    return (
        f"{shown(furnace.NIGHT, 'hour')} at {degrees(outside)} outside, typically "
        f"running {100 * furnace.duty_at(outside):.0f} % of the time"
    )


def _gas(burner: Given, sheet: Sheet) -> None:
    if sheet.lacks([burner], *_OF_GAS):
        return
    always = propane.burned(burner.quantity, furnace.NIGHT)
    for outside in furnace.BANDS:
        sheet.add(
            f"furnace.gas_by_cold[{degrees(outside)}]",
            always * furnace.duty_at(outside),
            "pound",
            how="up",
            digits=2,
            basis=(
                f"The furnace at {burner.text}, {_night(outside)}, at 21,548 BTU "
                "per lb."
            ),
            given=[burner],
            source="common-practice",
            typical=True,
        )


def _battery(blower: Given, sheet: Sheet) -> None:
    if sheet.lacks([blower], *_OF_BATTERY):
        return
    sheet.add(
        "furnace.charge_night",
        furnace.charge(blower.quantity),
        "ampere_hour",
        how="up",
        digits=2,
        basis=(
            f"Its fan at {blower.text} for {shown(furnace.NIGHT, 'hour')}, running "
            f"{100 * furnace.DUTY:g} % of the time, a typical cold night."
        ),
        given=[blower],
        source="common-practice",
        typical=True,
    )
    always = furnace.charge(blower.quantity, duty=1)
    for outside in furnace.BANDS:
        sheet.add(
            f"furnace.charge_by_cold[{degrees(outside)}]",
            always * furnace.duty_at(outside),
            "ampere_hour",
            how="up",
            digits=2,
            basis=f"Its fan at {blower.text}, {_night(outside)}.",
            given=[blower],
            source="common-practice",
            typical=True,
        )
