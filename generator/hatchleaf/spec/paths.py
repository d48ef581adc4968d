"""What the vocabulary allows at each path, read from the models' own annotations."""

from __future__ import annotations

import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import (
    Annotated,
    Any,
    Final,
    Literal,
    TypeAlias,
    Union,
    get_args,
    get_origin,
)

from pydantic import Tag
from pydantic.fields import FieldInfo

from hatchleaf import units
from hatchleaf.spec.model.fields import Form, Part, UsedMayNotKnow
from hatchleaf.spec.model.unit import UnitSpec

FormName: TypeAlias = Literal[
    "words",
    "quantity",
    "count",
    "yes or no",
    "day",
    "month",
    "text",
    "id",
    "place",
    "part",
    "list",
]

_AS_TEXT: Final = frozenset({"tire week", "months", "code", "vin"})


@dataclass(frozen=True)
class FieldForm:
    """What a field may hold."""

    form: FormName
    words: frozenset[str] = frozenset()
    """Words allowed, in place of the value or as the value."""
    kind: units.Kind | None = None
    """Of a quantity: which."""
    unit_only: bool = False
    """True where the field, or what it stands in, belongs to one unit alone."""
    used_only: bool = False
    """True where only a used unit may say ``unknown``."""


@dataclass(frozen=True)
class Shape:
    """An annotation taken apart: the one place that knows how models are written."""

    words: tuple[str, ...] = ()
    form: Form | None = None
    parts: Mapping[str, type[Part]] | None = None
    """Tag without its brackets -> class of the part; one part has the tag ``part``."""
    item: Any = None
    """The annotation of a list's items."""
    used_only: bool = False
    """True where only a used unit may say ``unknown``."""


@cache
def hints(part: type[Part]) -> Mapping[str, Any]:
    """Return the annotations of a part's fields, with what they are annotated by."""
    return {name: _annotated(field) for name, field in part.model_fields.items()}


def _annotated(field: FieldInfo) -> Any:
    # pydantic has read the annotation once; reading the text again takes as long.
    if not field.metadata:
        return field.annotation
    return Annotated[(field.annotation, *field.metadata)]


def shape(annotation: Any) -> Shape:
    """Return *annotation* taken apart."""
    if isinstance(annotation, type) and issubclass(annotation, Part):
        return Shape(parts={"part": annotation})
    origin = get_origin(annotation)
    if origin is Annotated:
        return _marked(*get_args(annotation))
    if origin is Literal:
        return Shape(words=get_args(annotation))
    if origin is tuple:
        return Shape(item=get_args(annotation)[0])
    if origin in (Union, types.UnionType):
        return _united(get_args(annotation))
    raise TypeError(f"a field of the vocabulary cannot be {annotation}")


def _marked(inner: Any, *marks: Any) -> Shape:
    for mark in marks:
        if isinstance(mark, UsedMayNotKnow):
            return _or_unknown(shape(get_args(inner)[0]))
        if isinstance(mark, Form):
            return Shape(words=mark.words, form=mark)
    return shape(inner)


def _or_unknown(known: Shape) -> Shape:
    words = (*known.words, "unknown")
    form = replace(known.form, words=words) if known.form else None
    return replace(known, words=words, form=form, used_only=True)


def _united(members: tuple[Any, ...]) -> Shape:
    words: list[str] = []
    parts: dict[str, type[Part]] = {}
    item: Any = None
    form: Form | None = None
    for member in members:
        found = shape(member)
        form = found.form or form
        words.extend(found.words)
        if found.parts:
            parts[_tag(member)] = found.parts["part"]
        item = found.item if found.item is not None else item
    if form:
        form = replace(form, words=(*form.words, *words))
    return Shape(tuple(words), form, parts or None, item)


def _tag(member: Any) -> str:
    for mark in get_args(member)[1:]:
        if isinstance(mark, Tag):
            return mark.tag.strip("<>")
    raise TypeError(f"{member} has no tag")


def is_unit_only(field: FieldInfo) -> bool:
    """Return whether a model's field is marked as belonging to one unit alone."""
    extra = field.json_schema_extra
    return isinstance(extra, dict) and bool(extra.get("unit_only"))


@cache
def fields() -> Mapping[str, FieldForm]:
    """
    Return every field of `UnitSpec` by its dotted path, without ids of items.

    A path that several kinds of a part share, such as ``lp.supply.at``, has the
    words of them all.
    """
    found: dict[str, FieldForm] = {}
    for path, form in _of(UnitSpec, "", unit_only=False):
        before = found.get(path)
        found[path] = _joined(before, form) if before else form
    return types.MappingProxyType(found)


def _joined(one: FieldForm, other: FieldForm) -> FieldForm:
    if (one.form, one.kind) != (other.form, other.kind):
        raise TypeError(f"one path, two forms: {one} and {other}")
    return replace(
        one,
        words=one.words | other.words,
        unit_only=one.unit_only and other.unit_only,
        used_only=one.used_only and other.used_only,
    )


def _of(
    part: type[Part], above: str, *, unit_only: bool
) -> Iterator[tuple[str, FieldForm]]:
    for name, annotation in hints(part).items():
        path = f"{above}.{name}" if above else name
        only = unit_only or is_unit_only(part.model_fields[name])
        yield from _at(annotation, path, unit_only=only)


def _at(
    annotation: Any, path: str, *, unit_only: bool
) -> Iterator[tuple[str, FieldForm]]:
    found = shape(annotation)
    words = frozenset(found.words)
    if found.form:
        kind = found.form.kind
        yield (
            path,
            FieldForm(_name(found.form), words, kind, unit_only, found.used_only),
        )
    elif found.item is not None:
        yield path, FieldForm("list", words, None, unit_only)
        inner = shape(found.item).parts or {}
        for part in inner.values():
            yield from _of(part, path, unit_only=unit_only)
    elif found.parts:
        yield path, FieldForm("part", words, None, unit_only)
        for part in found.parts.values():
            yield from _of(part, path, unit_only=unit_only)
    else:
        yield path, FieldForm("words", words, None, unit_only, found.used_only)


def _name(form: Form) -> FormName:
    if form.kind:
        return "quantity"
    name: Any = "text" if form.name in _AS_TEXT else form.name
    if name not in get_args(FormName):
        raise TypeError(f"no such form: {name}")
    return name  # type: ignore[no-any-return]
