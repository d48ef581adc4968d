"""
A fact of a unit: a value, how it came about in one sentence, and its source.

Figures: a number that was worked out prints two or three, and never more than its
least exact measured input carries.  What is printed on plates, labels and papers or
shown by a scale, counts, and nominal ratings (15 A, 12 V, 30 lb) are exact as stated;
an instrument's reading carries the figures that it states, two at least, and a tape
carries inches.  A number of the file itself, and the sum or difference of labels' and
scales' weights, may print all its digits.  A number that rests on a usual figure of the
trade or on a brochure's prints two at most.  A basis may quote a number on the way with
one figure more, so that it can be worked out again.  The direction of rounding stays
that of its kind.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from hatchleaf import units
from hatchleaf.units import Quantity, Rounding

COMMON_PRACTICE: Final = "common-practice"
"""The source of what the trade does without a published source."""

_FEWEST_BESIDE: Final = 2
_MOST_BESIDE: Final = 3
"""Figures of a number in the other system of units."""


@dataclass(frozen=True)
class Input:
    """One number of the unit's file that a fact rests on."""

    path: str
    """Where it stands, items by id: ``lp.supply.cylinders[left].holds``."""
    text: str
    """The number as the file states it: ``30 lb``."""

    @property
    def field(self) -> str:
        """The path without items: ``lp.supply.cylinders.holds``."""
        return field_of(self.path)


@dataclass(frozen=True)
class Fact:
    """
    One number or word about the unit, exact; rounding happens in `shown`.

    A typical fact rests on a usual figure of the trade in place of one of this
    unit; a brochure fact rests on a figure that nobody read from the unit.
    """

    name: str
    """``base``, or ``base[item]``."""
    base: str
    item: str
    """Which of several, such as the id of a tank; empty where there is one."""
    value: Quantity | str | bool
    unit: str
    """The registry unit to print in; empty for words."""
    digits: int
    rounding: Rounding
    basis: str
    """How it came about: a sentence that an owner can follow."""
    inputs: tuple[Input, ...]
    source: str
    """An id of the list of sources."""
    typical: bool = False
    brochure: bool = False
    label: str = ""
    """The item in words, where its id is not fit to read."""
    other_unit: str = ""
    """The registry unit of the other system, to print beside; empty for none."""
    day: dt.date | None = None
    """The first day of the month that the words name, where they name one."""

    @property
    def item_words(self) -> str:
        """The item as a reader should see it."""
        return self.label or self.item

    def shown(self) -> str:
        """
        Return the value as printed, with its unit: ``646,000 BTU``.

        Limits, time and stock are rounded down, loads up.
        """
        if isinstance(self.value, bool):
            return "yes" if self.value else "no"
        if isinstance(self.value, str):
            return self.value
        return units.shown(self.value, self.unit, digits=self.digits, how=self.rounding)

    def beside(self) -> str:
        """
        Return the value in the other system of units: ``174 l``; empty for none.

        It is rounded the same way, and to no more figures than a conversion carries.
        """
        if isinstance(self.value, str | bool) or not self.other_unit:
            return ""
        digits = max(_FEWEST_BESIDE, min(_MOST_BESIDE, self.digits))
        return units.shown(
            self.value, self.other_unit, digits=digits, how=self.rounding
        )

    def shown_with_other(self) -> str:
        """Return the value in both systems of units: ``46 gal (174 l)``."""
        beside = self.beside()
        return f"{self.shown()} ({beside})" if beside else self.shown()


class Facts(Mapping[str, Fact]):
    """All facts of one unit by name, and what kept others from being worked out."""

    def __init__(
        self,
        facts: Iterable[Fact] = (),
        missing: Mapping[str, tuple[str, ...]] | None = None,
    ) -> None:
        """Keep the facts in their order; *missing* is name -> unknown spec paths."""
        self._by_name: Mapping[str, Fact] = MappingProxyType(
            {fact.name: fact for fact in facts}
        )
        by_base: dict[str, list[Fact]] = {}
        for fact in self._by_name.values():
            by_base.setdefault(fact.base, []).append(fact)
        self._by_base = {base: tuple(found) for base, found in by_base.items()}
        self.missing: Mapping[str, tuple[str, ...]] = MappingProxyType(
            dict(missing or {})
        )

    def __getitem__(self, name: str) -> Fact:
        """Return the fact called *name*; KeyError if this unit has none."""
        return self._by_name[name]

    def __iter__(self) -> Iterator[str]:
        """Iterate over the names, in the order of the systems."""
        return iter(self._by_name)

    def __len__(self) -> int:
        """Return how many facts there are."""
        return len(self._by_name)

    def of(self, base: str) -> tuple[Fact, ...]:
        """Return all facts of *base*, one for each item; none if there are none."""
        return self._by_base.get(base, ())

    def missing_for(self, base: str) -> tuple[str, ...]:
        """Return the unknown spec paths that stopped facts of *base*, sorted."""
        return tuple(
            sorted(
                {
                    path
                    for name, paths in self.missing.items()
                    if name.split("[", 1)[0] == base
                    for path in paths
                }
            )
        )


def field_of(path: str) -> str:
    """
    Return a spec path without its items.

    >>> field_of("lp.supply.cylinders[left].holds")
    'lp.supply.cylinders.holds'
    """
    return ".".join(part.split("[", 1)[0] for part in path.split("."))
