"""What a generator must give for this unit, and what height takes from one."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import electric_heat, generator
from hatchleaf.facts.sheet import Sheet, fitted, items, number
from hatchleaf.spec.model.living import AirConditioner
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in, quantity

HEIGHTS: Final = (3_000, 5_000, 8_000)


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the start of each cooler, its heat strip, and the generator."""
    for one in items(spec.climate.air_conditioners):
        _heat(one, sheet)
    for one in items(spec.climate.air_conditioners):
        _start(one, sheet)
    _needed(spec, sheet)
    if spec.ac.generator == "unknown":
        sheet.stop(["ac.generator"], "generator.rated", "generator.at_height")
    built_in = fitted(spec.ac.generator)
    if built_in is None:
        return
    rated = number("ac.generator.watts", built_in.watts)
    if sheet.lacks([rated], "generator.rated", "generator.at_height"):
        return
    sheet.add(
        "generator.rated",
        rated.quantity,
        "watt",
        how="down",
        basis=f"Its rating of {rated.text}, at sea level.",
        given=[rated],
        source="own-labels",
    )
    for feet in HEIGHTS:
        height = quantity(feet, "foot")
        sheet.add(
            f"generator.at_height[{feet:,} ft]",
            generator.at_altitude(rated.quantity, height),
            "watt",
            how="down",
            digits=2,
            basis=(
                f"{rated.text} less 3.5 % for each 1,000 ft, typical for engines; the "
                "generator's own book wins."
            ),
            given=[rated],
            source="common-practice",
            typical=True,
        )


def _start(cooler: AirConditioner, sheet: Sheet) -> None:
    watts = number(f"climate.air_conditioners[{cooler.id}].watts", cooler.watts)
    name = f"generator.start[{cooler.id}]"
    if sheet.lacks([watts], name):
        return
    sheet.add(
        name,
        generator.start(watts.quantity),
        "watt",
        how="up",
        digits=2,
        basis=(
            f"Twice the {watts.text} that it takes while it runs, typical for the "
            "moment of the start; pages differ by half."
        ),
        given=[watts],
        source="common-practice",
        typical=True,
    )


def _needed(spec: UnitSpec, sheet: Sheet) -> None:
    """
    Write down what any generator must give, built in or carried along.

    Only where shore power and an air conditioner are fitted: nothing else here asks
    for more at its start than while it runs.
    """
    coolers = items(spec.climate.air_conditioners)
    if fitted(spec.ac.shore) is None or not coolers:
        return
    given = [
        number(f"climate.air_conditioners[{one.id}].watts", one.watts)
        for one in coolers
    ]
    if spec.dc.converter == "unknown":
        sheet.stop(["dc.converter"], "generator.needed")
        return
    converter = fitted(spec.dc.converter)
    charger = number("dc.converter.draw", converter.draw) if converter else None
    all_given = [*given, charger] if charger else given
    if sheet.lacks(all_given, "generator.needed"):
        return
    largest = max(given, key=lambda one: number_in(one.quantity, "watt"))
    beside = f", and {charger.text} for the battery charger" if charger else ""
    sheet.add(
        "generator.needed",
        generator.needed(largest.quantity, charger.quantity if charger else None),
        "watt",
        how="up",
        digits=2,
        basis=(
            f"Twice the {largest.text} of the largest air conditioner, typical for the "
            f"moment of its start{beside}; nothing else on, at sea level."
        ),
        given=all_given,
        source="common-practice",
        typical=True,
    )


def _heat(cooler: AirConditioner, sheet: Sheet) -> None:
    if not isinstance(cooler.heat_strip, Reading):
        return
    path = f"climate.air_conditioners[{cooler.id}].heat_strip"
    watts = number(path, cooler.heat_strip)
    name = f"climate.strip_heat[{cooler.id}]"
    if sheet.lacks([watts], name):
        return
    heat = electric_heat.heat(watts.quantity)
    sheet.add(
        name,
        heat,
        "Btu / hour",
        how="down",
        digits=2,
        basis=f"{watts.text} times 3.412: all of it becomes heat.",
        given=[watts],
        source="unit-of-heat",
    )
