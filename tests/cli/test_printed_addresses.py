"""A printed sticker's address never ends at nothing: the build refuses to break it."""

from __future__ import annotations

import pytest

from cli.terminal import Folder


@pytest.fixture
def printed(workspace: Folder) -> Folder:
    """Return a workspace in which the sample's stickers have been printed."""
    to = workspace.path / "sheet.pdf"
    done = workspace.run("stickers", "heron-a", "--to", to, "--on", "2027-04-10")
    assert done.code == 0, done.err
    return workspace


def test_what_was_printed_still_builds(printed: Folder) -> None:
    """The gate says nothing where every address has its page."""
    done = printed.run("build", "heron-a")
    assert done.code == 0, done.err


def test_a_part_taken_out_stops_the_build(printed: Folder) -> None:
    """The awning's sticker is on the wall; its page may not vanish."""
    file = printed.path / "unit_specs" / "heron-a.yml"
    text = file.read_text("utf-8")
    file.write_text(
        text.replace("remove: [", "remove: [awnings, dc.fuses.awning, ", 1), "utf-8"
    )
    done = printed.run("build", "heron-a")
    assert done.code == 1
    assert "stickers with the number 510 are printed" in done.err
    assert not list((printed.path / "site").glob("*/index.html"))


def test_another_host_stops_the_build(printed: Folder) -> None:
    """A changed address in the settings would kill every sticker without a word."""
    settings = printed.path / "mkdocs.yml"
    text = settings.read_text("utf-8").replace("manuals.example", "guides.example")
    settings.write_text(text, "utf-8")
    done = printed.run("build", "heron-a")
    assert done.code == 1
    assert "printed with the host manuals.example" in done.err
