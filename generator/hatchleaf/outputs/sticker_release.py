"""Letting a printed set out of hand: first the ledger, then the PDF, or neither."""

from __future__ import annotations

from pathlib import Path

from hatchleaf.ledger import Event
from hatchleaf.ledger_files import stage, write


def release(pdf: bytes, event: Event, ledger: Path, to: Path) -> Path:
    """
    Record a print, then give its PDF the name it was asked for.

    The PDF is complete on the disk, under another name, before the event is written,
    and nobody can print it before.  Should it not get its name after all, the event
    is taken back: nothing was printed.

    Args:
        pdf: the sheets
        event: what they carry
        ledger: the unit's folder below ``unit_specs/printed``
        to: where the PDF goes; its folder exists

    Returns:
        the path of the event's file

    Raises:
        OSError: if the disk refuses; neither file is there then
    """
    unfinished = stage(to, pdf)
    try:
        recorded = write(ledger, event)
        try:
            unfinished.replace(to)
        except OSError:
            recorded.unlink()
            raise
    finally:
        unfinished.unlink(missing_ok=True)
    return recorded
