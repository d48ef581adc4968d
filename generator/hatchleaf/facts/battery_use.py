"""What a night and a day off the grid take, and how many a full battery lasts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from hatchleaf.engineering import battery, furnace, power_use
from hatchleaf.facts.bank import Bank
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, number, whole, word
from hatchleaf.spec.model.living import CompressorFridge
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, number_in, quantity, shown

MILD: Final = "mild"
FROST: Final = "frost"
_FROST_DAYS: Final = f"battery.days[{FROST}]"
COLD: Final = {"32 °F": 32.0, "0 °F": 0.0}
_NAMES: Final = (
    "battery.night_use",
    "battery.nights",
    "battery.day_use",
    "battery.days",
)


@dataclass(frozen=True)
class _Use:
    """One load, and the hours that it runs in a night and in a day."""

    given: tuple[Given, ...]
    draw: Quantity | None
    night: float
    day: float
    frost_only: bool = False


def under_load(bank: Bank, draw: Quantity) -> tuple[Quantity, str, tuple[Given, ...]]:
    """
    Return the usable energy under a steady load, why it is less, and further inputs.

    Lead-acid gives less than its rating to a load above the 20-hour rate; for LFP
    and for a load below that nothing is taken off.
    """
    if not bank.lead:
        return bank.usable, "", ()
    exponent = battery.TYPICAL_PEUKERT[bank.chemistry]
    share = battery.heavy_share(bank.charge, draw, exponent)
    if share >= 1:
        return bank.usable, "", ()
    percent = f"{share * 100:.0f} %"
    why = f" So heavy a load leaves {percent} of it (typical for {bank.kind})."
    return bank.usable * share, why, bank.chemistry_given


def work_out(spec: UnitSpec, bank: Bank, sheet: Sheet) -> None:
    """Write down cold capacity, and use and endurance of a typical night and day."""
    _cold(bank, sheet)
    uses = tuple(_uses(spec, sheet))
    parts = {"dc.loads": spec.dc.loads, "kitchen.fridge": spec.kitchen.fridge}
    unsure = [one for use in uses for one in use.given if not one.known]
    unsure += [Given(path) for path, part in parts.items() if part == "unknown"]
    if sheet.lacks(unsure, *_NAMES):
        return
    mild = [use for use in uses if not use.frost_only]
    if mild:
        _season(MILD, mild, bank, sheet)
    if len(mild) < len(uses):
        _season(FROST, list(uses), bank, sheet)
    elif spec.climate.furnace == "unknown":
        sheet.stop(["climate.furnace"], _FROST_DAYS)
    elif mild:
        # Without a blower frost takes no more, but out of a colder battery.
        day = power_use.energy(_hours(mild, lambda use: use.day), bank.volts)
        given = tuple(one for use in mild for one in use.given)
        _lasts(_FROST_DAYS, day, given, bank, sheet)


def _hours(
    uses: Iterable[_Use], of: Callable[[_Use], float]
) -> list[tuple[Quantity, float]]:
    """Return the current of each load, and the hours that *of* tells for it."""
    return [(use.draw, of(use)) for use in uses if use.draw is not None]


def _cold(bank: Bank, sheet: Sheet) -> None:
    if not bank.known:
        sheet.stop([one.path for one in bank.chemistry_given], "battery.usable_cold")
        return
    for item, degrees in COLD.items():
        share = battery.cold_share(bank.chemistry, degrees)
        sheet.add(
            f"battery.usable_cold[{item}]",
            bank.usable * share,
            "watt_hour",
            how="down",
            digits=2,
            basis=(
                f"{bank.usable_words} of which a battery at {item} gives "
                f"{share * 100:.0f} % (typical for {bank.kind})."
            ),
            given=bank.with_chemistry,
            source="cold-batteries" if bank.lead else "common-practice",
            typical=True,
        )


def _uses(spec: UnitSpec, sheet: Sheet) -> Iterator[_Use]:
    if spec.dc.loads == "unknown":
        sheet.stop(["dc.loads"], *_NAMES)
    if spec.kitchen.fridge == "unknown":
        sheet.stop(["kitchen.fridge"], *_NAMES)
    for one in items(spec.dc.loads):
        at = f"dc.loads[{one.id}]"
        draw = number(f"{at}.draw", one.draw)
        yield _Use(
            (draw, word(f"{at}.runs", one.runs)),
            one.draw.quantity,
            power_use.NIGHT_HOURS.get(one.runs, 0.0),
            power_use.DAY_HOURS.get(one.runs, 0.0),
        )
    taken = {one.id for one in items(spec.dc.loads)}
    fridge = spec.kitchen.fridge
    if isinstance(fridge, CompressorFridge) and "fridge" not in taken:
        yield _Use(
            (number("kitchen.fridge.draw", fridge.draw),),
            fridge.draw.quantity,
            power_use.NIGHT_HOURS["always"] * power_use.FRIDGE_DUTY,
            power_use.DAY_HOURS["always"] * power_use.FRIDGE_DUTY,
        )
    pump = fitted(spec.water.pump)
    if pump and "water-pump" not in taken:
        yield _Use(
            (number("water.pump.draw", pump.draw),),
            pump.draw.quantity,
            power_use.PUMP_NIGHT,
            power_use.PUMP_DAY,
        )
    heating = fitted(spec.climate.furnace)
    if heating:
        yield _Use(
            (number("climate.furnace.blower", heating.blower),),
            heating.blower.quantity,
            number_in(furnace.NIGHT, "hour") * furnace.DUTY,
            power_use.FURNACE_DAY,
            frost_only=True,
        )


def _season(season: str, uses: list[_Use], bank: Bank, sheet: Sheet) -> None:
    night, day = _hours(uses, lambda use: use.night), _hours(uses, lambda use: use.day)
    given = tuple(one for use in uses for one in use.given)
    for unit, last, loads in (("night", "nights", night), ("day", "days", day)):
        energy = power_use.energy(loads, bank.volts)
        ran = sum(hours for _, hours in loads)
        sheet.add(
            f"battery.{unit}_use[{season}]",
            energy,
            "watt_hour",
            how="up",
            digits=2,
            basis=(
                f"{len(uses)} things on 12 V, each for as long as is typical in a "
                f"{season} {unit}, {ran:.0f} hours in all, at "
                f"{shown(bank.volts, 'volt')}."
            ),
            given=given,
            source="common-practice",
            typical=True,
        )
        _lasts(f"battery.{last}[{season}]", energy, given, bank, sheet)


def _lasts(
    name: str, energy: Quantity, given: tuple[Given, ...], bank: Bank, sheet: Sheet
) -> None:
    unit = "night" if name.startswith("battery.nights") else "day"
    season = FROST if FROST in name else MILD
    share = _share(season, bank)
    less = "" if share >= 1 else f" of which {share * 100:.0f} % are left at 32 °F,"
    left = number_in(bank.usable, "watt_hour") * share
    lasts = quantity(left / number_in(energy, "watt_hour"), unit)
    sheet.add(
        name,
        lasts,
        unit,
        how="down",
        # Days as on the page of how long one can stay, where all end in whole ones.
        digits=whole(lasts, unit) if unit == "day" else 2,
        basis=(
            f"{bank.usable_words}{less} over "
            f"{shown(energy, 'watt_hour', digits=2, how='up')} for a typical "
            f"{season} {unit}, with no charge coming in."
        ),
        given=tuple(dict.fromkeys((*bank.with_chemistry, *given))),
        source="common-practice",
        typical=True,
    )


def _share(season: str, bank: Bank) -> float:
    if season == MILD or not bank.known:
        return 1.0
    return battery.cold_share(bank.chemistry, COLD["32 °F"])
