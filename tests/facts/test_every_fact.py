"""What holds for every fact of every sample unit."""

from __future__ import annotations

import re

import pytest
import yaml

from facts.fitted import facts_of_everything
from facts.samples import NAMES, ROOT, facts, loaded
from hatchleaf import units
from hatchleaf.facts import names
from hatchleaf.facts.model import Fact
from hatchleaf.spec import paths

SOURCES = yaml.safe_load((ROOT / "content_blocks/sources.yml").read_text())


def _printed_number(fact: Fact) -> float:
    found = re.match(r"-?[\d,]+(?:\.\d+)?", fact.shown())
    assert found, fact.shown()
    return float(found[0].replace(",", ""))


@pytest.mark.parametrize("unit", NAMES)
def test_facts_print(unit: str) -> None:
    """Each fact has a text of its own unit, short enough for a tile."""
    for fact in facts(unit).values():
        shown = fact.shown()
        assert 0 < len(shown) <= 24, fact.name
        if not isinstance(fact.value, str | bool):
            assert shown.removesuffix("s").endswith(
                units.symbol_of(fact.unit).removesuffix("s")
            )


@pytest.mark.parametrize("unit", NAMES)
def test_printing_errs_to_the_safe_side(unit: str) -> None:
    """Limits, time and stock are never shown above the exact value, loads below."""
    directions = set()
    for fact in facts(unit).values():
        if isinstance(fact.value, str | bool):
            continue
        directions.add(fact.rounding)
        exact = units.number_in(fact.value, fact.unit)
        shown = _printed_number(fact)
        if fact.rounding == "down":
            assert shown <= exact * (1 + 1e-9), fact.name
        if fact.rounding == "up":
            assert shown >= exact * (1 - 1e-9), fact.name
        assert shown == pytest.approx(exact, rel=0.5), fact.name
    assert {"down", "up"} <= directions


LOADS = re.compile(
    r"lp\.(load|furnace_night|regulator_use|cylinder_weight|day|mix)$"
    r"|furnace\.|hot_water\.reheat"
    r"|water\.(weight|bleach|push|antifreeze)"
    r"|waste\.(weight|precharge|drain_seconds|hose_fall|rinse_fills)"
    r"|shore\.(load|cord_drop|extension_drop)|generator\.(start|needed)"
    r"|battery\.(night_use|day_use|charge_hours|charge_days)"
    r"|solar\.(circuit_current|controller_current)"
    r"|weights\.(empty|lp|water|water_share|added|hitch)$"
    r"|weights\.hitch_usual\[at least|awnings\.(area|rain|wind_force)"
)
AS_MEASURED = re.compile(
    r"tires\.pressure|weights\.hitch_(share|moved)|leveling\.block"
)


@pytest.mark.parametrize("unit", NAMES)
def test_each_fact_rounds_the_way_of_its_kind(unit: str) -> None:
    """Loads up; limits, time and stock down; what is compared with a gauge, near."""
    for fact in facts(unit).values():
        if isinstance(fact.value, str | bool):
            continue
        wanted = (
            "near"
            if AS_MEASURED.match(fact.name)
            else "up"
            if LOADS.match(fact.name.split("[", 1)[0]) or LOADS.match(fact.name)
            else "down"
        )
        assert fact.rounding == wanted, fact.name


@pytest.mark.parametrize("unit", NAMES)
def test_each_basis_is_a_sentence(unit: str) -> None:
    """An owner can read how the number came about; no path, no code."""
    for fact in facts(unit).values():
        assert re.match(r"[A-Z0-9]", fact.basis), fact.basis
        assert fact.basis.endswith("."), fact.basis
        assert 3 <= len(fact.basis.split()) <= 60, fact.basis
        assert not re.search(
            r"[_{}\[\]]|(?<![\d.])\d{5}|None|unknown|pound|british", fact.basis
        )


@pytest.mark.parametrize("unit", NAMES)
def test_each_source_is_listed(unit: str) -> None:
    """No fact rests on a source that the list does not have."""
    assert {fact.source for fact in facts(unit).values()} <= SOURCES.keys()


@pytest.mark.parametrize("unit", NAMES)
def test_a_typical_fact_says_so_and_no_other_does(unit: str) -> None:
    """A figure of the trade must never pass for one of this unit."""
    for fact in facts(unit).values():
        assert ("typical" in fact.basis) == fact.typical, fact.name
        if fact.source == "common-practice":
            assert fact.typical, fact.name


@pytest.mark.parametrize("unit", NAMES)
def test_each_input_stands_in_the_files(unit: str) -> None:
    """The inputs lead to a line of the unit's file or of its model's."""
    for fact in facts(unit).values():
        assert fact.inputs, fact.name
        for one in fact.inputs:
            assert loaded(unit).place_of(one.path).line > 1, one.path
            assert one.text


@pytest.mark.parametrize("unit", NAMES)
def test_inputs_are_among_the_fields_that_the_name_declares(unit: str) -> None:
    """The list of what each fact reads is kept true by the facts themselves."""
    for fact in facts(unit).values():
        read = {one.field for one in fact.inputs}
        assert read <= set(names.READS[fact.base]), fact.name


@pytest.mark.parametrize(
    ("unit", "bases"),
    [
        (
            "heron-a",
            (
                "water.capacity water.weight water.days water.bleach_volume "
                "water.bleach waste.capacity waste.weight waste.precharge "
                "waste.rinse_minutes weights.water weights.water_share weights.cargo_left "
                "water.fill_minutes water.pump_minutes waste.days waste.drain_seconds "
                "endurance.fresh endurance.gray endurance.black endurance.first "
                "body.height"
            ),
        ),
        (
            "heron-b",
            (
                "waste.capacity waste.weight waste.precharge weights.hitch waste.days "
                "waste.drain_seconds waste.rinse_fill waste.rinse_fills "
                "battery.charge_days solar.controller solar.controller_current "
                "solar.day_charge solar.day_energy endurance.combined endurance.first "
                "body.height"
            ),
        ),
        ("heron-c", ""),
    ],
)
def test_brochure_figures_mark_all_that_rests_on_them(unit: str, bases: str) -> None:
    """Tanks of (a) and (b) and the hitch of (b) come from brochures, nothing of (c)."""
    marked = {fact.base for fact in facts(unit).values() if fact.brochure}

    assert marked == set(bases.split())


def test_declared_fields_are_fields_of_the_vocabulary() -> None:
    """A name may not claim to read what no file can state."""
    vocabulary = paths.fields()
    for base, read in names.READS.items():
        assert set(read) <= vocabulary.keys(), base


def test_the_samples_try_every_name() -> None:
    """Between them the samples have a fact of every name, but what none can have."""
    tried = {fact.base for unit in NAMES for fact in facts(unit).values()}
    tried |= {fact.base for fact in facts_of_everything().values()}

    assert set(names.KNOWN) == tried
