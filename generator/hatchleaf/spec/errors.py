"""What pydantic found wrong, told in plain words at its place in the file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Final

from pydantic_core import ErrorDetails

from hatchleaf.problems import Place, Problem, listed, suggestion
from hatchleaf.spec import paths
from hatchleaf.spec.model.fields import Form, Part
from hatchleaf.spec.told import quoted, told, unseen
from hatchleaf.spec.tree import Node

_TAG: Final = re.compile(r"<.*>")
_LIST: Final = "a list of items"
_ALLOWED: Final = {
    "count": "a whole number from 0 to 9999",
    "yes or no": "yes, no",
    "day": "year-month-day, like 2027-04-16",
    "month": "year-month, like 2026-10",
    "months": "a number from 1 to 999 and months, like 12 months",
    "tire week": 'the last four digits of the tire\'s code in quotes, like "0927"',
    "text": "a line of text",
    "id": "small letters, digits and hyphens",
    "place": "an id listed under places",
    "code": "15 digits",
    "vin": "17 capital letters and digits",
}


@dataclass
class _Where:
    """How far into the tree an error's location leads."""

    annotation: Any
    node: Node | None
    above: Node
    """The deepest node that exists, `node` itself if it does."""
    path: str


def problems_of(
    errors: Iterable[ErrorDetails], annotation: Any, tree: Node, section: str
) -> list[Problem]:
    """
    Return the problems that the errors of one section stand for.

    Args:
        errors: As `pydantic.ValidationError.errors` gives them.
        annotation: The annotation of the section in `UnitSpec`.
        tree: The whole unit's tree.
        section: The name of the section.

    """
    found = list(errors)
    misspelled = set(_misspelled(found))
    start = _step(_Where(None, tree, tree, ""), section, annotation)
    problems = []
    for error in found:
        where = _located(error, start)
        if error["loc"] not in misspelled and not _said_of_items(error, where):
            problems.append(_problem(error, where, tree))
    return problems


def _said_of_items(error: ErrorDetails, where: _Where) -> bool:
    """Return whether the problems of a list's items already say it."""
    if error["type"] == "missing":
        # An item without an id cannot be merged; that has been looked for before.
        return error["loc"][-1:] == ("id",)
    # A list of which no item validated is too short to pydantic.
    return error["type"] == "too_short" and bool(where.node and where.node.items)


def _misspelled(errors: list[ErrorDetails]) -> Iterator[tuple[int | str, ...]]:
    """Yield the missing fields that an unknown field beside them is meant for."""
    missing = {error["loc"] for error in errors if error["type"] == "missing"}
    for error in errors:
        if error["type"] != "extra_forbidden":
            continue
        *above, name = error["loc"]
        beside = {str(loc[-1]) for loc in missing if [*loc[:-1]] == above}
        for word in beside:
            if suggestion(str(name), [word]):
                yield (*above, word)


def _located(error: ErrorDetails, start: _Where) -> _Where:
    """Return where the error is; of an unknown field, the part that has it."""
    where = start
    unknown = error["type"] == "extra_forbidden"
    for step in error["loc"][:-1] if unknown else error["loc"]:
        where = _follow(where, step)
    return where


def _problem(error: ErrorDetails, where: _Where, tree: Node) -> Problem:
    if error["type"] == "extra_forbidden":
        return _unknown_field(str(error["loc"][-1]), where)
    if error["type"] == "missing":
        return missing(where.path, where.annotation, tree)
    if error["type"] == "field":
        return _stated(error["ctx"], where)
    if error["type"] in ("union_tag_invalid", "union_tag_not_found"):
        return _no_member(where, tree)
    return _wrong_form(where)


def _follow(where: _Where, step: int | str) -> _Where:
    shape = paths.shape(where.annotation)
    if isinstance(step, int):
        item = where.node.items[step] if where.node else None
        name = item.named(step) if item else str(step)
        path = f"{where.path}[{name}]"
        return _Where(shape.item, item, item or where.above, path)
    if _TAG.fullmatch(step):
        parts = shape.parts or {}
        member = parts.get(step.strip("<>"), where.annotation)
        return _Where(member, where.node, where.above, where.path)
    part = next(iter((shape.parts or {}).values()))
    return _step(where, step, paths.hints(part).get(step))


def _step(where: _Where, name: str, annotation: Any) -> _Where:
    node = where.node.fields.get(name) if where.node else None
    path = f"{where.path}.{name}" if where.path else name
    return _Where(annotation, node, node or where.above, path)


def _unknown_field(name: str, where: _Where) -> Problem:
    part = next(iter((paths.shape(where.annotation).parts or {}).values()))
    known = paths.hints(part)
    absent = [word for word in known if word not in where.above.fields]
    path = f"{where.path}.{told(name)}"
    place = where.above.keys.get(name, where.above.place)
    hint = suggestion(name, absent)
    return Problem(place, path, "no such field", listed(known), hint)


