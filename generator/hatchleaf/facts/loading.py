"""Loading facts: usual hitch weight, moved cargo, what axles and tires have left."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from hatchleaf.engineering import propane, tires, water, weights
from hatchleaf.facts import packing
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    fitted,
    items,
    number,
    plus,
    stated,
    total,
    whole,
    word,
)
from hatchleaf.facts.water import tanks
from hatchleaf.spec.model.gas import Cylinders, FixedTank
from hatchleaf.spec.model.gear import Axle, Tires
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import shown

USUAL_SHARE: Final = {
    ("ball", "us"): weights.USUAL_SHARE["ball"],
    ("ball", "ca"): weights.USUAL_SHARE["ball"],
    ("ball", "uk"): weights.USUAL_SHARE["caravan"],
    ("stabilizer_head", "uk"): weights.USUAL_SHARE["caravan"],
    ("fifth_wheel", "us"): weights.PIN_SHARE,
    ("fifth_wheel", "ca"): weights.PIN_SHARE,
    ("gooseneck", "us"): weights.PIN_SHARE,
    ("gooseneck", "ca"): weights.PIN_SHARE,
}
"""Percent of the loaded unit on the hitch, by coupling and market; usual practice."""


def usual_share(spec: UnitSpec) -> tuple[int, int] | None:
    """Return the usual least and most share on the hitch in percent, or None."""
    hitch = fitted(spec.gear.hitch)
    return USUAL_SHARE.get((hitch.kind, spec.body.market)) if hitch else None


@dataclass(frozen=True)
class TiresOfAxle:
    """The tires of one axle: how many, in a word, and the rating of one of them."""

    count: int
    word: str
    load: Given


def tires_of(axle: Axle, tires: Tires) -> TiresOfAxle | None:
    """Return what tires an axle stands on, or None where nobody looked."""
    if axle.tires == "unknown":
        return None
    if axle.tires == "dual":
        dual = Reading(None) if tires.dual_load == "none" else tires.dual_load
        return TiresOfAxle(4, "Four", number("gear.tires.dual_load", dual))
    return TiresOfAxle(2, "Two", number("gear.tires.load", tires.load))


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all loading facts."""
    _water_share(spec, sheet)
    _gas(spec, sheet)
    _allowance(spec, sheet)
    _scale(spec, sheet)
    _usual_hitch(spec, sheet)
    packing.work_out(spec, sheet)
    _axles(spec, sheet)
    _axle_room(spec, sheet)


