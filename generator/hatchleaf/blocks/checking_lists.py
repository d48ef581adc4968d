"""What the library's own lists may say: real topics, fields, kinds and journeys."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hatchleaf.blocks.model import ANY, Block, Journey, Topic
from hatchleaf.blocks.registry import Registry
from hatchleaf.problems import Place, Problem, listed, suggestion
from hatchleaf.spec.paths import FieldForm


def check_registry(
    registry: Registry, forms: Mapping[str, FieldForm]
) -> Iterator[Problem]:
    """Yield what is wrong with the registry's own references."""
    for topic in registry.topics.values():
        yield from _parts(topic, registry.places[topic.id], forms)
    for journey in registry.journeys.values():
        if journey.topic not in registry.topics:
            yield Problem(
                Place("content_blocks/journeys.yml"),
                f"{journey.id}.topic",
                f"'{journey.topic}' is not a topic",
                "",
                suggestion(journey.topic, registry.topics),
            )
        if journey.like:
            yield from _like(journey, registry)


def _like(journey: Journey, registry: Registry) -> Iterator[Problem]:
    """Yield what is wrong with the journey that *journey* takes rows from."""
    place = Place("content_blocks/journeys.yml")
    field = f"{journey.id}.like"
    others = {name for name, one in registry.journeys.items() if not one.like}
    base = registry.journeys.get(journey.like)
    if base is None or base.like:
        what = f"'{journey.like}' is not a journey of its own"
        yield Problem(
            place, field, what, listed(others), suggestion(journey.like, others)
        )
        return
    phases = [phase.id for phase in base.phases]
    for name in journey.leaves_out:
        if name not in phases:
            what = f"'{name}' is not a phase of '{base.id}'"
            yield Problem(place, field, what, listed(phases), suggestion(name, phases))
    own = [phase.id for phase in journey.phases]
    kept = [name for name in phases if name not in journey.leaves_out]
    for name in kept:
        if name not in own:
            what = f"rows of phase '{name}' of '{base.id}' would have no place"
            hint = f"add the phase to '{journey.id}', or leave it out"
            yield Problem(place, field, what, hint=hint)
    # Its order is safety: what is taken keeps the order that it has.
    if [name for name in own if name in kept] != [n for n in kept if n in own]:
        what = f"the phases of '{base.id}' stand in another order"
        yield Problem(place, field, what, listed(kept))


def check_shared(registry: Registry, blocks: Mapping[str, Block]) -> Iterator[Problem]:
    """Yield what is wrong with the single sentences that texts call for by name."""
    for name, text in registry.shared.items():
        if name in blocks:
            what = f"a block is called '{name}' too"
            yield Problem(text.place, name, what, hint="take another name")
        if not text.text.strip():
            yield Problem(text.place, name, "there is no text", "one sentence")


def _parts(
    topic: Topic, place: Place, forms: Mapping[str, FieldForm]
) -> Iterator[Problem]:
    for part in topic.parts:
        by = () if part.by == ANY else (f"{part.path}.{part.by}",)
        at = () if part.place_field == "none" else (f"{part.path}.{part.place_field}",)
        for path in (part.path, *at, *by):
            if path not in forms:
                yield Problem(
                    place,
                    topic.id,
                    f"no unit's file has '{path}'",
                    "",
                    suggestion(path, forms),
                )
        for kind in part.kinds:
            allowed = forms[f"{part.path}.{part.by}"].words
            if kind not in allowed:
                yield Problem(
                    place,
                    topic.id,
                    f"'{kind}' is no {part.by} of {part.path}",
                    listed(allowed),
                )
