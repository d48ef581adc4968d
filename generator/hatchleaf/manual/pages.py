"""
The pages: every block's text converted to HTML once, for all outputs.

Links stay symbolic; they are checked here, and each output only resolves them.
"""

from __future__ import annotations

import datetime
import hashlib
import json
import re
from collections.abc import Iterable, MutableMapping
from dataclasses import asdict
from typing import Final

from hatchleaf.blocks.model import CARE, Library
from hatchleaf.drawings.normal import drawing
from hatchleaf.drawings.plan import Mark, plan
from hatchleaf.drawings.unit_map import unit_map
from hatchleaf.manual import convert
from hatchleaf.manual.assemble import Manual, Part, TopicText
from hatchleaf.manual.care_page import care_page
from hatchleaf.manual.checklists import checklist
from hatchleaf.manual.fact_words import NUMBERS_TOPIC
from hatchleaf.manual.hatches import hatches_of
from hatchleaf.manual.links import faults_in
from hatchleaf.manual.model import (
    CareTask,
    Heading,
    Page,
    Pages,
    Tile,
    UnitCard,
    day_in_words,
)
from hatchleaf.manual.numbers import numbers_page
from hatchleaf.manual.photos import Album, with_photos
from hatchleaf.manual.places import round_trip
from hatchleaf.manual.schedule import schedule
from hatchleaf.manual.wording import EMERGENCY_NUMBERS
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.spec.model.unit import UnitSpec

HOME: Final = 0


def make_pages(
    manual: Manual,
    *,
    dealer_name: str,
    dealer_phone: str,
    kept: MutableMapping[str, str] | None = None,
    album: Album | None = None,
) -> Pages:
    """
    Return the pages of *manual*.

    Args:
        manual: The assembled guide.
        dealer_name: Who hands the unit over; public.
        dealer_phone: The dealership's own number; public.
        kept: Fragments converted before, by key; new ones are added.  It never
            changes a byte of the result.
        album: The photos; none when left out.

    Raises:
        ProblemsFound: Broken links and repeated ids, at the block that has them.
    """
    kept = {} if kept is None else kept
    delivered = manual.spec.delivery.date
    care = schedule(manual.care, manual.facts, delivered, manual.spec.body.market)
    pages = tuple(
        sorted(
            (_page(text, manual, kept, care) for text in manual.topics),
            key=lambda page: page.number,
        )
    )
    album = album or Album()
    pages = with_photos(pages, album)
    card = _card(manual.spec, pages, dealer_name, dealer_phone)
    walk = round_trip((text.topic.number, text.places) for text in manual.topics)
    made = Pages(card, pages, walk, care, album.pictures, manual.library.synonyms)
    problems = [_link_problem(number, what, manual) for number, what in faults_in(made)]
    if problems:
        raise ProblemsFound(problems)
    return made


def _page(
    text: TopicText,
    manual: Manual,
    kept: MutableMapping[str, str],
    care: tuple[CareTask, ...],
) -> Page:
    topic = text.topic
    fragments = [_converted(part, kept) for part in text.parts]
    body = [fragment.html for fragment in fragments]
    headings = [heading for fragment in fragments for heading in fragment.headings]
    for journey in manual.library.journeys.values():
        if journey.topic == topic.id:
            html, more = checklist(journey, manual.steps[journey.id], own=topic.number)
            body.append(html)
            headings.extend(more)
    if topic.number == NUMBERS_TOPIC:
        html, more = numbers_page(manual.facts, manual.library, manual.spec.body.market)
        body.append(html)
        headings.extend(more)
    if topic.id == CARE:
        html, more = care_page(care, manual.spec.delivery.date)
        body.append(html)
        headings.extend(more)
    whole = "\n".join(part for part in body if part)
    normal = convert.convert_line(text.normal.markdown) if text.normal else ""
    return Page(
        number=topic.number,
        id=topic.id,
        system=topic.system,
        title=topic.title,
        where=text.where,
        plan=_plan(text, manual),
        normal=normal,
        normal_drawing=drawing(text.normal.draw) if text.normal else "",
        tiles=text.tiles,
        body=whole,
        headings=tuple(headings),
        text=convert.plain_text(f"{normal} {_tile_words(text.tiles)} {whole}"),
        ask=text.ask,
        sticker=bool(text.places),
        unreviewed=_unreviewed(topic.id, manual),
    )


