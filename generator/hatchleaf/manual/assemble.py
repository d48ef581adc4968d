"""
Assembly: the chosen blocks' texts filled in, by topic, as plain data.

What is in the guide has been decided before; here every text gets the unit's
values, and all that cannot be filled is reported at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.blocks.choose import Chosen, Selection
from hatchleaf.blocks.conditions import values, word_of
from hatchleaf.blocks.model import ANY, Library, Signal, Topic, Worded
from hatchleaf.facts.model import Facts
from hatchleaf.manual.fact_words import fact_link
from hatchleaf.manual.filling import Filler
from hatchleaf.manual.journey_steps import StepText, journey_steps
from hatchleaf.manual.model import Tile
from hatchleaf.manual.places import in_words, places_by_id
from hatchleaf.manual.schedule import CareText, care_texts
from hatchleaf.manual.wording import Wording
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

NOT_KNOWN: Final = (
    '!!! warning "The maker\'s limit is not known for this unit"\n'
    "    Do not use it before you know.\n"
    "    Read its plate or label{where}, or ask the maker or the dealership.\n"
)
"""Printed on a used unit in place of a text that needs a limit nobody has."""


@dataclass(frozen=True)
class Part:
    """One block's text on the unit: Markdown, filled in."""

    id: str
    block: str
    markdown: str
    place: Place


@dataclass(frozen=True)
class Normal:
    """The normal position of a topic: what to draw, and the words as Markdown."""

    draw: str
    markdown: str


@dataclass(frozen=True)
class StickerText:
    """What a topic's label says at one place, as plain text."""

    place_id: str
    line: str
    fact: str
    extra: str
    signal: Signal | None


@dataclass(frozen=True)
class TopicText:
    """One topic of the unit."""

    topic: Topic
    places: tuple[PlaceOnUnit, ...]
    where: str
    normal: Normal | None
    tiles: tuple[Tile, ...]
    parts: tuple[Part, ...]
    ask: tuple[str, ...]
    stickers: tuple[StickerText, ...]


@dataclass(frozen=True)
class Manual:
    """The whole guide as plain data, before any conversion."""

    spec: UnitSpec
    facts: Facts
    selection: Selection
    library: Library
    topics: tuple[TopicText, ...]
    steps: Mapping[str, tuple[StepText, ...]]
    """Journey id -> its steps in order."""
    care: tuple[CareText, ...]
    """The tasks of regular care, in the order of the topics."""


def assemble(
    library: Library,
    spec: UnitSpec,
    facts: Facts,
    selection: Selection,
    *,
    dealer_name: str,
    dealer_phone: str,
    statement_checked: str = "",
) -> Manual:
    """
    Return the manual of *spec*; for the arguments see `make`.

    Raises:
        ProblemsFound: Every text that could not be filled in, at its own line.
    """
    wording = Wording(
        spec,
        facts,
        {topic.id: topic for topic in selection.topics},
        library.topics,
        library.phrases,
        places_by_id(spec),
        dealer_name,
        dealer_phone,
        library,
        _shared_texts(library, selection),
        statement_checked,
    )
    filler = Filler(wording)
    topics = tuple(
        _topic_text(topic, selection, spec, filler) for topic in selection.topics
    )
    steps = journey_steps(library, selection, filler)
    care = care_texts(selection, library.topics, filler)
    if filler.problems:
        raise ProblemsFound(filler.problems)
    return Manual(spec, facts, selection, library, topics, steps, care)


def _shared_texts(library: Library, selection: Selection) -> dict[str, Chosen | None]:
    """Return the texts that others may call for; None for one that is not chosen."""
    shared: dict[str, Chosen | None] = {
        block.id: None for block in library.blocks.values() if block.shared
    }
    shared.update({one.id: one for one in selection.chosen if one.block.shared})
    return shared


