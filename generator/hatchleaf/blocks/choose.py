"""
Choosing: which blocks are in the guide of one unit, once, with the reasons.

Absence matters as much as presence: what is not fitted has no block chosen, and
what is fitted but has no block is a problem, never silence.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from pydantic import BaseModel

from hatchleaf.blocks.conditions import (
    Line,
    Outcome,
    Presence,
    items_at,
    outcomes,
    values,
    word_of,
)
from hatchleaf.blocks.model import (
    ANY,
    CARE,
    NO_TOPIC,
    NUMBERS,
    Block,
    Library,
    Topic,
    TopicPart,
)
from hatchleaf.facts.model import Facts
from hatchleaf.problems import Problem
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec


@dataclass(frozen=True)
class Chosen:
    """A block that is in, for one item of its list when it has `each`."""

    block: Block
    item: BaseModel | None
    item_id: str
    outcomes: tuple[Outcome, ...]
    unknown: tuple[str, ...]
    """Limits that the text needs and a used unit does not know."""

    @property
    def id(self) -> str:
        """The block's id, with its item's when it is used once for each."""
        return f"{self.block.id}-{self.item_id}" if self.item_id else self.block.id


@dataclass(frozen=True)
class LeftOut:
    """A block that is out, and the lines that decided it."""

    block: Block
    outcomes: tuple[Outcome, ...]


@dataclass(frozen=True)
class Selection:
    """What is in the guide and what is not."""

    chosen: tuple[Chosen, ...]
    left_out: tuple[LeftOut, ...]
    topics: tuple[Topic, ...]
    """The topics that have a block or gather from others, by number."""

    def of(self, topic: str) -> tuple[Chosen, ...]:
        """Return the chosen blocks of *topic*, in reading order."""
        return tuple(one for one in self.chosen if one.block.topic == topic)

    def on_page(self, topic: str) -> tuple[Chosen, ...]:
        """Return what stands on the page of *topic*, other topics' blocks with it."""
        guests = (one for one in self.chosen if topic in one.block.also)
        return tuple(
            sorted(
                (*self.of(topic), *guests),
                key=lambda one: one.block.also.get(topic, one.block.order),
            )
        )


def choose(library: Library, spec: UnitSpec, facts: Facts) -> Selection:
    """Return the selection for *spec*, by the library's blocks and its *facts*."""
    lists = library.lists
    chosen: list[Chosen] = []
    left_out: list[LeftOut] = []
    for block in library.blocks.values():
        if block.each:
            tried = _for_each(block, spec, facts, lists)
        else:
            made = outcomes(block.when, spec, facts, lists)
            tried = [Chosen(block, None, "", made, _unknown_needs(block, spec, None))]
        kept = [one for one in tried if all(o.holds for o in one.outcomes)]
        chosen.extend(kept)
        if not kept:
            left_out.append(LeftOut(block, _reasons(block, tried)))
    numbers = {topic.id: topic.number for topic in library.topics.values()}
    numbers[NO_TOPIC] = len(chosen) + max(numbers.values(), default=0)
    chosen.sort(key=lambda one: (numbers[one.block.topic], one.block.order))
    used = {one.block.topic for one in chosen} | {NUMBERS}
    if any(one.block.care for one in chosen):
        used.add(CARE)
    topics = sorted(
        (t for t in library.topics.values() if t.id in used), key=lambda t: t.number
    )
    return Selection(tuple(chosen), tuple(left_out), tuple(topics))


def _for_each(
    block: Block, spec: UnitSpec, facts: Facts, lists: frozenset[str]
) -> list[Chosen]:
    return [
        Chosen(
            block,
            item,
            str(getattr(item, "id", "")),
            outcomes(block.when, spec, facts, lists, (block.each, item)),
            _unknown_needs(block, spec, item),
        )
        for item in items_at(spec, block.each)
    ]


def _reasons(block: Block, tried: list[Chosen]) -> tuple[Outcome, ...]:
    if tried:
        return max(
            (one.outcomes for one in tried), key=lambda o: sum(x.holds for x in o)
        )
    return (
        Outcome(Line(block.each, Presence(present=True)), holds=False, found="none"),
    )


def _unknown_needs(
    block: Block, spec: UnitSpec, item: BaseModel | None
) -> tuple[str, ...]:
    unknown = []
    for path in block.needs:
        if item is not None and path.startswith(block.each + "."):
            found = list(values(item, path.removeprefix(block.each + ".")))
        else:
            found = list(values(spec, path))
        if any(_not_known(value) for value in found):
            unknown.append(path)
    return tuple(unknown)


def _not_known(value: object) -> bool:
    return (isinstance(value, Reading) and not value.known) or value == "unknown"


def shortcomings(
    selection: Selection, library: Library, loaded: LoadedUnit
) -> tuple[Problem, ...]:
    """
    Return what the guide of this unit would fail to say.

    A fitted kind without a block, and a limit that a chosen text needs and the
    spec does not know; a used unit prints whom to ask instead of the latter.
    """
    return (
        *_without_content(selection, library, loaded),
        *_without_limit(selection, loaded),
    )


def _without_limit(selection: Selection, loaded: LoadedUnit) -> Iterable[Problem]:
    if loaded.spec.condition == "used":
        return
    for one in selection.chosen:
        for path in one.unknown:
            of_item = path.startswith(f"{one.block.each}.") and one.item_id
            named = (
                path.replace(one.block.each, f"{one.block.each}[{one.item_id}]", 1)
                if of_item
                else path
            )
            yield Problem(
                loaded.place_of(named),
                named,
                f"the maker's limit is unknown, and block '{one.block.id}' cannot be "
                "printed without it",
                "the number from the maker's plate, label or paper",
                "read it on the unit and write it in the unit's file",
            )


def _without_content(
    selection: Selection, library: Library, loaded: LoadedUnit
) -> Iterable[Problem]:
    for topic in library.topics.values():
        chosen = selection.of(topic.id)
        for part in topic.parts:
            for item, kind in fitted(part, loaded.spec):
                if _covered(chosen, part, kind, item):
                    continue
                named = f"{part.path}[{item}]" if item else part.path
                field = named if part.by == ANY else f"{named}.{part.by}"
                yield Problem(
                    loaded.place_of(field),
                    field,
                    f"no block of topic {topic.number:03d} speaks of "
                    f"{part.by} '{kind}' yet",
                    hint="write one in content_blocks/, or ask the content editor",
                )


def fitted(part: TopicPart, spec: UnitSpec) -> Iterable[tuple[str, str]]:
    """Yield ``(item id, kind)`` of everything fitted that *part* stands for."""
    for value in values(spec, part.path):
        if not isinstance(value, BaseModel):
            continue
        kind = ANY if part.by == ANY else word_of(getattr(value, part.by, "none"))
        if kind != "none" and (not part.kinds or kind in part.kinds):
            yield str(getattr(value, "id", "")), kind


def _covered(chosen: tuple[Chosen, ...], part: TopicPart, kind: str, item: str) -> bool:
    """Return True when a chosen block was chosen *for* this kind."""
    if part.by == ANY:
        return bool(chosen)
    path = f"{part.path}.{part.by}"
    for one in chosen:
        if one.item_id and item and one.item_id != item and one.block.each == part.path:
            continue
        for outcome in one.outcomes:
            if outcome.line.path == path and outcome.line.test.holds(kind):
                return True
    return False
