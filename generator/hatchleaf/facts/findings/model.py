"""A finding: what is wrong with a unit, why it matters, where its file says so."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

from hatchleaf.facts.model import Facts
from hatchleaf.spec.model.unit import UnitSpec

Severity: TypeAlias = Literal["note", "warn", "stop", "hold"]
SEVERITIES: Final[tuple[Severity, ...]] = ("hold", "stop", "warn", "note")
"""Worst first."""


@dataclass(frozen=True)
class Finding:
    """
    One thing about a unit that its hand-over should not pass by.

    A ``note`` is told to the owners, a ``warn`` is mended when it can be, a ``stop``
    needs somebody who answers for it, and a ``hold`` nobody may answer for.
    """

    rule: str
    """The rule that found it: ``cylinder-due``."""
    item: str
    """Which of several, such as the id of a cylinder; empty where there is one."""
    severity: Severity
    what: str
    why: str
    where: str
    """The path of the spec that it rests on, items by id."""
    source: str
    """An id of the list of sources."""

    @property
    def id(self) -> str:
        """What it is acknowledged by: the rule, and the item if there is one."""
        return f"{self.rule}-{self.item}" if self.item else self.rule


@dataclass(frozen=True)
class Rule:
    """What is the same for all findings of one kind."""

    id: str
    severity: Severity
    why: str
    source: str

    def found(self, what: str, where: str, item: str = "") -> Finding:
        """Return a finding of this rule."""
        return Finding(self.id, item, self.severity, what, self.why, where, self.source)


@dataclass(frozen=True)
class Case:
    """One unit, its facts, and the day that it has to be fit on."""

    spec: UnitSpec
    facts: Facts
    day: dt.date

    @property
    def new(self) -> bool:
        """True for a unit that is sold for the first time."""
        return self.spec.condition == "new"

    @property
    def north_american(self) -> bool:
        """True where the rules of the United States and Canada hold."""
        return self.spec.body.market in ("us", "ca")
