"""
Rules across fields, over whatever parts of a unit validated.

A rule is a function of the unit as far as it validated; it yields problems, and
leaves alone what another problem has already been said of.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Final

from hatchleaf.problems import Problem
from hatchleaf.spec import (
    acknowledgement_rules,
    date_rules,
    electrical_rules,
    identity_rules,
    photo_rules,
    place_rules,
    water_and_gas_rules,
    weight_rules,
)
from hatchleaf.spec.checked import Checked
from hatchleaf.spec.tree import Node

RULES: Final[tuple[Callable[[Checked], Iterator[Problem]], ...]] = (
    *identity_rules.RULES,
    *place_rules.RULES,
    *date_rules.RULES,
    *weight_rules.RULES,
    *water_and_gas_rules.RULES,
    *electrical_rules.RULES,
    *acknowledgement_rules.RULES,
    *photo_rules.RULES,
)


def problems(tree: Node, values: Mapping[str, Any]) -> Iterator[Problem]:
    """
    Yield what the fields of a unit say against one another.

    Args:
        tree: The unit's texts with their places.
        values: The value of each section that validated, by its name.

    """
    unit = Checked(tree, values)
    for rule in RULES:
        yield from rule(unit)
