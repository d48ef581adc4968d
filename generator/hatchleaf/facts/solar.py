"""Solar facts: what fuse and controller must carry, what the roof gives in a day."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from hatchleaf.engineering import solar
from hatchleaf.facts.sheet import Given, Sheet, items, number, plus, total, word
from hatchleaf.spec.model.dc import RoofSolar, SolarPort
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, quantity, shown

FITS: Final = "fits"
TOO_SMALL: Final = "too small"
MONTHS: Final = {"June": 6, "December": 12}
LATITUDES: Final = (30, 40, 50)
USUAL_LATITUDE: Final = {"uk": 50, "eu": 50, "au": 30}
"""Where most units of a market stand; 40 of the others."""
_NOMINAL: Final = 12.0
_CODE: Final = "nec-690"


def roof(spec: UnitSpec) -> tuple[RoofSolar, ...]:
    """Return the panels that are fixed to the roof."""
    return tuple(one for one in items(spec.dc.solar) if isinstance(one, RoofSolar))


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all solar facts; a port tells what may be plugged into it."""
    if spec.dc.solar == "unknown":
        sheet.stop(["dc.solar"], "solar.most_isc", "solar.day_energy")
    for one in items(spec.dc.solar):
        # What fuse a panel wants is a rule of the code of North America.
        coded = spec.body.market in ("us", "ca")
        if isinstance(one, SolarPort):
            _port(one, sheet, coded=coded)
        else:
            if coded:
                _circuit(one, sheet)
            _controller(one, sheet)
    _day(spec, sheet)


def _port(port: SolarPort, sheet: Sheet, *, coded: bool) -> None:
    fuse = number(f"dc.solar[{port.id}].fuse", port.fuse)
    name = f"solar.most_isc[{port.id}]"
    if coded and not sheet.lacks([fuse], name):
        sheet.add(
            name,
            solar.most_short_circuit(fuse.quantity),
            "ampere",
            how="down",
            digits=2,
            basis=(
                f"{fuse.text} of the fuse over 1.56: the code takes 125 % of the "
                "short-circuit current, and 125 % of that for a fuse."
            ),
            given=[fuse],
            source=_CODE,
        )
    if isinstance(port.controller_amps, Reading):
        given = number(f"dc.solar[{port.id}].controller_amps", port.controller_amps)
        name = f"solar.most_watts[{port.id}]"
        if not sheet.lacks([given], name):
            sheet.add(
                name,
                given.quantity * quantity(_NOMINAL, "volt"),
                "watt",
                how="down",
                digits=2,
                basis=f"{given.text} of the controller at {_NOMINAL:.0f} V.",
                given=[given],
                source="own-labels",
            )


def _circuit(panel: RoofSolar, sheet: Sheet) -> None:
    at = f"dc.solar[{panel.id}]"
    isc, fuse = number(f"{at}.isc", panel.isc), number(f"{at}.fuse", panel.fuse)
    needed, fits = f"solar.circuit_current[{panel.id}]", f"solar.fuse[{panel.id}]"
    if sheet.lacks([isc], needed, fits):
        return
    current = solar.circuit_current(isc.quantity)
    sheet.add(
        needed,
        current,
        "ampere",
        how="up",
        digits=3,
        basis=(
            f"{isc.text} of short-circuit current times 1.25, as sun can exceed the "
            "rating, times 1.25 for a fuse in use for hours."
        ),
        given=[isc],
        source=_CODE,
    )
    if not sheet.lacks([fuse], fits):
        sheet.add(
            fits,
            FITS if fuse.quantity >= current else TOO_SMALL,
            basis=f"Fuse of {fuse.text} against {shown(current, 'ampere', how='up')}.",
            given=[isc, fuse],
            source=_CODE,
        )


def _controller(panel: RoofSolar, sheet: Sheet) -> None:
    at = f"dc.solar[{panel.id}]"
    watts = number(f"{at}.watts", panel.watts)
    needed = f"solar.controller_current[{panel.id}]"
    fits = f"solar.controller[{panel.id}]"
    if sheet.lacks([watts], needed, fits):
        return
    current = (watts.quantity / quantity(_NOMINAL, "volt")).to("ampere")
    sheet.add(
        needed,
        current,
        "ampere",
        how="up",
        digits=2,
        basis=f"{watts.text} at {_NOMINAL:.0f} V: the most the controller puts out.",
        given=[watts],
        source="own-labels",
    )
    if not isinstance(panel.controller_amps, Reading):
        return
    rated = number(f"{at}.controller_amps", panel.controller_amps)
    if not sheet.lacks([rated], fits):
        sheet.add(
            fits,
            FITS if rated.quantity >= current else TOO_SMALL,
            basis=(
                f"Controller of {rated.text} against "
                f"{shown(current, 'ampere', how='up')}."
            ),
            given=[watts, rated],
            source="own-labels",
        )


def day_energy(
    watts: Sequence[Given], month: str, latitude: int, market: str
) -> tuple[str, Quantity]:
    """Return the item in words and the typical yield of a day of all panels."""
    south = market == "au"
    item = f"{month} at {latitude}° {'south' if south else 'north'}"
    signed = -latitude if south else latitude
    whole = total((one.quantity for one in watts), "watt")
    return item, solar.day_energy(whole, latitude=signed, month=MONTHS[month])


def _day(spec: UnitSpec, sheet: Sheet) -> None:
    panels = roof(spec)
    watts = [number(f"dc.solar[{one.id}].watts", one.watts) for one in panels]
    names = ("solar.day_energy", "solar.day_charge")
    if not panels or sheet.lacks(watts, *names):
        return
    market = word("body.market", spec.body.market)
    for month in MONTHS:
        for latitude in LATITUDES:
            item, energy = day_energy(watts, month, latitude, market.word)
            _yield(item, energy, (*watts, market), sheet)


def _yield(item: str, energy: Quantity, given: tuple[Given, ...], sheet: Sheet) -> None:
    of = plus([one.text for one in given[:-1]])
    basis = (
        f"{of} lying flat under a clear sky, less 14 % of losses, and "
        f"{solar.WEATHER * 100:.0f} % of that for typical clouds and trees."
    )
    sheet.add(
        f"solar.day_energy[{item}]",
        energy,
        "watt_hour",
        how="down",
        digits=2,
        basis=basis,
        given=given,
        source="pvlib-clear-sky",
        typical=True,
    )
    sheet.add(
        f"solar.day_charge[{item}]",
        (energy / quantity(_NOMINAL, "volt")).to("ampere_hour"),
        "ampere_hour",
        how="down",
        digits=2,
        basis=f"{basis.removesuffix('.')}, at {_NOMINAL:.0f} V.",
        given=given,
        source="pvlib-clear-sky",
        typical=True,
    )