def missing(path: str, annotation: Any, tree: Node) -> Problem:
    """
    Return the problem that the field at *path* is not stated.

    It is placed where the unit's own file has the part that lacks it, and says
    where the model's file has it.
    """
    steps = re.findall(r"[^.\[\]]+", path)[:-1]
    own = deepest = tree
    for step in steps:
        below = deepest.step(step)
        if below is None:
            break
        deepest = below
        if below.place.file == tree.place.file:
            own = below
    model = deepest.model_place
    if deepest.place.file != tree.place.file:
        model = deepest.place
    return Problem(
        own.place,
        path,
        "field is missing",
        _allowed(annotation),
        _of_model(model, tree),
    )


def _of_model(model: Place | None, tree: Node) -> str:
    """Return the hint that leads to the model's file."""
    if model is None:
        return ""
    if model.file == tree.place.file:
        return f"it was removed in line {model.line}"
    return f"model: {model.file}:{model.line}"


def _allowed(annotation: Any) -> str:
    shape = paths.shape(annotation)
    words = sorted(shape.words)
    if shape.form:
        return _of_form(shape.form, words)
    if shape.item is not None:
        return ", ".join([_LIST, *words])
    if shape.parts and "part" not in shape.parts:
        kinds = [f"kind: {name}" for name in sorted(shape.parts)]
        return ", ".join([*kinds, *words])
    if shape.parts:
        return ", ".join([_inside(shape.parts["part"]), *words])
    return ", ".join(words)


def _of_form(form: Form, words: list[str]) -> str:
    if form.kind:
        return f"{form.kind.allowed()}, or {' or '.join(words)}"
    return ", ".join([_ALLOWED[form.name], *words])


def _inside(part: type[Part]) -> str:
    return "{" + ", ".join(part.model_fields) + "}"


def _stated(context: dict[str, Any], where: _Where) -> Problem:
    at, allowed = context["at"], context["allowed"]
    if paths.shape(where.annotation).used_only:
        allowed += ", unknown"
    path = f"{where.path}.{at}" if at else where.path
    node = where.node.fields.get(at) if at and where.node else where.node
    if node is None:
        place = where.above.place
    elif context["what"] == "no such field" and where.node:
        place = where.node.keys.get(at, node.place)
    else:
        place = node.place
    hint = context["hint"] or (_odd_characters(node.text or "") if node else "")
    if node is not None and node.text == "":
        return Problem(place, path, "nothing is written here", allowed)
    return Problem(place, path, context["what"], allowed, hint)


def _odd_characters(text: str) -> str:
    """Return the hint for what looks right to the eye and is not."""
    for character in text:
        if unseen(character):
            return "a character that cannot be seen is in it; type it anew"
        if character.isdigit() and not character.isascii():
            return "write the digits 0 to 9"
        if not character.isascii():
            return f"'{character}' is not a plain letter, digit or sign"
    return ""


def _no_member(where: _Where, tree: Node) -> Problem:
    """Return the problem of a part whose kind or form is none of those allowed."""
    shape = paths.shape(where.annotation)
    node = where.node or where.above
    kinds = shape.parts if shape.parts and "part" not in shape.parts else None
    if not node.fields or kinds is None:
        return _wrong_form(where)
    path = f"{where.path}.kind"
    kind = node.fields.get("kind")
    if kind is None:
        hint = _of_model(node.model_place, tree)
        return Problem(node.place, path, "field is missing", listed(kinds), hint)
    return _word(kind, path, kinds)


def _word(node: Node, path: str, allowed: Iterable[str]) -> Problem:
    words = sorted(allowed)
    text = node.text
    if text == "":
        return Problem(node.place, path, "nothing is written here", listed(words))
    what = f"{quoted(node.plain())} is not allowed here"
    hint = ""
    if text is not None:
        hint = suggestion(text, words) or _odd_characters(text)
    return Problem(node.place, path, what, listed(words), hint)


def _wrong_form(where: _Where) -> Problem:
    """Return the problem of a text, list or mapping where another belongs."""
    node = where.node or where.above
    shape = paths.shape(where.annotation)
    if node.text is not None and not node.text:
        allowed = _allowed(where.annotation)
        return Problem(node.place, where.path, "nothing is written here", allowed)
    if shape.words and node.text is not None and not (shape.parts or shape.item):
        return _word(node, where.path, shape.words)
    hint = ""
    if isinstance(node.content, tuple) and not node.items:
        what = "the list is empty"
    elif shape.item is not None and node.fields:
        what = "fields stand where a list belongs"
        hint = "start each item with '- '"
    else:
        what = f"{quoted(node.plain())} is not allowed here"
        hint = suggestion(node.text, shape.words) if node.text else ""
    return Problem(node.place, where.path, what, _allowed(where.annotation), hint)
