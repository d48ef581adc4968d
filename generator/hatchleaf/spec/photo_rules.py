"""Rules on photos: what is written beside them is public."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem
from hatchleaf.spec.checked import Checked, items

_NUMBERS: Final = (("serials", "a serial number"), ("keys", "a key's number"))
_SHORTEST: Final = 4
"""A shorter number would be found in many a word."""
_BETWEEN: Final = r"[\W_]*"


def captions_give_nothing_away(unit: Checked) -> Iterator[Problem]:
    """Yield captions that hold what is on no page."""
    private = tuple(_private(unit))
    for photo in items(unit.values.get("photos")):
        for field in ("caption", "alt"):
            text = getattr(photo, field)
            for written, name in private:
                if written.search(text):
                    path = f"photos[{photo.id}].{field}"
                    what = f"this is public, and tells {name}"
                    hint = "look at the photo too: a plate or a tag shows the same"
                    yield unit.problem(path, what, hint=hint)


def _private(unit: Checked) -> Iterator[tuple[re.Pattern[str], str]]:
    """Yield how the unit's private numbers may be written, and what they are."""
    texts = [
        (unit.values.get("vin"), "the VIN"),
        (unit.values.get("stock"), "the stock number"),
    ]
    texts += [
        (item.number, name)
        for section, name in _NUMBERS
        for item in items(unit.values.get(section))
    ]
    for text, name in texts:
        signs = [sign for sign in text or "" if sign.isalnum()]
        if text != "none" and len(signs) >= _SHORTEST:
            loose = _BETWEEN.join(map(re.escape, signs))
            alone = rf"(?<![^\W_]){loose}(?![^\W_])"
            yield re.compile(alone, re.IGNORECASE), name


RULES: Final = (captions_give_nothing_away,)
