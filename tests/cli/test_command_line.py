"""The command line itself: what is asked wrongly, what help costs, how it ends."""

from __future__ import annotations

import json
import os
import pty
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from cli.terminal import COMMAND, Folder

COMMANDS = (
    "new",
    "init",
    "check",
    "build",
    "preview",
    "explain",
    "stickers",
    "private",
    "schema",
)
LOOK = """
import json, sys
from hatchleaf.cli.main import main
try:
    main(json.loads(sys.argv[1]))
except SystemExit as stop:
    code = stop.code
slow = {"pydantic", "pint", "rich", "mkdocs", "typst"} & set(sys.modules)
print(json.dumps([code, sorted(slow)]), file=sys.stderr)
"""


def _looked(arguments: list[str]) -> tuple[int, list[str], str]:
    """Return exit code, slow modules imported, and what was printed."""
    done = subprocess.run(
        [sys.executable, "-c", LOOK, json.dumps(arguments)],
        capture_output=True,
        text=True,
        check=True,
    )
    code, slow = json.loads(done.stderr.splitlines()[-1])
    return code, slow, done.stdout + done.stderr


@pytest.mark.parametrize("command", [None, *COMMANDS])
def test_help_is_quick(command: str | None) -> None:
    """Help waits for no slow library, and shows how a command is used."""
    code, slow, said = _looked([command, "--help"] if command else ["--help"])
    assert (code, slow) == (0, [])
    assert f"hatchleaf {command or 'init'}" in said
    assert "Example: hatchleaf" in said or command is None


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["biuld"], "No such command 'biuld'. Did you mean 'build'?"),
        (["build", "--sight", "x"], "No such option"),
        (["new", "Nice Name", "--model", "x"], "small letters, digits"),
        (["new", "fine"], "Missing option '--model'"),
        (["explain"], "Missing argument 'UNIT'"),
        (["check", "--workspace", "nowhere"], "does not exist"),
        (["stickers", "heron-a"], "Missing option '--to'"),
        (["stickers", "heron-a", "--to", "x.pdf", "--preset", "a5"], "is not one of"),
        (["stickers", "heron-a", "--to", "x.pdf", "--on", "1 May"], "does not match"),
        (["private"], "Missing argument 'UNIT'"),
        (["preview", "--address", "8000"], "HOST:PORT"),
        (["preview", "--address", "here:99999"], "HOST:PORT"),
        (["schema", "--to", "nowhere"], "does not exist"),
    ],
)
def test_wrong_command_line(arguments: list[str], said: str) -> None:
    """A wrong command line is told from problems in files by its exit code, 2."""
    code, slow, printed = _looked(arguments)
    assert (code, slow) == (2, [])
    assert said in " ".join(printed.split())


def test_no_workspace(empty: Folder) -> None:
    """Outside a workspace every command says so, and leaves nothing behind."""
    for arguments in (
        ["check"],
        ["build"],
        ["explain", "heron-a"],
        ["new", "one", "--model", "some"],
        ["stickers", "one", "--to", "one.pdf"],
        ["preview"],
    ):
        done = empty.run(*arguments)
        assert (done.code, done.out) == (1, "")
        assert "mkdocs.yml:1:1: there is no such file" in done.err
    assert list(empty.path.iterdir()) == []


def test_unknown_unit(workspace: Folder) -> None:
    """A mistyped unit gets a suggestion."""
    for command in ("build", "check", "explain"):
        done = workspace.run(command, "heron-x")
        assert done.code == 1
        assert "there is no unit 'heron-x'" in done.err
        assert (
            "allowed: heron-a, heron-b, heron-c, heron-d, heron-e, heron-f" in done.err
        )


def test_unit_by_code(workspace: Folder) -> None:
    """An owner on the phone gives the code; the service desk types it as it is."""
    done = workspace.run("explain", "656572583566170", "110")
    assert done.code == 0, done.err
    assert done.out.startswith("110 LP gas supply")


def test_disk_refuses(workspace: Folder) -> None:
    """A folder where a file is wanted is told in a line; nobody sees a traceback."""
    (workspace.path / "site").rename(workspace.path / "gone")
    (workspace.path / "site").write_text("a file", encoding="utf-8")
    done = workspace.run("build", "heron-c")
    assert done.code == 1
    assert done.err.splitlines()[-1].startswith("hatchleaf: ")


def test_output_cut_off(workspace: Folder) -> None:
    """Whoever reads only the first line, as ``head`` does, causes no complaint."""
    with subprocess.Popen(
        [COMMAND, "schema"],
        cwd=workspace.path,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as process:
        assert process.stdout
        assert process.stderr
        process.stdout.readline()
        process.stdout.close()
        assert process.stderr.read() == b""


@pytest.mark.skipif(sys.platform == "win32", reason="another way of interrupting")
@pytest.mark.parametrize("after", [0.0, 0.3, 1.0, 2.0])
def test_interrupted(workspace: Folder, after: float) -> None:
    """Ctrl-C ends a build at once, without a word, and no page is half written."""
    with subprocess.Popen(
        [COMMAND, "build"],
        cwd=workspace.path,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        start_new_session=True,
    ) as process:
        # Its cache is the first that a command leaves, once Python has started.
        while not (workspace.path / ".hatchleaf").exists():
            assert process.poll() is None
            time.sleep(0.01)
        time.sleep(after)
        # As a terminal does: to the command and whatever it has started.
        os.killpg(process.pid, signal.SIGINT)
        _, said = process.communicate(timeout=20)
    assert process.returncode in (0, 130)
    assert "Traceback" not in said
    assert all(line.startswith("building ") for line in said.split("\n") if line)
    for folder in (workspace.path / "site").glob("[1-9]*"):
        assert (folder / "manual.html").read_bytes().rstrip().endswith(b"</html>")


@pytest.mark.skipif(sys.platform == "win32", reason="another way of interrupting")
def test_preview_interrupted(workspace: Folder) -> None:
    """The preview, which runs until Ctrl-C, ends quietly at a terminal too."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [COMMAND, "preview", "heron-c", "--address", "127.0.0.1:0"],
        cwd=workspace.path,
        stdout=theirs,
        stderr=theirs,
        start_new_session=True,
    ) as process:
        os.close(theirs)
        said = b""
        while b"Serving on" not in said:
            said += os.read(ours, 4096)
        process.send_signal(signal.SIGINT)
        assert process.wait(timeout=20) in (0, 130)
    os.close(ours)
    assert not (Path(workspace.path) / "site" / "737550752543413").exists()