def _water_share(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the share of water, where the label counts it as cargo."""
    if spec.weights.regime != "cargo_label_2008":
        return
    fresh = tanks(spec)
    cargo = number("weights.cargo_label", spec.weights.cargo_label)
    if not fresh or sheet.lacks([*fresh, cargo], "weights.water_share"):
        return
    volume = total([one.quantity for one in fresh], "gallon")
    full = water.weight(volume)
    weight = shown(full, "pound", how="up")
    sheet.add(
        "weights.water_share",
        weights.share(full, cargo.quantity),
        "percent",
        how="up",
        digits=2,
        basis=(
            f"{weight} of water, of the {cargo.text} of cargo that the label allows."
        ),
        given=[*fresh, cargo],
        source="fr-72-68442",
    )


def _gas(spec: UnitSpec, sheet: Sheet) -> None:
    """
    Write down what full gas weighs, where the label has counted it.

    No share of the cargo: the rule's cargo is what is left with full gas on board, so
    that a share would ask to be taken off a second time.
    """
    if spec.weights.regime != "cargo_label_2008":
        return
    supply = spec.lp.supply
    if supply == "unknown":
        sheet.stop(["lp.supply"], "weights.lp")
    if isinstance(supply, Cylinders):
        given = [
            number(f"lp.supply.cylinders[{one.id}].holds", one.holds)
            for one in supply.cylinders
        ]
    elif isinstance(supply, FixedTank):
        given = [number("lp.supply.volume", supply.volume)]
    else:
        return
    if sheet.lacks(given, "weights.lp"):
        return
    if isinstance(supply, FixedTank):
        gas = propane.fixed_tank_fill(given[0].quantity)
        digits, said = 2, f"80 % of the tank's {given[0].text}, at 4.2 lb per gal"
    else:
        gas = total([one.quantity for one in given], "pound")
        digits, said = stated(gas, "pound"), plus([one.text for one in given])
    sheet.add(
        "weights.lp",
        gas,
        "pound",
        how="up",
        digits=digits,
        basis=f"Full gas, {said}: the cargo label has counted it already.",
        given=[*given, word("weights.regime", spec.weights.regime.replace("_", " "))],
        source="fr-72-68442",
    )


def _allowance(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what may be added: the rule is that of the label of 2008."""
    if spec.weights.regime != "cargo_label_2008" or spec.condition != "new":
        return
    gvwr = number("weights.gvwr", spec.weights.gvwr)
    if sheet.lacks([gvwr], "weights.added_limit"):
        return
    sheet.add(
        "weights.added_limit",
        weights.dealer_allowance(gvwr.quantity),
        "pound",
        how="down",
        basis=f"The lesser of 1.5 % of the GVWR of {gvwr.text} and 100 lb.",
        given=[gvwr],
        source="fr-72-68442",
    )


def _usual_hitch(spec: UnitSpec, sheet: Sheet) -> None:
    usual = usual_share(spec)
    if usual is None:
        return
    gvwr = number("weights.gvwr", spec.weights.gvwr)
    if sheet.lacks([gvwr], "weights.hitch_usual"):
        return
    # Inwards both times: the least goes up, the most goes down.
    for percent, how, said in (
        (usual[0], "up", "at least"),
        (usual[1], "down", "at most"),
    ):
        sheet.add(
            f"weights.hitch_usual[{said}]",
            gvwr.quantity * (percent / 100),
            "pound",
            how="up" if how == "up" else "down",
            basis=(
                f"{percent} % of {gvwr.text}: typical for this kind of coupling when "
                "the unit is loaded to its rating; the hitch's own limit goes first."
            ),
            given=[
                gvwr,
                word("gear.hitch.kind", _kind(spec)),
                word("body.market", spec.body.market),
            ],
            source="common-practice",
            typical=True,
        )


def _kind(spec: UnitSpec) -> str:
    hitch = fitted(spec.gear.hitch)
    return hitch.kind.replace("_", " ") if hitch else "none"


def _axles(spec: UnitSpec, sheet: Sheet) -> None:
    if spec.gear.axles == "unknown":
        sheet.stop(["gear.axles"], "weights.axles", "weights.tire_reserve")
    axles = items(spec.gear.axles)
    given = [number(f"gear.axles[{one.id}].gawr", one.gawr) for one in axles]
    if given and not sheet.lacks(given, "weights.axles"):
        carried = total([one.quantity for one in given], "pound")
        sheet.add(
            "weights.axles",
            carried,
            "pound",
            how="down",
            digits=max(3, whole(carried, "pound")),
            basis=f"{plus([one.text for one in given])}, by the rating of each axle.",
            given=given,
            source="own-labels",
        )
    wheels = fitted(spec.gear.tires)
    if wheels is None:
        return
    for axle, gawr in zip(axles, given, strict=True):
        _tires(axle, gawr, wheels, sheet)


def _tires(axle: Axle, gawr: Given, fitted_tires: Tires, sheet: Sheet) -> None:
    name = f"weights.tire_reserve[{axle.id}]"
    wheels = tires_of(axle, fitted_tires)
    if wheels is None:
        sheet.stop([f"gear.axles[{axle.id}].tires"], name)
        return
    if sheet.lacks([gawr, wheels.load], name):
        return
    carried = tires.carried(wheels.load.quantity, wheels.count)
    sheet.add(
        name,
        weights.reserve(carried, gawr.quantity),
        "percent",
        how="down",
        digits=2,
        basis=(
            f"{wheels.word} tires of {wheels.load.text} each over the axle's rating of "
            f"{gawr.text}, at the pressure on the placard."
        ),
        given=[wheels.load, gawr],
        source="own-labels",
        label=f"{axle.id.replace('-', ' ')} axle",
    )


def _scale(spec: UnitSpec, sheet: Sheet) -> None:
    gvwr = number("weights.gvwr", spec.weights.gvwr)
    weighed = number("weights.scale_total", spec.weights.scale_total)
    if sheet.lacks([gvwr, weighed], "weights.scale_left"):
        return
    sheet.add(
        "weights.scale_left",
        gvwr.quantity - weighed.quantity,
        "pound",
        how="down",
        basis=(
            f"GVWR {gvwr.text} less {weighed.text} on a scale, with what was in the "
            "unit on that day."
        ),
        given=[gvwr, weighed],
        source="own-labels",
    )


def _axle_room(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what the axles have left, where a scale has said all of it."""
    axles = [
        number(f"gear.axles[{one.id}].gawr", one.gawr) for one in items(spec.gear.axles)
    ]
    hitch = number("weights.hitch", spec.weights.hitch)
    weighed = number("weights.scale_total", spec.weights.scale_total)
    if spec.gear.axles == "unknown":
        sheet.stop(["gear.axles"], "weights.axle_room")
    if not axles or sheet.lacks([*axles, hitch, weighed], "weights.axle_room"):
        return
    # A maker's figure of an empty unit would show room that is not there.
    if {spec.weights.hitch.origin, spec.weights.scale_total.origin} != {"scale"}:
        return
    carried = total([one.quantity for one in axles], "pound")
    left = carried - weights.on_axles(weighed.quantity, hitch.quantity)
    sheet.add(
        "weights.axle_room",
        left,
        "pound",
        how="down",
        digits=max(3, whole(left, "pound")),
        basis=(
            f"{plus([one.text for one in axles])} by the rating of each axle, less the "
            f"{weighed.text} of the whole without the {hitch.text} on the hitch, both "
            "from a scale."
        ),
        given=[*axles, weighed, hitch],
        source="own-labels",
    )
