"""The private copy as files: one page for a screen or a printer, and a PDF."""

from __future__ import annotations

import base64
import hashlib
from dataclasses import asdict
from typing import Final

from markupsafe import Markup

from hatchleaf.outputs.fragments import environment, theme_text
from hatchleaf.outputs.private_copy import PrivateCopy
from hatchleaf.outputs.slimming import lean
from hatchleaf.outputs.typesetting import Document

PAGE: Final = "private-copy.html"
PAPER: Final = "private-copy.pdf"
NAMES: Final = (PAGE, PAPER)

_LETTER: Final = ("us", "ca")
"""Markets whose printers hold letter paper; all others hold A4."""


def as_page(copy: PrivateCopy) -> str:
    """
    Return the private copy as one self-contained HTML document.

    It holds no script at all, and its policy lets none run and nothing be fetched.
    """
    style = lean(theme_text("private.css"))
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode("ascii")
    return (
        environment()
        .get_template("private.html")
        .render(
            copy=copy,
            # A hash and a file of ours: nothing from a unit's file.
            csp=Markup(_POLICY.format(digest)),  # noqa: S704
            style=Markup(style),  # noqa: S704
        )
    )


_POLICY: Final = (
    "default-src 'none'; style-src 'sha256-{}'; base-uri 'none'; form-action 'none'"
)


def as_paper(copy: PrivateCopy) -> bytes:
    """
    Return the private copy as PDF, the same bytes every time.

    Raises:
        NoGlyph: A text holds a character that is in none of our fonts.
    """
    paper = "us-letter" if copy.market in _LETTER else "a4"
    return Document("private.typ", {**asdict(copy), "paper": paper}).pdf()
