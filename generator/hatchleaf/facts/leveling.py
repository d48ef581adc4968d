"""Leveling facts: how high to block a side, how far a fridge's lean shows."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import leveling
from hatchleaf.facts.sheet import Sheet, items, number, word
from hatchleaf.spec.model.living import AbsorptionFridge
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import quantity

SLOPES: Final = (1, 2, 3, 4)
"""Slopes of the table, degrees."""
SPIRIT_LEVELS: Final = {
    True: (quantity(2, "foot"), "2 ft"),
    False: (quantity(60, "centimeter"), "60 cm"),
}
"""A common spirit level where feet are usual, and elsewhere."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all leveling facts."""
    _blocks(spec, sheet)
    _fridge(spec, sheet)


def _blocks(spec: UnitSpec, sheet: Sheet) -> None:
    if spec.gear.axles == "unknown":
        sheet.stop(["gear.axles"], "leveling.block")
    given = [
        number(f"gear.axles[{one.id}].track", one.track)
        for one in items(spec.gear.axles)
    ]
    if not given or sheet.lacks(given, "leveling.block"):
        return
    # The widest needs the highest block; axles of one unit hardly differ.
    widest = max(given, key=lambda one: one.quantity)
    for slope in SLOPES:
        said = "1 degree" if slope == 1 else f"{slope} degrees"
        sheet.add(
            f"leveling.block[{said}]",
            leveling.block_height(widest.quantity, slope=slope),
            "inch",
            digits=2,
            basis=(
                f"Wheels {widest.text} apart on ground that falls {said} from side "
                "to side: their distance times the sine of the slope."
            ),
            given=given,
            source="geometry",
        )


def _fridge(spec: UnitSpec, sheet: Sheet) -> None:
    fridge = spec.kitchen.fridge
    if fridge == "unknown":
        sheet.stop(["kitchen.fridge"], "leveling.fridge_gap")
    if not isinstance(fridge, AbsorptionFridge):
        return
    tool, size = SPIRIT_LEVELS[spec.body.market in ("us", "ca")]
    sheet.add(
        "leveling.fridge_gap",
        leveling.lean(tool, slope=leveling.FRIDGE_LEAN),
        "inch",
        how="down",
        digits=2,
        basis=(
            f"A level of {size} that leans {leveling.FRIDGE_LEAN} degrees, the most "
            "for a fridge with a flame where its own book says nothing (typical)."
        ),
        given=[
            word("kitchen.fridge.kind", fridge.kind),
            word("body.market", spec.body.market),
        ],
        source="common-practice",
        typical=True,
    )
