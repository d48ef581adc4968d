"""A unit with what the samples lack: inverter, generator, two legs, several panels."""

from __future__ import annotations

from functools import cache

from facts.samples import changed, reading, unit
from hatchleaf import units
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.model.ac import Generator, Inverter
from hatchleaf.spec.model.unit import UnitSpec


def everything() -> UnitSpec:
    """Return the first sample with an inverter, a generator and 50 A of shore power."""
    return changed(
        unit("heron-a"),
        {
            "ac.inverter": Inverter(
                kind="stand_alone",
                at="battery-box",
                switch_at="battery-box",
                feeds="all outlets",
                watts=reading("2000 W", units.POWER),
            ),
            "ac.generator": Generator(
                kind="lp",
                at="lp-locker",
                switch_at="lp-locker",
                oil_hours=reading("100 h", units.DURATION),
                watts=reading("2800 W", units.POWER),
            ),
            "ac.shore.plug": "14_50",
            "ac.shore.service": reading("50 A", units.CURRENT),
            "ac.shore.legs": 2,
        },
    )


@cache
def facts_of_everything() -> Facts:
    """Return all its facts."""
    return work_out(everything())
