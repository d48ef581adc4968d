"""The dealership's settings, read from its `mkdocs.yml`: these keys and no others."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Collection
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from hatchleaf.library import UNITS
from hatchleaf.problems import Problem, ProblemsFound, listed, suggestion
from hatchleaf.spec.source import read
from hatchleaf.spec.tree import Node

PLUGIN: Final = "hatchleaf"
LONGEST_NAME: Final = 60

_TOP: Final = ("site_name", "site_url", "docs_dir", "plugins")
_OWN: Final = ("phone", "colors", "preview", "allow_unreviewed", "statement_checked")
_COLORS: Final = ("brand",)

# Letters, digits, hyphens, as RFC 1123 section 2.1 has host names; lower case, since
# the address is printed. No port, path or user: the grammar of printed addresses.
_LABEL: Final = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?"
_URL: Final = re.compile(rf"https://((?:{_LABEL}\.)+{_LABEL})/")
_LONGEST_HOST: Final = 253
_PHONE: Final = re.compile(r"\+?[0-9](?:-?[0-9]){2,17}")
_COLOR: Final = re.compile(r"#[0-9a-fA-F]{6}")
_DAY: Final = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_YES_NO: Final = re.compile("true|false")
_UNIT: Final = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


@dataclass(frozen=True)
class Settings:
    """What a dealership decides for all its units."""

    site_url: str
    """``https://HOST/``, as printed on every sticker."""
    host: str
    site_name: str
    """The dealership's name."""
    phone: str
    """Digits and hyphens, perhaps with a leading plus."""
    brand: str
    """Its colour as ``#rrggbb``, empty for ours."""
    preview: str
    """Name of the unit's file that the preview shows, without ending; may be empty."""
    allow_unreviewed: bool = False
    """True when guides go out with texts that no qualified person has reviewed."""
    statement_checked: dt.date | None = None
    """When the federal statement on safety defects was compared with its rule."""

    @property
    def checked_in_words(self) -> str:
        """The day of `statement_checked` as a page prints it; empty for none."""
        day = self.statement_checked
        return f"{day.day} {day:%B} {day.year}" if day else ""


def read_settings(path: Path, root: Path) -> Settings:
    """
    Return the settings of a dealership.

    Args:
        path: Its `mkdocs.yml`.
        root: The folder that places in problems are relative to.

    Raises:
        ProblemsFound: All that is missing, wrong or unknown.
    """
    return settings_from(read(path, root))


def settings_from(tree: Node) -> Settings:
    """
    Return the settings that a `mkdocs.yml` states.

    Args:
        tree: The file as texts with their places.

    Raises:
        ProblemsFound: All that is missing, wrong or unknown.
    """
    reader = _Reader()
    reader.known(tree, _TOP, "")
    own = reader.own(tree)
    reader.known(own, _OWN, PLUGIN)
    colors = own.fields.get("colors")
    if colors is not None:
        reader.known(colors, _COLORS, "colors")
    reader.docs_dir(tree)
    site_url = reader.text(
        tree, "site_url", _URL, "https://HOST/", "such as https://manuals.example/"
    )
    settings = Settings(
        site_url=site_url,
        host=site_url.removeprefix("https://").removesuffix("/"),
        site_name=reader.name(tree),
        phone=reader.text(
            own, "phone", _PHONE, "digits and hyphens", "such as 555-555-0142"
        ),
        brand=reader.text(
            colors, "brand", _COLOR, "#rrggbb in quotes", 'such as "#1f4e79"'
        ),
        preview=reader.text(
            own,
            "preview",
            _UNIT,
            "a name in small letters",
            "such as heron-a",
            must=False,
        ),
        allow_unreviewed=reader.text(
            own,
            "allow_unreviewed",
            _YES_NO,
            "true, false",
            "with true, the pages say so",
            must=False,
        )
        == "true",
        statement_checked=reader.day(own, "statement_checked"),
    )
    if reader.problems:
        raise ProblemsFound(reader.problems)
    return settings


@dataclass
class _Reader:
    problems: list[Problem] = field(default_factory=list)

    def known(self, node: Node, names: Collection[str], where: str) -> None:
        """Report every key that is not among the names."""
        if not node.fields and node.content:
            self._report(node, where, "this is not a set of keys", listed(names))
        for name in node.fields:
            if name not in names:
                self.problems.append(
                    Problem(
                        node.keys[name],
                        f"{where}.{name}" if where else name,
                        "is not one of this file's keys",
                        listed(names),
                        suggestion(name, names),
                    )
                )

    def own(self, tree: Node) -> Node:
        """Return what stands below our plug-in's name, the only one there may be."""
        plugins = tree.fields.get("plugins")
        hint = f"write 'plugins:' and below it '- {PLUGIN}:'"
        if plugins is None:
            self._report(tree, "plugins", "is missing", PLUGIN, hint)
            return Node(tree.place, "")
        for item in plugins.items:
            if len(plugins.items) == 1 and list(item.fields) == [PLUGIN]:
                return item.fields[PLUGIN]
            if len(plugins.items) == 1 and item.text == PLUGIN:
                return item
        self._report(plugins, "plugins", "has to be our plug-in alone", PLUGIN, hint)
        return Node(plugins.place, "")

    def docs_dir(self, tree: Node) -> None:
        """MkDocs insists on a folder that exists; nothing in it is published."""
        node = tree.fields.get("docs_dir")
        if node is not None and node.text != UNITS:
            self._report(node, "docs_dir", "cannot be another folder", UNITS)

    def name(self, tree: Node) -> str:
        """Return the dealership's name: one line that fits on a page's head."""
        node = tree.fields.get("site_name")
        hint = "the dealership's name, as its customers know it"
        if node is None or not (node.text or "").strip():
            self._report(node or tree, "site_name", "is missing", "", hint)
            return ""
        text = (node.text or "").strip()
        if len(text) > LONGEST_NAME or not text.isprintable():
            allowed = f"at most {LONGEST_NAME} characters in one line"
            self._report(node, "site_name", "is not a short name", allowed, hint)
        return text

    def text(  # one place for the same three questions
        self,
        node: Node | None,
        name: str,
        form: re.Pattern[str],
        allowed: str,
        hint: str,
        *,
        must: bool = True,
    ) -> str:
        """Return a field's text, which has to have the form."""
        if node is None:
            return ""
        found = node.fields.get(name)
        if found is None:
            if must:
                self._report(node, name, "is missing", allowed, hint)
            return ""
        text = found.text or ""
        if not form.fullmatch(text) or len(text) > _LONGEST_HOST:
            what = f"{text!r} is not in order" if text else "has no value"
            self._report(found, name, what, allowed, hint)
        return text

    def day(self, node: Node, name: str) -> dt.date | None:
        """Return a field's day, None where it has none or none in order."""
        what, hint = "year-month-day", "the day on which somebody compared it"
        text = self.text(node, name, _DAY, what, hint, must=False)
        try:
            return dt.date.fromisoformat(text) if _DAY.fullmatch(text) else None
        except ValueError:
            self._report(node.fields[name], name, f"{text!r} is no day", what, hint)
            return None

    def _report(
        self, node: Node, name: str, what: str, allowed: str = "", hint: str = ""
    ) -> None:
        self.problems.append(Problem(node.place, name, what, allowed, hint))
