"""Facts in the words, units and rules of the unit's market."""

from __future__ import annotations

import pytest

from facts.samples import facts, with_
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.units import number_in


@pytest.mark.parametrize(
    ("market", "said"),
    [
        ("us", "Tires at the GVWR, the tire plate, tireless"),
        ("ca", "Tires at the GVWR, the tire plate, tireless"),
        ("uk", "Tyres at the maximum laden mass, the tyre plate, tireless"),
        ("au", "Tyres at the maximum laden mass, the tyre plate, tireless"),
    ],
)
def test_whole_words_alone_are_changed(market: str, said: str) -> None:
    """What only holds such a word stays as it is."""
    assert in_words_of(market, "Tires at the GVWR, the tire plate, tireless") == said


def test_no_basis_of_a_unit_abroad_is_in_american_words() -> None:
    """The page of numbers is read like any other."""
    abroad = with_("heron-a", body__market="uk")

    said = [f"{fact.basis} {fact.item_words}" for fact in abroad.values()]

    assert not any("tire" in text or "GVWR" in text for text in said)
    assert any("tyre" in text for text in said)


def test_cargo_is_moved_by_the_markets_own_measures() -> None:
    """By the lever: 50 kg moved 1 m on heron-a's 192 in (4.877 m) are 10.25 kg."""
    abroad = with_("heron-a", body__market="uk").of("weights.hitch_moved")

    assert [fact.item for fact in abroad] == ["0.5 m", "1 m", "2 m"]
    moved = number_in(abroad[1].value, "kilogram")  # type: ignore[arg-type]
    assert moved == pytest.approx(50 / 4.8768, rel=1e-3)
    at_home = facts("heron-a").of("weights.hitch_moved")
    assert [fact.item for fact in at_home] == ["2 ft", "4 ft", "8 ft"]


def test_the_fuse_of_a_panel_is_judged_where_its_code_holds() -> None:
    """Another country has another rule: no figure rather than a wrong one."""
    abroad = with_("heron-b", body__market="uk")

    for base in ("solar.fuse", "solar.circuit_current", "solar.most_isc"):
        assert not abroad.of(base)
    assert facts("heron-b").of("solar.most_isc") or facts("heron-b").of("solar.fuse")
