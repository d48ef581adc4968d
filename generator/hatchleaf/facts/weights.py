"""Weight facts, the US way: they start from the unit's own label."""

from __future__ import annotations

from hatchleaf.engineering import water, weights
from hatchleaf.facts.sheet import (
    Given,
    Sheet,
    items,
    number,
    plus,
    stated,
    total,
    whole,
    word,
)
from hatchleaf.facts.water import tanks
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, shown

_LABEL_RULE = "fr-72-68442"
_OWN = "own-labels"


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all weight facts."""
    gvwr = number("weights.gvwr", spec.weights.gvwr)
    _as_read("weights.gvwr", gvwr, "The rating (GVWR) on the label.", sheet)
    cargo = number("weights.cargo_label", spec.weights.cargo_label)
    regime = word("weights.regime", spec.weights.regime.replace("_", " "))
    us_label = spec.weights.regime == "cargo_label_2008"
    says = (
        f"The label says that cargo may never exceed {_text(cargo)}."
        if us_label
        else f"The label says {_text(cargo)}; read there what it already counts."
    )
    _as_read("weights.cargo", cargo, says, sheet, regime)
    if us_label and not sheet.lacks([gvwr, cargo], "weights.empty"):
        sheet.add(
            "weights.empty",
            weights.empty(gvwr.quantity, cargo.quantity),
            "pound",
            how="up",
            digits=_pounds(gvwr.quantity, gvwr, cargo),
            basis=f"GVWR {gvwr.text} less the label's cargo of {cargo.text}.",
            given=[gvwr, cargo, regime],
            source=_LABEL_RULE,
        )
    _loaded(spec, cargo if us_label else None, regime, sheet)
    _hitch(spec, sheet)


def _text(given: Given) -> str:
    return given.text if given.known else "nothing"


def _as_read(name: str, given: Given, basis: str, sheet: Sheet, *also: Given) -> None:
    if sheet.lacks([given], name):
        return
    sheet.add(
        name,
        given.quantity,
        "pound",
        how="down",
        digits=stated(given.quantity, "pound"),
        basis=basis,
        given=[given, *also],
        source=_OWN,
    )


def _pounds(size: Quantity, *given: Given) -> int:
    """Return the figures of whole pounds, if all was read in whole pounds."""
    exact = all(stated(one.quantity, "pound") > 3 for one in given)  # noqa: PLR2004  # see stated
    return whole(size, "pound") if exact else 3


def _loaded(spec: UnitSpec, cargo: Given | None, regime: Given, sheet: Sheet) -> None:
    """Write down what water and additions weigh, and what is left for cargo."""
    fresh = tanks(spec)
    additions = (
        [Given("added")]
        if spec.added == "unknown"
        else [
            number(f"added[{one.id}].weight", one.weight) for one in items(spec.added)
        ]
    )
    taken: list[Quantity] = []
    words: list[str] = []
    if fresh and not sheet.lacks(fresh, "weights.water"):
        volume = total([one.quantity for one in fresh], "gallon")
        counts = "; water counts as cargo" if cargo else ""
        taken.append(water.weight(volume))
        texts = plus([one.text for one in fresh])
        words.append(f"{shown(taken[0], 'pound', how='up')} of water")
        sheet.add(
            "weights.water",
            taken[0],
            "pound",
            how="up",
            digits=min(3, whole(taken[0], "pound")),
            basis=f"{texts} at 8.34 lb per gal{counts}.",
            given=fresh,
            source="water-density",
        )
    if additions and not sheet.lacks(additions, "weights.added"):
        added = total([one.quantity for one in additions], "pound")
        taken.append(added)
        words.append(f"{shown(added, 'pound', how='up')} that was added")
        what = plus([one.what for one in items(spec.added)])
        sheet.add(
            "weights.added",
            added,
            "pound",
            how="up",
            digits=_pounds(added, *additions),
            basis=f"Added since the label was made: {what}.",
            given=additions,
            source=_OWN,
        )
    # Older labels have taken off water already, each in its own way.
    if cargo is None or sheet.lacks([cargo, *fresh, *additions], "weights.cargo_left"):
        return
    less = f" less {' and '.join(words)}" if words else ""
    sheet.add(
        "weights.cargo_left",
        weights.cargo_left(cargo.quantity, taken),
        "pound",
        how="down",
        basis=f"{cargo.text} of cargo{less}; full gas is not taken off again.",
        given=[cargo, regime, *fresh, *additions],
        source=_LABEL_RULE,
    )


def _hitch(spec: UnitSpec, sheet: Sheet) -> None:
    hitch = number("weights.hitch", spec.weights.hitch)
    if sheet.lacks([hitch], "weights.hitch", "weights.hitch_share"):
        return
    weighed = spec.weights.hitch.origin == "scale"
    sheet.add(
        "weights.hitch",
        hitch.quantity,
        "pound",
        how="up",
        digits=stated(hitch.quantity, "pound"),
        basis=(
            f"{hitch.text} on a scale, this unit as it was weighed."
            if weighed
            else f"{hitch.text}, the maker's figure for an empty unit; not weighed."
        ),
        given=[hitch],
        source=_OWN,
        brochure=not weighed,
    )
    if not weighed:
        return
    whole_unit = number("weights.scale_total", spec.weights.scale_total)
    if sheet.lacks([whole_unit], "weights.hitch_share"):
        return
    sheet.add(
        "weights.hitch_share",
        weights.share(hitch.quantity, whole_unit.quantity),
        "percent",
        basis=f"{hitch.text} of {whole_unit.text}, both from a scale.",
        given=[hitch, whole_unit],
        source=_OWN,
    )
