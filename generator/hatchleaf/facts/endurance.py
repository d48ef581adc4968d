"""
What runs out first: the days of water, tanks, battery and gas, side by side.

Nothing is worked out here.  Each number is one of another system's facts, taken for
so many people and such a night, so that no formula is written twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.facts import water
from hatchleaf.facts.model import Fact
from hatchleaf.facts.sheet import Given, Sheet, whole
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import number_in, quantity

SUMMER: Final = "summer night"
FROST: Final = "frost night"
NIGHTS: Final = (SUMMER, FROST)
PEOPLE: Final = water.PEOPLE
FIRST: Final = "endurance.first"
GAS: Final = "endurance.lp"


@dataclass(frozen=True)
class End:
    """One thing that comes to its end."""

    base: str
    words: str
    """As a sentence names it: ``gray tank``."""
    summer: str
    """The fact that tells its days; ``{who}`` stands for the people."""
    frost: str
    needs: tuple[str, ...]
    """Facts without which that one cannot be told."""

    def source(self, who: str, night: str) -> str:
        """Return the name of the fact that tells the days."""
        return (self.summer if night == SUMMER else self.frost).format(who=who)


def _tank(holds: str) -> End:
    days = f"waste.days[{holds}, {{who}}]"
    return End(f"endurance.{holds}", f"{holds} tank", days, days, ())


_WATER: Final = "water.days[{who}]"
ENDS: Final = (
    End("endurance.fresh", "fresh water", _WATER, _WATER, ("water.days",)),
    _tank("gray"),
    _tank("black"),
    _tank("combined"),
    End(
        "endurance.battery",
        "battery",
        "battery.days[mild]",
        "battery.days[frost]",
        ("battery.days", "battery.usable"),
    ),
    End(
        GAS,
        "LP gas",
        "lp.days[warm days]",
        "lp.days[cold days]",
        ("lp.days",),
    ),
)
"""In the order of a table; of two that end together the first is named."""


def who(people: int) -> str:
    """Return so many people in the words of a fact's item."""
    return "1 person" if people == 1 else f"{people} people"


def item(people: int, night: str) -> str:
    """Return the item of a fact: ``2 people, frost night``."""
    return f"{who(people)}, {night}"


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down the days of all that ends, and what ends first, from the facts."""
    facts = {fact.name: fact for fact in sheet.facts}
    # Where no burner heats the unit, frost takes no more gas than summer.
    heats = spec.climate.furnace != "none"
    for people in PEOPLE:
        for night in NIGHTS:
            _ends(people, night, facts, sheet, heats=heats)


def _ends(
    people: int, night: str, facts: Mapping[str, Fact], sheet: Sheet, *, heats: bool
) -> None:
    found: list[tuple[End, Fact]] = []
    unknown: list[str] = []
    called = f"[{item(people, night)}]"
    for end in ENDS:
        taken = SUMMER if end.base == GAS and not heats else night
        name = end.source(who(people), taken)
        if name in facts:
            found.append((end, _days(f"{end.base}{called}", facts[name], sheet)))
            continue
        paths = _missing(name, *end.needs, sheet=sheet)
        if paths:
            unknown += paths
            sheet.stop(paths, f"{end.base}{called}")
    # A tank that holds nobody knows what would be one of several.
    unknown += _missing("waste.days", sheet=sheet)
    if unknown:
        sheet.stop(unknown, f"{FIRST}{called}")
    elif found:
        _first(f"{FIRST}{called}", found, sheet)


def _missing(*names: str, sheet: Sheet) -> list[str]:
    return [path for name in names for path in sheet.missing.get(name, ())]


def _days(name: str, known: Fact, sheet: Sheet) -> Fact:
    days = quantity(exact_days(known), "day")
    sheet.add(
        name,
        days,
        "day",
        how="down",
        digits=whole(days, "day"),
        basis=known.basis,
        given=list(_given(known)),
        source=known.source,
        typical=known.typical,
        brochure=known.brochure,
    )
    return sheet.facts[-1]


def _given(known: Fact) -> Iterator[Given]:
    for one in known.inputs:
        yield Given(one.path, word=one.text)


def _first(name: str, found: list[tuple[End, Fact]], sheet: Sheet) -> None:
    end, _ = min(found, key=lambda pair: exact_days(pair[1]))
    said = ", ".join(f"{end.words} {days.shown()}" for end, days in found)
    sheet.add(
        name,
        end.words,
        basis=f"The shortest of these, by typical use: {said}.",
        given=list(dict.fromkeys(one for _, days in found for one in _given(days))),
        source="common-practice",
        typical=True,
        brochure=any(days.brochure for _, days in found),
    )


def exact_days(fact: Fact) -> float:
    """
    Return the days of a fact of time, before rounding.

    Raises:
        TypeError: The fact is a word.
    """
    if isinstance(fact.value, str | bool):
        raise TypeError(f"{fact.name} is not a number of days")
    return number_in(fact.value, "day")
