"""``hatchleaf check``: look at units and blocks, write nothing."""

from __future__ import annotations

from pathlib import Path

import click

from hatchleaf.cli.edge import (
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


@click.command("check", epilog="Example: hatchleaf check heron-a heron-b")
@click.argument("units", nargs=-1)
@workspace_option
@json_option
@reports
def command(units: tuple[str, ...], root: Path, *, as_json: bool) -> None:
    """Check UNITS (all when none is named), their models and all blocks."""
    workspace = open_workspace(root)
    done = gathered(workspace, units_or_all(workspace, units))
    notes = [note for unit in done for note in unit.loaded.notes]
    if as_json:
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
                    }
                    for unit in done
                },
            }
        )
        return
    print_problems(notes, "")
    for unit in done:
        made = unit.made
        result(
            f"{unit.file.stem}: good; {len(made.pages.pages)} pages, "
            f"{len(made.facts)} numbers worked out"
        )
