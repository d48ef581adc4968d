"""``hatchleaf private``: what only the owners get, as one page and as PDF."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from hatchleaf.cli.edge import (
    Unit,
    gathered,
    open_workspace,
    print_problems,
    progress,
    reports,
    result,
    workspace_option,
)
from hatchleaf.cli.fitness import judged, refuse_unfit
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.workspace import Workspace

if TYPE_CHECKING:
    from hatchleaf.outputs.private_copy import PrivateCopy

FOLDER: Final = "private"
_IGNORED: Final = ".gitignore"


@click.command("private", epilog="Example: hatchleaf private heron-a")
@click.argument("unit")
@click.option(
    "--to",
    type=click.Path(file_okay=False, path_type=Path),
    help=(
        f"The folder to make the unit's own folder in; {FOLDER}/ of the workspace when "
        "left out. Never below the site folder, which gets published."
    ),
)
@workspace_option
@reports
def command(unit: str, to: Path | None, root: Path) -> None:
    """
    Write UNIT's private copy: VIN, serials, keys, tests, warranties, dates.

    One page for a screen and the same as PDF.  Hand them over, and publish neither:
    they are for the owners alone.
    """
    workspace = open_workspace(root)
    folder = to or workspace.root / FOLDER
    _check_target(folder, workspace)
    (found,) = gathered(workspace, [unit])
    print_problems([*found.loaded.notes, *refuse_unfit([found])], "")
    progress(f"writing the private copy of {found.file.stem}")
    target = folder / found.loaded.spec.code
    _refuse_others(target)
    files = _files(workspace, found)

    from hatchleaf.outputs.land import land_file, land_folder  # noqa: PLC0415  # slow

    if to is None and not (folder / _IGNORED).exists():
        # Before anything private is there.
        land_file(folder / _IGNORED, b"*\n")
    land_folder(target, files)
    for name in files:
        result(f"{target / name}")
    result("private: hand it over, keep it out of the unit, publish it nowhere")


def _check_target(folder: Path, workspace: Workspace) -> None:
    if folder.resolve().is_relative_to(workspace.site.resolve()):
        raise click.BadParameter(
            "a private copy does not belong in the site folder, which gets published",
            param_hint="'--to'",
        )


def _refuse_others(target: Path) -> None:
    """
    Refuse a folder that holds what is not ours, since it is exchanged as a whole.

    Raises:
        ProblemsFound: Names one such file.
    """
    from hatchleaf.outputs.private_files import NAMES  # noqa: PLC0415  # slow

    others = [path for path in sorted(target.glob("*")) if path.name not in NAMES]
    if others:
        what = "is no file of a private copy, and would be lost"
        hint = "move it elsewhere: this folder is written anew each time"
        raise ProblemsFound([Problem(Place(str(others[0])), "", what, hint=hint)])


def _files(workspace: Workspace, unit: Unit) -> dict[str, bytes]:
    # Here, since typst is slow to import.
    from hatchleaf.outputs.private_copy import private_copy  # noqa: PLC0415
    from hatchleaf.outputs.private_files import PAGE, PAPER, as_page  # noqa: PLC0415

    spec, made = unit.loaded.spec, unit.made
    copy = private_copy(
        spec,
        made.facts,
        judged(unit),
        made.pages.unit,
        f"{workspace.settings.site_url}{spec.code}/",
    )
    files = {PAGE: as_page(copy).encode()}
    paper = _paper(copy)
    return {**files, PAPER: paper} if paper else files


def _paper(copy: PrivateCopy) -> bytes:
    """Return the PDF; nothing, and a word about it, where our fonts lack a letter."""
    from hatchleaf.outputs.private_files import as_paper  # noqa: PLC0415  # slow
    from hatchleaf.outputs.typesetting import NoGlyph  # noqa: PLC0415  # slow

    try:
        return as_paper(copy)
    except NoGlyph as error:
        what = f"our fonts have no shape for {error.text!r}"
        progress(f"no PDF: {what}; print the page instead")
        return b""
