"""What a qualified person has not reviewed: told by `check`, refused by `publish`."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from hatchleaf.cli.edge import Unit, result
from hatchleaf.problems import Place, Problem, ProblemsFound

if TYPE_CHECKING:
    from hatchleaf.blocks.model import Block, Unreviewed
    from hatchleaf.workspace import Workspace

_HINT = "'hatchleaf check --unreviewed' prints the lines to fill in"


def unreviewed(unit: Unit) -> list[tuple[Block, Unreviewed]]:
    """Return the blocks of a unit that need a review and have none that holds."""
    made = unit.made
    waiting = made.manual.library.unreviewed
    blocks = {one.block.id: one.block for one in made.selection.chosen}
    called = {name for block in blocks.values() for name in block.calls}
    return [
        (block, waiting[name])
        for name, block in blocks.items()
        if name in waiting and (not block.shared or name in called)
    ]


def stale_notes(units: Iterable[Unit]) -> list[Problem]:
    """Return a note for each review whose text has changed since, once for all."""
    return [
        Problem(
            one.stale.place,
            f"{block.id}.text",
            "the text has changed since this review, which counts no more",
            block.wording,
            f"read {block.file} again, then write the new date and fingerprint",
            severity="note",
        )
        for block, one in _of_all(units)
        if one.stale
    ]


def count_notes(units: Iterable[Unit]) -> list[Problem]:
    """Return a note for each unit that has texts to review."""
    return [
        Problem(
            unit.loaded.place_of("code"),
            "",
            f"{_texts(len(found))} not yet reviewed by a qualified person",
            hint=_HINT,
            severity="note",
        )
        for unit in units
        if (found := unreviewed(unit))
    ]


def refuse_unreviewed(workspace: Workspace, units: Iterable[Unit]) -> None:
    """
    Refuse units with texts to review, unless the settings let them out.

    Raises:
        ProblemsFound: Every such text of all units, once.
    """
    if workspace.settings.allow_unreviewed:
        return
    raise_if(
        Problem(
            block.places.get("reviewed", Place(block.file)),
            "reviewed",
            f"'{block.id}' speaks of {' and '.join(one.hazards)}: a qualified person "
            f"has to review {'its new text' if one.stale else 'it'} before it goes out",
            hint=_HINT,
        )
        for block, one in _of_all(units)
    )


def raise_if(problems: Iterable[Problem]) -> None:
    """
    Raise problems, if there are any.

    Raises:
        ProblemsFound: All of them.
    """
    found = tuple(problems)
    if found:
        raise ProblemsFound(found)


def unreviewed_as_data(unit: Unit) -> list[dict[str, Any]]:
    """Return what is to review as data for ``--json``."""
    return [
        {
            "block": block.id,
            "topic": block.topic,
            "file": block.file,
            "hazards": list(one.hazards),
            "stale": one.stale is not None,
            "text": block.wording,
        }
        for block, one in unreviewed(unit)
    ]


def print_unreviewed(units: Iterable[Unit]) -> None:
    """Print what is to review as the lines of a `reviewed.yml`, by file."""
    blank = "role: , date: YYYY-MM-DD, against: "
    for block, one in _of_all(units):
        why = ", ".join(one.hazards)
        again = "; the text has changed" if one.stale else ""
        result(f"# {block.file}: {why}{again}")
        result(f"{block.id}: {{en: {{{blank}, text: {block.wording}}}}}")


def _of_all(units: Iterable[Unit]) -> list[tuple[Block, Unreviewed]]:
    found = {
        block.id: (block, one) for unit in units for block, one in unreviewed(unit)
    }
    return list(found.values())


def _texts(count: int) -> str:
    one = "1 text of this unit is"
    return one if count == 1 else f"{count} texts of this unit are"
