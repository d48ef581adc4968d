"""
The search words of one unit, as data that the page's script reads.

Titles and the owners' own words go over as they are, since the script weighs them as
phrases.  The website loads them as ``words.json`` when someone first searches, with a
list of all other words and the topics that use them, a fifth of the texts' size.  The
phone copy has the texts themselves inside and lists their words when it is asked.
"""

from __future__ import annotations

import json
import re
import unicodedata
from typing import Final

from hatchleaf.manual.model import Pages

FILE_NAME: Final = "words.json"
"""Beside the pages of one unit: ``site/<code>/words.json``."""

_WORD: Final = re.compile(r"[a-z0-9]+")


def fold(text: str) -> list[str]:
    """
    Return the words of a text in small letters without accents.

    Args:
        text: Plain text.

    Returns:
        Its words in order.  The script folds what is typed in the same way.
    """
    plain = text.lower().replace("\u2019", "'")
    if not plain.isascii():
        parts = unicodedata.normalize("NFKD", plain)
        plain = "".join(each for each in parts if not unicodedata.combining(each))
    return _WORD.findall(plain.replace("'", ""))


def topics(pages: Pages) -> list[dict[str, object]]:
    """
    Return what is searched first in each page.

    Args:
        pages: All pages of the unit.

    Returns:
        Number, title, place, owners' words and headings of each page, in order.
    """
    return [
        {
            "n": page.number,
            "t": page.title,
            "w": page.where,
            "a": list(page.ask),
            "h": [heading.text for heading in page.headings],
        }
        for page in pages.pages
    ]


def words(pages: Pages) -> dict[str, list[int]]:
    """
    Return the words of all texts.

    Args:
        pages: All pages of the unit.

    Returns:
        Each word of two letters or more with the indexes of the pages that use it.
    """
    used: dict[str, list[int]] = {}
    for index, page in enumerate(pages.pages):
        for word in sorted(set(fold(f"{page.where} {page.text}"))):
            if len(word) > 1:
                used.setdefault(word, []).append(index)
    return dict(sorted(used.items()))


def words_json(pages: Pages) -> str:
    """
    Return what the website's search loads.

    Args:
        pages: All pages of the unit.
    """
    return _line({"topics": topics(pages), "words": words(pages)})


def topics_json(pages: Pages) -> str:
    """
    Return what the phone copy's search needs besides the texts that it has.

    Args:
        pages: All pages of the unit.
    """
    # Places and headings stand in the file: the script reads them there.
    inside = [{key: topic[key] for key in ("n", "t", "a")} for topic in topics(pages)]
    return _line({"topics": inside})


def _line(data: dict[str, object]) -> str:
    """Return JSON in which no text can close a ``script`` element."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028")
