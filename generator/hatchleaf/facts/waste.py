"""Waste facts: volume and weight of each tank, its starting water, its rinse."""

from __future__ import annotations

from hatchleaf.engineering import waste, water
from hatchleaf.facts import waste_use
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, number, stated, whole
from hatchleaf.facts.sheet import word as said
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.waste import WasteTank
from hatchleaf.units import shown

_OF_TANKS = ("waste.capacity", "waste.weight", "waste.precharge")


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all waste facts; a unit without waste tanks has none."""
    if spec.waste.tanks == "unknown":
        sheet.stop(["waste.tanks"], *_OF_TANKS, *waste_use.OF_TANKS)
    for tank in items(spec.waste.tanks):
        _tank(tank, waste_use.label(tank, items(spec.waste.tanks)), sheet)
    waste_use.work_out(spec, sheet)
    _rinse(spec, sheet)


def _volume(tank: WasteTank) -> Given:
    return number(f"waste.tanks[{tank.id}].volume", tank.volume)


def _tank(tank: WasteTank, called: str, sheet: Sheet) -> None:
    volume = _volume(tank)
    holds = said(f"waste.tanks[{tank.id}].holds", tank.holds)
    label = called or "tank that holds what is not known"
    if tank.holds != "gray":
        sheet.lacks([volume, holds], f"waste.precharge[{tank.id}]")
    if sheet.lacks([volume], *(f"{base}[{tank.id}]" for base in _OF_TANKS[:2])):
        return
    sheet.add(
        f"waste.capacity[{tank.id}]",
        volume.quantity,
        "gallon",
        how="down",
        digits=stated(volume.quantity, "gallon"),
        basis=f"The {label} holds {volume.text}.",
        given=[volume],
        source="own-labels",
        label=label,
    )
    weight = water.weight(volume.quantity)
    sheet.add(
        f"waste.weight[{tank.id}]",
        weight,
        "pound",
        how="up",
        digits=min(3, whole(weight, "pound")),
        basis=f"{volume.text} at 8.34 lb per gal, as for water.",
        given=[volume],
        source="water-density",
        label=label,
    )
    # A gray tank drains clear by itself; solids need the water.
    if tank.holds == "gray" or not holds.known:
        return
    sheet.add(
        f"waste.precharge[{tank.id}]",
        waste.precharge(volume.quantity),
        "gallon",
        how="up",
        digits=2,
        basis=f"5 % of {volume.text}, but at least 2 gal (typical).",
        given=[volume, holds],
        source="common-practice",
        typical=True,
        label=label,
    )


def _rinse(spec: UnitSpec, sheet: Sheet) -> None:
    name = "waste.rinse_minutes"
    if spec.waste.rinse == "unknown":
        sheet.stop(["waste.rinse"], name)
    rinse = fitted(spec.waste.rinse)
    if rinse is None:
        return
    flow = number("waste.rinse.flow", rinse.flow)
    of_tank = said("waste.rinse.tank", rinse.tank)
    found = [tank for tank in items(spec.waste.tanks) if tank.id == rinse.tank]
    if not found:
        sheet.stop(["waste.tanks"], name)
        return
    volume = _volume(found[0])
    if sheet.lacks([volume, flow], name):
        return
    minutes = waste.time_to_overflow(volume.quantity, flow.quantity)
    fastest = shown(flow.quantity, "gallon / minute")
    sheet.add(
        name,
        minutes,
        "minute",
        how="down",
        digits=whole(minutes, "minute"),
        basis=(
            f"{volume.text} at the highest flow of {fastest}: when an empty tank can "
            "overflow, never a time allowed; sooner if the tank is not empty."
        ),
        given=[volume, flow, of_tank],
        source="own-labels",
    )