def _unreviewed(topic: str, manual: Manual) -> bool:
    """Return True when something on a page needs a review and has none that holds."""
    library = manual.library
    shown = {one.block.id for one in manual.selection.on_page(topic)}
    for journey in library.journeys.values():
        if journey.topic == topic:
            shown |= {step.block for step in manual.steps[journey.id]}
    if topic == CARE:
        shown |= {one.block.id for one in manual.selection.chosen if one.block.care}
    called = {name for block in shown for name in library.blocks[block].calls}
    return not library.unreviewed.keys().isdisjoint(shown | called)


def _tile_words(tiles: Iterable[Tile]) -> str:
    return " ".join(f"{tile.says} {tile.value} {tile.note}" for tile in tiles)


def _plan(text: TopicText, manual: Manual) -> str:
    spec = manual.spec
    if text.topic.number == HOME:
        title = "Map of the unit with all its hatches"
        return unit_map(spec, hatches_of(manual), title=title)
    if not text.places:
        return ""
    number = f"{text.topic.number:03d}"
    marks = [Mark(place, number) for place in text.places]
    return plan(
        spec, marks, key=number, title=f"{text.topic.title} on the plan: {text.where}"
    )


def _converted(part: Part, kept: MutableMapping[str, str]) -> convert.Fragment:
    key = hashlib.sha256(
        f"{convert.CONVERTER}\0{part.id}\0{part.markdown}".encode()
    ).hexdigest()
    found = kept.get(key)
    if found is not None:
        html, rows = json.loads(found)
        headings = tuple(Heading(*row) for row in rows)
        return convert.Fragment(html, headings, "")
    made = convert.convert(part.markdown, part.id)
    rows = [[h.id, h.text, h.level] for h in made.headings]
    kept[key] = json.dumps([made.html, rows], ensure_ascii=False)
    return made


def _card(
    spec: UnitSpec, pages: tuple[Page, ...], dealer_name: str, dealer_phone: str
) -> UnitCard:
    # The edition is what the guide says and the day it was handed over: nothing of
    # the machine or the hour of the build.
    content = json.dumps([asdict(page) for page in pages], sort_keys=True)
    digest = hashlib.sha256(content.encode()).hexdigest()[:8]
    found = spec.found_on
    return UnitCard(
        code=spec.code,
        name=spec.body.name,
        maker=spec.body.maker,
        year=str(spec.body.year),
        dealer_name=dealer_name,
        dealer_phone=dealer_phone,
        title=f"Guide to this unit by {dealer_name}",
        edition=f"{digest} of {spec.delivery.date.isoformat()}",
        delivered=spec.delivery.date,
        emergency_number=EMERGENCY_NUMBERS[spec.body.market],
        market=spec.body.market,
        condition=spec.condition,
        found_on=(
            f"as found on {day_in_words(found)}"
            if isinstance(found, datetime.date)
            else ""
        ),
    )


def _link_problem(number: int, what: str, manual: Manual) -> Problem:
    """Return the problem at the block's line that holds the faulty link or heading."""
    found = re.match(r"'([^']*)'", what) or re.match(r"id '([^']*)'", what)
    wanted = found[1] if found else ""
    for text in manual.topics:
        if text.topic.number != number:
            continue
        for part in text.parts:
            for index, line in enumerate(_source(part, manual.library)):
                if wanted and wanted in line:
                    place = Place(part.place.file, part.place.line + index, 1)
                    return Problem(place, "", what)
        if text.parts:
            return Problem(text.parts[0].place, "", f"on page {number:03d}: {what}")
    return Problem(Place(f"page {number:03d}"), "", what)


def _source(part: Part, library: Library) -> list[str]:
    block = next(
        (b for b in library.blocks.values() if b.file == part.place.file), None
    )
    return block.body.splitlines() if block else []
