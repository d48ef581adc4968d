"""
No sentence stands twice in the library: what many texts need is one text that all use.

A sentence that stands twice is mended once, and the other one goes on saying what was
wrong.  Two markets, two kinds of a part are no excuse: there is `shared`.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from typing import Final

import pytest

from content.sentences import CALL, Sentence, front_texts, sentences_in, sentences_of
from hatchleaf.blocks.model import Library

FEWEST_WORDS: Final = 4
"""Shorter ones are the words of a step ("Open the valve."): a call would be longer."""


def _all(library: Library) -> Iterator[Sentence]:
    for block in library.blocks.values():
        # What the law words stands as the law words it.
        if not block.mandated:
            yield from sentences_of(block)
    for name, text in library.shared.items():
        yield from sentences_in(name, "shared.yml", text.text)


def _twice(sentences: Iterable[Sentence]) -> dict[str, list[str]]:
    where: defaultdict[str, list[Sentence]] = defaultdict(list)
    for one in sentences:
        if one.words >= FEWEST_WORDS:
            where[one.alike].append(one)
    return {
        found[0].text: [f"{one.block}: {one.where}" for one in found]
        for found in where.values()
        if len(found) > 1
    }


def test_no_sentence_stands_twice(library: Library) -> None:
    """In bodies, titles, steps of journeys, care, points, normal positions, labels."""
    assert len(library.blocks) > 400
    assert _twice(_all(library)) == {}


def test_what_is_shared_is_called_for(library: Library) -> None:
    """Twice or more for a single sentence; a longer text nobody calls is lost."""
    calls: defaultdict[str, int] = defaultdict(int)
    for block in library.blocks.values():
        texts = [block.body, *(text for _, text in front_texts(block))]
        for text in texts:
            for name in CALL.findall(text):
                calls[name] += 1
    blocks = {block.id for block in library.blocks.values() if block.shared}
    assert set(calls) <= blocks | set(library.shared)
    assert [name for name in blocks if not calls[name]] == []
    assert [name for name in library.shared if calls[name] < 2] == []


def test_a_single_sentence_is_one(library: Library) -> None:
    """One or two sentences in a line; more than that is a block with topic: none."""
    long = [
        name
        for name, text in library.shared.items()
        if len(list(sentences_in(name, "", text.text))) > 2 or "\n" in text.text
    ]
    assert long == []


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Open the park tap slowly.", "open the **park** tap  slowly!"),
        ("It holds {{fact('x.y')}} of water.", "It holds {{ fact('x.y') }} of water."),
        ("1. Open the park tap.", "Wait.\nOpen the park-tap."),
        ('!!! notice "Open the park tap"', "Open the park tap."),
        ("See [the pump page](topic:230) for that.", "See the pump page for that."),
    ],
)
def test_the_same_in_another_dress_is_found(one: str, other: str) -> None:
    """Case, space, emphasis, hyphens, links and the form of a value hide nothing."""
    said = [*sentences_in("a", "body", one), *sentences_in("b", "body", other)]
    assert len(_twice(said)) == 1


def test_another_value_is_another_sentence() -> None:
    """What differs in its number or place is not the same sentence."""
    said = [
        *sentences_in("a", "body", 'It holds {{ fact("a.b") }} of water.'),
        *sentences_in("b", "body", 'It holds {{ fact("a.c") }} of water.'),
    ]
    assert _twice(said) == {}


def test_a_call_is_no_sentence() -> None:
    """Ten texts may call for the same one."""
    line = '1. {{ shared("turn-breaker-at-post-off") }}'
    assert list(sentences_in("a", "body", line)) == []
    assert re.fullmatch(CALL, line.removeprefix("1. "))
