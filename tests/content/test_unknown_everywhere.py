"""
A used unit may have `unknown` everywhere, and its guide is honest about it.

Nobody is left who could tell what is in a used unit.  So each field and each part of
the samples, taken for used ones, is set to `unknown` in turn and all at once: the unit
loads, its guide is made, and no page prints the bare word or falls silent.
"""

from __future__ import annotations

import copy
import re
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, Final

import pytest
import yaml

from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made, make
from hatchleaf.problems import ProblemsFound
from hatchleaf.spec.load import LoadedUnit, load_unit
from hatchleaf.spec.paths import FieldForm, fields
from hatchleaf.spec.source import read
from hatchleaf.spec.tree import Node, without_items

ROOT: Final = Path(__file__).parents[2]
SAMPLES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")

# What is never `unknown`, by path or, with a dot before it, by last key: and why.
NEVER: Final = {
    "format": "the version of the file's form",
    "code": "the address on the stickers",
    "stock": "the dealership's own number",
    "vin": "on the plate; `none` for what has none",
    "condition": "decides what may be unknown",
    "found_on": "the day on which the rest was looked for",
    "delivery": "the dealership's own doing",
    "body": "on the papers: name, year, type, market",
    "places": "the plan, the stickers and all words for places rest on them",
    "recall": "a look-up that was made, or `none`",
    "warranties": "the makers' and the dealership's own promises",
    "acknowledged": "what somebody at the dealership answers for",
    "weights.regime": "which label a unit carries can be seen",
    "serials": "the number that is written down; without one there is no entry",
    "keys": "the number that is written down; without one there is no entry",
    "readings": "a test that was done has its result",
    "lp.supply.cylinders": "`lp.supply: unknown` says it",
    "lp.supply.bottles": "`lp.supply: unknown` says it",
    "water.inlets.modes": "what the label of the panel says; without it it is no panel",
    "waste.rinse.tank": "an id of this file; `waste.rinse: unknown` says it",
    ".id": "the name of an item in this file",
    ".at": "what is nowhere is itself unknown",
    "._at": "what is nowhere is itself unknown",
    ".name": "what the list calls a load; without it there is no entry",
    ".part": "a path of this file; left out where a guard feeds no single part",
    "photos": "pictures that were taken, of pages that there are",
    ".what": "what the list calls an addition; without it there is no entry",
}
# Kinds with fields of their own: there the whole part, or the list, is unknown.
KINDS_WITH_FIELDS: Final = {
    "lp.supply",
    "water.inlets",
    "hot_water",
    "dc.solar",
    "kitchen.cooktop",
    "kitchen.fridge",
    "awnings",
    "doors",
}
# Topics that speak of part of what another topic covers while it is unknown.
TOLD_ELSEWHERE: Final = {
    "tank-fill": "water-inlet",
    "hatches": "entry-door",
    "hot-water-bypass": "hot-water",
}


def _never(path: str) -> bool:
    keys = path.split(".")
    heads = {".".join(keys[:end]) for end in range(1, len(keys) + 1)}
    last = keys[-1]
    whole = {"lp.supply.cylinders", "lp.supply.bottles"}
    return bool(
        (heads & NEVER.keys()) - (whole if path not in whole else set())
        or f".{last}" in NEVER
        or last.endswith("_at")
        or (last == "kind" and path.removesuffix(".kind") in KINDS_WITH_FIELDS)
    )


def _may(path: str, form: FieldForm | None) -> bool:
    """Return whether a used unit may say unknown at *path*, by the vocabulary."""
    # A line of text may say so without a word of its own.
    return form is not None and ("unknown" in form.words or form.form == "text")


