"""What tests of the guide kept in a browser look at, on the pages of a host."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page, ViewportSize, expect

from browser.conftest import Site
from browser.host import Host

SAVED = "Saved on this phone."
SCREEN: ViewportSize = {"width": 390, "height": 844}
RENEWED = "Updated. Tap to reload."
ASK = """async (address) => {
  const began = performance.now();
  const answer = await fetch(address);
  const text = answer.ok ? await answer.text() : String(answer.status);
  return [text, performance.now() - began];
}"""
PATIENCE = 60_000
"""Milliseconds that a first save may take on a busy machine."""


def at(host: Host, site: Site, path: str) -> str:
    """Return an address of the unit on this host."""
    return f"{host.address}/{site.pages.unit.code}/{path}"


def saved(page: Page) -> None:
    """Wait until the page says that the guide is saved."""
    expect(page.get_by_text(SAVED)).to_be_visible(timeout=PATIENCE)


def visit(context: BrowserContext, address: str) -> Page:
    """Scan a sticker: a new tab, open until the guide is saved."""
    page = context.new_page()
    page.goto(address)
    saved(page)
    return page


def caches(page: Page) -> dict[str, int]:
    """Return how many entries each of the browser's caches holds."""
    found = page.evaluate(
        """async () => {
          const all = {};
          for (const name of await caches.keys()) {
            all[name] = (await (await caches.open(name)).keys()).length;
          }
          return all;
        }"""
    )
    return dict(found)


def styled(page: Page) -> bool:
    """Return True where the style is there: the bar is at the foot of the screen."""
    place = "getComputedStyle(document.querySelector('.bar')).position"
    return bool(page.evaluate(place) == "fixed")


def searched(page: Page, words: str) -> list[str]:
    """Return the numbers that the search finds."""
    page.locator("#home-words").fill(words)
    found = page.locator("form[data-search] .found .plate")
    expect(found.first).to_be_visible()
    return found.all_inner_texts()
