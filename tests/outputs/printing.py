"""Whether this machine can set a book; CI must, elsewhere the tests say why not."""

from __future__ import annotations

import os

import pytest

from hatchleaf.outputs.book_paper import CannotPrintError, weasyprint


def need_print() -> None:
    """Skip with the reason where Pango is missing; with PRINT=required that fails."""
    try:
        weasyprint()
    except CannotPrintError as error:
        if os.environ.get("PRINT") == "required":
            pytest.fail(str(error))
        pytest.skip(str(error))
