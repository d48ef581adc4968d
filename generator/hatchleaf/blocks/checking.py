"""
What a block may say: real topics, fields, values, facts, phases; no loose markup.

Conditions are checked against the vocabulary of the spec: a field or a value that
no unit can have is a problem, not a block that is never used.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from hatchleaf.blocks.conditions import (
    FACT_PREFIX,
    Limit,
    Line,
    NoneOf,
    OneOf,
    Presence,
    PresentOr,
)
from hatchleaf.blocks.model import NO_TOPIC, Block, Care, Step
from hatchleaf.blocks.registry import Registry
from hatchleaf.facts.names import DATED, KNOWN
from hatchleaf.problems import Place, Problem, listed, suggestion
from hatchleaf.spec.paths import FieldForm
from hatchleaf.spec.private import is_private
from hatchleaf.units import states

_A_FEW: Final = 24
"""More allowed words than this help nobody; the nearest one does."""

# Markup that would let a value of the unit's file become part of HTML or a link.
_LOOSE: Final = (
    (re.compile(r"`[^`\n]*\{\{"), "a value inside code"),
    (re.compile(r"\]\([^)\n]*\{\{"), "a value inside a link's target"),
    (
        re.compile(r"^\[[^\]\n]+\]:", re.MULTILINE),
        "a link's target in a line of its own",
    ),
    (re.compile(r"<[A-Za-z/!?][^\n]*"), "raw HTML"),
    (re.compile(r"\{:"), "an attribute list"),
    (re.compile(r"!\["), "an image"),
)


def check_block(
    block: Block,
    registry: Registry,
    forms: Mapping[str, FieldForm],
    lists: frozenset[str],
) -> Iterator[Problem]:
    """Yield everything that is wrong with *block* on its own."""
    yield from _names(block, registry, forms)
    yield from _private(block)
    for line in block.when:
        yield from _line(block, line, forms)
    yield from _each(block, lists)
    yield from _elsewhere(block, registry)
    for step in block.steps:
        yield from _step(step, registry)
        yield from _station(step, block, forms)
    for care in block.care:
        yield from _care(care)
    yield from _text(block)


def _names(
    block: Block, registry: Registry, forms: Mapping[str, FieldForm]
) -> Iterator[Problem]:
    facts = (*block.facts, *(tile.fact for tile in block.tiles if tile.fact))
    for key, words, allowed, what in (
        ("topic", (block.topic,), (*registry.topics, NO_TOPIC), "topic"),
        ("sources", block.sources, registry.sources, "source"),
        ("facts", facts, KNOWN, "fact"),
        ("needs", block.needs, forms, "field of a unit's file"),
    ):
        for word in words:
            if word not in allowed:
                yield _unknown(block, key, word, allowed, what)
    for tile in block.tiles:
        if bool(tile.fact) == (tile.value is not None):
            yield Problem(tile.place, "tiles", "a tile has either a fact or a value")


def _private(block: Block) -> Iterator[Problem]:
    """Yield what would put on a page, or hint at there, what is nobody's business."""
    for key, path in (
        *((f"when.{line.path}", line.path) for line in block.when),
        *(("needs", path) for path in block.needs),
        *(("each", path) for path in (block.each,) if path),
    ):
        if is_private(path):
            what = f"'{path}' is private: no page may depend on it"
            yield Problem(block.places.get(key, block.place), key, what)


def _unknown(
    block: Block, key: str, word: str, allowed: Iterable[str], what: str
) -> Problem:
    known = list(allowed)
    shown = listed(known) if len(known) <= _A_FEW else ""
    return Problem(
        block.places.get(key, block.place),
        key,
        f"'{word}' is not a {what}",
        shown,
        suggestion(word, known),
    )


def _each(block: Block, lists: frozenset[str]) -> Iterator[Problem]:
    place = block.places.get("each", block.place)
    if block.each and block.each not in lists:
        yield Problem(
            place,
            "each",
            f"'{block.each}' is not a list of a unit's file",
            hint=suggestion(block.each, lists),
        )
    if block.always and (block.when or block.each):
        where = block.places.get("always", block.place)
        what = "a block that is always in has no condition"
        yield Problem(where, "always", what, hint="general hazards only")
    # A shared text says 'it' of what the text that calls for it is about.
    if not (block.each or block.shared) and re.search(r"\{[{%][^}]*\bit\.", block.body):
        what = "'it' is only known with 'each'"
        yield Problem(block.place, "", what, hint="add 'each: LIST'")


_OF_A_PAGE: Final = (
    "also",
    "always",
    "ask",
    "do",
    "each",
    "every",
    "needs",
    "normal",
    "show",
    "sticker",
    "tiles",
)
"""What a shared text cannot have: it has no page of its own."""


