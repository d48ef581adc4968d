"""The root of the website: three files, the same for all units, naming none of them."""

from __future__ import annotations

import re
import urllib.robotparser
from html.parser import HTMLParser
from pathlib import Path

import pytest

from hatchleaf.outputs.door import INDEX, LOST, NAMES, ROBOTS, door
from hatchleaf.outputs.website.assets import MARK, RECORD, land_site, sweep
from hatchleaf.settings import read_settings

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    """Return the door of the samples' dealership."""
    return door(read_settings(ROOT / "mkdocs.yml", ROOT))


class _Seen(HTMLParser):
    """What a page loads, leads to and says in attributes."""

    def __init__(self) -> None:
        super().__init__()
        self.addresses: list[str] = []
        self.attributes: set[str] = set()
        self.meta: dict[str, str] = {}

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep addresses, names of attributes and what `meta` says."""
        found = {name: value or "" for name, value in attrs}
        self.attributes |= set(found)
        self.addresses += [found[name] for name in ("href", "src") if name in found]
        if tag == "meta" and "name" in found:
            self.meta[found["name"]] = found["content"]


def _seen(page: bytes) -> _Seen:
    seen = _Seen()
    seen.feed(page.decode())
    return seen


def test_only_these(files: dict[str, bytes]) -> None:
    """Three files at the root; all else is shared and named by its content."""
    assert {name for name in files if "/" not in name} == set(NAMES)
    (folder,) = {name.rpartition("/")[0] for name in files if "/" in name}
    assert re.fullmatch(r"a/[0-9a-f]{16}", folder)


def test_robots_are_kept_out(files: dict[str, bytes]) -> None:
    """As RFC 9309 has it, read by Python's own parser; pages say so themselves too."""
    parser = urllib.robotparser.RobotFileParser()
    parser.parse(files[ROBOTS].decode().splitlines())
    for agent in ("*", "Googlebot", "anything"):
        for address in ("/", "/839201743651830/210/", "/839201743651830/manual.html"):
            assert not parser.can_fetch(agent, address)
    for name in (INDEX, LOST):
        assert _seen(files[name]).meta["robots"] == "noindex, nofollow"


def test_no_unit_is_named(files: dict[str, bytes]) -> None:
    """Whoever stands at the door learns no code: nothing lists the units."""
    codes = set()
    for path in (ROOT / "unit_specs").glob("*.yml"):
        codes |= set(re.findall(r'^code: "(\d{15})"', path.read_text(), re.MULTILINE))
    assert len(codes) >= 6
    for content in files.values():
        assert not any(code.encode() in content for code in codes)


@pytest.mark.parametrize("name", [INDEX, LOST])
def test_addresses(files: dict[str, bytes], name: str) -> None:
    """All that a page needs is there, from wherever the host shows it."""
    seen = _seen(files[name])
    own = [address for address in seen.addresses if not address.startswith("tel:")]
    for address in own:
        if name == LOST:
            assert address.startswith("/")
        else:
            assert not address.startswith(("/", "http"))
        assert address in ("/", "./") or address.removeprefix("/") in files
    assert sum(address.endswith((".css", ".js", ".svg")) for address in own) == 3
    assert not {each for each in seen.attributes if each.startswith("on")}
    assert "style" not in seen.attributes
    assert b"<style" not in files[name]
    assert not re.search(rb"<script(?![^>]* src=)", files[name])


def test_words_without_scripts(files: dict[str, bytes]) -> None:
    """How an address is written is on both pages, with the dealer's host and phone."""
    for name in (INDEX, LOST):
        text = files[name].decode()
        for words in ("manuals.example", "15 digits", "tel:555-0142", "Two Herons"):
            assert words in text


def test_brand_and_name_cannot_break_out(tmp_path: Path) -> None:
    """The dealership's name is text, whatever is in it."""
    text = (ROOT / "mkdocs.yml").read_text()
    name = """'<b>"Tom" & Jo</b>'"""
    (tmp_path / "mkdocs.yml").write_text(
        re.sub(r"(?m)^site_name: .*$", f"site_name: {name}", text)
    )
    made = door(read_settings(tmp_path / "mkdocs.yml", tmp_path))
    for page in (INDEX, LOST):
        assert b"<b>" not in made[page]
        assert b"&lt;b&gt;" in made[page]


def test_lands_and_is_kept(files: dict[str, bytes], tmp_path: Path) -> None:
    """It comes with a unit, stays when nothing changed, and keeps what it names."""
    unit = {
        "839201743651830/index.html": b"x",
        f"839201743651830/{RECORD}": b'{"shared": "a/0000000000000000"}',
    }
    assert land_site(tmp_path, {**unit, **files}) == (tmp_path / "839201743651830",)
    before = {name: (tmp_path / name).stat().st_mtime_ns for name in files}
    assert all((tmp_path / name).read_bytes() == data for name, data in files.items())
    land_site(tmp_path, {**unit, **files})
    assert before == {name: (tmp_path / name).stat().st_mtime_ns for name in files}
    (tmp_path / "a" / ("f" * 16)).mkdir()
    assert sweep(tmp_path) == (f"a/{'f' * 16}",)
    assert all((tmp_path / name).is_file() for name in files)


def test_pages_of_others_stay(files: dict[str, bytes], tmp_path: Path) -> None:
    """A host may have a front page of its own; ours gives way."""
    for name in NAMES:
        assert MARK in files[name]
    (tmp_path / INDEX).write_bytes(b"<h1>Welcome</h1>")
    land_site(tmp_path, files)
    assert (tmp_path / INDEX).read_bytes() == b"<h1>Welcome</h1>"
    assert (tmp_path / LOST).read_bytes() == files[LOST]
