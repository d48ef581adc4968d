"""One unit in the browser, made again whenever a block, a unit or the theme changes."""

from __future__ import annotations

import logging
import sys
from typing import Final

from mkdocs.commands.serve import serve

from hatchleaf.outputs.website.engine import check_engine
from hatchleaf.outputs.website.plugin import UNIT
from hatchleaf.workspace import SETTINGS, Workspace

ADDRESS: Final = "127.0.0.1:8000"


def preview(
    workspace: Workspace,
    unit: str = "",
    address: str = ADDRESS,
    *,
    browse: bool = False,
) -> None:
    """
    Serve one unit until interrupted.

    Args:
        workspace: The dealership's folder.

        unit: The unit's name or code; the one of the settings when empty.

        address: Host and port to serve on.

        browse: True opens a browser.

    Raises:
        ProblemsFound: There is no such unit, or `mkdocs.yml` is not in order.
        WrongEngineError: Another MkDocs is installed than the one we know.
    """
    check_engine()
    wanted = unit or workspace.settings.preview
    if wanted:
        workspace.unit_file(wanted)
    logger = logging.getLogger("mkdocs")
    handler = logging.StreamHandler(sys.stderr)
    logger.addHandler(handler)
    logger.setLevel(logging.INFO)
    try:
        serve(
            config_file=str(workspace.root / SETTINGS),
            dev_addr=address,
            open_in_browser=browse,
            docs_dir=str(workspace.cache),
            extra={UNIT: wanted},
        )
    finally:
        logger.removeHandler(handler)
