"""How long one can stay: table, chart and trip say what the facts say, and no more."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Mapping
from xml.etree import ElementTree

import pytest

from facts.samples import NAMES, changed, facts, unit, with_
from hatchleaf.blocks.choose import choose
from hatchleaf.blocks.model import Library
from hatchleaf.blocks.text import Shown
from hatchleaf.facts.endurance import ENDS, FIRST, NIGHTS, PEOPLE, exact_days, item
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual import stay
from hatchleaf.manual.assemble import assemble
from hatchleaf.manual.convert import convert
from hatchleaf.manual.fact_words import fact_link
from hatchleaf.manual.make import Made


def _read_it(path: str) -> Shown:
    return Shown(f"read {path}", f"read {path}")


def _table(some: Facts) -> str:
    return stay.table(some, fact_link, _read_it).markdown


def _svg(some: Facts) -> str:
    found = re.search(r"<svg.*</svg>", stay.chart(some).markdown, re.DOTALL)
    assert found
    return found[0]


@pytest.mark.parametrize("name", NAMES)
def test_every_fact_is_in_the_table_and_leads_to_its_working(name: str) -> None:
    """Each number is a link of its own to the line that tells how it came about."""
    links = {
        to: text
        for text, to in re.findall(r"\[([^\]]+)\]\(([^)]+)\)", _table(facts(name)))
    }
    wanted = {
        fact_link(fact.name): re.sub(r" days?$", "", fact.shown())
        for base in stay.BASES
        for fact in facts(name).of(base)
    }
    assert {to: html.unescape(text) for to, text in links.items()} == wanted


@pytest.mark.parametrize("name", NAMES)
def test_the_table_has_a_row_for_all_that_is_fitted_and_no_other(name: str) -> None:
    """Two nights, each with what is fitted and what ends first."""
    rows = re.findall(r"^\| ([A-Z][A-Za-z ]+) \|", _table(facts(name)), re.MULTILINE)
    fitted = [
        end.words[:1].upper() + end.words[1:]
        for end in ENDS
        if facts(name).of(end.base)
    ]
    assert rows == [*fitted, "Ends first"] * len(NIGHTS)


def test_what_is_not_known_says_where_to_read_it() -> None:
    """No number is left out in silence."""
    lines = _table(with_("heron-a", water__tanks="unknown")).splitlines()
    fresh = [line for line in lines if line.startswith("| Fresh water")]
    first = [line for line in lines if line.startswith("| Ends first")]
    assert len(fresh) == len(first) == len(NIGHTS)
    assert all("read water.tanks" in line for line in (*fresh, *first))


def test_brochure_figures_are_named_below_the_table() -> None:
    """A row that rests on one is marked, once."""
    assert "(brochure)</span>: fresh water, gray tank, black tank." in _table(
        facts("heron-a")
    )
    assert "brochure" not in _table(facts("heron-c"))


@pytest.mark.parametrize("name", NAMES)
def test_the_chart_says_every_number_in_words(name: str) -> None:
    """Read aloud it names each thing, for whom or in which night, and its days."""
    drawing = ElementTree.fromstring(_svg(facts(name)))  # noqa: S314  # our own
    named = (drawing.get("aria-labelledby") or "").split()
    texts = {one.get("id"): one.text or "" for one in drawing if one.get("id")}
    assert drawing.get("role") == "img"
    assert len(named) == 2
    assert all(texts[one] for one in named)
    for end in ENDS:
        for people in PEOPLE:
            for night in NIGHTS:
                fact = facts(name).get(f"{end.base}[{item(people, night)}]")
                if fact:
                    said = texts[named[1]].casefold()
                    wanted = [
                        f"{end.words}, {one}: {fact.shown()}.".casefold()
                        for one in item(people, night).split(", ")
                    ]
                    assert any(one in said for one in wanted), fact.name


@pytest.mark.parametrize("name", NAMES)
def test_each_bar_is_as_long_as_its_days(name: str) -> None:
    """Fourteen units of the drawing a day, cut off and left open at 14 days."""
    drawn = _svg(facts(name))
    wide = {int(one) for one in re.findall(r"h-(\d+)", drawn)}
    exact = {
        round(min(exact_days(fact), 14) * 14)
        for base in stay.BASES[:-1]
        for fact in facts(name).of(base)
    }
    assert wide == exact
    longer = {
        fact.value
        for base in stay.BASES[:-1]
        for fact in facts(name).of(base)
        if exact_days(fact) > 14
    }
    assert len(re.findall(r"h-\d+v12h", drawn)) == len(longer)
    said = "without an end" in stay.chart(facts(name)).markdown
    assert said == bool(longer)


@pytest.mark.parametrize("name", NAMES)
def test_it_reads_without_color_and_by_night(name: str) -> None:
    """Lines take the color of the text; each thing has a hatch of its own."""
    drawn = _svg(facts(name))
    paints = set(re.findall(r'(?:fill|stroke)="([^"]+)"', drawn))
    assert {one for one in paints if not one.startswith("url(#")} == {
        "currentColor",
        "none",
    }
    assert "style=" not in drawn
    assert "<script" not in drawn
    hatches = re.findall(r'<pattern id="([^"]+)".*?<path d="([^"]+)"', drawn)
    assert set(re.findall(r"url\(#([^)]+)\)", drawn)) == {one for one, _ in hatches}
    assert len({path for _, path in hatches}) == len(hatches)
    # The caravan's water and waste are containers: its battery alone runs out.
    assert len(hatches) >= (1 if name == "heron-f" else 3)


def test_markdown_leaves_drawing_and_form_alone() -> None:
    """Both come through whole, and the form's title gets an id like any other."""
    chart, form = stay.chart(facts("heron-a")), stay.trip(facts("heron-a"))
    made = convert(f"A.\n\n{chart.markdown}\n\nB.\n\n{form.markdown}\n\nC.", "one")
    assert chart.markdown.strip().splitlines()[0] in made.html
    assert "<p><figure" not in made.html
    assert "<p><form" not in made.html
    assert [heading.text for heading in made.headings] == ["Your trip"]


