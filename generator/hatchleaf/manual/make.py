"""From a checked unit and a library to its manual and pages: the whole middle."""

from __future__ import annotations

from collections.abc import MutableMapping
from dataclasses import dataclass

from hatchleaf.blocks.choose import Selection, choose, shortcomings
from hatchleaf.blocks.markets import for_market
from hatchleaf.blocks.model import Library
from hatchleaf.facts.model import Facts
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.assemble import Manual, assemble
from hatchleaf.manual.model import Pages
from hatchleaf.manual.pages import make_pages
from hatchleaf.manual.photos import Album, album
from hatchleaf.photos.model import Sources
from hatchleaf.problems import Problem, ProblemsFound
from hatchleaf.spec.load import LoadedUnit


@dataclass(frozen=True)
class Made:
    """Everything that the outputs of one unit rest on."""

    facts: Facts
    selection: Selection
    manual: Manual
    pages: Pages


def make(
    loaded: LoadedUnit,
    library: Library,
    *,
    dealer_name: str,
    dealer_phone: str,
    kept: MutableMapping[str, str] | None = None,
    photos: Sources | None = None,
    statement_checked: str = "",
) -> Made:
    """
    Return the manual and the pages of a unit.

    Args:
        loaded: The unit, checked, with the places of its fields.
        library: All content, read and laid over.
        dealer_name: Who hands the unit over.
        dealer_phone: The dealership's number.
        kept: Converted fragments of earlier builds; see `make_pages`.
        photos: The files of the unit's photos; without, it is a guide in words alone.
        statement_checked: The day in words on which the dealership compared the
            federal statement on safety defects with its rule; empty: never.

    Raises:
        ProblemsFound: What is missing or cannot be filled in, all of it.
    """
    spec = loaded.spec
    library = for_market(library, spec.body.market)
    facts = work_out(spec)
    selection = choose(library, spec, facts)
    problems: list[Problem] = list(shortcomings(selection, library, loaded))
    pictured = album(loaded, library, selection.topics, photos) if photos else Album()
    problems.extend(pictured.problems)
    manual: Manual | None = None
    try:
        manual = assemble(
            library,
            spec,
            facts,
            selection,
            dealer_name=dealer_name,
            dealer_phone=dealer_phone,
            statement_checked=statement_checked,
        )
        pages = make_pages(
            manual,
            dealer_name=dealer_name,
            dealer_phone=dealer_phone,
            kept=kept,
            album=pictured,
        )
    except ProblemsFound as found:
        raise ProblemsFound([*problems, *found.problems]) from None
    if problems:
        raise ProblemsFound(problems)
    return Made(facts, selection, manual, pages)
