"""How the numbers were worked out: every fact of the unit, on one page."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from html import escape
from typing import Final

from hatchleaf.blocks.model import Library
from hatchleaf.facts.changed_parts import changed_parts
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.facts.model import COMMON_PRACTICE, Fact, Facts
from hatchleaf.facts.names import KNOWN
from hatchleaf.facts.sheet import capital
from hatchleaf.manual.fact_words import slug
from hatchleaf.manual.model import Heading

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
    "body": "Height",
    "weights": "Weights",
    "tires": "Tires",
    "leveling": "Leveling",
    "awnings": "Awning",
    "dates": "Dates",
    "endurance": "What runs out first",
}


def numbers_page(
    facts: Facts, library: Library, market: str
) -> tuple[str, tuple[Heading, ...]]:
    """
    Return the HTML that lists all *facts* by system, and its headings.

    What facts of one name share, such as inputs and source, is said once for all.
    """
    # Facts of one system stand together, whoever worked them out.
    by_system: dict[str, dict[str, list[Fact]]] = {}
    for fact in facts.values():
        system = by_system.setdefault(fact.base.split(".", 1)[0], {})
        system.setdefault(fact.base, []).append(fact)
    headings = tuple(
        Heading(f"numbers-{slug(name)}", in_words_of(market, _title(name)), 2)
        for name in by_system
    )
    made = ['<ul class="jump">']
    made += [
        f'<li><a href="#{heading.id}">{escape(heading.text)}</a></li>'
        for heading in headings
    ]
    made.append("</ul>")
    for heading, bases in zip(headings, by_system.values(), strict=True):
        # Open for who has no scripts: a link into a fold that is shut may fail there.
        title = f'<h2 id="{heading.id}">{escape(heading.text)}</h2>'
        made.append(f'<details class="fold" open><summary>{title}</summary>')
        made.extend(
            _of_base(group, library.sources, market) for group in bases.values()
        )
        made.append("</details>")
    return "\n".join(made), headings


def _title(system: str) -> str:
    return _GROUPS.get(system, system.replace("_", " ").capitalize())


def _of_base(
    group: list[Fact], sources: Mapping[str, Mapping[str, str]], market: str
) -> str:
    # What a name says is written with its items and an example, for editors.
    label = re.sub(r" ?\[[^\]]*\]|: [^:]*$| \(typical\)", "", KNOWN[group[0].base])
    label = in_words_of(market, label)
    shared = set.intersection(*(set(_marks(fact)) for fact in group))
    head = f"{escape(capital(label), quote=False)}{_marked(sorted(shared))}"
    alike: dict[tuple[object, ...], list[Fact]] = {}
    for fact in group:
        key = (fact.shown_with_other(), fact.basis, _marks(fact))
        alike.setdefault(key, []).append(fact)
    entries = "".join(_entry(facts, shared) for facts in alike.values())
    inputs = dict.fromkeys(
        f"{in_words_of(market, _in_words(given.path))}: {given.text}"
        for f in group
        for given in f.inputs
    )
    given = f"From: {'; '.join(inputs)}." if inputs else ""
    changed = " ".join(dict.fromkeys(filter(None, map(_if_changed, group))))
    changed = in_words_of(market, changed)
    named = " ".join(dict.fromkeys(_source(f.source, sources) for f in group))
    said = escape(f"{changed} {named}".strip(), quote=False)
    return (
        f'<h3>{head}</h3><ul class="working">{entries}</ul>'
        f'<p class="source"><span class="given">{escape(given, quote=False)}</span> '
        f"{said}</p>"
    )


def _marks(fact: Fact) -> tuple[str, ...]:
    marks = (("brochure", fact.brochure), ("typical", fact.typical))
    return tuple(word for word, on in marks if on)


def _marked(words: Iterable[str]) -> str:
    return "".join(f' <span class="{word}">({word})</span>' for word in words)


def _entry(alike: list[Fact], said: set[str]) -> str:
    """Return the line of facts that differ in their items alone."""
    first, *others = alike
    items = escape(first.item_words, quote=False) + "".join(
        f'; <span id="fact-{slug(fact.name)}">{escape(fact.item_words, quote=False)}'
        "</span>"
        for fact in others
    )
    before = f"{items}: " if first.item else ""
    value = escape(first.shown_with_other(), quote=False)
    marks = _marked(word for word in _marks(first) if word not in said)
    basis = escape(first.basis, quote=False)
    return (
        f'<li id="fact-{slug(first.name)}">{before}<b>{value}</b>{marks}<br>'
        f"{basis}</li>"
    )


def _if_changed(fact: Fact) -> str:
    """Return the line that ends a number's life with the part it rests on."""
    parts = changed_parts(fact)
    if not parts:
        return ""
    return f"Changed the {' or the '.join(parts)}? This no longer holds."


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
