"""Where nothing is plugged in, no list asks for what only a hook-up feeds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from facts.samples import changed, loaded, unit
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made, make


def _steps(made: Made, journey: str) -> list[str]:
    return [step.markdown for step in made.manual.steps[journey]]


def _made(name: str, library: Library, changes: dict[str, object]) -> Made:
    one = replace(loaded(name), spec=changed(unit(name), changes))
    return make(one, library, dealer_name="Two Herons", dealer_phone="555-0142")


@pytest.mark.parametrize(("name", "count"), [("a", 0), ("d", 1), ("e", 1)])
def test_the_air_conditioner_waits_for_a_generator(
    name: str, count: int, guides: Mapping[str, Made]
) -> None:
    """A battery does not drive it: without a generator nobody is sent to it."""
    guide = guides[f"heron-{name}"]
    cooling = [s for s in _steps(guide, "arrive_without") if "air conditioner" in s]

    assert [s for s in _steps(guide, "arrive") if "turn the air conditioner on" in s]
    assert len(cooling) == count
    assert all("only while the generator runs" in one for one in cooling)


def test_a_fridge_as_in_a_house_needs_its_inverter(library: Library) -> None:
    """With one it stays on for the food; with none the food goes elsewhere."""
    fed = _made("heron-d", library, {})
    alone = _made("heron-d", library, {"ac.inverter": "none"})

    for made, says in ((fed, "leave it on while food"), (alone, "in a cold box")):
        steps = _steps(made, "arrive_without")
        assert [one for one in steps if says in one]
        assert not [one for one in steps if "that the fridge is on and cold" in one]


def test_an_element_alone_asks_for_the_plug(library: Library) -> None:
    """A tank heater without gas heats on shore power, and says so in each list."""
    made = _made("heron-a", library, {"hot_water.lp_input": "none"})

    for journey in ("arrive", "arrive_without"):
        heating = [s for s in _steps(made, journey) if "switch the water heater" in s]
        assert heating == ["If the unit is plugged in, switch the water heater on."]
