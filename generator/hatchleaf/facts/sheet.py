"""The sheet that facts are gathered on while one unit is worked out."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, TypeAlias, TypeVar

from hatchleaf import units
from hatchleaf.facts import names, unit_systems
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.facts.model import Fact, Facts, Input
from hatchleaf.spec.model.readings import Reading
from hatchleaf.units import Quantity, Rounding

T = TypeVar("T")
Absent: TypeAlias = Literal["none", "unknown"]

_NUMBER_WORDS = ("no", "one", "two", "three", "four", "five", "six")
_MOST_FIGURES = 3
_MOST_UNSURE_FIGURES = 2
_FROM_FILE = 6


@dataclass(frozen=True)
class Given:
    """One field of the unit's file on its way into a fact: a number or a word."""

    path: str
    # Left out of comparisons, which would convert it: the path names the field.
    number: Quantity | None = field(default=None, compare=False)
    word: str = ""
    brochure: bool = False

    @property
    def known(self) -> bool:
        """True unless the file says ``unknown``."""
        return self.number is not None or self.word not in ("", "unknown")

    @property
    def quantity(self) -> Quantity:
        """
        The number.

        Raises:
            ValueError: There is none; ask `known` first.
        """
        if self.number is None:
            raise ValueError(f"{self.path} is not known")
        return self.number

    @cached_property
    def text(self) -> str:
        """The field as its file states it: ``30 lb``."""
        return self.word or units.in_file_units(self.quantity)


def number(path: str, reading: Reading) -> Given:
    """Return a number of the file as an input of facts."""
    return Given(path, reading.quantity, brochure=reading.origin == "brochure")


def word(path: str, text: str) -> Given:
    """Return a word of the file as an input of facts."""
    return Given(path, word=text)


@dataclass
class Sheet:
    """Facts so far, and for each one that failed the fields that are not known."""

    market: str = "us"
    """Where the unit is sold: it decides which system of units comes first."""
    facts: list[Fact] = field(default_factory=list)
    missing: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def add(
        self,
        name: str,
        value: Quantity | str,
        unit: str = "",
        *,
        basis: str,
        given: Sequence[Given],
        source: str,
        digits: int = 3,
        how: Rounding = "near",
        typical: bool = False,
        brochure: bool = False,
        label: str = "",
        day: dt.date | None = None,
    ) -> None:
        """
        Write down one fact.

        Args:
            name: ``base`` or ``base[item]``; the base is one of `names.KNOWN`.
            value: Exact; a word for facts that are one.
            unit: The registry unit to print in, of the United States' system; the
                market decides whether it or its counterpart comes first.
            basis: How it came about, in one sentence.
            given: What of the file it rests on; a brochure figure marks the fact.
            source: An id of the list of sources.
            digits: Significant figures to print; two at most where a usual figure or
                a brochure's stands behind a number that was worked out.
            how: Which way to round.
            typical: A usual figure stands in for one of this unit.
            brochure: Marks the fact whatever its inputs say.
            label: The item in words.
            day: A day of the month that the words name, for facts that name one.

        Raises:
            KeyError: The base is no known one.
        """
        base, _, item = name.partition("[")
        if base not in names.KNOWN:
            raise KeyError(base)
        first, other = unit_systems.in_market(unit, self.market)
        # A number of the file that is in this very unit prints as it was read.
        if first != unit and not isinstance(value, str):
            digits = _FROM_FILE if _is_in(value, first) else min(digits, _MOST_FIGURES)
        if isinstance(value, str):
            value = unit_systems.temperatures(value, self.market)
        words = in_words_of(
            self.market,
            unit_systems.temperatures(item.removesuffix("]"), self.market),
        )
        unsure = typical or brochure or any(one.brochure for one in given)
        if unsure and not isinstance(value, str) and not _as_given(value, given):
            digits = min(digits, _MOST_UNSURE_FIGURES)
        self.facts.append(
            Fact(
                name=name,
                base=base,
                item=item.removesuffix("]"),
                value=value,
                unit=first,
                other_unit=other,
                digits=digits,
                rounding=how,
                basis=in_words_of(
                    self.market, unit_systems.temperatures(basis, self.market)
                ),
                inputs=tuple(Input(one.path, one.text) for one in given),
                source=source,
                typical=typical,
                brochure=brochure or any(one.brochure for one in given),
                # A name is the same in every market, what a reader sees is not.
                label=in_words_of(self.market, label)
                or (words if words != item.removesuffix("]") else ""),
                day=day.replace(day=1) if day else None,
            )
        )

    def lacks(self, given: Iterable[Given], *stopped: str) -> bool:
        """Return True, and say what it stops, if anything *given* is not known."""
        paths = tuple(one.path for one in given if not one.known)
        if paths:
            self.stop(paths, *stopped)
        return bool(paths)

    def stop(self, paths: Sequence[str], *stopped: str) -> None:
        """Write down that facts fail for want of the fields at *paths*."""
        for name in stopped:
            before = self.missing.get(name, ())
            self.missing[name] = tuple(dict.fromkeys((*before, *paths)))

    def finished(self) -> Facts:
        """Return all that was gathered."""
        return Facts(self.facts, self.missing)


