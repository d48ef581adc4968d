"""Findings on LP gas: the regulator, the cylinders, the leak test."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import cylinders, dates
from hatchleaf.facts.findings.model import Case, Finding, Rule
from hatchleaf.facts.sheet import fitted, items
from hatchleaf.spec.model.gas import Cylinders, Regulator
from hatchleaf.units import number_in, shown

GAS_BEYOND_REGULATOR = Rule(
    "gas-beyond-regulator",
    "stop",
    "Starved burners burn badly and make carbon monoxide.",
    "common-practice",
)
REGULATOR_UNKNOWN = Rule(
    "regulator-unknown",
    "warn",
    "Nobody can tell whether it passes enough gas for all burners.",
    "common-practice",
)
GAS_PRESSURE_OFF = Rule(
    "gas-pressure-off",
    "stop",
    "Appliances are made for one pressure: 11 in. w.c. in America, 30 mbar in Europe.",
    "common-practice",
)
CYLINDER_DUE = Rule(
    "cylinder-due",
    "stop",
    "No one may refill a cylinder that is due for requalification.",
    "cfr-49-180",
)
CYLINDER_NEAR = Rule(
    "cylinder-near",
    "warn",
    "The first refills will be refused soon: change it before the hand-over.",
    "cfr-49-180",
)
CYLINDER_DATE_UNKNOWN = Rule(
    "cylinder-date-unknown",
    "warn",
    "A filler goes by the date on the collar, and so should the hand-over.",
    "cfr-49-180",
)
NO_LEAK_TEST = Rule(
    "no-leak-test",
    "stop",
    "Gas pipes shake loose on the road: no unit with gas goes out untested.",
    "nfpa-54",
)
GENERATOR_GAS = Rule(
    "generator-gas",
    "note",
    "Its plate does not say what it burns, so no figure for the gas counts it.",
    "common-practice",
)
RULES: Final = (
    GAS_BEYOND_REGULATOR,
    REGULATOR_UNKNOWN,
    GAS_PRESSURE_OFF,
    CYLINDER_DUE,
    CYLINDER_NEAR,
    CYLINDER_DATE_UNKNOWN,
    NO_LEAK_TEST,
    GENERATOR_GAS,
)
_NEAR_YEARS: Final = 1
_PRESSURES: Final = {True: (10.5, 14.0), False: (11.2, 14.1)}
"""In. w.c. that a second stage may stand at: North America, and 28 to 35 mbar."""


def look(case: Case) -> Iterator[Finding]:
    """Yield what is found on the gas; nothing on a unit without."""
    lp = case.spec.lp
    if lp.supply == "none":
        return
    regulator = fitted(lp.regulator)
    if regulator is not None:
        yield from _regulator(case, regulator)
    if isinstance(lp.supply, Cylinders) and case.north_american:
        yield from _cylinders(case, lp.supply)
    tests = {one.kind for one in items(case.spec.readings)}
    if "gas_leak" not in tests:
        what = "no leak test of the gas is recorded"
        yield NO_LEAK_TEST.found(what, "readings")
    generator = fitted(case.spec.ac.generator)
    if generator is not None and generator.kind == "lp":
        what = "the generator burns gas that no figure counts"
        yield GENERATOR_GAS.found(what, "ac.generator")


def _regulator(case: Case, regulator: Regulator) -> Iterator[Finding]:
    load = case.facts.get("lp.load")
    capacity = regulator.capacity.quantity
    if capacity is None:
        what = "what the regulator can pass is not known"
        yield REGULATOR_UNKNOWN.found(what, "lp.regulator.capacity")
    elif load and not isinstance(load.value, str | bool) and load.value > capacity:
        passes = shown(capacity, "Btu / hour", how="down")
        what = f"all burners take {load.shown()}, and the regulator passes {passes}"
        yield GAS_BEYOND_REGULATOR.found(what, "lp.regulator.capacity")
    outlet = regulator.outlet.quantity
    if outlet is None:
        return
    low, high = _PRESSURES[case.north_american]
    if not low <= number_in(outlet, "inH2O") <= high:
        stands = shown(outlet, "inH2O")
        what = f"the regulator lets out {stands}"
        yield GAS_PRESSURE_OFF.found(what, "lp.regulator.outlet")


def _cylinders(case: Case, supply: Cylinders) -> Iterator[Finding]:
    for one in supply.cylinders:
        where = f"lp.supply.cylinders[{one.id}].made"
        if not isinstance(one.made, dt.date):
            what = f"the date of the cylinder {one.id} is not known"
            yield CYLINDER_DATE_UNKNOWN.found(what, where, one.id)
            continue
        due = cylinders.requalify_first(one.made)
        said = (
            f"the cylinder {one.id} is due for requalification in {due:%B} {due.year}"
        )
        if due <= case.day:
            yield CYLINDER_DUE.found(said, where, one.id)
        elif due <= dates.years_after(case.day, _NEAR_YEARS):
            yield CYLINDER_NEAR.found(said, where, one.id)
