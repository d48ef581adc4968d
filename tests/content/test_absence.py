"""
What is not fitted is not in the guide: by block, and by the words of a reader.

General hazards (blocks marked `always`) are for every unit: a portable stove's gas
can kill in an all-electric unit too.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

import pytest

from content.marked import marked, own_texts, pattern, said_without_right, texts_of
from hatchleaf.blocks.conditions import values
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.unit import UnitSpec

SAMPLES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")

# Part of the spec -> words that only a unit with it may read.
WORDS: Final = {
    "lp.supply": r"\bLP gas supply\b|\bcylinder|\bpropane\b|\bgas valve|\bregulator of the gas",
    "lp.outlets": r"\bgas outlet\b|\bquick[- ]connect",
    "awnings": r"\bawning",
    "dc.solar": r"\bsolar\b",
    "waste.rinse": r"\btank rinse\b|\brinse inlet\b",
    "waste.monitor": r"\bpress the button of the tank\b",
    "water.outside_shower": r"\boutside shower\b",
    "water.filter": r"\bfilter cartridge\b|\bwater filter\b",
    "water.low_points": r"\blow[- ]points?\b",
    "gear.stabilizers": r"\bstabilizer",
    "gear.breakaway": r"\bbreakaway",
    "gear.brakes": r"\bbrake controller\b|\btrailer brakes?\b",
    "steps": r"\bfold the step\b|\bthe step is\b",
    "slides": r"\bslide[- ]?outs?\b",
    "ac.generator": r"\bbuilt-in generator\b|\bgenerator switch\b",
    "ac.inverter": r"\binverter\b",
    "hot_water.element": r"\belectric element\b|\bthe element\b",
    "hot_water.bypass": r"\bbypass\b",
    "hot_water.anode": r"\banode\b",
    "hot_water.least_flow": r"\bleast flow\b|\bon-demand\b",
    "climate.furnace": r"\bfurnace\b",
    "climate.air_conditioners": r"\bair conditioner",
    "dc.batteries.lithium": r"\blithium\b|\bLFP\b",
    # That a charger for lead-acid is the wrong one is said of a lithium battery.
    "dc.batteries.lead": r"\bAGM\b|\bsealed lead|\bwater caps\b",
    "ac.shore.30": r"\b30 A (?:plug|post|outlet|cord)|\b3,600 W\b",
}

NO_WORD: Final[Mapping[str, str]] = {
    "breakers": "a breaker is also in the post, and a fuse in the vehicle",
}
"""Topic -> why no word of it can be marked: it is said of every unit."""


def _fitted(spec: UnitSpec, path: str) -> bool:
    chemistries = {str(value) for value in values(spec, "dc.batteries.chemistry")}
    special = {
        "dc.batteries.lithium": "lfp" in chemistries,
        "dc.batteries.lead": bool(chemistries & {"agm", "flooded", "gel"}),
        "ac.shore.30": any(str(v) == "tt_30" for v in values(spec, "ac.shore.plug")),
        "hot_water.anode": "yes" in {str(v) for v in values(spec, "hot_water.anode")},
    }
    if path in special:
        return special[path]
    found = list(values(spec, path))
    return any(
        not isinstance(v, str) or v not in ("none", "not fitted") for v in found
    ) and (not all(type(v).__name__ == "_Missing" for v in found))


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("path", WORDS)
def test_no_word_of_what_is_not_fitted(
    name: str, path: str, samples: Mapping[str, LoadedUnit], guides: Mapping[str, Made]
) -> None:
    """An owner who reads of a part looks for it, and trusts the rest less."""
    if _fitted(samples[name].spec, path):
        return
    general = {one.id for one in guides[name].selection.chosen if one.block.always}
    found = [
        (part.id, match[0])
        for topic in guides[name].manual.topics
        for part in topic.parts
        if part.id not in general
        for match in re.finditer(WORDS[path], part.markdown, re.IGNORECASE)
    ]
    found += [
        (step.block, match[0])
        for steps in guides[name].manual.steps.values()
        for step in steps
        for match in re.finditer(WORDS[path], step.markdown, re.IGNORECASE)
    ]
    assert found == []


@pytest.mark.parametrize("name", SAMPLES)
def test_no_marked_word_without_its_block(
    name: str, guides: Mapping[str, Made]
) -> None:
    """
    For every condition that a sample fails: none of the words that its block marks.

    Made from the library: what a new block marks in `words` is looked for at once.
    """
    assert list(said_without_right(guides[name])) == []


def test_no_mark_is_idle(library: Library, guides: Mapping[str, Made]) -> None:
    """A word that none of its blocks says, nor a guide with them, marks nothing."""
    idle = []
    for word, by in marked(library.blocks.values()).items():
        texts = [text for one in sorted(by) for text in own_texts(library, one)]
        for made in guides.values():
            if by & {one.block.id for one in made.selection.chosen}:
                texts += [text for _, text in texts_of(made)]
        if not any(pattern(word).search(text) for text in texts):
            idle.append(word)
    assert idle == []


def test_every_part_has_a_marked_word(library: Library) -> None:
    """What a topic speaks of is fitted or not, so something in it can be marked."""
    by_topic: dict[str, set[str]] = {}
    for block in library.blocks.values():
        by_topic.setdefault(block.topic, set()).update(block.words)
    bare = {
        topic.id
        for topic in library.topics.values()
        if topic.parts and topic.id in by_topic and not by_topic[topic.id]
    }
    assert bare <= set(NO_WORD), "mark a word in 'words:' of a block of the topic"
    assert set(NO_WORD) & by_topic.keys() <= bare, "take it out of NO_WORD"


@pytest.mark.parametrize(
    ("word", "text"),
    [
        ("slide-out", "Both Slide Outs are in."),
        ("macerator", "the macerators"),
        ("electric jack", "Run the electric-jack."),
    ],
)
def test_a_marked_word_is_found_in_any_form(word: str, text: str) -> None:
    """Plural, capitals, hyphen or space: it is the same word to a reader."""
    assert pattern(word).search(text)
    assert not pattern(word).search(f"un{word.replace(' ', '')}able")


def test_every_word_list_is_at_work(guides: Mapping[str, Made]) -> None:
    """A pattern that no guide ever meets would test nothing where one fits it."""
    whole = {
        name: " ".join(page.text for page in made.pages.pages)
        for name, made in guides.items()
    }
    idle = [
        path
        for path, words in WORDS.items()
        if not any(re.search(words, text, re.IGNORECASE) for text in whole.values())
    ]
    # Of these no sample has one: the list is ready for the unit that does.
    assert set(idle) <= {"slides", "ac.generator", "ac.inverter"}, idle


@pytest.mark.parametrize("name", SAMPLES)
def test_a_block_left_out_leaves_nothing(name: str, guides: Mapping[str, Made]) -> None:
    """Every condition of the library that fails keeps its block's text off all pages."""
    made = guides[name]
    body = "\n".join(page.body for page in made.pages.pages)
    ids = set(re.findall(r'id="([^"]+)"', body))
    inside = {one.block.id for one in made.selection.chosen}
    steps = {s.block for rows in made.manual.steps.values() for s in rows}
    for out in made.selection.left_out:
        assert out.block.id not in steps
        for heading in re.findall(r"^## (.+)$", out.block.body, re.MULTILINE):
            anchor = f"{out.block.id}-{re.sub(r'[^a-z0-9]+', '-', heading.lower()).strip('-')}"
            taken = any(anchor.startswith(f"{other}-") for other in inside)
            assert taken or anchor not in ids


