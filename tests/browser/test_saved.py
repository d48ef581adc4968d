"""What a page says of the guide kept in the browser: never more than is true."""

from __future__ import annotations

import gzip
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from browser.conftest import Site, faults
from browser.host import Host
from browser.kept import PATIENCE, SAVED, SCREEN, at, caches, saved, visit


def test_what_is_said_is_true(host: Host, site: Site, context: BrowserContext) -> None:
    """Nothing is said while files come; then all are there, and none twice."""
    page = context.new_page()
    host.dawdles = lambda path: 3.0 if path.endswith("/790/") else 0.0
    page.goto(at(host, site, "210/"))
    page.wait_for_timeout(1500)
    assert page.get_by_text(SAVED).is_hidden()
    saved(page)
    code = site.pages.unit.code
    assert len(caches(page)) == 1
    (count,) = caches(page).values()
    listed = _listed(host.folder / code / "sw.js")
    assert count == len(listed) + 1
    assert {f"{topic.shown_number}/" for topic in site.pages.pages} <= set(listed)
    for needless in ("manual.html", "edition.json", "icons/512.png", "sw.js"):
        assert needless not in listed
        assert sum(path.endswith(needless) for path in host.asked) <= 1


def test_little_is_asked_of_the_phone(each_site: Site) -> None:
    """All of a unit, packed as hosts send it, is less than one photo of a camera."""
    folder = each_site.folder
    listed = _listed(folder / "sw.js")
    files = [
        folder / path / "index.html" if path[-1:] in ("", "/") else folder / path
        for path in listed
    ]
    assert len(files) == len(set(files)) > 40
    whole = sum(path.stat().st_size for path in files)
    sent = sum(_sent(path) for path in files)
    assert whole < 2_500_000
    assert sent < 1_000_000


def _sent(path: Path) -> int:
    content = path.read_bytes()
    return min(len(content), len(gzip.compress(content, 6)))


def _listed(worker: Path) -> list[str]:
    (files,) = re.findall(r'"files":\{(.*?)\}', worker.read_text("utf-8"))
    return re.findall(r'"([^"]*)":"[A-Za-z0-9+/]{43}="', files)


def test_thrown_away_is_not_said_to_be_saved(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """A browser short of room drops files unasked: then nothing is said, until mended."""
    page = visit(context, at(host, site, "000/"))
    page.evaluate(
        """async () => {
          const [name] = await caches.keys();
          const cache = await caches.open(name);
          await cache.delete((await cache.keys()).find((each) => each.url.endsWith("/330/")));
        }"""
    )
    host.kill()
    page.goto(at(host, site, "210/"))
    expect(page.locator("#h-210")).to_be_visible()
    page.wait_for_timeout(1500)
    assert page.get_by_text(SAVED).is_hidden()
    host.start()
    before = len(host.asked)
    page.goto(at(host, site, "220/"))
    saved(page)
    assert host.asked[before:].count(f"/{site.pages.unit.code}/330/") == 1
    page.evaluate(
        "caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))"
    )
    host.kill()
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(page.get_by_text(SAVED)).to_be_hidden(timeout=PATIENCE)


def test_where_the_browser_may_drop_it(
    host: Host, site: Site, context: BrowserContext
) -> None:
    """No promise from the browser: then the page says how to keep the one file."""
    page = visit(context, at(host, site, "000/"))
    assert not page.evaluate("navigator.storage.persisted()")
    part = page.locator(".save")
    expect(part).to_contain_text("The browser may throw this away")
    name = part.locator("a[download]").get_attribute("download") or "?"
    assert name in part.inner_text()
    assert faults(page) == []
    page.goto(at(host, site, "210/"))
    saved(page)
    expect(page.get_by_text("So keep the phone copy as well.")).to_be_visible()


@pytest.mark.parametrize("granted", [True, False])
def test_asking_the_browser(
    host: Host, site: Site, context: BrowserContext, *, granted: bool
) -> None:
    """A promise is taken at its word alone; a refusal is told."""
    context.add_init_script(
        f"""let kept = false;
        navigator.storage.persisted = async () => kept;
        navigator.storage.persist = async () => (kept = {str(granted).lower()});"""
    )
    page = visit(context, at(host, site, "000/"))
    unsure = page.locator(".save").get_by_text("The browser may throw this away")
    expect(unsure).to_be_visible()
    button = page.get_by_role("button", name="Ask the browser to keep it")
    box = button.bounding_box()
    assert box
    assert box["height"] >= 44
    button.click()
    expect(button).to_be_hidden()
    expect(page.get_by_text("does not promise it")).to_be_visible(visible=not granted)
    expect(unsure).to_be_visible(visible=not granted)
    saved(page)


def test_with_scripts_off_it_says_nothing(
    host: Host, site: Site, chromium: Browser
) -> None:
    """No worker, no word of one; the phone copy is offered as ever."""
    context = chromium.new_context(java_script_enabled=False, viewport=SCREEN)
    page = context.new_page()
    page.goto(at(host, site, "000/"))
    assert page.locator("[data-kept]").count() > 3
    assert not [each for each in page.locator("[data-kept]").all() if each.is_visible()]
    assert page.locator(".save a[download]").is_visible()
    assert not [path for path in host.asked if path.endswith("sw.js")]
    context.close()


def test_where_there_are_no_workers(host: Host, site: Site, chromium: Browser) -> None:
    """A private window of some browsers has none: a page like any other."""
    context = chromium.new_context(service_workers="block", viewport=SCREEN)
    page = context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(at(host, site, "000/"))
    page.wait_for_timeout(1000)
    assert not [each for each in page.locator("[data-kept]").all() if each.is_visible()]
    assert complaints == []
    context.close()


def test_fit_for_a_home_screen(host: Host, site: Site, context: BrowserContext) -> None:
    """Chromium itself reads the manifest, and has nothing against an installation."""
    page = visit(context, at(host, site, "210/"))
    session = context.new_cdp_session(page)
    found = session.send("Page.getAppManifest")
    assert found["errors"] == []
    told = found["manifest"]
    home = at(host, site, "")
    assert (told["startUrl"], told["scope"]) == (f"{home}000/", home)
    assert told["id"] == home
    card = site.pages.unit
    assert told["name"] == f"{card.year} {card.maker} {card.name}"
    assert told["display"] == "kStandalone"
    assert session.send("Page.getInstallabilityErrors")["installabilityErrors"] == []
