"""
Why: MkDocs publishes some faults even when it is told to be strict.

It prints front matter that it cannot read as text, and by itself minds neither a
missing heading nor a picture in raw HTML that is not there. Here each of them is an
error at its own line, for whoever builds and for whoever looks at a preview.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from hatchleaf.library import builtin

BLOCK = "content_blocks/electrical/own-note.md"
HEAD = """\
---
id: own-note
topic: shore-power
order: 95
always: yes
ask: [our own note]
sources: [common-practice]
reviewed: {}
---
## Our own note
"""
FAULTS = [
    ("See [this](topic:999).", "11:1: 'topic:999' leads to no page of this unit"),
    (
        "See [this](topic:410#nowhere).",
        "11:1: 'topic:410#nowhere' leads to no heading there",
    ),
    ("See [this](#nowhere).", "11:1: '#nowhere' leads to no heading there"),
    ("See [this](../410/).", "11:1: '../410/' is no link of this guide"),
    (
        "See [this](https://elsewhere.example/).",
        "11:1: 'https://elsewhere.example/' is no link of this guide",
    ),
    ("See ![this](missing.png).", "11:1: an image is not allowed in a block"),
    ('See <img src="a.png">.', "11:1: raw HTML is not allowed in a block"),
]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a workspace that lays one block over the built-in ones."""
    root = tmp_path / "dealer"
    shutil.copytree(builtin() / "unit_specs", root / "unit_specs")
    settings = (builtin() / "mkdocs.yml").read_text(encoding="utf-8")
    settings = settings.replace("preview: heron-a", "preview: heron-c")
    (root / "mkdocs.yml").write_text(settings, encoding="utf-8")
    (root / BLOCK).parent.mkdir(parents=True)
    return root


def run(root: Path, *command: str) -> subprocess.CompletedProcess[str]:
    """Run a Python command in the workspace."""
    return subprocess.run(
        [sys.executable, *command],
        cwd=root,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )


def build(root: Path) -> subprocess.CompletedProcess[str]:
    """Build the smallest sample with our own command."""
    code = "from hatchleaf.cli.main import main; main()"
    return run(root, "-c", code, "build", "heron-c")


def test_the_block_is_good_before_it_is_spoiled(root: Path) -> None:
    """So that each fault below is the only one; a link that leads somewhere passes."""
    text = HEAD + "See [the breakers](topic:415).\n"
    (root / BLOCK).write_text(text, encoding="utf-8")
    done = build(root)
    assert done.returncode == 0, done.stderr
    (page,) = (root / "site").glob("[1-9]*/410/index.html")
    made = page.read_text(encoding="utf-8")
    assert "Our own note" in made
    assert 'href="../415/"' in made


@pytest.mark.parametrize(("text", "said"), FAULTS, ids=[said for _, said in FAULTS])
def test_a_fault_is_named_and_nothing_written(root: Path, text: str, said: str) -> None:
    """At the block's own line, though it shows only in the finished page."""
    (root / BLOCK).write_text(f"{HEAD}{text}\n", encoding="utf-8")
    done = build(root)
    assert done.returncode == 1
    assert f"{BLOCK}:{said}" in done.stderr
    assert "1 problem; nothing written" in done.stderr
    assert not (root / "site").exists()


def test_front_matter_that_cannot_be_read_is_never_printed(root: Path) -> None:
    """A colon without quotes is enough for it; MkDocs would show it as the text."""
    spoiled = HEAD.replace("ask: [our own note]", "ask: our: own note")
    (root / BLOCK).write_text(f"{spoiled}Text.\n", encoding="utf-8")
    done = build(root)
    assert done.returncode == 1
    assert f"{BLOCK}:6:9: a second ': ' stands in one line" in done.stderr
    assert not (root / "site").exists()


def test_a_preview_names_the_same_faults(root: Path) -> None:
    """Plain MkDocs goes through the same check."""
    text, said = FAULTS[1]
    (root / BLOCK).write_text(f"{HEAD}{text}\n", encoding="utf-8")
    done = run(root, "-m", "mkdocs", "build")
    assert done.returncode == 1
    assert f"{BLOCK}:{said}" in done.stderr
