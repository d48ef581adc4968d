"""Why: a photo must be on its page alone, in no way of the steps, and fit a phone."""

from __future__ import annotations

import base64
import re
from dataclasses import replace
from html import unescape

import pytest

from hatchleaf.manual.model import Image, PagePhoto, Pages
from hatchleaf.outputs.phone_copy import phone_copy
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.photos.fit import fitted
from hatchleaf.settings import Settings
from outputs.made_pages import CODE, page, pages
from photos.cameras import jpeg, panel

SETTINGS = Settings(
    site_url="https://manuals.example/",
    host="manuals.example",
    site_name="Two Herons",
    phone="555-0142",
    brand="",
    preview="",
)
EVIL = "\"'><img src=x onerror=alert(1)>{{ 7*7 }}"


@pytest.fixture(scope="module")
def made() -> Pages:
    """Return the pages of a unit with two photos on one topic."""
    pictures: dict[str, bytes] = {}
    photos = []
    for seed, caption in ((480, "The inlet & its cap."), (400, EVIL)):
        one = fitted({"a": jpeg(panel(seed, 360))}, {})["a"]
        pictures |= {each.name: each.data for each in (one.site, one.copy)}
        site, copy = (
            Image(each.name, each.width, each.height) for each in (one.site, one.copy)
        )
        photos.append(PagePhoto(caption, f"Alt: {caption}", site, copy))
    shown = page(260, title="Outside shower", photos=tuple(photos))
    return replace(pages(shown), pictures=pictures)


@pytest.fixture(scope="module")
def site(made: Pages) -> dict[str, bytes]:
    """Return the site of that unit."""
    return build_site(made, SETTINGS)


def images(text: str) -> list[dict[str, str]]:
    """Return the attributes of each image of a page."""
    found = re.findall(r"<img ([^>]*)>", text)
    return [
        {
            name: unescape(quoted or bare)
            for name, quoted, bare in re.findall(r'([a-z]+)=(?:"([^"]*)"|(\S+))', tag)
        }
        for tag in found
    ]


def test_files_beside_the_pages(site: dict[str, bytes], made: Pages) -> None:
    """Two photos, each once, by names that follow from their bytes; nothing else new."""
    names = {name for name in site if name.startswith(f"{CODE}/photos/")}
    wanted = {photo.site.name for photo in made.by_number[260].photos}
    assert names == {f"{CODE}/photos/{name}" for name in wanted}
    assert len(names) == 2
    assert all(site[f"{CODE}/photos/{name}"] == made.pictures[name] for name in wanted)


def test_on_their_page_alone(site: dict[str, bytes]) -> None:
    """No other page waits for a photo, least of all the one for emergencies."""
    for name, content in site.items():
        if name.endswith("index.html"):
            shown = len(images(content.decode()))
            assert shown == (2 if "/260/" in name else 0), name
            assert ("photos-" in content.decode()) == ("/260/" in name), name


def test_below_the_steps_with_room_kept(site: dict[str, bytes], made: Pages) -> None:
    """The text is there at once and does not jump when a photo comes in late."""
    text = site[f"{CODE}/260/index.html"].decode()
    assert text.index('id="s-260"') < text.index("<figure")
    assert '<a href="#photos-260">See the 2 photos</a>' in text
    assert text.index("See the 2 photos") < text.index('id="s-260"')
    for found, photo in zip(images(text), made.by_number[260].photos, strict=True):
        assert found == {
            "src": f"../photos/{photo.site.name}",
            "width": str(photo.site.width),
            "height": str(photo.site.height),
            "alt": photo.alt,
            "loading": "lazy",
            "decoding": "async",
        }
    captions = re.findall(r"<figcaption>(.*?)</figcaption>", text)
    assert [unescape(caption) for caption in captions] == ["The inlet & its cap.", EVIL]


def test_the_phone_copy_holds_them(made: Pages) -> None:
    """Smaller, as data: beside the file there is nothing, and its policy lets them in."""
    text = phone_copy(made)
    found = images(text)
    assert len(found) == 2
    for image, photo in zip(found, made.by_number[260].photos, strict=True):
        head, _, data = image["src"].partition(",")
        assert head == "data:image/jpeg;base64"
        assert base64.b64decode(data, validate=True) == made.pictures[photo.copy.name]
        assert image["width"] == str(photo.copy.width)
        assert image["height"] == str(photo.copy.height)
    (policy,) = re.findall(r'Content-Security-Policy" content="([^"]*)"', text)
    assert "img-src data:;" in policy
    assert "alert(1)>" not in text


def test_without_photos_nothing_is_said_of_them() -> None:
    """Most units have none."""
    site = build_site(pages(), SETTINGS)
    assert not [name for name in site if "photos" in name]
    text = (
        site[f"{CODE}/210/index.html"].decode() + site[f"{CODE}/manual.html"].decode()
    )
    assert "<img" not in text
    assert "photos-" not in text
