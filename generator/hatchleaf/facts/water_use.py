"""Fresh water facts of use: filling, pumping, pressure, antifreeze."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import water
from hatchleaf.facts.sheet import Given, Sheet, fitted, number, plus, total, whole, word
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.water import OnDemandHeater
from hatchleaf.units import quantity, shown

OF_TANKS: Final = ("water.fill_minutes", "water.pump_minutes")
"""What cannot be told where a tank's volume is not known."""


def of_tanks(spec: UnitSpec, tanks: list[Given], sheet: Sheet) -> None:
    """Write down how long the *tanks*, whose volumes are known, take to fill."""
    _fill(tanks, sheet)
    _pump(spec, tanks, sheet)


def of_pipes(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what the pipes' pressure does to a tank, and their antifreeze."""
    _push(spec, sheet)
    _antifreeze(spec, sheet)


def _fill(tanks: list[Given], sheet: Sheet) -> None:
    volume = total([one.quantity for one in tanks], "gallon")
    minutes = water.fill_time(volume)
    sheet.add(
        "water.fill_minutes",
        minutes,
        "minute",
        how="down",
        digits=whole(minutes, "minute"),
        basis=(
            f"{plus([one.text for one in tanks])} at "
            f"{shown(water.TAP_FLOW, 'gallon / minute')}, a typical park tap; a strong "
            "tap is sooner."
        ),
        given=tanks,
        source="common-practice",
        typical=True,
    )


def _pump(spec: UnitSpec, tanks: list[Given], sheet: Sheet) -> None:
    name = OF_TANKS[1]
    if spec.water.pump == "unknown":
        sheet.stop(["water.pump"], name)
    pump = fitted(spec.water.pump)
    if pump is None:
        return
    flow = number("water.pump.flow", pump.flow)
    if sheet.lacks([flow], name):
        return
    volume = total([one.quantity for one in tanks], "gallon")
    minutes = water.fill_time(volume, flow=flow.quantity)
    sheet.add(
        name,
        minutes,
        "minute",
        how="down",
        digits=whole(minutes, "minute"),
        basis=(
            f"{plus([one.text for one in tanks])} at the pump's {flow.text}, with the "
            "taps wide open: the soonest that a full tank is empty."
        ),
        given=[*tanks, flow],
        source="own-labels",
    )


def _push(spec: UnitSpec, sheet: Sheet) -> None:
    most = spec.water.most_pressure
    if isinstance(most, str):
        return
    limit = number("water.most_pressure", most)
    if sheet.lacks([limit], "water.push"):
        return
    sheet.add(
        "water.push",
        water.push(limit.quantity, quantity(1, "foot ** 2")),
        "pound_force",
        how="up",
        digits=2,
        basis=(
            f"{limit.text} on each of the 144 square inches of a square foot, if the "
            "pressure of the pipes got into a tank."
        ),
        given=[limit],
        source="water-pressure",
    )


def _antifreeze(spec: UnitSpec, sheet: Sheet) -> None:
    names = ["water.antifreeze[at least]", "water.antifreeze[at most]"]
    if spec.water.pump == "unknown" or spec.hot_water == "unknown":
        paths = [
            path
            for path, part in (
                ("water.pump", spec.water.pump),
                ("hot_water", spec.hot_water),
            )
            if part == "unknown"
        ]
        sheet.stop(paths, *names)
        return
    # Without a pump nothing draws it in.
    if fitted(spec.water.pump) is None:
        return
    heater = spec.hot_water
    held = getattr(heater, "volume", None)
    bypass = getattr(heater, "bypass", "none")
    given = [word("water.pump.kind", str(spec.water.pump.kind))]  # type: ignore[union-attr]
    extra = quantity(0, "gallon")
    note = ""
    if held is not None and bypass == "unknown":
        sheet.stop(["hot_water.bypass"], *names)
        return
    if held is not None and bypass == "none":
        volume = number("hot_water.volume", held)
        if sheet.lacks([volume], *names):
            return
        given.append(volume)
        extra = volume.quantity
        note = f" + {volume.text} in the water heater, which has no bypass"
    elif held is not None:
        given.append(word("hot_water.bypass", str(bypass).replace("_", " ")))
        note = ", with the water heater bypassed"
    elif isinstance(heater, OnDemandHeater):
        given.append(word("hot_water.kind", "on demand"))
        note = "; the water heater as its own book says"
    for name, pipes in zip(names, water.ANTIFREEZE, strict=True):
        sheet.add(
            name,
            pipes + extra,
            "gallon",
            how="up",
            digits=2,
            basis=(
                f"{shown(pipes, 'gallon')} for the pipes, the pump and the traps "
                f"(typical){note}."
            ),
            given=given,
            source="antifreeze-practice",
            typical=True,
        )
