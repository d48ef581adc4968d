"""``hatchleaf build``: the website and phone copy of units, below the site folder."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from hatchleaf.cli.edge import (
    Unit,
    gathered,
    json_option,
    open_workspace,
    print_json,
    print_problems,
    progress,
    reports,
    result,
    units_or_all,
    workspace_option,
)
from hatchleaf.workspace import Workspace


@click.command("build")
@click.argument("units", nargs=-1)
@workspace_option
@click.option(
    "--site",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where to write; the workspace's site/ when left out.",
)
@json_option
@reports
def command(
    units: tuple[str, ...], root: Path, site: Path | None, *, as_json: bool
) -> None:
    """Build the guides of UNITS (all when none is named)."""
    workspace = open_workspace(root)
    done = gathered(workspace, units_or_all(workspace, units))
    target = site or workspace.site
    rows = [_built(workspace, unit, target) for unit in done]
    notes = [note for unit in done for note in unit.loaded.notes]
    if as_json:
        print_json({"units": rows})
        return
    print_problems(notes, "")
    for row in rows:
        result(f"{row['unit']}: {row['pages']} pages in {row['folder']}")


def _built(workspace: Workspace, unit: Unit, target: Path) -> dict[str, Any]:
    # Here, since MkDocs is slow to import and a file with problems needs none.
    from hatchleaf.manual.explain import facts_explained  # noqa: PLC0415
    from hatchleaf.outputs.website.assets import land_site  # noqa: PLC0415
    from hatchleaf.outputs.website.loop import build_site  # noqa: PLC0415

    progress(f"building {unit.file.stem}")
    made = unit.made
    files = build_site(made.pages, workspace.settings)
    land_site(target, files)
    return {
        "unit": unit.file.stem,
        "code": made.pages.unit.code,
        "folder": str(target / made.pages.unit.code),
        "pages": len(made.pages.pages),
        "files": len(files),
        "edition": made.pages.unit.edition,
        "facts": facts_explained(made.facts, made.manual.library.sources),
    }
