"""A unit that should not be handed over is told, and its guide is not made."""

from __future__ import annotations

import json

import pytest

from cli.terminal import Folder

ANSWERED = "role: service_manager, reason: a corrected cargo label"


def test_check_prints_each_finding_with_its_line(workspace: Folder) -> None:
    """Severity first, what, why, the line; who answers for it, by role."""
    done = workspace.run("check", "heron-a", "--on", "2027-04-16")

    assert done.code == 0
    lines = done.out.splitlines()
    assert lines[0].startswith("stop: 104 lb were added")
    assert lines[1].startswith("    why: Above the lesser of 1.5 %")
    assert lines[2] == "    where: unit_specs/heron-a.yml:15:1: added"
    assert lines[3].startswith("    acknowledged by the service manager: a corrected")
    assert lines[-1].startswith("heron-a: good; ")
    heads = [line.split(":")[0] for line in lines if not line.startswith("    ")]
    assert heads[:-1] == sorted(heads[:-1], key=["stop", "warn", "note"].index)


def test_the_day_is_given(workspace: Folder) -> None:
    """The same files, thirteen years on: alarms and tires are at their end."""
    later = workspace.run("check", "heron-a", "--on", "2040-01-01")

    assert later.code == 1
    assert "[alarm-at-end-smoke]" in later.out
    assert "heron-a: stays here: " in later.out


def test_findings_as_data(workspace: Folder) -> None:
    """A dealer's own tools read the same: id, place, source, who answers."""
    done = workspace.run("check", "heron-a", "--json", "--on", "2027-04-16")
    told = json.loads(done.out)["units"]["heron-a"]

    assert told["fit"] is True
    row = next(one for one in told["findings"] if one["id"] == "added-label")
    assert row["severity"] == "stop"
    assert (row["file"], row["line"]) == ("unit_specs/heron-a.yml", 15)
    assert row["source"] == "fr-72-68442"
    assert row["acknowledged"]["role"] == "service_manager"


def test_warranties_are_told_to_the_dealership(workspace: Folder) -> None:
    """From the delivery on 2027-04-16, one and three years; as text and as data."""
    done = workspace.run("check", "heron-a", "--on", "2027-04-16")
    assert "note: warranty, the maker's promise for the frame: up on 2030-04-16" in (
        done.out.splitlines()
    )
    done = workspace.run("check", "heron-a", "heron-b", "--json", "--on", "2027-04-16")
    told = json.loads(done.out)["units"]
    ends = [one["ends"] for one in told["heron-a"]["warranties"]]
    assert ends == ["2028-04-16", "2030-04-16"]
    assert told["heron-b"]["warranties"] == []


@pytest.mark.parametrize(
    "command", [("build", "heron-a"), ("stickers", "heron-a", "--to", "a.pdf")]
)
def test_a_stop_nobody_answers_for(workspace: Folder, command: tuple[str, ...]) -> None:
    """Refused with the line and what to write; not a byte is written."""
    workspace.edit(
        "unit_specs/heron-a.yml", "id: added-label, role", "id: hitch-light, role"
    )
    before = {k: v for k, v in workspace.files().items() if ".hatchleaf/" not in k}
    done = workspace.run(*command)

    assert done.code == 1
    assert "unit_specs/heron-a.yml:15:1: added: stop: 104 lb were added" in done.err
    assert "add to acknowledged: {id: added-label, role: service_manager" in done.err
    after = {k: v for k, v in workspace.files().items() if ".hatchleaf/" not in k}
    assert after == before


def test_one_unfit_unit_leaves_all_alone(workspace: Folder) -> None:
    """As with any problem: the site is not half old and half new."""
    workspace.edit("unit_specs/heron-b.yml", "open: no", "open: yes")
    done = workspace.run("build")

    assert done.code == 1
    assert "hold: a safety recall is open" in done.err
    assert not [name for name in workspace.files() if name.endswith("manual.html")]


def test_nobody_answers_for_a_hold(workspace: Folder) -> None:
    """Acknowledged or not, an open recall keeps a new unit here."""
    workspace.edit("unit_specs/heron-b.yml", "open: no", "open: yes")
    workspace.edit(
        "unit_specs/heron-b.yml",
        "acknowledged: none",
        "acknowledged:\n  - {id: open-recall, role: sales_manager, "
        "reason: the customer waits outside}",
    )
    done = workspace.run("build", "heron-b")

    assert done.code == 1
    assert "Nobody may answer for it: mend it first." in done.err
    assert "note: nobody may answer for 'open-recall'" in done.err


def test_an_answer_to_nothing_is_told(workspace: Folder) -> None:
    """What was mended is taken out of the file; a slip of spelling is a problem."""
    old = "acknowledged: none"
    idle = "{id: hitch-light, role: sales_manager, reason: it was loaded on one side}"
    workspace.edit("unit_specs/heron-b.yml", old, f"acknowledged:\n  - {idle}")
    done = workspace.run("build", "heron-b")
    assert done.code == 0
    assert "note: there is no finding 'hitch-light' on this unit" in done.err

    workspace.edit("unit_specs/heron-b.yml", "id: hitch-light", "id: hitch-not-wieghed")
    done = workspace.run("build", "heron-b")
    assert done.code == 1
    assert "hint: did you mean 'hitch-not-weighed'?" in done.err


def test_a_build_does_not_ask_what_day_it_is(workspace: Folder) -> None:
    """Findings of a build count to the hand-over, so that a build stays a build."""
    workspace.edit(
        "unit_specs/heron-a.yml",
        "{id: smoke, made: 2026-06, replace_by: 2036-06}",
        "{id: smoke, made: 2017-06, replace_by: 2027-05}",
    )
    assert workspace.run("build", "heron-a").code == 0

    assert workspace.run("check", "heron-a", "--on", "2027-05-01").code == 1


def test_reasons_are_nowhere_in_public(built: Folder) -> None:
    """Who answered for what is between the dealership and its files."""
    assert ANSWERED in (built.path / "unit_specs/heron-a.yml").read_text("utf-8")
    for name, content in built.files().items():
        if name.startswith("site/"):
            for private in (
                b"corrected cargo label stands beside the first one; the",
                b"service_manager",
                b"looked_up",
                b"added-label, role",
            ):
                assert private not in content, (name, private)
