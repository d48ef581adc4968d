"""Food facts: how long a shut fridge holds, and how long food may be warm."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import food
from hatchleaf.facts.sheet import Sheet, word
from hatchleaf.spec.model.living import HouseholdFridge
from hatchleaf.spec.model.unit import UnitSpec

ADVISED: Final = ("us", "ca")
"""Markets whose owners know this advice, in degrees Fahrenheit."""
_NAMES = ("food.holds", "food.warm_limit")


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the hold times of food; without a fridge there are none."""
    fridge = spec.kitchen.fridge
    if fridge == "unknown":
        sheet.stop(["kitchen.fridge"], *_NAMES)
    # The advice of one country; others count in another way.
    if isinstance(fridge, str) or spec.body.market not in ADVISED:
        return
    given = [
        word("kitchen.fridge.kind", fridge.kind.replace("_", " ")),
        word("body.market", spec.body.market),
    ]
    rows = [("fridge", food.FRIDGE_HOLDS, "A home fridge, kept shut")]
    # The other fridges have no freezer that holds its cold for a day.
    if isinstance(fridge, HouseholdFridge):
        rows += [
            ("full freezer", food.FULL_FREEZER_HOLDS, "A full freezer, kept shut"),
            ("half-full freezer", food.HALF_FREEZER_HOLDS, "A half-full one, shut"),
        ]
    for item, time, what in rows:
        sheet.add(
            f"food.holds[{item}]",
            time,
            "hour",
            how="down",
            digits=2,
            basis=f"{what}: food stays safe for about this long; less in a small one.",
            given=given,
            source="usda-food-safety",
        )
    sheet.add(
        "food.warm_limit",
        food.WARM_LIMIT,
        "hour",
        how="down",
        digits=2,
        basis=(
            f"Meat, fish, milk and leftovers that were above {food.COLD_ENOUGH:g} °F "
            "for longer are thrown out."
        ),
        given=given,
        source="usda-food-safety",
    )
