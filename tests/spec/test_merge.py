"""A unit's file over its model's: what replaces, what joins, what goes."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.spec import merge, paths, source
from hatchleaf.spec.tree import Node


def tree(text: str, name: str = "unit.yml") -> Node:
    """Return the tree of a file's text."""
    return source.parse(text.encode(), name)


def merged(model: str, unit: str) -> Any:
    """Return the plain texts of *unit* over *model*."""
    return merge.merged(tree(model, "model.yml"), tree(unit)).plain()


def test_mappings_join_by_key() -> None:
    """The unit states one field; the model's others stay."""
    assert merged("a: {x: 1, y: 2}", "a: {y: 3, z: 4}") == {
        "a": {"x": "1", "y": "3", "z": "4"}
    }


def test_lists_join_by_id() -> None:
    """Order is the model's; what the unit adds comes after."""
    model = "a: [{id: one, x: 1}, {id: two, x: 2}]"
    assert merged(model, "a: [{id: two, x: 3}, {id: six, x: 6}]") == {
        "a": [
            {"id": "one", "x": "1"},
            {"id": "two", "x": "3"},
            {"id": "six", "x": "6"},
        ]
    }


def test_another_kind_replaces_the_whole() -> None:
    """A gas heater's volume says nothing of an on-demand heater."""
    model = "a: {kind: tank, volume: 6 gal}"
    assert merged(model, "a: {kind: on_demand}") == {"a": {"kind": "on_demand"}}
    assert merged(model, "a: {kind: tank, bypass: none}") == {
        "a": {"kind": "tank", "volume": "6 gal", "bypass": "none"}
    }
    items = "a: [{id: x, kind: strap, width: 9 ft}]"
    assert merged(items, "a: [{id: x, kind: powered}]") == {
        "a": [{"id": "x", "kind": "powered"}]
    }


def test_a_number_does_not_inherit_its_source() -> None:
    """A number that the unit states is not from where the model's was read."""
    model = "a: {x: {value: 20 mph, from: plate}}"
    assert merged(model, "a: {x: {value: 18 mph}}") == {"a": {"x": {"value": "18 mph"}}}
    assert merged(model, "a: {x: 18 mph}") == {"a": {"x": "18 mph"}}
    assert merged("a: {x: 18 mph}", "a: {x: {from: plate}}") == {
        "a": {"x": {"from": "plate"}}
    }


def test_a_word_replaces_a_part() -> None:
    """And a part replaces a word."""
    assert merged("a: {kind: x}\nb: none", "a: none\nb: {kind: y}") == {
        "a": "none",
        "b": {"kind": "y"},
    }


def test_each_text_keeps_its_own_place() -> None:
    """A problem leads to the file in which the text is to be mended."""
    model = tree("a:\n  x: 1\n  y: 2\n", "model.yml")
    both = merge.merged(model, tree("b: 0\na:\n  y: 3\n"))
    assert str(both.place_of("a.x")) == "model.yml:2:6"
    assert str(both.place_of("a.y")) == "unit.yml:3:6"
    assert str(both.place_of("a")) == "unit.yml:2:1"
    assert str(both.fields["a"].model_place) == "model.yml:1:1"


def test_remove_takes_out_parts_and_items() -> None:
    """A part becomes none, as does a list whose last item goes."""
    model = tree("a: [{id: x, n: 1}, {id: y, n: 2}]\nb: {c: {kind: z}}", "model.yml")
    one, problems = merge.removed(model, tree("remove: [a.x]").fields["remove"])
    assert (one.plain()["a"], problems) == ([{"id": "y", "n": "2"}], [])
    wanted = tree("remove: [a.x, a.y, b.c]").fields["remove"]
    all_gone, problems = merge.removed(model, wanted)
    assert (all_gone.plain(), problems) == ({"a": "none", "b": {"c": "none"}}, [])


def test_remove_counts_by_id_alone() -> None:
    """An index would point at another item after an edit of the model."""
    model = tree("a: [{id: x, n: 1}]", "model.yml")
    _, problems = merge.removed(model, tree("remove: [a.0]").fields["remove"])
    assert [problem.what for problem in problems] == ["the model has no part 'a.0'"]


UNIT_ONLY = sorted(path for path, form in paths.fields().items() if form.unit_only)


def test_what_belongs_to_one_unit() -> None:
    """The list that no model may state: VIN, serials, dates, labels, readings, keys."""
    tops = {path for path in UNIT_ONLY if path.rpartition(".")[0] not in UNIT_ONLY}
    assert tops == {
        "format",
        "code",
        "stock",
        "vin",
        "condition",
        "found_on",
        "delivery",
        "serials",
        "keys",
        "readings",
        "added",
        "recall",
        "warranties",
        "acknowledged",
        "weights.regime",
        "weights.cargo_label",
        "weights.hitch",
        "weights.scale_total",
        "lp.supply.cylinders.made",
        "lp.supply.bottles.made",
        "gear.tires.fitted",
        "safety.alarms.made",
        "safety.alarms.replace_by",
        "safety.extinguisher.made",
    }


def test_none_of_it_is_inherited() -> None:
    """Each such field in turn, in a model's file, is a problem there."""
    for path in UNIT_ONLY:
        *above, last = path.split(".")
        text = f"{last}: x"
        for name in reversed(above):
            # Lists are written as lists, as a model's file would.
            listed = paths.fields().get(".".join(above[: above.index(name) + 1]))
            item = text if text.startswith("id: ") else f"id: x, {text}"
            inner = f"[{{{item}}}]" if listed and listed.form == "list" else ""
            text = f"{name}: {inner or '{' + text + '}'}"
        problems = list(merge.model_problems(tree(text, "model.yml")))
        assert [problem.what for problem in problems] == [
            "field belongs to one unit and cannot stand in a model's file"
        ], path


@given(
    st.lists(st.sampled_from("abcdef"), unique=True),
    st.lists(st.sampled_from("abcdef"), unique=True),
)
def test_no_item_is_lost_or_doubled(model: list[str], unit: list[str]) -> None:
    """Whatever the two lists hold, the result has each id once."""
    first = ", ".join(f"{{id: {name}, x: m}}" for name in model)
    second = ", ".join(f"{{id: {name}, x: u}}" for name in unit)
    if not model or not unit:
        return
    items = merged(f"l: [{first}]", f"l: [{second}]")["l"]
    assert [item["id"] for item in items] == [
        *model,
        *(name for name in unit if name not in model),
    ]
    assert {item["id"] for item in items if item["x"] == "u"} == set(unit)
