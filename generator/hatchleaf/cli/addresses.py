"""Whether every printed sticker still leads somewhere: the gate of a build."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from hatchleaf.cli.edge import Unit
from hatchleaf.library import UNITS
from hatchleaf.problems import Problem, ProblemsFound
from hatchleaf.workspace import Workspace


def refuse_dead_addresses(workspace: Workspace, units: Iterable[Unit]) -> None:
    """
    Refuse a build that would leave a printed sticker without its page.

    Raises:
        ProblemsFound: Every such address of all units, or a damaged ledger.
    """
    problems: list[Problem] = []
    for unit in units:
        folder = workspace.root / UNITS / "printed" / unit.made.pages.unit.code
        if not folder.is_dir():
            # Nothing was printed, and the ledger is slow to import.
            continue
        try:
            problems.extend(_dead(workspace, unit))
        except ProblemsFound as found:
            problems.extend(found.problems)
    if problems:
        raise ProblemsFound(problems)


def _dead(workspace: Workspace, unit: Unit) -> Iterator[Problem]:
    from hatchleaf import ledger, ledger_files  # noqa: PLC0415  # slow

    pages = unit.made.pages
    folder = workspace.root / UNITS / "printed" / pages.unit.code
    state = ledger.fold(ledger_files.read(folder, workspace.root))
    for topic, address in sorted(state.addresses.items()):
        leads_to = state.leads_to(topic)
        if not address.payloads or leads_to is None or leads_to in pages.by_number:
            continue
        yield Problem(
            unit.loaded.place_of("code"),
            "code",
            f"stickers with the number {topic:03d} are printed, and this guide has "
            f"no page {leads_to:03d}",
            hint="put the part back into the unit's file: a printed address must "
            "never end at nothing",
        )
    host = workspace.settings.host
    if state.hosts and host not in state.hosts:
        yield Problem(
            unit.loaded.place_of("code"),
            "code",
            f"its stickers are printed with the host {', '.join(state.hosts)}, and "
            f"mkdocs.yml names {host}",
            hint="keep the old host alive; print new stickers with the new one first",
        )