@pytest.mark.parametrize("name", NAMES)
def test_the_trip_carries_the_facts_as_they_print(name: str) -> None:
    """So the script compares and picks, and no formula is written twice."""
    found = re.search(r'data-trip="([^"]*)"', stay.trip(facts(name)).markdown)
    assert found
    data = json.loads(html.unescape(found[1]))
    bases = [end.base for end in ENDS if facts(name).of(end.base)]
    assert [row[0].lower() for row in data["ends"]] == [
        end.words.lower() for end in ENDS if end.base in bases
    ]
    for key, night in zip(("summer", "frost"), NIGHTS, strict=True):
        for people in PEOPLE:
            assert data[key][str(people)] == [
                facts(name)[f"{base}[{item(people, night)}]"].shown()
                for base in (*bases, FIRST)
            ]


def test_a_unit_that_nothing_runs_out_on_has_no_trip() -> None:
    """A form with nothing to ask is none."""
    bare = with_(
        "heron-c", water__tanks="none", waste__tanks="none", dc__batteries="none"
    )
    assert stay.trip(bare).markdown == stay.chart(bare).markdown == ""


def test_gas_without_a_figure_is_said_to_be_left_out(library: Library) -> None:
    """A boiler's hours are nobody's usual figure: the page says what it leaves out."""
    spec = changed(unit("heron-a"), {"kitchen.cooktop": "unknown"})
    found = work_out(spec)
    made = assemble(
        library,
        spec,
        found,
        choose(library, spec, found),
        dealer_name="Two Herons",
        dealer_phone="555-0142",
    )
    text = next(one for one in made.topics if one.topic.id == "how-long")
    words = "\n".join(part.markdown for part in text.parts)
    assert "The gas is not counted here." in words
    assert "The same as a chart" not in words


def test_page_and_ids_stand_once(guides: Mapping[str, Made]) -> None:
    """One page has all three, on every sample, and home leads to it."""
    for made in guides.values():
        pages = [page for page in made.pages.pages if "chart-days" in page.body]
        assert [page.number for page in pages] == [5]
        body = pages[0].body
        assert body.count('class="trip"') == 1
        ids = re.findall(r'id="([^"]*)"', body)
        assert len(ids) == len(set(ids))
        assert 'href="topic:005"' in made.pages.by_number[0].body
