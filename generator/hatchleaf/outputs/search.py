"""
The search words of one unit, as data that the page's script reads.

The website loads them as ``words.json`` when someone first searches; the phone copy
carries them inside.  Titles and the owners' own words go over as they are, since the
script weighs them as phrases; the rest of the text is only a list of words with the
topics that use them, a fifth of the text's size.
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
    plain = unicodedata.normalize("NFKD", text.lower().replace("\u2019", "'"))
    kept = "".join(each for each in plain if not unicodedata.combining(each))
    return _WORD.findall(kept.replace("'", ""))


def words(pages: Pages) -> dict[str, object]:
    """
    Return the search words of one unit.

    Args:
        pages: All pages of the unit.

    Returns:
        ``topics``: number, title, place, owners' words and headings of each page.
        ``words``: each word of the texts with the indexes of the topics that use it.
    """
    used: dict[str, list[int]] = {}
    for index, page in enumerate(pages.pages):
        for word in sorted(set(fold(f"{page.where} {page.text}"))):
            if len(word) > 1:
                used.setdefault(word, []).append(index)
    return {
        "topics": [
            {
                "n": page.number,
                "t": page.title,
                "w": page.where,
                "a": list(page.ask),
                "h": [heading.text for heading in page.headings],
            }
            for page in pages.pages
        ],
        "words": dict(sorted(used.items())),
    }


def words_json(pages: Pages) -> str:
    """
    Return `words` as JSON that may stand inside an HTML ``script`` element.

    Args:
        pages: All pages of the unit.

    Returns:
        One line; ``<`` is written as an escape, so that no text closes the element.
    """
    text = json.dumps(words(pages), ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028")
