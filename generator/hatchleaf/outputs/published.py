"""
The record of what was last published: one file per unit, replaced as a whole.

It is an input of the next publishing and of whoever looks for lost events of the
ledger, so it goes into version control beside the units' files.
"""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Annotated, ClassVar, Final, Literal, TypeAlias

from pydantic import ConfigDict, Field, TypeAdapter, ValidationError

from hatchleaf.outputs.land import land_file
from hatchleaf.problems import Place, Problem, ProblemsFound

FOLDER: Final = "published"
"""Below the folder of the units' files."""

Digest: TypeAlias = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]


@dataclass(frozen=True)
class Published:
    """What stands where, since when."""

    __pydantic_config__: ClassVar[ConfigDict] = ConfigDict(extra="forbid")

    code: Annotated[str, Field(pattern=r"^[1-9][0-9]{14}$")]
    edition: str
    on: dt.date
    to: str
    """The target as text, without who logs in there."""
    files: Mapping[str, Digest]
    """SHA-256 by path below the target, the shared files among them."""
    printed: tuple[str, ...]
    """The digests of all events of the unit's ledger on that day."""
    unreviewed: tuple[str, ...]
    """The blocks that went out without the review they need."""
    format: Literal[1] = 1

    def same(self, other: Published | None) -> bool:
        """Return True when both say the same but for the day."""
        return other is not None and asdict(self) | {"on": other.on} == asdict(other)


_RECORD: Final = TypeAdapter(Published)


def digests(files: Mapping[str, bytes]) -> dict[str, str]:
    """Return the SHA-256 of each file by its path, sorted."""
    return {name: hashlib.sha256(files[name]).hexdigest() for name in sorted(files)}


def read_all(
    folder: Path, codes: Iterable[str], root: Path
) -> dict[str, Published | None]:
    """
    Return the records of units; None for one that was never published.

    Args:
        folder: Where the records are.
        codes: The units' codes.
        root: The workspace; places are named from here.

    Raises:
        ProblemsFound: Every record that cannot be read.
    """
    found: dict[str, Published | None] = {}
    problems = []
    for code in codes:
        path = folder / f"{code}.json"
        try:
            found[code] = _RECORD.validate_json(path.read_bytes(), strict=True)
        except FileNotFoundError:
            found[code] = None
        except ValidationError as error:
            first = error.errors(include_url=False)[0]
            where = ".".join(str(part) for part in first["loc"])
            place = Place(path.relative_to(root).as_posix())
            hint = (
                "take the file from version control as it was, or delete it: then "
                "everything is uploaded once more"
            )
            problems.append(Problem(place, where, first["msg"].lower(), hint=hint))
    if problems:
        raise ProblemsFound(problems)
    return found


def write(folder: Path, record: Published) -> Path:
    """
    Put a record in place of the one before, in one step.

    Args:
        folder: Where the records are; made when missing.
        record: What was published.

    Returns:
        The record's path.
    """
    data = asdict(record) | {"on": record.on.isoformat()}
    path = folder / f"{record.code}.json"
    text = json.dumps(data, ensure_ascii=False, indent=1, sort_keys=True)
    land_file(path, text.encode() + b"\n")
    return path
