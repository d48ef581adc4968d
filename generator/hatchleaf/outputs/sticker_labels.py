"""From a unit's guide to its stickers and its emergency card."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from hatchleaf.drawings.plan import Mark, plan
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.manual.assemble import Manual, TopicText
from hatchleaf.manual.model import Pages
from hatchleaf.manual.places import in_words, places_by_id
from hatchleaf.outputs.card import Alarm, Card, ShutOff
from hatchleaf.outputs.stickers import Label, StickerSet
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

# What to shut off in the order of what can kill soonest: its name on the card, the
# part of the unit, the field of its place, the topic's id.  A city inlet has no
# valve of its own: there the water is shut off at the hose.
_SHUT_OFFS: Final = (
    ("LP gas: the valve at the supply", "lp.supply", "at", "lp-supply"),
    ("Shore power: the main breaker", "ac.panel", "at", "breakers"),
    ("Battery: the battery switch", "dc.disconnect", "at", "battery-switch"),
    ("Water: the pump's switch", "water.pump", "switch_at", "water-pump"),
    ("Water: the tap that the hose is on", "water.inlets", "at", "water-inlet"),
)
# A container's pump fills no pipe that anything but its switch could shut.
_NO_TAP: Final = "socket"
_SWITCHED: Final = "Mains power: the main switch"
"""Where the consumer unit has a main switch and no main breaker."""
_ALARMS: Final = {
    "smoke": "Smoke alarm",
    "co": "CO alarm",
    "lp": "LP gas alarm",
    "co_and_lp": "CO and LP gas alarm",
    "smoke_and_co": "Smoke and CO alarm",
}
FULL_SET: Final = 12
"""A small unit has few hatches that must have a label: others make up the set."""
_EXITS: Final = {"door": "Door", "window": "Window", "hatch": "Hatch"}


def sticker_set(manual: Manual, pages: Pages, host: str) -> StickerSet:
    """
    Return all stickers of a unit, optional ones marked, and its emergency card.

    Args:
        manual: The assembled guide, which holds every label's words.
        pages: The guide's pages, for its edition and who it is from.
        host: The host of the printed addresses, such as ``manuals.example``.
    """
    return StickerSet(
        code=manual.spec.code,
        host=host,
        unit_name=manual.spec.body.name,
        labels=tuple(_made_up(_labels(manual))),
        card=_card(manual, pages),
        edition=pages.unit.edition,
    )


def _labels(manual: Manual) -> Iterator[Label]:
    places = places_by_id(manual.spec)
    for text in manual.topics:
        if text.topic.sticker == "none":
            continue
        for words in text.stickers:
            place = places[words.place_id]
            yield Label(
                topic=text.topic.number,
                title=text.topic.title,
                place_id=words.place_id,
                place=place.name,
                side_height=in_words(place, manual.spec.body.market),
                line=words.line,
                fact=words.fact,
                signal=words.signal,
                extra=words.extra,
                optional=text.topic.sticker == "optional",
            )


def _made_up(labels: Iterator[Label]) -> Iterator[Label]:
    """Yield the labels, optional ones taken in by number until the set is complete."""
    found = list(labels)
    lacking = FULL_SET - sum(not label.optional for label in found)
    for label in found:
        if label.optional and lacking > 0:
            lacking -= 1
            yield replace(label, optional=False)
        else:
            yield label


def _card(manual: Manual, pages: Pages) -> Card:
    spec = manual.spec
    places = places_by_id(spec)
    found = tuple(_shut_offs(manual))
    marks = [Mark(place, f"{topic:03d}") for _, place, topic in found]
    safety = spec.safety
    extinguisher = places.get(getattr(safety.extinguisher, "at", ""))
    return Card(
        title=f"{spec.body.maker} {spec.body.name}",
        shut_offs=tuple(
            ShutOff(
                _called(name, spec.body.market), _at(place, spec.body.market), topic
            )
            for name, place, topic in found
        ),
        exits=tuple(_exits(spec)),
        extinguisher=_at(extinguisher, spec.body.market) if extinguisher else "",
        # Alarms that sound alike need one line.
        alarms=tuple(
            dict.fromkeys(
                Alarm(
                    in_words_of(spec.body.market, _ALARMS[alarm.detects]),
                    _known(alarm.alarm_sound),
                    _known(alarm.fault_sound),
                    _known(alarm.end_sound),
                )
                for alarm in (safety.alarms if isinstance(safety.alarms, tuple) else ())
            )
        ),
        emergency_number=pages.unit.emergency_number,
        plan_svg=plan(spec, marks, key="card", title="Shut-offs on the plan"),
        dealer_name=pages.unit.dealer_name,
        dealer_phone=pages.unit.dealer_phone,
    )


def _called(name: str, market: str) -> str:
    """Return the name of a shut-off in the words of *market*."""
    if name.startswith("Shore power") and market not in ("us", "ca"):
        return _SWITCHED
    return in_words_of(market, name)


def _shut_offs(manual: Manual) -> Iterator[tuple[str, PlaceOnUnit, int]]:
    """Yield what is fitted, where, and on which topic; what is not is passed over."""
    places = places_by_id(manual.spec)
    topics: dict[str, TopicText] = {text.topic.id: text for text in manual.topics}
    for name, path, field, topic in _SHUT_OFFS:
        section, part = path.split(".")
        fitted = getattr(getattr(manual.spec, section), part)
        if topic not in topics:
            continue
        # Of several inlets only those of the topic take a hose.
        at_topic = {place.id for place in topics[topic].places}
        for one in fitted if isinstance(fitted, tuple) else (fitted,):
            place = places.get(getattr(one, field, ""))
            if getattr(one, "kind", "") == _NO_TAP:
                continue
            if place is not None and place.id in at_topic:
                yield name, place, topics[topic].topic.number


def _exits(spec: UnitSpec) -> Iterator[str]:
    places = places_by_id(spec)
    exits = spec.safety.exits
    for one in exits if isinstance(exits, tuple) else ():
        kind, place = _EXITS[one.kind], places[one.at]
        said = kind.lower() in place.name.lower()
        where = _at(place, spec.body.market)
        yield where if said else f"{kind}: {where}"


def _at(place: PlaceOnUnit, market: str) -> str:
    return f"{place.name}: {in_words(place, market)}"


def _known(sound: str) -> str:
    return "" if sound == "unknown" else sound
