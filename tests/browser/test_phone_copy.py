"""The phone copy: one file that opens from a phone's files, scripts on or off."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from browser.conftest import NARROW, PHONE, Phone, Site, faults, sideways
from browser.test_pages import SMALL_TARGETS, TOUCH
from hatchleaf.manual.model import Pages, Tile
from hatchleaf.outputs.phone_copy import LIMIT, phone_copy

TEXT_LIMIT = 900_000
"""What photos leave of the whole: see `hatchleaf.photos.fit.COPY`."""
SHOWN = "Array.from(document.querySelectorAll('.sheet')).filter(s => s.offsetHeight)"


class _Attributes(HTMLParser):
    """Collects the values of each attribute."""

    def __init__(self) -> None:
        super().__init__()
        self.of: dict[str, list[str]] = {}

    def handle_starttag(self, _: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            self.of.setdefault(name, []).append(value or "")


def _shown(phone: Phone) -> list[str]:
    found: list[str] = phone.page.evaluate(f"{SHOWN}.map(s => s.id)")
    return found


def _scripts(text: str) -> list[str]:
    return re.findall(r"<script>(.*?)</script>", text, flags=re.DOTALL)


def _styles(text: str) -> list[str]:
    return re.findall(r"<style>(.*?)</style>", text, flags=re.DOTALL)


@pytest.mark.parametrize("size", [PHONE, NARROW], ids=["390", "320"])
def test_every_topic_opens(
    each_site: Site, phone_with: Callable[..., Phone], size: dict[str, int]
) -> None:
    """One topic at a time, nothing sideways, every target big enough."""
    phone = phone_with(viewport=size)
    page = phone.open(each_site.copy)
    assert _shown(phone) == ["t-000"]
    for topic in each_site.pages.pages:
        page.evaluate(f"location.hash = 't-{topic.shown_number}'")
        page.locator(f"#t-{topic.shown_number}.here").wait_for()
        assert _shown(phone) == [f"t-{topic.shown_number}"]
        assert sideways(page) == 0, topic.number
        assert not page.evaluate(SMALL_TARGETS, TOUCH), topic.number
    assert [url for url in phone.asked if url.startswith("file:")] == [each_site.copy]


@pytest.mark.parametrize("size", [PHONE, NARROW], ids=["390", "320"])
def test_reads_in_order_without_scripts(
    each_site: Site, phone_with: Callable[..., Phone], size: dict[str, int]
) -> None:
    """Emergencies, home with the contents, journeys, topics by number: all shown."""
    phone = phone_with(viewport=size, java_script_enabled=False)
    page = phone.open(each_site.copy)
    order = [
        int(one.get_attribute("data-number") or "-1")
        for one in page.locator(".sheet").all()
    ]
    journeys = sorted(p.number for p in each_site.pages.pages if p.system == "journey")
    assert order[: 2 + len(journeys)] == [1, 0, *journeys]
    rest = order[2 + len(journeys) :]
    assert rest == sorted(rest)
    assert sorted(order) == [each.number for each in each_site.pages.pages]
    assert page.locator(".sheet:visible").count() == len(order)
    assert page.locator("form:visible").count() == 0
    assert page.locator(".contents .row").first.is_visible()
    assert sideways(page) == 0


def test_contents_lead_on_without_scripts(
    site: Site, phone_with: Callable[..., Phone]
) -> None:
    """The contents are plain links within the file."""
    page = phone_with(java_script_enabled=False).open(site.copy)
    page.locator(".contents .row").first.click()
    anchor = page.url.partition("#")[2]
    top = page.locator(f"#{anchor}").bounding_box()
    assert top is not None
    assert -2 < top["y"] < 100


def test_every_link_leads_somewhere(each_site: Site) -> None:
    """No link in the file leads out of it or to an id that is not there."""
    text = (each_site.folder / "manual.html").read_text(encoding="utf-8")
    found = _Attributes()
    found.feed(text)
    ids, links = found.of["id"], found.of["href"]
    assert len(ids) == len(set(ids)) > 100
    assert len(links) > 100
    for link in links:
        if link.startswith(("tel:", "data:,")):
            continue
        assert link[0] == "#"
        assert link[1:] in ids


def test_a_number_opens_how_it_was_worked_out(site: Site, phone: Phone) -> None:
    """A link to a place within another topic opens that topic there."""
    page = phone.open(f"{site.copy}#t-210")
    page.locator("#t-210 .ratings a").first.click()
    page.locator("#t-090.here").wait_for()
    assert _shown(phone) == ["t-090"]
    page.go_back()
    page.locator("#t-210.here").wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "none"])
def test_axe_finds_no_fault(
    site: Site, phone_with: Callable[..., Phone], scheme: str, *, scripts: bool
) -> None:
    """Home, a topic and a journey; and the whole file as it is without scripts."""
    if scripts:
        phone = phone_with(color_scheme=scheme)
        for number in (0, 1, 10, 210):
            page = phone.open(f"{site.copy}#t-{number:03d}")
            assert not faults(page), number
        return
    # axe needs a script to run, so the copy's own is taken out instead.
    text = (site.folder / "manual.html").read_text(encoding="utf-8")
    bare = re.sub(r"<script>.*?</script>", "", text, flags=re.DOTALL)
    file = site.folder.parent / f"bare-{scheme}.html"
    file.write_text(bare, encoding="utf-8")
    page = phone_with(color_scheme=scheme).open(file.as_uri())
    assert page.locator(".sheet:visible").count() == len(site.pages.pages)
    assert not faults(page)


def test_policy_allows_its_own_code_alone(site: Site, pages: Pages) -> None:
    """Hashes as the policy's standard writes them (CSP Level 3, section 2.3.1)."""
    text = (site.folder / "manual.html").read_text(encoding="utf-8")
    policy = re.findall(r'Content-Security-Policy" content="([^"]+)"', text)[0]
    policy = policy.replace("&#39;", "'")
    for kind, bodies in (("script", _scripts(text)), ("style", _styles(text))):
        assert len(bodies) == 1
        digest = base64.b64encode(hashlib.sha256(bodies[0].encode()).digest()).decode()
        assert f"{kind}-src 'sha256-{digest}'" in policy
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert not re.findall(r"<[^>]+\s(?:style|on\w+)=", text)
    # Another unit's copy has the same script, so one hash serves them all.
    other = replace(pages.unit, name="Other", code="100000000000008")
    assert _scripts(phone_copy(replace(pages, unit=other))) == _scripts(text)


