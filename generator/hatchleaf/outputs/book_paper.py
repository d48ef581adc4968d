"""
The guide's document set as PDF by WeasyPrint, which is an extra of the package.

Only what is in the document itself is read, and our own fonts: nothing from a network
and nothing of the machine, so that the same guide gives the same bytes.
"""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from typing import Any, Final

from hatchleaf.outputs.fragments import theme_text
from hatchleaf.outputs.typesetting import FONTS

FAMILY: Final = "Barlow Semi Condensed"
_FACES: Final = {"Medium": 500, "SemiBold": 600, "Bold": 700}
_SIZES: Final = {"letter": "8.5in 11in", "a4": "210mm 297mm"}

NEEDS_PYTHON: Final = "printing needs WeasyPrint: pip install weasyprint"
NEEDS_PANGO: Final = (
    "printing needs Pango, a library of the system, which is not installed. "
    "Debian, Ubuntu: apt-get install libpango-1.0-0 libpangoft2-1.0-0 "
    "libharfbuzz-subset0. Fedora: dnf install pango. macOS: brew install pango. "
    "Windows: the package mingw-w64-x86_64-pango of MSYS2"
)


class CannotPrintError(RuntimeError):
    """What sets the pages is not installed; the text says what to install."""


def weasyprint() -> Any:
    """
    Return the module that sets pages.

    Raises:
        CannotPrintError: It or its library of the system is missing.
    """
    try:
        import weasyprint as found  # noqa: PLC0415  # an extra, and slow
    except ModuleNotFoundError:
        raise CannotPrintError(NEEDS_PYTHON) from None
    except OSError:
        # It loads Pango as it is imported.
        raise CannotPrintError(NEEDS_PANGO) from None
    return found


def as_pdf(document: str, paper: str) -> bytes:
    """
    Return a document as PDF, the same bytes every time.

    Args:
        document: What `book` has made.
        paper: ``letter`` or ``a4``.

    Raises:
        CannotPrintError: What sets the pages is not installed.
    """
    weasy = weasyprint()
    from weasyprint.text.fonts import FontConfiguration  # noqa: PLC0415  # an extra
    from weasyprint.urls import URLFetcher  # noqa: PLC0415  # the same

    # What the document brings along, and nothing else.
    fetcher = URLFetcher(allowed_protocols=("data",))
    fonts = FontConfiguration()
    style = f"{_faces()}\n{theme_text('book.css')}\n@page {{ size: {_SIZES[paper]} }}"
    sheet = weasy.CSS(string=style, url_fetcher=fetcher, font_config=fonts)
    html = weasy.HTML(string=document, url_fetcher=fetcher)
    made: bytes = html.write_pdf(
        stylesheets=[sheet],
        font_config=fonts,
        pdf_identifier=hashlib.sha256((style + document).encode()).digest()[:16],
    )
    return made


@cache
def _faces() -> str:
    """Return our fonts as rules."""
    rules = []
    for name, weight in _FACES.items():
        data = (FONTS / f"BarlowSemiCondensed-{name}.ttf").read_bytes()
        text = base64.b64encode(data).decode("ascii")
        rules.append(
            f'@font-face {{ font-family: "{FAMILY}"; font-weight: {weight}; '
            f"src: url(data:font/ttf;base64,{text}) }}"
        )
    return "\n".join(rules)
