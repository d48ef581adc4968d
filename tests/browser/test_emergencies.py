"""Page 001 on a phone without scripts: one tap to it, one tap on, one screen each."""

from __future__ import annotations

import re
from collections.abc import Callable

from browser.conftest import PHONE, Phone, Site

SMALLEST_TARGET = 44
"""CSS pixels (WCAG 2.2, 2.5.5): a thumb that shakes hits it."""


def test_one_tap_from_every_page(each_site: Site) -> None:
    """The bar at the bottom of each page, and of each topic of the phone copy, has it."""
    # The phone copy leaves out quotes where HTML lets it.
    link = re.compile(r'<a href="?([^" ]*)"? class="?bar-emergency\b')
    for page in each_site.pages.pages:
        file = each_site.folder / f"{page.number:03d}" / "index.html"
        (address,) = link.findall(file.read_text("utf-8"))
        assert address == ("./" if page.number == 1 else "../001/")
    copy = (each_site.folder / "manual.html").read_text("utf-8")
    assert link.findall(copy) == ["#t-001"] * len(each_site.pages.pages)


def test_what_happened_stands_first_and_is_one_tap_away(
    each_site: Site, phone_with: Callable[..., Phone]
) -> None:
    """All of them on the first screen, each as large as a thumb, each to its section."""
    page = phone_with(java_script_enabled=False).open(each_site.topic(1))
    bar = page.locator(".bar").bounding_box()
    assert bar
    targets = page.locator(".happened a")
    sections = [h for h in each_site.pages.by_number[1].headings if h.level == 2]
    assert targets.count() == len(sections) + 1
    for index in range(targets.count()):
        box = targets.nth(index).bounding_box()
        assert box
        assert box["height"] >= SMALLEST_TARGET
        assert box["y"] + box["height"] <= bar["y"]
    for index, heading in enumerate(sections):
        assert targets.nth(index).get_attribute("href") == f"#{heading.id}"
        assert page.locator(f"#{heading.id}").count() == 1
    number = each_site.pages.unit.emergency_number
    assert targets.last.get_attribute("href") == f"tel:{number}"


def test_each_emergency_fits_one_screen(
    each_site: Site, phone_with: Callable[..., Phone]
) -> None:
    """From the heading to the last word, above the bar, with scripts off."""
    page = phone_with(java_script_enabled=False).open(each_site.topic(1))
    bar = page.locator(".bar").bounding_box()
    assert bar
    room = bar["y"]
    assert room > PHONE["height"] * 0.9
    headings = page.locator(".emergencies .text h2")
    tops = [headings.nth(n).bounding_box() for n in range(headings.count())]
    end = page.locator(".emergencies .text").bounding_box()
    assert end
    edges = [box["y"] for box in tops if box] + [end["y"] + end["height"]]
    assert len(edges) == headings.count() + 1
    tall = {
        headings.nth(n).inner_text(): round(edges[n + 1] - edges[n])
        for n in range(headings.count())
        # The gap above the next heading belongs to neither.
        if edges[n + 1] - edges[n] > room
    }
    assert tall == {}


def test_a_tap_brings_the_steps_into_view(
    each_site: Site, phone_with: Callable[..., Phone]
) -> None:
    """The heading is at the top after the tap, its last step above the bar."""
    page = phone_with(java_script_enabled=False).open(each_site.topic(1))
    bar = page.locator(".bar").bounding_box()
    assert bar
    targets = page.locator(".happened a")
    for heading in each_site.pages.by_number[1].headings:
        steps = page.locator(f"#{heading.id} ~ .steps").first
        if heading.level != 2 or not steps.count():
            continue
        page.goto(each_site.topic(1))
        targets.filter(has_text=heading.text).first.click()
        top = page.locator(f"#{heading.id}").bounding_box()
        last = steps.locator("li").last.bounding_box()
        assert top
        assert last
        assert top["y"] >= 0
        assert last["y"] + last["height"] <= bar["y"], heading.text
