"""
A built site, a local server that forbids inline code, and a phone to open it with.

The server sends the policy that a careful host sends, so anything inline fails here.
"""

from __future__ import annotations

import functools
import shutil
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from axe_core_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, Page, sync_playwright

from browser.sample_pages import sample_pages
from hatchleaf.manual.model import Pages
from hatchleaf.outputs.website.loop import build_site
from hatchleaf.settings import Settings

POLICY = "default-src 'self'"
"""Nothing inline, nothing from elsewhere."""

PHONE = {"width": 390, "height": 844}
NARROW = {"width": 320, "height": 568}

_ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@dataclass(frozen=True)
class Site:
    """A built site on disk and where it is served."""

    pages: Pages
    folder: Path
    address: str

    @property
    def copy(self) -> str:
        """The phone copy as a phone opens it: from a file."""
        return (self.folder / "manual.html").as_uri()

    def topic(self, number: int) -> str:
        """Return the address of a topic's page."""
        return f"{self.address}/{self.pages.unit.code}/{number:03d}/"


@dataclass
class Phone:
    """An open tab, with what it complained of and whom it asked."""

    page: Page
    complaints: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def open(self, address: str) -> Page:
        """Go to an address and return the tab."""
        # A phone copy's topics differ in the part after #, which alone loads nothing.
        if self.page.url.split("#")[0] == address.split("#", maxsplit=1)[0]:
            self.page.goto("about:blank")
        self.page.goto(address)
        return self.page


@pytest.fixture(scope="session")
def pages() -> Pages:
    """Return the pages that the tests look at."""
    return sample_pages()


@pytest.fixture(scope="session")
def site(pages: Pages, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    """Build the site once and serve it."""
    folder = tmp_path_factory.mktemp("site")
    settings = Settings(
        site_url="https://manuals.example/",
        host="manuals.example",
        site_name="Two Herons",
        phone="555-0142",
        brand="",
        preview="",
    )
    for name, content in build_site(pages, settings).items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)
    with served(folder) as address:
        yield Site(pages, folder / pages.unit.code, address)


class served:  # noqa: N801
    """Serve a folder on a free port of this machine while the block runs."""

    def __init__(self, folder: Path) -> None:
        handler = functools.partial(_Handler, directory=str(folder))
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
        self._thread = threading.Thread(target=self._server.serve_forever, daemon=True)

    def __enter__(self) -> str:
        """Start, and return the address without a slash at its end."""
        self._thread.start()
        return f"http://127.0.0.1:{self._server.server_port}"

    def __exit__(self, *_: object) -> None:
        """Stop and wait for the thread."""
        self._server.shutdown()
        self._thread.join()
        self._server.server_close()


class _Handler(SimpleHTTPRequestHandler):
    def end_headers(self) -> None:
        """Add the policy, and let nothing stay in the browser's cache."""
        if not self.path.endswith("manual.html"):
            self.send_header("Content-Security-Policy", POLICY)
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Say nothing."""


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Start the system's Chromium."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if not found:
        pytest.fail("Chromium is missing: install the package `chromium`")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=found, args=list(_ARGUMENTS)
        )
        yield browser
        browser.close()


@pytest.fixture
def phone_with(chromium: Browser) -> Iterator[Callable[..., Phone]]:
    """Return a maker of phones; what a phone complained of fails the test."""
    made: list[Phone] = []

    def make(**settings: Any) -> Phone:
        context = chromium.new_context(**{"viewport": PHONE, **settings})
        phone = Phone(context.new_page())
        phone.page.on(
            "console",
            lambda message: (
                phone.complaints.append(message.text)
                if message.type in ("error", "warning")
                else None
            ),
        )
        phone.page.on("pageerror", lambda error: phone.complaints.append(str(error)))
        phone.page.on("request", lambda request: phone.asked.append(request.url))
        made.append(phone)
        return phone

    yield make
    for phone in made:
        phone.page.context.close()
        foreign = [
            url
            for url in phone.asked
            if not url.startswith(("http://127.0.0.1:", "file:", "data:", "about:"))
        ]
        assert not phone.complaints
        assert not foreign


@pytest.fixture
def phone(phone_with: Callable[..., Phone]) -> Phone:
    """Return a phone by day, scripts on."""
    return phone_with()


def faults(page: Page) -> list[str]:
    """Return what axe-core finds wrong with the page, all of its rules asked."""
    # Evaluated by the tab's debugger, which the page's policy does not bind.
    page.evaluate(AXE_SCRIPT)
    found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    return [
        f"{rule['id']}: {node['target']} {node['failureSummary']}"
        for rule in found["violations"]
        for node in rule["nodes"]
    ]


def sideways(page: Page) -> int:
    """Return by how many pixels the page can be scrolled sideways."""
    width = page.evaluate(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    )
    return int(width)
