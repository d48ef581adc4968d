"""
The safety order holds on every sample, in the journeys and on the pages.

A journey's order is data (phase and rank), spread over many blocks, so that a number
changed in one of them can put the chains off before the chocks are on.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import pytest
import yaml

from hatchleaf.blocks.model import Library
from hatchleaf.manual.assemble import TopicText
from hatchleaf.manual.make import Made

SAMPLES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")
STEP: Final = re.compile(r"^\d+\. (.+)$", re.MULTILINE)


@dataclass(frozen=True)
class Order:
    """Every step like `first` stands before every step like `then`."""

    where: str
    first: str
    then: str
    why: str
    units: str = "abc"  # those with a ball on a tow vehicle
    source: str = "common practice, no source"


TABLE: Final = Path(__file__).with_name("safety_order.yml")
ORDERS: Final = tuple(
    Order(where, **row)
    for where, rows in yaml.safe_load(TABLE.read_text("utf-8")).items()
    for row in rows
)


def _by_id(made: Made) -> Mapping[str, TopicText]:
    return {text.topic.id: text for text in made.manual.topics}


def _lists(made: Made, where: str) -> list[list[str]]:
    """Return the lists of steps at *where*: none where the unit has no such place."""
    if "/" not in where:
        return [[step.markdown for step in made.manual.steps[where]]]
    topic, heading = where.split("/")
    text = _by_id(made).get(topic)
    if text is None:
        return []
    whole = "\n".join(part.markdown for part in text.parts)
    sections = re.split(r"^## ", whole, flags=re.MULTILINE)[1:]
    # Two tanks of one kind have a section each, and each its own list.
    found = [STEP.findall(one) for one in sections if one.startswith(heading)]
    return [lines for lines in found if lines]


def _places(lines: Sequence[str], pattern: str) -> list[int]:
    return [at for at, line in enumerate(lines) if re.search(pattern, line)]


def _broken(order: Order, lines: Sequence[str]) -> bool:
    first = _places(lines, order.first)
    then = [at for at in _places(lines, order.then) if at not in first]
    return bool(first) and bool(then) and max(first) > min(then)


def _cases() -> list[object]:
    return [
        pytest.param(order, f"heron-{unit}", id=f"{order.where}-{number}-{unit}")
        for number, order in enumerate(ORDERS)
        for unit in "abcdef"
    ]


@pytest.mark.parametrize(("order", "name"), _cases())
def test_safety_order(order: Order, name: str, guides: Mapping[str, Made]) -> None:
    """Each row of the table, with its why, on each sample that has both halves."""
    lists = _lists(guides[name], order.where)
    if name[-1] in order.units:
        assert lists, f"no such place: {order.where}"
        every = [line for lines in lists for line in lines]
        first, then = _places(every, order.first), _places(every, order.then)
        assert first, f"no step like {order.first!r}"
        assert set(then) - set(first), f"no step like {order.then!r}"
    for lines in lists:
        assert not _broken(order, lines), order.why


@pytest.mark.parametrize("order", ORDERS, ids=lambda one: f"{one.where}: {one.first}")
def test_each_row_would_notice(order: Order, guides: Mapping[str, Made]) -> None:
    """Told backwards, every list breaks its row: no row is blind."""
    lists = _lists(guides[f"heron-{order.units[0]}"], order.where)
    assert any(_broken(order, list(reversed(lines))) for lines in lists)


@pytest.mark.parametrize("name", SAMPLES)
def test_steps_are_in_the_order_of_their_ranks(
    name: str, guides: Mapping[str, Made]
) -> None:
    """The table above reads the printed order, which is by phase and then rank."""
    made = guides[name]
    for journey, steps in made.manual.steps.items():
        phases = [phase.id for phase in made.manual.library.journeys[journey].phases]
        keys = [(phases.index(step.phase), step.rank) for step in steps]
        assert keys == sorted(keys)


def _last_list(made: Made) -> str:
    """Return the journey that ends on the road: a motorhome has nothing to hitch."""
    ids = {page.id for page in made.pages.pages}
    return "before_towing" if "before-towing" in ids else "before_driving"


@pytest.mark.parametrize("name", SAMPLES)
def test_chocks_stay_until_the_very_end(name: str, guides: Mapping[str, Made]) -> None:
    """Chocks go once, near the end of the last list, and leaving never takes them."""
    made = guides[name]
    away = re.compile(r"chocks? away|remove the chocks?|take .*chocks")
    for journey in ("arrive", "leave"):
        assert not any(away.search(s.markdown) for s in made.manual.steps[journey])
    last = made.manual.steps[_last_list(made)]
    assert [s.phase for s in last if away.search(s.markdown)] == ["walk_round"]


SAFE_TO_TOW: Final = re.compile(
    r"\bsafe(?:ly)? to (?:tow|drive|travel|go|roll|move|haul)\b"
    r"|\b(?:is|are|be) (?:now )?(?:safe|ready|fit|good|cleared) (?:to|for) "
    r"(?:tow|the road|travel|driv|go\b|roll)"
    r"|\bgood to go\b|\broad[- ]?worthy\b|\bready to (?:roll|tow|go)\b"
    r"|\byou (?:may|can) (?:now )?(?:tow|drive|set) (?:off|away|now|on)\b"
    r"|\bsafe on the road\b|\ball clear\b|\bnothing can (?:go wrong|happen)\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize("name", SAMPLES)
def test_no_page_says_that_it_is_safe_to_tow(
    name: str, guides: Mapping[str, Made]
) -> None:
    """Nobody who is not standing at the unit can know; the driver decides."""
    made = guides[name]
    said = [
        (page.number, match[0])
        for page in made.pages.pages
        for match in SAFE_TO_TOW.finditer(f"{page.title}. {page.text}")
    ]
    said += [
        (text.topic.number, match[0])
        for text in made.manual.topics
        for sticker in text.stickers
        for match in SAFE_TO_TOW.finditer(f"{sticker.line} {sticker.fact}")
    ]
    assert said == []


@pytest.mark.parametrize(
    "words",
    [
        "Now it is safe to tow.",
        "The unit is ready for the road.",
        "You may drive off.",
        "All ticked: good to go!",
        "Your trailer is now roadworthy.",
    ],
)
def test_the_words_it_looks_for_are_found(words: str) -> None:
    """The pattern finds what a careless writer would say."""
    assert SAFE_TO_TOW.search(words)


@pytest.mark.parametrize("name", SAMPLES)
def test_the_driver_decides(name: str, guides: Mapping[str, Made]) -> None:
    """The list before towing says what a ticked list is worth, before its steps."""
    journey = _last_list(guides[name])
    pages = guides[name].pages.pages
    page = next(p for p in pages if p.id == journey.replace("_", "-"))
    words = page.text.index("driver's decision")
    first = guides[name].manual.steps[journey][0].markdown
    assert words < page.text.index(re.split(r"[:.,\[{&]", first)[0])


def test_no_block_sets_the_force_of_the_brakes(library: Library) -> None:
    """
    Without the maker's value there are no steps, only whom to call.

    Common practice, no source: the gain is set by the controller's own manual.
    """
    found = [
        block.id
        for block in library.blocks.values()
        if re.search(
            r"\bgain\b|force up|wheels just lock",
            block.body.split("???")[0],
            re.IGNORECASE,
        )
    ]
    assert found == []
