"""PDF files as MuPDF reads and draws them, a library that shares nothing with ours."""

from __future__ import annotations

from typing import Any

import numpy as np
import pymupdf
from numpy.typing import NDArray


def opened(pdf: bytes) -> Any:
    """Return the document; MuPDF's own classes have no types."""
    return pymupdf.open(stream=pdf)  # type: ignore[no-untyped-call]


def rectangle(left: float, top: float, right: float, bottom: float) -> Any:
    """Return a rectangle, in points."""
    return pymupdf.Rect(left, top, right, bottom)  # type: ignore[no-untyped-call]


def drawn(page: Any, dots_per_inch: int) -> NDArray[np.uint8]:
    """Return a page in gray, a row of dots to a line."""
    pixmap = page.get_pixmap(dpi=dots_per_inch, colorspace=pymupdf.csGRAY)
    pixels = np.frombuffer(pixmap.samples, dtype=np.uint8)
    return pixels.reshape(pixmap.height, pixmap.stride)[:, : pixmap.width]
