"""A number ends with the battery, tire, cylinder or fridge that it was worked out for."""

from __future__ import annotations

import pytest

from facts.samples import NAMES, facts
from hatchleaf.facts.changed_parts import changed_parts


@pytest.mark.parametrize(
    ("sample", "name", "parts"),
    [
        ("heron-a", "battery.usable", ("battery",)),
        ("heron-a", "tires.pressure", ("tires",)),
        ("heron-a", "weights.tire_reserve[front]", ("tires",)),
        ("heron-a", "lp.hours[fridge]", ("cylinders", "fridge")),
        ("heron-a", "lp.stored", ("cylinders",)),
        ("heron-b", "battery.hours[fridge]", ("battery", "fridge")),
        ("heron-a", "water.capacity", ()),
        ("heron-a", "weights.gvwr", ()),
        ("heron-a", "awnings.rain[patio]", ()),
    ],
)
def test_parts_that_a_number_falls_with(
    sample: str, name: str, parts: tuple[str, ...]
) -> None:
    """By its inputs alone, so that no list has to be kept."""
    assert changed_parts(facts(sample)[name]) == parts


@pytest.mark.parametrize("name", NAMES)
def test_no_battery_number_outlives_the_battery(name: str) -> None:
    """Every figure of the battery's own system names it."""
    for fact in facts(name).values():
        if any(one.field.startswith("dc.batteries") for one in fact.inputs):
            assert "battery" in changed_parts(fact), fact.name
