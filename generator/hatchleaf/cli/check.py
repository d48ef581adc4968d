"""``hatchleaf check``: look at units and blocks, write nothing."""

from __future__ import annotations

import datetime
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from hatchleaf.cli.edge import (
    PROBLEMS,
    Unit,
    as_data,
    gathered,
    json_option,
    open_workspace,
    print_json,
    print_problems,
    reports,
    result,
    units_or_all,
    workspace_option,
)
from hatchleaf.cli.fitness import (
    acknowledgement_problems,
    findings_as_data,
    judged,
    print_findings,
    warranties,
)
from hatchleaf.cli.reviews import (
    count_notes,
    print_unreviewed,
    stale_notes,
    unreviewed_as_data,
)
from hatchleaf.problems import Place, Problem
from hatchleaf.workspace import SETTINGS, Workspace

if TYPE_CHECKING:
    from hatchleaf.facts.findings.acknowledged import Judged


@click.command("check", epilog="Example: hatchleaf check heron-a heron-b")
@click.argument("units", nargs=-1)
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day to look for findings from; today when left out.",
)
@click.option(
    "--unreviewed",
    "to_review",
    is_flag=True,
    help="Print only what a qualified person has to review, as lines to fill in.",
)
@workspace_option
@json_option
@reports
def command(
    units: tuple[str, ...],
    root: Path,
    *,
    on: datetime.datetime | None,
    to_review: bool,
    as_json: bool,
) -> None:
    """
    Check UNITS (all when none is named), their models and all blocks.

    Then print what is found on each unit: note, warn, stop or hold.  A unit with a
    hold, or with a stop that nobody answers for, ends the check with 1.
    """
    workspace = open_workspace(root)
    done = gathered(workspace, units_or_all(workspace, units))
    if to_review and not as_json:
        print_problems(stale_notes(done), "")
        print_unreviewed(done)
        return
    # The one clock: findings alone look at the day.
    day = on.date() if on else datetime.datetime.now().astimezone().date()
    found = [(unit, judged(unit, day)) for unit in done]
    notes = [note for unit in done for note in unit.loaded.notes]
    notes += [
        problem
        for unit, one in found
        for problem in acknowledgement_problems(unit, one)
    ]
    notes += (*stale_notes(done), *count_notes(done))
    notes += _statement_not_checked(workspace, done)
    unfit = any(one.stopping for _, one in found) or any(
        note.severity == "problem" for note in notes
    )
    if as_json:
        _print_as_json(found, notes)
    else:
        print_problems(notes, "nothing written")
        for unit, one in found:
            _print(unit, one)
    if unfit:
        sys.exit(PROBLEMS)


def _statement_not_checked(workspace: Workspace, done: list[Unit]) -> list[Problem]:
    """Return a note while pages carry a federal statement that nobody compared."""
    if workspace.settings.statement_checked or not any(
        unit.loaded.spec.body.market == "us" for unit in done
    ):
        return []
    what = "page 086 is a placeholder: nobody compared its statement with the rule"
    hint = (
        "compare it with 49 CFR 575.6(a)(2) in force, lay your own block over "
        "reporting-defects where it differs, then write the day: statement_checked: ..."
    )
    place = Place(SETTINGS)
    return [Problem(place, "statement_checked", what, hint=hint, severity="note")]


def _print(unit: Unit, found: Judged) -> None:
    print_findings(unit, found)
    for what, ends in warranties(unit):
        result(f"note: warranty, {what}: up on {ends.isoformat()}")
    made = unit.made
    stays = ", ".join(one.id for one in found.stopping)
    said = f"stays here: {stays}" if stays else "good"
    result(
        f"{unit.file.stem}: {said}; {len(made.pages.pages)} pages, "
        f"{len(made.facts)} numbers worked out, {len(found.findings)} findings"
    )


def _print_as_json(found: list[tuple[Unit, Judged]], notes: list[Problem]) -> None:
    from hatchleaf.manual.explain import facts_explained  # noqa: PLC0415  # slow

    print_json(
        {
            "problems": [as_data(note) for note in notes],
            "units": {
                unit.file.stem: {
                    "code": unit.loaded.spec.code,
                    "pages": len(unit.made.pages.pages),
                    "facts": facts_explained(
                        unit.made.facts, unit.made.manual.library.sources
                    ),
                    "findings": findings_as_data(unit, one),
                    "warranties": [
                        {"what": what, "ends": ends.isoformat()}
                        for what, ends in warranties(unit)
                    ],
                    "unreviewed": unreviewed_as_data(unit),
                    "fit": not one.stopping,
                }
                for unit, one in found
            },
        }
    )
