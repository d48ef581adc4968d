"""The dealer's door in a browser: codes typed right and wrong, addresses that miss."""

from __future__ import annotations

import functools
import random
import threading
from collections.abc import Callable, Iterator
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from browser.conftest import NARROW, POLICY, Built, Phone, faults, sideways
from hatchleaf.outputs.door import LOST
from hatchleaf.spec import code

CODE = "188273965808228"
TARGET = 44
"""CSS pixels: WCAG 2.2, success criterion 2.5.5, and what thumbs need."""


class _Host(SimpleHTTPRequestHandler):
    """A host as it is set up for a site: its own page where nothing is."""

    def end_headers(self) -> None:
        """Forbid what is inline."""
        self.send_header("Content-Security-Policy", POLICY)
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def send_error(self, code: int, *_: Any) -> None:
        """Answer with the page for addresses that lead nowhere."""
        page = (Path(self.directory) / LOST).read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(page)))
        self.end_headers()
        if self.command != "HEAD" and code == HTTPStatus.NOT_FOUND:
            self.wfile.write(page)

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Say nothing."""


@pytest.fixture(scope="module")
def host(built: Built) -> Iterator[str]:
    """Serve the built site as a host does; return its address without a slash."""
    handler = functools.partial(_Host, directory=str(built.folder))
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    thread.join()
    server.server_close()


def _lost(phone: Phone, address: str) -> Page:
    """Open an address that leads nowhere, which a browser itself complains of."""
    page = phone.open(address)
    page.wait_for_load_state("networkidle")
    phone.complaints[:] = [c for c in phone.complaints if "status of 404" not in c]
    return page


def _enter(page: Page, typed: str, number: str = "") -> None:
    """Fill in and press Enter."""
    page.get_by_label("Code on the sticker").fill(typed)
    page.get_by_label("Number of the topic").fill(number)
    page.get_by_label("Code on the sticker").press("Enter")


@pytest.mark.parametrize(
    ("typed", "number", "leads_to"),
    [
        (CODE, "210", f"/{CODE}/210/"),
        ("18827 39658 08228", "210", f"/{CODE}/210/"),
        (" 18827-39658-08228 ", "1", f"/{CODE}/001/"),
        (f"{CODE}210", "", f"/{CODE}/210/"),
        (f"https://manuals.example/{CODE}/210/", "", f"/{CODE}/210/"),
        (f"manuals.example/{CODE}/", "", f"/{CODE}/000/"),
        ("18827\u00a039658\u00a008228", "", f"/{CODE}/000/"),
    ],
)
def test_right_codes(
    phone: Phone, host: str, typed: str, number: str, leads_to: str
) -> None:
    """However it is typed, spaced or pasted, it opens."""
    page = phone.open(f"{host}/")
    _enter(page, typed, number)
    page.wait_for_url(f"{host}{leads_to}")
    expect(page.locator("h1")).to_be_visible()
    # The page that leads from the code to 000 has no icon; some browsers look for one.
    page.wait_for_load_state("networkidle")
    if leads_to.endswith("/000/"):
        phone.complaints[:] = [c for c in phone.complaints if "status of 404" not in c]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("", "Type the 15 digits"),
        ("18827 39658 0822", "These are 14 digits"),
        ("18827 39658 08228 1234", "too many"),
        ("18827 39658 O8228", "Perhaps it is the digit 0"),
        ("18827 39658 08229", "A digit is wrong"),
        ("18827 36958 08228", "two have changed places"),
        ("08827 39658 08228", "never begins with 0"),
        ("210", "is the number of a topic"),
    ],
)
def test_wrong_codes(phone: Phone, host: str, typed: str, said: str) -> None:
    """It says what is wrong, goes nowhere, and puts the cursor where it is."""
    page = phone.open(f"{host}/")
    _enter(page, typed)
    assert said in page.locator("#code-said").inner_text()
    assert page.url == f"{host}/"
    field = page.get_by_label("Code on the sticker")
    expect(field).to_be_focused()
    assert field.get_attribute("aria-invalid") == "true"
    field.press_sequentially("1")
    assert field.get_attribute("aria-invalid") is None
    assert page.locator("#code-said").inner_text() == ""


def test_check_digit_agrees(phone: Phone, host: str) -> None:
    """The page's check and ours say the same of right codes and of damaged ones."""
    page = phone.open(f"{host}/")
    page.evaluate("document.getElementById('number').value = '12345'")  # stay here
    source = random.Random(1)  # noqa: S311
    cases = []
    for _ in range(15):
        right = code.new(source)
        at = source.randrange(1, 15)
        digit = str((int(right[at]) + source.randrange(1, 10)) % 10)
        cases += [right, right[:at] + digit + right[at + 1 :]]
    for typed in cases:
        page.locator("#code").fill(typed)
        page.locator("#code").press("Enter")
        assert (page.locator("#code-said").inner_text() == "") == code.valid(typed)
        assert "three digits" in page.locator("#number-said").inner_text()


