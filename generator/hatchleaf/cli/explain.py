"""``hatchleaf explain``: why a block is in or out, how a number came about."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from hatchleaf.cli.edge import (
    json_option,
    open_workspace,
    print_json,
    reports,
    result,
    workspace_option,
)
from hatchleaf.cli.second import Alone
from hatchleaf.problems import Place, Problem, ProblemsFound, listed, suggestion

if TYPE_CHECKING:
    from hatchleaf.blocks.choose import Selection
    from hatchleaf.blocks.model import Library, Topic
    from hatchleaf.facts.model import Facts
    from hatchleaf.workspace import Workspace


@click.command("explain", epilog="Example: hatchleaf explain heron-a water.days")
@click.argument("unit")
@click.argument("what", default="")
@workspace_option
@json_option
@reports
def command(unit: str, what: str, root: Path, *, as_json: bool) -> None:
    """
    Explain UNIT: its blocks, or WHAT, a topic's number or a fact's name.

    A fact's base name, such as water.days, stands for all its items.
    """
    workspace = open_workspace(root)
    found = _found(workspace, unit)
    if not what:
        _show_blocks(found, None, as_json=as_json)
    elif what.isdecimal():
        _show_blocks(found, _topic(found, int(what)), as_json=as_json)
    else:
        _show_facts(found, what, as_json=as_json)


@dataclass(frozen=True)
class _Found:
    """What can be explained, even of a unit whose guide is not complete yet."""

    file: str
    library: Library
    facts: Facts
    selection: Selection


def _found(workspace: Workspace, unit: str) -> _Found:
    from hatchleaf.blocks.choose import choose  # noqa: PLC0415  # slow
    from hatchleaf.facts.work_out import work_out  # noqa: PLC0415

    library = Alone().library(workspace)
    spec = workspace.load(unit).spec
    facts = work_out(spec)
    file = workspace.unit_file(unit).relative_to(workspace.root).as_posix()
    return _Found(file, library, facts, choose(library, spec, facts))


def _topic(unit: _Found, number: int) -> Topic:
    topics = unit.library.topics.values()
    for topic in topics:
        if topic.number == number:
            return topic
    raise ProblemsFound(
        [
            Problem(
                Place(unit.file),
                "",
                f"there is no topic {number:03d}",
                listed(f"{topic.number:03d}" for topic in topics),
            )
        ]
    )


def _show_blocks(unit: _Found, topic: Topic | None, *, as_json: bool) -> None:
    from hatchleaf.manual.explain import blocks_explained  # noqa: PLC0415  # slow

    data = blocks_explained(unit.selection, topic.id if topic else "")
    if as_json:
        print_json(data)
        return
    if topic:
        result(f"{topic.number:03d} {topic.title}")
    for side in ("in", "out"):
        result(f"{side} ({len(data[side])}):")
        for row in data[side]:
            result(_row(row))


def _row(row: dict[str, Any]) -> str:
    item = f" for '{row['item']}'" if row.get("item") else ""
    if row.get("always"):
        reasons = "on every unit"
    else:
        reasons = "; ".join(f"{r['line']} (here: {r['found']})" for r in row["reasons"])
    return (
        f"  {row['topic']}: {row['block']}{item}: {reasons or 'wherever its topic is'}"
    )


def _show_facts(unit: _Found, name: str, *, as_json: bool) -> None:
    from hatchleaf.manual.explain import fact_explained  # noqa: PLC0415  # slow

    facts = unit.facts
    found = (facts[name],) if name in facts else facts.of(name)
    if not found:
        raise ProblemsFound([_no_fact(unit, name)])
    sources = unit.library.sources
    data = [fact_explained(fact, sources) for fact in found]
    if as_json:
        print_json(data)
        return
    for row in data:
        result(f"{row['name']}: {row['shown']}")
        result(f"    how: {row['basis']}")
        for given in row["inputs"]:
            result(f"    from: {given['path']}: {given['text']}")
        result(f"    source: {row['source_title'] or row['source']}")
        if row["typical"]:
            result("    typical: not this unit's own figure")
        if row["brochure"]:
            result("    brochure: not read from this unit")


def _no_fact(unit: _Found, name: str) -> Problem:
    facts = unit.facts
    missing = facts.missing.get(name) or facts.missing_for(name)
    if missing:
        return Problem(
            Place(unit.file),
            name,
            "cannot be worked out",
            hint=f"unknown in the unit's file: {', '.join(missing)}",
        )
    bases = {fact.base for fact in facts.values()}
    return Problem(
        Place(unit.file),
        name,
        "this unit has no such fact",
        listed(bases),
        suggestion(name, [*bases, *facts]),
    )
