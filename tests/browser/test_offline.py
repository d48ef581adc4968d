"""After one visit with signal the guide opens without: the worker in a real browser."""

from __future__ import annotations

import re
import time
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Error, expect

from browser import host as hosts
from browser.conftest import Built, Site
from browser.host import Host
from browser.kept import (
    ASK,
    PATIENCE,
    RENEWED,
    SAVED,
    at,
    caches,
    saved,
    searched,
    styled,
    visit,
)


def test_every_sticker_opens_with_the_host_gone(
    host: Host, site: Site, start: Callable[..., BrowserContext]
) -> None:
    """One visit to one page; then every address, in each form, and after a restart."""
    context = start()
    visit(context, at(host, site, "210/"))
    host.kill()
    _opens_all(context, host, site)
    context.close()
    _opens_all(start(), host, site)


def _opens_all(context: BrowserContext, host: Host, site: Site) -> None:
    page = context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    for topic in site.pages.pages:
        address = at(host, site, f"{topic.shown_number}/")
        page.goto(address, wait_until="domcontentloaded")
        expect(page.locator(f"#h-{topic.shown_number}")).to_be_visible()
        assert styled(page), topic.number
        pictures = page.locator("img")
        for picture in pictures.all():
            picture.scroll_into_view_if_needed()
            expect(picture).to_have_js_property("complete", value=True)
            assert picture.evaluate("each => each.naturalWidth") > 0, topic.number
    for form in ("230", "230/index.html", "230/?l=B7", "230/#h-230"):
        page.goto(at(host, site, form))
        expect(page.locator("#h-230")).to_be_visible()
        assert styled(page), form
    page.goto(at(host, site, ""))
    page.wait_for_url("**/000/")
    assert "230" in searched(page, "pump")
    page.locator("#home-number").fill("210")
    page.locator("#home-number").press("Enter")
    expect(page.locator("#h-210")).to_be_visible()
    saved(page)
    assert complaints == []


def test_a_cut_while_saving(host: Host, site: Site, context: BrowserContext) -> None:
    """The signal goes half-way: nothing is said; the next visit asks for the rest alone."""
    host.dies_after = 40
    page = context.new_page()
    page.goto(at(host, site, "210/"))
    page.wait_for_timeout(3000)
    assert page.get_by_text(SAVED).is_hidden()
    (had,) = caches(page).values()
    assert had > 15
    host.dies_after = 0
    host.asked.clear()
    page.goto(at(host, site, "220/"))
    saved(page)
    (has,) = caches(page).values()
    pages = [path for path in host.asked if re.search(r"/\d{3}/$", path)]
    assert len(pages) <= has - had + 1
    host.kill()
    page.goto(at(host, site, "330/"))
    expect(page.locator("#h-330")).to_be_visible()


def test_emergencies_do_not_wait(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """With a host that takes its time they are there at once; the new ones come behind."""
    page = visit(context, at(host, site, "210/"))
    code = site.pages.unit.code
    hosts.put(host.folder, hosts.edited(host.folder, code, "</h1>", " anew</h1>"))
    host.dawdles = lambda path: 4.0 if path.endswith("/001/") else 0.5
    began = time.monotonic()
    page.goto(at(host, site, "001/"), wait_until="domcontentloaded")
    expect(page.locator("#h-001")).to_be_visible()
    assert time.monotonic() - began < 2
    assert "anew" not in page.locator("h1").inner_text()
    # Nobody does anything: it is fetched all the same, and said.
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    page.get_by_text(RENEWED).click()
    expect(page.locator("h1")).to_contain_text("anew")


def test_notices_ask_the_network_first(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """The newest that can be had soon; never half of one; none that was taken back."""
    page = visit(context, at(host, site, "210/"))
    path = host.folder / site.pages.unit.code / "notices.json"
    address = at(host, site, "notices.json")

    def asked() -> tuple[str, float]:
        text, took = page.evaluate(ASK, address)
        return str(text), float(took)

    assert asked()[0] == "404"
    path.write_text('["one"]', "utf-8")
    assert asked()[0] == '["one"]'
    path.write_text('["two"]', "utf-8")
    assert asked()[0] == '["two"]'
    host.dawdles = lambda path: 6.0 if path.endswith("notices.json") else 0.0
    text, took = asked()
    assert text == '["two"]'
    assert 2000 < took < 5000
    host.dawdles = lambda _: 0.0
    path.write_text('["thr', "utf-8")
    assert asked()[0] == '["two"]'
    host.kill()
    assert asked()[0] == '["two"]'
    # A new version of the guide leaves them alone.
    host.start()
    hosts.put(
        host.folder, hosts.edited(host.folder, site.pages.unit.code, "</h1>", "!</h1>")
    )
    page.goto(at(host, site, "210/"))
    expect(page.get_by_text(RENEWED)).to_be_visible(timeout=PATIENCE)
    host.kill()
    assert asked()[0] == '["two"]'
    host.start()
    path.unlink()
    assert asked()[0] == "404"
    host.kill()
    with pytest.raises(Error, match="Failed to fetch"):
        asked()


def test_what_is_not_saved_says_so(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """A number that this unit has not leads on; the phone copy is never another page."""
    page = visit(context, at(host, site, "210/"))
    assert page.goto(at(host, site, "999/")).status == 404  # type: ignore[union-attr]
    host.kill()
    page.goto(at(host, site, "999/"))
    expect(page.get_by_role("heading")).to_have_text("No signal")
    page.get_by_role("link", name="Emergencies").click()
    expect(page.locator("#h-001")).to_be_visible()
    page.goto(at(host, site, "999/"))
    page.get_by_role("link", name="All saved pages").click()
    expect(page.locator("#h-000")).to_be_visible()
    with pytest.raises(Error, match=r"ERR_CONNECTION_REFUSED|ERR_ABORTED"):
        page.goto(at(host, site, "manual.html"))


def test_units_keep_to_themselves(
    built: Built, site: Site, host: Host, context: BrowserContext
) -> None:
    """Two units of one host in one phone: each has its own; a third was never there."""
    other, third = built.site("heron-c").pages, built.site("heron-b").pages
    for each in (other, third):
        hosts.alone(built.folder, each.unit.code, host.folder)
    visit(context, at(host, site, "210/"))
    page = visit(context, f"{host.address}/{other.unit.code}/000/")
    assert len(caches(page)) == 2
    host.kill()
    page.goto(at(host, site, "330/"))
    expect(page.locator("#h-330")).to_be_visible()
    page.goto(f"{host.address}/{other.unit.code}/000/")
    expect(page.locator("#h-000")).to_be_visible()
    with pytest.raises(Error, match="ERR_CONNECTION_REFUSED"):
        page.goto(f"{host.address}/{third.unit.code}/000/")
