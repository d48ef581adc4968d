"""From a unit's file, and the file of its model, to one checked `UnitSpec`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

from pydantic import TypeAdapter, ValidationError

from hatchleaf.problems import Place, Problem, ProblemsFound, listed, suggestion
from hatchleaf.spec import errors, merge, paths, rules, source
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.told import quoted, told
from hatchleaf.spec.tree import Node

MODELS: Final = "unit_specs/models"
"""Where models' files are, below the workspace."""


@dataclass(frozen=True)
class LoadedUnit:
    """A unit's file that has no problem."""

    spec: UnitSpec
    tree: Node
    """The texts of the unit's file laid over its model's, with their places."""
    notes: tuple[Problem, ...]
    """What is worth reading and stops nothing."""

    def place_of(self, path: str) -> Place:
        """Return where *path*, such as ``awnings.patio.width``, is stated."""
        return self.tree.place_of(path)


def load_unit(path: Path, root: Path) -> LoadedUnit:
    """
    Return the unit that the file at *path* states.

    Args:
        path: The unit's file.
        root: The workspace; models are below it, and places count from it.

    Raises:
        ProblemsFound: The file, or its model's, has problems; all of them.

    """
    unit = source.read(path, root)
    problems = list(merge.item_problems(unit))
    tree = _with_model(unit, root, problems)
    return checked(tree, problems)


def _with_model(unit: Node, root: Path, problems: list[Problem]) -> Node:
    """Return the unit's tree laid over its model's; add what is wrong with either."""
    wanted, removal = (unit.fields.get(name) for name in merge.OF_A_UNIT)
    own = _only_the_unit(unit)
    if wanted is None:
        if removal:
            what = "there is no model to take anything from"
            problems.append(Problem(unit.keys["remove"], "remove", what))
        return own
    model = _model(wanted, root, problems)
    if model is None:
        raise ProblemsFound(problems)
    problems.extend(merge.item_problems(model))
    problems.extend(merge.model_problems(model))
    if removal is not None:
        model, wrong = merge.removed(model, removal)
        problems.extend(wrong)
    return merge.merged(model, own)


def _only_the_unit(tree: Node) -> Node:
    content = {
        name: node for name, node in tree.fields.items() if name not in merge.OF_A_UNIT
    }
    return Node(tree.place, content, tree.keys)


def _model(wanted: Node, root: Path, problems: list[Problem]) -> Node | None:
    known = sorted(path.stem for path in (root / MODELS).glob("*.yml"))
    text = wanted.text
    # Compared with what is there, so that no path can lead out of the folder.
    if text is None or text not in known:
        what = f"{quoted(wanted.plain())} is not a model"
        hint = suggestion(text or "", known) or f"models are {MODELS}/NAME.yml"
        problems.append(Problem(wanted.place, "based_on", what, listed(known), hint))
        return None
    try:
        return source.read(root / MODELS / f"{text}.yml", root)
    except ProblemsFound as found:
        problems.extend(found.problems)
        return None


@cache
def _sections() -> Mapping[str, TypeAdapter[Any]]:
    """Return a validator for each field of a unit, so that one hides no other."""
    return {
        name: TypeAdapter(annotation)
        for name, annotation in paths.hints(UnitSpec).items()
    }


def checked(tree: Node, problems: list[Problem]) -> LoadedUnit:
    """
    Return the unit that a merged tree states.

    Args:
        tree: The unit's tree laid over its model's.
        problems: What was found wrong with the files so far.

    Raises:
        ProblemsFound: There are problems, here or before.

    """
    unknown = _unknown_sections(tree)
    found = [*problems, *unknown]
    meant = {problem.hint for problem in unknown}
    values: dict[str, Any] = {}
    hints = paths.hints(UnitSpec)
    for name, adapter in _sections().items():
        node = tree.fields.get(name)
        field = UnitSpec.model_fields[name]
        if node is None:
            if not field.is_required():
                values[name] = field.default
            elif f"did you mean '{name}'?" not in meant:
                found.append(errors.missing(name, hints[name], tree))
            continue
        try:
            values[name] = adapter.validate_python(node.plain())
        except ValidationError as error:
            found.extend(
                errors.problems_of(
                    error.errors(include_url=False, include_input=False),
                    hints[name],
                    tree,
                    name,
                )
            )
    found.extend(rules.problems(tree, values))
    notes = [problem for problem in found if problem.severity == "note"]
    if len(notes) < len(found):
        raise ProblemsFound(found)
    return LoadedUnit(
        UnitSpec.model_construct(**values), tree, tuple(sorted(set(notes)))
    )


def _unknown_sections(tree: Node) -> list[Problem]:
    known = [*UnitSpec.model_fields, *merge.OF_A_UNIT]
    absent = [name for name in known if name not in tree.fields]
    return [
        Problem(
            tree.keys[name],
            told(name),
            "no such field",
            listed(known),
            suggestion(name, absent) or suggestion(name, known),
        )
        for name in tree.fields
        if name not in known
    ]
