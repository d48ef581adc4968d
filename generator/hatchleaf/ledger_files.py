"""The ledger on disk: reading it, checking it, adding one event for good."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from hatchleaf.ledger import DIGEST_LENGTH, Event, Printed, Withdrawn, digest_of, parse
from hatchleaf.problems import Place, Problem, ProblemsFound

_NAME: Final = re.compile(
    rf"\d{{4}}-\d{{2}}-\d{{2}}-(?P<digest>[0-9a-f]{{{DIGEST_LENGTH}}})\.json"
)
_HINT: Final = "take the file from version control as it was; it is never edited"


def read(folder: Path, root: Path) -> tuple[Event, ...]:
    """
    Return all events of a unit; none if nothing was printed yet.

    Args:
        folder: the unit's folder below ``unit_specs/printed``
        root: the workspace; places in problems are relative to it

    Raises:
        ProblemsFound: if the ledger is damaged, as `verify` finds it
    """
    events, problems = _look(folder, root)
    if problems:
        raise ProblemsFound(problems)
    return events


def verify(
    folder: Path, root: Path, expected: Iterable[str] = ()
) -> tuple[Problem, ...]:
    """
    Return what is wrong with a unit's ledger: altered files and missing ones.

    A newest event that is simply gone leaves no trace among the others, so what is
    known of it from elsewhere has to be handed in.

    Args:
        folder: the unit's folder below ``unit_specs/printed``
        root: the workspace
        expected: digests that must be there, from what was published
    """
    events, problems = _look(folder, root)
    here = {event.digest for event in events}
    place = Place(_shown(folder, root))
    lost = [
        Problem(
            place, "", f"the event {digest}, known from elsewhere, is gone", hint=_HINT
        )
        for digest in sorted(set(expected) - here)
    ]
    return (*problems, *lost)


def write(folder: Path, event: Event) -> Path:
    """
    Add an event: complete and on the disk under its final name, or not at all.

    Args:
        folder: the unit's folder below ``unit_specs/printed``; made if need be
        event: the event

    Returns:
        the path of the new file

    Raises:
        OSError: if the disk refuses; nothing is left behind
    """
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / event.file_name
    unfinished = stage(path, event.content)
    try:
        unfinished.replace(path)
    finally:
        unfinished.unlink(missing_ok=True)
    try:
        _remember(folder)
    except OSError:
        path.unlink()
        raise
    return path


def stage(path: Path, content: bytes) -> Path:
    """
    Write the content beside where it will stand, safe on the disk.

    Returns:
        the path of the unfinished file, to be renamed or removed
    """
    unfinished = path.with_name(f".{path.name}.{os.getpid()}.unfinished")
    try:
        with unfinished.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except OSError:
        unfinished.unlink(missing_ok=True)
        raise
    return unfinished


def _remember(folder: Path) -> None:
    """Make a folder's names safe on the disk, where the system can."""
    if hasattr(os, "O_DIRECTORY"):  # a folder cannot be opened everywhere
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _look(folder: Path, root: Path) -> tuple[tuple[Event, ...], tuple[Problem, ...]]:
    """Return the sound events of a folder and all that is wrong in it."""
    problems: list[Problem] = []
    events: dict[str, tuple[Event, Place]] = {}
    for path in sorted(folder.glob("*.json")) if folder.is_dir() else ():
        place = Place(_shown(path, root))
        try:
            event = _sound(path, folder.name)
        except ValueError as error:
            problems.append(Problem(place, "", str(error), hint=_HINT))
        else:
            events[event.digest] = (event, place)
    for event, place in events.values():
        problems.extend(
            Problem(
                place, "after", f"the event {parent} before it is missing", hint=_HINT
            )
            for parent in event.after
            if parent not in events
        )
        if isinstance(event.body, Withdrawn):
            target = events.get(event.body.event)
            if target is None or not isinstance(target[0].body, Printed):
                problems.append(
                    Problem(place, "body.event", "names no event that printed stickers")
                )
    return tuple(event for event, _ in events.values()), tuple(problems)


def _sound(path: Path, code: str) -> Event:
    """
    Return the event of a file whose name, place and bytes agree.

    Raises:
        ValueError: if they do not
    """
    name = _NAME.fullmatch(path.name)
    if name is None:
        raise ValueError("not a name of an event: DATE-DIGEST.json")
    content = path.read_bytes()
    if digest_of(content) != name["digest"]:
        raise ValueError("altered: the content is not the one its name was made from")
    event = parse(content)
    if path.name != event.file_name:
        raise ValueError(f"renamed: its name was {event.file_name}")
    if event.code != code:
        raise ValueError(f"in the wrong folder: it belongs to the unit {event.code}")
    return event


def _shown(path: Path, root: Path) -> str:
    """Return the path as problems show it."""
    return path.relative_to(root).as_posix() if path.is_relative_to(root) else str(path)