def _elsewhere(block: Block, registry: Registry) -> Iterator[Problem]:
    """Yield what is wrong with standing on other pages, and with marked words."""
    for topic in block.also:
        if topic == block.topic:
            place = block.places.get(f"also.{topic}", block.place)
            yield Problem(place, "also", f"'{topic}' is the block's own topic")
        elif topic not in registry.topics:
            yield _unknown(block, f"also.{topic}", topic, registry.topics, "topic")
    if block.shared:
        for key in _OF_A_PAGE:
            if key in block.places:
                what = "a shared text has no page of its own"
                yield Problem(block.places[key], key, what, "text and its facts alone")
    if block.words and not block.when and not block.each:
        what = "words are marked for units that meet a condition, and there is none"
        yield Problem(block.places.get("words", block.place), "words", what)


def _line(
    block: Block, line: Line, forms: Mapping[str, FieldForm]
) -> Iterator[Problem]:
    key = f"when.{line.path}"
    place = block.places.get(key, block.place)
    if line.path.startswith(FACT_PREFIX):
        name = line.path.removeprefix(FACT_PREFIX)
        if name.split("[", 1)[0] not in KNOWN:
            yield Problem(
                place, key, f"'{name}' is not a fact", "", suggestion(name, KNOWN)
            )
        return
    form = forms.get(line.path)
    if form is None:
        yield Problem(
            place,
            key,
            "no unit's file has this field",
            "",
            suggestion(line.path, forms),
        )
        return
    yield from _value(line, form, key, place)


def _value(line: Line, form: FieldForm, key: str, place: Place) -> Iterator[Problem]:
    test = line.test
    if isinstance(test, Limit):
        fits = (
            form.form == "count"
            if isinstance(test.bound, int)
            else form.kind is not None and states(test.text, form.kind)
        )
        if not fits:
            allowed = form.kind.allowed() if form.kind else form.form
            yield Problem(place, key, f"'{test.text}' cannot stand here", allowed)
    elif isinstance(test, (OneOf, NoneOf, PresentOr)):
        words = _words_of(form, test.words)
        presence = frozenset() if form.form == "words" else _PRESENCE
        for word in test.words:
            if word not in words:
                yield Problem(
                    place,
                    key,
                    f"'{word}' is no value of this field",
                    listed(words | presence),
                    suggestion(word, words),
                )
    if isinstance(test, (Presence, PresentOr)) and form.form in _ALWAYS_THERE:
        yield Problem(place, key, "this field is always there", "a part or a list")


_ALWAYS_THERE: Final = ("text", "id", "place")
_PRESENCE: Final = frozenset({"present", "absent"})
_ALWAYS: Final[Mapping[str, frozenset[str]]] = {
    "yes or no": frozenset({"yes", "no"}),
    "quantity": frozenset({"known", "unknown"}),
    # A text is never compared; that it is not known can be asked.
    "text": frozenset({"unknown", "none"}),
    "place": frozenset({"unknown", "none"}),
}


def _words_of(form: FieldForm, asked: tuple[str, ...]) -> frozenset[str]:
    counts = (word for word in asked if form.form == "count" and word.isdecimal())
    return form.words | _ALWAYS.get(form.form, frozenset()) | frozenset(counts)


def _step(step: Step, registry: Registry) -> Iterator[Problem]:
    journey = registry.journeys.get(step.journey)
    if journey is None:
        yield Problem(
            step.step.place,
            f"do.{step.journey}",
            f"'{step.journey}' is not a journey",
            listed(registry.journeys),
            suggestion(step.journey, registry.journeys),
        )
        return
    phases = [phase.id for phase in journey.phases]
    if step.phase not in phases:
        yield Problem(
            step.step.place,
            f"do.{step.journey}",
            f"'{step.phase}' is not a phase of this journey",
            listed(phases),
            suggestion(step.phase, phases),
        )


def _station(
    step: Step, block: Block, forms: Mapping[str, FieldForm]
) -> Iterator[Problem]:
    path = step.at
    if block.each and path.startswith("it."):
        path = block.each + path.removeprefix("it")
    form = forms.get(path)
    if step.at and (form is None or form.form != "place"):
        what = f"'{step.at}' is no field that names a place"
        hint = "it.at with each, or a path like gear.jack.at"
        yield Problem(step.step.place, f"do.{step.journey}", what, hint=hint)


def _care(care: Care) -> Iterator[Problem]:
    place = care.task.place
    if care.due:
        if care.interval or care.first:
            yield Problem(place, "every", "what is due on a day has no interval")
        if care.due not in DATED:
            what = f"'{care.due}' is not a fact that says a day"
            hint = suggestion(care.due, DATED)
            yield Problem(place, "every", what, listed(DATED), hint)
    elif care.first is None and care.interval is None:
        what = "nothing says when this is due"
        yield Problem(place, "every", what, "interval, first or due")
    elif (
        care.first is not None
        and care.first.span
        and care.interval is not None
        and not care.interval.span
    ):
        what = "a first time by the calendar needs an interval by the calendar"
        yield Problem(place, "every", what, "first: 50 miles; or interval: 6 months")


def _text(block: Block) -> Iterator[Problem]:
    for pattern, what in _LOOSE:
        for found in pattern.finditer(block.body):
            line = block.body_line + block.body.count("\n", 0, found.start())
            yield Problem(
                Place(block.file, line),
                "",
                f"{what} is not allowed in a block",
                "Markdown",
            )
