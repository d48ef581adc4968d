"""
The guides of the samples as text, whole: a change of content or choice shows in the diff.

As Markdown, not HTML, so that a change of looks breaks nothing.  Run pytest with
``--update-golden`` to write them anew, and read the diff.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from hatchleaf.manual.assemble import Manual
from hatchleaf.manual.make import Made

HERE = Path(__file__).parent


def _lines(manual: Manual) -> Iterator[str]:
    for text in manual.topics:
        yield f"# {text.topic.number:03d} {text.topic.title}"
        if text.where:
            yield f"Where: {text.where}"
        if text.normal:
            yield f"Normal ({text.normal.draw}): {text.normal.markdown}"
        for tile in text.tiles:
            yield f"Tile: {tile.says} | {tile.value} | {tile.note} | {tile.link}"
        for label in text.stickers:
            signal = label.signal or "no signal word"
            yield f"Sticker at {label.place_id}: {signal} | {label.line} | {label.extra}"
        for part in text.parts:
            yield f"<!-- {part.id} -->"
            yield part.markdown.strip()
        yield ""
    for journey, steps in manual.steps.items():
        yield f"# Steps of {journey}"
        for step in steps:
            yield f"{step.phase} {step.rank:02d} [{step.topic:03d}] {step.markdown}"
        yield ""
    yield "# Facts"
    for fact in manual.facts.values():
        marks = " (typical)" * fact.typical + " (brochure)" * fact.brochure
        yield f"{fact.name}: {fact.shown()}{marks} — {fact.basis}"


@pytest.mark.parametrize(
    "name", ["heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f"]
)
def test_guide_is_as_agreed(
    name: str, guides: Mapping[str, Made], request: pytest.FixtureRequest
) -> None:
    """What an owner reads changes only on purpose."""
    text = "\n".join(_lines(guides[name].manual)) + "\n"
    path = HERE / f"{name}.md"
    if request.config.getoption("--update-golden"):
        path.write_text(text, "utf-8")
    assert text == path.read_text("utf-8")
