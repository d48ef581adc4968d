"""Fuses and breakers in words: which one a text means, and the tables by panel."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

from hatchleaf.blocks.choose import Chosen
from hatchleaf.blocks.model import Topic
from hatchleaf.blocks.text import Fault, Shown, escaped
from hatchleaf.manual.places import in_words
from hatchleaf.problems import suggestion
from hatchleaf.spec import paths
from hatchleaf.spec.model.ac import Breaker
from hatchleaf.spec.model.dc import Fuse
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

TOPIC: Final = "breakers"
UNKNOWN: Final = "unknown"
"""What a field of words says that nobody could read."""
_NUMBERED: Final = re.compile(r"[A-Za-z]{0,2}\d{1,3}[A-Za-z]?")
_NAMED: Final = re.compile(r"(breaker|fuse) \w{1,3}")
"""A place on a panel that says itself what sits there."""
Guard: TypeAlias = Fuse | Breaker
Side: TypeAlias = Literal["dc", "ac"]


@dataclass(frozen=True)
class Guards:
    """The fuses and breakers of a unit for its texts."""

    spec: UnitSpec
    places: Mapping[str, PlaceOnUnit]
    topics: Mapping[str, Topic]
    """The topics that are on this unit."""
    value: Callable[[object, str], Shown]
    """A reading in words, with the place of its plate."""

    def names(self, one: Chosen) -> dict[str, object]:
        """Return what the text of *one* chosen block may use."""
        linked = one.block.topic != TOPIC
        return {
            "fuse": self._named("dc", linked=linked),
            "breaker": self._named("ac", linked=linked),
            "has_fuse": self._has("dc"),
            "has_breaker": self._has("ac"),
            "fuse_tables": lambda: self._tables("dc"),
            "breaker_tables": lambda: self._tables("ac"),
        }

    def _listed(self, side: Side) -> tuple[Guard, ...]:
        found = self.spec.dc.fuses if side == "dc" else self.spec.ac.breakers
        return found if isinstance(found, tuple) else ()

    def _panel(self, side: Side) -> object:
        return self.spec.dc.panel if side == "dc" else self.spec.ac.panel

    def _word(self, side: Side) -> str:
        kind = getattr(self._panel(side), "kind", "")
        return "breaker" if side == "ac" or kind == "breakers" else "fuse"

    def _found(self, side: Side, *parts: str) -> Guard | None:
        by_part = {guard.part: guard for guard in reversed(self._listed(side))}
        return next((by_part[part] for part in parts if part in by_part), None)

    def _has(self, side: Side) -> Callable[..., bool]:
        def has(part: str, item: object = "") -> bool:
            return self._found(side, *_asked(part, item)) is not None

        return has

    def _named(self, side: Side, *, linked: bool) -> Callable[..., Shown]:
        def named(part: str, item: object = "", also: str = "") -> Shown:
            asked = [*_asked(part, item), *(_asked(also, "") if also else ())]
            guard = self._found(side, *asked)
            if guard is None:
                panel = getattr(self._panel(side), "at", "")
                text = f"its {self._word(side)}"
                return self._shown(text, "", panel, linked=linked)
            return self._shown(
                self._one(guard, side),
                self._inside_brackets(guard),
                guard.at,
                linked=linked,
            )

        return named

    def _one(self, guard: Guard, side: Side) -> str:
        word = self._word(side)
        if _NUMBERED.fullmatch(guard.position):
            return f"{word} {guard.position}"
        if _NAMED.fullmatch(guard.position):
            return guard.position
        one_word = " " not in guard.position and guard.position != UNKNOWN
        return f"the {guard.position} {word}" if one_word else f"the {word}"

    def _inside_brackets(self, guard: Guard) -> str:
        known = guard.rating.quantity is not None
        plain = " " not in guard.position or _NAMED.fullmatch(guard.position)
        told = [] if plain else [guard.position]
        if known:
            told.append(self.value(guard.rating, guard.at).plain)
        return f" ({', '.join(told)})" if told else ""

    def _shown(self, text: str, more: str, at: str, *, linked: bool) -> Shown:
        place = self.places.get(at)
        where = f" at the {_in_a_sentence(place.name)}" if place else ""
        topic = self.topics.get(TOPIC) if linked else None
        name = escaped(text + more)
        if topic:
            name = f"[{name}](topic:{topic.number:03d})"
        return Shown(name + escaped(where), text + more + where)

    def _tables(self, side: Side) -> Shown:
        listed = self._listed(side)
        if not listed:
            raise Fault(
                f"this unit's file lists no {self._word(side)}s",
                hint="a condition of the block should keep it off this unit",
            )
        parts = [self._table(side, at, listed) for at in _places_of(listed)]
        return Shown(
            "\n" + "\n".join(part.markdown for part in parts) + "\n",
            " ".join(part.plain for part in parts),
        )

    def _table(self, side: Side, at: str, listed: tuple[Guard, ...]) -> Shown:
        here = [guard for guard in listed if guard.at == at]
        legs = any(getattr(guard, "leg", "") in ("b", "both") for guard in here)
        word = self._word(side)
        heads = [word.capitalize(), "Feeds", "Amps", *(["Leg"] if legs else [])]
        rows = [
            [
                _told(guard.position),
                _told(guard.feeds),
                self.value(guard.rating, at).plain
                if guard.rating.quantity is not None
                else "read it there",
                *([_leg(guard)] if legs else []),
            ]
            for guard in here
        ]
        place = self.places[at]
        where = in_words(place, self.spec.body.market)
        head = f"At the {_in_a_sentence(place.name)} ({where}):"
        lines = [f"| {' | '.join(heads)} |", f"|{' --- |' * len(heads)}"]
        lines += [f"| {' | '.join(map(escaped, row))} |" for row in rows]
        table = "\n".join(lines)
        plain = "; ".join(", ".join(row) for row in rows)
        return Shown(f"{escaped(head)}\n\n{table}\n", f"{head} {plain}.")


def _leg(guard: Guard) -> str:
    leg = getattr(guard, "leg", "unknown")
    return {"a": "A", "b": "B", "both": "A and B"}.get(leg, "not known")


def _places_of(guards: tuple[Guard, ...]) -> Iterator[str]:
    yield from dict.fromkeys(guard.at for guard in guards)


def _asked(part: str, item: object) -> tuple[str, ...]:
    """Return the paths that mean a part, the item's own first."""
    known = paths.fields()
    listing = known.get(part.rpartition(".")[0])
    if part not in known and (listing is None or listing.form != "list"):
        raise Fault(f"'{part}' is no part of a unit", hint=suggestion(part, known))
    return (f"{part}.{item}", part) if item else (part,)


def _told(text: str) -> str:
    return "not known" if text == UNKNOWN else text


def _in_a_sentence(name: str) -> str:
    """Return a place's name as it stands within a sentence; LP stays in capitals."""
    first = name.split(" ", 1)[0]
    return name if first.isupper() and len(first) > 1 else name[:1].lower() + name[1:]
