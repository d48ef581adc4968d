"""`print`: one PDF, the same every time; what it needs and does not find it names."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from cli.terminal import Folder
from outputs.opened_pdf import opened
from outputs.printing import need_print


@pytest.mark.slow
def test_same_bytes_in_the_market_s_paper(
    workspace: Folder, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two runs agree to the byte, though Python orders its sets otherwise."""
    need_print()
    monkeypatch.setenv("PYTHONHASHSEED", "1")
    done = workspace.run("print", "heron-c")
    assert done.code == 0, done.err
    assert "guide-heron-c.pdf: the guide on letter paper" in done.out
    monkeypatch.setenv("PYTHONHASHSEED", "2")
    again = workspace.run("print", "heron-c", "--paper", "letter", "--to", "again.pdf")
    assert again.code == 0, again.err
    first, second = (
        (workspace.path / name).read_bytes()
        for name in ("guide-heron-c.pdf", "again.pdf")
    )
    assert first == second
    unit = (workspace.path / "unit_specs" / "heron-c.yml").read_text()
    text = re.sub(r"\s", "", "".join(page.get_text() for page in opened(first)))
    for name in ("vin", "stock"):
        found = re.search(rf"(?m)^{name}: (\S+)", unit)
        assert found
        assert found[1] not in text


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("heron-c", "--to", "guide.txt"), "has to end in .pdf"),
        (("heron-c", "--to", "nowhere/guide.pdf"), "there is no folder"),
        (("heron-c", "--to", "site/guide.pdf"), "what build writes there"),
        (("heron-c", "--paper", "legal"), "'legal' is not one of"),
    ],
)
def test_wrong_command_line(
    workspace: Folder, arguments: tuple[str, ...], said: str
) -> None:
    """It stops before anything is read or written."""
    (workspace.path / "site").mkdir(exist_ok=True)
    done = workspace.run("print", *arguments)
    assert done.code == 2
    assert said in done.err
    assert not list(workspace.path.rglob("*.pdf"))


def test_unknown_unit(workspace: Folder) -> None:
    """As every command, it names the units that there are."""
    done = workspace.run("print", "heron-z")
    assert done.code == 1
    assert "there is no unit 'heron-z'" in done.err


@pytest.mark.parametrize(
    ("failure", "said"),
    [
        ("ModuleNotFoundError", "pip install weasyprint"),
        ("OSError", "apt-get install libpango-1.0-0"),
    ],
)
def test_says_what_to_install(
    workspace: Folder,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    failure: str,
    said: str,
) -> None:
    """
    Without the extra, and without the system's library, one line tells the remedy.

    WeasyPrint raises OSError as it is imported where Pango cannot be loaded ("First
    Steps" of its documentation, troubleshooting); a module that does so stands for it.
    """
    folder = tmp_path / "lacking"
    folder.mkdir()
    (folder / "weasyprint.py").write_text(f"raise {failure}('not to be had')\n")
    monkeypatch.setenv("PYTHONPATH", str(folder))
    done = workspace.run("print", "heron-c")
    assert done.code == 1
    assert said in done.err
    assert not list(workspace.path.rglob("*.pdf"))
