"""Drawings that a block places in its text: how a thing stands in its states."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from hatchleaf.blocks.text import Fault, Shown, escaped
from hatchleaf.drawings.stands import STANDS, Stand, panel
from hatchleaf.problems import listed, suggestion
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.spec.model.water import ModePanel

PANEL: Final = "inlet_panel"


def drawn(spec: UnitSpec) -> Callable[..., Shown]:
    """Return ``drawing(name, state ...)`` for the texts of a unit."""

    def drawing(name: object, *states: object) -> Shown:
        known = _states_of(spec, str(name))
        if not states:
            raise Fault(f"drawing '{name}' needs its states", listed(known))
        stands = []
        for state in map(str, states):
            if state not in known:
                raise Fault(
                    f"drawing '{name}' has no state '{state}'",
                    listed(known),
                    suggestion(state, known),
                )
            stands.append(known[state])
        figures = "".join(_figure(stand) for stand in stands)
        plain = " ".join(f"{stand.says}: {stand.words}" for stand in stands)
        # A block of its own: Markdown leaves the inside alone.
        return Shown(f'\n<div class="stands">{figures}</div>\n', plain)

    return drawing


def _states_of(spec: UnitSpec, name: str) -> dict[str, Stand]:
    if name == PANEL:
        inlets = spec.water.inlets if isinstance(spec.water.inlets, tuple) else ()
        for inlet in inlets:
            if isinstance(inlet, ModePanel):
                modes = tuple(inlet.modes)
                return {mode: panel(modes, mode) for mode in modes}
        raise Fault(
            "this unit has no inlet with a panel of modes",
            hint="a condition of the block should keep it off this unit",
        )
    if name not in STANDS:
        known = [*STANDS, PANEL]
        raise Fault(
            f"there is no drawing '{name}'", listed(known), suggestion(name, known)
        )
    return dict(STANDS[name])


def _figure(stand: Stand) -> str:
    says, words = escaped(stand.says), escaped(stand.words)
    return (
        f'<figure class="stand"><svg viewBox="{stand.box}" aria-hidden="true">'
        f"{stand.lines}</svg>"
        f"<figcaption><strong>{says}</strong> {words}</figcaption></figure>"
    )
