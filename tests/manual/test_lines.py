"""Why: most steps are plain lines; the short way must print what Markdown prints."""

from __future__ import annotations

import html
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.manual import convert


def by_markdown(line: str) -> str:
    """Return the line as the converter itself gives it."""
    made = convert.convert(line, "line").html
    return re.sub(r"^<p>(.*)</p>$", r"\1", made, flags=re.DOTALL)


PIECES = st.sampled_from(
    [*"abcXYZ019 ,.;:()/%'\"?-", "&#42;", "&#60;", "&#38;", "a. ", "1. ", "- ", "  "]
)


@given(st.lists(PIECES, min_size=1, max_size=40).map("".join))
def test_the_short_way_prints_the_same(line: str) -> None:
    """Whatever takes it, the page reads as if Markdown had converted it."""
    if convert._PLAIN_LINE.fullmatch(line):
        assert convert.convert_line(line) == by_markdown(line)


@pytest.mark.parametrize(
    "line",
    [
        "Turn the handle at the water inlet to CITY.",
        "Close the valve (road side&#44; low down), then wait 10 minutes.",
        'Is it "OFF"? Don\'t go on.',
    ],
)
def test_usual_steps_take_the_short_way(line: str) -> None:
    """Else it would save nothing."""
    assert convert._PLAIN_LINE.fullmatch(line)
    assert convert.convert_line(line) == by_markdown(line) == html.unescape(line)


@pytest.mark.parametrize(
    "line", ["*a*", "a *b* c", "[a](topic:210)", "a <b> c", "a & b"]
)
def test_what_markdown_reads_goes_through_it(line: str) -> None:
    """Marks, links and HTML never slip past the converter."""
    assert not convert._PLAIN_LINE.fullmatch(line)
