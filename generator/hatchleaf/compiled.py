"""
Templates as earlier runs compiled them, in a folder that may be deleted any time.

Jinja names a compiled template by a hash of its text, so an edit is seen at once.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

import jinja2

CACHE_VARIABLE: Final = "HATCHLEAF_CACHE"
"""As `hatchleaf.units` has it, whose import would cost more than is saved here."""


def kept_templates(rules: str) -> jinja2.BytecodeCache | None:
    """
    Return where an environment keeps its compiled templates, None for nowhere.

    Args:
        rules: A name for the environment's settings that change what is compiled.

    Returns:
        A cache in the folder that the edge has named, the one that pint uses too.
    """
    named = os.environ.get(CACHE_VARIABLE)
    if not named:
        return None
    folder = Path(named) / "templates"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError:
        return None
    pattern = f"{jinja2.__version__}-{rules}-%s"
    return jinja2.FileSystemBytecodeCache(str(folder), pattern)
