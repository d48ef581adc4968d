"""Waste facts of use: days until a tank is full, dumping, the fall of the hose."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from hatchleaf.engineering import waste
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    items,
    number,
    plus,
    total,
    whole,
    word,
)
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.waste import WasteTank
from hatchleaf.units import Quantity, quantity, shown

OF_TANKS: Final = ("waste.days", "waste.drain_seconds")
"""What cannot be told where the tanks are not known."""

_PEOPLE: Final = (1, 2, 4, 6)
_HOSES: Final = (10, 15, 20)
_WIDTHS: Final = {"three_inch": 3.0, "two_inch": 2.0}
"""Inches of the outlets that empty by themselves; a macerator pumps."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what using and dumping the waste tanks comes to."""
    tanks = items(spec.waste.tanks)
    for holds in ("black", "gray", "combined"):
        alike = [tank for tank in tanks if tank.holds == holds]
        if alike:
            _days(holds, alike, sheet)
    for tank in tanks:
        if tank.holds == "unknown":
            sheet.stop([f"waste.tanks[{tank.id}].holds"], "waste.days")
    _outlet(spec, tanks, sheet)
    # Where a rinse inlet is fitted, it rinses with the valve open.
    if spec.waste.rinse == "none":
        for tank in tanks:
            _rinse_fills(tank, label(tank, tanks), sheet)


def _volume(tank: WasteTank) -> Given:
    return number(f"waste.tanks[{tank.id}].volume", tank.volume)


def label(tank: WasteTank, tanks: Sequence[WasteTank]) -> str:
    """Return what *tank* is called among *tanks*: of two alike, each by its id."""
    if tank.holds == "unknown":
        return ""
    alone = sum(other.holds == tank.holds for other in tanks) == 1
    return f"{tank.holds if alone else tank.id.replace('-', ' ')} tank"


def _days(holds: str, tanks: list[WasteTank], sheet: Sheet) -> None:
    given = [_volume(tank) for tank in tanks]
    people = ["1 person" if one == 1 else f"{one} people" for one in _PEOPLE]
    names = [f"waste.days[{holds}, {who}]" for who in people]
    if sheet.lacks(given, *names):
        return
    volume = total([one.quantity for one in given], "gallon")
    start, note = _start(holds, given)
    texts = plus([one.text for one in given])
    several = ", taken together" if len(given) > 1 else ""
    each = waste.DAILY[holds]
    for who, count, name in zip(people, _PEOPLE, names, strict=True):
        days = waste.days(volume, people=count, each=each, start=start)
        adds = shown(each * quantity(1, "day"), "gallon")
        use = f"adds {adds} a day" if count == 1 else f"add {adds} a day each"
        sheet.add(
            name,
            days,
            "day",
            how="down",
            digits=whole(days, "day"),
            basis=(
                f"{texts}{several}{note}, with {who} who {use}, with care (typical)."
            ),
            given=[
                *given,
                *(word(f"waste.tanks[{tank.id}].holds", holds) for tank in tanks),
            ],
            source="common-practice",
            typical=True,
            label=f"{holds} tank, {who}",
        )


def _start(holds: str, given: list[Given]) -> tuple[Quantity, str]:
    """Return the water that tanks of solids start with, and words for it."""
    if holds == "gray":
        return quantity(0, "gallon"), ""
    start = total([waste.precharge(one.quantity) for one in given], "gallon")
    return start, f", less the {shown(start, 'gallon', how='up')} it starts with"


def _outlet(spec: UnitSpec, tanks: tuple[WasteTank, ...], sheet: Sheet) -> None:
    outlets = items(spec.waste.outlets)
    names = [f"waste.drain_seconds[{tank.id}]" for tank in tanks]
    falls = [f"waste.hose_fall[{feet} ft]" for feet in _HOSES]
    if spec.waste.outlets == "unknown":
        sheet.stop(["waste.outlets"], *names, *falls)
    if not outlets:
        return
    # Where there are two, the first is the wide one that all figures are given for.
    outlet = outlets[0]
    kind = word(f"waste.outlets[{outlet.id}].kind", outlet.kind.replace("_", " "))
    if sheet.lacks([kind], *names, *falls) or outlet.kind not in _WIDTHS:
        return
    width = quantity(_WIDTHS[outlet.kind], "inch")
    for tank in tanks:
        _drain(tank, label(tank, tanks), kind, width, sheet)
    for feet, name in zip(_HOSES, falls, strict=True):
        sheet.add(
            name,
            waste.hose_fall(quantity(feet, "foot")),
            "inch",
            how="up",
            digits=2,
            basis=f"{feet} ft of hose, falling a quarter inch for each foot.",
            given=[kind],
            source="irc-drain-slope",
        )


def _drain(
    tank: WasteTank, called: str, kind: Given, width: Quantity, sheet: Sheet
) -> None:
    name = f"waste.drain_seconds[{tank.id}]"
    volume = _volume(tank)
    if sheet.lacks([volume], name):
        return
    sheet.add(
        name,
        waste.drain_time(volume.quantity, width),
        "second",
        how="up",
        digits=2,
        basis=(
            f"{volume.text} through a {shown(width, 'inch')} outlet, the water "
            f"{shown(waste.DEPTH, 'inch')} deep when full (typical); solids and the "
            "hose slow it down."
        ),
        given=[volume, kind],
        source="torricelli",
        typical=True,
        label=called,
    )


def _rinse_fills(tank: WasteTank, called: str, sheet: Sheet) -> None:
    if tank.holds not in ("black", "combined"):
        return
    names = [f"{base}[{tank.id}]" for base in ("waste.rinse_fill", "waste.rinse_fills")]
    volume = _volume(tank)
    if sheet.lacks([volume], *names):
        return
    fill = volume.quantity * waste.RINSE_FILL
    holds = word(f"waste.tanks[{tank.id}].holds", tank.holds)
    sheet.add(
        names[0],
        fill,
        "gallon",
        how="down",
        digits=2,
        basis=f"A third of {volume.text}, so that it cannot overflow (typical).",
        given=[volume, holds],
        source="common-practice",
        typical=True,
        label=called,
    )
    fills = waste.rinse_fills(fill)
    sheet.add(
        names[1],
        quantity(fills, "fill"),
        "fill",
        how="up",
        digits=whole(quantity(fills, "fill"), "fill"),
        basis=(
            f"Each fill of a third of {volume.text} thins the "
            f"{shown(waste.RESIDUE, 'gallon')} that stays behind, until no more than "
            f"{100 * waste.CLEAN_ENOUGH:g} % of the old content is left (typical)."
        ),
        given=[volume, holds],
        source="common-practice",
        typical=True,
        label=called,
    )
