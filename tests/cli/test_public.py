"""
The published site is as public as the sticker: nothing private is in any byte of it.

What is private stands in the units' files, so the test reads them, and looks for each
text through all files, also with what separates its characters taken out.
"""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path

import pytest

from cli.terminal import NAMES, Folder
from hatchleaf.spec.source import read
from hatchleaf.spec.tree import Node

_LISTS = {
    "serials": "number",
    "keys": "number",
    "readings": "found",
    "warranties": "what",
    "acknowledged": "reason",
}
_LOOSE = re.compile(rb"[\s\-\xc2\xa0.,_/&;]+")


def _texts(node: Node | None) -> list[str]:
    if node is None:
        return []
    return [below.text for _, below in node.walk() if below.text]


def _private(path: Path) -> dict[str, str]:
    """Return what is private of a unit, by what it is."""
    tree = read(path, path.parent)
    found = {
        "vin": tree.fields["vin"].text or "",
        "stock": tree.fields["stock"].text or "",
    }
    for name, field in _LISTS.items():
        for item in tree.fields[name].items:
            found[f"{name} {item.id}"] = item.fields[field].text or ""
    return {what: text for what, text in found.items() if text not in ("", "none")}


@pytest.mark.parametrize("name", NAMES)
def test_nothing_private(built: Folder, name: str) -> None:
    """Neither the VIN nor a number of stock, serial or key nor a test's reading."""
    private = _private(built.path / f"unit_specs/{name}.yml")
    assert {"vin", "stock"} <= set(private)
    files = {k: v for k, v in built.files().items() if k.startswith("site/")}
    assert len(files) > 30
    for path, content in files.items():
        loose = _LOOSE.sub(b"", content).lower()
        for what, text in private.items():
            assert text.encode() not in content, (path, what)
            assert _LOOSE.sub(b"", text.encode()).lower() not in loose, (path, what)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_of_the_private_copy(workspace: Folder, name: str) -> None:
    """Written before a build, it is still neither in the site nor led to by it."""
    assert workspace.run("private", name).code == 0
    done = workspace.run("build", name)
    assert done.code == 0, done.err
    fields = read(workspace.path / f"unit_specs/{name}.yml", workspace.path).fields
    looked_up = fields["recall"].fields["looked_up"].text or ""
    found_on = fields["found_on"].text if "found_on" in fields else ""
    day = dt.date.fromisoformat(looked_up)
    files = {k: v for k, v in workspace.files().items() if k.startswith("site/")}
    assert len(files) > 30
    for path, content in files.items():
        assert "private" not in path
        assert b"private-copy." not in content, path
        # A used unit's pages say when it was looked over, which may be the same day.
        if looked_up != found_on:
            assert looked_up.encode() not in content, path
            assert f"{day.day} {day:%B} {day.year}".encode() not in content, path


@pytest.mark.parametrize("name", NAMES)
def test_code_and_title_are_shown(built: Folder, name: str) -> None:
    """What is shown instead: the code, in groups; and whose guide it is, never more."""
    tree = read(built.path / f"unit_specs/{name}.yml", built.path)
    code = tree.fields["code"].text or ""
    home = (built.path / f"site/{code}/000/index.html").read_text(encoding="utf-8")
    copy = (built.path / f"site/{code}/manual.html").read_text(encoding="utf-8")
    grouped = re.compile(rf"{code[:5]}\D{{1,40}}{code[5:10]}\D{{1,40}}{code[10:]}")
    for page in (home, copy):
        assert "Guide to this unit by Two Herons" in page
        assert grouped.search(re.sub(r"<[^>]*>", " ", page))
        assert re.search(r"maker.{0,3}s (own )?(manual|labels)", page)


@pytest.mark.parametrize("name", NAMES)
def test_no_page_is_listed(built: Folder, name: str) -> None:
    """Search engines are told to stay out, and no file, nor the door, lists a unit."""
    site = built.path / "site"
    assert not list(site.glob("*.xml"))
    for door in ("index.html", "404.html"):
        text = (site / door).read_text(encoding="utf-8")
        assert not [unit.name for unit in site.glob("[1-9]*") if unit.name in text]
    code = read(built.path / f"unit_specs/{name}.yml", built.path).fields["code"].text
    for page in (site / str(code)).rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        assert re.search(r'<meta name="?robots"? content="?[^">]*noindex', text), page
        others = {other.name for other in site.glob("[1-9]*")} - {code}
        assert not [other for other in others if other in text]