class Bench:
    """A workspace with a used twin of a sample, whose file can be overridden."""

    def __init__(self, name: str, folder: Path) -> None:
        shutil.copytree(ROOT / "unit_specs", folder / "unit_specs")
        self.root = folder
        self.file = folder / "unit_specs" / f"{name}.yml"
        self.own: dict[str, Any] = read(self.file, folder).plain()
        self.own |= {"condition": "used", "found_on": "2027-03-12"}
        self.tree = self.load(()).tree

    def load(self, unknown: tuple[str, ...], condition: str = "used") -> LoadedUnit:
        """Return the twin with `unknown` at the paths, written in its own file."""
        changed = copy.deepcopy(self.own)
        changed["condition"] = condition
        if condition == "new":
            del changed["found_on"]
        for path in unknown:
            _set(changed, re.findall(r"\[[^]]+\]|[^.\[\]]+", path))
        self.file.write_text(yaml.safe_dump(changed), encoding="utf-8")
        return load_unit(self.file, self.root)

    def fields(self) -> list[str]:
        """Return the paths that may be unknown, one item of each list."""
        return list(self.by_kind().values())

    def by_kind(self) -> dict[str, str]:
        """Return them by what stays the same on another unit: path and kinds."""
        seen: dict[str, str] = {}
        for path, _ in self.tree.walk():
            plain = without_items(path)
            if not path or path.endswith("]"):
                # An item may lack; what may be unknown of it are its fields.
                continue
            if _may(plain, fields().get(plain)) and not _never(plain):
                seen.setdefault(f"{plain} {_kind(self.tree, path)}", path)
        return seen

    def is_part(self, path: str) -> bool:
        """Return whether a part or a list stands at *path*."""
        return fields()[without_items(path)].form in ("part", "list")


def _kind(tree: Node, path: str) -> str:
    """Return the kinds of the items that a path leads through."""
    heads = [path[: found.end()] for found in re.finditer(r"\]", path)]
    nodes = [tree.find(head) for head in heads]
    kinds = [node.fields.get("kind") for node in nodes if node]
    return " ".join(kind.text or "" for kind in kinds if kind)


def _set(above: dict[str, Any], steps: list[str]) -> None:
    """Set what the steps lead to below a file's mapping to unknown."""
    name, *rest = steps
    if not rest:
        above[name] = "unknown"
        return
    if rest[0].startswith("["):
        wanted = rest[0].strip("[]")
        if not isinstance(above.get(name), list):
            above[name] = []
        items: list[dict[str, Any]] = above[name]
        item = next((one for one in items if one["id"] == wanted), None)
        if item is None:
            item = {"id": wanted}
            items.append(item)
        _set(item, rest[1:])
        return
    if not isinstance(above.get(name), dict):
        above[name] = {}
    _set(above[name], rest)


