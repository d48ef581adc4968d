"""The number box and the search, on the website and in the phone copy."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from browser.conftest import Phone, Site

WHERE = ["website", "phone copy"]


def _home(site: Site, phone: Phone, where: str) -> Page:
    return phone.open(site.topic(0) if where == "website" else site.copy)


def _number(page: Page, typed: str) -> None:
    page.locator("#home-number").fill(typed)
    page.locator("#home-number").press("Enter")


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("typed", ["210", "0210", "topic 210", " 2 1 0 ", "No. 210"])
def test_number_box_takes_what_people_type(
    site: Site, phone: Phone, where: str, typed: str
) -> None:
    """A number with a zero too many or a word before it leads to its topic."""
    page = _home(site, phone, where)
    _number(page, typed)
    expect(page.locator("#h-210")).to_be_visible()


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("987", "Topic 987 is not on this unit"),
        ("", "three digits"),
        ("water", "three digits"),
        ("83920 17436 51830", "three digits"),
    ],
)
def test_number_box_is_kind(
    site: Site, phone: Phone, where: str, typed: str, said: str
) -> None:
    """It says what is the matter and stays where it is."""
    page = _home(site, phone, where)
    _number(page, typed)
    expect(page.locator("#home-said")).to_contain_text(said)
    assert page.locator("#h-000").is_visible()


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize(
    ("typed", "numbers"),
    [
        ("no water comes", {210, 220, 230}),
        ("no watr comes", {210, 220, 230}),
        ("How do I fill the tank?", {210, 215}),
        ("pump keeps running", {230}),
        ("one bottle empty", {110}),
        ("smell gas", {1}),
        ("which tank first", {45, 310}),
        ("toilet smells", {310, 330}),
        ("awning stuck out", {510}),
        ("breaker trips", {410, 415, 425}),
        ("how long does the battery last", {430}),
        ("no hot water", {710, 715}),
        ("tire pressure", {810}),
        ("how much can I load", {850}),
        ("door does not lock", {610}),
        ("210", {210}),
    ],
)
def test_search_finds_by_owners_words(
    site: Site, phone: Phone, where: str, typed: str, numbers: set[int]
) -> None:
    """The topic comes first, whatever the ending and with a letter missing."""
    page = _home(site, phone, where)
    page.locator("#home-words").fill(typed)
    first = page.locator(".find .found a").first
    number = int(first.locator(".plate").inner_text())
    assert number in numbers
    first.click()
    expect(page.locator(f"#h-{number:03d}")).to_be_visible()


@pytest.mark.parametrize("where", WHERE)
def test_search_says_when_it_finds_nothing(
    site: Site, phone: Phone, where: str
) -> None:
    """An empty list would look like a fault."""
    page = _home(site, phone, where)
    page.locator("#home-words").fill("xylophone")
    expect(page.locator(".find .search .said")).to_contain_text("Nothing found")
    assert page.locator(".find .found").is_hidden()


def test_search_goes_on_without_network(site: Site, phone: Phone) -> None:
    """Once loaded, the words need no signal."""
    page = _home(site, phone, "website")
    page.locator("#home-words").fill("hose")
    expect(page.locator(".find .found a").first).to_be_visible()
    page.context.set_offline(True)
    page.locator("#home-words").fill("pump keeps running")
    expect(page.locator(".find .found a").first).to_contain_text("230")


def test_search_without_network_says_so(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """Never loaded and no signal: it points to the contents."""
    phone = phone_with()
    page = _home(site, phone, "website")
    page.context.set_offline(True)
    page.locator("#home-words").fill("hose")
    expect(page.locator(".find .search .said")).to_contain_text("network")
    # The browser's own line about the network is what this test is about.
    phone.complaints.clear()


def test_finder_opens_over_any_topic(site: Site, phone: Phone) -> None:
    """From the bar of one topic to another, in the phone copy as on the website."""
    for address in (site.topic(210), f"{site.copy}#t-210"):
        page = phone.open(address)
        page.locator("[data-find]:visible").click()
        page.locator("#dialog-number").fill("110")
        page.locator("#dialog-number").press("Enter")
        expect(page.locator("#h-110")).to_be_visible()
        assert page.locator("#finder").is_hidden()