def fitted(part: T | Absent) -> T | None:
    """Return the part, or None where it is absent or not known."""
    return None if isinstance(part, str) else part


def items(several: tuple[T, ...] | Absent) -> tuple[T, ...]:
    """Return the items fitted; none where they are absent or not known."""
    return () if isinstance(several, str) else several


def total(quantities: Iterable[Quantity], unit: str) -> Quantity:
    """Return the sum in *unit*; nothing of it where there are none."""
    return units.quantity(sum(units.number_in(one, unit) for one in quantities), unit)


def whole(value: Quantity, unit: str) -> int:
    """Return the figures that print no fraction of *unit*, at least one."""
    size = abs(units.number_in(value, unit))
    # The last figures of a float are noise: 9.999999999 nights are 10.
    return max(1, math.floor(math.log10(size) + 1e-12) + 1) if size >= 1 else 1


def stated(value: Quantity, unit: str) -> int:
    """
    Return the figures that print a number of the file as it was read.

    A number that had to be converted carries no more than three.
    """
    return _FROM_FILE if _is_in(value, unit) else _MOST_FIGURES


def _as_given(value: Quantity, given: Sequence[Given]) -> bool:
    """Return whether a number is one of the file, or the sum of such."""
    known = [one.number for one in given if one.number is not None]
    if not known or any(one.dimensionality != value.dimensionality for one in known):
        return False
    unit = str(value.units)
    return math.isclose(
        units.number_in(value, unit), units.number_in(total(known, unit), unit)
    )


def _is_in(value: Quantity, unit: str) -> bool:
    """Return whether a number is in *unit* already."""
    return units.number_in(value, unit) == value.magnitude


def counted(count: int, what: str) -> str:
    """Return a count in words: ``two 30 lb cylinders``."""
    said = _NUMBER_WORDS[count] if count < len(_NUMBER_WORDS) else str(count)
    return f"{said} {what}" if count == 1 else f"{said} {what}s"


def same_counted(texts: Sequence[str], what: str) -> str:
    """Return alike things together: ``two 30 lb cylinders and one 20 lb cylinder``."""
    groups = dict.fromkeys(texts)
    parts = [counted(texts.count(text), f"{text} {what}") for text in groups]
    return " and ".join((", ".join(parts[:-1]), parts[-1])) if parts[1:] else parts[0]


def capital(text: str) -> str:
    """Return *text* as the start of a sentence."""
    return text[:1].upper() + text[1:]


def plus(parts: Sequence[str]) -> str:
    """Return a sum in words: ``a + b + c``."""
    return " + ".join(parts)