@pytest.fixture(scope="module", params=SAMPLES)
def bench(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Bench:
    """Return the workspace of one sample's twin."""
    return Bench(request.param, tmp_path_factory.mktemp(request.param))


KEPT: Final[dict[str, str]] = {}


def _made(bench: Bench, library: Library, *unknown: str) -> Made:
    return make(
        bench.load(unknown),
        library,
        dealer_name="Two Herons",
        dealer_phone="555-0142",
        kept=KEPT,
    )


def _texts(made: Made) -> Iterator[tuple[str, str]]:
    """Yield all that the guide says, with where it says it."""
    for topic in made.manual.topics:
        for part in topic.parts:
            yield part.id, part.markdown
        for tile in topic.tiles:
            yield topic.topic.id, f"{tile.says} {tile.value} {tile.note}"
        for sticker in topic.stickers:
            yield topic.topic.id, f"{sticker.line} {sticker.fact} {sticker.extra}"
        if topic.normal:
            yield topic.topic.id, topic.normal.markdown
    for steps in made.manual.steps.values():
        for step in steps:
            yield step.block, step.markdown
    for fact in made.facts.values():
        yield fact.name, f"{fact.shown()} {fact.basis} {fact.item_words}"


def _bare(made: Made) -> list[tuple[str, str]]:
    return [
        (where, text)
        for where, text in _texts(made)
        if re.search(r"\bunknown\b|\bUndefined\b", text)
    ]


def test_every_field_may_be_unknown_or_says_why_not() -> None:
    """The vocabulary against the named list: nothing is forgotten on either side."""
    # A whole system is no part; its parts are unknown one by one.
    may = {path for path, form in fields().items() if _may(path, form)} | {
        path
        for path, form in fields().items()
        if form.form == "part" and "." not in path and not form.words
    }
    never = {path for path in fields() if _never(path)}
    assert set(fields()) - may - never == set(), "neither may nor is named"
    words = {path for path in may & never if "unknown" in fields()[path].words}
    # What was written down at the dealership may be lost as a whole.
    lists = {"serials", "keys", "readings", "recall", "acknowledged", "warranties"}
    assert words <= {
        *lists,
        "body.length",
        "body.height",
        "places.from_front",
        "recall.open",
    }


def test_each_field_and_part_in_turn(
    bench: Bench, library: Library, tmp_path: Path
) -> None:
    """
    One thing that nobody can tell stops neither the unit nor its guide.

    A field of a kind that a sample before it has was tried there.
    """
    tried = {
        kind
        for name in SAMPLES[: SAMPLES.index(bench.file.stem)]
        for kind in Bench(name, tmp_path / name).by_kind()
    }
    mine = bench.by_kind()
    assert len(mine) > 100
    paths = [path for kind, path in mine.items() if kind not in tried]
    assert paths
    failed: dict[str, object] = {}
    for path in paths:
        try:
            bare = _bare(_made(bench, library, path))
        except Exception as error:  # noqa: BLE001  # all of them are wanted
            failed[path] = f"{type(error).__name__}: {error}"
            continue
        if bare:
            failed[path] = bare
    assert failed == {}


def test_all_fields_at_once(bench: Bench, library: Library) -> None:
    """What is fitted was seen, and nothing more of it can be told."""
    leaves = [path for path in bench.fields() if not bench.is_part(path)]
    made = _made(bench, library, *leaves)
    assert _bare(made) == []
    assert {t.id for t in made.selection.topics} >= {"home", "emergencies"}


def test_all_parts_at_once(bench: Bench, library: Library) -> None:
    """Nothing at all was seen: every topic that has parts says that it is not known."""
    parts = [
        path
        for path in bench.fields()
        if bench.is_part(path) and not re.search(r"\[|^gear\.tires\.fitted", path)
    ]
    made = _made(bench, library, *parts)
    assert _bare(made) == []
    here = {topic.id for topic in made.selection.topics}
    fitted = {without_items(path) for path in parts}
    silent = {
        topic.id
        for topic in library.topics.values()
        if any(part.path in fitted for part in topic.parts)
        and TOLD_ELSEWHERE.get(topic.id, topic.id) not in here
    }
    assert silent == set()


def test_a_missing_limit_prints_whom_to_ask(tmp_path: Path, library: Library) -> None:
    """In place of a text that needs the maker's limit, never the text without it."""
    bench = Bench("heron-a", tmp_path)
    made = _made(bench, library, "awnings[patio].wind_limit")
    (text,) = (
        part.markdown
        for topic in made.manual.topics
        for part in topic.parts
        if part.id == "awning-wind-limit-patio"
    )
    assert "The maker's limit is not known for this unit" in text
    assert "Patio awning" in text
    assert "ask the maker or the dealership" in text


@pytest.mark.parametrize(
    ("path", "block", "says"),
    [
        ("dc.batteries[front].chemistry", "batteries-unknown", "Do not charge it"),
        ("safety.alarms[smoke].detects", "alarms-unknown", "Do not sleep here"),
        ("waste.tanks[gray].holds", "waste-tanks-unknown", "toilet waste"),
        ("water.tanks[fresh].drain", "fresh-tank-unknown", "how this tank is drained"),
        ("hot_water.bypass", "bypass-unknown", "Leave the heater off"),
        ("lp.supply", "lp-supply-unknown", "licensed LP technician"),
        ("lp.supply", "emergency-gas", "Walk well away"),
        ("ac.shore", "emergency-shock", "The next touch can kill"),
        ("dc.batteries", "emergency-battery", "Get everyone out"),
    ],
)
def test_what_is_not_known_is_told_with_its_danger(
    path: str, block: str, says: str, tmp_path: Path, library: Library
) -> None:
    """Where not knowing can hurt someone, the page says what to leave alone."""
    made = _made(Bench("heron-a", tmp_path), library, path)
    found = {part.id: part.markdown for t in made.manual.topics for part in t.parts}
    assert says in found[block]


def test_a_new_unit_is_looked_at(bench: Bench) -> None:
    """Each word, yes or no and count of a new unit can be read off it."""
    asked = [path for path in bench.fields() if fields()[without_items(path)].used_only]
    assert len(asked) > 20
    with pytest.raises(ProblemsFound) as found:
        bench.load(tuple(asked), condition="new")
    told = {
        problem.field
        for problem in found.value.problems
        if problem.what == "only a used unit may have a field that is not known"
    }
    assert told == set(asked)


def test_the_search_for_the_bare_word_finds_it(
    bench: Bench, library: Library, guides: Mapping[str, Made]
) -> None:
    """A block that prints a word of the file as it stands would be seen."""
    assert all(_bare(made) == [] for made in guides.values())
    made = _made(bench, library)
    topic = made.manual.topics[0]
    part = topic.parts[0]
    object.__setattr__(part, "markdown", f"{part.markdown} It is unknown.")
    assert _bare(made)[0][0] == part.id
