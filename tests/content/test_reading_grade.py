"""
Every block and every page can be read at grade 8 or lower.

The measure is Flesch and Kincaid's grade (Kincaid and others, 1975: 0.39 words per
sentence + 11.8 syllables per word - 15.59), counted by textstat.  Tables, links and
markup are left out; text that the law words (`mandated`) is exempt.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator, Mapping
from typing import Final

import pytest
import textstat  # type: ignore[import-untyped]

from content.sentences import expanded, without_jinja
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made

SAMPLES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")
HIGHEST: Final = 8.0
LONG: Final = 20
"""Words; a sentence longer than this is the exception."""
LONGEST: Final = 24
MOSTLY: Final = 0.98
AVERAGE: Final = 14.0
"""Words in a sentence of a topic, on average, at most."""
FEW: Final = 5
"""A topic of fewer sentences has no average to speak of."""

TITLE: Final = re.compile(r'^(?:!!!|\?\?\?) \w+ "(.*)"$')
MARK: Final = re.compile(r"^(?:#+|\d+\.|[-*]) ")
LINK: Final = re.compile(r"\[([^\]]*)\]\([^)]*\)")


def _grade(text: str) -> float:
    return float(textstat.flesch_kincaid_grade(text))


def prose(markdown: str) -> list[str]:
    """Return the lines of *markdown* as sentences, without tables and markup."""
    lines = []
    markdown = markdown.replace("</figcaption>", "\n")
    bare = re.sub(r"<svg.*?</svg>|<[^>]+>", "", markdown, flags=re.DOTALL)
    for raw in html.unescape(bare).splitlines():
        line = raw.strip()
        if not line or line.startswith("|"):
            continue
        title = TITLE.match(line)
        line = MARK.sub("", title[1] if title else line)
        line = LINK.sub(r"\1", line).replace("**", "").replace("`", "")
        lines.append(line if line[-1] in ".!?:" else f"{line}.")
    return lines


def _texts(made: Made) -> Iterator[tuple[str, list[str]]]:
    exempt = {one.id for one in made.selection.chosen if one.block.mandated}
    for text in made.manual.topics:
        page: list[str] = []
        for part in text.parts:
            if part.id in exempt:
                continue
            lines = prose(part.markdown)
            page += lines
            yield part.id, lines
        page += [step.markdown for step in made.manual.steps.get(text.topic.id, ())]
        yield f"page {text.topic.id}", page


@pytest.mark.parametrize("name", SAMPLES)
def test_blocks_and_pages_read_easily(name: str, guides: Mapping[str, Made]) -> None:
    """An owner reads this in the rain, or in fear; grade 8 is the ceiling."""
    hard = {
        what: grade
        for what, lines in _texts(guides[name])
        if lines and (grade := _grade(" ".join(lines))) > HIGHEST
    }
    assert hard == {}


def test_blocks_that_no_sample_uses_read_easily(
    library: Library, guides: Mapping[str, Made]
) -> None:
    """Other units' blocks are held to the same."""
    used = {one.block.id for made in guides.values() for one in made.selection.chosen}
    hard = {}
    for block in library.blocks.values():
        lines = prose(without_jinja(expanded(library, block.body)))
        if block.id in used or block.mandated or not lines:
            continue
        grade = _grade(" ".join(lines))
        if grade > HIGHEST:
            hard[block.id] = grade
    assert hard == {}


def test_sentences_are_short(guides: Mapping[str, Made]) -> None:
    """Mostly at most 20 words, and never a sentence that needs a second breath."""
    sentences = {
        sentence
        for made in guides.values()
        for what, lines in _texts(made)
        if not what.startswith("page ")
        for line in lines
        for sentence in re.split(r"(?<=[.!?:;])\s", line)
    }
    assert len(sentences) > 1000
    assert [s for s in sentences if len(s.split()) > LONGEST] == []
    short = sum(len(sentence.split()) <= LONG for sentence in sentences)
    assert short / len(sentences) >= MOSTLY


def test_sentences_between_full_stops_are_short(
    library: Library, guides: Mapping[str, Made]
) -> None:
    """Also counted across colons: below 25 words, in every guide and every block."""
    texts = {
        (what, line)
        for made in guides.values()
        for what, lines in _texts(made)
        for line in lines
    }
    texts |= {
        (block.id, line)
        for block in library.blocks.values()
        if not block.mandated
        for line in prose(without_jinja(expanded(library, block.body)))
    }
    long = {
        (what, sentence)
        for what, line in texts
        for sentence in re.split(r"(?<=[.!?])\s", line)
        if len(sentence.split()) > LONGEST
    }
    assert long == set()


@pytest.mark.parametrize("name", SAMPLES)
def test_topics_are_short_winded(name: str, guides: Mapping[str, Made]) -> None:
    """At most 14 words a sentence, on average, on every page."""
    averages = {}
    for what, lines in _texts(guides[name]):
        sentences = [s for line in lines for s in re.split(r"(?<=[.!?])\s", line)]
        if what.startswith("page ") and len(sentences) >= FEW:
            averages[what] = sum(len(s.split()) for s in sentences) / len(sentences)
    assert averages
    assert {what for what, words in averages.items() if words > AVERAGE} == set()


def test_steps_of_the_journeys_are_short(guides: Mapping[str, Made]) -> None:
    """A step is read standing, with one hand on the unit."""
    long = {
        step.markdown
        for made in guides.values()
        for steps in made.manual.steps.values()
        for step in steps
        if len(re.sub(r"<[^>]+>", "", step.markdown).split()) > LONGEST
    }
    assert long == set()


def test_the_measure_is_the_published_one() -> None:
    """0.39 x 6 words + 11.8 x 1 syllable - 15.59 = -1.45, by hand."""
    assert _grade("The cat sat on the mat.") == pytest.approx(-1.45, abs=0.06)


def test_hard_text_is_found() -> None:
    """A sentence from an engineer's desk lies above the ceiling."""
    text = (
        "Subsequent to disconnection of the electrical supply, verification of "
        "residual pressurization within the appliance is recommended."
    )
    assert _grade(text) > HIGHEST
