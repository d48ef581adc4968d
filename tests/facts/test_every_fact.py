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
        assert 3 <= len(fact.basis.split()) <= 70, fact.basis
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


AS_STATED = re.compile(
    r"(lp\.stored|water\.capacity|waste\.capacity|shore\.load|tires\.(load|pressure)"
    r"|awnings\.wind_limit|body\.height"
    r"|weights\.(gvwr|cargo|empty|lp|added|hitch|axles|axle_room|scale_left))(\[|$)"
)
"""Numbers of the file itself, and sums and differences of labels' and scales'."""
INSTRUMENT = re.compile(r"\.(draw|blower|flow)$")
TAPE = re.compile(r"\.(cord_length|width|reach|to_axles|track|length)$")


def _figures(text: str) -> int:
    """Return the significant figures of a printed number; zeros at its end are none."""
    found = re.match(r"-?([\d,]+(?:\.\d+)?)", text)
    assert found, text
    number = found[1].replace(",", "")
    bare = number.replace(".", "") if "." in number else number.rstrip("0")
    return max(1, len(bare.lstrip("0")))


def _numbers(unit: str) -> list[Fact]:
    some = facts_of_everything() if unit == "everything" else facts(unit)
    return [fact for fact in some.values() if not isinstance(fact.value, str | bool)]


@pytest.mark.parametrize("unit", [*NAMES, "everything"])
def test_no_number_pretends_to_more_than_three_figures(unit: str) -> None:
    """Handbooks of the trade print two or three; only weights and readings have more."""
    for fact in _numbers(unit):
        if not AS_STATED.match(fact.name):
            assert fact.digits <= 3, fact.name
            assert _figures(fact.shown()) <= 3, fact.name


@pytest.mark.parametrize("unit", [*NAMES, "everything"])
def test_a_figure_of_the_trade_or_a_brochure_carries_two(unit: str) -> None:
    """What nobody read from this unit cannot be known to one part in a hundred."""
    unsure = [one for one in _numbers(unit) if one.typical or one.brochure]
    assert unsure
    for fact in unsure:
        if not AS_STATED.match(fact.name):
            assert fact.digits <= 2, fact.name
            assert _figures(fact.shown()) <= 2, fact.name


@pytest.mark.parametrize("unit", [*NAMES, "everything"])
def test_no_number_has_more_figures_than_what_was_measured(unit: str) -> None:
    """
    A result is no surer than its least sure input: the usual rule of figures.

    The rule is in NIST's SP 811, B.7, and each physics book; that an input states two
    figures at least, and a tape inches, is common practice, no source.
    """
    measured = 0
    for fact in _numbers(unit):
        for one in fact.inputs:
            if TAPE.search(one.field):
                length = units.parse(one.text, units.LENGTH)
                inches = round(units.number_in(length, "inch"))
                carried = len(str(inches))
            elif INSTRUMENT.search(one.field) and not one.text.endswith("W"):
                carried = _figures(one.text)
            else:
                continue
            measured += 1
            assert _figures(fact.shown()) <= max(2, carried), (fact.name, one)
    assert measured
