"""Every page of the website opens cleanly on a phone, by day and by night."""

from __future__ import annotations

import gzip
import re
from collections.abc import Callable
from html.parser import HTMLParser

import pytest

from browser.conftest import NARROW, PHONE, Phone, Site, faults, sideways

SAFE_TO_TOW = re.compile(
    r"\b(safe|ready|cleared|fit|good) to (tow|go|drive|travel|roll)\b", re.IGNORECASE
)
TOUCH = 44
"""CSS pixels, WCAG 2.2 success criterion 2.5.5 (Target Size, Enhanced)."""

SMALL_TARGETS = """
(least) => {
  const inline = (element) =>
    getComputedStyle(element).display === "inline" && element.closest("p, li, dd, td");
  const rows = [];
  for (const element of document.querySelectorAll("a, button, input, summary, label")) {
    // 2.5.5 lets links within sentences be; the map has a test of its own at 390.
    if (element.closest("svg") || inline(element) || element.closest(".skip")) continue;
    if (element.tagName === "LABEL" && !element.querySelector("input")) continue;
    if (element.type === "checkbox") continue; // its whole label is the target
    const box = element.getBoundingClientRect();
    if (!box.width || !box.height) continue;
    if (box.height < least - 0.5 || box.width < least - 0.5)
      rows.push(`${element.outerHTML.slice(0, 90)} ${box.width}x${box.height}`);
  }
  return rows;
}
"""


class _Inline(HTMLParser):
    """Collects what a policy without unsafe-inline would refuse."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "style" or (tag == "script" and "src" not in given):
            self.found.append(tag)
        self.found += [name for name in given if name == "style" or name[:2] == "on"]


@pytest.mark.parametrize("size", [PHONE, NARROW], ids=["390", "320"])
def test_every_topic_opens(
    each_site: Site, phone_with: Callable[..., Phone], size: dict[str, int]
) -> None:
    """One heading of the first rank, nothing sideways, no complaint, every topic."""
    phone = phone_with(viewport=size)
    for topic in each_site.pages.pages:
        page = phone.open(each_site.topic(topic.number))
        assert page.locator("h1:visible").count() == 1, topic.number
        assert sideways(page) == 0, topic.number
        assert not page.evaluate(SMALL_TARGETS, TOUCH), topic.number
    assert not phone.complaints


def test_nothing_inline(each_site: Site) -> None:
    """A policy without unsafe-inline finds nothing to refuse in the markup itself."""
    for file in each_site.folder.glob("*/index.html"):
        parser = _Inline()
        parser.feed(file.read_text(encoding="utf-8"))
        assert not parser.found, file


def test_no_page_says_that_it_is_safe_to_tow(each_site: Site) -> None:
    """A page cannot know; people decide.  What owners may type for it is not shown."""
    folder = each_site.folder
    for file in [*folder.glob("*/index.html"), folder / "manual.html"]:
        text = file.read_text(encoding="utf-8")
        shown = re.sub(r"<script.*?</script>", "", text, flags=re.DOTALL)
        assert not SAFE_TO_TOW.search(shown), file


def test_first_page_is_light(each_site: Site) -> None:
    """Home with its style and script comes over one bar of signal: below 60 kB."""
    root = each_site.folder.parent
    # The search comes when someone first searches.
    shared = [file for file in root.glob("a/*/*") if file.name != "search.js"]
    files = [each_site.folder / "000" / "index.html", *shared]
    total = sum(len(gzip.compress(file.read_bytes(), 6)) for file in files)
    assert total < 60_000


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_no_fault(
    site: Site, phone_with: Callable[..., Phone], scheme: str
) -> None:
    """All rules of axe-core, color contrast at WCAG AA among them, on every page."""
    phone = phone_with(color_scheme=scheme)
    for topic in site.pages.pages:
        page = phone.open(site.topic(topic.number))
        page.evaluate(
            "document.querySelectorAll('details').forEach(d => d.open = true)"
        )
        assert not faults(page), topic.number


def test_axe_finds_no_fault_in_the_finder(site: Site, phone: Phone) -> None:
    """The dialog over the page, with results in it."""
    page = phone.open(site.topic(210))
    page.locator("[data-find]").click()
    page.locator("#dialog-words").fill("water")
    page.locator("#finder .found a").first.wait_for()
    assert not faults(page)


def test_night_is_dark(site: Site, phone_with: Callable[..., Phone]) -> None:
    """The same page on dark ground when the phone asks for it."""
    grounds = []
    for scheme in ("light", "dark"):
        page = phone_with(color_scheme=scheme).open(site.topic(210))
        text = page.evaluate(
            "getComputedStyle(document.documentElement).backgroundColor"
        )
        grounds.append([int(part) for part in re.findall(r"\d+", text)])
    assert min(grounds[0]) > 200
    assert max(grounds[1]) < 50


def test_keyboard_reaches_the_page_first(site: Site, phone: Phone) -> None:
    """The first stop of the Tab key skips to the heading."""
    page = phone.open(site.topic(210))
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "h-210"


def test_finder_closes_with_escape(site: Site, phone: Phone) -> None:
    """The keyboard comes back to where it was."""
    page = phone.open(site.topic(210))
    page.locator("[data-find]").focus()
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "dialog-number"
    page.keyboard.press("Escape")
    assert page.locator("#finder").is_hidden()
    assert page.evaluate("document.activeElement.dataset.find") == ""


def test_bar_goes_round_the_unit(site: Site, phone: Phone) -> None:
    """From hatch to hatch, the next cell comes back to where it started."""
    walk = site.pages.round
    page = phone.open(site.topic(walk[0]))
    for number in (*walk[1:], walk[0]):
        page.locator(".bar [rel=next]").click()
        page.wait_for_url(f"**/{number:03d}/")
    page.locator(".bar-emergency").click()
    page.wait_for_url("**/001/")


def test_without_scripts_a_page_reads_and_leads_on(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """No dead box is shown; the bar's number cell leads to the contents."""
    page = phone_with(java_script_enabled=False).open(site.topic(210))
    assert page.locator("form:visible").count() == 0
    page.locator(".bar [data-find]").click()
    page.wait_for_url("**/000/#find")
    assert page.locator("form:visible").count() == 0
    page.locator(".contents .row").first.click()
    assert page.locator("h1").is_visible()


