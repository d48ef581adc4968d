"""Condition lines as written: their form; what they mean is judged elsewhere."""

from __future__ import annotations

from typing import Final

from hatchleaf.blocks.conditions import (
    Bound,
    Limit,
    Line,
    NoneOf,
    OneOf,
    Presence,
    PresentOr,
    Test,
)
from hatchleaf.problems import Problem
from hatchleaf.spec.tree import Node
from hatchleaf.units import stated_in_any

_FORMS: Final = (
    "a word, [words], {not: word}, {at_least: number}, {at_most: number}, "
    "present, [present, words] or absent"
)
_PRESENCE: Final = {
    "present": Presence(present=True),
    "absent": Presence(present=False),
}


def condition_lines(tree: Node, problems: list[Problem]) -> tuple[Line, ...]:
    """Return the lines of ``when``, and add to *problems* what is no condition."""
    when = tree.fields.get("when")
    if when is None:
        return ()
    lines = []
    for path, node in when.fields.items():
        test = _test(node)
        if test is None:
            problems.append(
                Problem(
                    when.keys[path], f"when.{path}", "this is not a condition", _FORMS
                )
            )
        else:
            lines.append(Line(path, test))
    return tuple(lines)


def _test(node: Node) -> Test | None:
    if node.text is not None:
        return _PRESENCE.get(node.text) or OneOf((node.text,))
    if node.items:
        return _any_of(_words(node))
    if len(node.fields) != 1:
        return None
    ((key, inner),) = node.fields.items()
    if key == "not":
        words = _words(inner) if inner.items else (inner.text,) if inner.text else ()
        return NoneOf(words) if words else None
    if key in ("at_least", "at_most") and inner.text:
        bound = _bound(inner.text)
        if bound is not None:
            return Limit(
                "at_least" if key == "at_least" else "at_most", bound, inner.text
            )
    return None


def _any_of(words: tuple[str, ...]) -> Test | None:
    if "present" in words:
        return PresentOr(tuple(word for word in words if word != "present"))
    return OneOf(words) if words else None


def _words(node: Node) -> tuple[str, ...]:
    texts = [item.text for item in node.items]
    return tuple(text for text in texts if text) if all(texts) else ()


def _bound(text: str) -> Bound | None:
    if text.isascii() and text.isdecimal():
        return int(text)
    return stated_in_any(text)
