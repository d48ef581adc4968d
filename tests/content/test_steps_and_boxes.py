"""
Every step is one thing to do, and every warning says what, why and how to avoid it.

As IEC/IEEE 82079-1 asks of instructions for use (from memory): one action a step, and
warnings that name the hazard, its consequence and how to avoid it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import pytest

from content.imperatives import actions, is_imperative
from content.sentences import MARK, expanded, without_jinja
from hatchleaf.blocks.model import Library
from hatchleaf.manual.make import Made

MOST_ACTIONS: Final = 2
"""Of which the second belongs to the first: "Press and hold", "Shut it and lock it"."""
FEWEST_SENTENCES: Final = 2
"""Beside the title, which names the hazard: what happens, and how to avoid it."""
STEP: Final = re.compile(r"^\s*\d+\. (.+)$", re.MULTILINE)
BOX: Final = re.compile(r'^( *)!!! (\w+)(?: "(.*)")?\s*$')


@dataclass(frozen=True)
class Box:
    """A box with a signal word."""

    signal: str
    title: str
    lines: tuple[str, ...]

    @property
    def sentences(self) -> list[str]:
        """Return what it says beside its title."""
        text = " ".join(MARK.sub("", line) for line in self.lines if line)
        return [one for one in re.split(r"(?<=[.!?])\s+", text) if one]


def boxes(markdown: str) -> Iterator[Box]:
    """Yield the boxes of *markdown*."""
    lines = markdown.split("\n")
    for index, line in enumerate(lines):
        found = BOX.match(line)
        if not found:
            continue
        inside = []
        for below in lines[index + 1 :]:
            if below.strip() and not below.startswith(f"{found[1]}    "):
                break
            inside.append(below.strip())
        yield Box(found[2], found[3] or "", tuple(inside))


def faults(box: Box) -> list[str]:
    """Return what a box with *signal* danger or warning lacks."""
    if box.signal not in ("danger", "warning"):
        return []
    lacks = {
        "a title": box.title,
        "hazard, consequence, avoidance": len(box.sentences) >= FEWEST_SENTENCES,
        "how to avoid it": any(is_imperative(one) for one in box.sentences),
    }
    return [what for what, there in lacks.items() if not there]


def _bodies(library: Library, guides: Mapping[str, Made]) -> Iterator[tuple[str, str]]:
    for block in library.blocks.values():
        if not block.mandated:
            yield block.id, without_jinja(expanded(library, block.body))
    for made in guides.values():
        for text in made.manual.topics:
            for part in text.parts:
                if not library.blocks[part.block].mandated:
                    yield part.id, part.markdown


def _steps(library: Library, guides: Mapping[str, Made]) -> Iterator[tuple[str, str]]:
    for name, body in _bodies(library, guides):
        yield from ((name, step) for step in STEP.findall(body))
    for block in library.blocks.values():
        for row in block.steps:
            yield block.id, without_jinja(expanded(library, row.step.text))


def test_every_step_is_an_order(library: Library, guides: Mapping[str, Made]) -> None:
    """It begins with a verb, with Do not or Never, or with the case and then a verb."""
    steps = set(_steps(library, guides))
    assert len(steps) > 1000
    wrong = {
        (name, step)
        for name, step in steps
        if not is_imperative(re.split(r"(?<=[.!])\s", step)[0])
    }
    assert wrong == set(), "a verb may be missing in content/imperatives.py"


def test_every_step_is_one(library: Library, guides: Mapping[str, Made]) -> None:
    """A second thing to do is a second step, which can be ticked and found again."""
    many = {
        (name, step)
        for name, step in _steps(library, guides)
        if actions(step) > MOST_ACTIONS or " and then " in step
    }
    assert many == set()


def test_every_warning_is_whole(library: Library, guides: Mapping[str, Made]) -> None:
    """Hazard and consequence, and what to do or never to do."""
    found = [
        (name, box) for name, text in _bodies(library, guides) for box in boxes(text)
    ]
    assert len(found) > 300
    broken = {(name, box.title, *why) for name, box in found if (why := faults(box))}
    assert broken == set()


def test_no_step_is_empty(guides: Mapping[str, Made]) -> None:
    """A shared text whose condition fails leaves no number, title or box behind."""
    empty = [
        part.id
        for made in guides.values()
        for text in made.manual.topics
        for part in text.parts
        if re.search(r'^ *\d+\.\s*$|^ *[!?]{3} \w+ ""', part.markdown, re.MULTILINE)
    ]
    assert empty == []


@pytest.mark.parametrize(
    "step",
    [
        "Turn the handle to CITY.",
        "Do not plug in.",
        "Never stand in water.",
        "If it trips again, leave it off and call.",
        "With the parking brake set, take all chocks away.",
        "Driving: stop off the road.",
        "No sound? See to its power.",
        "**Shore power**: switch off the breaker.",
        "Slowly open the valve.",
    ],
)
def test_orders_are_known(step: str) -> None:
    """A verb first, a refusal, a case and then a verb."""
    assert is_imperative(step)


@pytest.mark.parametrize(
    "step",
    [
        "The cable is clipped to the vehicle.",
        "Both legs are up.",
        "You should turn the valve.",
        "Breaker off.",
        "It is now time for water.",
    ],
)
def test_statements_are_told_apart(step: str) -> None:
    """What is so, and what one should, is no order."""
    assert not is_imperative(step)


@pytest.mark.parametrize(
    ("step", "count"),
    [
        ("Open the tap.", 1),
        ("Shut the door and lock it.", 2),
        ("Shut the valve, take off the hose and then rinse it and stow it.", 3),
        ("Open the tap. Turn on the pump. Wait.", 3),
        ("Open the tap. If you smell gas, leave.", 1),
    ],
)
def test_actions_are_counted(step: str, count: int) -> None:
    """By the joints: full stop, semicolon, and, then."""
    assert actions(step) >= count
    assert (actions(step) > MOST_ACTIONS) == (count > MOST_ACTIONS)


@pytest.mark.parametrize(
    ("text", "lacks"),
    [
        ('!!! warning "It burns"\n    Steam burns. Stand to the side.', []),
        ("!!! warning\n    Steam burns. Stand to the side.", ["a title"]),
        ('!!! danger "It kills"\n    It has no smell. It kills.', ["how to avoid it"]),
        (
            '!!! danger "It kills"\n    Go out.\nThis is below the box. Stand clear.',
            ["hazard, consequence, avoidance"],
        ),
        ('!!! notice "It drips"\n    A little.', []),
    ],
)
def test_what_a_box_lacks_is_told(text: str, lacks: list[str]) -> None:
    """Boxes for people are held to all three; a notice is about things."""
    (box,) = boxes(text)
    assert faults(box) == lacks
