"""The library's own lists: topics, journeys, sources, plain words, what is pending."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Annotated, Final, Literal

from pydantic import Field, PlainValidator

from hatchleaf.blocks.forms import validated
from hatchleaf.blocks.front_matter import Form
from hatchleaf.blocks.markets import Market
from hatchleaf.blocks.model import Journey, Phase, Topic, TopicPart, Worded
from hatchleaf.blocks.synonyms import Synonyms
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.spec.model.fields import Id, Text, wrong
from hatchleaf.spec.source import read

_DEALERS_OWN: Final = 900
"""Topic numbers from here to 999 are a dealership's own."""


def _number(value: object) -> int:
    if isinstance(value, str) and value.isascii() and value.isdecimal():
        number = int(value)
        if number <= 999:  # noqa: PLR2004  # three digits on every sticker
            return number
    raise wrong(f"'{value}' is not a topic's number", "a whole number from 0 to 999")


class PartForm(Form):
    """What of the unit a topic speaks of."""

    path: Text
    kinds: tuple[Text, ...] = ()
    by: Text = "kind"
    place: Text = "at"


class TopicForm(Form):
    """One row of topics.yml."""

    number: Annotated[int, PlainValidator(_number)]
    id: Id
    system: Literal[
        "home",
        "journey",
        "lp",
        "water",
        "waste",
        "electrical",
        "awning",
        "doors",
        "living",
        "gear",
    ]
    title: Text
    sticker: Literal["default", "optional", "none"]
    parts: tuple[PartForm, ...] = ()
    titles: dict[Market, Text] = Field(default_factory=dict)


class TopicsForm(Form):
    """The file topics.yml."""

    topics: tuple[TopicForm, ...]


class PhaseForm(Form):
    """One phase of a journey."""

    id: Text
    title: Text
    titles: dict[Market, Text] = Field(default_factory=dict)


class LikeForm(Form):
    """``like: {journey: arrive, leaves_out: [power]}``."""

    journey: Text
    leaves_out: tuple[Text, ...] = ()


class JourneyForm(Form):
    """One journey."""

    topic: Id
    like: LikeForm | None = None
    phases: tuple[PhaseForm, ...]


class SourceForm(Form):
    """One row of sources.yml."""

    title: Text
    publisher: Text
    note: str = ""
    sure: Literal["looked_up", "secondary", "memory"]


class WordsForm(Form):
    """The file words.yml."""

    phrases: dict[str, Text] = Field(default_factory=dict)
    phrases_by_market: dict[str, dict[Market, Text]] = Field(default_factory=dict)
    words: dict[str, dict[Market, Text]] = Field(default_factory=dict)


class SearchForm(Form):
    """The file search.yml."""

    same: tuple[tuple[Text, ...], ...] = ()
    means: dict[str, tuple[Text, ...]] = Field(default_factory=dict)


@dataclass
class Registry:
    """What the lists say, with the place of each topic."""

    topics: dict[str, Topic] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)
    journeys: dict[str, Journey] = field(default_factory=dict)
    sources: dict[str, Mapping[str, str]] = field(default_factory=dict)
    phrases: dict[str, str] = field(default_factory=dict)
    phrases_by_market: dict[str, Mapping[str, str]] = field(default_factory=dict)
    words: dict[str, Mapping[str, str]] = field(default_factory=dict)
    synonyms: Synonyms = field(default_factory=Synonyms)
    pending: dict[str, str] = field(default_factory=dict)
    shared: dict[str, Worded] = field(default_factory=dict)


def read_registry(
    folders: Sequence[Path], root: Path, problems: list[Problem]
) -> Registry:
    """
    Return the lists of all *folders*; later ones add to earlier ones.

    Args:
        folders: The built-in content first.
        root: The workspace; places are named from here.
        problems: What is wrong is added here.
    """
    registry = Registry()
    for layer, folder in enumerate(folders):
        for name, take in _FILES.items():
            path = folder / name
            # With nothing pending there is no list of it.
            if (layer or take is _pending) and not path.exists():
                continue
            try:
                take(registry, path, root, built_in=not layer)
            except ProblemsFound as found:
                problems.extend(found.problems)
    return registry


def _topics(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:
    tree = read(path, root)
    form = validated(TopicsForm, tree)
    problems = []
    numbers = {topic.number: topic.id for topic in registry.topics.values()}
    for index, row in enumerate(form.topics):
        place = tree.place_of(f"topics[{row.id}]")
        where = f"topics[{index}]"
        if row.number in numbers or row.id in registry.topics:
            what = f"number {row.number:03d} or id '{row.id}' is taken already"
            problems.append(Problem(place, where, what, hint="take a new one"))
        if not built_in and row.number < _DEALERS_OWN:
            what = f"{row.number:03d} is not a dealership's own number"
            problems.append(Problem(place, where, what, "900 to 999"))
        numbers[row.number] = row.id
        parts = tuple(TopicPart(p.path, p.kinds, p.by, p.place) for p in row.parts)
        registry.topics[row.id] = Topic(
            row.number,
            row.id,
            row.system,
            row.title,
            row.sticker,
            parts,
            _by_market(row.titles),
        )
        registry.places[row.id] = place
    if problems:
        raise ProblemsFound(problems)


def _by_market(titles: Mapping[Market, str]) -> tuple[tuple[str, str], ...]:
    return tuple((str(market), title) for market, title in titles.items())


def _journeys(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    tree = read(path, root)
    for name, node in tree.fields.items():
        form = validated(JourneyForm, node)
        phases = tuple(
            Phase(phase.id, phase.title, _by_market(phase.titles))
            for phase in form.phases
        )
        like = form.like
        registry.journeys[name] = Journey(
            name,
            form.topic,
            phases,
            like.journey if like else "",
            like.leaves_out if like else (),
        )


def _sources(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    tree = read(path, root)
    for name, node in tree.fields.items():
        form = validated(SourceForm, node)
        registry.sources[name] = {
            "title": form.title,
            "publisher": form.publisher,
            "note": form.note,
            "sure": form.sure,
        }


def _words(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    form = validated(WordsForm, read(path, root))
    registry.phrases |= form.phrases
    for mine, table in (
        (registry.phrases_by_market, form.phrases_by_market),
        (registry.words, form.words),
    ):
        for key, names in table.items():
            mine[key] = {str(market): name for market, name in names.items()}


def _search(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    form = validated(SearchForm, read(path, root))
    registry.synonyms = registry.synonyms.joined(Synonyms(form.same, form.means))


def _pending(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    for name, node in read(path, root).fields.items():
        registry.pending[name] = node.text or ""


def _shared(registry: Registry, path: Path, root: Path, *, built_in: bool) -> None:  # noqa: ARG001
    tree = read(path, root)
    problems = []
    for name, node in tree.fields.items():
        if name in registry.shared:
            what = f"'{name}' is a built-in sentence, and many texts call for it"
            hint = "take a new name"
            problems.append(Problem(tree.keys[name], name, what, hint=hint))
        else:
            registry.shared[name] = Worded(node.text or "", tree.place_of(name))
    if problems:
        raise ProblemsFound(problems)


_FILES: Final = {
    "topics.yml": _topics,
    "journeys.yml": _journeys,
    "sources.yml": _sources,
    "words.yml": _words,
    "search.yml": _search,
    "pending.yml": _pending,
    "shared.yml": _shared,
}