def test_size(each_site: Site) -> None:
    """It is sent by message and kept on old phones."""
    text = (each_site.folder / "manual.html").read_bytes()
    assert len(text) < LIMIT
    assert len(re.sub(rb'"data:image/[^"]*"', b"", text)) < TEXT_LIMIT


def test_text_of_a_unit_is_never_markup(site: Site, pages: Pages, phone: Phone) -> None:
    """Whatever a unit's file says comes out as text, in page, data and title."""
    evil = "</script></title><img src=x onerror=alert(1)>\"'&<s>{{ 7*7 }}"
    inlet = replace(
        pages.by_number[210],
        title=evil,
        where=evil,
        text=evil,
        ask=(evil,),
        tiles=(Tile(evil, evil, evil, ""),),
    )
    unit = replace(
        pages.unit,
        name=evil,
        maker=evil,
        year=evil,
        dealer_name=evil,
        title=evil,
        edition=evil,
        found_on=evil,
    )
    others = tuple(page for page in pages.pages if page.number != inlet.number)
    made = replace(
        pages,
        unit=unit,
        pages=tuple(sorted((*others, inlet), key=lambda p: p.number)),
    )
    file = site.folder.parent / "evil.html"
    file.write_text(phone_copy(made), encoding="utf-8")
    phone.page.on("dialog", lambda _: phone.complaints.append("a script ran"))
    page = phone.open(file.as_uri())
    page.locator("#home-words").fill("onerror")
    page.locator(".find .found a").first.wait_for()
    assert page.locator('img[src="x"], s').count() == 0
    assert page.title() == evil
    shown = page.locator("#t-210 .title").text_content() or ""
    assert shown == evil
