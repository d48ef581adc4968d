"""Why a block is in or out, and how a number came about, as data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from hatchleaf.blocks.choose import Selection
from hatchleaf.blocks.conditions import Outcome
from hatchleaf.facts.model import Fact, Facts
from hatchleaf.units import number_in


def blocks_explained(selection: Selection, topic: str = "") -> dict[str, Any]:
    """Return the blocks in and out with their reasons, of one topic or of all."""
    inside = [
        {
            "block": one.block.id,
            "topic": one.block.topic,
            "item": one.item_id,
            "always": one.block.always,
            "reasons": _reasons(one.outcomes),
        }
        for one in selection.chosen
        if topic in ("", one.block.topic, *one.block.also)
    ]
    outside = [
        {
            "block": out.block.id,
            "topic": out.block.topic,
            "reasons": _reasons(o for o in out.outcomes if not o.holds),
        }
        for out in selection.left_out
        if topic in ("", out.block.topic, *out.block.also)
    ]
    return {"in": inside, "out": sorted(outside, key=lambda row: str(row["block"]))}


def _reasons(outcomes: Iterable[Outcome]) -> list[dict[str, Any]]:
    return [{"line": str(o.line), "holds": o.holds, "found": o.found} for o in outcomes]


def fact_explained(
    fact: Fact, sources: Mapping[str, Mapping[str, str]]
) -> dict[str, Any]:
    """Return one fact as data: name, magnitude, unit, basis, inputs, source."""
    value = fact.value
    return {
        "name": fact.name,
        "shown": fact.shown(),
        "magnitude": (
            value if isinstance(value, (str, bool)) else number_in(value, fact.unit)
        ),
        "unit": fact.unit,
        "basis": fact.basis,
        "inputs": [{"path": i.path, "text": i.text} for i in fact.inputs],
        "source": fact.source,
        "source_title": sources.get(fact.source, {}).get("title", ""),
        "typical": fact.typical,
        "brochure": fact.brochure,
        "rounding": fact.rounding,
    }


def facts_explained(
    facts: Facts, sources: Mapping[str, Mapping[str, str]]
) -> list[dict[str, Any]]:
    """Return all facts as data, in the order of the systems."""
    return [fact_explained(fact, sources) for fact in facts.values()]
