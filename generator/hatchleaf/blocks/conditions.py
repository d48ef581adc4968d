"""
Conditions as data: which units a block is for.

A condition is a set of lines, each a path of the spec and what must hold there;
all must hold.  A path through a list holds if one item meets all the lines through
that list, so that two lines about awnings speak of the same awning.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal, TypeAlias

from pydantic import BaseModel

from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import in_file_units, number_in

if TYPE_CHECKING:
    from hatchleaf.facts.model import Facts

FACT_PREFIX: Final = "fact."


Bound: TypeAlias = int | tuple[float, str]
"""A count, or a number and its unit: plain values, which may cross processes."""


class _Missing:
    """The value at a path that this unit does not have."""

    def __str__(self) -> str:
        return "not fitted"


MISSING: Final = _Missing()


@dataclass(frozen=True)
class OneOf:
    """The value is one of the words."""

    words: tuple[str, ...]

    def holds(self, value: object) -> bool:
        """Return True when *value*, as a word, is among them."""
        return word_of(value) in self.words

    def __str__(self) -> str:
        return " or ".join(self.words)


@dataclass(frozen=True)
class NoneOf:
    """The part is fitted, and its value is none of the words."""

    words: tuple[str, ...]

    def holds(self, value: object) -> bool:
        """Return False also for what is not fitted, or not known to be."""
        return value is not MISSING and word_of(value) not in (*self.words, "unknown")

    def __str__(self) -> str:
        return "not " + " or ".join(self.words)


@dataclass(frozen=True)
class Limit:
    """The number is known and at least, or at most, the bound."""

    side: Literal["at_least", "at_most"]
    bound: Bound
    text: str

    def holds(self, value: object) -> bool:
        """Return False for an unknown number."""
        number, bound = _numbers(value, self.bound)
        if number is None:
            return False
        return number >= bound if self.side == "at_least" else number <= bound

    def __str__(self) -> str:
        return f"{self.side.replace('_', ' ')} {self.text}"


@dataclass(frozen=True)
class Presence:
    """The part is fitted, or is not; neither holds of an unknown one."""

    present: bool

    def holds(self, value: object) -> bool:
        """Return whether *value* is there, or is not, as asked."""
        away = value is MISSING or value in ("none", ())
        return away != self.present and value != "unknown"

    def __str__(self) -> str:
        return "present" if self.present else "absent"


@dataclass(frozen=True)
class PresentOr:
    """The part is fitted, or its value is one of the words."""

    words: tuple[str, ...]

    def holds(self, value: object) -> bool:
        """Return True also where nobody knows, if ``unknown`` is among the words."""
        return Presence(present=True).holds(value) or word_of(value) in self.words

    def __str__(self) -> str:
        return " or ".join(("present", *self.words))


Test: TypeAlias = OneOf | NoneOf | Limit | Presence | PresentOr


@dataclass(frozen=True)
class Line:
    """One line of a condition."""

    path: str
    test: Test

    def __str__(self) -> str:
        return f"{self.path}: {self.test}"


@dataclass(frozen=True)
class Outcome:
    """How one line came out on one unit, for `explain`."""

    line: Line
    holds: bool
    found: str


def word_of(value: object) -> str:
    """Return a value as the word a condition compares: ``yes``, ``lfp``, ``2``."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Reading):
        return "known" if value.known else "unknown"
    return str(value)


def _numbers(value: object, bound: Bound) -> tuple[float | None, float]:
    if isinstance(bound, int):
        whole = isinstance(value, int) and not isinstance(value, bool)
        return (float(value) if whole else None), float(bound)  # type: ignore[arg-type]
    number, unit = bound
    if isinstance(value, Reading) and value.quantity is not None:
        return number_in(value.quantity, unit), number
    return None, number


def values(root: object, path: str) -> Iterator[object]:
    """Yield what stands at *path* below *root*: one value for each item of a list."""
    if isinstance(root, tuple):
        for item in root:
            yield from values(item, path)
        return
    if not path:
        yield root
        return
    head, _, rest = path.partition(".")
    if not isinstance(root, BaseModel):
        # ``unknown`` stays so all the way down: nobody can say it is not fitted.
        yield "unknown" if root == "unknown" else MISSING
        return
    yield from values(getattr(root, head, MISSING), rest)


def items_at(spec: UnitSpec, path: str) -> tuple[BaseModel, ...]:
    """Return the items of the list at *path*; none when it is not fitted."""
    found: object = spec
    for key in path.split("."):
        found = getattr(found, key, MISSING)
    return found if isinstance(found, tuple) else ()


def outcomes(
    lines: tuple[Line, ...],
    spec: UnitSpec,
    facts: Facts,
    lists: frozenset[str],
    item: tuple[str, BaseModel] | None = None,
) -> tuple[Outcome, ...]:
    """
    Return how each line comes out on *spec*.

    Args:
        lines: The condition.
        spec: The unit.
        facts: Its facts, for paths that begin with ``fact.``.
        lists: The paths of all lists that a spec can have.
        item: With `each`, the list's path and the one item that is meant.
    """
    made: list[Outcome] = []
    groups: dict[str, list[Line]] = {}
    for line in lines:
        groups.setdefault(list_of(line.path, lists), []).append(line)
    for name, group in groups.items():
        if not name:
            made.extend(_plain(line, spec, facts) for line in group)
        elif item and item[0] == name:
            made.extend(_within(group, name, item[1]))
        else:
            made.extend(_any_item(group, name, spec))
    return tuple(made)


def list_of(path: str, lists: frozenset[str]) -> str:
    """Return the list that *path* goes through, or nothing."""
    keys = path.split(".")
    for end in range(len(keys) - 1, 0, -1):
        head = ".".join(keys[:end])
        if head in lists:
            return head
    return ""


def _plain(line: Line, spec: UnitSpec, facts: Facts) -> Outcome:
    if line.path.startswith(FACT_PREFIX):
        fact = facts.get(line.path.removeprefix(FACT_PREFIX))
        value: object = fact.value if fact else MISSING
    else:
        value = _part_at(spec, line.path)
    return Outcome(line, line.test.holds(value), _found(value))


def _part_at(spec: UnitSpec, path: str) -> object:
    found: object = spec
    for key in path.split("."):
        if not isinstance(found, BaseModel):
            return "unknown" if found == "unknown" else MISSING
        found = getattr(found, key, MISSING)
    return found


def _within(group: list[Line], name: str, item: BaseModel) -> list[Outcome]:
    made = []
    for line in group:
        found = list(values(item, line.path.removeprefix(name + ".")))
        value = found[0] if found else MISSING
        made.append(Outcome(line, line.test.holds(value), _found(value)))
    return made


def _any_item(group: list[Line], name: str, spec: UnitSpec) -> list[Outcome]:
    items = items_at(spec, name)
    if not items:
        value = _part_at(spec, name)
        return [
            Outcome(
                line,
                line.test.holds("unknown" if value == "unknown" else MISSING),
                _found(value),
            )
            for line in group
        ]
    tried = [_within(group, name, item) for item in items]
    # The item that meets most lines tells the most when none meets all.
    return max(tried, key=lambda found: sum(outcome.holds for outcome in found))


def _found(value: object) -> str:
    if isinstance(value, Reading) and value.quantity is not None:
        return in_file_units(value.quantity)
    if isinstance(value, BaseModel):
        return "fitted"
    if isinstance(value, tuple):
        return f"{len(value)} fitted"
    return word_of(value)
