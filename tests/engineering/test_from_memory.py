"""What rests on memory alone is written down in one place, and nothing else is."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import yaml

from hatchleaf.blocks.model import Library
from hatchleaf.facts.findings.find import RULES

ROOT = Path(__file__).resolve().parents[2]
LIST = Path(__file__).with_name("FROM_MEMORY.md")
LISTED = re.compile(r"^- `([a-z_]+\.[A-Za-z_0-9]+)`: (.+(?:\n {2}.+)*)", re.MULTILINE)


SOURCE = re.compile(r"^- source `([a-z0-9-]+)`: (.+(?:\n {2}.+)*)", re.MULTILINE)
NO_SOURCE = "common-practice"


def _told(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Yield each constant of a module with the docstring that follows it."""
    for here, after in zip(tree.body, tree.body[1:], strict=False):
        name = (
            here.target
            if isinstance(here, ast.AnnAssign)
            else here.targets[0]
            if isinstance(here, ast.Assign)
            else None
        )
        if not isinstance(name, ast.Name) or not isinstance(after, ast.Expr):
            continue
        if isinstance(after.value, ast.Constant) and isinstance(after.value.value, str):
            yield name.id, after.value.value


def _from_memory() -> set[str]:
    found = set()
    for path in sorted((ROOT / "generator/hatchleaf/engineering").glob("*.py")):
        for name, says in _told(ast.parse(path.read_text("utf-8"))):
            if re.search(r"from\s+memory", says, re.IGNORECASE):
                found.add(f"{path.stem}.{name}")
    return found


def test_every_figure_from_memory_is_listed() -> None:
    """And a figure whose source was found is taken off."""
    listed = [name for name, _ in LISTED.findall(LIST.read_text("utf-8"))]

    assert len(listed) == len(set(listed))
    assert set(listed) == _from_memory()


def test_every_source_from_memory_is_listed_with_what_leans_on_it(
    library: Library,
) -> None:
    """Both ways: the list of sources, the blocks and the rules of findings."""
    sources = yaml.safe_load((ROOT / "content_blocks/sources.yml").read_text("utf-8"))
    doubted = {name for name, entry in sources.items() if entry["sure"] == "memory"}
    listed = SOURCE.findall(LIST.read_text("utf-8"))

    assert len(doubted) > 1
    assert sorted(name for name, _ in listed) == sorted(doubted)
    for name, says in listed:
        if name == NO_SOURCE:
            continue
        users = {one.id for one in library.blocks.values() if name in one.sources}
        users |= {one.id for one in RULES.values() if one.source == name}
        assert set(re.findall(r"`([a-z0-9-]+)`", says)) == users, name


def test_each_line_says_what_it_is_used_for() -> None:
    """So that a reader knows what to doubt."""
    for name, says in LISTED.findall(LIST.read_text("utf-8")):
        assert re.search(r"\bUsed\s+in\b", says), name
        assert re.search(r"\d", says), name


def test_the_list_would_notice() -> None:
    """A docstring is found by what it says, not by how its constant is written."""
    source = 'A: Final = 1\n"""A guess,\nfrom memory."""\nB = 2\n"""Read."""\n'

    assert [n for n, says in _told(ast.parse(source)) if "memory" in says] == ["A"]
