"""The unit's code: 14 random digits and a check digit by Damm's scheme."""

from __future__ import annotations

import random
import re
from typing import Final

DIGITS: Final = 15
_FORM: Final = re.compile(r"[1-9]\d{14}", re.ASCII)

# The weakly totally anti-symmetric quasigroup of order 10 after H. M. Damm, "Total
# anti-symmetrische Quasigruppen" (dissertation, Marburg 2004).  It finds every single
# wrong digit and every swap of two neighbors, which are what a person mistypes.
TABLE: Final = (
    "0317598642",
    "7092154863",
    "4206871359",
    "1750983426",
    "6123045978",
    "3674209581",
    "5869720134",
    "8945362017",
    "9438617205",
    "2581436790",
)


def check_digit(digits: str) -> str:
    """Return the digit that makes *digits* valid when written after them."""
    interim = "0"
    for digit in digits:
        interim = TABLE[int(interim)][int(digit)]
    return interim


def well_formed(code: str) -> bool:
    """Return whether *code* is 15 digits of which the first is not 0."""
    return bool(_FORM.fullmatch(code))


def valid(code: str) -> bool:
    """Return whether *code* is well formed and its check digit is right."""
    return well_formed(code) and check_digit(code[:-1]) == code[-1]


def new(source: random.Random) -> str:
    """
    Return a new code.

    Args:
        source: Where the digits are drawn from; a `random.SystemRandom` outside
            tests, so that nobody can tell one unit's code from another's.
    """
    digits = str(source.randrange(10**13, 10**14))
    return digits + check_digit(digits)
