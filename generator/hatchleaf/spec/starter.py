"""
The first draft of a unit's file: what its model leaves to the unit alone.

All of it stands there as comments with blanks that no check lets pass, so that
nobody prints a number that was only an example.  Comments to read start with two
signs, lines to fill in with one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from hatchleaf.spec import paths
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.tree import Node

_HEAD: Final = (
    "## Here stands what belongs to this unit alone, and what differs.  Take the '# '",
    "## before each line away and fill in its blanks; where nobody can tell,",
    "## 'unknown' is an answer.  What this unit lacks of its model is named by",
    "## 'remove', such as  remove: [awnings.patio]",
)
_BLANKS: Final = {
    "day": "YYYY-MM-DD",
    "month": "YYYY-MM",
    "months": "N months",
    "tire week": '"WWYY"',
    "yes or no": "yes|no",
}
_WRITTEN: Final = ("format", "code", "condition")
"""Fields that the draft states itself."""
_SAID: Final = {
    "stock": "your own number; private, on no page",
    "vin": "from the plate; private, on no page",
    "found_on": "a used unit only: the day it was looked over",
    "serials": "or none; private, on no page",
    "keys": "or none; private, on no page",
    "readings": "or none: what the tests at the hand-over found; private, on no page",
    "added": "or none: what the dealership added after the label was made",
    "recall": "look-up of safety recalls by the VIN; none if nobody has; private",
    "warranties": "or none: how long each lasts from the delivery; private, on no page",
    "acknowledged": "or none: findings that somebody answers for; private, on no page",
    "cargo_label": "cargo capacity on the label by the door",
    "hitch": "weighed; from: brochure if it was not",
    "scale_total": "or unknown",
    "fitted": "week and year: the last four digits of the code on each tire",
}


def starter(model: Node, name: str, code: str) -> str:
    """
    Return the text of a new unit's file.

    Args:
        model: The tree of the model's file; its cylinders, alarms and so on each
            get a line of their own.
        name: The name of the model's file, without ending.
        code: The unit's new code.
    """
    title = model.find("body.name")
    called = title.text if title and title.text else name
    rest = _part(UnitSpec, model, "")
    return "\n".join(
        [
            f"## A {called}, as models/{name}.yml describes it.",
            *_HEAD,
            "format: 1",
            f'code: "{code}"  # the address on its stickers: never change it',
            f"based_on: {name}",
            "condition: new  # or used",
            *(f"# {line}" for line in rest),
            "",
        ]
    )


def _part(part: type[Part], model: Node | None, indent: str) -> Iterator[str]:
    """Yield the lines of a part's fields that belong to one unit."""
    for name, annotation in paths.hints(part).items():
        if part is UnitSpec and name in _WRITTEN:
            continue
        below = model.fields.get(name) if model else None
        if paths.is_unit_only(part.model_fields[name]):
            yield from _field(name, annotation, indent)
            continue
        shape = paths.shape(annotation)
        if shape.item is not None:
            lines = list(_items(shape.item, below, indent))
        elif below is not None and below.fields and shape.parts:
            lines = list(_part(_of_kind(shape.parts, below), below, indent + "  "))
        else:
            lines = []
        if lines:
            yield f"{indent}{name}:"
            yield from lines


def _items(annotation: Any, model: Node | None, indent: str) -> Iterator[str]:
    """Yield one line for each of the model's items with what is this unit's."""
    for item in model.items if model else ():
        part = _of_kind(paths.shape(annotation).parts or {}, item)
        own = [
            f"{name}: {_blank(below)}"
            for name, below in paths.hints(part).items()
            if paths.is_unit_only(part.model_fields[name])
        ]
        if own:
            yield f"{indent}  - {{id: {item.id}, {', '.join(own)}}}"


def _of_kind(parts: Mapping[str, type[Part]], node: Node) -> type[Part]:
    kind = node.fields.get("kind")
    return parts.get(kind.text or "" if kind else "", next(iter(parts.values())))


def _field(name: str, annotation: Any, indent: str) -> Iterator[str]:
    said = f"  # {_SAID[name]}" if name in _SAID else ""
    shape = paths.shape(annotation)
    if shape.item is not None:
        (part,) = (paths.shape(shape.item).parts or {}).values()
        yield f"{indent}{name}:{said}"
        yield f"{indent}  - {{{_inline(part)}}}"
    elif shape.parts:
        (part,) = shape.parts.values()
        yield f"{indent}{name}: {{{_inline(part)}}}{said}"
    else:
        yield f"{indent}{name}: {_blank(annotation)}{said}"


def _inline(part: type[Part]) -> str:
    return ", ".join(
        f"{name}: {_blank(annotation)}"
        for name, annotation in paths.hints(part).items()
    )


def _blank(annotation: Any) -> str:
    """Return what stands for a value: something that no check takes for one."""
    shape = paths.shape(annotation)
    form = shape.form
    if form is None:
        return "|".join(shape.words)
    if form.kind is not None:
        unit = next(iter(form.kind.spellings))
        return f"{{value: ... {unit}, from: label|scale|paper}}"
    return _BLANKS.get(form.name, '""')
