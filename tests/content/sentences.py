"""The sentences of the library as written, each with the text that it stands in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from hatchleaf.blocks.model import Block, Library, Worded

TITLE: Final = re.compile(r'^(?:!!!|\?\?\?) (\w+) "(.*)"$')
MARK: Final = re.compile(r"^(?:\d+\.|[-*]) ")
LINK: Final = re.compile(r"\[([^\]]*)\]\([^)]*\)")
TAG: Final = re.compile(r"\{%.*?%\}", re.DOTALL)
CALL: Final = re.compile(r"""\{\{\s*shared\(\s*["']([\w-]+)["']\s*\)\s*\}\}""")


@dataclass(frozen=True)
class Sentence:
    """One sentence of a block."""

    block: str
    where: str
    """``body``, ``title``, ``do.arrive``, ``every``, ``show``, ``normal``, ``sticker``."""
    text: str

    @property
    def alike(self) -> str:
        """The same for sentences that differ in case, space, marks and Jinja's form."""
        said = re.sub(r"\{\{\s*(.*?)\s*\}\}", r"{{\1}}", self.text)
        said = re.sub(r"[\s-]+", " ", said.replace("**", "").replace("`", ""))
        return said.strip(" .!?:;,").casefold()

    @property
    def words(self) -> int:
        """How many words it has; a value counts as one."""
        return len(re.sub(r"\{\{.*?\}\}", "value", self.alike).split())


def sentences_of(block: Block) -> Iterator[Sentence]:
    """Yield every sentence of *block*: its text, and the texts of its front matter."""
    yield from sentences_in(block.id, "body", block.body)
    for where, text in front_texts(block):
        yield from sentences_in(block.id, where, text)


def sentences_in(name: str, where: str, text: str) -> Iterator[Sentence]:
    """Yield the sentences of *text*; table rows and headings are none."""
    for line in TAG.sub("", text).splitlines():
        bare = line.strip()
        if not bare or bare.startswith(("|", "#")):
            continue
        title = TITLE.match(bare)
        bare = title[2] if title else MARK.sub("", bare)
        bare = CALL.sub("", LINK.sub(r"\1", bare))
        for one in re.split(r"(?<=[.!?])\s+", bare.strip()):
            if one.strip(" .!?:;,"):
                yield Sentence(name, "title" if title else where, one.strip())


def front_texts(block: Block) -> Iterator[tuple[str, str]]:
    """Yield the worded texts of a block's front matter, with where they stand."""
    if block.normal:
        yield "normal", block.normal.text.text
    if block.sticker:
        label = block.sticker
        lines: tuple[Worded | None, ...] = (label.line, label.fact, label.extra)
        yield from (("sticker", line.text) for line in lines if line)
    yield from (("show", point.text.text) for point in block.show)
    yield from ((f"do.{step.journey}", step.step.text) for step in block.steps)
    yield from (("every", care.task.text) for care in block.care)


def expanded(library: Library, text: str) -> str:
    """Return *text* with the shared texts that it calls for set into it, as written."""

    def called(found: re.Match[str]) -> str:
        name = found[1]
        if name in library.shared:
            return library.shared[name].text
        body = library.blocks[name].body.strip("\n")
        return CALL.sub(called, body)

    made = []
    for line in text.split("\n"):
        indent = line[: len(line) - len(line.lstrip())]
        made.append(CALL.sub(called, line).replace("\n", f"\n{indent}"))
    return "\n".join(made)


def without_jinja(text: str) -> str:
    """Return *text* as a unit might show it: every value is a word, every `if` is met."""
    filled = re.sub(r"\{\{.*?\}\}", "it", TAG.sub("", text))
    return re.sub(r"^ +$", "", filled, flags=re.MULTILINE)
