"""
The phone copy: a unit's whole guide in one HTML file that opens without signal.

It opens from a phone's files, where nothing beside it can be read and where several
previewers run no script, so it must be complete and in order without one.  Its
script is the same for every unit; what differs is data.
"""

from __future__ import annotations

import base64
import hashlib
import re
from dataclasses import replace
from typing import Final

from markupsafe import Markup

from hatchleaf.manual.model import Page, Pages
from hatchleaf.outputs.fragments import (
    EMERGENCIES,
    HOME,
    Environment,
    context,
    copy_target,
    environment,
    theme_text,
)
from hatchleaf.outputs.palette import stylesheet
from hatchleaf.outputs.search import words_packed
from hatchleaf.outputs.slimming import lean, slimmed

FILE_NAME: Final = "manual.html"
"""Beside the pages of one unit: ``site/<code>/manual.html``."""

LIMIT: Final = 1_500_000
"""Bytes: it is sent by message and kept on old phones."""

_SCRIPTS: Final = ("inflate.js", "search.js", "reader.js")
_HEADING: Final = re.compile(r"(</?h)([2-5])(?=[ >])")


def phone_copy(pages: Pages, *, brand: str = "", env: Environment | None = None) -> str:
    """
    Return the whole guide as one self-contained HTML document.

    Args:
        pages: All pages of the unit, links still symbolic.

        brand: The dealership's colour as ``#rrggbb``; ours when empty.

        env: An environment over our templates that has compiled them already.

    Returns:
        The document.  Its policy allows its own style and script by their hashes
        and nothing else, from nowhere else.
    """
    style = lean(stylesheet(brand))
    script = "".join(lean(theme_text(f"assets/{name}")) for name in _SCRIPTS)
    sheets = [
        context(
            _lowered(page), pages, root="", assets="", target=copy_target, copy=True
        )
        for page in reading_order(pages)
    ]
    whole = (
        (env or environment())
        .get_template("phone.html")
        .render(
            pages=pages,
            sheets=sheets,
            numbers=" ".join(str(page.number) for page in pages.pages),
            # Hashes, files of ours and JSON without "<": nothing from a unit's file.
            csp=Markup(policy(style, script)),  # noqa: S704
            style=Markup(style),  # noqa: S704
            script=Markup(script),  # noqa: S704
            words=Markup(words_packed(pages)),  # noqa: S704
        )
    )
    return slimmed(whole)


def reading_order(pages: Pages) -> tuple[Page, ...]:
    """
    Return the pages as someone without scripts reads them.

    Args:
        pages: All pages of the unit.

    Returns:
        Emergencies, home with the contents, the journeys, then all others by number.
    """
    places = {EMERGENCIES: 0, HOME: 1}

    def place(page: Page) -> tuple[int, int]:
        rest = 2 if page.system == "journey" else 3
        return places.get(page.number, rest), page.number

    return tuple(sorted(pages.pages, key=place))


def policy(style: str, script: str) -> str:
    """
    Return the content security policy of one phone copy.

    Args:
        style: The text of its one style element.

        script: The text of its one script.
    """
    return (
        f"default-src 'none'; style-src '{_sha256(style)}'; "
        f"script-src '{_sha256(script)}'; img-src data:; "
        "base-uri 'none'; form-action 'none'"
    )


def _sha256(text: str) -> str:
    """Return a text's hash as a policy writes it."""
    digest = hashlib.sha256(text.encode("utf-8")).digest()
    return f"sha256-{base64.b64encode(digest).decode('ascii')}"


def _lowered(page: Page) -> Page:
    """Return the page with its headings one level down: the guide's title is above."""
    body = _HEADING.sub(lambda found: f"{found[1]}{int(found[2]) + 1}", page.body)
    return replace(page, body=body)
