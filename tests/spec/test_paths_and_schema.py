"""The vocabulary as others see it: the paths of its fields, and the JSON Schemas."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

import jsonschema
import pytest
import yaml

from hatchleaf import units
from hatchleaf.spec import paths, schema
from hatchleaf.spec.merge import OF_A_UNIT
from hatchleaf.spec.model.fields import Part
from hatchleaf.spec.paths import FieldForm

SPECS: Final = Path(__file__).parents[2] / "unit_specs"


@pytest.mark.parametrize(
    ("path", "form"),
    [
        ("lp.supply", FieldForm("part", frozenset({"none", "unknown"}))),
        (
            "lp.supply.kind",
            FieldForm("words", frozenset({"cylinders", "tank", "bottles"})),
        ),
        ("lp.supply.cylinders", FieldForm("list")),
        ("awnings", FieldForm("list", frozenset({"none", "unknown"}))),
        (
            "lp.supply.cylinders.holds",
            FieldForm("quantity", frozenset({"unknown"}), units.MASS),
        ),
        (
            "lp.supply.cylinders.made",
            FieldForm("month", frozenset({"unknown"}), None, unit_only=True),
        ),
        ("delivery.winterized", FieldForm("yes or no", unit_only=True)),
        (
            "doors.dead_bolt",
            FieldForm("yes or no", frozenset({"unknown"}), used_only=True),
        ),
        ("body.sleeps", FieldForm("count")),
        (
            "gear.hitch.chains",
            FieldForm("count", frozenset({"unknown"}), used_only=True),
        ),
        (
            "water.tanks.drain",
            FieldForm("words", frozenset({"valve", "plug", "unknown"}), used_only=True),
        ),
        ("hot_water.bypass_at", FieldForm("place", frozenset({"none"}))),
        ("delivery.date", FieldForm("day", unit_only=True)),
    ],
)
def test_a_field_is_found_by_its_path(path: str, form: FieldForm) -> None:
    """Conditions, the schema and the pending list all ask for fields this way."""
    assert paths.fields()[path] == form


def test_no_field_is_left_out() -> None:
    """Held against the classes themselves: each of their fields has a path."""
    names = {name for part in Part.__subclasses__() for name in part.model_fields}
    assert names == {path.rpartition(".")[2] for path in paths.fields()}


def in_schema(part: dict[str, Any], above: str = "") -> Iterator[str]:
    """Yield the paths of the fields that a schema names."""
    if "value" in part.get("properties", {}) and "from" in part["properties"]:
        return
    for way in part.get("anyOf", ()):
        yield from in_schema(way, above)
    if "items" in part:
        yield from in_schema(part["items"], above)
    for name, below in part.get("properties", {}).items():
        path = f"{above}.{name}" if above else name
        yield path
        yield from in_schema(below, path)


def test_the_units_schema_has_every_field() -> None:
    """A field that the schema forgets is red in every editor."""
    assert set(in_schema(schema.of_units())) == {*paths.fields(), *OF_A_UNIT}


def test_the_models_schema_has_every_field_but_those_of_one_unit() -> None:
    """An editor marks a VIN in a model's file."""
    shared = {path for path, form in paths.fields().items() if not form.unit_only}
    assert set(in_schema(schema.of_models())) == shared


def test_a_dropped_field_shows() -> None:
    """The comparison above would see a schema that lacks one field."""
    short = copy.deepcopy(schema.of_units())
    del short["properties"]["gear"]["properties"]["tires"]["anyOf"][0]["properties"][
        "size"
    ]
    assert {*paths.fields()} - set(in_schema(short)) == {"gear.tires.size"}


def test_the_schemas_are_schemas() -> None:
    """As their own draft of JSON Schema defines it."""
    for made in (schema.of_models(), schema.of_units()):
        jsonschema.Draft202012Validator.check_schema(made)


@pytest.mark.parametrize("path", sorted(SPECS.rglob("*.yml")), ids=lambda p: p.stem)
def test_samples_fit_the_schema(path: Path) -> None:
    """As an editor reads them: with numbers and yes and no made of texts."""
    is_model = path.parent.name == "models"
    made = schema.of_models() if is_model else schema.of_units()
    # An editor's reader leaves dates as texts.
    read = json.loads(
        json.dumps(yaml.safe_load(path.read_text(encoding="utf-8")), default=str)
    )
    validator = jsonschema.Draft202012Validator(made)
    assert [error.message for error in validator.iter_errors(read)] == []


@pytest.mark.parametrize(
    "wrong",
    [
        "lp: {supply: {kind: cylinder}}",
        "lp: {suply: none}",
        "weights: {hitch: 690 pounds}",
        "weights: {hitch: {value: 690 lb, from: memory}}",
        "awnings: []",
        "awnings: [{width: 9 ft}]",
        "doors: [{id: entry, dead_bolt: maybe}]",
        "remove: awnings",
    ],
)
def test_the_schema_marks_what_is_wrong(wrong: str) -> None:
    """A schema that takes anything would pass the test of the samples too."""
    validator = jsonschema.Draft202012Validator(schema.of_units())
    assert not validator.is_valid(yaml.safe_load(wrong))


def test_a_model_must_say_everything() -> None:
    """Nothing is silent by omission: an editor marks what a model leaves out."""
    model = yaml.safe_load(
        (SPECS / "models" / "sedge-e.yml").read_text(encoding="utf-8")
    )
    validator = jsonschema.Draft202012Validator(schema.of_models())
    assert validator.is_valid(model)
    del model["water"]["filter"]
    assert not validator.is_valid(model)


def test_schemas_can_be_written_as_json() -> None:
    """And come out the same each time."""
    once, again = (json.dumps(schema.of_units()) for _ in range(2))
    assert once == again
