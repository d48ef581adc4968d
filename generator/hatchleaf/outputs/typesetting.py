"""
Setting a page by typst: our templates and fonts only, what it refuses as data.

Words reach a template as JSON, never as its language, so nothing in a unit's file
can be taken for markup.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

import typst

THEME: Final = Path(__file__).resolve().parent.parent / "theme"
FONTS: Final = THEME / "fonts"
TEMPLATES: Final = THEME / "typst"
FAMILY: Final = "Barlow"
WEIGHTS: Final = frozenset({500, 600, 700})

_OVERFLOW: Final = re.compile(r"does not fit: ([a-z]+) (\d+)")
_MISSING: Final = re.compile(r'the text `?"(.+?)"`? could not be displayed')
_ESCAPED: Final = re.compile(r"\\u\{([0-9a-f]+)\}")


class TooMuch(Exception):  # noqa: N818  # what it says is all of its name
    """Words did not fit where they belong."""

    def __init__(self, part: str, index: int) -> None:
        """Keep which part of the document it is, and which one of those, from 0."""
        super().__init__(f"{part} {index}")
        self.part = part
        self.index = index


class NoGlyph(Exception):  # noqa: N818  # the same
    """Our fonts have no shape for some text."""

    def __init__(self, text: str) -> None:
        """Keep the text that cannot be shown."""
        super().__init__(text)
        self.text = text


@cache
def fonts_are_there() -> bool:
    """Return whether every face that the templates ask for is among our fonts."""
    fonts = typst.Fonts(
        include_system_fonts=False,
        include_embedded_fonts=False,
        font_paths=[FONTS],
    ).fonts()
    return {f.weight for f in fonts if f.family == FAMILY} >= WEIGHTS


@dataclass(frozen=True)
class Document:
    """A template with its data, ready to be set as PDF and as images."""

    template: str
    data: Mapping[str, Any]

    def pdf(self) -> bytes:
        """
        Return the document as tagged PDF (PDF/UA-1), the same bytes every time.

        Raises:
            TooMuch: if words do not fit
            NoGlyph: if a character is in none of our fonts
        """
        result = self._compile(format="pdf", pdf_standards=["ua-1"])
        return result if isinstance(result, bytes) else b"".join(result)

    def images(self, dots_per_inch: int) -> tuple[bytes, ...]:
        """Return every page as PNG, at a number of dots per inch."""
        result = self._compile(format="png", ppi=float(dots_per_inch))
        return (result,) if isinstance(result, bytes) else tuple(result)

    def _compile(self, **how: Any) -> Any:
        """Return what typst makes of the document."""
        if not fonts_are_there():
            raise RuntimeError(f"the fonts of this package are missing from {FONTS}")
        try:
            return typst.compile(
                TEMPLATES / self.template,
                root=TEMPLATES,
                font_paths=[FONTS],
                ignore_system_fonts=True,
                sys_inputs={"data": json.dumps(self.data, ensure_ascii=False)},
                **how,
            )
        except typst.TypstError as error:
            said = str(error)
            if found := _OVERFLOW.search(said):
                raise TooMuch(found[1], int(found[2])) from error
            if found := _MISSING.search(said):
                text = _ESCAPED.sub(lambda code: chr(int(code[1], 16)), found[1])
                raise NoGlyph(text) from error
            raise
