"""Why: what is looked at while editing must be what gets published."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from hatchleaf.library import builtin
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.outputs.website.plugin import preview_site
from hatchleaf.workspace import Workspace

UNIT = "heron-c"
QUIET = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
PREVIEW = f"""
import sys
from pathlib import Path
from hatchleaf.outputs.website.preview import preview
from hatchleaf.workspace import Workspace
preview(Workspace(Path(".").resolve()), "{UNIT}", sys.argv[2])
"""
PATIENCE = 40.0
"""Seconds that a preview may take on a busy machine."""


@pytest.fixture
def workspace(tmp_path: Path) -> Workspace:
    """Return a workspace of its own with the sample units."""
    root = tmp_path / "dealer"
    shutil.copytree(builtin() / "unit_specs", root / "unit_specs")
    settings = (builtin() / "mkdocs.yml").read_text(encoding="utf-8")
    settings = settings.replace("preview: heron-a", f"preview: {UNIT}")
    assert UNIT in settings
    (root / "mkdocs.yml").write_text(settings, encoding="utf-8")
    return Workspace(root)


def mkdocs(workspace: Workspace, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run the plain command in the workspace."""
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", *arguments],
        cwd=workspace.root,
        env=QUIET,
        capture_output=True,
        text=True,
        check=False,
    )


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file below the folder by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_plain_mkdocs_gives_the_bytes_that_get_published(workspace: Workspace) -> None:
    """File by file; and it writes nowhere but below ``.hatchleaf/``."""
    (workspace.site / "1").mkdir(parents=True)
    (workspace.site / "1" / "index.html").write_text("published", encoding="utf-8")
    before = contents(workspace.root)
    done = mkdocs(workspace, "build", "--strict")
    assert done.returncode == 0, done.stderr
    made = contents(workspace.cache / "preview")
    expected = build_site(preview_site(workspace).pages, workspace.settings)
    assert sorted(made) == sorted(expected)
    assert made == expected
    after = contents(workspace.root)
    assert {
        name: content
        for name, content in after.items()
        if not name.startswith(".hatchleaf/")
    } == before


@pytest.mark.parametrize("folder", ["site", "site/inner"])
def test_it_cannot_be_told_to_write_over_the_site(
    workspace: Workspace, folder: str
) -> None:
    """MkDocs empties the folder it writes to; published guides are never that."""
    (workspace.site / "inner").mkdir(parents=True)
    (workspace.site / "inner" / "index.html").write_text("here", encoding="utf-8")
    done = mkdocs(workspace, "build", "--site-dir", folder)
    assert done.returncode == 0, done.stderr
    assert (workspace.root / "unit_specs" / f"{UNIT}.yml").exists()
    assert contents(workspace.site) == {"inner/index.html": b"here"}
    assert (workspace.cache / "preview").is_dir()


def test_a_build_with_problems_names_them_and_fails(workspace: Workspace) -> None:
    """With file, line and column, as the other commands do."""
    spec = workspace.root / "unit_specs" / f"{UNIT}.yml"
    text = spec.read_text(encoding="utf-8")
    spec.write_text(text.replace("stock:", "stok:"), encoding="utf-8")
    done = mkdocs(workspace, "build")
    assert done.returncode == 1
    assert f"unit_specs/{UNIT}.yml:" in done.stderr
    assert "did you mean 'stock'?" in done.stderr
    assert "Traceback" not in done.stderr
    assert not (workspace.cache / "preview").exists()


def test_a_preview_is_not_published_by_accident(workspace: Workspace) -> None:
    """MkDocs' own way to publish would list one unit on a public branch."""
    done = mkdocs(workspace, "gh-deploy")
    assert done.returncode != 0
    assert "use `hatchleaf publish`" in done.stderr


def free_port() -> int:
    """Return a port that nobody listens on."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return int(found.getsockname()[1])


class Served:
    """A preview under way, asked as a browser asks."""

    def __init__(self, port: int, process: subprocess.Popen[bytes]) -> None:
        self.url = f"http://127.0.0.1:{port}/"
        self.process = process

    def get(self, path: str) -> str:
        """Return what is answered, an error page too; nothing before it listens."""
        try:
            with urllib.request.urlopen(self.url + path, timeout=PATIENCE) as answer:  # noqa: S310
                return str(answer.read().decode())
        except urllib.error.HTTPError as error:
            with error:
                return error.read().decode()
        except OSError:
            return ""

    def wait_for(self, path: str, holds: Callable[[str], bool]) -> str:
        """Return what is answered once it holds what is waited for."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end and self.process.poll() is None:
            text = self.get(path)
            if holds(text):
                return text
            time.sleep(0.2)
        raise AssertionError(self.get(path) or self.process.poll())


@contextmanager
def serving(workspace: Workspace, command: list[str], option: str) -> Iterator[Served]:
    """Serve the workspace until the test has seen enough."""
    port = free_port()
    process = subprocess.Popen(
        [sys.executable, *command, option, f"127.0.0.1:{port}"],
        cwd=workspace.root,
        env=QUIET,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        yield Served(port, process)
    finally:
        process.terminate()
        process.wait(PATIENCE)


def test_a_preview_follows_edits_and_survives_problems(workspace: Workspace) -> None:
    """
    A guide, then its problems at the same address, then the guide again.

    The page of problems stands at every address, since the browser may be at any.
    """
    spec = workspace.root / "unit_specs" / f"{UNIT}.yml"
    text = spec.read_text(encoding="utf-8")
    site = preview_site(workspace)
    code = site.pages.unit.code
    with serving(workspace, ["-m", "mkdocs", "serve"], "--dev-addr") as served:
        home = served.wait_for("", lambda answer: f"url={code}/000/" in answer)
        assert "livereload" in home
        page = served.get(f"{code}/001/")
        assert site.pages.by_number[1].title in page
        # Kept in the browser, a page would not show what is edited.
        assert "registration.unregister" in served.get(f"{code}/sw.js")

        spec.write_text(text.replace("stock:", "stok:"), encoding="utf-8")
        page = served.wait_for(f"{code}/001/", lambda answer: "to put right" in answer)
        assert "livereload" in page
        assert f"unit_specs/{UNIT}.yml:" in page
        assert "did you mean &#x27;stock&#x27;?" in page
        assert "to put right" in served.get("never/heard/of/")
        assert not workspace.site.exists()

        spec.write_text(text, encoding="utf-8")
        served.wait_for(
            f"{code}/001/", lambda answer: site.pages.by_number[1].title in answer
        )


def test_a_preview_starts_with_problems_and_shows_own_blocks(
    workspace: Workspace,
) -> None:
    """A dealership's first block may be wrong at first; its edit shows at once."""
    spec = workspace.root / "unit_specs" / f"{UNIT}.yml"
    text = spec.read_text(encoding="utf-8")
    spec.write_text("code: [", encoding="utf-8")
    code = preview_code(text)
    command = ["-c", PREVIEW]
    with serving(workspace, command, "--at") as served:
        served.wait_for("", lambda answer: "One problem to put right" in answer)
        spec.write_text(text, encoding="utf-8")
        served.wait_for(f"{code}/000/", lambda answer: "<main>" in answer)


def preview_code(text: str) -> str:
    """Return the code that a unit's file states."""
    line = next(line for line in text.splitlines() if line.startswith("code:"))
    return "".join(filter(str.isdigit, line.split("#")[0]))
