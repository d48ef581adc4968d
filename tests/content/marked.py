"""Words that blocks mark, and where a guide says one that no block in it allows."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from typing import Final

from hatchleaf.blocks.model import Block, Library
from hatchleaf.manual.make import Made

BETWEEN: Final = r"[\s-]+"


@cache
def pattern(word: str) -> re.Pattern[str]:
    """Return what finds *word*: in capitals, as a plural, with hyphens or spaces."""
    pieces = [re.escape(piece) for piece in re.split(r"[\s-]+", word.strip())]
    return re.compile(rf"\b{BETWEEN.join(pieces)}(?:e?s)?\b", re.IGNORECASE)


def marked(blocks: Iterable[Block]) -> dict[str, set[str]]:
    """Return each marked word with the blocks that allow it."""
    found: dict[str, set[str]] = {}
    for block in blocks:
        for word in block.words:
            found.setdefault(word.casefold(), set()).add(block.id)
    return found


def said_without_right(made: Made) -> Iterator[tuple[str, str, str]]:
    """
    Yield ``(word, where, what stands there)`` for words that no chosen block marks.

    General hazards are on every unit and may name what is brought along.
    """
    inside = {one.block.id for one in made.selection.chosen}
    forbidden = [
        word
        for word, by in marked(made.manual.library.blocks.values()).items()
        if not by & inside
    ]
    texts = list(texts_of(made))
    for word in forbidden:
        for where, text in texts:
            found = pattern(word).search(text)
            if found:
                around = text[max(0, found.start() - 40) : found.end() + 40]
                yield word, where, around


def own_texts(library: Library, block_id: str) -> Iterator[str]:
    """Yield what a block itself says, as written, and what it calls for."""
    block = library.blocks[block_id]
    yield block.body
    yield library.topics[block.topic].title if block.topic in library.topics else ""
    yield from block.ask
    yield from (step.step.text for step in block.steps)
    yield from (library.shared[name].text for name in block.calls & set(library.shared))


def texts_of(made: Made) -> Iterator[tuple[str, str]]:
    """Yield all that a guide says, with where, but for the general hazards."""
    blocks = made.manual.library.blocks
    for text in made.manual.topics:
        page = text.topic.id
        yield page, f"{text.topic.title}. {text.where}"
        for part in text.parts:
            if not blocks[part.block].always:
                yield part.id, part.markdown
        if text.normal:
            yield page, text.normal.markdown
        yield from ((page, f"{t.says} {t.value} {t.note}") for t in text.tiles)
        for label in text.stickers:
            yield page, f"{label.line} {label.fact} {label.extra}"
        yield from ((page, words) for words in text.ask)
    for steps in made.manual.steps.values():
        yield from ((step.block, step.markdown) for step in steps)
    for fact in made.facts.values():
        yield fact.name, f"{fact.item_words}. {fact.basis}"
    yield from ((care.key, care.markdown) for care in made.manual.care)
