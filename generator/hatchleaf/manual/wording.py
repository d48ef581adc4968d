"""What a block's text may call: readings, places, links to topics, and the rest."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from pydantic import BaseModel

from hatchleaf.blocks.choose import Chosen
from hatchleaf.blocks.markets import called
from hatchleaf.blocks.model import Library, Topic, Worded
from hatchleaf.blocks.text import Fault, Plain, Shown, escaped, fill
from hatchleaf.drawings.sides import side_words
from hatchleaf.facts.model import Facts
from hatchleaf.manual.drawn import drawn
from hatchleaf.manual.fact_words import FactWords
from hatchleaf.manual.guards import Guards
from hatchleaf.manual.model import day_in_words
from hatchleaf.manual.places import in_words
from hatchleaf.problems import Place, listed, suggestion
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import in_file_units

SECTIONS: Final = (
    "lp",
    "water",
    "hot_water",
    "waste",
    "dc",
    "ac",
    "climate",
    "kitchen",
    "inside",
    "media",
    "awnings",
    "outside",
    "doors",
    "central_locking",
    "windows",
    "lifting_roof",
    "steps",
    "slides",
    "vehicle",
    "gear",
    "safety",
    "weights",
    "body",
    "condition",
    "added",
)
"""What of the spec a text may read; identity and serial numbers are not among it."""
EMERGENCY_NUMBERS: Final = {
    "us": "911",
    "ca": "911",
    "uk": "999",
    "eu": "112",
    "au": "000",
}
"""The public emergency number of each market; common knowledge of each country."""

CALLED: Final = "\ue000"
"""Begins a shared text, until its later lines are set below its first one."""
CONTINUED: Final = "\ue001"
"""Begins a later line of a shared text."""


def month(value: object, unknown: str = "read its label") -> Shown:
    """
    Return a month as an owner reads it: ``October 2026``.

    Args:
        value: The first day of the month, or ``unknown``, as the unit's file has it.
        unknown: What to print in place of a month that is not known.

    Raises:
        Fault: *value* is neither.
    """
    if isinstance(value, datetime.date):
        text = f"{value:%B} {value.year}"
    elif value == "unknown":
        text = unknown
    else:
        raise Fault("month() takes a month of the unit's file")
    return Shown(escaped(text), text)


@dataclass(frozen=True)
class Wording:
    """The unit's side of every text: made once, used by all blocks."""

    spec: UnitSpec
    facts: Facts
    topics: Mapping[str, Topic]
    """The topics that are on this unit."""
    all_topics: Mapping[str, Topic]
    phrases: Mapping[str, str]
    places: Mapping[str, PlaceOnUnit]
    dealer_name: str
    dealer_phone: str
    library: Library
    shared: Mapping[str, Chosen | None]
    """The shared blocks; None for one whose condition this unit does not meet."""
    statement_checked: str = ""
    """On which day the federal statement was compared with its rule; empty: never."""

    def names(self, one: Chosen) -> dict[str, object]:
        """Return what the text of *one* chosen block may use."""
        names: dict[str, object] = {key: getattr(self.spec, key) for key in SECTIONS}
        names |= (
            {
                "delivery": self.spec.delivery,
                "found_on": _day_or_none(self.spec.found_on),
                "handed_over": day_in_words(self.spec.delivery.date),
                "statement_checked": self.statement_checked,
                "dealer": Plain({"name": self.dealer_name, "phone": self.dealer_phone}),
                "emergency_number": EMERGENCY_NUMBERS[self.spec.body.market],
                "value": self.value,
                "place": self.place,
                "name": self.name,
                "topic": self.topic,
                "has_topic": self._has_topic,
                "items": _items,
                "month": month,
                "phrase": self.phrase,
                "word": self.word,
                "side": self.side,
            }
            | self._numbers.names(one)
            | self._guards.names(one)
        )
        names["drawing"] = drawn(self.spec)
        if one.item is not None:
            names["it"] = one.item
        names["shared"] = self._shared_of(one, names)
        return names

    @property
    def _numbers(self) -> FactWords:
        return FactWords(self.spec, self.facts, self.places)

    @property
    def _guards(self) -> Guards:
        return Guards(self.spec, self.places, self.topics, self.value)

    def _shared_of(
        self, one: Chosen, own: Mapping[str, object]
    ) -> Callable[[str], Shown]:
        own = dict(own)

        def sentence(name: str) -> Shown:
            """Return one of the single sentences, with the caller's own values."""
            if name in self.shared:
                raise Fault("a shared text may call for single sentences alone")
            if name not in self.library.shared:
                known = [*self.library.shared, *self.shared]
                hint = suggestion(name, known) or "add it to content_blocks/shared.yml"
                raise Fault(f"'{name}' is not a shared text", hint=hint)
            return _called(self.library.shared[name], own)

        def shared(name: str) -> Shown:
            """Return a text that many need; nothing where its condition fails."""
            if name not in self.shared:
                return sentence(name)
            called = self.shared[name]
            if called is None:
                return Shown("", "")
            block = called.block
            text = Worded(block.body.strip("\n"), Place(block.file, block.body_line))
            facts = (*one.block.facts, *block.facts)
            host = replace(one, block=replace(one.block, facts=facts))
            # A longer text may be made of sentences, and goes no deeper.
            return _called(text, own | self._numbers.names(host) | {"shared": sentence})

        return shared

    def value(self, reading: object, at: str = "") -> Shown:
        """Return a reading as text, or where to read it when it is unknown."""
        if isinstance(reading, str):
            return Shown(
                escaped(self.phrases.get(reading, reading)),
                self.phrases.get(reading, reading),
            )
        if not isinstance(reading, Reading):
            raise Fault("value() takes a number of the unit's file")
        if reading.quantity is None:
            where = f" at {self.places[at].name}" if at in self.places else ""
            text = f"read the plate{where}"
            return Shown(escaped(text), text)
        text = in_file_units(reading.quantity)
        if reading.origin == "brochure":
            return Shown(
                f'{escaped(text)} <span class="brochure">(brochure)</span>',
                f"{text} (brochure)",
            )
        return Shown(escaped(text), text)

    def place(self, at: str) -> Shown:
        """Return where a place is, in words."""
        text = in_words(self._known_place(at), self.spec.body.market)
        return Shown(escaped(text), text)

    def name(self, at: str) -> Shown:
        """Return the place's own name."""
        text = self._known_place(at).name
        return Shown(escaped(text), text)

    def _known_place(self, at: str) -> PlaceOnUnit:
        if at not in self.places:
            raise Fault(
                f"'{at}' is no place of this unit",
                listed(self.places),
                "a condition of the block should keep it off this unit",
            )
        return self.places[at]

    def topic(self, topic_id: str) -> Shown:
        """Return a link to a topic that this unit has."""
        self._known_topic(topic_id)
        if topic_id not in self.topics:
            raise Fault(
                f"topic '{topic_id}' is not on this unit",
                hint=f'write {{% if has_topic("{topic_id}") %}} around it',
            )
        topic = self.topics[topic_id]
        text = f"{topic.title} ({topic.number:03d})"
        return Shown(f"[{escaped(text)}](topic:{topic.number:03d})", text)

    def _has_topic(self, topic_id: str) -> bool:
        self._known_topic(topic_id)
        return topic_id in self.topics

    def _known_topic(self, topic_id: str) -> None:
        if topic_id not in self.all_topics:
            raise Fault(
                f"'{topic_id}' is not a topic",
                listed(self.all_topics),
                suggestion(topic_id, self.all_topics),
            )

    def phrase(self, word: object) -> Shown:
        """Return the plain words for a word of a closed list."""
        key = str(word)
        if key not in self.phrases:
            raise Fault(
                f"no plain words for '{key}'",
                hint=f"add '{key}:' to phrases of content_blocks/words.yml",
            )
        return Shown(escaped(self.phrases[key]), self.phrases[key])

    def word(self, name: str) -> Shown:
        """Return what a thing is called where the unit is used: tire or tyre."""
        words = self.library.words
        key = name if name in words else name[:1].lower() + name[1:]
        if key not in words:
            hint = suggestion(name, words) or (
                "add it to words of content_blocks/words.yml"
            )
            raise Fault(f"'{name}' is not a word of the markets", hint=hint)
        text = called(words[key], self.spec.body.market, key)
        if key != name:
            text = text[:1].upper() + text[1:]
        return Shown(escaped(text), text)

    def side(self, side: str) -> Shown:
        """Return what the unit's own market calls its ``curb`` or ``road`` side."""
        words = side_words(self.spec.body.market)
        if side not in words:
            raise Fault(f"'{side}' is not a side", listed(words))
        return Shown(escaped(words[side]), words[side])


def _called(text: Worded, names: Mapping[str, object]) -> Shown:
    filled = fill(text.text, text.place, names, "markdown")
    return Shown(
        CALLED + filled.replace("\n", f"\n{CONTINUED}"),
        fill(text.text, text.place, names, "plain"),
    )


def _day_or_none(day: datetime.date | str) -> str:
    return day if isinstance(day, str) else day_in_words(day)


def _items(value: object) -> tuple[BaseModel, ...]:
    return value if isinstance(value, tuple) else ()
