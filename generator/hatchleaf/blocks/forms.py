"""Reading a tree of texts into a form, with problems in our own words."""

from __future__ import annotations

import re
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from hatchleaf.problems import Place, Problem, ProblemsFound, listed, suggestion
from hatchleaf.spec.tree import Node

F = TypeVar("F", bound=BaseModel)


def validated(form: type[F], tree: Node) -> F:
    """
    Return *tree* as *form*.

    Raises:
        ProblemsFound: All that does not fit, each at its place.
    """
    try:
        return form.model_validate(tree.plain())
    except ValidationError as error:
        raise ProblemsFound(
            _problem(dict(one), tree, form) for one in error.errors(include_url=False)
        ) from None


def _problem(error: dict[str, Any], tree: Node, form: type[BaseModel]) -> Problem:
    keys = tuple(str(key) for key in error["loc"])
    path = re.sub(r"\.(\d+)", r"[\1]", ".".join(keys))
    context = error.get("ctx", {})
    if error["type"] == "missing":
        return Problem(_place(tree, keys[:-1]), path, "field is missing")
    if error["type"] == "extra_forbidden":
        allowed = _fields_at(form, keys[:-1])
        return Problem(
            _place(tree, keys),
            path,
            "no such field",
            listed(allowed),
            suggestion(keys[-1], allowed),
        )
    if error["type"] == "field":
        return Problem(
            _place(tree, keys),
            path,
            context["what"],
            context["allowed"],
            context["hint"],
        )
    if error["type"] == "literal_error":
        what = f"'{error['input']}' is not one of the words"
        return Problem(_place(tree, keys), path, what, context["expected"])
    wanted = {
        "dict_type": "a mapping",
        "model_type": "a mapping",
        "tuple_type": "a list",
    }.get(error["type"], "another form")
    return Problem(_place(tree, keys), path, f"this is not {wanted}", wanted)


def _place(tree: Node, keys: tuple[str, ...]) -> Place:
    return tree.place_of(".".join(keys)) if keys else tree.place


def _fields_at(form: type[BaseModel], keys: tuple[str, ...]) -> list[str]:
    """Return the fields of the form that stands at *keys* below *form*."""
    found: type[BaseModel] = form
    for key in keys:
        field = found.model_fields.get(key)
        inner = field and _form_in(field.annotation)
        if inner:
            found = inner
    return list(found.model_fields)


def _form_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        found = _form_in(inner)
        if found:
            return found
    return None
