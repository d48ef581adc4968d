"""
The dealer's door: what stands at the root of the website, for those without a scan.

A page with a box for the code, the page for addresses that lead nowhere, and the word
to search engines.  None of them names a unit: guides are found by their stickers.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.outputs.fragments import environment, theme_text
from hatchleaf.outputs.palette import stylesheet
from hatchleaf.outputs.slimming import lean
from hatchleaf.outputs.website.assets import Shared
from hatchleaf.settings import Settings
from hatchleaf.spec.code import TABLE

INDEX: Final = "index.html"
LOST: Final = "404.html"
ROBOTS: Final = "robots.txt"
NAMES: Final = (INDEX, LOST, ROBOTS)

_STYLE: Final = "door.css"
_SCRIPT: Final = "door.js"
_ICON: Final = "icon.svg"
_NOBODY: Final = """\
# Guides are for who has the sticker; made by Hatchleaf
User-agent: *
Disallow: /
"""


def door(settings: Settings) -> dict[str, bytes]:
    """
    Return the files at the root of the website, and those that they share.

    Args:
        settings: The dealership's settings.

    Returns:
        Bytes by path below the site.  A host shows `LOST` at whatever depth the
        address has, so all of its own addresses begin at the root.
    """
    shared = Shared(
        {
            _STYLE: (
                lean(stylesheet(settings.brand)) + lean(theme_text("door.css"))
            ).encode(),
            _SCRIPT: lean(theme_text("door.js")).encode(),
            _ICON: theme_text(f"assets/{_ICON}").encode(),
        }
    )
    template = environment().get_template("door.html")
    pages = {
        name: template.render(
            settings=settings,
            lost=name == LOST,
            root="/" if name == LOST else "./",
            assets=f"{'/' if name == LOST else ''}{shared.folder}/",
            table=" ".join(TABLE),
        ).encode()
        for name in (INDEX, LOST)
    }
    files = {f"{shared.folder}/{name}": data for name, data in shared.files.items()}
    return {**files, **pages, ROBOTS: _NOBODY.encode()}
