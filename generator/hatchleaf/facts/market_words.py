"""The words of facts where English is not written as in North America."""

from __future__ import annotations

import re
from typing import Final

_BRITISH: Final = {
    "tire": "tyre",
    "tires": "tyres",
    "gray": "grey",
    "color": "colour",
    "shore power": "mains power",
    "cooktop": "hob",
    "furnace": "heater",
    "leveling": "levelling",
    "LP gas": "gas",
    "hitch weight": "noseweight",
    "ground-fault protection": "RCD",
    "tow vehicle": "tow car",
    "placard": "plate",
    "park tap": "site tap",
    "house batteries": "leisure batteries",
    "house battery": "leisure battery",
    "GVWR": "maximum laden mass",
    "GAWR": "maximum axle load",
    "gvwr": "maximum laden mass",
    "gawr": "maximum axle load",
}
"""Only words that mean one thing wherever a fact says them."""
_ANY: Final = "|".join(sorted(map(re.escape, _BRITISH), key=len, reverse=True))
_WORDS: Final = re.compile(rf"(?<![\w-])(?:{_ANY})(?![\w-])", re.IGNORECASE)


def in_words_of(market: str, text: str) -> str:
    """
    Return *text* with the words that *market* uses.

    Args:
        market: A market of the vocabulary.
        text: Words of a fact: how it came about, what it is called.

    >>> in_words_of("uk", "Tires at the GVWR")
    'Tyres at the maximum laden mass'
    """
    if market in ("us", "ca"):
        return text
    said = _WORDS.sub(lambda found: _alike(found[0]), text)
    # An abbreviation that begins a sentence has words in place of its capitals.
    return said[:1].upper() + said[1:] if text[:1].isupper() else said


def _alike(word: str) -> str:
    known = _BRITISH.get(word) or _BRITISH.get(word[:1].lower() + word[1:])
    if known is None:
        return word
    if word[:1].isupper() and word not in _BRITISH:
        return known[:1].upper() + known[1:]
    return known
