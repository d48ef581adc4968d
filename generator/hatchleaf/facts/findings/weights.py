"""Findings on weights: ratings, label, cargo, what rests on the hitch."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import tires, weights
from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.loading import tires_of, usual_share
from hatchleaf.facts.sheet import fitted, items, total
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, number_in, quantity, shown

OVER_GVWR = Rule(
    "over-gvwr",
    "hold",
    "Above its rating a unit breaks axles, bursts tires and outruns its brakes.",
    "own-labels",
)
OVER_AXLES = Rule(
    "over-axles",
    "hold",
    "An axle above its rating bends or loses a wheel.",
    "own-labels",
)
OVER_TIRES = Rule(
    "over-tires", "hold", "A tire above its load bursts on the road.", "own-labels"
)
RATING_UNKNOWN = Rule(
    "rating-unknown",
    "stop",
    "Without the rating nobody can tell how much may be loaded.",
    "own-labels",
)
CARGO_UNKNOWN = Rule(
    "cargo-unknown",
    "stop",
    "A new unit carries a label with its cargo; owners load by it.",
    "fr-72-68442",
)
CARGO_BELOW_WATER = Rule(
    "cargo-below-water",
    "stop",
    "Water counts as cargo: with a full tank the unit is above its rating.",
    "fr-72-68442",
)
ADDED_LABEL = Rule(
    "added-label",
    "stop",
    "Above the lesser of 1.5 % of the GVWR and 100 lb, the cargo label must be "
    "corrected before the first sale.",
    "fr-72-68442",
)
ADDED_UNKNOWN = Rule(
    "added-unknown",
    "stop",
    "What was added comes off the cargo, and may ask for a corrected label.",
    "fr-72-68442",
)
AXLES_BELOW_RATING = Rule(
    "axles-below-rating",
    "stop",
    "Axles and hitch together have to carry the unit at its rating.",
    "common-practice",
)
HITCH_LIGHT = Rule(
    "hitch-light",
    "stop",
    "A unit with too little weight on the hitch sways, and can turn over.",
    "common-practice",
)
HITCH_HEAVY = Rule(
    "hitch-heavy",
    "warn",
    "Too much on the hitch takes load off the front wheels of the tow vehicle.",
    "common-practice",
)
HITCH_NOT_WEIGHED = Rule(
    "hitch-not-weighed",
    "warn",
    "A brochure's figure is of an empty unit without options: nobody knows this one's.",
    "common-practice",
)
NOT_WEIGHED = Rule(
    "not-weighed",
    "note",
    "Without the whole on a scale, the share on the hitch is a guess.",
    "common-practice",
)
RULES: Final = (
    OVER_GVWR,
    OVER_AXLES,
    OVER_TIRES,
    RATING_UNKNOWN,
    CARGO_UNKNOWN,
    CARGO_BELOW_WATER,
    ADDED_LABEL,
    ADDED_UNKNOWN,
    AXLES_BELOW_RATING,
    HITCH_LIGHT,
    HITCH_HEAVY,
    HITCH_NOT_WEIGHED,
    NOT_WEIGHED,
)
_MOST_SHARE_OFF_AXLES: Final = 0.15
"""Share of the rating that a hitch may take at most, where it was not weighed."""


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on the weights."""
    yield from _ratings(case)
    yield from _cargo(case)
    yield from _added(case)
    yield from _hitch(case)


def _lb(mass: Quantity) -> str:
    return shown(mass, "pound", digits=4, how="up")


def _weighed_hitch(spec: UnitSpec) -> Quantity | None:
    if spec.gear.hitch == "none":
        return quantity(0, "pound")  # a motorhome stands on its axles alone
    hitch = spec.weights.hitch
    return hitch.quantity if hitch.origin == "scale" else None


def axle_rating(spec: UnitSpec) -> Quantity | None:
    """Return what all axles may carry, or None where one is not known."""
    axles = items(spec.gear.axles)
    ratings = [one.gawr.quantity for one in axles if one.gawr.quantity is not None]
    if not axles or len(ratings) < len(axles):
        return None
    return total(ratings, "pound")


