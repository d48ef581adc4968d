"""
A built site, a local server that forbids inline code, and a phone to open it with.

The server sends the policy that a careful host sends, so anything inline fails here.
"""

from __future__ import annotations

import functools
import shutil
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from axe_core_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from browser.host import Host, alone
from hatchleaf.cli.edge import gathered, open_workspace
from hatchleaf.manual.model import Pages

ROOT = Path(__file__).parents[2]
COMMAND = Path(sys.executable).with_name("hatchleaf")
UNITS = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")

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


@dataclass(frozen=True)
class Built:
    """All sample units on disk, built by the command, and where they are served."""

    folder: Path
    address: str

    def site(self, unit: str) -> Site:
        """Return one unit's site, its pages as the command had them."""
        workspace = open_workspace(ROOT)
        pages = gathered(workspace, (unit,))[0].made.pages
        return Site(pages, self.folder / pages.unit.code, self.address)


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Built]:
    """Build the sample units once, as a dealership does, and serve them."""
    folder = tmp_path_factory.mktemp("site")
    subprocess.run(
        [str(COMMAND), "build", "--site", str(folder)],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    with served(folder) as address:
        yield Built(folder, address)


@pytest.fixture(scope="session")
def site(built: Built) -> Site:
    """Return the unit with the most fitted to it."""
    return built.site(UNITS[0])


@pytest.fixture(scope="session", params=UNITS)
def each_site(built: Built, request: pytest.FixtureRequest) -> Site:
    """Return each sample unit in turn."""
    return built.site(str(request.param))


@pytest.fixture(scope="session")
def pages(site: Site) -> Pages:
    """Return the pages that most tests look at."""
    return site.pages


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


def _chromium() -> str:
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if not found:
        pytest.fail("Chromium is missing: install the package `chromium`")
    return found


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Start the system's Chromium."""
    found = _chromium()
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


@pytest.fixture
def host(built: Built, site: Site, tmp_path: Path) -> Iterator[Host]:
    """Return a host of the unit with the most pages, to be spoiled."""
    code = site.pages.unit.code
    with Host(alone(built.folder, code, tmp_path / "www")) as made:
        yield made


@pytest.fixture
def start(chromium: Browser, tmp_path: Path) -> Iterator[Callable[..., BrowserContext]]:
    """Return a maker of browsers that keep what they have between two starts."""
    running: list[BrowserContext] = []

    def begin(name: str = "phone") -> BrowserContext:
        made = chromium.browser_type.launch_persistent_context(
            tmp_path / name,
            executable_path=_chromium(),
            args=list(_ARGUMENTS),
            viewport={"width": 390, "height": 844},
        )
        running.append(made)
        return made

    yield begin
    for each in running:
        each.close()


@pytest.fixture
def context(start: Callable[..., BrowserContext]) -> BrowserContext:
    """Return a phone's browser."""
    return start()


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
