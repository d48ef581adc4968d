"""
The proof of a sheet: every label decoded from its rendering, against the ledger.

The pages are rendered from the same document as the PDF, by the same typesetter, and
read by a decoder that shares nothing with what drew the symbols.
"""

from __future__ import annotations

import io
from typing import Final

import zxingcpp
from PIL import Image

from hatchleaf.ledger import Event, Printed, PrintedLabel
from hatchleaf.outputs.sticker_sheets import Preset
from hatchleaf.outputs.typesetting import Document
from hatchleaf.problems import Place, Problem, ProblemsFound

DOTS_PER_INCH: Final = 300
_UM_PER_INCH: Final = 25_400


def prove(document: Document, preset: Preset, event: Event, where: Place) -> None:
    """
    Compare every label of a document with its row in the event.

    Args:
        document: the sheets
        preset: where labels are on them
        event: what is to be recorded
        where: the unit's file, for problems

    Raises:
        ProblemsFound: if one label does not carry exactly its row's address
    """
    if not isinstance(event.body, Printed):
        raise TypeError("only a print can be proved")
    pages = document.images(DOTS_PER_INCH)
    problems: list[Problem] = []
    for number, page in enumerate(pages, start=1):
        rows = [row for row in event.body.labels if row.sheet == number]
        if rows:
            with Image.open(io.BytesIO(page)) as image:
                gray = image.convert("L")
            problems.extend(
                problem
                for row in rows
                if (problem := _compared(gray, preset, row, where)) is not None
            )
    if problems:
        raise ProblemsFound(problems)


def _compared(
    page: Image.Image, preset: Preset, row: PrintedLabel, where: Place
) -> Problem | None:
    """Return what is wrong with one label on a page, if anything."""
    found = zxingcpp.read_barcodes(page.crop(_box(preset, row.spot - 1)))
    said = [code.text for code in found]
    if said == [row.payload] and found[0].format == zxingcpp.BarcodeFormat.QRCode:
        return None
    what = f"the code of sticker {row.topic:03d} does not read as it must"
    return Problem(where, "stickers", what, row.payload, f"read: {said or 'nothing'}")


def _box(preset: Preset, spot: int) -> tuple[int, int, int, int]:
    """Return a spot in dots: left, top, right, bottom."""
    x, y = preset.corner(spot)
    width, height = preset.label
    left, top, right, bottom = (
        round(length * DOTS_PER_INCH / _UM_PER_INCH)
        for length in (x, y, x + width, y + height)
    )
    return left, top, right, bottom
