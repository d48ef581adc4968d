"""A host of one folder that can be killed, come back, dawdle, and tell who asked."""

from __future__ import annotations

import contextlib
import functools
import json
import shutil
import threading
import time
from collections.abc import Callable
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from types import TracebackType
from typing import Self

from hatchleaf.outputs import offline
from hatchleaf.outputs.website.assets import RECORD

POLICY = "default-src 'self'"


class Host:
    """Serves a folder at one address, with breaks."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.asked: list[str] = []
        """The paths asked for."""
        self.port = 0
        self.dawdles: Callable[[str], float] = lambda _: 0.0
        """Seconds before a path is answered."""
        self.dies_after = 0
        """It answers so many requests and then no more; 0 for no end."""
        self._server: ThreadingHTTPServer | None = None

    def __enter__(self) -> Self:
        """Start it."""
        self.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Stop it for good."""
        self.kill()

    @property
    def address(self) -> str:
        """Where it is, without a slash at its end."""
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> None:
        """Answer, at the same port as before."""
        handler = functools.partial(_Handler, self)
        self._server = ThreadingHTTPServer(("127.0.0.1", self.port), handler)
        self.port = self._server.server_port
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    def kill(self) -> None:
        """Answer nobody: a connection is refused."""
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server = None


class _Handler(SimpleHTTPRequestHandler):
    def __init__(self, host: Host, *request: object) -> None:
        self._host = host
        super().__init__(*request, directory=str(host.folder))  # type: ignore[arg-type]

    def do_GET(self) -> None:
        """Answer as late as the host does, or not at all."""
        host = self._host
        host.asked.append(self.path)
        if host.dies_after and len(host.asked) > host.dies_after:
            self.close_connection = True
            return
        time.sleep(host.dawdles(self.path))
        with contextlib.suppress(ConnectionError):
            super().do_GET()

    def end_headers(self) -> None:
        """Add the policy that a careful host sends."""
        if not self.path.endswith("manual.html"):
            self.send_header("Content-Security-Policy", POLICY)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Say nothing."""


def files_of(folder: Path, code: str) -> dict[str, bytes]:
    """Return what a unit publishes, by path below the site."""
    shared = json.loads((folder / code / RECORD).read_bytes())["shared"]
    tops = [folder / code, folder / shared]
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for top in tops
        for path in sorted(top.rglob("*"))
        if path.is_file()
    }


def alone(site: Path, code: str, folder: Path) -> Path:
    """Copy one unit's site to a folder where it can be spoiled."""
    shutil.copytree(site / code, folder / code)
    shutil.copytree(site / "a", folder / "a", dirs_exist_ok=True)
    return folder


def edited(folder: Path, code: str, old: str, new: str) -> dict[str, bytes]:
    """
    Return a new edition of a unit: on each page *old* is *new*, and its worker.

    Nothing is written: tests choose what of it gets to the host.
    """
    files = files_of(folder, code)
    for name in list(files):
        if name.endswith("index.html"):
            text = files[name].decode().replace(old, new)
            files[name] = text.replace('data-edition="', 'data-edition="new ').encode()
    worker = offline.worker(code, "new " + _edition(files, code), files)
    return {**files, f"{code}/{offline.WORKER}": worker}


def put(folder: Path, files: dict[str, bytes], *names: str) -> None:
    """Write some of the files, all when none is named; the worker last."""
    for name in sorted(names or files, key=lambda each: each.endswith("sw.js")):
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(files[name])


def _edition(files: dict[str, bytes], code: str) -> str:
    text = files[f"{code}/000/index.html"].decode()
    return text.partition('data-edition="new ')[2].partition('"')[0]
