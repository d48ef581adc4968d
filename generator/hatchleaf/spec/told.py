"""How texts of a file are told in a problem: short, and nothing in them unseen."""

from __future__ import annotations

import unicodedata
from typing import Final

_LONGEST: Final = 60


def unseen(character: str) -> bool:
    """Return whether *character* is a control, a format mark or an odd space."""
    return character != " " and unicodedata.category(character)[0] in "CZ"


def told(text: str) -> str:
    """Return *text* cut short, with what cannot be seen as its number."""
    if len(text) > _LONGEST:
        text = text[: _LONGEST - 3] + "..."
    return "".join(f"<U+{ord(c):04X}>" if unseen(c) else c for c in text)


def quoted(value: object) -> str:
    """Return a text of the file in quotes, or what stands in its place."""
    if isinstance(value, str):
        return f"'{told(value)}'"
    return "a list" if isinstance(value, list) else "a mapping"
