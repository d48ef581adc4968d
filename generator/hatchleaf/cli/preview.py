"""``hatchleaf preview``: one unit in the browser, reloading on edits."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

import click

from hatchleaf.cli.edge import (
    known_engine,
    open_workspace,
    progress,
    reports,
    workspace_option,
)

_ADDRESS: Final = re.compile(r"[^\s:/]+:([0-9]{1,5})")
_LAST_PORT: Final = 65_535


def _address(_context: click.Context, _option: click.Parameter, value: str) -> str:
    found = _ADDRESS.fullmatch(value)
    if not found or int(found[1]) > _LAST_PORT:
        raise click.BadParameter("HOST:PORT, such as 127.0.0.1:8000")
    return value


@click.command("preview", epilog="Example: hatchleaf preview heron-a --open")
@click.argument("unit", default="")
@click.option(
    "--address",
    default="127.0.0.1:8000",
    show_default=True,
    callback=_address,
    help="Where to serve, as HOST:PORT.",
)
@click.option("--open", "browse", is_flag=True, help="Open a browser.")
@workspace_option
@reports
def command(unit: str, address: str, root: Path, *, browse: bool) -> None:
    """
    Show UNIT in the browser; without a name the one that mkdocs.yml names.

    It is made again on every edit; with problems, a page lists them.  Ctrl-C ends
    it.
    """
    # Here, since MkDocs is slow to import.
    from hatchleaf.outputs.website.preview import preview  # noqa: PLC0415

    workspace = open_workspace(root)
    progress(f"http://{address}/ (Ctrl-C ends it)")
    with known_engine():
        preview(workspace, unit, address, browse=browse)