def _ratings(case: Case) -> Iterator[Finding]:
    spec = case.spec
    gvwr, weighed = spec.weights.gvwr.quantity, spec.weights.scale_total.quantity
    where = "weights.scale_total"
    if gvwr is None:
        yield RATING_UNKNOWN.found("the rating (GVWR) is not known", "weights.gvwr")
    elif weighed is not None and weighed > gvwr:
        what = f"the unit weighs {_lb(weighed)}, above its GVWR of {_lb(gvwr)}"
        yield OVER_GVWR.found(what, where)
    axles = axle_rating(spec)
    hitch = _weighed_hitch(spec)
    if gvwr is not None and axles is not None and spec.gear.hitch != "unknown":
        most = hitch if hitch is not None else gvwr * _MOST_SHARE_OFF_AXLES
        if weights.on_axles(gvwr, most) > axles:
            what = (
                f"the axles carry {_lb(axles)}; at the GVWR of {_lb(gvwr)} with "
                f"{_lb(most)} on the hitch they would carry more"
            )
            yield AXLES_BELOW_RATING.found(what, "gear.axles")
    if weighed is None or hitch is None:
        return
    load = weights.on_axles(weighed, hitch)
    if axles is not None and load > axles:
        what = f"the axles carry {_lb(load)}, above their rating of {_lb(axles)}"
        yield OVER_AXLES.found(what, where)
    wheels = fitted(spec.gear.tires)
    every = (
        [tires_of(axle, wheels) for axle in items(spec.gear.axles)] if wheels else []
    )
    known = [one for one in every if one is not None and one.load.known]
    if not every or len(known) < len(every):
        return
    carried = total(
        [tires.carried(one.load.quantity, one.count) for one in known], "pound"
    )
    if load > carried:
        count = sum(one.count for one in known)
        what = f"{count} tires carry {_lb(load)}, above their {_lb(carried)}"
        yield OVER_TIRES.found(what, where)


def _cargo(case: Case) -> Iterator[Finding]:
    weights_ = case.spec.weights
    if weights_.regime != "cargo_label_2008":
        return
    if not weights_.cargo_label.known and case.new:
        what = "the cargo of the label is not known"
        yield CARGO_UNKNOWN.found(what, "weights.cargo_label")
    for left in case.facts.of("weights.cargo_left"):
        pounds = 0.0
        if not isinstance(left.value, str | bool):
            pounds = number_in(left.value, "pound")
        if pounds >= 0:
            continue
        short = shown(quantity(-pounds, "pound"), "pound", how="up")
        what = f"with full fresh water and all additions, {short} of cargo are lacking"
        yield CARGO_BELOW_WATER.found(what, "weights.cargo_label")


def _added(case: Case) -> Iterator[Finding]:
    spec = case.spec
    # The rule is for what is added before the first sale.
    if not case.new or spec.weights.regime != "cargo_label_2008":
        return
    unknown = [one for one in items(spec.added) if not one.weight.known]
    for one in unknown:
        what = f"nobody weighed what was added: {one.what}"
        yield ADDED_UNKNOWN.found(what, f"added[{one.id}].weight", one.id)
    gvwr = spec.weights.gvwr.quantity
    known = [one.weight.quantity for one in items(spec.added)]
    if gvwr is None or not known:
        return
    added = total([one for one in known if one is not None], "pound")
    most = weights.dealer_allowance(gvwr)
    if added > most:
        allowed = shown(most, "pound", how="down")
        what = f"{_lb(added)} were added, above the {allowed} allowed without a label"
        yield ADDED_LABEL.found(what, "added")


def _hitch(case: Case) -> Iterator[Finding]:
    spec = case.spec
    if fitted(spec.gear.hitch) is None:
        return
    hitch, whole = _weighed_hitch(spec), spec.weights.scale_total.quantity
    if hitch is None:
        what = "the weight on the hitch was not put on a scale"
        yield HITCH_NOT_WEIGHED.found(what, "weights.hitch")
    if whole is None:
        what = "the whole unit was not put on a scale"
        yield NOT_WEIGHED.found(what, "weights.scale_total")
    usual = usual_share(spec)
    if hitch is None or whole is None or usual is None:
        return
    share = number_in(weights.share(hitch, whole), "percent")
    said = shown(quantity(share, "percent"), "percent")
    least, most = usual
    if share < least:
        what = f"{said} of the weight is on the hitch, less than the usual {least} %"
        yield HITCH_LIGHT.found(what, "weights.hitch")
    if share > most:
        what = f"{said} of the weight is on the hitch, more than the usual {most} %"
        yield HITCH_HEAVY.found(what, "weights.hitch")
