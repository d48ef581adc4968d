"""``check`` tells of the federal statement until the dealership has compared it."""

from __future__ import annotations

import re

import pytest

from cli.terminal import Folder

NOTE = "page 086 is a placeholder"
SET = 'phone: "555-0142"\n'


def _checked_on(workspace: Folder, day: str) -> None:
    workspace.edit("mkdocs.yml", SET, f"{SET}      statement_checked: {day}\n")


def test_told_until_somebody_compared_it(workspace: Folder) -> None:
    """A placeholder that nobody is reminded of goes out to owners for ever."""
    before = workspace.run("check", "heron-a")
    assert before.code == 0
    assert NOTE in before.err
    assert "575.6(a)(2)" in before.err
    _checked_on(workspace, "2027-05-03")
    after = workspace.run("check", "heron-a")
    assert after.code == 0
    assert NOTE not in after.err
    done = workspace.run("build", "heron-a")
    assert done.code == 0, done.err
    (page,) = workspace.path.glob("site/[1-9]*/086/index.html")
    text = re.sub(r"\s+", " ", page.read_text(encoding="utf-8"))
    assert "compared the words below with the rule on 3 May 2027" in text


@pytest.mark.parametrize("day", ["soon", "2027-02-30", "05/03/2027"])
def test_a_day_is_a_day(workspace: Folder, day: str) -> None:
    """No word stands for having read the rule."""
    _checked_on(workspace, day)
    done = workspace.run("check", "heron-a")
    assert done.code == 1
    assert "statement_checked" in done.err
    assert "year-month-day" in done.err
