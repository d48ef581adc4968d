"""
What keeps a unit's guide on a phone: its service worker and its manifest.

The worker has the list of all files that a reader needs, each with its hash, and so
changes whenever one of them does.  It goes out after all of them: see `upload`.  The
phone copy is not in the list: it is the same guide once more, for the phone's files.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Iterable, Mapping
from typing import Final

from hatchleaf.manual.model import UnitCard
from hatchleaf.outputs import phone_copy
from hatchleaf.outputs.fragments import EMERGENCIES, HOME, theme_text
from hatchleaf.outputs.icons import ICONS
from hatchleaf.outputs.palette import variable
from hatchleaf.outputs.slimming import lean
from hatchleaf.outputs.website.assets import FOLDER as SHARED
from hatchleaf.outputs.website.assets import RECORD

WORKER: Final = "sw.js"
"""Beside the pages of one unit, so that it sees to that unit's addresses alone."""
MANIFEST: Final = "manifest.webmanifest"
"""Beside the pages of one unit: how it looks on a home screen."""
NOTICES: Final = "notices.json"
"""
Where a unit's recall notices stand, if it has any; they change without an edition.

The worker asks the network for them first and falls back on the last ones that came.
No other output writes or reads them yet.
"""

_NEEDLESS: Final = {phone_copy.FILE_NAME, RECORD, WORKER, NOTICES, *ICONS}
_INDEX: Final = re.compile(r"(^|/)index\.html$")
_VERSION_DIGITS: Final = 16
_SHORT: Final = 12
"""Characters that a home screen shows below an icon."""


def kept_files(code: str, files: Mapping[str, bytes]) -> dict[str, bytes]:
    """
    Return what a phone keeps of a unit.

    Args:
        code: The unit's code.

        files: All that the unit publishes, by path below the site.

    Returns:
        Bytes by the address that browsers ask for, relative to the unit's folder:
        ``210/`` and ``../a/<hash>/style.css``.
    """
    own = f"{code}/"
    kept = {}
    for name in sorted(files):
        path = name.removeprefix(own) if name.startswith(own) else f"../{name}"
        ours = not path.startswith("../") or name.startswith(f"{SHARED}/")
        if ours and path not in _NEEDLESS:
            kept[_INDEX.sub(r"\1", path)] = files[name]
    return kept


def worker(code: str, edition: str, files: Mapping[str, bytes]) -> bytes:
    """
    Return the service worker of one unit.

    Args:
        code: The unit's code.

        edition: The edition printed on the pages.

        files: All that the unit publishes, by path below the site; with or without
            a worker.

    Returns:
        A script.  The same files give the same bytes, any other file other ones.
    """
    script = lean(theme_text("worker.js"))
    guide: dict[str, object] = {
        "code": code,
        "edition": edition,
        "emergencies": f"{EMERGENCIES:03d}/",
        "files": {path: _sha256(data) for path, data in _first(code, files)},
        "fresh": [NOTICES],
    }
    digest = hashlib.sha256(f"{_json(guide)}{script}".encode()).hexdigest()
    return _script(guide | {"version": digest[:_VERSION_DIGITS]}, script)


def retired_worker(code: str) -> bytes:
    """
    Return a worker that takes away what an earlier one of the same unit has kept.

    Args:
        code: The unit's code.
    """
    return _script({"code": code}, lean(theme_text("retired.js")))


def manifest(unit: UnitCard, style: str) -> bytes:
    """
    Return what a phone needs to put a unit's guide on its home screen.

    Args:
        unit: Whose guide it is.

        style: The style of its pages, for their colours.
    """
    short = unit.name if len(unit.name) <= _SHORT else unit.name.split()[0][:_SHORT]
    content = {
        "id": f"/{unit.code}/",
        "name": f"{unit.year} {unit.maker} {unit.name}",
        "short_name": short,
        "description": unit.title,
        "lang": "en",
        "start_url": f"{HOME:03d}/",
        "scope": "./",
        "display": "standalone",
        "theme_color": variable(style, "brand-day"),
        "background_color": variable(style, "paper"),
        "icons": [
            {
                "src": path,
                "sizes": f"{icon.size}x{icon.size}",
                "type": "image/png",
                "purpose": "maskable" if icon.bleeds else "any",
            }
            for path, icon in ICONS.items()
        ],
    }
    return (json.dumps(content, ensure_ascii=False, indent=1) + "\n").encode()


def _first(code: str, files: Mapping[str, bytes]) -> Iterable[tuple[str, bytes]]:
    """Return the files in the order of the asking: emergencies, shared, all others."""
    turns = {f"{EMERGENCIES:03d}/": 0}

    def turn(item: tuple[str, bytes]) -> tuple[int, str]:
        path, _ = item
        return turns.get(path, 1 if path.startswith("../") else 2), path

    return sorted(kept_files(code, files).items(), key=turn)


def _script(guide: Mapping[str, object], script: str) -> bytes:
    return f"const GUIDE = {_json(guide)};\n{script}".encode()


def _json(guide: Mapping[str, object]) -> str:
    return json.dumps(guide, separators=(",", ":"))


def _sha256(content: bytes) -> str:
    """Return a digest as the integrity of a request takes it."""
    return base64.b64encode(hashlib.sha256(content).digest()).decode("ascii")
