"""``hatchleaf build``: the website and phone copy of units, below the site folder."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import click

from hatchleaf.cli.addresses import refuse_dead_addresses
from hatchleaf.cli.edge import (
    Unit,
    as_data,
    gathered,
    json_option,
    known_engine,
    open_workspace,
    print_json,
    print_problems,
    progress,
    reports,
    result,
    units_or_all,
    workspace_option,
)
from hatchleaf.cli.fitness import refuse_unfit
from hatchleaf.cli.reviews import stale_notes
from hatchleaf.cli.second import Help, second
from hatchleaf.problems import Problem, ProblemsFound
from hatchleaf.workspace import Workspace


@click.command("build", epilog="Example: hatchleaf build heron-a")
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
    with second(workspace) as helper:
        done = gathered(workspace, units_or_all(workspace, units), helper)
        notes = [note for unit in done for note in unit.loaded.notes]
        notes += refuse_unfit(done)
        refuse_dead_addresses(workspace, done)
        notes += stale_notes(done)
        target = site or workspace.site
        built = sites(workspace, done, helper)
    land(target, [files for _, files in built])
    rows = [_row(unit, files, target) for unit, files in built]
    if as_json:
        print_json({"problems": [as_data(note) for note in notes], "units": rows})
        return
    print_problems(notes, "")
    for row in rows:
        result(f"{row['unit']}: {row['pages']} pages in {row['folder']}")


def sites(
    workspace: Workspace, units: Iterable[Unit], helper: Help
) -> list[tuple[Unit, Mapping[str, bytes]]]:
    """
    Return all that each unit publishes, its bytes by path below the site.

    All are built before one is written: a problem leaves what is there alone.

    Raises:
        ProblemsFound: A phone copy that its photos have made too large.
    """
    built = [(unit, _files(workspace, unit, helper)) for unit in units]
    _refuse_large_copies(built)
    return built


def _files(workspace: Workspace, unit: Unit, helper: Help) -> Mapping[str, bytes]:
    progress(f"building {unit.file.stem}")
    with known_engine():
        site = helper.site(unit.made.pages, workspace.settings)
    from hatchleaf.outputs.door import door  # noqa: PLC0415  # slow

    return {**site, **door(workspace.settings)}


def _refuse_large_copies(built: Iterable[tuple[Unit, Mapping[str, bytes]]]) -> None:
    """
    Refuse phone copies that photos have made too large to be sent by message.

    Raises:
        ProblemsFound: One for each unit.
    """
    from hatchleaf.outputs.phone_copy import FILE_NAME, LIMIT  # noqa: PLC0415  # slow

    problems = []
    for unit, files in built:
        pages = unit.made.pages
        size = len(files[f"{pages.unit.code}/{FILE_NAME}"])
        if pages.pictures and size >= LIMIT:
            place = unit.loaded.place_of("photos")
            what = f"with its photos the phone copy takes {size / 1e6:.2f} MB"
            allowed = f"less than {LIMIT / 1e6:g} MB"
            hint = "take photos out; text and drawings need most of it"
            problems.append(Problem(place, "photos", what, allowed, hint))
    if problems:
        raise ProblemsFound(problems)


def land(target: Path, built: Iterable[Mapping[str, bytes]]) -> None:
    """Put finished units in place below *target*."""
    from hatchleaf.outputs.website.assets import land_site  # noqa: PLC0415  # slow

    for files in built:
        land_site(target, files)


def _row(unit: Unit, files: Mapping[str, bytes], target: Path) -> dict[str, Any]:
    from hatchleaf.manual.explain import facts_explained  # noqa: PLC0415  # slow

    made = unit.made
    return {
        "unit": unit.file.stem,
        "code": made.pages.unit.code,
        "folder": str(target / made.pages.unit.code),
        "pages": len(made.pages.pages),
        "files": len(files),
        "edition": made.pages.unit.edition,
        "facts": facts_explained(made.facts, made.manual.library.sources),
    }
