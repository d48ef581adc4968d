"""Your trip: people, nights and frost pick among the guide's own numbers."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from browser.conftest import (
    NARROW,
    ROOT,
    UNITS,
    Built,
    Phone,
    Site,
    faults,
    sideways,
)
from browser.test_pages import SMALL_TARGETS, TOUCH
from hatchleaf.cli.edge import gathered, open_workspace
from hatchleaf.facts.endurance import ENDS, FIRST, NIGHTS, PEOPLE, item
from hatchleaf.facts.model import Facts

WHERE = ["website", "phone copy"]
NUMBER = 5


def _open(site: Site, phone: Phone, where: str) -> Page:
    if where == "website":
        return phone.open(site.topic(NUMBER))
    return phone.open(f"{site.copy}#t-{NUMBER:03d}")


def _said(page: Page) -> Locator:
    return page.locator(".trip [role=status]")


def _ask(page: Page, people: int, nights: str, *, frost: bool) -> None:
    page.get_by_label("People", exact=True).select_option(str(people))
    page.get_by_label("Nights", exact=True).fill(nights)
    page.get_by_label("Nights with frost", exact=True).set_checked(frost)


def _facts(unit: str) -> Facts:
    return gathered(open_workspace(ROOT), (unit,))[0].made.facts


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("unit", UNITS)
def test_it_says_what_the_facts_say(
    built: Built, phone: Phone, unit: str, where: str
) -> None:
    """Every choice there is: each row is the fact's text, each answer a comparison."""
    page = _open(built.site(unit), phone, where)
    facts = _facts(unit)
    for people in PEOPLE:
        for night in NIGHTS:
            called = f"[{item(people, night)}]"
            for nights in (1, 2, 5):
                _ask(page, people, str(nights), frost=night == NIGHTS[1])
                count = "1 night" if nights == 1 else f"{nights} nights"
                wanted = []
                for end in ENDS:
                    fact = facts.get(f"{end.base}{called}")
                    if fact is None:
                        continue
                    days = fact.shown()
                    enough = float(days.split()[0]) >= nights
                    wanted.append(
                        re.compile(
                            f"^{end.words}: about {re.escape(days)}. "
                            + (
                                f"Usually enough for {count}.$"
                                if enough
                                else f"Too short for {count}: plan to "
                            ),
                            re.IGNORECASE,
                        )
                    )
                rows = page.locator(".trip-found li")
                expect(rows).to_have_text(wanted)
                expect(_said(page)).to_contain_text(
                    f"Ends first: {facts[f'{FIRST}{called}'].shown()}."
                )


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("typed", ["", "0", "-1", "2.5", "31", "1e9"])
def test_it_asks_again_for_nights_that_are_none(
    site: Site, phone: Phone, where: str, typed: str
) -> None:
    """No row is left from before that could pass for an answer."""
    page = _open(site, phone, where)
    page.get_by_label("Nights", exact=True).fill(typed)
    expect(_said(page)).to_have_text("Type how many nights, from 1 to 30.")
    assert page.locator(".trip-found").count() == 0


@pytest.mark.parametrize("where", WHERE)
def test_enter_leads_nowhere(site: Site, phone: Phone, where: str) -> None:
    """The form is sent to nobody."""
    page = _open(site, phone, where)
    before = page.url
    page.get_by_label("Nights", exact=True).press("Enter")
    expect(page.locator(".trip-found li").first).to_be_visible()
    assert page.url == before


@pytest.mark.parametrize("where", WHERE)
def test_it_is_hidden_without_scripts_and_the_table_stands(
    site: Site, phone_with: Callable[..., Phone], where: str
) -> None:
    """A box that does nothing is never shown; the same numbers are in the table."""
    page = _open(site, phone_with(java_script_enabled=False), where)
    sheet = page.locator("#t-005")
    assert not sheet.locator(".trip").is_visible()
    assert sheet.locator(".table a.num").first.is_visible()
    assert sheet.locator("figure.chart svg").is_visible()


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_no_fault(
    site: Site, phone_with: Callable[..., Phone], where: str, scheme: str
) -> None:
    """Labels, contrast and roles, with an answer that is too short in view."""
    page = _open(site, phone_with(color_scheme=scheme), where)
    _ask(page, 6, "9", frost=True)
    expect(page.locator(".trip-found .short").first).to_be_visible()
    assert not faults(page)


@pytest.mark.parametrize("where", WHERE)
def test_it_fits_a_narrow_phone_and_a_thumb(
    site: Site, phone_with: Callable[..., Phone], where: str
) -> None:
    """Nothing sideways at 320 pixels; every field 44 pixels high."""
    page = _open(site, phone_with(viewport=NARROW), where)
    assert sideways(page) == 0
    assert not page.evaluate(SMALL_TARGETS, TOUCH)
    for field in page.locator(".trip select, .trip [type=number], .trip-frost").all():
        box = field.bounding_box()
        assert box is not None
        assert box["height"] >= TOUCH


def test_it_is_spoken(site: Site, phone: Phone) -> None:
    """A change of the answer is read out, politely; each field has its name."""
    page = _open(site, phone, "website")
    assert _said(page).get_attribute("aria-live") == "polite"
    for name, role in (
        ("People", "combobox"),
        ("Nights", "spinbutton"),
        ("Nights with frost", "checkbox"),
    ):
        expect(page.get_by_role(role, name=name, exact=True)).to_be_visible()  # type: ignore[arg-type]


def test_its_data_are_the_facts_and_nothing_else(each_site: Site) -> None:
    """Embedded as JSON: words that the facts print, no figure to work with."""
    files = [each_site.folder / "005" / "index.html", each_site.folder / "manual.html"]
    found: list[dict[str, Any]] = []
    for file in files:
        text = file.read_text(encoding="utf-8")
        (packed,) = re.findall(r'data-trip="([^"]*)"', text)
        found.append(json.loads(packed.replace("&#34;", '"').replace("&quot;", '"')))
    assert found[0] == found[1]
    for night in ("summer", "frost"):
        for row in found[0][night].values():
            assert len(row) == len(found[0]["ends"]) + 1
            assert all(re.fullmatch(r"[\d.,]+ days?|[A-Za-z ]*", one) for one in row)


def test_the_all_electric_unit_speaks_of_no_gas(built: Built, phone: Phone) -> None:
    """What is not fitted has no line, in the table, the chart and the trip."""
    page = _open(built.site("heron-c"), phone, "website")
    words = page.locator("#t-005").inner_text().lower()
    data = page.locator(".trip").get_attribute("data-trip") or ""
    assert not re.search(r"\bgas\b|\bblack\b|\bcombined\b|\bfurnace\b", words + data)
