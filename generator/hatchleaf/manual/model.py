"""The manual's pages as values: what every output takes."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, field

from hatchleaf.blocks.synonyms import Synonyms


@dataclass(frozen=True)
class Heading:
    """A heading inside a page's body."""

    id: str
    text: str
    level: int


@dataclass(frozen=True)
class Tile:
    """One number as on a rating plate: ``holds`` **31 gal** `fresh tank`."""

    says: str
    value: str
    """Plain text, already rounded, with its unit."""
    note: str
    link: str
    """Symbolic link to how it was worked out, or empty."""


@dataclass(frozen=True)
class Image:
    """A picture by the name of its file; width and height are in pixels."""

    name: str
    width: int
    height: int


@dataclass(frozen=True)
class PagePhoto:
    """A photo on a page, in two sizes; its bytes are in `Pages.pictures`."""

    caption: str
    alt: str
    site: Image
    copy: Image


@dataclass(frozen=True)
class Page:
    """One topic of this unit, converted; links are symbolic (``topic:210#id``)."""

    number: int
    id: str
    system: str
    title: str
    where: str
    """Words for its places, empty without one."""
    plan: str
    """Inline SVG of the unit with the topic's hatches marked, empty without one."""
    normal: str
    """The normal position as HTML, empty without one."""
    normal_drawing: str
    """Inline SVG of the handle or switch, empty without one."""
    tiles: tuple[Tile, ...]
    body: str
    headings: tuple[Heading, ...]
    text: str
    """Plain text for search."""
    ask: tuple[str, ...]
    """The owners' own words for it."""
    sticker: bool
    """True when the topic has a place on the unit."""
    unreviewed: bool = False
    """True when a qualified person has not read all of it that needs a review."""
    photos: tuple[PagePhoto, ...] = ()

    @property
    def shown_number(self) -> str:
        """The number as printed everywhere: three digits."""
        return f"{self.number:03d}"


@dataclass(frozen=True)
class CareTask:
    """A task of regular care with this unit's days; plain values, nothing private."""

    key: str
    """Block, item and row: the same from one build to the next."""
    topic: int
    title: str
    """The topic's own title."""
    task: str
    """HTML of one line; links are symbolic."""
    says: str
    """The same as plain text."""
    first: datetime.date | None
    """The first day, None for what goes by distance or occasion alone."""
    every: int
    """How many of `span` from one day to the next; 0 for what is done once."""
    span: str
    """``day``, ``week``, ``month`` or ``year``; empty for what is done once."""
    occasion: str
    """``before each trip``, ``each spring`` ..., ``due`` for a day that a fact says."""
    distance: str
    """From one time to the next: ``12,000 miles``; empty without one."""
    first_distance: str
    """From the delivery to the first time; empty where that is not said."""
    note: str
    """The month as the fact says it: ``August 2031``; empty for all others."""
    items: str = ""
    """Which of several fall due then; empty where there is one."""


@dataclass(frozen=True)
class UnitCard:
    """Who the guide is for and from; nothing here is private."""

    code: str
    name: str
    maker: str
    year: str
    dealer_name: str
    dealer_phone: str
    title: str
    edition: str
    delivered: datetime.date
    emergency_number: str
    market: str
    condition: str
    found_on: str
    """``as found on DATE`` text for a used unit, else empty."""

    @property
    def shown_code(self) -> str:
        """The code in groups of five, as people read it out."""
        return f"{self.code[:5]} {self.code[5:10]} {self.code[10:]}"


@dataclass(frozen=True)
class Pages:
    """All pages of one unit, by number, and the order of a walk round it."""

    unit: UnitCard
    pages: tuple[Page, ...]
    round: tuple[int, ...]
    care: tuple[CareTask, ...] = ()
    """The schedule of regular care, by topic."""
    pictures: Mapping[str, bytes] = field(default_factory=dict, repr=False)
    """The photos' bytes by the names that the pages use."""
    synonyms: Synonyms = field(default_factory=Synonyms)
    """Other names of things, for search."""
    by_number: dict[int, Page] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Index the pages, so that templates need no search."""
        object.__setattr__(
            self, "by_number", {page.number: page for page in self.pages}
        )

    @property
    def dated(self) -> tuple[CareTask, ...]:
        """The tasks that a calendar can hold, in the order of their first days."""
        known = [(task.first, task.key, task) for task in self.care if task.first]
        return tuple(task for *_, task in sorted(known, key=lambda row: row[:2]))


def day_in_words(day: datetime.date) -> str:
    """Return a date as an owner reads it, the month in letters: ``16 April 2027``."""
    return f"{day.day} {day:%B} {day.year}"
