"""What of a unit's file is on no page, and may decide nothing on one."""

from __future__ import annotations

from typing import Final

PRIVATE: Final = (
    "vin",
    "stock",
    "serials",
    "keys",
    "readings",
    "recall",
    "warranties",
    "acknowledged",
)
"""Sections that belong to the dealership and the owner alone."""


def is_private(path: str) -> bool:
    """Return whether a dotted path leads into what is private."""
    return path.split(".", 1)[0].split("[", 1)[0] in PRIVATE
