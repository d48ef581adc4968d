"""
Reviews: which texts a qualified person has to read, and which reviews still hold.

A review names the fingerprint of the text that was read.  When the text changes, the
review is stale and counts for nothing, whoever changed it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final, Literal, TypeAlias

from pydantic import Field

from hatchleaf.blocks.forms import validated
from hatchleaf.blocks.front_matter import Form, ReviewForm
from hatchleaf.blocks.model import Block, Review, Topic, Unreviewed, Worded
from hatchleaf.problems import Problem, ProblemsFound, suggestion
from hatchleaf.spec.source import read
from hatchleaf.spec.tree import Node

LANGUAGE: Final = "en"
"""The language that all texts are in."""

RULES: Final = "review.yml"
"""Which topics need a review."""

REVIEWED: Final = "reviewed.yml"
"""A workspace's reviews by block and language, so that no block need be copied."""

UNJUDGED: Final = "what nobody has judged"
"""Why a topic needs a review that the rules do not name."""

Hazard: TypeAlias = Literal[
    "gas", "mains", "brakes", "tires", "lifting", "weights", "emergencies"
]

_NOT_OF_THE_TEXT: Final = frozenset(
    {"id", "order", "ask", "words", "sources", "reviewed", "replaces"}
)
"""Front matter that a reader of the guide never sees, or sees only in a search."""


class RulesForm(Form):
    """The file `review.yml`."""

    needed: dict[Hazard, tuple[str, ...]] = Field(default_factory=dict)
    not_needed: tuple[str, ...] = ()


class ReviewedForm(Form):
    """The file `reviewed.yml`, below a key of its own."""

    reviewed: dict[str, dict[str, ReviewForm]]


@dataclass
class Rules:
    """Topic -> what it speaks of that can hurt; empty for a topic that is free."""

    hazards: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def of(self, topics: Iterable[str]) -> tuple[str, ...]:
        """Return the hazards of *topics*; one that nobody has judged is one."""
        found = (self.hazards.get(topic, (UNJUDGED,)) for topic in topics)
        return tuple(dict.fromkeys(hazard for some in found for hazard in some))


def read_rules(
    folders: Sequence[Path],
    root: Path,
    topics: Mapping[str, Topic],
    problems: list[Problem],
) -> Rules:
    """
    Return which topics need a review; a workspace adds to the built-in rules.

    Args:
        folders: The built-in content first.
        root: The workspace; places are named from here.
        topics: All topics there are.
        problems: What is wrong is added here.
    """
    rules = Rules()
    for layer, folder in enumerate(folders):
        path = folder / RULES
        if layer and not path.exists():
            continue
        try:
            tree = read(path, root)
            form = validated(RulesForm, tree)
        except ProblemsFound as found:
            problems.extend(found.problems)
            continue
        given: dict[str, tuple[str, ...]] = {}
        for hazard, names in form.needed.items():
            for name in names:
                given[name] = (*given.get(name, ()), hazard)
        place = tree.place_of("not_needed")
        for name in form.not_needed:
            if name in given or rules.hazards.get(name):
                what = f"'{name}' needs a review"
                problems.append(Problem(place, "not_needed", what, hint="take it out"))
            given.setdefault(name, ())
        for name in given.keys() - topics.keys():
            place = tree.place_of("needed" if given[name] else "not_needed")
            what = f"'{name}' is not a topic"
            hint = suggestion(name, topics)
            problems.append(Problem(place, "", what, hint=hint))
        for name, hazards in given.items():
            rules.hazards[name] = (*rules.hazards.get(name, ()), *hazards)
    return rules


def reviews_of(forms: Mapping[str, ReviewForm], tree: Node) -> dict[str, Review]:
    """
    Return the reviews of one block.

    Args:
        forms: By language.
        tree: Where they stand.

    Raises:
        ProblemsFound: A language that no text is in.
    """
    other = [name for name in forms if name != LANGUAGE]
    if other:
        raise ProblemsFound(
            Problem(
                tree.place_of(name),
                f"reviewed.{name}",
                f"there is no text in the language '{name}'",
                LANGUAGE,
            )
            for name in other
        )
    return {
        name: Review(form.role, form.date, form.against, form.text, tree.place_of(name))
        for name, form in forms.items()
    }


def wording(tree: Node, body: str) -> str:
    """
    Return the fingerprint of all that a review is about.

    Args:
        tree: The front matter.  How it is laid out does not matter, nor do search
            words, sources and the review itself.
        body: The text below it.
    """
    plain = tree.plain()
    kept = {key: plain[key] for key in sorted(plain) if key not in _NOT_OF_THE_TEXT}
    whole = json.dumps([kept, body], ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(whole.encode()).hexdigest()[:12]


def with_sentences(
    blocks: Mapping[str, Block], sentences: Mapping[str, Worded]
) -> dict[str, Block]:
    """
    Return *blocks* with the single sentences that they call for in their wording.

    A review of a block is stale when such a sentence changes, as if it stood there.

    Args:
        blocks: All blocks, by id.
        sentences: Single sentences that several texts call for, by name.
    """
    made = dict(blocks)
    for name, block in blocks.items():
        called = sorted(block.calls & sentences.keys())
        if called:
            whole = json.dumps([block.wording, [sentences[one].text for one in called]])
            digest = hashlib.sha256(whole.encode()).hexdigest()[:12]
            made[name] = replace(block, wording=digest)
    return made


def laid_on(
    blocks: Mapping[str, Block],
    folders: Sequence[Path],
    root: Path,
    problems: list[Problem],
) -> dict[str, Block]:
    """
    Return *blocks* with the reviews that stand in files of their own.

    Args:
        blocks: All blocks, by id.
        folders: Where such a file may be.
        root: The workspace; places are named from here.
        problems: What is wrong is added here.
    """
    made = dict(blocks)
    for folder in folders:
        path = folder / REVIEWED
        if not path.exists():
            continue
        try:
            tree = read(path, root)
            # The file's keys are ids: one key above them makes a form of it.
            whole = Node(tree.place, {"reviewed": tree})
            form = validated(ReviewedForm, whole)
        except ProblemsFound as found:
            problems.extend(found.problems)
            continue
        for name, forms in form.reviewed.items():
            if name not in made:
                what, hint = f"there is no block '{name}'", suggestion(name, made)
                problems.append(Problem(tree.keys[name], name, what, hint=hint))
                continue
            try:
                given = reviews_of(forms, tree.fields[name])
            except ProblemsFound as found:
                problems.extend(found.problems)
            else:
                block = made[name]
                made[name] = replace(block, reviewed={**block.reviewed, **given})
    return made


def still_to_review(blocks: Mapping[str, Block], rules: Rules) -> dict[str, Unreviewed]:
    """
    Return the blocks that need a review and have none that holds.

    Args:
        blocks: All blocks, by id.
        rules: Which topics need a review.

    Returns:
        By id.  A text on several pages needs a review when one of them does; a shared
        text when a page that calls for it does.
    """
    pages = {
        block.id: {block.topic, *block.also}
        for block in blocks.values()
        if not block.shared
    }
    for block in blocks.values():
        for called in block.calls:
            pages.setdefault(called, set()).update(pages.get(block.id, ()))
    waiting = {}
    for name, block in blocks.items():
        hazards = rules.of(sorted(pages.get(name, ())))
        review = block.reviewed.get(LANGUAGE)
        if hazards and (review is None or review.text != block.wording):
            waiting[name] = Unreviewed(hazards, review)
    return waiting
