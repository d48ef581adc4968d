"""Whatever a file holds, it is a unit or a list of problems, never a traceback."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from hatchleaf.problems import ProblemsFound
from hatchleaf.spec import merge, paths, source
from hatchleaf.spec.load import LoadedUnit, checked
from hatchleaf.spec.tree import Node

WORKSPACE: Final = Path(__file__).parent / "workspace" / "unit_specs"
UNIT: Final = (WORKSPACE / "unit.yml").read_text(encoding="utf-8")
MODEL: Final = source.parse((WORKSPACE / "models/model.yml").read_bytes(), "model.yml")
# Words that the vocabulary knows, so that a guess gets past the first check.
WORDS: Final = sorted(
    {step for path in paths.fields() for step in path.split(".")}
    | {word for form in paths.fields().values() for word in form.words}
)
TEXTS: Final = st.one_of(
    st.sampled_from([*WORDS, "20 lb", "2027-04-16", "2026-10", "front", "left"]),
    st.text(max_size=12),
)
TREES: Final = st.recursive(
    TEXTS,
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.dictionaries(st.one_of(st.sampled_from(WORDS), TEXTS), inner, max_size=4),
    ),
    max_leaves=12,
)


def loaded(data: bytes) -> LoadedUnit | None:
    """Return the unit, or None after problems; anything else fails the test."""
    try:
        unit = source.parse(data, "unit.yml")
        problems = [*merge.item_problems(unit), *merge.model_problems(MODEL)]
        model = MODEL
        if "remove" in unit.fields:
            model, wrong = merge.removed(model, unit.fields["remove"])
            problems += wrong
        own = {name: unit.fields[name] for name in unit.fields if name != "remove"}
        tree = merge.merged(model, Node(unit.place, own, unit.keys))
        return checked(tree, problems)
    except ProblemsFound as found:
        told_properly(found)
        return None


def told_properly(found: ProblemsFound) -> None:
    """Look at the form of the problems."""
    assert found.problems
    assert all(problem.what for problem in found.problems)
    told = str(found)
    assert "Input should" not in told
    # One problem is at most three lines: a file's text cannot forge a line of ours.
    assert len(told.splitlines()) <= 3 * len(found.problems)


@settings(deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes(data: bytes) -> None:
    """A photo renamed to .yml is told, not crashed on."""
    loaded(data)


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_text(text: str) -> None:
    """So is a letter."""
    loaded(text.encode("utf-8", errors="replace"))


@settings(deadline=None, max_examples=200)
@given(st.integers(0, len(UNIT)), st.integers(0, 12), st.text(max_size=8))
def test_a_slip_of_the_hand(at: int, gone: int, typed: str) -> None:
    """A sound file with a few characters lost and a few others typed."""
    text = UNIT[:at] + typed + UNIT[at + gone :]
    loaded(text.encode("utf-8", errors="replace"))


@settings(deadline=None, max_examples=60)
@given(
    st.dictionaries(
        st.sampled_from(sorted(MODEL.fields)), TREES, min_size=1, max_size=3
    )
)
def test_any_fields(fields: dict[str, object]) -> None:
    """Sections of any shape over a sound model."""
    sound = source.parse(UNIT.encode(), "unit.yml").plain()
    text = yaml.safe_dump(sound | fields, allow_unicode=True)
    loaded(text.encode("utf-8", errors="replace"))


@pytest.mark.parametrize("path", sorted(paths.fields()))
def test_every_field_of_every_wrong_shape(path: str) -> None:
    """Each field of the vocabulary in turn holds what it may not."""
    *above, last = path.split(".")
    for value in ("", "none", "[x]", "{x: y}"):
        text = f"{last}: {value}"
        for name in reversed(above):
            text = f"{name}: {{id: patio, {text}}}"
        loaded(text.encode())