@pytest.mark.parametrize("name", SAMPLES)
def test_every_condition_decides_somewhere(
    name: str, library: Library, guides: Mapping[str, Made]
) -> None:
    """Each block is either in or out, with the lines that say why."""
    made = guides[name]
    inside = {one.block.id for one in made.selection.chosen}
    outside = {out.block.id for out in made.selection.left_out}
    assert inside | outside == set(library.blocks)
    assert not inside & outside
    for out in made.selection.left_out:
        assert any(not outcome.holds for outcome in out.outcomes), out.block.id


def test_general_hazards_are_on_every_unit(
    library: Library, guides: Mapping[str, Made]
) -> None:
    """Carbon monoxide, a portable stove or generator, misuse: on all, always."""
    always = {block.id for block in library.blocks.values() if block.always}
    assert len(always) >= 3
    for made in guides.values():
        assert always <= {one.block.id for one in made.selection.chosen}
        text = " ".join(page.text for page in made.pages.pages).lower()
        assert "carbon monoxide" in text
        assert "stove" in text or "cooker" in text
        assert "generator" in text


def test_the_all_electric_unit_has_no_gas_page(guides: Mapping[str, Made]) -> None:
    """No topic of the gas system, and no step of a journey about gas."""
    made = guides["heron-c"]
    assert [page.number for page in made.pages.pages if page.system == "lp"] == []
    assert [
        s for rows in made.manual.steps.values() for s in rows if s.phase == "gas"
    ] == []


def test_on_demand_unit_has_no_bypass_page(guides: Mapping[str, Made]) -> None:
    """An on-demand heater has neither a bypass nor an element to speak of."""
    assert 715 not in guides["heron-b"].pages.by_number
    assert 715 in guides["heron-a"].pages.by_number
