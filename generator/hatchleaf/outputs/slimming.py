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

# Comments of our own that have their lines to themselves; no string looks like one.
_COMMENT: Final = re.compile(r"^[ \t]*/\*.*?\*/[ \t]*\n", re.DOTALL | re.MULTILINE)
_BLOCKS: Final = "div|dl|form|h[1-6]|ol|p|section|table|ul"
_HOLDERS: Final = "div|li|dd|section|article"
# HTML Standard, 13.1.2.4 "Optional tags": each end is plain from what comes next.
_IMPLIED: Final = tuple(
    re.compile(pattern)
    for pattern in (
        rf"</p>(?=<(?:{_BLOCKS})[ >]|</(?:{_HOLDERS})>)",
        r"</li>(?=<li[ >]|</[ou]l>)",
        r"</t[dh]>(?=<t[dh][ >]|</tr>)",
        r"</tr>(?=<tr[ >]|</thead>|</tbody>)",
        r"</thead>(?=<tbody>)",
        r"</tbody>(?=</table>)",
    )
)
_TAG: Final = re.compile(r"<[a-z][^<>]*>")
# Same, 13.1.2.3 "Unquoted"; not before a slash, which would become part of it.
_QUOTED: Final = re.compile(r'="([A-Za-z0-9_.:#-]+)"(?=[ >])')
_INDENT: Final = re.compile(r"^[ \t]+|\n(?=\n)", re.MULTILINE)


def slimmed(document: str) -> str:
    """Return the same document in fewer bytes."""
    document = _GIVEN.sub("", document)
    document = _drawn_once(document, _OUTLINE, "plan-outline")
    document = _drawn_once(document, _ALERT, "alert-shape")
    document = _short_facts(document)
    document = _BLOCK_ENDS.sub("", _without_idle_ids(document))
    # What follows the first script is code and data, no markup.
    head, body, rest = document.partition("<body>")
    markup, script, rest = rest.partition("<script")
    return head + body + implied(markup) + script + rest


def implied(markup: str) -> str:
    """Return *markup* without end tags and quotes that HTML lets one leave out."""
    for end in _IMPLIED:
        markup = end.sub("", markup)
    return _TAG.sub(lambda tag: _QUOTED.sub(r"=\1", tag[0]), markup)


def lean(code: str) -> str:
    """Return a style or script without the comments and indents that only we read."""
    return _INDENT.sub("", _COMMENT.sub("", code))


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
