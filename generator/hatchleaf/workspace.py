"""
A dealership's folder on disk: its settings, its units, its own content.

The reader at the edge; what it returns no longer depends on the disk.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Final

from hatchleaf.library import CONTENT, UNITS, builtin
from hatchleaf.problems import Place, Problem, ProblemsFound, listed, suggestion
from hatchleaf.settings import Settings, read_settings

if TYPE_CHECKING:
    from hatchleaf.spec.load import LoadedUnit

SETTINGS: Final = "mkdocs.yml"
CACHE: Final = ".hatchleaf"
"""Nothing in it is ever needed: with or without it a build gives the same bytes."""

_CODE: Final = re.compile(r"""^code:\s*["']?([0-9]{15})\b""", re.MULTILINE)


@dataclass(frozen=True)
class Workspace:
    """One dealership's folder; ``root`` is where its `mkdocs.yml` is."""

    root: Path

    @cached_property
    def settings(self) -> Settings:
        """
        The dealership's settings.

        Raises:
            ProblemsFound: What is missing or wrong in `mkdocs.yml`, all of it.
        """
        return read_settings(self.root / SETTINGS, self.root)

    @property
    def site(self) -> Path:
        """The folder that gets published."""
        return self.root / "site"

    @property
    def cache(self) -> Path:
        """The folder of what only saves time; made when missing."""
        folder = self.root / CACHE
        folder.mkdir(exist_ok=True)
        return folder

    def keep_units_cached(self) -> None:
        """Let pint and Jinja keep what they compile; to be called before `units`."""
        # By name, since importing `units` for it would cost what it saves.
        os.environ.setdefault("HATCHLEAF_CACHE", str(self.cache / "compiled"))

    def content_folders(self) -> tuple[Path, ...]:
        """Return the built-in content's folder, then the workspace's own if apart."""
        own, built_in = self.root / CONTENT, builtin() / CONTENT
        if not own.is_dir() or own.resolve() == built_in.resolve():
            return (built_in,)
        return (built_in, own)

    def unit_files(self) -> tuple[Path, ...]:
        """Return the units' files, by name; models and records are in folders below."""
        return tuple(sorted((self.root / UNITS).glob("*.yml")))

    def model_files(self) -> tuple[Path, ...]:
        """Return the models' files, by name."""
        return tuple(sorted((self.root / UNITS / "models").glob("*.yml")))

    def codes_by_file(self) -> Mapping[Path, str]:
        """Return the code that each unit's file states, where it states one."""
        return {
            path: found[1]
            for path in self.unit_files()
            if (found := _CODE.search(path.read_text("utf-8", errors="replace")))
        }

    def codes(self) -> frozenset[str]:
        """Return every code that was ever given away here, as far as files tell."""
        records = [
            path.stem
            for folder in ("printed", "published")
            for path in (self.root / UNITS / folder).glob("*")
        ]
        return frozenset((*self.codes_by_file().values(), *records))

    def first_unit(self) -> str:
        """
        Return the name of the first unit.

        Raises:
            ProblemsFound: There is none.
        """
        files = self.unit_files()
        if not files:
            problem = Problem(Place(UNITS), "", "there is no unit's file here yet")
            raise ProblemsFound([problem])
        return files[0].stem

    def unit_file(self, unit: str) -> Path:
        """
        Return one unit's file.

        Args:
            unit: Its file's name with or without ending, or the unit's code.

        Raises:
            ProblemsFound: There is no such unit.
        """
        files = {path.stem: path for path in self.unit_files()}
        name = Path(unit).name.removesuffix(".yml")
        if name in files and unit in _ways_to_name(name):
            return files[name]
        if re.fullmatch("[0-9]{15}", unit):
            for path, code in self.codes_by_file().items():
                if code == unit:
                    return path
        raise ProblemsFound(
            [
                Problem(
                    Place(UNITS),
                    "",
                    f"there is no unit {unit!r}",
                    allowed=listed(files) or "nothing yet: no unit's file is here",
                    hint=suggestion(unit, files),
                )
            ]
        )

    def load(self, unit: str) -> LoadedUnit:
        """
        Return one unit, read and checked.

        Args:
            unit: Its file's name with or without ending, or the unit's code.

        Raises:
            ProblemsFound: All that is wrong in its files.
        """
        # Here, since pydantic and pint are slow to import and not always needed.
        from hatchleaf.spec.load import load_unit  # noqa: PLC0415

        return load_unit(self.unit_file(unit), self.root)


def _ways_to_name(name: str) -> Iterable[str]:
    return (name, f"{name}.yml", f"{UNITS}/{name}", f"{UNITS}/{name}.yml")
