"""Conditions as data: what each line form holds of, on real units."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from hatchleaf.blocks.conditions import (
    MISSING,
    Limit,
    Line,
    NoneOf,
    OneOf,
    Presence,
    Test,
    items_at,
    outcomes,
)
from hatchleaf.blocks.model import Library
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.load import LoadedUnit


def _holds(
    loaded: LoadedUnit,
    library: Library,
    *lines: tuple[str, Test],
    facts: Facts | None = None,
) -> bool:
    made = outcomes(
        tuple(Line(path, test) for path, test in lines),
        loaded.spec,
        facts or Facts(),
        library.lists,
    )
    return all(outcome.holds for outcome in made)


GALLONS_40 = Limit("at_least", (40.0, "gallon"), "40 gal")
HERE, AWAY = Presence(present=True), Presence(present=False)


@pytest.mark.parametrize(
    ("unit", "path", "test", "holds"),
    [
        ("heron-a", "lp.supply.changeover", OneOf(("automatic",)), True),
        ("heron-b", "lp.supply.changeover", OneOf(("automatic",)), False),
        ("heron-c", "lp.supply.changeover", OneOf(("automatic", "none")), False),
        # What is not fitted is not "not automatic": absence has its own word.
        ("heron-c", "lp.supply.changeover", NoneOf(("automatic",)), False),
        ("heron-b", "lp.supply.changeover", NoneOf(("automatic",)), True),
        ("heron-c", "lp.supply", AWAY, True),
        ("heron-a", "lp.supply", AWAY, False),
        ("heron-a", "lp.supply", HERE, True),
        ("heron-c", "awnings", AWAY, True),
        ("heron-a", "awnings", HERE, True),
        ("heron-a", "awnings.kind", OneOf(("powered",)), True),
        ("heron-b", "awnings.kind", OneOf(("powered",)), False),
        ("heron-c", "awnings.kind", OneOf(("powered",)), False),
        ("heron-a", "hot_water.element", HERE, True),
        ("heron-b", "hot_water.element", HERE, False),
        ("heron-a", "water.tanks.volume", GALLONS_40, True),
        ("heron-b", "water.tanks.volume", GALLONS_40, False),
        ("heron-a", "ac.shore.legs", Limit("at_most", 1, "1"), True),
        ("heron-a", "ac.shore.legs", Limit("at_least", 2, "2"), False),
        ("heron-a", "condition", OneOf(("new",)), True),
        ("heron-c", "condition", OneOf(("used",)), True),
    ],
)
def test_a_line(
    unit: str,
    path: str,
    test: Test,
    holds: bool,  # noqa: FBT001
    samples: Mapping[str, LoadedUnit],
    library: Library,
) -> None:
    """Each form of line, on a unit that has it and on one that has not."""
    assert _holds(samples[unit], library, (path, test)) is holds


def test_two_lines_through_a_list_mean_one_item(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """A black tank with a pull valve is one tank, not two that share the words."""
    loaded = samples["heron-a"]
    tanks = {(t.holds, t.valve) for t in items_at(loaded.spec, "waste.tanks")}  # type: ignore[attr-defined]
    for holds in ("black", "gray", "combined"):
        for valve in ("pull", "cable", "electric"):
            assert _holds(
                loaded,
                library,
                ("waste.tanks.holds", OneOf((holds,))),
                ("waste.tanks.valve", OneOf((valve,))),
            ) is ((holds, valve) in tanks)


def test_an_item_is_judged_alone(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """With `each`, a line through the list speaks of the item at hand."""
    spec = samples["heron-a"].spec
    line = (Line("waste.tanks.holds", OneOf(("black",))),)
    judged = {
        str(item): outcomes(line, spec, Facts(), library.lists, ("waste.tanks", item))[
            0
        ].holds
        for item in items_at(spec, "waste.tanks")
    }
    assert sorted(judged.values()) == [False, True]


def test_a_fact_may_be_asked(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """A condition may hang on what was worked out, such as what fits together."""
    loaded = samples["heron-a"]
    facts = work_out(loaded.spec)
    word = next(fact for fact in facts.of("shore.together") if fact.value == "too much")
    path = f"fact.{word.name}"
    assert _holds(loaded, library, (path, OneOf(("too much",))), facts=facts)
    assert not _holds(loaded, library, (path, OneOf(("fits",))), facts=facts)
    assert not _holds(
        loaded, library, ("fact.shore.none", OneOf(("fits",))), facts=facts
    )


def test_unknown_is_neither_there_nor_away() -> None:
    """Nobody can say that an unknown part is not fitted, or that it is."""
    assert not Presence(present=True).holds("unknown")
    assert not Presence(present=False).holds("unknown")
    assert not NoneOf(("automatic",)).holds("unknown")
    assert OneOf(("unknown",)).holds("unknown")


def test_not_fitted_is_away() -> None:
    """`none` in the file and a path that ends before it are the same to a reader."""
    assert Presence(present=False).holds(MISSING)
    assert Presence(present=False).holds("none")
    assert Presence(present=False).holds(())
    assert not Presence(present=True).holds("none")
