"""What a generator must give for this unit, and what height takes from one."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import electric_heat, generator
from hatchleaf.facts.sheet import Sheet, fitted, items, number
from hatchleaf.spec.model.electrical import AirConditioner
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import quantity

HEIGHTS: Final = (3_000, 5_000, 8_000)


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the start of each cooler, its heat strip, and the generator."""
    for one in items(spec.climate.air_conditioners):
        _heat(one, sheet)
    for one in items(spec.climate.air_conditioners):
        _start(one, sheet)
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
