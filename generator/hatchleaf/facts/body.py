"""The height of the unit, in the words of a bridge's sign."""

from __future__ import annotations

from hatchleaf.engineering import height
from hatchleaf.facts.sheet import Sheet, number, word
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down how high the unit is."""
    given = number("body.height", spec.body.height)
    if sheet.lacks([given], "body.height"):
        return
    market = spec.body.market
    sheet.add(
        "body.height",
        _on_a_sign(given.quantity, market),
        basis=(
            "Top of the highest part with the tires at the pressure of their placard, "
            f"given as {given.text}, rounded up; measure your own."
        ),
        given=[given, word("body.market", market)],
        source="own-labels",
    )


def _on_a_sign(size: Quantity, market: str) -> str:
    """Return a height as *market*'s signs give it: feet and inches, meters, or both."""
    feet, inches = height.whole_inches(size)
    meters = f"{height.whole_centimeters(size) / 100:.2f} m"
    if market == "us":
        return f"{feet} ft {inches} in"
    # Signs in the United Kingdom give both, in Canada and elsewhere meters.
    return f"{meters} ({feet} ft {inches} in)" if market in ("uk", "ca") else meters
