"""A new edition reaches a phone whole or not at all, whatever an upload left behind."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, expect

from browser import host as hosts
from browser.conftest import Site
from browser.host import Host
from browser.kept import ASK, PATIENCE, RENEWED, SAVED, at, saved, styled, visit
from hatchleaf.outputs import offline


def test_a_new_edition(host: Host, site: Site, context: BrowserContext) -> None:
    """It is fetched behind the page, and said once it is there; a tap shows it."""
    page = visit(context, at(host, site, "210/"))
    code = site.pages.unit.code
    one = hosts.edited(host.folder, code, "</h1>", " anew</h1>")
    hosts.put(host.folder, one)
    host.asked.clear()
    page.goto(at(host, site, "230/"))
    assert "anew" not in page.locator("h1").inner_text()
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    # The style and whatever else is as before is not asked for again.
    assert not [path for path in host.asked if "/a/" in path or "/photos/" in path]
    page.get_by_text(RENEWED).click()
    expect(page.locator("h1")).to_contain_text("anew")
    saved(page)
    assert page.get_by_text(RENEWED).is_hidden()
    host.kill()
    page.goto(at(host, site, "330/"))
    expect(page.locator("h1")).to_contain_text("anew")
    host.start()
    # A phone is not filled up: of all editions before, the last alone is kept.
    hosts.put(host.folder, hosts.edited(host.folder, code, " anew</h1>", " again</h1>"))
    page.goto(at(host, site, "230/"))
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    page.wait_for_function("caches.keys().then((names) => names.length === 2)")


def test_an_open_page_keeps_what_it_loads_late(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """A page of the edition before is not reloaded: its photos and scripts still come."""
    page = visit(context, at(host, site, "210/"))
    code = site.pages.unit.code
    new = hosts.edited(host.folder, code, "</h1>", " anew</h1>")
    (shared,) = {name.rpartition("/")[0] for name in new if name.endswith("style.css")}
    other = "a/0123456789abcdef"
    moved = {
        name.replace(shared, other): content.replace(shared.encode(), other.encode())
        for name, content in new.items()
        if not name.endswith("sw.js")
    }
    moved[f"{code}/sw.js"] = offline.worker(code, "new", moved)
    hosts.put(host.folder, moved)
    page.goto(at(host, site, "230/"))
    style = page.locator("link[rel=stylesheet]").evaluate("each => each.href")
    assert shared in style
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    host.kill()
    assert page.evaluate(ASK, style)[0].startswith("/*")
    page.goto(at(host, site, "230/"))
    assert styled(page)
    assert other in page.locator("link[rel=stylesheet]").evaluate("each => each.href")


SPOILED = ["cut off", "of the edition before", "missing"]


@pytest.mark.parametrize("how", SPOILED)
def test_an_upload_that_is_half_done(
    host: Host, site: Site, context: BrowserContext, how: str
) -> None:
    """One file is not what the list says: the edition before stays, whole."""
    page = visit(context, at(host, site, "210/"))
    code = site.pages.unit.code
    name = f"{code}/820/index.html"
    old = (host.folder / name).read_bytes()
    new = hosts.edited(host.folder, code, "</h1>", " anew</h1>")
    hosts.put(host.folder, new)
    if how == "missing":
        (host.folder / name).unlink()
    else:
        (host.folder / name).write_bytes(old if how != "cut off" else new[name][:2000])
    page.goto(at(host, site, "230/"))
    page.wait_for_timeout(4000)
    assert page.get_by_text(RENEWED).is_hidden()
    saved(page)
    host.kill()
    for topic in site.pages.pages[::7]:
        page.goto(at(host, site, f"{topic.shown_number}/"))
        assert "anew" not in page.locator("h1").inner_text()
    page.goto(at(host, site, "820/"))
    expect(page.locator("#h-820")).to_be_visible()
    host.start()
    hosts.put(host.folder, new)
    page.goto(at(host, site, "820/"))
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    page.goto(at(host, site, "820/"))
    expect(page.locator("h1")).to_contain_text("anew")


def test_a_first_visit_to_an_upload_that_is_half_done(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """Nothing is saved of what does not fit together, and nothing is said."""
    code = site.pages.unit.code
    new = hosts.edited(host.folder, code, "</h1>", " anew</h1>")
    # Another tool may send the worker first.
    hosts.put(host.folder, new, f"{code}/sw.js", f"{code}/210/index.html")
    page = context.new_page()
    page.goto(at(host, site, "210/"))
    page.wait_for_timeout(4000)
    assert page.get_by_text(SAVED).is_hidden()
    assert page.evaluate("navigator.serviceWorker.controller === null")
    hosts.put(host.folder, new)
    page.goto(at(host, site, "210/"))
    saved(page)


def test_until_the_worker_is_there_all_is_as_before(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """Cut off before the last file: with signal, too, the phone shows one edition."""
    page = visit(context, at(host, site, "210/"))
    code = site.pages.unit.code
    new = hosts.edited(host.folder, code, "</h1>", " anew</h1>")
    hosts.put(host.folder, new, *(name for name in new if not name.endswith("sw.js")))
    for number in ("230", "820", "001"):
        page.goto(at(host, site, f"{number}/"))
        assert "anew" not in page.locator("h1").inner_text()
    saved(page)


def test_the_word_of_a_new_edition_hides_nothing(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """It stands clear of the bar, at a finger's size, on a narrow screen as well."""
    page = visit(context, at(host, site, "210/"))
    page.set_viewport_size({"width": 320, "height": 568})
    hosts.put(
        host.folder, hosts.edited(host.folder, site.pages.unit.code, "</h1>", "!</h1>")
    )
    page.goto(at(host, site, "210/"))
    word = page.get_by_text(RENEWED)
    expect(word).to_be_visible(timeout=PATIENCE)
    place, bar = word.bounding_box(), page.locator(".bar").bounding_box()
    assert place
    assert bar
    assert place["height"] >= 44
    assert place["x"] >= 0
    assert place["x"] + place["width"] <= 320
    assert place["y"] + place["height"] <= bar["y"]
