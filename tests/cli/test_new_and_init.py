"""`init` and `new`: a fresh workspace and a fresh unit, nothing overwritten."""

from __future__ import annotations

import re

import pytest

from cli.terminal import NAMES, Folder
from hatchleaf.spec import code

MODELS = ("fenwick-17", "marlpit-24", "sedge-e")


def test_init(empty: Folder) -> None:
    """An empty workspace tells what it still needs, as problems of its own files."""
    done = empty.run("init", "guides")
    assert done.code == 0
    assert sorted(empty.files()) == [
        "guides/.gitignore",
        "guides/content_blocks/README.txt",
        "guides/mkdocs.yml",
        "guides/site/.gitignore",
        "guides/unit_specs/models/README.txt",
    ]
    done = empty.run("check", "--workspace", "guides")
    assert done.code == 1
    for field in ("site_name", "site_url", "phone"):
        assert f": {field}: " in done.err


def test_init_keeps_what_is_there(empty: Folder) -> None:
    """Files that a person wrote stay; lines are added to .gitignore, once."""
    mine = {"mkdocs.yml": b"site_name: Mine\n", ".gitignore": b"mine/\n.hatchleaf/"}
    for name, content in mine.items():
        (empty.path / name).write_bytes(content)
    first = empty.run("init", "--samples")
    again = empty.run("init", "--samples")
    assert (first.code, again.code) == (0, 0)
    assert "mkdocs.yml is there already and stays as it is" in first.err
    files = empty.files()
    assert files["mkdocs.yml"] == mine["mkdocs.yml"]
    assert files[".gitignore"] == b"mine/\n.hatchleaf/\nprinted-out/\n/private/\n"
    assert {f"unit_specs/{name}.yml" for name in NAMES} <= set(files)


def test_init_samples_are_good(workspace: Folder) -> None:
    """What `init --samples` writes passes `check` as it is."""
    # The day of the first hand-over: years later tires and alarms are at their end.
    done = workspace.run("check", "--on", "2027-03-19")
    assert done.code == 0, done.err
    verdicts = [line for line in done.out.splitlines() if ": good; " in line]
    assert [line.split(":")[0] for line in verdicts] == list(NAMES)


@pytest.mark.parametrize("model", MODELS)
def test_new(workspace: Folder, model: str) -> None:
    """Every model gives a file that is read, and asks for all that is the unit's."""
    before = set(workspace.files())
    done = workspace.run("new", "mine-1", "--model", model)
    assert done.code == 0
    assert set(workspace.files()) - before == {"unit_specs/mine-1.yml"}
    text = (workspace.path / "unit_specs/mine-1.yml").read_text(encoding="utf-8")
    found = re.search(r'^code: "(\d{15})"', text, re.MULTILINE)
    assert found
    assert code.valid(found[1])
    asked = workspace.run("check", "mine-1").err
    for field in ("stock", "vin", "delivery", "serials", "weights.cargo_label"):
        assert f": {field}: field is missing" in asked
    # Only fields of the unit's own are asked for: the model has all the rest.
    assert ": water" not in asked
    assert ": lp.regulator" not in asked


@pytest.mark.parametrize("model", MODELS)
def test_new_blanks(workspace: Folder, model: str) -> None:
    """
    With the lines uncommented the file is YAML, and every blank is refused.

    So no line is left out of the draft, and no example passes for a reading.
    """
    assert workspace.run("new", "mine-1", "--model", model).code == 0
    asked = workspace.run("check", "mine-1").err
    path = workspace.path / "unit_specs/mine-1.yml"
    text = path.read_text(encoding="utf-8")
    path.write_text(re.sub(r"(?m)^# (?!found_on)", "", text), encoding="utf-8")
    refused = workspace.run("check", "mine-1").err
    missing = set(re.findall(r"yml:\d+:\d+: (\S+): field is missing", asked))
    still = set(re.findall(r"yml:\d+:\d+: (\S+): field is missing", refused))
    assert missing
    assert not still
    for field in missing:
        assert re.search(rf": {re.escape(field)}[.\[:]", refused), field


def test_new_never_overwrites(workspace: Folder) -> None:
    """A unit's file with its code on stickers is not lost by a second `new`."""
    before = workspace.files()
    done = workspace.run("new", "heron-a", "--model", "marlpit-24")
    assert done.code == 1
    assert "unit_specs/heron-a.yml:1:1: is there already" in done.err
    assert workspace.files() == before


def test_new_unknown_model(workspace: Folder) -> None:
    """A mistyped model gets a suggestion, and nothing is written."""
    before = workspace.files()
    done = workspace.run("new", "mine-1", "--model", "marlpit-25")
    assert done.code == 1
    assert "allowed: fenwick-17, larkfen-35, marlpit-24, millrace-26" in done.err
    assert "did you mean 'marlpit-24'?" in done.err
    assert workspace.files() == before


def test_same_code_twice(workspace: Folder) -> None:
    """A copied unit's file would put two guides at one address: a problem."""
    text = (workspace.path / "unit_specs/heron-c.yml").read_text(encoding="utf-8")
    (workspace.path / "unit_specs/copy.yml").write_text(text, encoding="utf-8")
    done = workspace.run("build")
    assert done.code == 1
    assert "unit_specs/copy.yml:3:7: code: unit_specs/heron-c.yml has the" in done.err
    assert "unit_specs/heron-c.yml:3:7: code: unit_specs/copy.yml has the" in done.err