def test_print_leaves_out_what_paper_cannot_do(site: Site, phone: Phone) -> None:
    """No bar and no boxes to type in; troubles are open."""
    page = phone.open(site.topic(210))
    page.emulate_media(media="print")
    assert page.locator(".bar").is_hidden()
    assert page.locator(".title").is_visible()
    # What opens a trouble would look like a box to tick.
    sign = "getComputedStyle(document.querySelector('summary'), '::before').display"
    assert page.evaluate(sign) == "none"


def test_print_shows_what_is_folded(site: Site, phone: Phone) -> None:
    """A trouble's cure and a number's line are read on paper, which opens nothing."""
    for number, folded in ((210, "details.trouble"), (90, "details.fold")):
        page = phone.open(site.topic(number))
        text = page.locator(f"{folded} :is(p, li)").last
        shut = page.locator("details:not([open])")
        assert text.is_hidden()
        # By the style sheet alone, then by the browser's own event of a real print.
        page.emulate_media(media="print")
        assert text.is_visible()
        assert shut.count() > 0
        page.pdf()
        assert shut.count() == 0
        page.emulate_media(media="screen")
        assert text.is_visible()


def test_forced_colors_keep_every_part(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """With a reader's own high-contrast colors, ticks and plates keep their edges."""
    page = phone_with(forced_colors="active").open(site.topic(10))
    edge = page.evaluate(
        "getComputedStyle(document.querySelector('.plate.big')).borderTopWidth"
    )
    assert edge == "1px"
    look = page.evaluate(
        "getComputedStyle(document.querySelector('.ticks input')).appearance"
    )
    assert look == "auto"


def test_the_numbers_are_folded_by_system_and_a_link_opens_its_fold(
    site: Site, phone: Phone
) -> None:
    """Some three hundred lines are no page to scroll; a number still leads to its own."""
    page = phone.open(site.topic(90))
    folds = page.locator("details.fold")
    assert folds.count() > 10
    assert page.locator("details.fold[open]").count() == 0
    page = phone.open(site.topic(210))
    page.locator(".ratings a").first.click()
    page.wait_for_url("**/090/#fact-*")
    assert page.locator("details.fold[open]").count() == 1
    anchor = page.url.partition("#")[2]
    assert page.locator(f"#{anchor}").is_visible()


def test_the_numbers_are_all_open_without_scripts(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """The list of systems leads to each, and every line can be read."""
    page = phone_with(java_script_enabled=False).open(site.topic(90))
    folds = page.locator("details.fold").count()
    assert page.locator("details.fold[open]").count() == folds
    links = page.locator(".jump a")
    assert links.count() == folds
    assert page.locator(".working li").last.is_visible()
    assert not page.evaluate(SMALL_TARGETS, TOUCH)