@pytest.mark.parametrize(
    ("path", "leads_to"),
    [
        ("18827-39658-08228/210/", f"{CODE}/210/"),
        ("18827 39658 08228/210", f"{CODE}/210/"),
        ("18827/39658/08228/210", f"{CODE}/210/"),
        (f"{CODE}/1", f"{CODE}/001/"),
        (f"{CODE}210", f"{CODE}/210/"),
        (f"{CODE}.", f"{CODE}/000/"),
    ],
)
def test_mistyped_addresses_are_put_right(
    phone: Phone, host: str, path: str, leads_to: str
) -> None:
    """What was surely meant is opened without a question."""
    page = phone.open(f"{host}/{path}")
    page.wait_for_url(f"{host}/{leads_to}")
    page.wait_for_load_state("networkidle")
    phone.complaints[:] = [c for c in phone.complaints if "status of 404" not in c]


def test_a_topic_that_is_not_there(phone: Phone, host: str) -> None:
    """The guide is here and has no such number: it says so and offers the guide."""
    page = _lost(phone, f"{host}/{CODE}/999/")
    expect(page.locator("#lost")).to_contain_text("no topic 999")
    page.get_by_role("link", name="Open the guide").click()
    page.wait_for_url(f"{host}/{CODE}/000/")
    page.wait_for_load_state("networkidle")
    phone.complaints[:] = [c for c in phone.complaints if "status of 404" not in c]


def test_a_code_that_is_not_there(phone: Phone, host: str) -> None:
    """A right code without a guide: whom to call."""
    other = code.new(random.Random(5))  # noqa: S311
    page = _lost(phone, f"{host}/{other}/210/")
    expect(page.locator("#lost")).to_contain_text("no guide with it is here")
    assert (
        page.get_by_label("Code on the sticker").input_value().replace(" ", "") == other
    )
    page = _lost(phone, f"{host}/{other}/")
    expect(page.locator("#lost")).to_contain_text("call Two Herons")


def test_a_code_with_a_wrong_digit(phone: Phone, host: str) -> None:
    """It is in the box, with its groups, and can be mended there."""
    page = _lost(phone, f"{host}/188273965808229/210/")
    expect(page.locator("#lost")).to_contain_text("A digit is wrong")
    assert page.get_by_label("Code on the sticker").input_value() == "18827 39658 08229"
    assert page.get_by_label("Number of the topic").input_value() == "210"
    _enter(page, "18827 39658 08228", "210")
    page.wait_for_url(f"{host}/{CODE}/210/")


@pytest.mark.parametrize("path", ["310", "310/", "31"])
def test_a_number_alone(phone: Phone, host: str, path: str) -> None:
    """The number is kept, the code is asked for."""
    page = _lost(phone, f"{host}/{path}")
    expect(page.locator("#lost")).to_contain_text("code of the unit is missing")
    assert page.get_by_label("Number of the topic").input_value() in ("310", "031")


@pytest.mark.parametrize("path", ["nothing", "%E0%A4%A", "a/b/c/d", "404.html"])
def test_other_addresses(phone: Phone, host: str, path: str) -> None:
    """Whatever was typed, the page explains itself, and nothing fails."""
    page = _lost(phone, f"{host}/{path}")
    expect(page.locator("#lost")).to_contain_text("leads to no page")
    assert page.get_by_label("Code on the sticker").input_value() == ""


@pytest.mark.parametrize("path", ["", "no/such/page/"])
@pytest.mark.parametrize(
    "settings",
    [{}, {"color_scheme": "dark"}, {"viewport": NARROW}, {"forced_colors": "active"}],
)
def test_axe_and_targets(
    phone_with: Callable[..., Phone], host: str, path: str, settings: dict[str, Any]
) -> None:
    """No fault that axe-core finds, by day, at night, on a narrow phone; 44 px for thumbs."""
    page = _lost(phone_with(**settings), f"{host}/{path}")
    assert faults(page) == []
    assert sideways(page) == 0
    for target in page.locator("a:visible, button:visible, input:visible").all():
        box = target.bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= TARGET, target.inner_text()


@pytest.mark.parametrize("path", ["", f"{CODE}/999/"])
def test_scripts_off(phone_with: Callable[..., Phone], host: str, path: str) -> None:
    """Without scripts no box that does nothing, but how an address is written."""
    page = _lost(phone_with(java_script_enabled=False), f"{host}/{path}")
    assert not page.locator("form").is_visible()
    expect(page.get_by_text("manuals.example").first).to_be_visible()
    expect(page.get_by_text("15 digits of the code")).to_be_visible()


def test_keyboard(phone: Phone, host: str) -> None:
    """From box to box to button by Tab, opened by Enter, each in plain sight."""
    page = phone.open(f"{host}/")
    page.keyboard.press("Tab")
    page.keyboard.type("188273965808228")
    page.keyboard.press("Tab")
    page.keyboard.type("310")
    page.keyboard.press("Tab")
    expect(page.get_by_role("button", name="Open the guide")).to_be_focused()
    page.keyboard.press("Enter")
    page.wait_for_url(f"{host}/{CODE}/310/")


def test_text_twice_as_large(phone: Phone, host: str) -> None:
    """Nothing is cut or scrolls sideways at 200 % (WCAG 2.2, 1.4.4)."""
    page = phone.open(f"{host}/")
    page.evaluate("document.documentElement.style.fontSize = '225%'")
    assert sideways(page) == 0
    page.locator("#code").fill("18827 39658 08228")
