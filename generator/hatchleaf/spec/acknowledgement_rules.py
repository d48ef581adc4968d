"""Rules on the recall look-up and on findings that somebody answers for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.problems import Problem
from hatchleaf.spec.checked import Checked, items
from hatchleaf.spec.model.unit import Delivery, Recall

_FEWEST_WORDS: Final = 4
"""Fewer words are no reason that a colleague could weigh; common practice."""


def recalls_are_looked_up_before(unit: Checked) -> Iterator[Problem]:
    """Yield a look-up of recalls that lies after the hand-over."""
    delivery = unit.section("delivery", Delivery)
    recall = unit.section("recall", Recall)
    if delivery and recall and recall.looked_up > delivery.date:
        what = f"'{recall.looked_up}' is after the delivery on {delivery.date}"
        yield unit.problem("recall.looked_up", what)


def reasons_say_something(unit: Checked) -> Iterator[Problem]:
    """Yield acknowledgements whose reason is a word or two."""
    for one in items(unit.values.get("acknowledged")):
        if len(one.reason.split()) < _FEWEST_WORDS:
            what = f"'{one.reason}' is too short to be a reason"
            hint = "write what was done or why it may stay so, without names of people"
            yield unit.problem(f"acknowledged[{one.id}].reason", what, hint=hint)


RULES: Final = (recalls_are_looked_up_before, reasons_say_something)
