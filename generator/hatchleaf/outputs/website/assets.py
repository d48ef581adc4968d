"""
The files that all pages share: once per content, below ``a/<hash>/``.

A page names its shared files by their hash, so a folder never changes and may be
kept by browsers for good.  `sweep` takes away what no page names any more.
"""

from __future__ import annotations

import hashlib
import json
import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from hatchleaf.outputs import land
from hatchleaf.outputs.fragments import theme_text
from hatchleaf.outputs.palette import stylesheet

FOLDER: Final = "a"
RECORD: Final = "edition.json"
"""Beside a unit's pages: which edition they are and which shared files they name."""

MARK: Final = b"made by Hatchleaf"
"""Stands in each file of the root, where a host may have pages of its own."""

_DIGITS: Final = 16
_NAMED: Final = re.compile(rf"{FOLDER}/[0-9a-f]{{{_DIGITS}}}(?=/)")
_AS_THEY_ARE: Final = ("reader.js", "saved.js", "search.js", "icon.svg")
STYLE: Final = "style.css"


@dataclass(frozen=True)
class Shared:
    """Files below one folder whose name follows from their bytes."""

    files: Mapping[str, bytes]

    @property
    def folder(self) -> str:
        """The folder below the site, such as ``a/0123456789abcdef``."""
        digest = hashlib.sha256()
        for name, content in sorted(self.files.items()):
            # Lengths first, so that no two sets of files read the same.
            digest.update(f"{len(name)} {len(content)} {name}".encode())
            digest.update(content)
        return f"{FOLDER}/{digest.hexdigest()[:_DIGITS]}"


def shared_files(brand: str) -> Shared:
    """
    Return the style, scripts and icon of the pages.

    Args:
        brand: The dealership's colour as ``#rrggbb``; ours when empty.
    """
    files = {name: theme_text(f"assets/{name}") for name in _AS_THEY_ARE}
    files[STYLE] = stylesheet(brand)
    return Shared({name: text.encode() for name, text in sorted(files.items())})


def record(edition: str, shared: Shared) -> bytes:
    """
    Return the text of a unit's `RECORD`.

    Args:
        edition: The edition printed on the pages.

        shared: The files that the pages name.
    """
    return json.dumps({"edition": edition, "shared": shared.folder}).encode() + b"\n"


def land_site(site: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """
    Put finished units in place: shared files first, each unit's folder, the root last.

    Args:
        site: The folder that gets published; made when missing.

        files: Bytes by path below it: ``a/<hash>/...``, ``<code>/...``, and pages
            of the root, which have no folder and replace none but ours.

    Returns:
        The units' folders, in order.

    Raises:
        ProblemsFound: Another command is at work there.
    """
    folders: dict[str, dict[str, bytes]] = {}
    for name, content in files.items():
        if "/" not in name:
            continue
        depth = 2 if name.startswith(f"{FOLDER}/") else 1
        *folder, rest = name.split("/", depth)
        folders.setdefault("/".join(folder), {})[rest] = content
    shared = sorted(name for name in folders if name.startswith(f"{FOLDER}/"))
    for name in shared:
        land.land_once(site / name, folders[name])
    units = sorted(set(folders) - set(shared))
    for name in units:
        land.land_folder(site / name, folders[name])
    for name, content in files.items():
        if "/" not in name and may_put(site / name, content):
            land.land_file(site / name, content)
    sweep(site)
    return tuple(site / name for name in units)


def sweep(site: Path) -> tuple[str, ...]:
    """
    Take away shared folders that neither a unit nor a page of the root names.

    Args:
        site: The folder that gets published.

    Returns:
        The folders taken away, such as ``a/0123456789abcdef``.  None go while any
        unit's `RECORD` cannot be read, since that unit may name them.
    """
    named: set[str] = set()
    for page in site.glob("*.html"):
        named |= named_in(page.read_bytes())
    for unit in site.iterdir():
        if not unit.is_dir() or unit.name == FOLDER or unit.name.startswith("."):
            continue
        try:
            named.add(str(json.loads((unit / RECORD).read_bytes())["shared"]))
        except (OSError, ValueError, KeyError, TypeError):
            return ()
    gone = [
        folder
        for folder in sorted((site / FOLDER).glob("*"))
        if folder.is_dir()
        and not folder.name.startswith(".")
        and f"{FOLDER}/{folder.name}" not in named
    ]
    for folder in gone:
        shutil.rmtree(folder)
    return tuple(f"{FOLDER}/{folder.name}" for folder in gone)


def named_in(page: bytes) -> set[str]:
    """Return the shared folders that a page of the root names."""
    return set(_NAMED.findall(page.decode(errors="replace")))


def may_replace(found: bytes, content: bytes) -> bool:
    """
    Return whether a page of the root is to be replaced.

    Args:
        found: What is there; what is not marked as ours is somebody's own and stays.

        content: What would be put there.
    """
    return MARK in found and found != content


def may_put(path: Path, content: bytes) -> bool:
    """Return whether a page of the root is to be written; see `may_replace`."""
    return not path.exists() or (
        path.is_file() and may_replace(path.read_bytes(), content)
    )
