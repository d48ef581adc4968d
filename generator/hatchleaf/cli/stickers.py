"""``hatchleaf stickers``: a unit's sticker sheets and emergency card as PDF."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from hatchleaf.cli.edge import (
    Unit,
    check_pdf_target,
    gathered,
    open_workspace,
    print_problems,
    progress,
    reports,
    result,
    workspace_option,
)
from hatchleaf.cli.fitness import refuse_unfit
from hatchleaf.library import UNITS
from hatchleaf.outputs.sticker_sheets import PRESETS
from hatchleaf.problems import Place
from hatchleaf.workspace import Workspace

if TYPE_CHECKING:
    from hatchleaf.outputs.stickers import StickerSet


@click.command(
    "stickers",
    epilog="Example: hatchleaf stickers heron-a --to heron-a.pdf --preset a4-3x8",
)
@click.argument("unit")
@click.option(
    "--to",
    required=True,
    type=click.Path(dir_okay=False, path_type=Path),
    help="The PDF to write; outside the site folder, which gets published.",
)
@click.option(
    "--preset",
    type=click.Choice(list(PRESETS)),
    default=next(iter(PRESETS)),
    show_default=True,
    help="The kind of sheet.",
)
@click.option("--all", "everything", is_flag=True, help="Print optional ones as well.")
@click.option("--optional", is_flag=True, help="Print the optional ones alone.")
@click.option(
    "--skip",
    type=click.IntRange(min=0),
    default=0,
    help="How many spots of the first sheet are used up.",
)
@click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day of printing, for the ledger; today when left out.",
)
@workspace_option
@reports
def command(
    unit: str,
    to: Path,
    root: Path,
    *,
    preset: str,
    skip: int,
    on: datetime.datetime | None,
    everything: bool,
    optional: bool,
) -> None:
    """
    Print UNIT's stickers and its emergency card.

    What was printed is recorded below unit_specs/printed/, before the PDF is there.
    Every label is read back from the finished sheet before this command says done.
    """
    workspace = open_workspace(root)
    check_pdf_target(to, workspace)
    if everything and optional:
        raise click.UsageError("--all and --optional exclude each other.")
    (found,) = gathered(workspace, [unit])
    print_problems([*found.loaded.notes, *refuse_unfit([found])], "")
    # The one clock: nothing but the ledger's date comes from it.
    day = on.date() if on else datetime.datetime.now().astimezone().date()
    progress(f"printing {found.file.stem}")
    _print(
        workspace,
        found,
        to,
        preset=preset,
        skip=skip,
        day=day,
        everything=everything,
        optional=optional,
    )


def _print(
    workspace: Workspace,
    unit: Unit,
    to: Path,
    *,
    preset: str,
    skip: int,
    day: datetime.date,
    everything: bool,
    optional: bool,
) -> None:
    # Here, since typst and the decoder are slow to import.
    from hatchleaf import ledger_files  # noqa: PLC0415
    from hatchleaf.outputs.sticker_labels import sticker_set  # noqa: PLC0415
    from hatchleaf.outputs.sticker_print import make  # noqa: PLC0415
    from hatchleaf.outputs.sticker_release import release  # noqa: PLC0415

    made = unit.made
    wanted = sticker_set(made.manual, made.pages, workspace.settings.host)
    if optional:
        wanted = _optional_ones(wanted)
    folder = workspace.root / UNITS / "printed" / wanted.code
    pdf, event = make(
        wanted,
        PRESETS[preset],
        ledger_files.read(folder, workspace.root),
        on=day,
        where=Place(str(unit.file.relative_to(workspace.root))),
        with_optional=everything,
        skip=skip,
    )
    recorded = release(pdf, event, folder, to)
    count = sum(everything or not label.optional for label in wanted.labels)
    result(f"{to}: {count} stickers and the emergency card, every code read back")
    result(f"recorded in {recorded.relative_to(workspace.root)}")


def _optional_ones(wanted: StickerSet) -> StickerSet:
    return replace(
        wanted,
        labels=tuple(
            replace(label, optional=False) for label in wanted.labels if label.optional
        ),
    )
