"""What the rules across fields look at: a unit as far as it validated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias, TypeVar

from hatchleaf.problems import Problem
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.tree import Node
from hatchleaf.units import Quantity

T = TypeVar("T", bound=Part)


@dataclass(frozen=True)
class Checked:
    """The texts of a unit, and the values of the sections that validated."""

    tree: Node
    values: Mapping[str, Any]

    def section(self, name: str, kind: type[T]) -> T | None:
        """Return the section if it validated and is of *kind*."""
        found = self.values.get(name)
        return found if isinstance(found, kind) else None

    def problem(
        self, path: str, what: str, allowed: str = "", hint: str = ""
    ) -> Problem:
        """Return a problem at *path*, or at the nearest place above it."""
        return Problem(self.tree.place_of(path), path, what, allowed, hint)


Items: TypeAlias = "tuple[T, ...] | str | None"


def items(value: Items[T]) -> tuple[T, ...]:
    """Return the items of a list, none where it is ``none`` or ``unknown``."""
    return value if isinstance(value, tuple) else ()


def number(reading: Reading | str | None) -> Quantity | None:
    """Return the number of a reading, None where it is not known or not there."""
    return reading.quantity if isinstance(reading, Reading) else None
