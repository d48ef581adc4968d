"""Why: a sticker's address must open the right page, complete and without a trace."""

from __future__ import annotations

import ast
import hashlib
import json
import os
import re
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import urljoin, urlsplit

import jinja2
import mkdocs
import pytest

import hatchleaf
from hatchleaf.outputs.website import assets, engine
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.settings import Settings
from outputs.made_pages import CODE, page, pages

SETTINGS = Settings(
    site_url="https://manuals.example/",
    host="manuals.example",
    site_name="Two Herons",
    phone="555-0142",
    brand="",
    preview="",
)


@pytest.fixture(scope="module")
def site() -> dict[str, bytes]:
    """Return the site of the hand-made unit."""
    return build_site(pages(), SETTINGS)


def html_of(site: dict[str, bytes]) -> dict[str, str]:
    """Return the text of every HTML file of a site."""
    return {
        name: content.decode()
        for name, content in site.items()
        if name.endswith(".html")
    }


class Elements(HTMLParser):
    """Collects what a page names and what it carries inline."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.ids: list[str] = []
        self.inline: list[str] = []
        self.names: dict[str, str] = {}
        self._script = False
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep links, ids, and everything that a strict policy would block."""
        given = dict(attrs)
        self.links += [
            given[name] or "" for name in ("href", "src", "srcset") if name in given
        ]
        self.ids += [given["id"] or ""] if "id" in given else []
        self.inline += [name for name in given if name == "style" or name[:2] == "on"]
        self.inline += [tag] if tag == "style" else []
        if tag == "meta" and "name" in given:
            self.names[given["name"] or ""] = given.get("content") or ""
        self._script = tag == "script" and "src" not in given

    def handle_data(self, data: str) -> None:
        """Keep the text of scripts that are not files."""
        if self._script and data.strip():
            self.inline.append("script")
        self._script = False


def test_every_topic_has_its_address(site: dict[str, bytes]) -> None:
    """``<code>/<number>/`` is printed on stickers: it can never be another path."""
    (style,) = (name for name in site if name.endswith("style.css"))
    shared = style.removesuffix("/style.css")
    assert re.fullmatch(r"a/[0-9a-f]{16}", shared)
    assert set(site) == {
        f"{CODE}/000/index.html",
        f"{CODE}/001/index.html",
        f"{CODE}/210/index.html",
        f"{CODE}/230/index.html",
        f"{CODE}/index.html",
        f"{CODE}/manual.html",
        f"{CODE}/words.json",
        f"{CODE}/edition.json",
        f"{CODE}/manifest.webmanifest",
        f"{CODE}/icons/180-cut.png",
        f"{CODE}/icons/192.png",
        f"{CODE}/icons/512.png",
        f"{CODE}/icons/512-cut.png",
        f"{CODE}/sw.js",
        f"{shared}/style.css",
        f"{shared}/reader.js",
        f"{shared}/search.js",
        f"{shared}/saved.js",
        f"{shared}/icon.svg",
    }
    assert 'href="000/"' in site[f"{CODE}/index.html"].decode()
    assert "<h1" in site[f"{CODE}/210/index.html"].decode()
    assert "Water inlet &amp; diverter" in site[f"{CODE}/210/index.html"].decode()


def test_nothing_lists_or_traces(site: dict[str, bytes]) -> None:
    """The guides are for whoever stands before the unit, not for search engines."""
    for name, text in html_of(site).items():
        found = Elements(text).names
        assert "noindex" in found["robots"], name
        assert "generator" not in found, name
        assert "mkdocs" not in text.lower(), name
        assert "material" not in text.lower(), name
    assert not [name for name in site if "sitemap" in name or "404" in name]


def test_a_strict_policy_holds(site: dict[str, bytes]) -> None:
    """
    No inline script, handler, style; nothing from another host.

    The phone copy carries its own style and script by hash and is looked at by its
    own tests.
    """
    for name, text in html_of(site).items():
        if name == f"{CODE}/manual.html":
            continue
        found = Elements(text)
        assert found.inline == [], name
        foreign = [link for link in found.links if re.match(r"(?!tel:)\w+:|//", link)]
        assert foreign == [], name


def test_every_link_of_the_finished_site_leads_somewhere(
    site: dict[str, bytes],
) -> None:
    """Followed as a browser does, from each page to a file and an id in it."""
    texts = html_of(site)
    looked = 0
    for name, text in texts.items():
        for link in Elements(text).links:
            if link.startswith(("tel:", "data:")):
                continue
            path, anchor = _followed(name, link)
            assert path in site, (name, link)
            if anchor:
                assert anchor in Elements(texts[path]).ids, (name, link)
            looked += 1
    assert looked > 50


def _followed(name: str, link: str) -> tuple[str, str]:
    """Return the file and the id that a link on a page leads to."""
    base = f"https://manuals.example/{name.removesuffix('index.html')}"
    split = urlsplit(urljoin(base, link))
    path = split.path.removeprefix("/")
    return path + "index.html" if path.endswith("/") else path, split.fragment


def test_an_edit_of_a_shared_file_makes_another_folder() -> None:
    """A browser may keep a shared file for good, since its name changes with it."""
    one = assets.Shared({"style.css": b"a{}", "reader.js": b"1"})
    same = assets.Shared({"reader.js": b"1", "style.css": b"a{}"})
    other = assets.Shared({"style.css": b"a{}1", "reader.js": b""})
    assert one.folder == same.folder != other.folder


