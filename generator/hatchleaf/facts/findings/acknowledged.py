"""Which findings somebody answers for, and which keep a unit here."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from hatchleaf.facts.findings.find import RULES
from hatchleaf.facts.findings.model import Finding
from hatchleaf.facts.sheet import items
from hatchleaf.spec.model.unit import Acknowledgement, UnitSpec


@dataclass(frozen=True)
class Judged:
    """The findings of one unit, with those that somebody answers for."""

    findings: tuple[Finding, ...]
    answered: Mapping[str, Acknowledgement]
    """Id of a finding -> who answers for it; never of a ``hold``."""
    idle: tuple[Acknowledgement, ...]
    """Acknowledgements of what was not found, or of what nobody may answer for."""

    @property
    def stopping(self) -> tuple[Finding, ...]:
        """The findings that keep the unit here."""
        return tuple(
            one
            for one in self.findings
            if one.severity == "hold"
            or (one.severity == "stop" and one.id not in self.answered)
        )


def judge(spec: UnitSpec, found: Iterable[Finding]) -> Judged:
    """Return *found* with what the unit's file acknowledges of it."""
    found = tuple(found)
    may_be = {one.id for one in found if one.severity != "hold"}
    given = items(spec.acknowledged)
    answered = {one.id: one for one in given if one.id in may_be}
    idle = tuple(one for one in given if one.id not in may_be)
    return Judged(found, answered, idle)


def names_a_rule(finding_id: str) -> bool:
    """Return whether an id is that of a rule, alone or with an item after it."""
    return any(
        finding_id == rule or finding_id.startswith(f"{rule}-") for rule in RULES
    )
