"""The steps of the journeys, filled in and put in order: safety first, then the way."""

from __future__ import annotations

import re
from dataclasses import dataclass

from hatchleaf.blocks.choose import Selection
from hatchleaf.blocks.conditions import values
from hatchleaf.blocks.model import Library, Step
from hatchleaf.blocks.text import escaped
from hatchleaf.manual.filling import Filler
from hatchleaf.manual.places import walk_key
from hatchleaf.manual.wording import Wording
from hatchleaf.spec.model.unit import PlaceOnUnit


@dataclass(frozen=True)
class StepText:
    """One step of a journey, filled in, and the block that it comes from."""

    phase: str
    rank: int
    markdown: str
    block: str
    topic: int


def journey_steps(
    library: Library, selection: Selection, filler: Filler
) -> dict[str, tuple[StepText, ...]]:
    """
    Return the steps of each journey by its id, in order.

    By phase, then by rank; of one rank, those with a place come in the order of a
    walk round the unit, and each says which place it is.
    """
    made: dict[str, tuple[StepText, ...]] = {}
    for journey in library.journeys.values():
        order = {phase.id: index for index, phase in enumerate(journey.phases)}
        rows: dict[tuple[str, str], StepText] = {}
        stops: dict[tuple[str, str], tuple[tuple[int, float], str]] = {}
        for one in selection.chosen:
            taken = [step for step in one.block.steps if journey.takes(step)]
            names = filler.wording.names(one) if taken else {}
            for step in taken:
                text = filler.markdown(step.step, names)
                number = library.topics[one.block.topic].number
                spot = _station(step, one.item, filler.wording)
                if spot:
                    text = f"**{escaped(spot.name)}:** {text}"
                    stops[(step.phase, text)] = (walk_key(spot), spot.name)
                row = StepText(step.phase, step.rank, text, one.block.id, number)
                # Two cylinders, one step: the same words are said once.
                rows.setdefault((step.phase, re.sub(r"\s+", " ", text)), row)
        made[journey.id] = tuple(
            sorted(
                rows.values(),
                key=lambda row: (
                    order[row.phase],
                    row.rank,
                    # Of one rank, what has a place comes in the order of a walk round.
                    stops.get((row.phase, row.markdown), ((-1, 0.0), "")),
                    row.block,
                ),
            )
        )
    return made


def _station(step: Step, item: object, wording: Wording) -> PlaceOnUnit | None:
    """Return where *step* is done; None where it has no place, or nobody knows it."""
    if not step.at:
        return None
    own = step.at.startswith("it.")
    found = values(item if own else wording.spec, step.at.removeprefix("it."))
    places = (wording.places.get(str(value)) for value in found)
    return next((place for place in places if place), None)
