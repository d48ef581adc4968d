"""The sample units, and ways to change one thing about them."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any, TypeVar

from hatchleaf import units
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.load import LoadedUnit, load_unit
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.model.readings import Origin, Reading
from hatchleaf.spec.model.unit import UnitSpec

ROOT = Path(__file__).resolve().parents[2]
NAMES = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")

T = TypeVar("T")

UNKNOWN = Reading(None)


@cache
def loaded(name: str) -> LoadedUnit:
    """Return a sample unit as its files state it."""
    return load_unit(ROOT / "unit_specs" / f"{name}.yml", ROOT)


def unit(name: str) -> UnitSpec:
    """Return a sample unit."""
    return loaded(name).spec


@cache
def facts(name: str) -> Facts:
    """Return all facts of a sample unit."""
    return work_out(unit(name))


def reading(text: str, kind: units.Kind, origin: Origin | None = "plate") -> Reading:
    """Return a number as a file would state it."""
    return Reading(units.parse(text, kind), origin)


def changed(spec: UnitSpec, changes: dict[str, object]) -> UnitSpec:
    """Return *spec* with the fields at dotted paths replaced, items by their id."""
    for path, value in changes.items():
        spec = _changed(spec, path.split("."), value)
    return spec


def with_(name: str, **changes: object) -> Facts:
    """Return the facts of a changed sample; ``__`` in a name stands for a dot."""
    dotted = {path.replace("__", "."): value for path, value in changes.items()}
    return work_out(changed(unit(name), dotted))


def _changed(here: Any, path: list[str], value: object) -> Any:
    if not path:
        return value
    first, *rest = path
    if isinstance(here, tuple):
        assert any(item.id == first for item in here), first
        return tuple(
            _changed(item, rest, value) if item.id == first else item for item in here
        )
    assert isinstance(here, Part), path
    assert first in type(here).model_fields, first
    return here.model_copy(update={first: _changed(getattr(here, first), rest, value)})
