"""
JSON Schemas of models' and units' files, for editors.

They help while typing and are no judge: an editor reads ``0927`` as a number and
knows nothing of other files, so a text may be a number or yes and no there.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

import yaml

from hatchleaf.spec import paths
from hatchleaf.spec.model.fields import Form, Part
from hatchleaf.spec.model.readings import ORIGINS
from hatchleaf.spec.model.unit import UnitSpec

_DRAFT: Final = "https://json-schema.org/draft/2020-12/schema"
_ANY_TEXT: Final = ("string", "number", "boolean")
_PATTERNS: Final = {
    "day": r"\d{4}-\d\d-\d\d",
    "month": r"\d{4}-\d\d",
    "months": r"[1-9]\d{0,2} months?",
    "id": r"[a-z][a-z0-9]*(-[a-z0-9]+)*",
    "place": r"[a-z][a-z0-9]*(-[a-z0-9]+)*",
}

Schema = dict[str, Any]


def of_models() -> Schema:
    """Return the schema of a model's file: all that units share, all of it required."""
    return _file("A model's file", _Writer(model=True))


def of_units() -> Schema:
    """Return the schema of a unit's file: it states what differs, so all may lack."""
    schema = _file("A unit's file", _Writer(model=False))
    schema["properties"] |= {
        "based_on": {"type": "string", "description": "name of the model's file"},
        "remove": {
            "type": "array",
            "items": {"type": "string"},
            "description": "paths of what this unit does not have",
        },
    }
    return schema


def _file(title: str, writer: _Writer) -> Schema:
    return {"$schema": _DRAFT, "title": title} | writer.part(UnitSpec)


class _Writer:
    """Writes the schema of a part and all below it."""

    def __init__(self, *, model: bool) -> None:
        self.model = model

    def part(self, part: type[Part], required: tuple[str, ...] = ()) -> Schema:
        """Return the schema of a mapping with the fields of *part*."""
        names = [name for name in part.model_fields if self._may_stand(part, name)]
        hints = paths.hints(part)
        schema: Schema = {
            "type": "object",
            "additionalProperties": False,
            "properties": {name: self._value(hints[name]) for name in names},
        }
        needed = [
            name
            for name in names
            if name in required
            or (self.model and part.model_fields[name].is_required())
        ]
        if needed:
            schema["required"] = needed
        if part.__doc__ and part is not UnitSpec:
            schema["description"] = " ".join(part.__doc__.split())
        return schema

    def _may_stand(self, part: type[Part], name: str) -> bool:
        return not (self.model and paths.is_unit_only(part.model_fields[name]))

    def _value(self, annotation: Any) -> Schema:
        shape = paths.shape(annotation)
        if shape.form:
            return _single(shape.form)
        ways: list[Schema] = []
        if shape.parts:
            ways += [self.part(part) for part in shape.parts.values()]
        if shape.item is not None:
            ways.append(
                {"type": "array", "minItems": 1, "items": self._item(shape.item)}
            )
        if shape.words:
            ways.append({"enum": _as_read(shape.words)})
        return ways[0] if len(ways) == 1 else {"anyOf": ways}

    def _item(self, annotation: Any) -> Schema:
        parts = paths.shape(annotation).parts
        if not parts:
            return self._value(annotation)
        ways = [self.part(part, ("id",)) for part in parts.values()]
        return ways[0] if len(ways) == 1 else {"anyOf": ways}


def _as_read(words: tuple[str, ...]) -> list[Any]:
    """Return the words, and what an editor of YAML 1.1 makes of them."""
    found: list[Any] = []
    for word in words:
        read = yaml.safe_load(word)
        found += [word] if read == word else [word, read]
    return found


def _single(form: Form) -> Schema:
    schema: Schema = {"description": form.name}
    if form.kind:
        text = {"type": "string", "pattern": _quantity(form), "examples": []}
        text["examples"] = [form.kind.example, *form.words]
        number = {
            "type": "object",
            "additionalProperties": False,
            "required": ["value"],
            "properties": {
                "value": text,
                "from": {"enum": list(ORIGINS)},
                "read_on": {"type": "string", "pattern": f"^{_PATTERNS['day']}$"},
            },
        }
        return schema | {"anyOf": [text, number]}
    if form.name == "yes or no":
        return schema | {"enum": ["yes", "no", True, False, *form.words]}
    if form.name in _PATTERNS:
        either = "|".join([_PATTERNS[form.name], *form.words])
        return schema | {"type": "string", "pattern": f"^({either})$"}
    return schema | {"type": list(_ANY_TEXT)}


def _quantity(form: Form) -> str:
    spellings: Mapping[str, str] = form.kind.spellings if form.kind else {}
    unit = "|".join(re.escape(spelling) for spelling in spellings)
    return "|".join([rf"^[0-9][0-9,]*(\.[0-9]+)? ?({unit})$", *_whole(form.words)])


def _whole(words: tuple[str, ...]) -> list[str]:
    return [f"^{word}$" for word in words]
