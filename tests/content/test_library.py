"""The library as a whole: every block, name, field, value and number."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Final

import pytest

from content_usage import used_by_blocks, used_fields
from hatchleaf.blocks.model import Library
from hatchleaf.facts.names import KNOWN, READS
from hatchleaf.spec.paths import fields

# What the program itself reads, by path or, for a last key, anywhere.
READ_BY_THE_PROGRAM: Final = {
    "format": "the version of the file's form",
    "code": "the address",
    "condition": "what a used unit may leave unknown",
    "found_on": "the line on a used unit's pages",
    "delivery.date": "the edition",
    "body.name": "the head of the guide",
    "body.maker": "the head of the guide",
    "body.year": "the head of the guide",
    "body.type": "the outline of the plan",
    "body.market": "the emergency number",
    "body.length": "the wheels and the door on the map",
    "dc.fuses.position": "the tables of fuses",
    "dc.fuses.feeds": "the tables of fuses",
    "dc.fuses.rating": "the tables of fuses",
    "dc.fuses.at": "the tables of fuses",
    "dc.fuses.part": "which fuse a text names",
    "ac.breakers.position": "the tables of breakers",
    "ac.breakers.feeds": "the tables of breakers",
    "ac.breakers.rating": "the tables of breakers",
    "ac.breakers.leg": "the tables of breakers",
    "ac.breakers.at": "the tables of breakers",
    "ac.breakers.part": "which breaker a text names",
    "places": "the plan, the stickers and the words for places",
    "vin": "the private copy",
    "stock": "the private copy",
    "serials": "the private copy",
    "serials.number": "the private copy",
    "keys": "the private copy",
    "keys.number": "the private copy",
    "readings": "findings at the hand-over and the private copy",
    "readings.kind": "findings at the hand-over and the private copy",
    "readings.result": "findings at the hand-over and the private copy",
    "readings.found": "the private copy",
    "recall": "findings at the hand-over",
    "recall.looked_up": "findings at the hand-over",
    "recall.by": "findings at the hand-over",
    "recall.open": "findings at the hand-over",
    "photos": "the photos below the text of a page",
    "photos.topic": "the page that shows a photo",
    "photos.file": "the photo",
    "photos.caption": "the line below the photo",
    "photos.alt": "what is said in place of the photo",
    "warranties": "notes of check",
    "warranties.what": "notes of check",
    "warranties.lasts": "notes of check",
    "acknowledged": "who answers for a finding",
    "acknowledged.role": "who answers for a finding",
    "acknowledged.reason": "who answers for a finding",
    "dc.converter.lithium": "findings on LFP batteries",
}
NAMES_AN_ITEM: Final = "id"
SHIPPED: Final = Path(__file__).with_name("shipped.json")


def test_every_block_reads_and_checks(library: Library) -> None:
    """Reading reports every problem there is, so a library in hand has none."""
    assert len(library.blocks) > 100


def test_every_topic_with_parts_has_a_block(library: Library) -> None:
    """A page that the registry promises must be written, or be pending."""
    written = {block.topic for block in library.blocks.values()}
    promised = {
        topic.id
        for topic in library.topics.values()
        if topic.parts and not all(p.path in library.pending for p in topic.parts)
    }
    assert promised <= written


def test_every_field_is_used_or_pending(library: Library) -> None:
    """A field that nobody reads is work for the specialist and help for no one."""
    used = used_fields(library) | set(READ_BY_THE_PROGRAM)
    idle = {
        path
        for path in fields()
        if path not in used
        and path.rsplit(".", 1)[-1] != NAMES_AN_ITEM
        and not any(
            path == known or path.startswith(f"{known}.")
            for known in (*library.pending, "places")
        )
    }
    assert idle == set()


def test_nothing_pending_is_used(library: Library) -> None:
    """What is written is taken off the list."""
    used = used_by_blocks(library)
    assert {path for path in library.pending if path in used} == set()


def test_pending_only_names_fields(library: Library) -> None:
    """A misspelt path would hide a field that nobody uses."""
    assert set(library.pending) <= set(fields())


def test_every_fact_reads_real_fields() -> None:
    """A fact's inputs are fields that a unit's file can have."""
    assert {path for paths in READS.values() for path in paths} <= set(fields())


def test_every_fact_is_quoted_or_listed(library: Library) -> None:
    """Each fact base is described, since blocks name facts by it."""
    quoted = {name for block in library.blocks.values() for name in block.facts}
    assert quoted == set(KNOWN)


@pytest.mark.parametrize("what", ["topics", "blocks"])
def test_ids_and_numbers_only_grow(library: Library, what: str) -> None:
    """A sticker carries a number for ever, and a replacement names a block by id."""
    shipped = json.loads(SHIPPED.read_text("utf-8"))[what]
    now = (
        {f"{topic.number:03d}": topic.id for topic in library.topics.values()}
        if what == "topics"
        else dict.fromkeys(library.blocks, "")
    )
    assert {key: now.get(key) for key in shipped} == shipped
    assert set(now) == set(shipped), "add new ones to tests/content/shipped.json"


def test_pending_only_shrinks(library: Library) -> None:
    """The list of what is still to be written may lose lines and gain none."""
    shipped = json.loads(SHIPPED.read_text("utf-8"))["pending"]
    assert set(library.pending) <= set(shipped)


def test_reviewed_is_empty(library: Library) -> None:
    """Only a qualified person at a dealership fills it in, for its own workspace."""
    assert [b.id for b in library.blocks.values() if b.reviewed] == []
