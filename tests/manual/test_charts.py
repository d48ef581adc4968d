"""The chart of what may run together: a drawing that says the same as the table."""

from __future__ import annotations

import re
from collections.abc import Mapping
from xml.etree import ElementTree

import pytest

from facts.fitted import facts_of_everything
from facts.samples import changed, facts, unit
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.charts import together_chart
from hatchleaf.manual.convert import convert
from hatchleaf.manual.make import Made

SAMPLES = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")


def _drawing(some: Facts) -> ElementTree.Element:
    found = re.search(r"<svg.*</svg>", together_chart(some).markdown, re.DOTALL)
    assert found
    return ElementTree.fromstring(found[0])  # noqa: S314  # our own drawing


def _squares(drawing: ElementTree.Element, count: int) -> list[str]:
    """Return the words in the squares: one for each thing and each pair."""
    groups = [group.find("text") for group in drawing.findall("g")]
    words = [text.text or "" for text in groups if text is not None]
    return words[: count * (count + 1) // 2]


@pytest.mark.parametrize("name", SAMPLES)
def test_the_chart_says_what_the_facts_say(name: str) -> None:
    """One square for each thing and each pair, with the word of its fact."""
    rows = facts(name).of("shore.needs")
    count = sum(" + " not in row.item for row in rows)
    said = {"too much": "no", "not known": "?"}
    wanted = [said.get(str(row.value), str(row.value)[:-2]) for row in rows]

    assert sorted(_squares(_drawing(facts(name)), count)) == sorted(wanted)


def test_it_reads_without_color_and_by_night() -> None:
    """Black on white, white on black: lines take the color of the text."""
    drawn = together_chart(facts("heron-a")).markdown
    paints = set(re.findall(r'(?:fill|stroke)="([^"]+)"', drawn))

    assert {paint for paint in paints if not paint.startswith("url(#")} == {
        "currentColor",
        "none",
    }
    assert "style=" not in drawn
    assert "<script" not in drawn


def test_each_answer_has_a_hatch_of_its_own() -> None:
    """The squares can be told apart without reading their words."""
    drawn = together_chart(facts_of_everything()).markdown
    hatches = re.findall(r'<pattern id="([^"]+)".*?<path d="([^"]+)"', drawn)
    used = set(re.findall(r"url\(#([^)]+)\)", drawn))

    assert {name for name, _ in hatches} == used
    assert len({path for _, path in hatches}) == len(hatches) >= 3


@pytest.mark.parametrize("name", SAMPLES)
def test_it_has_a_title_and_the_same_in_words(name: str) -> None:
    """Read aloud, it says every pair with its answer."""
    drawing = _drawing(facts(name))
    named = (drawing.get("aria-labelledby") or "").split()
    texts = {one.get("id"): one.text or "" for one in (*drawing,) if one.get("id")}

    assert drawing.get("role") == "img"
    assert len(named) == 2
    assert all(texts[one] for one in named)
    for row in facts(name).of("shore.needs"):
        words = row.item_words.replace(" + ", " and ")
        assert f"{words}: {row.value}." in texts[named[1]]


def test_markdown_leaves_it_alone() -> None:
    """The drawing comes through whole, a block of its own."""
    shown = together_chart(facts("heron-a"))
    made = convert(f"Before.\n\n{shown.markdown}\n\nAfter.", "one").html

    assert shown.markdown.strip() in made
    assert "<p><figure" not in made


def test_a_name_of_the_unit_s_file_is_never_markup() -> None:
    """Names of loads are what somebody typed."""
    spec = changed(
        unit("heron-a"), {"ac.loads.microwave.name": 'oven <b> & "grill" </svg>'}
    )
    drawn = together_chart(work_out(spec)).markdown

    assert drawn.count("</svg>") == 1
    assert "<b>" not in drawn


def test_it_stands_once_on_its_page(guides: Mapping[str, Made]) -> None:
    """And its ids stand nowhere else in the guide."""
    for made in guides.values():
        pages = [page for page in made.pages.pages if "chart-together" in page.body]
        assert [page.id for page in pages] == ["power-budget"]
        body = pages[0].body
        ids = re.findall(r'id="(chart-together[^"]*)"', body)
        assert len(ids) == len(set(ids)) >= 3
