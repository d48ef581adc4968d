"""Awning facts: the cloth, what wind does to it, and the maker's limit."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import wind
from hatchleaf.facts.sheet import Sheet, items, number, stated
from hatchleaf.spec.model.outside import Awning
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, convert, quantity, shown

SPEEDS: Final = tuple(quantity(speed, "mile / hour") for speed in (15, 20, 25, 30))
"""Wind speeds of the table."""

_BASES = ("awnings.area", "awnings.wind_force", "awnings.wind_limit")


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all awning facts; a unit without an awning has none."""
    if spec.awnings == "unknown":
        sheet.stop(["awnings"], *_BASES)
    for awning in items(spec.awnings):
        _limit(awning, sheet)
        _force(awning, sheet, alone=len(items(spec.awnings)) == 1)


def _limit(awning: Awning, sheet: Sheet) -> None:
    limit = number(f"awnings[{awning.id}].wind_limit", awning.wind_limit)
    name = f"awnings.wind_limit[{awning.id}]"
    if sheet.lacks([limit], name):
        return
    sheet.add(
        name,
        limit.quantity,
        "mile / hour",
        how="down",
        digits=stated(limit.quantity, "mile / hour"),
        basis=f"The maker's own limit of {limit.text}.",
        given=[limit],
        source="own-labels",
    )


def _force(awning: Awning, sheet: Sheet, *, alone: bool) -> None:
    at = f"awnings[{awning.id}]"
    given = [
        number(f"{at}.width", awning.width),
        number(f"{at}.reach", awning.reach),
    ]
    forces = [f"awnings.wind_force[{awning.id}, {_speed(one)}]" for one in SPEEDS]
    rain = f"awnings.rain[{awning.id}]"
    if sheet.lacks(given, f"awnings.area[{awning.id}]", rain, *forces):
        return
    width, reach = given
    area = convert(width.quantity * reach.quantity, "foot ** 2")
    sheet.add(
        f"awnings.area[{awning.id}]",
        area,
        "foot ** 2",
        how="up",
        digits=2,
        basis=f"{width.text} wide times {reach.text} out.",
        given=given,
        source="own-labels",
    )
    cloth = shown(area, "foot ** 2", how="up")
    sheet.add(
        rain,
        wind.rain(area, quantity(1, "inch")),
        "pound",
        how="up",
        digits=2,
        basis=f"One inch of rain on {cloth} of cloth, 5.2 lb on each square foot.",
        given=given,
        source="water-density",
    )
    for speed, name in zip(SPEEDS, forces, strict=True):
        step = wind.beaufort(speed)
        sheet.add(
            name,
            wind.force(speed, area),
            "pound_force",
            how="up",
            digits=2,
            basis=(
                f"Wind of {_speed(speed)}, a {step.name} (Beaufort {step.number}), "
                f"square on {cloth} of cloth, by 0.00256 times the speed squared; "
                "gusts count."
            ),
            given=given,
            source="asce-7-wind",
            label=f"{'' if alone else f'{awning.id}, '}{_speed(speed)}: {step.sign}",
        )


def _speed(speed: Quantity) -> str:
    return shown(speed, "mile / hour")
