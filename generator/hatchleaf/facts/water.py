"""Fresh water facts: volume, weight, days, and bleach to clean the system."""

from __future__ import annotations

from hatchleaf.engineering import sanitizing, water
from hatchleaf.facts import water_use
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    items,
    number,
    plus,
    stated,
    total,
    whole,
    word,
)
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, quantity, shown

PEOPLE = (1, 2, 4, 6)
_FROM_TANKS = ("water.capacity", "water.weight", "water.days")
_OF_BLEACH = ("water.bleach_volume", "water.bleach")


def tanks(spec: UnitSpec) -> list[Given]:
    """Return the volumes of the fresh tanks; the part itself where not known."""
    if spec.water.tanks == "unknown":
        return [Given("water.tanks")]
    return [
        number(f"water.tanks[{one.id}].volume", one.volume)
        for one in items(spec.water.tanks)
    ]


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all fresh water facts; a unit without a tank has none."""
    given = tanks(spec)
    if not given:
        return
    if not sheet.lacks(given, *_FROM_TANKS, *_OF_BLEACH, *water_use.OF_TANKS):
        _of_tanks(given, sheet)
        water_use.of_tanks(spec, given, sheet)
        _bleach(spec, given, sheet)
    water_use.of_pipes(spec, sheet)


def _of_tanks(given: list[Given], sheet: Sheet) -> None:
    volume = total([one.quantity for one in given], "gallon")
    texts = plus([one.text for one in given])
    of_all = texts if len(given) == 1 else f"{texts} in all fresh tanks"
    sheet.add(
        "water.capacity",
        volume,
        "gallon",
        how="down",
        digits=min(stated(one.quantity, "gallon") for one in given),
        basis=f"{of_all}, filled to the top.",
        given=given,
        source="own-labels",
    )
    sheet.add(
        "water.weight",
        water.weight(volume),
        "pound",
        how="up",
        digits=min(3, whole(water.weight(volume), "pound")),
        basis=f"{of_all} at 8.34 lb per gal.",
        given=given,
        source="water-density",
    )
    _days(volume, texts, given, sheet)


def _days(volume: Quantity, texts: str, given: list[Given], sheet: Sheet) -> None:
    for people in PEOPLE:
        who = "1 person" if people == 1 else f"{people} people"
        days = water.days(volume, people=people)
        use = "uses 5 gal a day" if people == 1 else "use 5 gal a day each"
        sheet.add(
            f"water.days[{who}]",
            days,
            "day",
            how="down",
            digits=whole(days, "day"),
            basis=f"{texts} for {who} who {use}, with care (typical).",
            given=given,
            source="common-practice",
            typical=True,
        )


def _bleach(spec: UnitSpec, given: list[Given], sheet: Sheet) -> None:
    heater = _heater(spec)
    treated = [*given, *heater]
    if sheet.lacks(treated, *_OF_BLEACH):
        return
    length = number("body.length", spec.body.length)
    lines = 1 if spec.hot_water == "none" else 2
    in_lines = quantity(0, "gallon")
    if length.known:
        in_lines = sanitizing.in_lines(length.quantity, lines=lines)
    volume = total([one.quantity for one in treated if one.number], "gallon") + in_lines
    tank_only = total([one.quantity for one in given], "gallon") + in_lines
    where = "in the tank" if len(given) == 1 else "in the tanks"
    texts = f"{plus([one.text for one in given])} {where}"
    bypass = [one for one in heater if one.path == "hot_water.bypass"]
    note = ""
    if heater:
        texts += f" + {heater[0].text} in the water heater"
        note = "; leave the heater out while it is bypassed" if bypass else ""
    if length.known:
        texts += f" + {shown(in_lines, 'gallon', digits=1, how='up')} in the pipes"
        texts += " (typical)"
        treated.append(length)
    sheet.add(
        "water.bleach_volume",
        volume,
        "gallon",
        how="up",
        basis=f"{texts}{note}.",
        given=treated,
        source="own-labels",
        typical=length.known,
    )
    for strength in sanitizing.STRENGTHS:
        item = shown(strength, "percent")
        dose = sanitizing.dose(volume, strength)
        in_ml = shown(dose, "milliliter", digits=2, how="up")
        without = ""
        if bypass:
            alone = sanitizing.dose(tank_only, strength)
            without = (
                " With the heater bypassed, leave it out: "
                f"{shown(alone, 'fluid_ounce', digits=2, how='up')} "
                f"({shown(alone, 'milliliter', digits=2, how='up')})."
            )
        sheet.add(
            f"water.bleach[{item}]",
            dose,
            "fluid_ounce",
            how="up",
            digits=2,
            basis=(
                f"50 parts of chlorine per million in {texts}, "
                f"with {item} bleach: {in_ml}.{without}"
            ),
            given=treated,
            source="cdc-vessel-sanitation",
            typical=length.known,
        )


def _heater(spec: UnitSpec) -> list[Given]:
    """Return the heater's tank, and its bypass if it has one; the tank comes first."""
    if spec.hot_water == "unknown":
        return [Given("hot_water")]
    volume = getattr(spec.hot_water, "volume", None)
    if volume is None:
        return []
    found = [number("hot_water.volume", volume)]
    bypass = getattr(spec.hot_water, "bypass", "none")
    if bypass != "none":
        found.append(word("hot_water.bypass", bypass.replace("_", " ")))
    return found
