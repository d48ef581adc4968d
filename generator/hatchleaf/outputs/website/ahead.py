"""
A second process that readies MkDocs and our templates while the units are read.

It is forked before anything slow is imported and saves the time of one core where
there are two.  Where it cannot be had, or fails, the caller does the work itself:
the bytes are the same.  What crosses is plain values, never a quantity.
"""

from __future__ import annotations

import contextlib
import os
import pickle
import sys
from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, BinaryIO, Final

from hatchleaf.compiled import write_kept

if TYPE_CHECKING:
    from hatchleaf.manual.model import Pages
    from hatchleaf.settings import Settings

Build = Callable[["Pages", "Settings"], Mapping[str, bytes]]

_TWO_CORES: Final = 2


def inline(pages: Pages, settings: Settings) -> Mapping[str, bytes]:
    """Return one unit's website, built in this process."""
    # Here, since MkDocs is slow to import and a file with problems needs none.
    from hatchleaf.outputs.website.loop import build_site  # noqa: PLC0415

    return build_site(pages, settings)


@contextlib.contextmanager
def builder() -> Iterator[Build]:
    """
    Offer what `inline` does, by a process that is already getting ready.

    To be entered before slow imports.  Whatever goes wrong over there is done again
    here, so that an error is raised where it can be told.
    """
    if not _can_fork():
        yield inline
        return
    asks, asked = os.pipe()
    answers, answered = os.pipe()
    sys.stdout.flush()
    sys.stderr.flush()
    child = os.fork()
    if child == 0:
        os.close(asked)
        os.close(answers)
        _serve(asks, answered)
    os.close(asks)
    os.close(answered)
    with os.fdopen(asked, "wb") as out, os.fdopen(answers, "rb") as back:
        yield _Remote(out, back)
    os.waitpid(child, 0)


class _Remote:
    """Asks the other process; falls back to this one."""

    def __init__(self, out: BinaryIO, back: BinaryIO) -> None:
        self._out, self._back, self._lost = out, back, False

    def __call__(self, pages: Pages, settings: Settings) -> Mapping[str, bytes]:
        """Return one unit's website."""
        if not self._lost:
            try:
                pickle.dump((pages, settings), self._out)
                self._out.flush()
                answer: Mapping[str, bytes] | None = pickle.load(self._back)  # noqa: S301
                if answer is not None:
                    return answer
            except (OSError, EOFError, pickle.PickleError):
                self._lost = True
        return inline(pages, settings)


def _can_fork() -> bool:
    # Elsewhere a fork is not to be had or, on macOS, not safe.
    return sys.platform == "linux" and (os.cpu_count() or 1) >= _TWO_CORES


def _serve(asks: int, answered: int) -> None:
    """Build what is asked for until nobody asks; never return to the caller's code."""
    try:
        with os.fdopen(asks, "rb") as incoming, os.fdopen(answered, "wb") as outgoing:
            from hatchleaf.outputs import fragments  # noqa: PLC0415  # slow
            from hatchleaf.outputs.website import engine, loop  # noqa: PLC0415

            engine.check_engine()
            for name in ("main.html", "page.html", "home.html", "phone.html"):
                engine.environment().get_template(name)
            fragments.theme_text("assets/style.css")
            while True:
                pages, settings = pickle.load(incoming)  # noqa: S301  # our parent's
                pickle.dump(_tried(loop.build_site, pages, settings), outgoing)
                outgoing.flush()
    except BaseException:  # noqa: BLE001  # it ends here, whatever it is
        with contextlib.suppress(Exception):
            write_kept()
        os._exit(0)


def _tried(
    build: Build, pages: Pages, settings: Settings
) -> Mapping[str, bytes] | None:
    try:
        return dict(build(pages, settings))
    except Exception:  # noqa: BLE001  # the parent meets it again and tells
        return None
