"""When a unit's warranties are up; private, so never a fact on a page."""

from __future__ import annotations

import datetime as dt

from hatchleaf.engineering.dates import months_after
from hatchleaf.facts.sheet import items
from hatchleaf.spec.model.unit import UnitSpec, Warranty


def warranty_ends(spec: UnitSpec) -> tuple[tuple[Warranty, dt.date], ...]:
    """Return each warranty with the day it is up, counted from the hand-over."""
    return tuple(
        (one, months_after(spec.delivery.date, one.lasts))
        for one in items(spec.warranties)
    )
