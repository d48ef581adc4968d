"""A block of content as a value: its front matter checked, its text as written."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal, TypeAlias

from hatchleaf.blocks.conditions import Line
from hatchleaf.blocks.intervals import Interval
from hatchleaf.blocks.synonyms import Synonyms
from hatchleaf.problems import Place

ANY: Final = "present"
"""Instead of a field that tells kinds apart, where a part has no kinds."""
NUMBERS: Final = "numbers"
"""The topic that is on every unit without a block: how the numbers came about."""
CARE: Final = "care"
"""The topic that is on every unit with a task that comes round again."""
NO_TOPIC: Final = "none"
"""The topic of a shared text: it stands where other texts call for it."""
Signal: TypeAlias = Literal["danger", "warning", "caution", "notice"]


@dataclass(frozen=True)
class Worded:
    """A text of the front matter, with the place to blame when it cannot be filled."""

    text: str
    place: Place


@dataclass(frozen=True)
class Normal:
    """How the handle, switch or cap stands when nothing is going on."""

    draw: str
    text: Worded


@dataclass(frozen=True)
class BlockTile:
    """A number for the head of the page: a fact's name, or a worded value."""

    says: str
    fact: str
    value: Worded | None
    note: str
    place: Place


@dataclass(frozen=True)
class BlockSticker:
    """What the label at the hatch says beside title and number."""

    line: Worded
    fact: Worded | None
    extra: Worded | None
    signal: Signal | None
    place: Place


@dataclass(frozen=True)
class Step:
    """One step of a journey; phase and rank are its place in the safety order."""

    journey: str
    phase: str
    rank: int
    step: Worded
    at: str = ""
    """The field with the place where it is done; "" where the place says nothing."""


@dataclass(frozen=True)
class Care:
    """A task of regular care: one that comes round again, or is due on a day."""

    task: Worded
    interval: Interval | None
    """None for what is done once."""
    first: Interval | None
    """From the delivery to the first time, where that is not the interval."""
    due: str
    """The base of the facts that say the day; empty for what has an interval."""


@dataclass(frozen=True)
class Point:
    """What the specialist shows at this stop, and what is at stake."""

    stake: Literal["life", "damage", "comfort"]
    text: Worded


@dataclass(frozen=True)
class Review:
    """Who at the dealership read a text, when, against what, and which text."""

    role: str
    date: dt.date
    against: str
    text: str
    """The `Block.wording` that was read."""
    place: Place


@dataclass(frozen=True)
class Unreviewed:
    """Why a block needs a review, and the one that no longer holds, if any."""

    hazards: tuple[str, ...]
    stale: Review | None


@dataclass(frozen=True)
class Block:
    """One Markdown file of the library."""

    id: str
    topic: str
    order: int
    also: Mapping[str, int]
    """Other topics on whose pages the text stands too, with its order there."""
    when: tuple[Line, ...]
    each: str
    always: bool
    facts: tuple[str, ...]
    needs: tuple[str, ...]
    normal: Normal | None
    tiles: tuple[BlockTile, ...]
    sticker: BlockSticker | None
    show: tuple[Point, ...]
    steps: tuple[Step, ...]
    care: tuple[Care, ...]
    ask: tuple[str, ...]
    words: tuple[str, ...]
    """Words that only units which meet the condition may show."""
    sources: tuple[str, ...]
    mandated: bool
    reviewed: Mapping[str, Review]
    """By language."""
    wording: str
    """Fingerprint of all that a review is about."""
    calls: frozenset[str]
    """The shared texts that it calls for."""
    body: str
    body_line: int
    """The line of the file on which the body begins, counted from 1."""
    file: str
    fingerprint: str
    replaces: str
    places: Mapping[str, Place]
    """Where each front matter key and condition line stands."""

    @property
    def place(self) -> Place:
        """The file's first line."""
        return Place(self.file)

    @property
    def shared(self) -> bool:
        """True for a text that stands only where other texts call for it."""
        return self.topic == NO_TOPIC


@dataclass(frozen=True)
class TopicPart:
    """What of the unit a topic speaks of, and how its kinds are told apart."""

    path: str
    kinds: tuple[str, ...]
    by: str
    place_field: str


@dataclass(frozen=True)
class Topic:
    """One row of the registry: a number that keeps its meaning for ever."""

    number: int
    id: str
    system: str
    title: str
    sticker: Literal["default", "optional", "none"]
    parts: tuple[TopicPart, ...]
    titles: tuple[tuple[str, str], ...] = ()
    """Market -> its title there, where it is called otherwise."""


@dataclass(frozen=True)
class Phase:
    """A stretch of a journey."""

    id: str
    title: str
    titles: tuple[tuple[str, str], ...] = ()
    """Market -> its title there, where it is called otherwise."""


@dataclass(frozen=True)
class Journey:
    """A list of steps in safety order, and the topic it stands on."""

    id: str
    topic: str
    phases: tuple[Phase, ...]
    like: str = ""
    """The journey whose rows it takes too; "" when it has its own alone."""
    leaves_out: tuple[str, ...] = ()
    """The phases of that journey which it does not take."""

    def takes(self, step: Step) -> bool:
        """Return True when *step* is a row of this journey."""
        if step.journey == self.id:
            return True
        taken = bool(self.like) and step.journey == self.like
        return taken and step.phase not in self.leaves_out


@dataclass(frozen=True)
class Library:
    """All content: blocks by id, topics by id, journeys, sources, plain words."""

    blocks: Mapping[str, Block]
    topics: Mapping[str, Topic]
    journeys: Mapping[str, Journey]
    sources: Mapping[str, Mapping[str, str]]
    phrases: Mapping[str, str]
    pending: Mapping[str, str]
    """Spec path -> the work that will use it."""
    unreviewed: Mapping[str, Unreviewed]
    """The blocks that need a review by a qualified person and have none that holds."""
    shared: Mapping[str, Worded]
    """Single sentences that several texts call for, by name."""
    lists: frozenset[str]
    """The paths of all lists that a spec can have."""
    words: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Word of a text -> market -> what it is called there."""
    phrases_by_market: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Word of a closed list -> market -> its plain words there."""
    synonyms: Synonyms = field(default_factory=Synonyms)
    """Other names of things, for search."""
