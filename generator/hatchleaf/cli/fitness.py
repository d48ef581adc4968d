"""Whether a unit may be handed over: its findings, printed, and what refuses it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from hatchleaf.cli.edge import Unit, result
from hatchleaf.problems import Problem, ProblemsFound, suggestion

if TYPE_CHECKING:
    from hatchleaf.facts.findings.acknowledged import Judged
    from hatchleaf.facts.findings.model import Finding

_ROLE = "service_manager"
"""The role that a hint proposes."""


def judged(unit: Unit, on: dt.date | None = None) -> Judged:
    """
    Return the findings of a unit with who answers for them.

    Args:
        unit: The unit, made.
        on: The day to look from; its hand-over when left out, so that a build never
            depends on the day it is made.
    """
    from hatchleaf.facts.findings.acknowledged import judge  # noqa: PLC0415  # slow
    from hatchleaf.facts.findings.find import findings  # noqa: PLC0415  # slow

    spec = unit.loaded.spec
    return judge(spec, findings(spec, unit.made.facts, on or spec.delivery.date))


def refuse_unfit(units: Iterable[Unit]) -> list[Problem]:
    """
    Return notes on acknowledgements, unless a unit may not be handed over.

    Raises:
        ProblemsFound: What keeps units here, of all of them.
    """
    notes: list[Problem] = []
    stopping: list[Problem] = []
    for unit in units:
        found = judged(unit)
        stopping += [_as_problem(unit, one) for one in found.stopping]
        for problem in acknowledgement_problems(unit, found):
            (notes if problem.severity == "note" else stopping).append(problem)
    if stopping:
        raise ProblemsFound([*stopping, *notes])
    return notes


def acknowledgement_problems(unit: Unit, found: Judged) -> Iterator[Problem]:
    """Yield acknowledgements that answer for nothing: misspelt, or out of date."""
    from hatchleaf.facts.findings.acknowledged import (  # noqa: PLC0415  # slow
        names_a_rule,
    )
    from hatchleaf.facts.findings.find import RULES  # noqa: PLC0415  # slow

    ids = [one.id for one in found.findings]
    for one in found.idle:
        path = f"acknowledged[{one.id}]"
        place = unit.loaded.place_of(path)
        problem = Problem(place, path, f"there is no finding '{one.id}' on this unit")
        if not names_a_rule(one.id):
            hint = suggestion(one.id, [*ids, *RULES])
            yield replace(problem, hint=hint or "'hatchleaf check' prints the ids")
        elif one.id in ids:
            what = f"nobody may answer for '{one.id}'"
            yield replace(problem, what=what, severity="note")
        else:
            yield replace(problem, hint="take it out", severity="note")


def _as_problem(unit: Unit, one: Finding) -> Problem:
    """Return what keeps a unit here, as a problem of its file."""
    what = f"{one.severity}: {one.what}"
    hint = f"{one.why}  Nobody may answer for it: mend it first."
    if one.severity == "stop":
        entry = f"{{id: {one.id}, role: {_ROLE}, reason: ...}}"
        hint = f"{one.why}  Mend it, or add to acknowledged: {entry}"
    return Problem(unit.loaded.place_of(one.where), one.where, what, hint=hint)


def findings_as_data(unit: Unit, found: Judged) -> list[dict[str, Any]]:
    """Return the findings of a unit as data for ``--json``."""
    return [_row(unit, found, one) for one in found.findings]


def _row(unit: Unit, found: Judged, one: Finding) -> dict[str, Any]:
    place = unit.loaded.place_of(one.where)
    answer = found.answered.get(one.id)
    return {
        "id": one.id,
        "rule": one.rule,
        "severity": one.severity,
        "what": one.what,
        "why": one.why,
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "field": one.where,
        "source": one.source,
        "acknowledged": (
            {"role": answer.role, "reason": answer.reason} if answer else None
        ),
    }


def warranties(unit: Unit) -> list[tuple[str, dt.date]]:
    """Return each warranty of a unit with the day it is up; private, on no page."""
    from hatchleaf.facts.warranties import warranty_ends  # noqa: PLC0415  # slow

    return [(one.what, ends) for one, ends in warranty_ends(unit.loaded.spec)]


def print_findings(unit: Unit, found: Judged) -> None:
    """Print the findings of a unit: severity, what, why, where; who answers for it."""
    for one in found.findings:
        result(f"{one.severity}: {one.what}  [{one.id}]")
        result(f"    why: {one.why}")
        result(f"    where: {unit.loaded.place_of(one.where)}: {one.where}")
        if answer := found.answered.get(one.id):
            role = answer.role.replace("_", " ")
            result(f"    acknowledged by the {role}: {answer.reason}")
