"""``hatchleaf publish``: build the guides of units and put them where owners look."""

from __future__ import annotations

import datetime
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from hatchleaf.cli.addresses import refuse_dead_addresses
from hatchleaf.cli.build import land, sites
from hatchleaf.cli.edge import (
    PROBLEMS,
    Unit,
    as_data,
    gathered,
    gathering,
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
from hatchleaf.cli.fitness import refuse_unfit
from hatchleaf.cli.reviews import (
    count_notes,
    refuse_unreviewed,
    stale_notes,
    unreviewed,
)
from hatchleaf.cli.second import second
from hatchleaf.library import CONTENT, UNITS
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.workspace import CACHE, Workspace

if TYPE_CHECKING:
    from hatchleaf.outputs.published import Published
    from hatchleaf.outputs.target import Target
    from hatchleaf.outputs.upload import Sent


@click.command("publish", epilog="Example: hatchleaf publish heron-a --to /srv/manuals")
@click.argument("units", nargs=-1)
@click.option(
    "--to",
    required=True,
    metavar="TARGET",
    help="A folder, sftp://[USER@]HOST/PATH or s3://BUCKET/PATH.",
)
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day for the record; today when left out.",
)
@workspace_option
@json_option
@reports
def command(
    units: tuple[str, ...],
    root: Path,
    *,
    to: str,
    on: datetime.datetime | None,
    as_json: bool,
) -> None:
    """
    Build the guides of UNITS (all when none is named) and put them at TARGET.

    Only what has changed goes out.  Texts that need a review by a qualified person
    and have none keep a unit here, unless mkdocs.yml says allow_unreviewed: true.
    """
    workspace = open_workspace(root)
    target = _target(workspace, to)
    day = on.date() if on else datetime.datetime.now().astimezone().date()
    with second(workspace) as helper:
        done = gathered(workspace, units_or_all(workspace, units), helper)
        notes = [note for unit in done for note in unit.loaded.notes]
        records = _refuse(workspace, done, notes)
        built = sites(workspace, done, helper)
    from hatchleaf.outputs import published  # noqa: PLC0415  # slow

    land(workspace.site, [files for _, files in built])
    rows: list[dict[str, Any]] = []
    stopped: list[Problem] = []
    with _told_when_stopped(stopped):
        for unit, files in built:
            progress(f"publishing {unit.file.stem}")
            code = unit.made.pages.unit.code
            before = records[code]
            sent = target.send(code, files, before)
            record = _record(workspace, unit, files, target, day)
            # The day is that of the last change: nothing new, no new record.
            if not record.same(before):
                published.write(workspace.root / UNITS / published.FOLDER, record)
            rows.append(_row(unit, record, sent))
    if as_json:
        problems = [as_data(problem) for problem in (*notes, *stopped)]
        print_json({"problems": problems, "units": rows})
    else:
        print_problems(notes, "")
        for row in rows:
            put, gone = len(row["put"]), len(row["taken_away"])
            result(f"{row['unit']}: {put} files put, {gone} taken away: {row['to']}")
        print_problems(stopped, "what was published before is still there")
    if stopped:
        sys.exit(PROBLEMS)


def _target(workspace: Workspace, to: str) -> Target:
    from hatchleaf.outputs.target import (  # noqa: PLC0415  # slow
        AddressError,
        Folder,
        target,
    )

    try:
        found = target(to)
    except AddressError as error:
        raise click.BadParameter(str(error), param_hint="--to") from None
    if isinstance(found, Folder):
        sources = [workspace.root / name for name in (UNITS, CONTENT, CACHE)]
        here = found.path == workspace.root or any(
            found.path.is_relative_to(source) for source in sources
        )
        if here or found.path.is_file():
            what = f"'{to}' is no folder to publish in"
            raise click.BadParameter(what, param_hint="--to")
    return found


def _refuse(
    workspace: Workspace, units: list[Unit], notes: list[Problem]
) -> Mapping[str, Published | None]:
    """
    Return what was last published, unless something keeps a unit here.

    Raises:
        ProblemsFound: All that does, of all units.
    """
    from hatchleaf.outputs import published  # noqa: PLC0415  # slow

    records: dict[str, Published | None] = {}

    def read_records() -> None:
        codes = [unit.made.pages.unit.code for unit in units]
        folder = workspace.root / UNITS / published.FOLDER
        records.update(published.read_all(folder, codes, workspace.root))

    looks: Iterable[Callable[[], object]] = (
        lambda: notes.extend(refuse_unfit(units)),
        lambda: refuse_dead_addresses(workspace, units),
        lambda: refuse_unreviewed(workspace, units),
        read_records,
    )
    problems: list[Problem] = []
    for look in looks:
        with gathering(problems):
            look()
    notes += stale_notes(units)
    if problems:
        raise ProblemsFound([*problems, *notes])
    notes += count_notes(units)
    return records


@contextmanager
def _told_when_stopped(stopped: list[Problem]) -> Iterator[None]:
    from hatchleaf.outputs.target import UploadError  # noqa: PLC0415  # slow

    try:
        yield
    except UploadError as error:
        hint = "run the same command again: it uploads what is missing"
        stopped.append(Problem(Place(error.where), "", str(error), hint=hint))


def _record(
    workspace: Workspace,
    unit: Unit,
    files: Mapping[str, bytes],
    target: Target,
    day: datetime.date,
) -> Published:
    from hatchleaf import ledger_files  # noqa: PLC0415  # slow
    from hatchleaf.outputs import published  # noqa: PLC0415

    card = unit.made.pages.unit
    printed = workspace.root / UNITS / "printed" / card.code
    events = ledger_files.read(printed, workspace.root)
    return published.Published(
        code=card.code,
        edition=card.edition,
        on=day,
        to=target.shown,
        files=published.digests(files),
        printed=tuple(sorted(event.digest for event in events)),
        unreviewed=tuple(sorted(block.id for block, _ in unreviewed(unit))),
    )


def _row(unit: Unit, record: Published, sent: Sent) -> dict[str, Any]:
    return {
        "unit": unit.file.stem,
        "code": record.code,
        "edition": record.edition,
        "to": record.to,
        "put": list(sent.put),
        "taken_away": list(sent.taken_away),
        "unreviewed": list(record.unreviewed),
    }
