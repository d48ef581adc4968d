"""Where the built-in content is: in the installed package, or in the checkout."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Final

CONTENT: Final = "content_blocks"
UNITS: Final = "unit_specs"


def builtin() -> Path:
    """
    Return the folder that holds the built-in content and the sample units.

    Returns:
        ``_builtin`` of an installed package; in a checkout, its root.
    """
    package = Path(str(files("hatchleaf")))
    packed = package / "_builtin"
    return packed if packed.is_dir() else package.parent.parent
