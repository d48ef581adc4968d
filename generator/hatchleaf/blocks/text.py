"""
Filling in a block's text: sandboxed Jinja over the unit, escaped for Markdown.

What comes from a unit's file is data, never markup: all but its letters, digits
and single spaces become numeric entities, which Markdown leaves alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Final, Literal

from jinja2 import (
    FunctionLoader,
    StrictUndefined,
    TemplateError,
    TemplateSyntaxError,
    pass_context,
)
from jinja2.exceptions import SecurityError
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment
from pydantic import BaseModel

from hatchleaf.compiled import kept_templates
from hatchleaf.problems import Place, Problem

Mode = Literal["markdown", "plain"]


@dataclass(frozen=True)
class Shown:
    """A value of ours, ready to print: as Markdown, and as plain text."""

    markdown: str
    plain: str

    def __str__(self) -> str:
        """Return what ``~`` and filters take of it: its words, without a link."""
        return self.plain


class Fault(Exception):  # noqa: N818  # becomes a problem at the block's own line
    """Raised by what a block calls: what is wrong, what is allowed, a hint."""

    def __init__(self, what: str, allowed: str = "", hint: str = "") -> None:
        """Keep the three for a `Problem`."""
        super().__init__(what)
        self.what, self.allowed, self.hint = what, allowed, hint


def escaped(text: str) -> str:
    """
    Return *text* so that Markdown and HTML print it and never obey it.

    >>> escaped("a*b <i>")
    'a&#42;b &#60;i&#62;'
    """
    kept = "".join(
        c
        if c == " " or (c.isascii() and c.isalnum()) or c.isalpha()
        else f"&#{ord(c)};"
        for c in text
    )
    # Four spaces at the start of a line would be a code block.
    return re.sub(r"^ +| (?= )| +$", lambda m: "&#32;" * len(m[0]), kept)


class _Environment(ImmutableSandboxedEnvironment):
    """Jinja that reads fields of the spec and calls what it is given, no more."""

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:  # noqa: ARG002
        """Return True for the fields of a part, and for nothing else of it."""
        if isinstance(obj, BaseModel):
            return attr in type(obj).model_fields
        return isinstance(obj, Plain) and attr in obj.fields


@dataclass(frozen=True)
class Plain:
    """A few named texts that a block may read, such as the dealer's."""

    fields: Mapping[str, str]

    def __getattr__(self, name: str) -> str:
        """Return the text *name*; Jinja's strictness tells of others."""
        try:
            return self.fields[name]
        except KeyError:
            raise AttributeError(name) from None


@cache
def _environment(mode: Mode) -> _Environment:
    # With the context, Jinja never works out a constant while compiling: what is
    # compiled is the same for both modes and may be kept.
    @pass_context
    def finalize(_: Context, value: Any) -> str:
        if isinstance(value, Shown):
            return value.markdown if mode == "markdown" else value.plain
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, (str, int)):
            return escaped(str(value)) if mode == "markdown" else str(value)
        if value is None:
            raise Fault("there is nothing to print here")
        raise Fault(
            "a value that is no text stands in the text",
            hint="print it with value(), fact(), place() or name()",
        )

    environment = _Environment(
        undefined=StrictUndefined,
        finalize=finalize,
        autoescape=False,  # finalize escapes for Markdown
        keep_trailing_newline=True,
        # Nothing in a block's text can be worked out before there is a unit.
        optimized=False,
        trim_blocks=True,
        lstrip_blocks=True,
        # A text is its own name, so that what is compiled of it can be kept.
        loader=FunctionLoader(lambda text: text),
        bytecode_cache=kept_templates("block"),
    )
    environment.globals.clear()
    environment.globals["range"] = _refused("range")
    return environment


def _refused(name: str) -> Any:
    def refuse(*_: object) -> None:
        raise Fault(f"'{name}' is not for blocks", hint="a number comes from a fact")

    return refuse


@cache
def _template(text: str, mode: Mode) -> Any:
    return _environment(mode).get_template(text)


_MARKS: Final = ("{{", "{%", "{#")
_PRINTED: Final = re.compile(r"(\{\{[^{}]*\}\})")


def fill(text: str, place: Place, names: Mapping[str, object], mode: Mode) -> str:
    """
    Return *text* with the unit's values in it.

    Args:
        text: Jinja, as written in a block.
        place: Where it begins; lines of an error count from there.
        names: What the text may use.
        mode: Whether the result is Markdown, or plain text for a label.

    Raises:
        Unfillable: With the problem at the line that caused it.
    """
    if not any(mark in text for mark in _MARKS):
        return text
    if "{%" in text or "{#" in text:
        return _rendered(text, place, names, mode)
    # Most texts only print: their expressions recur all over the library, and each is
    # compiled once, where every text would be.
    made: list[str] = []
    line = 0
    for index, piece in enumerate(_PRINTED.split(text)):
        at = Place(place.file, place.line + line, 1 if line else place.column)
        # A mark that is left over was never closed: Jinja says what is wrong with it.
        prints = index % 2 or any(mark in piece for mark in _MARKS)
        made.append(_rendered(piece, at, names, mode) if prints else piece)
        line += piece.count("\n")
    return "".join(made)


def _rendered(text: str, place: Place, names: Mapping[str, object], mode: Mode) -> str:
    try:
        filled: str = _template(text, mode).render(names)
    except TemplateSyntaxError as error:
        raise Unfillable(_problem(place, error.lineno, f"{error.message}")) from error
    except Fault as error:
        problem = _problem(
            place, _line_of(error), error.what, error.allowed, error.hint
        )
        raise Unfillable(problem) from error
    except SecurityError as error:
        what = f"this is not for blocks: {error}"
        raise Unfillable(_problem(place, _line_of(error), what)) from error
    except (TemplateError, TypeError, ValueError, AttributeError) as error:
        raise Unfillable(_problem(place, _line_of(error), _plainly(error))) from error
    return filled


class Unfillable(Exception):  # noqa: N818  # carries the problem, not a message
    """A text that could not be filled in."""

    def __init__(self, problem: Problem) -> None:
        """Keep the problem."""
        super().__init__(str(problem))
        self.problem = problem


def _plainly(error: Exception) -> str:
    # Jinja names the Python type of what has no such field; an editor knows parts.
    found = re.search(r"has no attribute '(\w+)'", str(error))
    if found:
        return f"'{found[1]}' is not a field of this part"
    return str(error)


def _line_of(error: BaseException) -> int:
    line, trace = 1, error.__traceback__
    while trace is not None:
        if trace.tb_frame.f_code.co_filename == "<template>":
            line = trace.tb_lineno
        trace = trace.tb_next
    return line


def _problem(
    place: Place, line: int, what: str, allowed: str = "", hint: str = ""
) -> Problem:
    where = Place(place.file, place.line + line - 1, place.column if line == 1 else 1)
    return Problem(where, "", what, allowed, hint)