def _topic_text(
    topic: Topic, selection: Selection, spec: UnitSpec, filler: Filler
) -> TopicText:
    chosen = selection.of(topic.id)
    places = places_of(topic, spec, filler.wording.places)
    normal: Normal | None = None
    tiles: list[Tile] = []
    ask: dict[str, None] = {}
    for one in chosen:
        names = filler.wording.names(one)
        if one.block.normal and normal is None:
            text = filler.markdown(one.block.normal.text, names)
            normal = Normal(one.block.normal.draw, text)
        tiles.extend(_tiles(one, names, filler))
        ask.update(dict.fromkeys(one.block.ask))
    parts = tuple(_part(one, filler, topic.id) for one in selection.on_page(topic.id))
    return TopicText(
        topic,
        places,
        "; ".join(dict.fromkeys(_where(place, spec.body.market) for place in places)),
        normal,
        tuple(dict.fromkeys(tiles)),
        parts,
        tuple(ask),
        _stickers(chosen, places, filler),
    )


def _where(place: PlaceOnUnit, market: str) -> str:
    name = place.name[:1].upper() + place.name[1:]
    return f"{name}: {in_words(place, market)}"


def _part(one: Chosen, filler: Filler, topic: str) -> Part:
    body = Worded(one.block.body, Place(one.block.file, one.block.body_line))
    # Ids are unique over the whole guide: on another topic's page, they say so.
    name = one.id if one.block.topic == topic else f"{topic}-{one.id}"
    if one.unknown:
        at = getattr(one.item, "at", "")
        known = filler.wording.places.get(at)
        where = f" at {filler.wording.name(at).markdown}" if known else ""
        return Part(name, one.block.id, NOT_KNOWN.format(where=where), body.place)
    text = filler.markdown(body, filler.wording.names(one))
    return Part(name, one.block.id, text, body.place)


def _tiles(one: Chosen, names: Mapping[str, object], filler: Filler) -> Iterator[Tile]:
    for tile in one.block.tiles:
        if tile.value is not None:
            value = filler.plain(tile.value, names)
            yield Tile(tile.says, value, tile.note, "")
            continue
        # An item's own fact where there is one, else the unit's.
        for name in (f"{tile.fact}[{one.item_id}]", tile.fact):
            found = filler.wording.facts.get(name)
            if found is not None:
                marks = ", ".join(
                    word
                    for word, on in (
                        ("typical", found.typical),
                        ("brochure", found.brochure),
                    )
                    if on
                )
                # Of two tanks alike, the label says which.
                which = found.label if found.label.endswith(f" {tile.note}") else ""
                note = ", ".join(filter(None, (which or tile.note, found.beside())))
                note = f"{note} ({marks})" if marks else note
                yield Tile(tile.says, found.shown(), note, fact_link(found.name))
                break
        else:
            if not filler.wording.facts.missing_for(tile.fact):
                filler.problems.append(
                    Problem(tile.place, "tiles", f"this unit has no fact '{tile.fact}'")
                )


def places_of(
    topic: Topic, spec: UnitSpec, places: Mapping[str, PlaceOnUnit]
) -> tuple[PlaceOnUnit, ...]:
    """Return where a topic's fitted parts are on the unit, each place once."""
    found: dict[str, PlaceOnUnit] = {}
    for part in topic.parts:
        for value in values(spec, part.path):
            kind = ANY if part.by == ANY else word_of(getattr(value, part.by, "none"))
            at = getattr(value, part.place_field, "")
            if kind == "none" or (part.kinds and kind not in part.kinds):
                continue
            if at in places:
                found[at] = places[at]
    return tuple(found.values())


def _stickers(
    chosen: tuple[Chosen, ...],
    places: tuple[PlaceOnUnit, ...],
    filler: Filler,
) -> tuple[StickerText, ...]:
    """Return one label for each place; an item's own text at its own place."""
    made: list[StickerText] = []
    # Nobody stands at the roof with a phone, and sun and rain eat a label there.
    for place in (one for one in places if one.height != "roof"):
        texts = [one for one in chosen if one.block.sticker]
        own = [one for one in texts if getattr(one.item, "at", None) == place.id]
        general = [one for one in texts if one.item is None]
        for one in (*own, *general, *texts):
            sticker = one.block.sticker
            if sticker is None:
                continue
            names = filler.wording.names(one)
            made.append(
                StickerText(
                    place.id,
                    filler.plain(sticker.line, names),
                    filler.plain(sticker.fact, names),
                    filler.plain(sticker.extra, names),
                    sticker.signal,
                )
            )
            break
        else:
            made.append(StickerText(place.id, "", "", "", None))
    return tuple(made)
