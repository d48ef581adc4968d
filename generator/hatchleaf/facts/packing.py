"""What it does to the hitch when cargo is packed further forward."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import weights
from hatchleaf.facts.sheet import Sheet, fitted, number, word
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import quantity, symbol_of

MOVED: Final = (
    (100, "pound", (2, 4, 8), "foot"),
    (50, "kilogram", (0.5, 1, 2), "meter"),
)
"""What cargo is moved, and how far: in North America, and elsewhere."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what moved cargo adds to the weight on the hitch."""
    hitch = fitted(spec.gear.hitch)
    if hitch is None:
        return
    lever = number("gear.hitch.to_axles", hitch.to_axles)
    if sheet.lacks([lever], "weights.hitch_moved"):
        return
    heavy, unit, ways, length = MOVED[spec.body.market not in ("us", "ca")]
    for way in ways:
        far = f"{way:g} {symbol_of(length)}"
        sheet.add(
            f"weights.hitch_moved[{far}]",
            weights.hitch_change(
                quantity(heavy, unit), quantity(way, length), lever.quantity
            ),
            "pound",
            digits=2,
            basis=(
                f"{heavy} {symbol_of(unit)} times {far}, "
                f"over the {lever.text} from the coupling to the middle of the axles; "
                "to the rear, the same comes off."
            ),
            given=[lever, word("body.market", spec.body.market)],
            source="lever-rule",
        )
