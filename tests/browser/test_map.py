"""Why: the map is tapped at the hatch, with a wet thumb, perhaps without scripts."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO

import pytest
from PIL import Image, ImageChops, ImageStat
from playwright.sync_api import Locator

from browser.conftest import NARROW, PHONE, Phone, Site, faults
from browser.test_pages import TOUCH

LINKS = """
() => Array.from(document.querySelectorAll('.unit-map .plan-link')).map((link) => {
  link.scrollIntoView({ block: 'center' });
  const box = link.getBoundingClientRect();
  const hit = document.elementFromPoint(
    box.x + box.width / 2, box.y + box.height / 2);
  return {
    to: link.getAttribute('href'), width: box.width, height: box.height,
    left: box.left, right: box.right,
    own: Boolean(hit && link.contains(hit)),
  };
})
"""
NAMES = """
() => {
  const boxes = Array.from(
    document.querySelectorAll('.unit-map .plan-name, .unit-map .plan-mark rect'),
    (each) => each.getBoundingClientRect());
  const upon = (a, b) => a.left < b.right - 1 && b.left < a.right - 1
    && a.top < b.bottom - 2 && b.top < a.bottom - 2;
  return {
    overlaps: boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => upon(a, b))).length,
    outside: boxes.filter((b) => b.left < 0 || b.right > innerWidth).length,
  };
}
"""


@pytest.mark.parametrize("size", [PHONE, NARROW], ids=["390", "320"])
@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_each_hatch_can_be_hit(
    each_site: Site,
    phone_with: Callable[..., Phone],
    size: dict[str, int],
    *,
    scripts: bool,
) -> None:
    """Each as large as a thumb, nothing upon it, and a page behind it."""
    phone = phone_with(viewport=size, java_script_enabled=scripts)
    for address, link in (
        (each_site.topic(0), "../{:03d}/"),
        (each_site.copy, "#t-{:03d}"),
    ):
        page = phone.open(address)
        found = page.evaluate(LINKS)
        placed = {each.number for each in each_site.pages.pages if each.sticker}
        assert {each["to"] for each in found} == {link.format(n) for n in placed}
        for each in found:
            assert each["height"] >= TOUCH, each
            assert each["width"] >= TOUCH, each
            assert each["own"], each
        assert page.evaluate(NAMES) == {"overlaps": 0, "outside": 0}
    assert not phone.complaints


def test_a_tap_opens_the_page(site: Site, phone_with: Callable[..., Phone]) -> None:
    """Where the number and the name say, on the website and in the phone copy."""
    phone = phone_with(viewport=PHONE)
    page = phone.open(site.topic(0))
    page.locator(".unit-map").get_by_role("link", name="210 City water inlet").click()
    page.wait_for_url(site.topic(210))
    page = phone.open(site.copy)
    page.locator(".unit-map").get_by_role("link", name="210 City water inlet").click()
    page.locator("#t-210.here").wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_map_and_drawings_are_accessible(
    site: Site, phone_with: Callable[..., Phone], scheme: str
) -> None:
    """By day and by night: names, contrast, order."""
    phone = phone_with(viewport=PHONE, color_scheme=scheme)
    for number in (0, 415, 715):
        assert not faults(phone.open(site.topic(number))), number


def test_the_outline_is_the_same_in_the_phone_copy(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """Drawn once and used there, where styles reach it by its own classes alone."""
    phone = phone_with(viewport=PHONE)
    website = _picture(phone.open(site.topic(240)).locator("#t-240 .map svg"))
    page = phone.open(f"{site.copy}#t-240")
    assert page.locator("#t-240 .map use").count() == 1
    copy = _picture(page.locator("#t-240 .map svg"))
    assert copy.size == website.size
    differs = ImageStat.Stat(ImageChops.difference(website, copy)).mean
    assert max(differs) < 1


def _picture(drawing: Locator) -> Image.Image:
    return Image.open(BytesIO(drawing.screenshot())).convert("RGB")
