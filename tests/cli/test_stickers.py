"""`stickers`: the PDF and its ledger, for each sample; what is refused leaves nothing."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from cli.terminal import NAMES, Folder
from hatchleaf.drawings.plan import plan
from hatchleaf.manual.make import Made
from hatchleaf.outputs.sticker_labels import sticker_set

DAY = "2027-04-15"
HOST = "manuals.example"


def _records(workspace: Folder) -> list[Path]:
    return sorted((workspace.path / "unit_specs").glob("printed/*/*.json"))


@pytest.mark.parametrize("name", NAMES)
def test_prints_and_records(workspace: Folder, name: str) -> None:
    """The sheet is there, its event says what is on it, on the day it was told."""
    before = set(workspace.files())
    target = workspace.path / "sheet.pdf"
    done = workspace.run("stickers", name, "--to", target, "--on", DAY)
    assert done.code == 0, done.err
    assert "every code read back" in done.out
    assert target.read_bytes().startswith(b"%PDF-")
    (record,) = _records(workspace)
    assert record.name.startswith(DAY)
    assert record.relative_to(workspace.path).as_posix() in done.out
    event = json.loads(record.read_bytes())
    assert event["body"]["host"] == HOST
    for label in event["body"]["labels"]:
        code, topic = event["code"], label["topic"]
        assert label["payload"].upper() == f"HTTPS://{HOST}/{code}/{topic:03d}/".upper()
    new = set(workspace.files()) - before
    assert {n for n in new if ".hatchleaf/" not in n} == {
        "sheet.pdf",
        record.relative_to(workspace.path).as_posix(),
    }


def test_default_and_optional(workspace: Folder) -> None:
    """The default set, the optional ones alone, and all: no sticker is lost."""
    printed = {}
    for option in ((), ("--optional",), ("--all",)):
        done = workspace.run("stickers", "heron-a", "--to", "s.pdf", *option)
        assert done.code == 0, done.err
        printed[option] = int(done.out.split(":")[1].split()[0])
    # Enough to be useful, few enough to be stuck on.
    assert 12 <= printed[()] <= 15
    assert printed["--optional",] > 0
    assert printed["--all",] == printed[()] + printed["--optional",]
    assert len(_records(workspace)) == 3


@pytest.mark.parametrize(
    "target", ["site/sheet.pdf", "site/a/b.pdf", "sheet.txt", "nowhere/sheet.pdf", "."]
)
def test_where_it_may_not_go(workspace: Folder, target: str) -> None:
    """Sheets do not belong among published files, nor over a file of another kind."""
    (workspace.path / "site/a").mkdir()
    before = workspace.files()
    done = workspace.run("stickers", "heron-a", "--to", target)
    assert (done.code, done.out) == (2, "")
    assert workspace.files() == before


def test_nothing_printed_with_problems(workspace: Folder) -> None:
    """A unit with a problem gets neither a sheet nor a record; so do wrong options."""
    workspace.edit("unit_specs/heron-c.yml", "condition: used", "condition: older")
    done = workspace.run("stickers", "heron-c", "--to", "s.pdf")
    assert (done.code, done.out) == (1, "")
    done = workspace.run("stickers", "heron-a", "--to", "s.pdf", "--skip", "21")
    assert done.code == 1
    assert "skip" in done.err
    done = workspace.run("stickers", "heron-a", "--to", "s.pdf", "--all", "--optional")
    assert done.code == 2
    assert not _records(workspace)
    assert not (workspace.path / "s.pdf").exists()


def test_altered_ledger_stops(workspace: Folder) -> None:
    """A record that somebody edited is a problem before anything else is printed."""
    assert workspace.run("stickers", "heron-c", "--to", "s.pdf", "--on", DAY).code == 0
    (record,) = _records(workspace)
    record.write_bytes(record.read_bytes().replace(b'"topic":210', b'"topic":211'))
    record.write_bytes(record.read_bytes() + b" ")
    done = workspace.run("stickers", "heron-c", "--to", "t.pdf", "--on", DAY)
    assert done.code == 1
    assert "altered" in done.err
    assert not (workspace.path / "t.pdf").exists()


@pytest.mark.parametrize("name", NAMES)
def test_card_speaks_of_what_is_fitted(guides: dict[str, Made], name: str) -> None:
    """The shut-offs of the card are those of this unit, each on the plan and a page."""
    made = guides[name]
    wanted = sticker_set(made.manual, made.pages, HOST)
    topics = [off.topic for off in wanted.card.shut_offs]
    # Gas first where there is gas; mains and battery on each of the samples.
    assert (110 in topics) == (name != "heron-c")
    assert {415, 435, 230} <= set(topics)
    assert set(topics) <= set(made.pages.by_number)
    for topic in topics:
        assert f"{topic:03d}" in wanted.card.plan_svg
    assert wanted.card.emergency_number == ("999" if name == "heron-f" else "911")
    assert wanted.card.exits
    assert wanted.card.extinguisher
    assert wanted.card.alarms
    assert "unknown" not in str(wanted.card)
    assert wanted.card.plan_svg != plan(made.manual.spec, [], key="card", title="x")


@pytest.mark.parametrize("name", NAMES)
def test_labels_are_the_guide_s(guides: dict[str, Made], name: str) -> None:
    """Every page with a place has its label there; none leads to a page that is not."""
    made = guides[name]
    labels = sticker_set(made.manual, made.pages, HOST).labels
    assert {x.topic for x in labels} <= {
        p.number for p in made.pages.pages if p.sticker
    }
    assert len({(x.topic, x.place_id) for x in labels}) == len(labels)
    # Labels win: a sticker says no pressure, weight, torque or dose.
    for label in labels:
        said = f"{label.line} {label.fact} {label.extra}"
        assert not [w for w in ("psi", " lb", "lb-ft", "oz", "tsp") if w in said]
