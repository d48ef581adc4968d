"""Parts that owners change, and the facts that no longer hold once they have."""

from __future__ import annotations

from typing import Final

from hatchleaf.facts.model import Fact

_PARTS: Final = {
    "dc.batteries": "battery",
    "gear.tires": "tires",
    "lp.supply.cylinders": "cylinders",
    "kitchen.fridge": "fridge",
    "dc.converter": "charger",
    "dc.solar": "solar panels",
}
"""Path of a part -> what owners call it."""


def changed_parts(fact: Fact) -> tuple[str, ...]:
    """Return the parts, in an owner's words, that *fact* stands and falls with."""
    fields = [one.field for one in fact.inputs]
    return tuple(
        words
        for path, words in _PARTS.items()
        if any(field == path or field.startswith(f"{path}.") for field in fields)
    )
