"""Rules on weights, labels, tires and the coupling."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem, listed
from hatchleaf.spec.checked import Checked, number
from hatchleaf.spec.model.gear import Brakes, Gear, Hitch, Tires
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import Body, Weights
from hatchleaf.units import number_in

# 49 CFR 571.120 S10 and 571.110 S10 ask for the cargo label of trailers and
# motorhomes of 10,000 lb or less; before it the labels were the makers' own.
_REGIMES: Final = {
    "us": ("cargo_label_2008", "older_label"),
    "ca": ("canada", "older_label"),
    "uk": ("metric_plate",),
    "eu": ("metric_plate",),
    "au": ("metric_plate",),
}
# Where each number may have been read; a brochure is of the model, not of this unit.
_READ_FROM: Final = {
    "gvwr": ("label", "plate"),
    "cargo_label": ("label",),
    "hitch": ("scale", "plate", "brochure"),
    "scale_total": ("scale",),
}
# A four-way plug has the lights' wires alone; electric brakes need a wire more.
# Common practice, no source.
_WITHOUT_BRAKE_WIRE: Final = "four_way"


def weights_fit(unit: Checked) -> Iterator[Problem]:
    """Yield weights that cannot be parts of the unit's rating."""
    weights = unit.section("weights", Weights)
    rating = number(weights.gvwr) if weights else None
    if weights is None or rating is None:
        return
    limit = number_in(rating, "pound")
    for name in ("cargo_label", "hitch"):
        weight = number(getattr(weights, name))
        if weight is not None and number_in(weight, "pound") >= limit:
            what = "the weight is not below the rating (weights.gvwr)"
            yield unit.problem(f"weights.{name}", what)
    total, hitch = number(weights.scale_total), number(weights.hitch)
    if total is None or hitch is None:
        return
    if number_in(hitch, "pound") >= number_in(total, "pound"):
        what = "the hitch weight is not below the whole (weights.scale_total)"
        yield unit.problem("weights.hitch", what)


def weights_are_read(unit: Checked) -> Iterator[Problem]:
    """Yield weights read where such a number does not stand."""
    weights = unit.section("weights", Weights)
    if weights is None:
        return
    for name, allowed in _READ_FROM.items():
        reading: Reading = getattr(weights, name)
        if not reading.known:
            continue
        path = f"weights.{name}"
        if reading.origin is None and name == "hitch":
            what = "the file does not say where the number was read"
            hint = "write {value: 690 lb, from: scale}"
            yield unit.problem(path, what, listed(allowed), hint)
        if reading.origin not in (None, *allowed):
            what = f"the number cannot be from '{reading.origin}'"
            yield unit.problem(f"{path}.from", what, listed(allowed))


def label_fits_the_market(unit: Checked) -> Iterator[Problem]:
    """Yield a label that units of the market do not carry, or its missing number."""
    weights, body = unit.section("weights", Weights), unit.section("body", Body)
    if weights is None:
        return
    if body and weights.regime not in _REGIMES[body.market]:
        what = f"a unit for the market '{body.market}' has no such label"
        yield unit.problem("weights.regime", what, listed(_REGIMES[body.market]))
    if weights.regime == "older_label" and weights.cargo_label.known:
        what = "an older label counts its number another way"
        hint = "write unknown, and put the unit on a scale"
        yield unit.problem("weights.cargo_label", what, "unknown", hint)


def tires_are_of_the_placard(unit: Checked) -> Iterator[Problem]:
    """Yield tire numbers from a brochure: the placard on the unit is the limit."""
    gear = unit.section("gear", Gear)
    if gear is None or not isinstance(gear.tires, Tires):
        return
    for name in ("pressure", "load"):
        reading: Reading = getattr(gear.tires, name)
        if reading.origin == "brochure":
            what = "the number of a tire cannot be from a brochure"
            allowed = "label, paper, plate"
            yield unit.problem(f"gear.tires.{name}.from", what, allowed)


def coupling_fits(unit: Checked) -> Iterator[Problem]:
    """Yield a ball without a ball coupling, and brakes that the plug cannot feed."""
    gear = unit.section("gear", Gear)
    if gear is None or not isinstance(gear.hitch, Hitch):
        return
    hitch = gear.hitch
    told = "unknown" not in (hitch.kind, hitch.ball)
    on_ball = hitch.kind in ("ball", "stabilizer_head", "gooseneck")
    if told and on_ball == (hitch.ball == "none"):
        what = f"a hitch of the kind '{hitch.kind}' does not have ball: {hitch.ball}"
        yield unit.problem("gear.hitch.ball", what)
    electric = isinstance(gear.brakes, Brakes) and gear.brakes.kind == "electric"
    if electric and hitch.plug == _WITHOUT_BRAKE_WIRE:
        what = "a four-way plug has no wire for electric brakes"
        yield unit.problem("gear.hitch.plug", what, "seven_way, thirteen_pin")


RULES: Final = (
    weights_fit,
    weights_are_read,
    label_fits_the_market,
    tires_are_of_the_placard,
    coupling_fits,
)
