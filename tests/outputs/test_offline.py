"""Why: what a phone lets in is decided by this list, so it must be whole and exact."""

from __future__ import annotations

import base64
import hashlib
import io
import json
import math
from pathlib import Path
from urllib.parse import urljoin

import pytest
from PIL import Image

from hatchleaf.outputs import icons, offline
from hatchleaf.outputs.palette import stylesheet, variable
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.settings import Settings
from outputs.made_pages import CODE, page, pages

HOST = "https://manuals.example/"
SETTINGS = Settings(
    site_url=HOST,
    host="manuals.example",
    site_name="Two Herons",
    phone="555-0142",
    brand="#7a1f3d",
    preview="",
)
GROUND, PLATE, PAPER = "#12564f", "#17222b", "#fbf7ec"


@pytest.fixture(scope="module")
def site() -> dict[str, bytes]:
    """Return the site of the hand-made unit."""
    return build_site(pages(), SETTINGS)


def guide(worker: bytes) -> dict[str, object]:
    """Return what a worker is told, read as its first line of script."""
    first = worker.decode().partition("\n")[0]
    told: dict[str, object] = json.loads(
        first.removeprefix("const GUIDE = ").removesuffix(";")
    )
    return told


def listed(worker: bytes) -> dict[str, str]:
    """Return the hashes of a worker's list by path."""
    found = guide(worker)["files"]
    assert isinstance(found, dict)
    return found


def test_all_that_a_reader_needs_is_listed(site: dict[str, bytes]) -> None:
    """Every file but the few that repeat the rest or serve machines, by its address."""
    found = listed(site[f"{CODE}/sw.js"])
    addresses = {urljoin(f"{HOST}{CODE}/", path) for path in found}
    needless = {"manual.html", "edition.json", "sw.js", *icons.ICONS}
    expected = {
        f"{HOST}{name}".removesuffix("index.html")
        for name in site
        if name.removeprefix(f"{CODE}/") not in needless
    }
    assert addresses == expected
    assert f"{HOST}{CODE}/" in addresses
    assert f"{HOST}{CODE}/210/" in addresses


def test_hashes_are_those_of_the_bytes(site: dict[str, bytes]) -> None:
    """
    A browser refuses whatever has another digest than its request names.

    The form is that of W3C, Subresource Integrity, section 3.1: SHA-256 in base64.
    """
    found = listed(site[f"{CODE}/sw.js"])
    for path, digest in found.items():
        name = urljoin(f"{CODE}/", path)
        name = f"{name}index.html" if name.endswith("/") else name
        assert base64.b64decode(digest) == hashlib.sha256(site[name]).digest(), path


def test_emergencies_come_first(site: dict[str, bytes]) -> None:
    """Then what all pages need: a save that is cut has the most of use."""
    paths = list(listed(site[f"{CODE}/sw.js"]))
    assert paths[0] == "001/"
    shared = [path.startswith("../a/") for path in paths[1:]]
    assert shared == sorted(shared, reverse=True)


def test_the_same_files_give_the_same_worker(site: dict[str, bytes]) -> None:
    """Published every evening, it has phones fetch nothing while nothing changed."""
    assert build_site(pages(), SETTINGS) == site
    again = dict(reversed(site.items()))
    assert offline.worker(CODE, "0123abcd", again) == site[f"{CODE}/sw.js"]


def test_any_other_byte_gives_another_worker(site: dict[str, bytes]) -> None:
    """And another version, so that its files never get among those of the one before."""
    before = site[f"{CODE}/sw.js"]
    versions = {guide(before)["version"]}
    for name, content in site.items():
        changed = {**site, name: content + b" "}
        worker = offline.worker(CODE, "0123abcd", changed)
        path = name.removeprefix(f"{CODE}/")
        if path in {"manual.html", "edition.json", "sw.js", *icons.ICONS}:
            assert worker == before, name
        else:
            versions.add(guide(worker)["version"])
    assert len(versions) == len(listed(before)) + 1


def test_a_page_that_is_no_more_is_not_listed() -> None:
    """One left over in the list would keep every phone from ever saving the rest."""
    more = build_site(pages(page(820, title="Hitch")), SETTINGS)
    assert "820/" in listed(more[f"{CODE}/sw.js"])
    del more[f"{CODE}/820/index.html"]
    assert "820/" not in listed(offline.worker(CODE, "", more))


