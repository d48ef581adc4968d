"""
The sheets that stickers are printed on: sizes, spots, and the size of a module.

All lengths are whole micrometers, so that nothing depends on rounding.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from hatchleaf.outputs.qr import side_of

MODULE_STEP_UM: Final = 50
SMALLEST_MODULE_UM: Final = 750
"""Below it a common 300 dpi printer's ink spread closes the gaps (simulated)."""

TEXT_WIDTH_UM: Final = 26_000
"""What must be left beside the symbol for the words."""


@dataclass(frozen=True)
class Preset:
    """
    A kind of sheet; lengths in micrometers.

    ``left`` and ``top`` are the margins, ``across`` and ``down`` the gaps between
    labels.  A sheet with ``cut`` is of one piece and gets marks to cut along; the
    others come cut, with rounded corners.
    """

    name: str
    what: str
    paper: tuple[int, int]
    columns: int
    rows: int
    label: tuple[int, int]
    left: int
    top: int
    across: int = 0
    down: int = 0
    cut: bool = False

    @property
    def labels(self) -> int:
        """Return how many labels a sheet holds."""
        return self.columns * self.rows

    def corner(self, spot: int) -> tuple[int, int]:
        """Return the top left corner of a spot, counted from 0 along the rows."""
        row, column = divmod(spot, self.columns)
        width, height = self.label
        return (
            self.left + column * (width + self.across),
            self.top + row * (height + self.down),
        )


def _presets(*presets: Preset) -> Mapping[str, Preset]:
    """Return the presets by name."""
    return MappingProxyType({preset.name: preset for preset in presets})


# The A4 3x8 and Letter 2x5 sizes are those of sheets sold ready cut (common practice,
# no source); the Letter 3x7 sheet is one piece of film, cut along the marks.
PRESETS: Final = _presets(
    Preset(
        name="letter-3x7",
        what="US Letter, 21 labels of 67.8 x 37.2 mm, one piece to cut",
        paper=(215_900, 279_400),
        columns=3,
        rows=7,
        label=(67_800, 37_200),
        left=6_250,
        top=6_600,
        cut=True,
    ),
    Preset(
        name="a4-3x8",
        what="A4, 24 labels of 63.5 x 33.9 mm",
        paper=(210_000, 297_000),
        columns=3,
        rows=8,
        label=(63_500, 33_900),
        left=7_250,
        top=12_900,
        across=2_500,
    ),
    Preset(
        name="letter-2x5",
        what="US Letter, 10 labels of 4 x 2 in",
        paper=(215_900, 279_400),
        columns=2,
        rows=5,
        label=(101_600, 50_800),
        left=3_970,
        top=12_700,
        across=4_760,
    ),
)


def module_um(preset: Preset, version: int) -> int | None:
    """
    Return the size of a module on a preset's labels.

    Args:
        preset: the sheet
        version: the symbol's version

    Returns:
        the largest whole number of steps with which the symbol and its quiet zone
        fit, in micrometers; None if that is too small for a phone
    """
    width, height = preset.label
    room = min(height, width - TEXT_WIDTH_UM)
    size = room // side_of(version) // MODULE_STEP_UM * MODULE_STEP_UM
    return size if size >= SMALLEST_MODULE_UM else None


def fitting(presets: Iterable[Preset], version: int) -> tuple[str, ...]:
    """Return the names of the presets whose labels hold a symbol of that version."""
    return tuple(p.name for p in presets if module_um(p, version) is not None)
