"""
The words of one unit's guide, as data that the script of the search reads.

Website and phone copy carry the same data, the one as ``words.json``, which is loaded
when someone first searches, the other inside.  Titles, symptoms and owners' words go
over as they are, since the script weighs them as phrases.  Of all other texts
go over each word and the pages that say it, in three levels of how much it is theirs.
"""

from __future__ import annotations

import base64
import json
import re
import unicodedata
import zlib
from collections import Counter
from collections.abc import Iterable, Iterator
from html import unescape
from typing import Final

from hatchleaf.blocks.synonyms import Synonyms
from hatchleaf.manual.model import Page, Pages

FILE_NAME: Final = "words.json"
"""Beside the pages of one unit: ``site/<code>/words.json``."""

_WORD: Final = re.compile(r"[a-z0-9]+")
_SYMPTOM: Final = re.compile(r"<summary>(.*?)</summary>", re.DOTALL)
_TAG: Final = re.compile(r"<[^>]*>")

_LEVELS: Final = (0.7, 1.4)
"""Where the second and the third level begin, of 2.2 at most."""
_SOON_ENOUGH: Final = 1.2
_BY_LENGTH: Final = 0.75
# The usual constants of BM25 (Robertson and Zaragoza, 2009): a word said ten times is
# not ten times as much, and one word of a long page is little.

_LONGEST_NUMBER: Final = 3
_LONGEST_NAME: Final = 4
_EVERYWHERE: Final = 0.75
"""A word that more of the pages say tells none from another."""

_LETTERS: Final = "".join(chr(n) for n in range(34, 127) if chr(n) not in '"<\\')
"""Those that stand for themselves in JSON within a page."""
_LONG_STEP: Final = len(_LETTERS) - 1


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


def words_json(pages: Pages) -> str:
    """
    Return all that search needs of one unit.

    Args:
        pages: All pages of the unit.

    Returns:
        JSON in which no text can close a ``script`` element.
    """
    topics = [
        {
            "n": page.number,
            "t": page.title,
            "w": page.where,
            "a": list(page.ask),
            "h": list(symptoms(page)),
        }
        for page in pages.pages
    ]
    lists = _of_use(pages)
    data = {
        "topics": topics,
        "words": packed_words(pages.pages, lists),
        "same": lists.same,
        "means": lists.means,
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028")


def words_packed(pages: Pages) -> str:
    """
    Return `words_json` as the phone copy has it inside: half its size.

    Args:
        pages: All pages of the unit.

    Returns:
        The text deflated (RFC 1951, without a header), in base64.
    """
    deflate = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    data = deflate.compress(words_json(pages).encode()) + deflate.flush()
    return base64.b64encode(data).decode("ascii")


def symptoms(page: Page) -> Iterator[str]:
    """Yield the symptoms of a page's troubles as plain text."""
    for found in _SYMPTOM.finditer(page.body):
        yield unescape(_TAG.sub("", found[1])).strip()


def packed_words(pages: Iterable[Page], lists: Synonyms) -> str:
    """
    Return the words of all texts.

    Args:
        pages: The pages, by number.
        lists: Names of several words that are looked for in the texts as well.

    Returns:
        A line for each word: how many letters it has in common with the word before,
        its other letters (``_`` joins the words of a name), then for each level, after
        a tab, the pages that say it.  Numbers are written as one of `_LETTERS`; a page
        is the step from the page before, the last letter a step that goes on.
    """
    names = {tuple(fold(name)) for name in _names(lists)}
    counts = [_counted(fold(f"{page.where} {page.text}"), names) for page in pages]
    lengths = [sum(count.values()) for count in counts]
    usual = max(sum(lengths) / max(len(lengths), 1), 1)
    levels: dict[str, tuple[list[int], list[int], list[int]]] = {}
    for at, (count, length) in enumerate(zip(counts, lengths, strict=True)):
        slow = _SOON_ENOUGH * (1 - _BY_LENGTH + _BY_LENGTH * length / usual)
        for word, times in count.items():
            weight = times * (_SOON_ENOUGH + 1) / (times + slow)
            level = sum(weight >= limit for limit in _LEVELS)
            levels.setdefault(word, ([], [], []))[level].append(at)
    lines, before = [], ""
    for word, rows in sorted(levels.items()):
        if sum(map(len, rows)) > _EVERYWHERE * len(counts):
            continue
        same = _in_common(before, word)
        packed = "\t".join((word[same:], *map(_packed, rows))).rstrip("\t")
        lines.append(_LETTERS[same] + packed)
        before = word
    return "\n".join(lines)


def _in_common(one: str, other: str) -> int:
    """Return how many letters two words begin with alike."""
    length = min(len(one), len(other))
    return next((at for at in range(length) if one[at] != other[at]), length)


def _names(lists: Synonyms) -> Iterator[str]:
    """Yield every name on the lists."""
    for group in lists.same:
        yield from group
    for word, others in lists.means.items():
        yield word
        yield from others


def _counted(words: list[str], names: set[tuple[str, ...]]) -> Counter[str]:
    """Return how often each word is said, and each name of several words."""
    count: Counter[str] = Counter()
    for at, word in enumerate(words):
        if len(word) > 1 and not (word.isdigit() and len(word) > _LONGEST_NUMBER):
            count[word] += 1
        for size in range(2, _LONGEST_NAME + 1):
            name = tuple(words[at : at + size])
            single = (*name[:-1], name[-1].removesuffix("s"))
            if len(name) == size and (name in names or single in names):
                count["_".join(name)] += 1
    return count


def _packed(pages: list[int]) -> str:
    """Return rising numbers as letters."""
    letters, before = [], -1
    for page in pages:
        step = page - before
        while step >= _LONG_STEP:
            letters.append(_LETTERS[_LONG_STEP])
            step -= _LONG_STEP
        # A step of none is left where a long one ended on the page itself.
        letters.append(_LETTERS[step])
        before = page
    return "".join(letters)


def _of_use(pages: Pages) -> Synonyms:
    """Return the rows of the lists that lead to something in this guide."""
    said = " ".join(
        " ".join(fold(" ".join((p.title, *p.ask, *symptoms(p), p.where, p.text))))
        for p in pages.pages
    )
    said = f" {said} "

    def known(name: str) -> bool:
        return f" {' '.join(fold(name))}" in said

    lists = pages.synonyms
    return Synonyms(
        tuple(group for group in lists.same if any(map(known, group))),
        {word: names for word, names in lists.means.items() if any(map(known, names))},
    )
