"""Rules across fields, over whatever parts of a unit validated."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from hatchleaf.problems import Problem
from hatchleaf.spec.tree import Node


def problems(tree: Node, values: Mapping[str, Any]) -> Iterator[Problem]:
    yield from ()