def test_shared_files_stay_while_a_unit_names_them(tmp_path: Path) -> None:
    """Two editions side by side keep both folders; the last one takes its own along."""
    site = tmp_path / "site"
    first, second = assets.Shared({"x.css": b"1"}), assets.Shared({"x.css": b"2"})

    def build(code: str, shared: assets.Shared) -> None:
        files = {f"{shared.folder}/x.css": shared.files["x.css"]}
        files[f"{code}/{assets.RECORD}"] = assets.record("e", shared)
        assert assets.land_site(site, files) == (site / code,)

    def kept() -> set[str]:
        return {f"a/{path.name}" for path in (site / "a").iterdir()}

    build("1", first)
    build("2", second)
    assert kept() == {first.folder, second.folder}
    build("1", second)
    assert kept() == {second.folder}


def test_a_unit_that_cannot_be_read_keeps_everything(tmp_path: Path) -> None:
    """A damaged or foreign folder may name any shared file: nothing is taken away."""
    site = tmp_path / "site"
    (site / "a" / "0123456789abcdef").mkdir(parents=True)
    (site / "someone-elses").mkdir()
    assert assets.sweep(site) == ()
    (site / "someone-elses" / assets.RECORD).write_text('["not ours"]')
    assert assets.sweep(site) == ()
    (site / "someone-elses" / assets.RECORD).write_text('{"shared": "a/other"}')
    assert assets.sweep(site) == ("a/0123456789abcdef",)


def test_the_record_names_what_the_pages_name(site: dict[str, bytes]) -> None:
    """`sweep` believes the record, so it must say the same as the pages."""
    said = json.loads(site[f"{CODE}/{assets.RECORD}"])
    assert said["edition"] == "0123abcd"
    for name, text in html_of(site).items():
        for folder in re.findall(r"\ba/[0-9a-f]{16}\b", text):
            assert folder == said["shared"], name


def test_a_misspelt_name_in_a_template_stops_the_build() -> None:
    """An empty place where a number should be is worse than no page."""
    build_site(pages(), SETTINGS)
    with pytest.raises(jinja2.UndefinedError):
        engine.environment().from_string("{{ p.titel }}").render(p=page(210))


@pytest.mark.parametrize(
    ("name", "version", "message"),
    [
        ("mkdocs", "1.6.0", "mkdocs 1.6.0 is installed.*mkdocs==1.6.1"),
        ("mkdocs", "2.0.0", "mkdocs 2.0.0 is installed.*mkdocs==1.6.1"),
        ("properdocs", "2.0.0", "properdocs 2.0.0 is installed.*mkdocs==1.6.1"),
    ],
)
def test_another_engine_is_refused(
    monkeypatch: pytest.MonkeyPatch, name: str, version: str, message: str
) -> None:
    """Only the version that gives the tested bytes may make pages."""
    monkeypatch.setattr(mkdocs, "__name__", name)
    monkeypatch.setattr(mkdocs, "__version__", version)
    with pytest.raises(engine.WrongEngineError, match=message):
        build_site(pages(), SETTINGS)


BUILD = """
import hashlib, sys
{first}
sys.path.insert(0, {tests!r})
from outputs.made_pages import pages
from outputs.test_website import SETTINGS
from hatchleaf.outputs.website.loop import build_site
import mkdocs
site = build_site(pages(), SETTINGS)
for name in sorted(site):
    print(name, hashlib.sha256(site[name]).hexdigest())
print(mkdocs.__name__, file=sys.stderr)
"""


def built_apart(cwd: Path, first: str = "", **variables: str) -> tuple[str, str]:
    """Build in a process of its own; return the digests and the engine's name."""
    tests = str(Path(__file__).parent.parent)
    done = subprocess.run(
        [sys.executable, "-c", BUILD.format(first=first, tests=tests)],
        cwd=cwd,
        env={**os.environ, **variables},
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout, done.stderr.strip()


def test_the_same_bytes_anywhere_and_any_time(
    tmp_path: Path, site: dict[str, bytes]
) -> None:
    """Hash seed, time zone, locale, folder and clock leave no mark."""
    expected = "".join(
        f"{name} {hashlib.sha256(site[name]).hexdigest()}\n" for name in sorted(site)
    )
    (tmp_path / "else where").mkdir()
    for seed, zone, where, epoch in (
        ("0", "Pacific/Kiritimati", tmp_path, "0"),
        ("4711", "America/Anchorage", tmp_path / "else where", "2000000000"),
    ):
        made, _ = built_apart(
            where, PYTHONHASHSEED=seed, TZ=zone, LC_ALL="C", SOURCE_DATE_EPOCH=epoch
        )
        assert made == expected


def test_the_drop_in_engine_gives_the_same_bytes(
    tmp_path: Path, site: dict[str, bytes]
) -> None:
    """Should MkDocs cease to install, its maintained fork takes over unnoticed."""
    made, name = built_apart(tmp_path, "import properdocs.replacement")
    assert name == "properdocs"
    assert made == built_apart(tmp_path)[0]


def test_mkdocs_is_imported_in_one_package_only() -> None:
    """It is one edge to swap, not a product to rewrite."""
    package = Path(hatchleaf.__file__).parent
    users = {
        path.relative_to(package).parent.as_posix()
        for path in package.rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        for name in _imported(node)
        if name.split(".")[0] == "mkdocs"
    }
    assert users == {"outputs/website"}


def _imported(node: ast.AST) -> list[str]:
    """Return the modules that an import statement names."""
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    if isinstance(node, ast.ImportFrom):
        return [node.module or ""]
    return []
