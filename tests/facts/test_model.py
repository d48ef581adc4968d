"""How a fact prints: never on the dangerous side of the exact value."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf import units
from hatchleaf.facts.model import Fact, Facts, field_of
from hatchleaf.units import Quantity, Rounding, quantity


def _fact(
    value: Quantity | str | bool,  # noqa: FBT001  # a fact's value may be yes or no
    unit: str = "",
    how: Rounding = "near",
    digits: int = 3,
    name: str = "water.capacity",
) -> Fact:
    base, _, item = name.partition("[")
    return Fact(
        name, base, item.removesuffix("]"), value, unit, digits, how, "", (), ""
    )


@pytest.mark.parametrize(
    ("value", "unit", "how", "digits", "printed"),
    [
        (1291.7, "pound", "down", 3, "1,290 lb"),
        (1291.7, "pound", "up", 3, "1,300 lb"),
        (2.5, "pound", "near", 1, "2 lb"),
        (0.1 + 0.2, "gallon", "up", 1, "0.3 gal"),
        (15.999, "night", "down", 2, "15 nights"),
        (1.9, "night", "down", 1, "1 night"),
        (0.55, "day", "down", 1, "0.5 days"),
        (-12.3, "pound", "down", 2, "-13 lb"),
        (0.0, "pound", "up", 3, "0 lb"),
        (1e7, "Btu", "down", 3, "10,000,000 BTU"),
    ],
)
def test_numbers_print_with_unit_and_direction(
    value: float, unit: str, how: Rounding, digits: int, printed: str
) -> None:
    """Limits down, loads up, thousands set apart, one night and two nights."""
    assert _fact(quantity(value, unit), unit, how, digits).shown() == printed


def test_words_and_answers_print_as_they_are() -> None:
    """A fact may be a word of a list, or yes or no."""
    assert _fact("too much").shown() == "too much"
    assert _fact(value=True).shown() == "yes"
    assert _fact(value=False).shown() == "no"


@given(
    st.floats(1e-4, 1e9),
    st.integers(1, 6),
    st.sampled_from(["down", "up", "near"]),
)
def test_rounding_keeps_its_side(value: float, digits: int, how: Rounding) -> None:
    """Down is never above, up never below, and both are one step away at most."""
    got = units.rounded(value, digits, how)

    # The twelfth figure is where a float's own noise begins.
    slack = value * 1e-11
    if how == "down":
        assert got <= value + slack
    if how == "up":
        assert got >= value - slack
    assert abs(got - value) <= 10 ** (Decimal(value).adjusted() - digits + 1) + slack
    assert units.rounded(got, digits, how) == got


def test_facts_are_found_by_name_and_by_base() -> None:
    """Items of one base come together, in their order; others are not mixed in."""
    names = ("water.days[1 person]", "water.capacity", "water.days[2 people]")
    all_facts = Facts(
        (_fact("x", name=name) for name in names), {"water.bleach": ("hot_water",)}
    )

    assert list(all_facts) == list(names)
    assert [one.item for one in all_facts.of("water.days")] == ["1 person", "2 people"]
    assert all_facts.of("water") == ()
    assert all_facts.missing_for("water.bleach") == ("hot_water",)
    with pytest.raises(KeyError):
        all_facts["water.days"]


def test_missing_facts_of_items_are_found_by_base() -> None:
    """A table asks for all that its base lacks."""
    lacking = Facts((), {"shore.load[a]": ("x", "y"), "shore.load[b]": ("y",)})

    assert lacking.missing_for("shore.load") == ("x", "y")
    assert lacking.missing_for("shore") == ()


def test_a_path_without_items_is_a_field() -> None:
    """Items go, wherever they stand."""
    assert field_of("a.b[x y].c[d].e") == "a.b.c.e"
    assert field_of("added[rack].weight") == "added.weight"
