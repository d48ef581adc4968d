"""What the voltage tells, how a battery keeps in storage, and what frost does."""

from __future__ import annotations

import math
from typing import Final

from hatchleaf.engineering import charging, electrolyte
from hatchleaf.facts.bank import Bank
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, number, word
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in, quantity, shown

_STORAGE: Final = "battery.storage_days"
_STATES: Final = {
    "full": 1.0,
    "three quarters full": 0.75,
    "half full": 0.5,
    "a quarter full": 0.25,
    "empty": 0.0,
}
_BAND: Final = 0.1
_STEP: Final = 5


def work_out(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    """Write down what is true of this kind of battery."""
    if not bank.known:
        paths = [one.path for one in bank.chemistry_given]
        sheet.stop(
            paths,
            "battery.at_rest",
            "battery.freezes",
            "battery.coldest_charge",
            _STORAGE,
        )
        return
    _at_rest(bank, sheet)
    if bank.lead:
        _freezes(bank, sheet)
    else:
        sheet.add(
            "battery.coldest_charge",
            "32 °F",
            basis=(
                "For typical LFP cells: below it charging ruins them, while they may "
                "still give power; the battery's own label wins."
            ),
            given=bank.chemistry_given,
            source="lfp-cell-charging",
            typical=True,
        )
    _storage(spec, bank, sheet)


def _at_rest(bank: Bank, sheet: Sheet) -> None:
    if not bank.lead:
        _band("any reading", "tells you little", bank, sheet)
        return
    full = electrolyte.FULL_FROM[bank.chemistry]
    half = electrolyte.HALF_AT[bank.chemistry]
    _band("full or nearly", f"{full:.1f} V or more", bank, sheet)
    _band("half full", f"{half - _BAND:.1f} V to {half + _BAND:.1f} V", bank, sheet)
    _band("charge it now", f"below {half - _BAND:.1f} V", bank, sheet)


def _band(item: str, says: str, bank: Bank, sheet: Sheet) -> None:
    why = (
        f"A typical {bank.kind} battery of 12 V after some hours with no load and no "
        "charge; a meter may be off by 0.1 V."
        if bank.lead
        else "The voltage of a typical LFP battery hardly moves until it is empty."
    )
    sheet.add(
        f"battery.at_rest[{item}]",
        says,
        basis=why,
        given=bank.chemistry_given,
        source="bci-rest-voltage" if bank.chemistry == "flooded" else "common-practice",
        typical=True,
    )


def _freezes(bank: Bank, sheet: Sheet) -> None:
    for item, charged in _STATES.items():
        gravity = electrolyte.gravity(charged)
        # Up to the next five degrees: it may freeze a little sooner than the table.
        degrees = math.ceil(electrolyte.freezes_at(gravity) / _STEP) * _STEP
        sheet.add(
            f"battery.freezes[{item}]",
            f"{degrees} °F".replace("-", "\u2212"),
            basis=(
                f"Acid of specific gravity {gravity:.3f}, typical for a lead-acid "
                f"battery that is {item}, begins to freeze there; rounded to the warm "
                "side."
            ),
            given=bank.chemistry_given,
            source="acid-freezing",
            typical=True,
        )


def _storage(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    always = [one for one in items(spec.dc.loads) if one.runs == "always"]
    draws = [number(f"dc.loads[{one.id}].draw", one.draw) for one in always]
    on = f"{_STORAGE}[switch on]"
    if spec.dc.loads == "unknown":
        sheet.stop(["dc.loads"], on)
    elif always and not sheet.lacks(draws, on):
        words = [word(f"dc.loads[{one.id}].runs", one.runs) for one in always]
        amps = sum(number_in(one.quantity, "ampere") for one in draws)
        drawn = (amps, "what always runs")
        _until_half(on, drawn, (*draws, *words), bank, sheet)
    switch = fitted(spec.dc.disconnect)
    if switch:
        stays = word("dc.disconnect.stays_on", switch.stays_on)
        nothing = switch.stays_on == "nothing"
        amps = 0.0 if nothing else number_in(charging.ALARM_DRAW, "ampere")
        name = f"{_STORAGE}[switch off]"
        _until_half(name, (amps, "what stays on"), (stays,), bank, sheet)


def _until_half(
    name: str,
    drawn: tuple[float, str],
    given: tuple[Given, ...],
    bank: Bank,
    sheet: Sheet,
) -> None:
    amps, what = drawn
    loss = charging.TYPICAL[bank.chemistry].monthly_loss
    standing = quantity(amps, "ampere")
    time = charging.days_to_half(bank.charge, standing, monthly_loss=loss)
    longest = charging.LONGEST_REST["lead" if bank.lead else "lfp"]
    # However slowly it falls, a battery left alone for longer suffers.
    held = min(time, longest)
    at_most = (
        f", and at most {shown(longest, 'day')} in any case" if held < time else ""
    )
    said = shown(standing, "ampere", digits=2, how="up")
    draw = f"{said} for {what}, and " if amps else ""
    sheet.add(
        name,
        held,
        "day",
        how="down",
        digits=2,
        basis=(
            f"From {shown(bank.charge, 'ampere_hour', how='down')} to half of it by "
            f"{draw}{loss * 100:.0f} % a month that it loses by itself{at_most}; "
            f"typical for {bank.kind} near 77 °F."
        ),
        given=tuple(dict.fromkeys((*bank.with_chemistry, *given))),
        source="common-practice",
        typical=True,
    )
