"""What runs out first: days by people and night, each taken from another fact."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from facts.samples import NAMES, UNKNOWN, changed, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.facts.endurance import ENDS, FIRST, NIGHTS, PEOPLE, exact_days, item, who
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out

ENDURANCE = re.compile(r"endurance\.")


def _of(found: Facts, base: str, people: int, night: str) -> str:
    return found[f"{base}[{item(people, night)}]"].shown()


@pytest.mark.parametrize(
    ("sample", "people", "night", "days", "first"),
    [
        # By hand.  (a) 46 / 5 = 9.2 each; gray 41 / 4 = 10.25; black (33 - 2) / 1 = 31;
        # AGM 188 Ah x 12 V x 50 % = 1,128 Wh; a mild day 2.7 x 4 + 2.2 x 8 +
        # 0.6 x 24 + 0.3 x 24 + 6.4 x 0.3 = 51.92 Ah = 623 Wh: 1.81; a frost day adds
        # 6.8 x 6.3 = 42.84 Ah: 1,137 Wh from 80 % of 1,128: 0.79.
        # 60 lb / 1.602 = 37.4; / 5.582 = 10.7.
        ("heron-a", 1, "summer night", "9 10 31 1 37", "battery"),
        ("heron-a", 1, "frost night", "9 10 31 0.7 10", "battery"),
        ("heron-a", 2, "summer night", "4 5 15 1 37", "battery"),
        ("heron-a", 2, "frost night", "4 5 15 0.7 10", "battery"),
        ("heron-a", 4, "summer night", "2 2 7 1 37", "battery"),
        ("heron-a", 4, "frost night", "2 2 7 0.7 10", "battery"),
        # 46 / 30 = 1.53 is less than 41 / 24 = 1.71 and the battery's 1.81.
        ("heron-a", 6, "summer night", "1 1 5 1 37", "fresh water"),
        ("heron-a", 6, "frost night", "1 1 5 0.7 10", "battery"),
        # (b) 22 / 5 = 4.4; combined (27 - 2) / 5 = 5; LFP 105 Ah x 12.8 V x 90 % =
        # 1,209.6 Wh; 1.6 x 4 + 1.9 x 8 + 0.2 x 24 + 4.7 x 9.6 + 5.3 x 0.3 = 73.11 Ah
        # = 936 Wh: 1.29; frost adds 3.4 x 6.3: 1,210 Wh from 85 %: 0.85.
        # 20 lb / 0.797 = 25.1; / 3.347 = 5.98.
        ("heron-b", 1, "summer night", "4 5 1 25", "battery"),
        ("heron-b", 1, "frost night", "4 5 0.8 5", "battery"),
        ("heron-b", 2, "summer night", "2 2 1 25", "battery"),
        ("heron-b", 2, "frost night", "2 2 0.8 5", "battery"),
        # 22 / 20 = 1.1 is less than 25 / 20 = 1.25 and the battery's 1.29.
        ("heron-b", 4, "summer night", "1 1 1 25", "fresh water"),
        ("heron-b", 4, "frost night", "1 1 0.8 5", "battery"),
        ("heron-b", 6, "summer night", "0.7 0.8 1 25", "fresh water"),
        # 22 / 30 = 0.733 is less than 25 / 30 = 0.833 and the battery's 0.85.
        ("heron-b", 6, "frost night", "0.7 0.8 0.8 5", "fresh water"),
        # (c) no gas.  11 / 5 = 2.2; gray 9 / 4 = 2.25; the battery by a typical half;
        # frost takes as much, from 80 % of it.
        ("heron-c", 1, "summer night", "2 2 0.7", "battery"),
        ("heron-c", 1, "frost night", "2 2 0.6", "battery"),
        ("heron-c", 2, "summer night", "1 1 0.7", "battery"),
        ("heron-c", 2, "frost night", "1 1 0.6", "battery"),
        # 11 / 20 = 0.55 is less than 9 / 16 = 0.5625.
        ("heron-c", 4, "summer night", "0.5 0.5 0.7", "fresh water"),
        ("heron-c", 4, "frost night", "0.5 0.5 0.6", "fresh water"),
        ("heron-c", 6, "summer night", "0.3 0.3 0.7", "fresh water"),
        ("heron-c", 6, "frost night", "0.3 0.3 0.6", "fresh water"),
    ],
)
def test_rows_by_hand(
    sample: str, people: int, night: str, days: str, first: str
) -> None:
    """Every row of every sample, rounded down, in the order of the table."""
    found = facts(sample)
    row = [
        found[name].shown().split()[0]
        for name in (f"{end.base}[{item(people, night)}]" for end in ENDS)
        if name in found
    ]
    assert row == days.split()
    assert _of(found, FIRST, people, night) == first


@pytest.mark.parametrize("sample", NAMES)
def test_each_number_is_another_fact_of_the_unit(sample: str) -> None:
    """No formula is written twice: value, sentence, inputs and marks are those."""
    found = facts(sample)
    for people in PEOPLE:
        for night in NIGHTS:
            for end in ENDS:
                name = f"{end.base}[{item(people, night)}]"
                if name in found:
                    source = found[end.source(who(people), night)]
                    assert exact_days(found[name]) == exact_days(source)
                    assert found[name].basis == source.basis
                    assert found[name].inputs == source.inputs
                    assert found[name].brochure == source.brochure


@pytest.mark.parametrize("sample", NAMES)
def test_all_of_it_is_typical_and_says_so(sample: str) -> None:
    """Nobody can promise how long a tank lasts."""
    bases = {fact.base for fact in facts(sample).values() if ENDURANCE.match(fact.name)}
    assert FIRST in bases
    for base in bases:
        assert all(fact.typical for fact in facts(sample).of(base))
        assert all("typical" in fact.basis for fact in facts(sample).of(base))


@pytest.mark.parametrize("sample", NAMES)
def test_the_first_is_the_shortest(sample: str) -> None:
    """The word names the column with the fewest days, and no other."""
    found = facts(sample)
    for people in PEOPLE:
        for night in NIGHTS:
            days = {
                end.words: exact_days(found[f"{end.base}[{item(people, night)}]"])
                for end in ENDS
                if f"{end.base}[{item(people, night)}]" in found
            }
            assert days[_of(found, FIRST, people, night)] == min(days.values())


def test_what_is_not_fitted_has_no_row() -> None:
    """The all-electric unit has no gas, the molded one no gray or black tank."""
    assert not facts("heron-c").of("endurance.lp")
    assert not facts("heron-c").of("endurance.black")
    assert not facts("heron-b").of("endurance.gray")
    assert not facts("heron-b").of("endurance.black")
    assert not facts("heron-a").of("endurance.combined")
    found = with_("heron-a", dc__batteries="none")
    assert not found.of("endurance.battery")
    assert "endurance.battery" not in str(dict(found.missing))
    assert _of(found, FIRST, 2, "summer night") == "fresh water"


@pytest.mark.parametrize(
    ("change", "base", "path"),
    [
        ({"water__tanks": "unknown"}, "endurance.fresh", "water.tanks"),
        ({"waste__tanks": "unknown"}, FIRST, "waste.tanks"),
        ({"dc__batteries": "unknown"}, "endurance.battery", "dc.batteries"),
        ({"dc__loads": "unknown"}, "endurance.battery", "dc.loads"),
        ({"lp__supply": "unknown"}, "endurance.lp", "lp.supply"),
        ({"kitchen__cooktop": "unknown"}, "endurance.lp", "kitchen.cooktop"),
        (
            {"waste__tanks__black__volume": UNKNOWN},
            "endurance.black",
            "waste.tanks[black].volume",
        ),
        (
            {"waste__tanks__black__holds": "unknown"},
            FIRST,
            "waste.tanks[black].holds",
        ),
    ],
)
def test_without_an_input_neither_it_nor_the_first_is_told(
    change: dict[str, object], base: str, path: str
) -> None:
    """What is not known might be the first to end."""
    found = with_("heron-a", **change)
    assert not found.of(base)
    assert path in found.missing_for(base)
    assert not found.of(FIRST)
    assert path in found.missing_for(FIRST)
    # The others stand.
    assert sum(fact.base.startswith("endurance.") for fact in found.values()) >= 32 - 8


def test_frost_without_a_furnace_takes_no_more_gas() -> None:
    """Only a burner that heats the unit makes the difference."""
    found = with_("heron-a", climate__furnace="none")
    for night in NIGHTS:
        assert _of(found, "endurance.lp", 2, night) == "37 days"
    # The battery is colder all the same: 1.81 x 80 % = 1.45.
    assert exact_days(found["battery.days[frost]"]) == pytest.approx(1.4484, abs=1e-3)


def test_a_furnace_that_is_the_only_flame_burns_nothing_in_summer() -> None:
    """A row that never ends is no row."""
    found = with_(
        "heron-a", hot_water="none", kitchen__cooktop="none", kitchen__fridge="none"
    )
    assert "endurance.lp[2 people, summer night]" not in found
    assert "endurance.lp[2 people, frost night]" in found
    assert not found.missing_for("endurance.lp")


@settings(max_examples=25, deadline=None)
@given(
    fresh=st.integers(1, 150),
    gray=st.integers(1, 150),
    black=st.integers(1, 150),
    charge=st.integers(20, 800),
)
def test_more_people_never_last_longer(
    fresh: int, gray: int, black: int, charge: int
) -> None:
    """Nor does frost, whatever is fitted; exact, and as printed."""
    spec = changed(
        unit("heron-a"),
        {
            "water.tanks.fresh.volume": reading(f"{fresh} gal", units.VOLUME),
            "waste.tanks.gray.volume": reading(f"{gray} gal", units.VOLUME),
            "waste.tanks.black.volume": reading(f"{black} gal", units.VOLUME),
            "dc.batteries.front.charge": reading(f"{charge} Ah", units.CHARGE),
        },
    )
    found = work_out(spec)
    for end in ENDS:
        rows = [
            [found.get(f"{end.base}[{item(people, night)}]") for people in PEOPLE]
            for night in NIGHTS
        ]
        for row in rows:
            known = [fact for fact in row if fact]
            exact = [exact_days(fact) for fact in known]
            shown = [float(fact.shown().split()[0]) for fact in known]
            assert all(more <= less for less, more in pairwise(exact))
            assert all(more <= less for less, more in pairwise(shown))
        for summer, frost in zip(*rows, strict=True):
            if summer and frost:
                assert exact_days(frost) <= exact_days(summer)
