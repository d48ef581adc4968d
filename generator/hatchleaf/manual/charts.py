"""Charts that a block may call for, made of facts alone."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.blocks.text import Fault, Shown
from hatchleaf.drawings.together import Level, chart
from hatchleaf.facts.endurance import FIRST
from hatchleaf.facts.model import Fact, Facts
from hatchleaf.facts.supplies import NOT_KNOWN, TOO_MUCH
from hatchleaf.manual import stay

_NEEDS: Final = "shore.needs"
_SUPPLY: Final = "shore.supply"
_BOTH: Final = " + "


@dataclass(frozen=True)
class _Together:
    """The things on shore power, the supplies, and what each pair needs."""

    alone: tuple[Fact, ...]
    supplies: tuple[str, ...]
    needs: Mapping[str, str]

    def of(self, first: int, second: int) -> str:
        """Return what two things need, or one where both are the same."""
        one, other = self.alone[first].item, self.alone[second].item
        if first == second:
            return self.needs[one]
        return (
            self.needs.get(f"{one}{_BOTH}{other}") or self.needs[f"{other}{_BOTH}{one}"]
        )


def _together(facts: Facts) -> _Together:
    rows = facts.of(_NEEDS)
    alone = tuple(row for row in rows if _BOTH not in row.item)
    if not alone:
        raise Fault(
            f"this unit has no fact '{_NEEDS}'",
            hint="a condition of the block should keep it off this unit",
        )
    return _Together(
        alone,
        tuple(row.item for row in facts.of(_SUPPLY)),
        {row.item: str(row.value) for row in rows},
    )


def together_chart(facts: Facts) -> Shown:
    """Return the chart of what each thing and each pair needs, and its text."""
    whole = _together(facts)
    values = (*whole.supplies, TOO_MUCH, NOT_KNOWN)
    count = len(whole.alone)
    found = {
        (first, second): whole.of(first, second)
        for second in range(count)
        for first in range(second + 1)
    }
    used = [value for value in values if value in set(found.values())]
    levels = [_level(value) for value in used]
    names = [fact.item_words for fact in whole.alone]
    # A sentence for each square: it is read aloud.
    said = " ".join(
        f"{names[first]}{'' if first == second else ' and ' + names[second]}: {value}."
        for (first, second), value in found.items()
    )
    drawn = chart(
        names,
        {pair: used.index(value) for pair, value in found.items()},
        levels,
        title="The smallest supply for each thing and each pair",
        says=said,
    )
    # A block of its own: Markdown leaves the inside of a figure alone.
    return Shown(f'\n<figure class="chart">{drawn}</figure>\n', said)


def _level(value: str) -> Level:
    if value == TOO_MUCH:
        return Level("no", "too much for this unit", none=True)
    if value == NOT_KNOWN:
        return Level("?", "not known: read the plate")
    return Level(value.removesuffix(" A"), f"{value} or more")


CHARTS: Final[Mapping[str, tuple[tuple[str, ...], Callable[[Facts], Shown]]]] = {
    "days": ((FIRST,), stay.chart),
    "together": ((_NEEDS, _SUPPLY), together_chart),
}
"""What ``chart(name)`` may draw: the fact bases it rests on, and how."""
