"""All hatches of a unit that have a page, for its map."""

from __future__ import annotations

from hatchleaf.drawings.unit_map import Hatch
from hatchleaf.manual.assemble import Manual
from hatchleaf.manual.places import in_words


def hatches_of(manual: Manual) -> tuple[Hatch, ...]:
    """
    Return every place that a topic speaks of.

    Args:
        manual: The assembled guide.
    """
    return tuple(
        Hatch(
            place,
            text.topic.number,
            text.topic.title,
            in_words(place, manual.spec.body.market),
        )
        for text in manual.topics
        for place in text.places
    )
