"""Which fields of a unit's file the library and the facts use."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from hatchleaf.blocks.conditions import FACT_PREFIX
from hatchleaf.blocks.model import Block, Library
from hatchleaf.facts.names import READS

_EXPRESSION = re.compile(r"\{[{%](.*?)[%}]\}", re.DOTALL)
_PATH = re.compile(r"\b[a-z_]+(?:\.[a-z_]+)+\b|\b[a-z_]+\b")


def used_fields(library: Library) -> set[str]:
    """Return every path that a block, a topic or a fact reads, and all above it."""
    used = {path for paths in READS.values() for path in paths}
    for topic in library.topics.values():
        for part in topic.parts:
            used |= {
                part.path,
                f"{part.path}.{part.by}",
                f"{part.path}.{part.place_field}",
            }
    used |= used_by_blocks(library)
    return used | {above for path in used for above in _above(path)}


def used_by_blocks(library: Library) -> set[str]:
    """Return every path that a block's condition or text reads."""
    return {
        path
        for block in library.blocks.values()
        for path in _of_block(block, called_by(block, library))
    }


def called_by(block: Block, library: Library) -> Iterator[str]:
    """Yield the shared texts that *block* calls for, as if they stood in it."""
    for name in block.calls:
        if name in library.shared:
            yield library.shared[name].text
        elif name in library.blocks:
            called = library.blocks[name]
            yield called.body
            yield from called_by(called, library)


def _above(path: str) -> Iterator[str]:
    keys = path.split(".")
    for end in range(1, len(keys)):
        yield ".".join(keys[:end])


def _of_block(block: Block, called: Iterable[str]) -> Iterator[str]:
    for line in block.when:
        if not line.path.startswith(FACT_PREFIX):
            yield line.path
    yield from block.needs
    if block.each:
        yield block.each
    yield from _stations(block)
    for text in (*_texts(block), *called):
        for expression in _EXPRESSION.findall(text):
            for path in _PATH.findall(expression):
                if path.startswith("it.") and block.each:
                    yield block.each + path.removeprefix("it")
                yield path
            # ``for tank in items(water.tanks)``: its fields are read by that name.
        for name, path in re.findall(r"for (\w+) in items\(([\w.]+)\)", text):
            for field in re.findall(rf"\b{name}\.(\w+)", text):
                yield f"{path}.{field}"


def _stations(block: Block) -> Iterator[str]:
    for step in block.steps:
        if step.at:
            own = block.each and step.at.startswith("it.")
            yield block.each + step.at.removeprefix("it") if own else step.at


def _texts(block: Block) -> Iterator[str]:
    yield block.body
    if block.normal:
        yield block.normal.text.text
    for tile in block.tiles:
        if tile.value:
            yield tile.value.text
    if block.sticker:
        for worded in (block.sticker.line, block.sticker.fact, block.sticker.extra):
            if worded:
                yield worded.text
    for point in block.show:
        yield point.text.text
    for step in block.steps:
        yield step.step.text
    for care in block.care:
        yield care.task.text
