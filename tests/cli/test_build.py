"""`build` and `check`: where things land, what problems do, what data is printed."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from cli.terminal import NAMES, Folder
from hatchleaf.outputs.door import NAMES as NAMES_OF_THE_ROOT

CODES = {
    "heron-a": "656572583566170",
    "heron-b": "250234883507922",
    "heron-c": "737550752543413",
    "heron-d": "188273965808228",
    "heron-e": "441739870728183",
    "heron-f": "549483311869886",
}


def _site(folder: Folder) -> dict[str, bytes]:
    return {k: v for k, v in folder.files().items() if k.startswith("site/")}


def test_where_things_land(workspace: Folder) -> None:
    """A build writes below site/ and, as a cache, .hatchleaf/: nothing else at all."""
    before = workspace.files()
    done = workspace.run("build")
    assert done.code == 0, done.err
    after = workspace.files()
    assert {name: after[name] for name in before} == dict(before)
    new = set(after) - set(before)
    assert {name.split("/")[0] for name in new} == {"site", ".hatchleaf"}
    # Below site/: the units by code, and the files that they share.
    tops = {name.split("/")[1] for name in new if name.startswith("site/")}
    assert tops == {"a", *NAMES_OF_THE_ROOT, *CODES.values()}
    for code in CODES.values():
        assert f"site/{code}/000/index.html" in new
        assert f"site/{code}/index.html" in new
        assert f"site/{code}/manual.html" in new


def test_results_apart_from_progress(workspace: Folder) -> None:
    """Results alone stand on standard output, one line for each unit."""
    done = workspace.run("build", "heron-c")
    assert done.code == 0
    (line,) = done.out.splitlines()
    assert line.startswith("heron-c: ")
    assert line.endswith(f"site/{CODES['heron-c']}")
    assert "building heron-c" in done.err


def test_cache_changes_no_byte(built: Folder, tmp_path: Path) -> None:
    """With the cache, without it, and to another folder: the same bytes."""
    before = _site(built)
    copy = Folder(tmp_path / "copy")
    shutil.copytree(built.path, copy.path)
    assert copy.run("build").code == 0
    assert _site(copy) == before
    shutil.rmtree(copy.path / ".hatchleaf")
    shutil.rmtree(copy.path / "site")
    assert copy.run("build", "--site", tmp_path / "elsewhere").code == 0
    assert not (copy.path / "site").exists()
    found = Folder(tmp_path / "elsewhere").files()
    ignored = {"site/.gitignore"}
    assert {f"site/{k}": v for k, v in found.items()} == {
        k: v for k, v in before.items() if k not in ignored
    }


@pytest.mark.parametrize("command", ["build", "check"])
def test_all_problems_at_once(workspace: Folder, command: str) -> None:
    """
    Problems of settings, two units and a block show together, each at its place.

    Nothing is written then: what was published stays, byte for byte.
    """
    assert workspace.run("build", "heron-c").code == 0
    workspace.edit("mkdocs.yml", 'phone: "555-0142"', 'phone: "call us"')
    workspace.edit("unit_specs/heron-a.yml", "{value: 744 lb,", "{value: 744 ft,")
    workspace.edit("unit_specs/heron-c.yml", "condition: used", "condition: older")
    block = workspace.path / "content_blocks/mine.md"
    block.write_text(
        "---\nid: mine\ntopic: nowhere\norder: 10\n---\nText\n", encoding="utf-8"
    )
    before = _site(workspace)
    done = workspace.run(command)
    assert (done.code, done.out) == (1, "")
    for name, text, field in (
        ("mkdocs.yml", '"call us"', "phone"),
        ("unit_specs/heron-a.yml", "744 ft", "weights.hitch"),
        ("unit_specs/heron-c.yml", "older\n", "condition"),
        ("content_blocks/mine.md", "topic: nowhere", "topic"),
    ):
        assert f"{workspace.place(name, text)}: {field}" in done.err
    assert done.err.rstrip().endswith("problems; nothing written")
    assert _site(workspace) == before


def test_one_bad_unit_stops_all(workspace: Folder) -> None:
    """A build of all units with one bad among them writes none."""
    before = _site(workspace)
    workspace.edit("unit_specs/heron-b.yml", "condition: new", "condition: nwe")
    done = workspace.run("build")
    assert done.code == 1
    assert "did you mean 'new'?" in done.err
    assert _site(workspace) == before


def test_problems_as_data(workspace: Folder) -> None:
    """With --json, problems are data on standard output; the exit code stays 1."""
    workspace.edit("unit_specs/heron-c.yml", "condition: used", "condition: older")
    for command in (["check"], ["build"], ["explain", "heron-c"]):
        done = workspace.run(*command, "--json")
        assert done.code == 1
        (problem,) = json.loads(done.out)["problems"]
        place = workspace.place("unit_specs/heron-c.yml", "older\n")
        assert f"{problem['file']}:{problem['line']}:{problem['column']}" == place
        assert problem["field"] == "condition"
        assert "used" in problem["allowed"]


@pytest.mark.parametrize("command", ["check", "build"])
def test_facts_as_data(workspace: Folder, command: str) -> None:
    """Every number comes with its name, magnitude, unit, basis, inputs and source."""
    done = workspace.run(command, "--json", "heron-a")
    assert done.code == 0
    data = json.loads(done.out)
    found = data["units"]
    facts = found[0]["facts"] if command == "build" else found["heron-a"]["facts"]
    assert len(facts) > 30
    for fact in facts:
        for key in ("name", "magnitude", "unit", "basis", "inputs", "source"):
            assert key in fact
        assert fact["name"]
        assert fact["basis"]
        assert fact["source"]
        assert not isinstance(fact["magnitude"], int) or fact["magnitude"] in (0, 1)
    by_name = {fact["name"]: fact for fact in facts}
    # The file says 46 gal; the data says so with its unit, unrounded.
    capacity = by_name["water.capacity"]
    assert (round(capacity["magnitude"], 6), capacity["unit"]) == (46.0, "gallon")
    assert capacity["inputs"][0]["path"].startswith("water.tanks")


def test_explain(workspace: Folder) -> None:
    """Blocks in and out with reasons, one topic, and one number, as text and data."""
    whole = workspace.run("explain", "heron-c")
    assert whole.code == 0
    assert "in (" in whole.out
    assert "out (" in whole.out
    # The all-electric unit: nothing of LP is in, and the reason is its own file's.
    data = json.loads(workspace.run("explain", "heron-c", "--json").out)
    assert not [row for row in data["in"] if row["topic"].startswith("lp-")]
    found = {
        reason["line"]: reason["found"]
        for row in data["out"]
        if row["topic"] == "lp-supply"
        for reason in row["reasons"]
    }
    assert found["lp.supply.kind: cylinders"] == "not fitted"

    one = json.loads(workspace.run("explain", "heron-a", "210", "--json").out)
    assert {row["topic"] for row in one["in"] + one["out"]} == {"water-inlet"}

    fact = json.loads(workspace.run("explain", "heron-a", "water.weight", "--json").out)
    assert [row["name"] for row in fact] == ["water.weight"]
    text = workspace.run("explain", "heron-a", "water.weight").out
    assert text.startswith("water.weight: ")
    for word in ("how:", "from: water.tanks", "source:"):
        assert word in text


def test_explain_says_what_is_missing(workspace: Folder) -> None:
    """A number that cannot be worked out names the field that nobody knows."""
    done = workspace.run("explain", "heron-c", "weights.cargo")
    assert done.code == 1
    assert "weights.cargo_label" in done.err
    done = workspace.run("explain", "heron-c", "weights.carg")
    assert "did you mean 'weights." in done.err
    assert workspace.run("explain", "heron-c", "999").code == 1


def test_schema(workspace: Folder) -> None:
    """The two schemas are JSON, on standard output or as files."""
    printed = json.loads(workspace.run("schema").out)
    assert set(printed) == {"unit", "model"}
    assert workspace.run("schema", "--to", ".").code == 0
    for name, schema in printed.items():
        path = workspace.path / f"{name}.schema.json"
        assert json.loads(path.read_text(encoding="utf-8")) == schema


def test_check_writes_nothing(workspace: Folder) -> None:
    """`check` looks only; its cache is no part of anything."""
    before = workspace.files()
    assert workspace.run("check", *NAMES, "--on", "2027-03-19").code == 0
    after = {k: v for k, v in workspace.files().items() if ".hatchleaf/" not in k}
    assert after == dict(before)


def test_a_unit_stays_small(built: Folder) -> None:
    """
    The guide of a large unit has some 80 pages, each of 20 kB at most but for a few.

    3 MB for all of it, of which the phone copy takes a third.
    """
    for code in (built.path / "site").glob("[1-9]*"):
        size = sum(path.stat().st_size for path in code.rglob("*") if path.is_file())
        assert size < 3_000_000, code.name
