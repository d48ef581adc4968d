"""
Reading the library: blocks, registry, journeys, sources; all problems at once.

A block's front matter is read like a unit's file: as text with positions.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Final

from hatchleaf.blocks.checking import check_block
from hatchleaf.blocks.checking_lists import check_registry, check_shared
from hatchleaf.blocks.conditions import Line
from hatchleaf.blocks.forms import validated
from hatchleaf.blocks.front_matter import Head, StepForm
from hatchleaf.blocks.lines import condition_lines
from hatchleaf.blocks.model import (
    Block,
    BlockSticker,
    BlockTile,
    Care,
    Library,
    Normal,
    Point,
    Step,
    Worded,
)
from hatchleaf.blocks.overlay import laid_over
from hatchleaf.blocks.registry import read_registry
from hatchleaf.blocks.reviews import (
    laid_on,
    read_rules,
    reviews_of,
    still_to_review,
    with_sentences,
    wording,
)
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.spec.paths import fields
from hatchleaf.spec.source import parse
from hatchleaf.spec.tree import Node

_FENCE: Final = re.compile(r"\A---\n(.*?\n)---(?:\n|\Z)", re.DOTALL)
_CALL: Final = re.compile(r"""\bshared\(\s*["']([a-z0-9-]+)["']\s*\)""")


def read_library(folders: Sequence[Path], root: Path) -> Library:
    """
    Return the library of *folders*.

    Args:
        folders: The built-in content first, then a workspace's own, laid over it.
        root: The workspace; places in problems are named from here.

    Raises:
        ProblemsFound: All problems of all files.
    """
    problems: list[Problem] = []
    registry = read_registry(folders, root, problems)
    layers = [_blocks_below(folder, root, problems) for folder in folders]
    blocks = laid_on(laid_over(layers, problems), folders, root, problems)
    blocks = with_sentences(blocks, registry.shared)
    rules = read_rules(folders, root, registry.topics, problems)
    forms = fields()
    lists = frozenset(path for path, form in forms.items() if form.form == "list")
    for block in blocks.values():
        problems.extend(check_block(block, registry, forms, lists))
    problems.extend(check_registry(registry, forms))
    problems.extend(check_shared(registry, blocks))
    if problems:
        raise ProblemsFound(problems)
    return Library(
        blocks={name: blocks[name] for name in sorted(blocks)},
        topics=registry.topics,
        journeys=registry.journeys,
        sources=registry.sources,
        phrases=registry.phrases,
        phrases_by_market=registry.phrases_by_market,
        words=registry.words,
        synonyms=registry.synonyms,
        pending=registry.pending,
        shared=registry.shared,
        unreviewed=still_to_review(blocks, rules),
        lists=lists,
    )


def shown_name(path: Path, root: Path) -> str:
    """Return how problems name *path*: from the workspace, or from its library."""
    try:
        return path.resolve().relative_to(root.resolve()).as_posix()
    except ValueError:
        # A built-in block of the installed package: its folder and name tell enough.
        parts = path.parts
        return "/".join(parts[parts.index("content_blocks") :])


def _blocks_below(
    folder: Path, root: Path, problems: list[Problem]
) -> dict[str, Block]:
    blocks: dict[str, Block] = {}
    for path in sorted(folder.rglob("*.md")):
        name = shown_name(path, root)
        try:
            block = read_block(path.read_bytes(), name)
        except ProblemsFound as found:
            problems.extend(found.problems)
            continue
        if block.id != path.stem:
            problems.append(
                Problem(
                    block.places["id"],
                    "id",
                    f"'{block.id}' is not the file's name",
                    path.stem,
                )
            )
        if block.id in blocks:
            problems.append(
                Problem(
                    block.places["id"],
                    "id",
                    f"'{block.id}' is the id of another block too",
                    hint=f"the other is {blocks[block.id].file}",
                )
            )
        blocks[block.id] = block
    return blocks


def read_block(data: bytes, name: str) -> Block:
    """
    Return the block that a file's bytes state, its conditions not yet judged.

    Args:
        data: The whole file.
        name: The file's name, for places.

    Raises:
        ProblemsFound: All that is wrong with its front matter.
    """
    try:
        text = data.decode()
    except UnicodeDecodeError:
        raise ProblemsFound(
            [Problem(Place(name), "", "the file is not UTF-8", hint="save it so")]
        ) from None
    text = text.replace("\r\n", "\n")
    found = _FENCE.match(text)
    if not found:
        raise ProblemsFound(
            [
                Problem(
                    Place(name),
                    "",
                    "the front matter is missing or not closed",
                    "a line '---', the fields, a line '---', the text",
                )
            ]
        )
    # An empty line stands for the opening fence, so that lines count as in the file.
    tree = parse(b"\n" + found[1].encode(), name)
    head = validated(Head, tree)
    problems: list[Problem] = []
    when = condition_lines(tree, problems)
    if problems:
        raise ProblemsFound(problems)
    return _block(head, tree, when, text)


def _block(head: Head, tree: Node, when: tuple[Line, ...], text: str) -> Block:
    body_start = _FENCE.match(text)
    start = body_start.end() if body_start else 0
    return Block(
        id=head.id,
        topic=head.topic,
        order=head.order,
        also=head.also,
        when=when,
        each=head.each or "",
        always=head.always,
        facts=head.facts,
        needs=head.needs,
        normal=_normal(head, tree),
        tiles=tuple(
            BlockTile(
                tile.says,
                tile.fact or "",
                _perhaps(tree, tile.value, f"tiles[{i}].value"),
                tile.note,
                tree.place_of(f"tiles[{i}]"),
            )
            for i, tile in enumerate(head.tiles)
        ),
        sticker=_sticker(head, tree),
        show=_points(head, tree),
        steps=_steps(head.do, tree),
        care=tuple(
            Care(
                _worded(tree, row.task, f"every[{i}].task"),
                row.interval,
                row.first,
                row.due or "",
            )
            for i, row in enumerate(head.every)
        ),
        ask=head.ask,
        words=head.words,
        sources=head.sources,
        mandated=head.mandated,
        reviewed=reviews_of(head.reviewed, tree.fields.get("reviewed", tree)),
        wording=wording(tree, text[start:]),
        calls=frozenset(_CALL.findall(text)),
        body=text[start:],
        body_line=text[:start].count("\n") + 1,
        file=tree.place.file,
        fingerprint=hashlib.sha256(text.encode()).hexdigest()[:12],
        replaces=head.replaces or "",
        places=_places(tree),
    )


def _worded(tree: Node, text: str, path: str) -> Worded:
    return Worded(text, tree.place_of(path))


def _perhaps(tree: Node, text: str | None, path: str) -> Worded | None:
    return None if text is None else _worded(tree, text, path)


def _normal(head: Head, tree: Node) -> Normal | None:
    if head.normal is None:
        return None
    return Normal(head.normal.draw, _worded(tree, head.normal.text, "normal.text"))


def _sticker(head: Head, tree: Node) -> BlockSticker | None:
    if head.sticker is None:
        return None
    return BlockSticker(
        _worded(tree, head.sticker.line, "sticker.line"),
        _perhaps(tree, head.sticker.fact, "sticker.fact"),
        _perhaps(tree, head.sticker.extra, "sticker.extra"),
        head.sticker.signal,
        tree.place_of("sticker"),
    )


def _points(head: Head, tree: Node) -> tuple[Point, ...]:
    return tuple(
        Point(stake, Worded(text, tree.place_of(f"show[{i}].{stake}")))  # type: ignore[arg-type]
        for i, row in enumerate(head.show)
        for stake, text in row.items()
    )


def _steps(rows: Mapping[str, tuple[StepForm, ...]], tree: Node) -> tuple[Step, ...]:
    return tuple(
        Step(
            journey,
            row.phase,
            row.rank,
            Worded(row.step, tree.place_of(f"do.{journey}[{i}].step")),
            row.at or "",
        )
        for journey, steps in rows.items()
        for i, row in enumerate(steps)
    )


def _places(tree: Node) -> dict[str, Place]:
    places = dict(tree.keys)
    for top in ("when", "do", "also"):
        node = tree.fields.get(top)
        if node:
            places |= {f"{top}.{key}": place for key, place in node.keys.items()}
    return places
