"""
The phone copy made small: what repeats stands once, names of use to nobody go.

It changes no word that an owner reads on a topic's page.  On the page of numbers the
fields of the unit's file are left to the website: the sentences state the figures.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import Final

from hatchleaf.drawings.signs import ALERT_PATH

_OUTLINE: Final = re.compile(
    r'<g class="plan-body">.*?</g>\n<g class="plan-words">.*?</g>', re.DOTALL
)
_ALERT: Final = re.compile(rf'<path d="{re.escape(ALERT_PATH)}"[^>]*></path>')
_GIVEN: Final = re.compile(r'<span class="given">.*?</span> ?', re.DOTALL)
# A line's end before a block says nothing; inside a paragraph it is a space.
_BLOCK_ENDS: Final = re.compile(
    r"\n+(?=</?(?:article|d[dlt]|div|h[1-6]|li|[ou]l|p|t[dhr]|tbody|thead|table)\b)"
)
_FACT: Final = re.compile(r'(?<=["#])fact-[a-z0-9-]+(?=")')
_HEADING_ID: Final = re.compile(r'(<h[3-6]) id="([^"]*)"')
_NAMED: Final = re.compile(r'(?:href="#|aria-\w+="|for=")([^"]*)"')


def slimmed(document: str) -> str:
    """Return the same document in fewer bytes."""
    document = _GIVEN.sub("", document)
    document = _drawn_once(document, _OUTLINE, "plan-outline")
    document = _drawn_once(document, _ALERT, "alert-shape")
    document = _short_facts(document)
    return _BLOCK_ENDS.sub("", _without_idle_ids(document))


def _drawn_once(document: str, drawing: re.Pattern[str], name: str) -> str:
    """
    Return the document with a drawing that repeats written once and used elsewhere.

    The unit's outline and the alert symbol stand on nearly every page: together they
    would be a tenth of the file.
    """
    found = Counter(drawing.findall(document)).most_common(1)
    if not found:
        return document
    shape, _ = found[0]
    before, _, after = document.partition(shape)
    used = f'<use href="#{name}"></use>'
    return f'{before}<g id="{name}">{shape}</g>{after.replace(shape, used)}'


def _short_facts(document: str) -> str:
    """Return the document with short names for the places of numbers."""
    names: dict[str, str] = {}

    def short(found: re.Match[str]) -> str:
        return names.setdefault(found[0], f"n-{len(names)}")

    return _FACT.sub(short, document)


def _without_idle_ids(document: str) -> str:
    """Return the document without the names of headings that nothing leads to."""
    wanted = {name for names in _NAMED.findall(document) for name in names.split()}

    def kept(found: re.Match[str]) -> str:
        return found[0] if found[2].lstrip("#") in wanted else found[1]

    return _HEADING_ID.sub(kept, document)
