"""The vehicle identification number, as 49 CFR part 565 defines it."""

from __future__ import annotations

import re
from typing import Final

LENGTH: Final = 17
_CHARACTERS: Final = re.compile(r"[0-9A-HJ-NPR-Z]{17}", re.ASCII)

# 49 CFR 565.15(c)(2), table III: letters stand for these digits, digits for themselves.
_VALUES: Final = {str(digit): digit for digit in range(10)} | dict(
    zip("ABCDEFGHJKLMNPRSTUVWXYZ", map(int, "12345678123457923456789"), strict=True)
)
# 49 CFR 565.15(c)(3), table IV: the weight of each position; the ninth is the digit.
_WEIGHTS: Final = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
_CHECK: Final = 8
_X: Final = 10

# 49 CFR 565.15(d)(1), table VII: no I, O, Q, U, Z and no 0 in the tenth position.
_YEARS: Final = "ABCDEFGHJKLMNPRSTVWXY123456789"
_YEAR: Final = 9


def well_formed(vin: str) -> bool:
    """Return whether *vin* is 17 capital letters and digits without I, O and Q."""
    return bool(_CHARACTERS.fullmatch(vin))


def check_digit(vin: str) -> str:
    """
    Return the character that belongs in the ninth position of *vin*.

    Args:
        vin: A well-formed number; its ninth character is not looked at.
    """
    total = sum(
        _VALUES[letter] * weight for letter, weight in zip(vin, _WEIGHTS, strict=True)
    )
    rest = total % 11
    return "X" if rest == _X else str(rest)


def check_digit_is_right(vin: str) -> bool:
    """Return whether the ninth character of a well-formed *vin* is its check digit."""
    return vin[_CHECK] == check_digit(vin)


def all_one_character(vin: str) -> bool:
    """
    Return whether *vin* repeats one character.

    The weights add up to 89, which leaves 1 by 11, so such a number passes the
    check with any digit; it is a placeholder all the same.
    """
    return len(set(vin)) == 1


def model_years(vin: str) -> tuple[int, ...]:
    """
    Return the model years that the tenth character may stand for.

    The characters come round every 30 years; which round it is cannot be told from
    a trailer's number.

    Args:
        vin: A well-formed number.

    Returns:
        Two years, or none where the character stands for no year.
    """
    place = _YEARS.find(vin[_YEAR])
    return () if place < 0 else (1980 + place, 2010 + place)
