"""
A second process: it reads the blocks and readies MkDocs while the units are read.

It is forked before anything slow is imported and saves a third of the time of a build
where there are two cores.  Where it cannot be had, or fails, the first process does
the work itself: the bytes are the same.  What crosses is plain values, never a
quantity.
"""

from __future__ import annotations

import contextlib
import os
import pickle
import sys
from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, Any, BinaryIO, Final, Protocol

from hatchleaf.compiled import write_kept

if TYPE_CHECKING:
    from hatchleaf.blocks.model import Library
    from hatchleaf.manual.model import Pages
    from hatchleaf.settings import Settings
    from hatchleaf.workspace import Workspace

_TWO_CORES: Final = 2


class Help(Protocol):
    """What may be done by either process."""

    def library(self, workspace: Workspace) -> Library:
        """Return all content of the workspace, read and laid over."""

    def site(self, pages: Pages, settings: Settings) -> Mapping[str, bytes]:
        """Return one unit's website with its phone copy."""


class Alone:
    """Does it in this process; what is slow to import is imported when needed."""

    def library(self, workspace: Workspace) -> Library:
        """Return all content of the workspace, read and laid over."""
        from hatchleaf.blocks.reading import read_library  # noqa: PLC0415

        return read_library(workspace.content_folders(), workspace.root)

    def site(self, pages: Pages, settings: Settings) -> Mapping[str, bytes]:
        """Return one unit's website with its phone copy."""
        from hatchleaf.outputs.website.loop import build_site  # noqa: PLC0415

        return build_site(pages, settings)


class _Both(Alone):
    """Asks the other process first; what it cannot do is done, and told of, here."""

    def __init__(self, out: BinaryIO, back: BinaryIO, read: BinaryIO) -> None:
        self._out, self._back, self._read = out, back, read
        self._lost = False

    def library(self, workspace: Workspace) -> Library:
        """Return the library that was read over there, if it was without problems."""
        found: Library | None = self._answer(self._read)
        return super().library(workspace) if found is None else found

    def site(self, pages: Pages, settings: Settings) -> Mapping[str, bytes]:
        """Return the website made over there, if it could be."""
        with self._losing():
            pickle.dump((pages, settings), self._out)
            self._out.flush()
        found: Mapping[str, bytes] | None = self._answer(self._back)
        return super().site(pages, settings) if found is None else found

    def _answer(self, stream: BinaryIO) -> Any:
        if not self._lost:
            with self._losing():
                return pickle.load(stream)  # noqa: S301  # from our own child
        return None

    @contextlib.contextmanager
    def _losing(self) -> Iterator[None]:
        try:
            yield
        except (OSError, EOFError, pickle.PickleError):
            self._lost = True


@contextlib.contextmanager
def second(workspace: Workspace) -> Iterator[Help]:
    """Offer a second process for *workspace*; to be entered before slow imports."""
    # Elsewhere a fork is not to be had or, on macOS, not safe.
    if sys.platform != "linux" or (os.cpu_count() or 1) < _TWO_CORES:
        yield Alone()
        return
    asks, asked = os.pipe()
    answers, answered = os.pipe()
    reads, told = os.pipe()
    sys.stdout.flush()
    sys.stderr.flush()
    child = os.fork()
    if child == 0:
        for ours in (asked, answers, reads):
            os.close(ours)
        _serve(workspace, asks, answered, told)
    for theirs in (asks, answered, told):
        os.close(theirs)
    with (
        os.fdopen(asked, "wb") as out,
        os.fdopen(answers, "rb") as back,
        os.fdopen(reads, "rb") as read,
    ):
        yield _Both(out, back, read)
    os.waitpid(child, 0)


def _serve(workspace: Workspace, asks: int, answered: int, told: int) -> None:
    """Work until nobody asks any more; never return to the caller's code."""
    alone = Alone()
    try:
        with os.fdopen(told, "wb") as telling:
            pickle.dump(_tried(lambda: alone.library(workspace)), telling)
        with os.fdopen(asks, "rb") as incoming, os.fdopen(answered, "wb") as outgoing:
            from hatchleaf.outputs.website import engine  # noqa: PLC0415  # slow

            for name in ("main.html", "page.html", "home.html", "phone.html"):
                engine.environment().get_template(name)
            while True:
                pages, settings = pickle.load(incoming)  # noqa: S301  # our parent's
                made = _tried(lambda: dict(alone.site(pages, settings)))  # noqa: B023
                pickle.dump(made, outgoing)
                outgoing.flush()
    except BaseException:  # noqa: BLE001  # it ends here, whatever it is
        with contextlib.suppress(Exception):
            write_kept()
        os._exit(0)


def _tried(work: Callable[[], Any]) -> Any:
    try:
        return work()
    except Exception:  # noqa: BLE001  # the first process meets it again and tells
        return None
