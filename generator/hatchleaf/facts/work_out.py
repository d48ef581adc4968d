"""All facts of one unit, system by system."""

from __future__ import annotations

from hatchleaf.facts import (
    awnings,
    battery,
    body,
    dates,
    endurance,
    food,
    furnace,
    generator,
    hot_water,
    leveling,
    loading,
    lp,
    shore,
    solar,
    tires,
    waste,
    water,
    weights,
    wires,
)
from hatchleaf.facts.model import Facts
from hatchleaf.facts.sheet import Sheet
from hatchleaf.spec.model.unit import UnitSpec


def work_out(spec: UnitSpec) -> Facts:
    """
    Return every fact that can be told of *spec*, for fitted parts alone.

    A fact whose inputs are not known is left out, and `Facts.missing` names the
    fields that stopped it.  Values are exact; rounding happens when they are printed.
    """
    sheet = Sheet(spec.body.market)
    for system in (
        lp,
        furnace,
        hot_water,
        water,
        waste,
        food,
        battery,
        solar,
        shore,
        wires,
        generator,
        body,
        weights,
        loading,
        tires,
        leveling,
        awnings,
        dates,
        # Last: it gathers what the others found.
        endurance,
    ):
        system.work_out(spec, sheet)
    return sheet.finished()
