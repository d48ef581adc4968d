"""
Spec text is data: no text of a unit's file becomes markup, a link or a script.

Each hostile text is put where a block can put a value, converted, and read back: the
page shows the text to the letter and has just the elements that it has without it.
"""

from __future__ import annotations

import html
import re
from collections import Counter
from html.parser import HTMLParser
from typing import Final

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hatchleaf.blocks.text import fill
from hatchleaf.manual.convert import convert
from hatchleaf.problems import Place

HOSTILE: Final = (
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "<b>bold</b>",
    "</p><h1>Big</h1>",
    "<!-- hidden",
    "--> shown",
    "<svg onload=alert(1)>",
    "<a href='javascript:alert(1)'>x</a>",
    "&lt;b&gt;",
    "&amp;",
    "&#60;b&#62;",
    "*stars*",
    "**strong**",
    "_under_",
    "__strong__",
    "~~gone~~",
    "`code`",
    "``two`` ticks",
    "# heading",
    "## heading",
    "- item",
    "* item",
    "+ item",
    "1. item",
    "12) item",
    "> quote",
    ">> deeper",
    "    four spaces",
    "\ttab",
    "[text](https://example.com)",
    "![image](x.png)",
    "[text][1]",
    "[1]: https://x.y",
    "<https://example.com>",
    "<me@example.com>",
    "https://example.com",
    "www.example.com",
    "a | b | c",
    "| --- | --- |",
    "|",
    "---",
    "***",
    "===",
    "___",
    "!!! danger",
    '!!! warning "x"',
    "??? trouble",
    '??? trouble "x"',
    "{: .class #id }",
    "{:.x}",
    "{#id}",
    "\\*not\\*",
    "\\",
    "\\\\",
    "line one  ",
    "a  b",
    "{{ 7 * 7 }}",
    "{% if 1 %}x{% endif %}",
    "{# note #}",
    "{{ lp.__class__ }}",
    "{{",
    "}}",
    "{%",
    "$x$",
    "$$x$$",
    "\\(x\\)",
    "[[wiki]]",
    "[ ] task",
    "[x] task",
    "^sup^",
    "~sub~",
    "==mark==",
    "++key++",
    ":smile:",
    "(c)",
    "...",
    "--",
    "---",
    '"quoted"',
    "'single'",
    "a'b\"c",
    "<?php echo 1 ?>",
    "<![CDATA[x]]>",
    "<!DOCTYPE html>",
    "topic:210",
    "[x](topic:999)",
    "topic:090#fact-x",
    "javascript:alert(1)",
    "data:text/html,x",
    "%3Cscript%3E",
    "&#x3C;script&#x3E;",
    "&lt",
    "&copy",
    "&nbsp;",
    "\u202eright to left",
    "zero\u200bwidth",
    "nbsp\u00a0here",
    "é ü ñ ß",
    "漢字",
    "½ in",
    "°F",
    "5' 6\"",
    "A&B <Trailers>",
    "50% off",
    "#1 dealer",
    "@here",
    "*[HTML]: x",
    "[^1]",
    "[^1]: note",
    "Term\n: definition",
    "a\\\nb",
    "wzxhzdk:0",
    "klzzwxh:0001",
    "STXamp",
    "<details open>",
    "<style>*{}</style>",
    "<iframe src=//x>",
    "<form action=x>",
    "onclick=x",
    "style=color:red",
    "<br>",
    "<hr/>",
)
PLACES: Final = {
    "a paragraph": "Before {{ name }} after.",
    "a paragraph's start": "{{ name }} after.",
    "a line of a paragraph": "Before\n{{ name }}\nafter.",
    "a step": "1. Turn {{ name }} off.\n2. Wait.",
    "a step's start": "1. {{ name }}\n2. Wait.",
    "a heading": "## The {{ name }} valve",
    "a table": "| a | b |\n| --- | --- |\n| {{ name }} | c |",
    "a box": '!!! warning "Mind {{ name }}"\n    Text {{ name }} here.',
    "a trouble": '??? trouble "No {{ name }}"\n    Look at {{ name }}.',
    "emphasis": "This is **{{ name }}** here.",
    "a link's words": "[the {{ name }}](topic:210)",
}


class _Reader(HTMLParser):
    """Counts elements and attributes, and gathers the text."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.seen: Counter[str] = Counter()
        self.words: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen[tag] += 1
        for key, value in attrs:
            self.seen[f"{tag}[{key}]"] += 1
            if key == "href":
                self.seen[f"href={value}"] += 1

    def handle_data(self, data: str) -> None:
        self.words.append(data)

    def handle_comment(self, data: str) -> None:  # noqa: ARG002
        self.seen["comment"] += 1

    def handle_decl(self, decl: str) -> None:  # noqa: ARG002
        self.seen["declaration"] += 1


def _read(template: str, value: str) -> _Reader:
    made = convert(fill(template, Place("x.md"), {"name": value}, "markdown"), "x")
    reader = _Reader()
    reader.feed(made.html)
    reader.close()
    return reader


def _squeezed(text: str) -> str:
    return re.sub(r"[ \t\n\r]+", " ", text)


def _holds(template: str, value: str) -> None:
    plain, hostile = _read(template, "plain"), _read(template, value)
    assert hostile.seen == plain.seen
    assert _squeezed(value).strip(" ") in _squeezed("".join(hostile.words))


def test_there_are_enough() -> None:
    """A hundred and more texts, each another way out of Markdown."""
    assert len(set(HOSTILE)) >= 100


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("value", sorted(set(HOSTILE)))
def test_a_hostile_text_is_printed(value: str, place: str) -> None:
    """It stands on the page as written, and adds no element."""
    _holds(PLACES[place], value)


@settings(max_examples=300, deadline=None)
@given(
    value=st.text(
        st.characters(blacklist_categories=("Cs", "Cc", "Cn")), min_size=1, max_size=40
    ).filter(str.strip),
    place=st.sampled_from(sorted(PLACES)),
)
def test_any_text_is_printed(value: str, place: str) -> None:
    """What nobody thought of, too."""
    _holds(PLACES[place], value)


def test_plain_text_is_left_as_it_is() -> None:
    """A label is typeset from data, where an entity would be printed as such."""
    made = fill("Turn {{ name }} off", Place("x.md"), {"name": "A&B *x*"}, "plain")
    assert made == "Turn A&B *x* off"
    assert html.unescape(made) == made
