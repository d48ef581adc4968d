"""How often a task of regular care comes round, as a block's `every` rows state it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

Span: TypeAlias = Literal["", "day", "week", "month", "year"]
Measure: TypeAlias = Literal["", "mile", "kilometer"]
Occasion: TypeAlias = Literal[
    "",
    "before each trip",
    "each trip",
    "each use",
    "each season",
    "each spring",
    "each autumn",
]

OCCASIONS: Final[tuple[Occasion, ...]] = (
    "before each trip",
    "each trip",
    "each use",
    "each season",
    "each spring",
    "each autumn",
)
ALLOWED: Final = (
    "10 days, 6 months, 2 years; 12000 miles, 20000 km; 12 months or 12000 miles; "
    f"{', '.join(OCCASIONS)}"
)
ALLOWED_START: Final = "a time, a distance or both: 1 month, 50 miles"

_SPANS: Final[dict[str, Span]] = {
    "day": "day",
    "week": "week",
    "month": "month",
    "year": "year",
}
_MOST: Final = {"day": 99, "week": 52, "month": 120, "year": 30}
"""More of one unit is a slip, or better said in the next larger one."""
_FARTHEST: Final = 200_000
_TIME: Final = re.compile(r"([1-9]\d{0,2}) (day|week|month|year)(s?)")
_DISTANCE: Final = re.compile(r"([1-9]\d{0,2}(?:,\d{3})|[1-9]\d{0,5}) (miles|km)")
_MEASURES: Final[dict[str, Measure]] = {"miles": "mile", "km": "kilometer"}
_NOT_OURS: Final = {
    "mi": "miles",
    "mile": "miles",
    "kilometers": "km",
    "kilometres": "km",
    "d": "days",
    "weekly": "1 week",
    "monthly": "1 month",
    "yearly": "1 year",
    "annually": "1 year",
    "fall": "autumn",
    "each fall": "each autumn",
    "each winter": "each autumn",
    "each month": "1 month",
    "each year": "1 year",
    "every trip": "each trip",
    "before every trip": "before each trip",
}


@dataclass(frozen=True)
class Interval:
    """
    A time, a distance or the sooner of both; or an occasion.

    The distance stays in the unit that the block states: a market may read another.
    """

    count: int = 0
    span: Span = ""
    distance: int = 0
    measure: Measure = ""
    occasion: Occasion = ""


class NoInterval(ValueError):  # noqa: N818  # becomes a problem at the row itself
    """Raised for a text that states no interval: what is wrong with it, and a hint."""

    def __init__(self, what: str, hint: str = "") -> None:
        """Keep both for a `Problem`."""
        super().__init__(what)
        self.what, self.hint = what, hint


def interval(text: str) -> Interval:
    """
    Return the interval that *text* states.

    >>> interval("12 months or 12,000 miles")
    Interval(count=12, span='month', distance=12000, measure='mile', occasion='')

    Raises:
        NoInterval: It states none, or more than one time and one distance.
    """
    for occasion in OCCASIONS:
        if text == occasion:
            return Interval(occasion=occasion)
    time: tuple[int, Span] = (0, "")
    way: tuple[int, Measure] = (0, "")
    for part in text.split(" or "):
        if (found := _time(part)) and not time[0]:
            time = found
        elif (far := _distance(part)) and not way[0]:
            way = far
        else:
            raise NoInterval(f"'{text}' is no interval", _hint(text, part))
    return Interval(time[0], time[1], way[0], way[1])


def _time(text: str) -> tuple[int, Span] | None:
    found = _TIME.fullmatch(text)
    if not found:
        return None
    count, span = int(found[1]), found[2]
    if (count == 1) == bool(found[3]) or count > _MOST[span]:
        return None
    return count, _SPANS[span]


def _distance(text: str) -> tuple[int, Measure] | None:
    found = _DISTANCE.fullmatch(text)
    number = int(found[1].replace(",", "")) if found else 0
    if not found or number > _FARTHEST:
        return None
    return number, _MEASURES[found[2]]


def _hint(text: str, part: str) -> str:
    """Return what was probably meant by *part*, the first that states nothing."""
    if _time(part) or _distance(part):
        return "one time, one distance, or one of each"
    known = _NOT_OURS.get(text.strip().lower())
    number, _, unit = part.strip().partition(" ")
    if not known and unit.lower() in _NOT_OURS:
        known = f"{number} {_NOT_OURS[unit.lower()]}"
    if known:
        return f"write '{known}'"
    if " and " in text:
        return "join a time and a distance by 'or': the sooner counts"
    if found := re.fullmatch(r"([1-9]\d*) ?(day|week|month|year)s?", part.strip()):
        count, span = int(found[1]), found[2]
        if count > _MOST[span]:
            return f"at most {_MOST[span]} {span}s"
        return f"write '{count} {span}{'' if count == 1 else 's'}'"
    return ""
