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
_LOOSE: Final = re.compile(r"[\W_]+")


def captions_give_nothing_away(unit: Checked) -> Iterator[Problem]:
    """Yield captions that hold what is on no page."""
    private = dict(_private(unit))
    for photo in items(unit.values.get("photos")):
        for field in ("caption", "alt"):
            loose = _loose(getattr(photo, field))
            for number, name in private.items():
                if number in loose:
                    path = f"photos[{photo.id}].{field}"
                    hint = "look at the photo too: a plate or a tag shows the same"
                    yield unit.problem(
                        path, f"it tells {name}, and is public", "", hint
                    )


def _private(unit: Checked) -> Iterator[tuple[str, str]]:
    """Yield the unit's private numbers, loose, with what they are."""
    found = [("vin", "the VIN"), ("stock", "the stock number")]
    texts = [(unit.values.get(section), name) for section, name in found]
    texts += [
        (item.number, name)
        for section, name in _NUMBERS
        for item in items(unit.values.get(section))
    ]
    for text, name in texts:
        if isinstance(text, str) and text != "none" and len(_loose(text)) >= _SHORTEST:
            yield _loose(text), name


def _loose(text: str) -> str:
    """Return the letters and digits of a text, small."""
    return _LOOSE.sub("", text).casefold()


RULES: Final = (captions_give_nothing_away,)
