"""Ticks belong to one run: begun by Start, shown with its time, void after 12 hours."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from browser.conftest import Phone, Site

WHERE = ["website", "phone copy"]
BEGAN = dt.datetime(2027, 5, 1, 14, 5, tzinfo=dt.UTC)


@pytest.fixture
def phone(phone_with: Callable[..., Phone]) -> Phone:
    """Return a phone whose clock stands at 14:05."""
    made = phone_with(timezone_id="UTC")
    made.page.clock.install(time=BEGAN)
    return made


def _journey(site: Site, phone: Phone, where: str, number: int = 10) -> Page:
    if where == "website":
        return phone.open(site.topic(number))
    return phone.open(f"{site.copy}#t-{number:03d}")


def _ticked(page: Page) -> int:
    return page.locator(".ticks input:visible:checked").count()


def _start(page: Page) -> None:
    page.locator(".run-start:visible").click()


@pytest.mark.parametrize("where", WHERE)
def test_start_shows_its_time_and_clears(site: Site, phone: Phone, where: str) -> None:
    """The time of the start is shown; a new start begins with no tick."""
    page = _journey(site, phone, where)
    state = page.locator(".run-state:visible")
    expect(state).to_have_text("Not started.")
    _start(page)
    expect(state).to_contain_text("Started 14:05")
    page.locator(".ticks label:visible").nth(0).click()
    page.locator(".ticks label:visible").nth(1).click()
    expect(state).to_contain_text("2 of")
    page.clock.fast_forward("01:00:00")
    _start(page)
    assert _ticked(page) == 0
    expect(state).to_contain_text("Started 15:05")


@pytest.mark.parametrize("where", WHERE)
def test_ticks_outlive_a_closed_page(site: Site, phone: Phone, where: str) -> None:
    """A phone that goes dark half way down the list forgets nothing."""
    page = _journey(site, phone, where)
    _start(page)
    page.locator(".ticks label:visible").nth(1).click()
    page = _journey(site, phone, where)
    assert _ticked(page) == 1
    assert page.locator(".ticks input:visible").nth(1).is_checked()
    expect(page.locator(".run-state:visible")).to_contain_text("Started 14:05")


@pytest.mark.parametrize("where", WHERE)
def test_first_tick_begins_a_run(site: Site, phone: Phone, where: str) -> None:
    """Ticking without Start has a time too: no tick without a run."""
    page = _journey(site, phone, where)
    page.locator(".ticks label:visible").nth(0).click()
    expect(page.locator(".run-state:visible")).to_contain_text("Started 14:05")


@pytest.mark.parametrize("where", WHERE)
def test_void_after_twelve_hours(site: Site, phone: Phone, where: str) -> None:
    """Yesterday's ticks must not be taken for today's, page open or not."""
    page = _journey(site, phone, where)
    _start(page)
    page.locator(".ticks label:visible").nth(0).click()
    page.clock.fast_forward("11:58:00")
    assert _ticked(page) == 1
    page.clock.fast_forward("03:00")
    expect(page.locator(".run-state:visible")).to_contain_text("more than 12 hours")
    assert _ticked(page) == 0
    page = _journey(site, phone, where)
    assert _ticked(page) == 0


def test_void_when_opened_next_day(site: Site, phone: Phone) -> None:
    """The same for a page that was closed over night."""
    page = _journey(site, phone, "website")
    _start(page)
    page.locator(".ticks label").nth(0).click()
    phone.open(site.topic(0)).clock.fast_forward("13:00:00")
    page = _journey(site, phone, "website")
    assert _ticked(page) == 0
    expect(page.locator(".run-state")).to_contain_text("14:05")
    expect(page.locator(".run-state")).to_contain_text("cleared")


def test_void_when_the_clock_runs_backward(site: Site, phone: Phone) -> None:
    """A run from the future has no age that can be trusted."""
    page = _journey(site, phone, "website")
    _start(page)
    page.locator(".ticks label").nth(0).click()
    page.clock.set_system_time(BEGAN - dt.timedelta(days=1))
    page = _journey(site, phone, "website")
    page.clock.set_system_time(BEGAN - dt.timedelta(days=1))
    page.reload()
    assert _ticked(page) == 0


@pytest.mark.parametrize("where", WHERE)
def test_journeys_keep_apart(site: Site, phone: Phone, where: str) -> None:
    """Ticks of arriving say nothing of towing."""
    page = _journey(site, phone, where)
    _start(page)
    page.locator(".ticks label:visible").nth(0).click()
    page = _journey(site, phone, where, 30)
    assert _ticked(page) == 0
    expect(page.locator(".run-state:visible")).to_have_text("Not started.")


def test_a_phone_that_keeps_nothing_says_so(site: Site, phone: Phone) -> None:
    """Storage that throws, as in some previewers: ticks work until the page closes."""
    phone.page.add_init_script(
        "Storage.prototype.setItem = () => { throw new Error('full'); };"
    )
    page = _journey(site, phone, "phone copy")
    page.locator(".ticks label:visible").nth(0).click()
    assert _ticked(page) == 1
    expect(page.locator(".run-state:visible")).to_contain_text("forgets")


@pytest.mark.parametrize("where", WHERE)
def test_plain_boxes_without_scripts(
    site: Site, phone_with: Callable[..., Phone], where: str
) -> None:
    """The list can be ticked where no script runs; nothing pretends to keep time."""
    page = _journey(site, phone_with(java_script_enabled=False), where)
    page.locator("#t-010 .ticks label").nth(0).click()
    assert page.locator("#t-010 .ticks input").nth(0).is_checked()
    assert page.locator(".run").first.is_hidden()
