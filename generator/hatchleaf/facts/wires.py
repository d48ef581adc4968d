"""Volts lost in cords, and the colors of the fuses that this unit states."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from hatchleaf.engineering import shore_power, wiring
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, number, word
from hatchleaf.spec.model.ac import ShoreCord
from hatchleaf.spec.model.dc import SolarPort
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import quantity, shown

EXTENSION_FEET: Final = 50
EXTENSION_GAUGES: Final = (14, 12, 10)
_HOUSE_AMPS: Final = 15.0
_ON_HOUSE: Final = ("5_15", "5_20", "tt_30")
_SOURCE: Final = "nec-table-8"


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down what cords lose, and the colors of blade fuses."""
    if spec.ac.shore == "unknown":
        sheet.stop(["ac.shore"], "shore.cord_drop", "shore.extension_drop")
    shore = fitted(spec.ac.shore)
    if shore:
        _cord(shore, sheet)
        if shore.plug in _ON_HOUSE:
            _extension(shore, sheet)
    panel = fitted(spec.dc.panel)
    if panel and panel.kind == "blade_fuses":
        for item, words, fuse in _fuses(spec):
            _color(item, words, fuse, sheet)


def _cord(shore: ShoreCord, sheet: Sheet) -> None:
    gauge = wiring.CORD_GAUGE.get(shore.plug)
    length = number("ac.shore.cord_length", shore.cord_length)
    amps = number("ac.shore.service", shore.service)
    if gauge is None or sheet.lacks([length, amps], "shore.cord_drop"):
        return
    held = shore_power.continuous(amps.quantity)
    sheet.add(
        "shore.cord_drop",
        wiring.drop(held, gauge, length.quantity),
        "volt",
        how="up",
        digits=2,
        basis=(
            f"{shown(held, 'ampere')} out and back through {length.text} of copper of "
            f"{gauge} gauge, typical for such a plug."
        ),
        given=[word("ac.shore.plug", shore.plug), length, amps],
        source=_SOURCE,
        typical=True,
    )


def _extension(shore: ShoreCord, sheet: Sheet) -> None:
    held = shore_power.continuous(quantity(_HOUSE_AMPS, "ampere"))
    for gauge in EXTENSION_GAUGES:
        sheet.add(
            f"shore.extension_drop[{gauge} gauge]",
            wiring.drop(held, gauge, quantity(EXTENSION_FEET, "foot")),
            "volt",
            how="up",
            digits=2,
            basis=(
                f"{shown(held, 'ampere')}, which is 80 % of a {_HOUSE_AMPS:.0f} A "
                f"outlet, out and back through {EXTENSION_FEET} ft of copper."
            ),
            given=[word("ac.shore.plug", shore.plug)],
            source=_SOURCE,
        )


def _fuses(spec: UnitSpec) -> Iterator[tuple[str, str, Given]]:
    for port in items(spec.dc.solar):
        if isinstance(port, SolarPort):
            fuse = number(f"dc.solar[{port.id}].fuse", port.fuse)
            yield f"solar-{port.id}", "solar port", fuse
    for one in items(spec.awnings):
        reading = getattr(one, "fuse", "none")
        if not isinstance(reading, str):
            given = number(f"awnings[{one.id}].fuse", reading)
            yield f"awning-{one.id}", f"{one.id} awning", given


def _color(item: str, words: str, fuse: Given, sheet: Sheet) -> None:
    name = f"fuses.color[{item}]"
    if sheet.lacks([fuse], name):
        return
    color = wiring.fuse_color(fuse.quantity)
    if color:
        sheet.add(
            name,
            f"{fuse.text}, {color}",
            basis=f"A common blade fuse of {fuse.text} is {color}.",
            given=[fuse, word("dc.panel.kind", "blade_fuses")],
            source="iso-8820-blade-fuses",
            label=words,
        )
