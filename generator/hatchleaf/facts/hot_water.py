"""Hot water facts: how fast it warms, how far it goes, how fast it burns skin."""

from __future__ import annotations

from typing import Final

from hatchleaf.engineering import hot_water
from hatchleaf.facts.burners import Warmth, warmths
from hatchleaf.facts.sheet import Given, Sheet, number, plus, total, whole, word
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.water import CombiBoiler, HydronicHeater, OnDemandHeater
from hatchleaf.units import Quantity, number_in, quantity, shown

_OF_TANKS: Final = (
    "hot_water.reheat",
    "hot_water.recovery",
    "hot_water.mixed",
    "hot_water.shower",
)
_RISE: Final = hot_water.SET_POINT - hot_water.COLD
_FROM_TO: Final = f"from {hot_water.COLD:g} °F to {hot_water.SET_POINT:g} °F"


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all hot water facts; a unit without a water heater has none."""
    heater = spec.hot_water
    if heater == "none":
        return
    if heater == "unknown":
        sheet.stop(["hot_water"], *_OF_TANKS, "hot_water.rise", "hot_water.scald")
        return
    if isinstance(heater, OnDemandHeater):
        _on_demand(heater, spec, sheet)
    elif not isinstance(heater, HydronicHeater):
        # A heat exchanger has no volume of its own to warm.
        _tank(number("hot_water.volume", heater.volume), spec, sheet)
    _scalds(heater.kind.replace("_", " "), sheet)


def _tank(volume: Given, spec: UnitSpec, sheet: Sheet) -> None:
    # A combi boiler shares its flame between air and water: nobody can tell how long.
    ways = [] if isinstance(spec.hot_water, CombiBoiler) else warmths(spec)
    for way in ways:
        _warming(volume, [way], sheet)
    if len(ways) > 1:
        _warming(volume, ways, sheet)
    if sheet.lacks([volume], *_OF_TANKS[2:]):
        return
    usable = volume.quantity * hot_water.USABLE_SHARE
    warm = hot_water.mixed_volume(usable, mixed=hot_water.AT_THE_SHOWER)
    share = f"{100 * hot_water.USABLE_SHARE:g} % of {volume.text}"
    mixed = (
        f"{share} at {hot_water.SET_POINT:g} °F, thinned with water at "
        f"{hot_water.COLD:g} °F to {hot_water.AT_THE_SHOWER:g} °F (typical)"
    )
    sheet.add(
        "hot_water.mixed",
        warm,
        "gallon",
        how="down",
        digits=2,
        basis=f"{mixed}.",
        given=[volume],
        source="common-practice",
        typical=True,
    )
    minutes = hot_water.shower_time(warm)
    flow = shown(hot_water.SHOWER_FLOW, "gallon / minute")
    sheet.add(
        "hot_water.shower",
        minutes,
        "minute",
        how="down",
        digits=whole(minutes, "minute"),
        basis=f"{mixed}, at {flow} from the shower head.",
        given=[volume],
        source="common-practice",
        typical=True,
    )


def _warming(volume: Given, ways: list[Warmth], sheet: Sheet) -> None:
    item = " and ".join(way.item for way in ways)
    names = [f"{base}[{item}]" for base in _OF_TANKS[:2]]
    given = [volume, *(way.given for way in ways)]
    if sheet.lacks(given, *names):
        return
    rate = total([way.given.quantity * way.efficiency for way in ways], "Btu / hour")
    by = plus([f"{way.given.text} with {way.words}" for way in ways])
    minutes = hot_water.reheat_time(volume.quantity, _RISE, rate)
    sheet.add(
        names[0],
        minutes,
        "minute",
        how="up",
        digits=whole(minutes, "minute"),
        basis=f"{volume.text} {_FROM_TO} (typical) by {by}.",
        given=given,
        source="common-practice",
        typical=True,
    )
    sheet.add(
        names[1],
        hot_water.recovery(rate, _RISE),
        "gallon / hour",
        how="down",
        digits=2,
        basis=f"Water {_FROM_TO} (typical) by {by}.",
        given=given[1:],
        source="common-practice",
        typical=True,
    )


def _on_demand(heater: OnDemandHeater, spec: UnitSpec, sheet: Sheet) -> None:
    flame = warmths(spec)[0]
    least = number("hot_water.least_flow", heater.least_flow)
    flows = [one for one in hot_water.FLOWS if _enough(one, least)]
    names = [f"hot_water.rise[{shown(one, 'gallon / minute')}]" for one in flows]
    if sheet.lacks([flame.given], *names):
        return
    given = [flame.given, *flame.stated, *([least] if least.known else [])]
    usual = "" if flame.stated else " (typical)"
    for flow, name in zip(flows, names, strict=True):
        sheet.add(
            name,
            hot_water.rise(flame.given.quantity, flow, efficiency=flame.efficiency),
            "delta_degF",
            how="down",
            digits=2,
            basis=(
                f"{flame.given.text} with {flame.words}{usual}, into "
                f"{shown(flow, 'gallon / minute')}."
            ),
            given=given,
            source="water-heat" if flame.stated else "common-practice",
            typical=not flame.stated,
        )


def _enough(flow: Quantity, least: Given) -> bool:
    """Return False for a flow at which the heater does not light."""
    return not least.known or number_in(flow, "gallon / minute") >= number_in(
        least.quantity, "gallon / minute"
    )


def _scalds(kind: str, sheet: Sheet) -> None:
    for fahrenheit, time in hot_water.SCALDS.items():
        long = number_in(time, "second") >= number_in(quantity(1, "minute"), "second")
        unit = "minute" if long else "second"
        sheet.add(
            f"hot_water.scald[{fahrenheit:g} °F]",
            time,
            unit,
            how="down",
            digits=whole(time, unit),
            basis=(
                f"Water at {fahrenheit:g} °F on an adult's skin, until it burns "
                "deeply; a child's burns sooner."
            ),
            given=[word("hot_water.kind", kind)],
            source="cpsc-scalds",
        )