def test_notices_are_asked_for_and_never_listed(site: dict[str, bytes]) -> None:
    """They change without an edition, as what is beside the unit does: both would spoil it."""
    files = {**site, f"{CODE}/{offline.NOTICES}": b"[]", "index.html": b"the host's"}
    worker = offline.worker(CODE, "0123abcd", files)
    assert worker == site[f"{CODE}/sw.js"]
    assert guide(worker)["fresh"] == ["notices.json"]


def test_a_retired_worker_keeps_nothing() -> None:
    """It answers no request: whatever it met goes to the network."""
    text = offline.retired_worker(CODE).decode()
    assert guide(text.encode()) == {"code": CODE}
    assert "unregister" in text
    assert '"fetch"' not in text


def test_the_manifest(site: dict[str, bytes]) -> None:
    """
    A guide on a home screen opens at home and stays within its unit.

    Names are those of W3C, Web Application Manifest, section 1.
    """
    told = json.loads(site[f"{CODE}/manifest.webmanifest"])
    there = f"{HOST}{CODE}/manifest.webmanifest"
    assert told["name"] == "2027 Marlpit Marlpit 24"
    assert told["short_name"] == "Marlpit 24"
    assert urljoin(there, told["scope"]) == f"{HOST}{CODE}/"
    assert urljoin(there, told["start_url"]) == f"{HOST}{CODE}/000/"
    assert urljoin(HOST, told["id"]) == f"{HOST}{CODE}/"
    assert told["theme_color"] == variable(stylesheet("#7a1f3d"), "brand-day")
    assert told["background_color"] == "#fbf7ec"
    purposes = set()
    for icon in told["icons"]:
        path = urljoin(there, icon["src"]).removeprefix(HOST)
        with Image.open(io.BytesIO(site[path])) as image:
            assert image.format == "PNG"
            assert icon["sizes"] == f"{image.width}x{image.height}"
            purposes.add((image.width, icon["purpose"]))
    assert {(192, "any"), (512, "any"), (512, "maskable")} <= purposes
    head = site[f"{CODE}/210/index.html"].decode().partition("</head>")[0]
    assert f'<link rel="manifest" href="../../{CODE}/manifest.webmanifest">' in head
    assert f'href="../../{CODE}/{icons.TOUCH}"' in head


@pytest.mark.parametrize(
    "path", [path for path, icon in icons.ICONS.items() if icon.bleeds]
)
def test_an_icon_that_gets_cut_loses_nothing(path: str) -> None:
    """
    Outside of the circle that no phone cuts off there is the ground alone.

    Its radius is two fifths of the width (W3C, Web Application Manifest, section on
    icon masks and the safe zone).
    """
    with Image.open(io.BytesIO(icons.icons(GROUND, PLATE, PAPER)[path])) as image:
        assert image.mode == "RGB"
        half = image.width / 2
        outside = {
            image.getpixel((x, y))
            for x in range(image.width)
            for y in range(image.height)
            if math.hypot(x + 0.5 - half, y + 0.5 - half) > 0.4 * image.width
        }
        inside = image.getpixel((image.width // 2, image.height // 2))
    assert outside == {(0x12, 0x56, 0x4F)}
    assert inside == (0xFB, 0xF7, 0xEC)


def test_an_icon_of_its_own_shape() -> None:
    """Where nothing is cut, its corners are round and clear."""
    with Image.open(
        io.BytesIO(icons.icons(GROUND, PLATE, PAPER)["icons/512.png"])
    ) as it:
        assert it.getpixel((0, 0)) == (0, 0, 0, 0)
        assert it.getpixel((256, 4)) == (0x12, 0x56, 0x4F, 255)


def test_a_plain_build_writes_the_worker_it_would_publish(tmp_path: Path) -> None:
    """Written and read back, the files give the list that stands beside them."""
    made = build_site(pages(), SETTINGS)
    for name, content in made.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    read = {
        path.relative_to(tmp_path).as_posix(): path.read_bytes()
        for path in tmp_path.rglob("*")
        if path.is_file()
    }
    assert offline.worker(CODE, "0123abcd", read) == made[f"{CODE}/sw.js"]
