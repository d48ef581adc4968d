"""``hatchleaf print``: a unit's whole guide as one PDF, for those who want paper."""

from __future__ import annotations

from pathlib import Path

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
from hatchleaf.workspace import Workspace


@click.command(
    "print", epilog="Example: hatchleaf print heron-a --paper a4 --to heron-a.pdf"
)
@click.argument("unit")
@click.option(
    "--paper",
    type=click.Choice(["letter", "a4"]),
    help="The paper; what printers of the unit's market hold when left out.",
)
@click.option(
    "--to",
    type=click.Path(dir_okay=False, path_type=Path),
    help=(
        "The PDF to write, outside the site folder; guide-UNIT.pdf in this folder "
        "when left out."
    ),
)
@workspace_option
@reports
def command(unit: str, paper: str | None, to: Path | None, root: Path) -> None:
    """
    Write UNIT's whole guide as one PDF, to be printed.

    Cover and map, contents, all topics by number, an index in owners' words, and the
    codes of the stickers.  It is as public as the website: nothing private is in it.
    """
    workspace = open_workspace(root)
    target = to or Path(f"guide-{workspace.unit_file(unit).stem}.pdf")
    check_pdf_target(target, workspace)
    _check_tools()
    (found,) = gathered(workspace, [unit])
    print_problems([*found.loaded.notes, *refuse_unfit([found])], "")
    progress(f"setting {found.file.stem}, which takes a while")
    pdf, chosen = _set(workspace, found, paper)
    from hatchleaf.outputs.land import land_file  # noqa: PLC0415  # slow

    land_file(target, pdf)
    result(f"{target}: the guide on {chosen} paper, {len(pdf) / 1e6:.1f} MB")


def _check_tools() -> None:
    """
    Find out first whether it can be done at all.

    Raises:
        ClickException: Says what to install.
    """
    from hatchleaf.outputs.book_paper import (  # noqa: PLC0415  # slow
        CannotPrintError,
        weasyprint,
    )

    try:
        weasyprint()
    except CannotPrintError as error:
        raise click.ClickException(str(error)) from None


def _set(workspace: Workspace, unit: Unit, paper: str | None) -> tuple[bytes, str]:
    # Here, since they are slow to import.
    from hatchleaf import ledger_files  # noqa: PLC0415
    from hatchleaf.ledger import fold  # noqa: PLC0415
    from hatchleaf.outputs.book import book, paper_of  # noqa: PLC0415
    from hatchleaf.outputs.book_paper import as_pdf  # noqa: PLC0415
    from hatchleaf.outputs.sticker_labels import sticker_set  # noqa: PLC0415

    made, settings = unit.made, workspace.settings
    chosen = paper or paper_of(made.pages.unit.market)
    wanted = sticker_set(made.manual, made.pages, settings.host)
    printed = workspace.root / UNITS / "printed" / wanted.code
    state = fold(ledger_files.read(printed, workspace.root))
    document = book(
        made.manual, made.pages, wanted, state, paper=chosen, brand=settings.brand
    )
    return as_pdf(document, chosen), chosen
