"""Papers, the statement on safety defects, disposal, about: by market, and as fitted."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

import pytest

from hatchleaf.blocks.choose import choose
from hatchleaf.blocks.model import Block, Library
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.make import Made, make
from hatchleaf.outputs.phone_copy import phone_copy
from hatchleaf.spec.load import LoadedUnit

STATEMENT: Final = "Reporting Safety Defects"
"""The heading that 49 CFR 575.6(a)(2) asks for in the table of contents."""
MARKETS: Final = ("us", "ca", "uk", "eu", "au")
TOPICS: Final = ("papers", "reporting-defects", "disposal", "about")
ONLY_IN: Final = {
    "us": ("NHTSA", "nhtsa.gov", "cpsc.gov", "federal label", "49 CFR", "DOT"),
    "ca": ("Transport Canada", "tc.canada.ca", "compliance label"),
    "uk": ("gov.uk", "United Kingdom"),
    "eu": ("ec.europa.eu", "in Europe"),
    "au": ("vehiclerecalls.gov.au", "productsafety.gov.au"),
}
"""Offices, addresses and labels of one market, which mislead in any other."""


def _blocks(unit: LoadedUnit, library: Library, market: str) -> list[Block]:
    body = unit.spec.body.model_copy(update={"market": market})
    spec = unit.spec.model_copy(update={"body": body})
    chosen = choose(library, spec, work_out(spec)).chosen
    return [one.block for one in chosen if one.block.topic in TOPICS]


@pytest.mark.parametrize("market", MARKETS)
def test_offices_are_of_the_market(
    market: str, library: Library, samples: Mapping[str, LoadedUnit]
) -> None:
    """Nobody is sent to an office of another country, and each is sent to one."""
    text = "\n".join(b.body for b in _blocks(samples["heron-a"], library, market))
    for other, words in ONLY_IN.items():
        found = [word for word in words if word in text]
        if other == market:
            assert found, market
        else:
            assert found == []


@pytest.mark.parametrize("market", MARKETS)
def test_the_statement_is_of_the_united_states(
    market: str, library: Library, samples: Mapping[str, LoadedUnit]
) -> None:
    """Its duty is of one law; elsewhere the page is not there at all."""
    topics = {b.topic for b in _blocks(samples["heron-a"], library, market)}
    assert ("reporting-defects" in topics) is (market == "us")
    assert {"papers", "disposal", "about"} <= topics


def test_the_statement_is_under_its_very_heading(
    guides: Mapping[str, Made], library: Library
) -> None:
    """In the contents as the rule words it, its text marked as the law's own."""
    block = library.blocks["reporting-defects"]
    assert block.mandated
    assert [b.id for b in library.blocks.values() if b.mandated] == [block.id]
    for made in guides.values():
        found = [p for p in made.pages.pages if p.number == 86]
        if made.pages.unit.market != "us":
            assert found == []
            continue
        (page,) = found
        assert page.title == STATEMENT
        contents = re.split(r'<nav class="?contents', phone_copy(made.pages))[1]
        assert STATEMENT in contents.split("</nav>")[0]
        maker = made.pages.unit.maker
        assert f"in addition to notifying {maker}." in page.text
        assert "Administrator, NHTSA, 1200 New Jersey Avenue" in page.text


def test_a_placeholder_says_so_until_it_was_compared(
    samples: Mapping[str, LoadedUnit], library: Library, guides: Mapping[str, Made]
) -> None:
    """Nobody here has read the rule in force, so the page does not pretend."""
    (before,) = (p for p in guides["heron-a"].pages.pages if p.number == 86)
    assert "Placeholder: not yet compared" in before.text
    made = make(
        samples["heron-a"],
        library,
        dealer_name="Two Herons",
        dealer_phone="555-0142",
        statement_checked="3 May 2027",
    )
    (after,) = (p for p in made.pages.pages if p.number == 86)
    assert "compared the words below with the rule on 3 May 2027" in after.text
    assert "Placeholder" not in after.text


def test_disposal_names_only_what_is_fitted(guides: Mapping[str, Made]) -> None:
    """No line on oil without a generator, none on gas in an all-electric teardrop."""
    text = {
        name: next(p.text for p in made.pages.pages if p.id == "disposal")
        for name, made in guides.items()
    }
    assert "Lead batteries" in text["heron-a"]
    assert "Lithium batteries" not in text["heron-a"]
    assert "Lithium batteries" in text["heron-b"]
    assert "Lead batteries" not in text["heron-b"]
    assert "Gas cylinders" in text["heron-a"]
    for word in ("cylinder", "propane", "generator", "air conditioner"):
        assert word not in text["heron-c"].replace("fire extinguisher", "")


def test_no_vin_is_asked_of_the_public_page(guides: Mapping[str, Made]) -> None:
    """The page says where the VIN is, and a look-up is done with it, not shown."""
    for name, made in guides.items():
        text = next(p.text for p in made.pages.pages if p.id == "papers")
        assert "VIN" in text, name
        assert made.manual.spec.vin not in text
