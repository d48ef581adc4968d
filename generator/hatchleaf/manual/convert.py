"""
Markdown to an HTML fragment, once for every output.

Our own forms come out here: boxes with signal words, numbered steps, troubles
that open in place, tables in a box of their own, numbers that lead to their working.
"""

from __future__ import annotations

import html
import re
from dataclasses import dataclass
from functools import cache
from typing import Final
from xml.etree import ElementTree

import markdown
from markdown.extensions import Extension
from markdown.extensions.toc import slugify
from markdown.treeprocessors import Treeprocessor

from hatchleaf.drawings.signs import ALERT_PATH
from hatchleaf.manual.model import Heading

CONVERTER: Final = "3"
"""Goes up whenever the same text converts to other HTML: part of the cache's key."""

SIGNALS: Final = ("danger", "warning", "caution", "notice")
_FOR_PEOPLE: Final = ("danger", "warning", "caution")
"""Signal words with the safety alert symbol (ANSI Z535.6): people can be hurt."""


@dataclass(frozen=True)
class Fragment:
    """One converted text: HTML with symbolic links, its headings, its plain text."""

    html: str
    headings: tuple[Heading, ...]
    text: str


_ENTITY: Final = re.compile(r"&#(\d{2,6});")


def convert(text: str, prefix: str) -> Fragment:
    """
    Return the fragment of *text*.

    Args:
        text: Markdown of a block, its values already escaped.
        prefix: Put before every id, so that ids are unique in the whole manual.
    """
    converter = _converter()
    converter.reset()
    made = _ENTITY.sub(_character, converter.convert(text))
    made, headings = _with_ids(made, prefix)
    return Fragment(made, headings, plain_text(made))


def _character(found: re.Match[str]) -> str:
    """Return the character of an entity that Markdown can no longer misread."""
    character = chr(int(found[1]))
    return (
        found[0] if character in "<>&\"'" or not character.isprintable() else character
    )


def plain_text(fragment: str) -> str:
    """Return what a reader sees of an HTML fragment, in one line."""
    bare = re.sub(r"<svg.*?</svg>|<[^>]+>", " ", fragment, flags=re.DOTALL)
    return re.sub(r"\s+", " ", html.unescape(bare)).strip()


def _with_ids(made: str, prefix: str) -> tuple[str, tuple[Heading, ...]]:
    # On the finished HTML: in the converter's tree, escaped characters are stashed
    # away and would be missing from the id.
    headings: list[Heading] = []

    def identify(match: re.Match[str]) -> str:
        level, inner = match.groups()
        words = plain_text(inner)
        wanted = f"{prefix}-{slugify(words, '-')}"
        used = {heading.id for heading in headings}
        named = next(
            name
            for name in (wanted, *(f"{wanted}-{n}" for n in range(2, len(used) + 3)))
            if name not in used
        )
        headings.append(Heading(named, words, int(level)))
        return f'<h{level} id="{named}">{inner}</h{level}>'

    shaped = re.sub(r"<h([1-6])>(.*?)</h\1>", identify, made, flags=re.DOTALL)
    return shaped, tuple(headings)


_PLAIN_LINE: Final = re.compile(
    r"[A-Za-z](?:[A-Za-z0-9 ,.;:()/%'\"?-]|&#[0-9]+;)*[A-Za-z0-9.,)?]"
)
"""A line that Markdown gives back as it is; most steps and tiles are such lines."""


def convert_line(text: str) -> str:
    """Return the HTML of one line of *text*, without a paragraph around it."""
    line = text.replace("\n", " ")
    if _PLAIN_LINE.fullmatch(line):
        return _ENTITY.sub(_character, line)
    made = convert(line, "line").html
    return re.sub(r"^<p>(.*)</p>$", r"\1", made, flags=re.DOTALL)


_NOT_IN_BLOCKS: Final = (
    "reference",
    "image_link",
    "image_reference",
    "short_reference",
    "short_image_ref",
    "autolink",
    "automail",
    "linebreak",
)
"""Marks that blocks may not use: each is looked for in every text."""


@cache
def _converter() -> markdown.Markdown:
    made = markdown.Markdown(
        extensions=["tables", "admonition", "pymdownx.details", "sane_lists", _Forms()],
        output_format="html",
    )
    for name in _NOT_IN_BLOCKS:
        made.inlinePatterns.deregister(name)
    return made


class _Forms(Extension):
    def extendMarkdown(self, md: markdown.Markdown) -> None:  # noqa: N802
        # After inline patterns, so that links and text are in the tree.
        md.treeprocessors.register(_Shape(md), "hatchleaf", 5)


class _Shape(Treeprocessor):
    def run(self, root: ElementTree.Element) -> None:
        """Give our own classes and ids to the finished tree."""
        for parent in list(root.iter()):
            for index, child in enumerate(list(parent)):
                if child.tag == "table":
                    _box_table(parent, index, child)
        for element in root.iter():
            classes = (element.get("class") or "").split()
            if "admonition" in classes:
                _box(element, classes)
            elif element.tag == "details":
                element.set("class", "trouble")
                element.attrib.pop("open", None)
            elif element.tag == "ol":
                element.set("class", "steps")
            elif element.tag == "a" and "#fact-" in element.get("href", ""):
                element.set("class", "num")


def _box_table(
    parent: ElementTree.Element, index: int, table: ElementTree.Element
) -> None:
    around = ElementTree.Element("div", {"class": "table", "tabindex": "0"})
    around.tail, table.tail = table.tail, None
    parent.remove(table)
    around.append(table)
    parent.insert(index, around)


def _box(element: ElementTree.Element, classes: list[str]) -> None:
    signal = next((word for word in classes if word in SIGNALS), "notice")
    element.set("class", f"box {signal}")
    element.set("role", "note")
    title = element.find("p[@class='admonition-title']")
    head = ElementTree.Element("p", {"class": "signal"})
    if signal in _FOR_PEOPLE:
        symbol = ElementTree.SubElement(
            head,
            "svg",
            {"class": "alert", "viewBox": "0 0 24 24", "aria-hidden": "true"},
        )
        ElementTree.SubElement(
            symbol, "path", {"d": ALERT_PATH, "fill-rule": "evenodd"}
        )
        symbol.tail = signal.upper()
    else:
        head.text = signal.upper()
    if title is not None:
        plain = "".join(title.itertext()).strip().casefold()
        if plain == signal:
            element.remove(title)
        else:
            title.set("class", "hazard")
    element.insert(0, head)
