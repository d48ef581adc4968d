"""Tire facts: the placard's pressure and load, and what weather does to them."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import tires
from hatchleaf.facts.sheet import Sheet, fitted, number, stated, whole
from hatchleaf.spec.model.unit import UnitSpec

SET_AT: Final = 70.0
"""Temperature at which the pressure is set cold, degF."""
TEMPERATURES: Final = (0, 30, 50, 70, 90, 110)
"""Temperatures of the table, degF."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all tire facts."""
    if spec.gear.tires == "unknown":
        names = ("tires.pressure", "tires.load", "tires.pressure_at")
        sheet.stop(["gear.tires"], *names)
    fitted_here = fitted(spec.gear.tires)
    if fitted_here is None:
        return
    load = number("gear.tires.load", fitted_here.load)
    pressure = number("gear.tires.pressure", fitted_here.pressure)
    if not sheet.lacks([load], "tires.load"):
        at = f" at {pressure.text}" if pressure.known else ""
        sheet.add(
            "tires.load",
            load.quantity,
            "pound",
            how="down",
            digits=stated(load.quantity, "pound"),
            basis=f"One tire carries at most {load.text}{at}.",
            given=[load],
            source="own-labels",
        )
    if sheet.lacks([pressure], "tires.pressure", "tires.pressure_at"):
        return
    sheet.add(
        "tires.pressure",
        pressure.quantity,
        "psi",
        how="near",
        digits=stated(pressure.quantity, "psi"),
        basis=f"{pressure.text} on the placard, cold.",
        given=[pressure],
        source="own-labels",
    )
    for now in TEMPERATURES:
        then = tires.pressure_at(pressure.quantity, set_at=SET_AT, now=now)
        sheet.add(
            f"tires.pressure_at[{now} °F]",
            then,
            "psi",
            how="near",
            digits=whole(then, "psi"),
            basis=(
                f"A tire set cold to {pressure.text} at 70 °F and now at {now} °F, "
                "not driven, with no air let in or out."
            ),
            given=[pressure],
            source="gas-law",
        )
