"""
A YAML file as a tree of texts with places; what YAML would guess at is refused.

YAML reads ``no`` as false, ``22:30`` as 1350 and ``0927`` as an octal number, and an
alias can make a gigabyte of a kilobyte.  So the parser's events are read, not its
values: every scalar stays the text that was written.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

import yaml

from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.spec.told import quoted, told
from hatchleaf.spec.tree import Node

LARGEST: Final = 1_000_000
"""Bytes that a file may have; a unit's own is about a hundredth of it."""
DEEPEST: Final = 20
"""Mappings and lists that may stand in one another."""
_MOST_PROBLEMS: Final = 50

_LOADER: Final = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
# What YAML 1.2 forbids in a file, section 5.1; checked first, since libyaml
# does not say where such a character is.
_FORBIDDEN: Final = re.compile(
    "[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)

_INDENT: Final = "look at the indentation, and quote texts with ': ' or '#' in them"
_ITEMS: Final = "start the list in a new line"
_QUOTE: Final = "put the text in quotes"
_SINGLE: Final = "use single quotes"
_TAG: Final = "quote a text that starts with '!'"
# Words of libyaml's errors -> what to tell a person, and how to mend it.
_PLAIN_WORDS: Final = (
    (
        "mapping values are not allowed",
        "a second ': ' stands in one line",
        _QUOTE,
    ),
    ("did not find expected key", "the text does not fit in here", _INDENT),
    ("did not find expected ',' or '}'", "a '{' is not closed", "write '}' or a comma"),
    ("did not find expected ',' or ']'", "a '[' is not closed", "write ']' or a comma"),
    ("did not find expected '-' indicator", "an item starts without '- '", _INDENT),
    ("unexpected end of stream", "a quote is not closed", ""),
    ("unexpected document indicator", "a quote is not closed", ""),
    ("could not find expected ':'", "a key stands without ': '", _INDENT),
    ("block sequence entries are not allowed", "an item cannot stand here", _ITEMS),
    ("undefined tag handle", "a tag is not allowed", _TAG),
    (
        "unknown escape character",
        "a quoted text holds an unknown '\\'",
        "use single quotes",
    ),
)
# Of these the place where the bracket or quote opened helps, not where it was missed.
_SEEN_LATE: Final = ("expected ',' or", "end of stream", "document indicator")


def read(path: Path, root: Path) -> Node:
    """
    Return what the file states.

    Args:
        path: The file.
        root: The workspace; places name the file as seen from there.

    Raises:
        ProblemsFound: The file cannot be read, or holds what is not allowed.

    """
    name = _seen_from(path, root)
    start = Place(name)
    try:
        with path.open("rb") as stream:
            data = stream.read(LARGEST + 1)
    except FileNotFoundError:
        raise ProblemsFound([Problem(start, "", "there is no such file")]) from None
    except OSError as error:
        what = f"the file cannot be read ({error.strerror})"
        raise ProblemsFound([Problem(start, "", what)]) from None
    if len(data) > LARGEST:
        problem = Problem(start, "", "the file is too large", "at most 1 MB")
        raise ProblemsFound([problem])
    return parse(data, name)


def _seen_from(path: Path, root: Path) -> str:
    try:
        return path.resolve().relative_to(root.resolve()).as_posix()
    except ValueError:
        return path.as_posix()


def parse(data: bytes, name: str) -> Node:
    """
    Return what the bytes of a file state.

    Args:
        data: The whole file.
        name: The file's name, for places.

    Raises:
        ProblemsFound: The bytes hold what is not allowed.

    """
    text = _decoded(data, name)
    reader = _Reader(name)
    try:
        events = yaml.parse(text, Loader=_LOADER)
        root = reader.document(events)
    except yaml.YAMLError as error:
        raise ProblemsFound([*reader.problems, _syntax(error, text, name)]) from None
    except _Enough:
        root = None
    if reader.problems or root is None:
        raise ProblemsFound(reader.problems)
    return root


def _decoded(data: bytes, name: str) -> str:
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line = before.count(b"\n") + 1
        column = len(before.rpartition(b"\n")[2].decode(errors="replace")) + 1
        problem = Problem(
            Place(name, line, column), "", "the file is not UTF-8", hint="save it so"
        )
        raise ProblemsFound([problem]) from None
    found = _FORBIDDEN.search(text)
    if found:
        before_it = text[: found.start()]
        place = Place(
            name, before_it.count("\n") + 1, len(before_it.rpartition("\n")[2]) + 1
        )
        what = f"the character U+{ord(found[0]):04X} is not allowed"
        raise ProblemsFound([Problem(place, "", what, hint="take it out")])
    return text


def _syntax(error: yaml.YAMLError, text: str, name: str) -> Problem:
    said = getattr(error, "problem", None) or ""
    mark = getattr(error, "problem_mark", None)
    if any(words in said for words in _SEEN_LATE):
        mark = getattr(error, "context_mark", None) or mark
    place = Place(name, mark.line + 1, mark.column + 1) if mark else Place(name)
    if "cannot start any token" in said:
        return _bad_start(text, place)
    for words, what, hint in _PLAIN_WORDS:
        if words in said:
            return Problem(place, "", what, hint=hint)
    return Problem(place, "", "the text cannot be read from here on", hint=_QUOTE)


def _bad_start(text: str, place: Place) -> Problem:
    lines = text.split("\n")
    line = lines[place.line - 1] if place.line <= len(lines) else ""
    character = line[place.column - 1 : place.column]
    if character == "\t":
        return Problem(place, "", "a tab stands here", hint="indent with spaces")
    return Problem(place, "", f"a text cannot start with '{character}'", hint=_QUOTE)


class _Enough(Exception):  # noqa: N818  # the rest of the file is not looked at
    """Raised inside the reader only."""


class _Reader:
    """Reads events to nodes; collects problems and goes on where it can."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.problems: list[Problem] = []

    def document(self, events: Iterator[Any]) -> Node | None:
        """Return the one document, or None after a problem."""
        next(events)
        first = next(events)
        if not isinstance(first, yaml.DocumentStartEvent):
            self._report(first, "the file is empty")
            return None
        if first.version or first.tags:
            self._report(first, "a line that starts with '%' is not allowed")
        root = self._node(next(events), events, None, 1)
        next(events)
        second = next(events)
        if isinstance(second, yaml.DocumentStartEvent):
            hint = "one file holds one unit; take out the line '---'"
            self._report(second, "a second document starts here", hint)
        if not root.fields and not self.problems:
            hint = "write lines like 'lp: none'"
            self._report(root.place, "the file does not hold fields", hint)
        return root

    def _node(
        self,
        event: Any,
        events: Iterator[Any],
        key: Place | None,
        depth: int,
    ) -> Node:
        place = self._place(event)
        if isinstance(event, yaml.AliasEvent):
            what = f"the alias {quoted(f'*{event.anchor}')} is not allowed"
            self._report(event, what, "write the text out, or quote it")
            return Node(place, "")
        if event.anchor is not None:
            what = f"the anchor {quoted(f'&{event.anchor}')} is not allowed"
            self._report(event, what, "take it out, or quote the text")
        if event.tag is not None:
            tag = str(event.tag).replace("tag:yaml.org,2002:", "!!")
            self._report(event, f"the tag {quoted(tag)} is not allowed", _TAG)
        if isinstance(event, yaml.ScalarEvent):
            return Node(place, event.value)
        if depth > DEEPEST:
            self._report(event, f"more than {DEEPEST} levels stand in one another")
            raise _Enough
        if isinstance(event, yaml.SequenceStartEvent):
            items = []
            while not isinstance(inner := next(events), yaml.SequenceEndEvent):
                items.append(self._node(inner, events, None, depth + 1))
            return Node(key or place, tuple(items))
        return self._mapping(events, key or place, depth)

    def _mapping(self, events: Iterator[Any], place: Place, depth: int) -> Node:
        content: dict[str, Node] = {}
        keys: dict[str, Place] = {}
        while not isinstance(event := next(events), yaml.MappingEndEvent):
            name = self._key(event, events, depth)
            at = self._place(event)
            node = self._node(next(events), events, at, depth + 1)
            if name is None:
                continue
            if name in content:
                first = keys[name].line
                problem = Problem(
                    at,
                    told(name),
                    "field is written twice",
                    hint=f"first in line {first}",
                )
                self.problems.append(problem)
                continue
            content[name] = node
            keys[name] = at
        return Node(place, content, keys)

    def _key(self, event: Any, events: Iterator[Any], depth: int) -> str | None:
        key = self._node(event, events, None, depth + 1)
        if key.text is None or isinstance(event, yaml.AliasEvent):
            if not isinstance(event, yaml.AliasEvent):
                self._report(event, "a key is not a word", _QUOTE)
            return None
        if key.text == "<<":
            self._report(event, "the merge key '<<' is not allowed", "write the fields")
            return None
        if not key.text:
            self._report(event, "a key is empty", "write a word before the ':'")
            return None
        return key.text

    def _place(self, event: Any) -> Place:
        mark = event.start_mark
        return Place(self.name, mark.line + 1, mark.column + 1)

    def _report(self, at: Any, what: str, hint: str = "") -> None:
        place = at if isinstance(at, Place) else self._place(at)
        self.problems.append(Problem(place, "", what, hint=hint))
        if len(self.problems) >= _MOST_PROBLEMS:
            raise _Enough
