"""All findings of one unit, field by field."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from hatchleaf.facts.findings import (
    batteries,
    gas,
    hand_over,
    mains_and_water,
    safety,
    weights,
    wheels,
)
from hatchleaf.facts.findings.model import SEVERITIES, Case, Finding, Rule
from hatchleaf.facts.model import Facts
from hatchleaf.spec.model.unit import UnitSpec

_FIELDS: Final = (hand_over, weights, wheels, gas, safety, batteries, mains_and_water)

RULES: Final[Mapping[str, Rule]] = MappingProxyType(
    {rule.id: rule for field in _FIELDS for rule in field.RULES}
)
"""Every rule by its id."""


def findings(spec: UnitSpec, facts: Facts, on: dt.date) -> tuple[Finding, ...]:
    """
    Return what is found on a unit, worst first.

    Args:
        spec: The unit.
        facts: Its facts.
        on: The day to look from.  A day before the hand-over counts as the hand-over:
            what is at its end by then is found today.
    """
    case = Case(spec, facts, max(on, spec.delivery.date))
    found = [one for field in _FIELDS for one in field.look(case)]
    return tuple(sorted(found, key=lambda one: SEVERITIES.index(one.severity)))
