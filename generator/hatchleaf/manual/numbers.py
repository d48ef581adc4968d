"""How the numbers were worked out: every fact of the unit, on one page."""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape
from typing import Final

from hatchleaf.blocks.model import Library
from hatchleaf.facts.changed_parts import changed_parts
from hatchleaf.facts.model import COMMON_PRACTICE, Fact, Facts
from hatchleaf.facts.names import KNOWN
from hatchleaf.manual.model import Heading
from hatchleaf.manual.wording import slug

_GROUPS: Final = {
    "lp": "LP gas",
    "water": "Fresh water",
    "waste": "Waste",
    "battery": "Battery",
    "inverter": "Inverter",
    "solar": "Solar",
    "fuses": "Fuses",
    "generator": "Generator",
    "climate": "Heating and cooling",
    "shore": "Shore power",
    "weights": "Weights",
    "tires": "Tires",
    "leveling": "Leveling",
    "awnings": "Awning",
    "dates": "Dates",
}


def numbers_page(facts: Facts, library: Library) -> tuple[str, tuple[Heading, ...]]:
    """Return the HTML that lists all *facts* by system, and its headings."""
    made: list[str] = []
    headings: list[Heading] = []
    group = ""
    # Facts of one system stand together, whoever worked them out.
    by_system: dict[str, list[Fact]] = {}
    for fact in facts.values():
        by_system.setdefault(fact.base.split(".", 1)[0], []).append(fact)
    for of, fact in (
        (name, one) for name, all_of in by_system.items() for one in all_of
    ):
        if of != group:
            if group:
                made.append("</dl>")
            group = of
            title = _GROUPS.get(of, of.replace("_", " ").capitalize())
            headings.append(Heading(f"numbers-{slug(of)}", title, 2))
            made.append(f'<h2 id="numbers-{slug(of)}">{escape(title)}</h2>')
            made.append('<dl class="working">')
        made.append(_entry(fact, library.sources))
    if group:
        made.append("</dl>")
    return "\n".join(made), tuple(headings)


def _entry(fact: Fact, sources: Mapping[str, Mapping[str, str]]) -> str:
    # What a name says is written with its items and an example, for editors.
    label = re.sub(r" ?\[[^\]]*\]|: [^:]*$", "", KNOWN[fact.base])
    label = label[:1].upper() + label[1:]
    what = f"{label}: {fact.item_words}" if fact.item else label
    marks = "".join(
        f' <span class="{word}">({word})</span>'
        for word, on in (("typical", fact.typical), ("brochure", fact.brochure))
        if on
    )
    rows = dict.fromkeys(f"{_in_words(i.path)}: {i.text}" for i in fact.inputs)
    inputs = "".join(f"<li>{escape(row)}</li>" for row in rows)
    given = f'<ul class="inputs">{inputs}</ul>' if inputs else ""
    return (
        f'<dt id="fact-{slug(fact.name)}">{escape(what)}</dt>'
        f"<dd><p><b>{escape(fact.shown_with_other())}</b>{marks}</p>"
        f"<p>{escape(fact.basis)}</p>{given}{_if_changed(fact)}"
        f'<p class="source">{escape(_source(fact.source, sources))}</p></dd>'
    )


def _if_changed(fact: Fact) -> str:
    """Return the line that ends a number's life with the part it rests on."""
    parts = changed_parts(fact)
    if not parts:
        return ""
    named = " or the ".join(parts)
    return f'<p class="if-changed">Changed the {named}? This no longer holds.</p>'


def _in_words(path: str) -> str:
    """
    Return a path of the unit's file as words.

    >>> _in_words("lp.supply.cylinders[left].holds")
    'lp, supply, cylinders left, holds'
    """
    spaced = re.sub(r"\[([^\]]*)\]", r" \1", path).replace(".", ", ")
    return re.sub(r"[_-]", " ", spaced)


def _source(name: str, sources: Mapping[str, Mapping[str, str]]) -> str:
    known = sources.get(name)
    if name == COMMON_PRACTICE or known is None:
        return "Common practice, no source."
    return f"Source: {known['title']}"
