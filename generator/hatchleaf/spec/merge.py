"""A unit's file laid over the file of its model."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Final

from hatchleaf.problems import Place, Problem, suggestion
from hatchleaf.spec import paths
from hatchleaf.spec.told import quoted
from hatchleaf.spec.tree import Node, without_items

OF_A_UNIT: Final = ("based_on", "remove")
"""Fields of a unit's file that say how it is read; they are no part of the unit."""


def item_problems(tree: Node) -> Iterator[Problem]:
    """Yield what is wrong with the ids of one file's lists."""
    for path, node in tree.walk():
        if not any(item.fields for item in node.items):
            continue
        seen: dict[str, Place] = {}
        for index, item in enumerate(node.items):
            if item.text is not None:
                continue
            if item.id is None:
                hint = "start each item with its id, like '- id: left'"
                what = "the item has no id"
                yield Problem(item.place, f"{path}[{index}]", what, hint=hint)
            elif item.id in seen:
                place = item.fields["id"].place
                hint = f"first in line {seen[item.id].line}"
                what = f"the id {quoted(item.id)} is given twice"
                yield Problem(place, path, what, hint=hint)
            else:
                seen[item.id] = item.fields["id"].place


def model_problems(model: Node) -> Iterator[Problem]:
    """Yield what a model's file states that only a unit's file may state."""
    for name in OF_A_UNIT:
        if name in model.fields:
            what = "a model's file cannot have this field"
            yield Problem(model.keys[name], name, what)
    yield from _of_one_unit(model, "")


def _of_one_unit(node: Node, path: str) -> Iterator[Problem]:
    for key, below in node.fields.items():
        at = f"{path}.{key}" if path else key
        form = paths.fields().get(without_items(at))
        if form and form.unit_only:
            hint = "write it in the unit's file"
            what = "field belongs to one unit and cannot stand in a model's file"
            yield Problem(node.keys[key], at, what, hint=hint)
        else:
            yield from _of_one_unit(below, at)
    for index, item in enumerate(node.items):
        yield from _of_one_unit(item, f"{path}[{item.named(index)}]")


def merged(model: Node, unit: Node) -> Node:
    """
    Return *unit* laid over *model*.

    Mappings are merged by key and lists of items by id; all else replaces.  A
    mapping whose ``kind`` differs replaces the model's whole, since the fields of
    one kind say nothing of another.
    """
    if _by_key(model, unit):
        content = dict(model.fields)
        for key, below in unit.fields.items():
            content[key] = merged(content[key], below) if key in content else below
        keys = {**model.keys, **unit.keys}
        return replace(unit, content=content, keys=keys, model_place=model.place)
    if _has_items(unit) and _has_items(model):
        return replace(unit, content=_items(model, unit), model_place=model.place)
    return replace(unit, model_place=model.place)


def _by_key(model: Node, unit: Node) -> bool:
    if not model.fields or not unit.fields:
        return False
    # A number read elsewhere is another number: its source and day are not inherited.
    if "value" in model.fields or "value" in unit.fields:
        return False
    if "kind" in model.fields and "kind" in unit.fields:
        # A kind that nobody can tell is no other kind.
        return unit.fields["kind"].text in (model.fields["kind"].text, "unknown")
    return True


def _has_items(node: Node) -> bool:
    return any(item.id is not None for item in node.items)


def _items(model: Node, unit: Node) -> tuple[Node, ...]:
    own = {item.id: item for item in unit.items}
    found = [
        merged(item, own.pop(item.id)) if item.id in own else item
        for item in model.items
    ]
    return (*found, *own.values())


def removed(model: Node, wanted: Node) -> tuple[Node, list[Problem]]:
    """
    Return *model* without what a unit's ``remove`` names.

    Args:
        model: The model's tree.
        wanted: The node of ``remove``: a list of paths, such as ``awnings.patio``.

    Returns:
        The tree, in which a removed part and an emptied list are ``none``, and
        the problems of paths that lead nowhere.

    """
    problems: list[Problem] = []
    if not wanted.items:
        what = "this is not a list of paths"
        allowed = "paths of the model's file, like [awnings.patio]"
        return model, [Problem(wanted.place, "remove", what, allowed)]
    for entry in wanted.items:
        if entry.text is None:
            allowed = "paths of the model's file, like [awnings.patio]"
            what = f"{quoted(entry.plain())} is not a path"
            problems.append(Problem(entry.place, "remove", what, allowed))
            continue
        changed = _without(model, entry.text.split("."), entry.place)
        if changed is None:
            problems.append(_unknown_path(model, entry))
        else:
            model = changed
    return model, problems


def _without(node: Node, steps: list[str], place: Place) -> Node | None:
    """Return *node* without what *steps* lead to, or None if they lead nowhere."""
    name, *rest = steps
    below = node.step(name)
    if below is None or (node.items and below.id != name):
        return None
    if rest:
        changed = _without(below, rest, place)
        if changed is None:
            return None
    elif below.text is not None:
        return None
    else:
        changed = Node(place, "none")
    if isinstance(node.content, Mapping):
        return replace(node, content={**node.content, name: changed})
    kept = tuple(
        changed if item is below else item
        for item in node.items
        if rest or item is not below
    )
    return replace(node, content=kept) if kept else Node(place, "none")


def _unknown_path(model: Node, entry: Node) -> Problem:
    known = [
        path.replace("[", ".").replace("]", "")
        for path, node in model.walk()
        if path and node.text is None
    ]
    what = f"the model has no part {quoted(entry.plain())}"
    return Problem(entry.place, "remove", what, "", suggestion(str(entry.text), known))
