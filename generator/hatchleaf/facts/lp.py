"""LP gas facts: what is stored, what burns it, how long it lasts."""

from __future__ import annotations

from hatchleaf.engineering import furnace, propane
from hatchleaf.facts import lp_cylinders, lp_use
from hatchleaf.facts.burners import Burner, Gas, burners
from hatchleaf.facts.sheet import (
    Sheet,
    capital,
    fitted,
    number,
    plus,
    same_counted,
    stated,
    total,
    whole,
)
from hatchleaf.spec.model.gas import Cylinders, FixedTank
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import quantity, shown

_SOURCE = "nfpa-58-properties"
_HEAT = "at 21,548 BTU per lb"
_OF_GAS = ("lp.stored", "lp.energy", "lp.cylinder_energy")


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all LP facts; a unit without LP has none."""
    if spec.lp.supply == "none":
        return
    gas = _gas(spec, sheet)
    lit = tuple(burners(spec))
    _load(lit, spec, sheet)
    if not gas:
        return
    lp_cylinders.work_out(spec, sheet)
    for burner in lit:
        _hours(burner, gas, sheet)
    for burner in lit:
        if burner.item == "furnace":
            _furnace(burner, gas, sheet)
            lp_use.nights(burner, gas, sheet)
    lp_use.day(lit, gas, sheet)


def _gas(spec: UnitSpec, sheet: Sheet) -> Gas | None:
    """Return the gas, with its facts written down; None where it cannot be told."""
    supply = spec.lp.supply
    if isinstance(supply, Cylinders):
        return _cylinders(supply, sheet)
    if isinstance(supply, FixedTank):
        volume = number("lp.supply.volume", supply.volume)
        if sheet.lacks([volume], "lp.stored", "lp.energy"):
            return Gas(None, (volume,), "")
        mass = propane.fixed_tank_fill(volume.quantity)
        words = f"80 % of the tank's {volume.text}, at 4.2 lb per gal"
        sheet.add(
            "lp.stored",
            mass,
            "pound",
            how="down",
            digits=2,
            basis=f"{capital(words)}.",
            given=[volume],
            source=_SOURCE,
        )
        return _energy(Gas(mass, (volume,), f"a full tank ({words})"), sheet, 2)
    if supply == "unknown":
        everything = (*_OF_GAS, "lp.load", "lp.hours", "lp.furnace_nights")
        sheet.stop(["lp.supply"], *everything, *lp_use.OF_GAS, *lp_cylinders.OF_GAS)
    # Bottles may hold butane or propane, whose heat differs: no figure for them yet.
    return None


def _cylinders(supply: Cylinders, sheet: Sheet) -> Gas:
    given = tuple(
        number(f"lp.supply.cylinders[{one.id}].holds", one.holds)
        for one in supply.cylinders
    )
    for one, holds in zip(supply.cylinders, given, strict=True):
        name = f"lp.cylinder_energy[{one.id}]"
        if not sheet.lacks([holds], name):
            sheet.add(
                name,
                propane.stored_heat(holds.quantity),
                "Btu",
                how="down",
                basis=f"One full cylinder of {holds.text} {_HEAT}.",
                given=[holds],
                source=_SOURCE,
            )
    if sheet.lacks(given, "lp.stored", "lp.energy"):
        return Gas(None, given, "")
    mass = total([one.quantity for one in given], "pound")
    words = same_counted([one.text for one in given], "cylinder")
    sheet.add(
        "lp.stored",
        mass,
        "pound",
        how="down",
        digits=min(stated(one.quantity, "pound") for one in given),
        basis=f"{capital(words)}, filled to the legal limit.",
        given=given,
        source="own-labels",
    )
    return _energy(Gas(mass, given, words), sheet)


def _energy(gas: Gas, sheet: Sheet, digits: int = 3) -> Gas:
    if gas.mass is not None:
        sheet.add(
            "lp.energy",
            propane.stored_heat(gas.mass),
            "Btu",
            how="down",
            digits=digits,
            basis=f"{capital(gas.words)} {_HEAT}.",
            given=gas.given,
            source=_SOURCE,
        )
    return gas


def _load(burners: tuple[Burner, ...], spec: UnitSpec, sheet: Sheet) -> None:
    given = [burner.given for burner in burners]
    if not given or sheet.lacks(given, "lp.load", "lp.regulator_use"):
        return
    each = plus([f"{one.words} {one.given.text}" for one in burners])
    # A generator's plate states its power, not what it burns.
    generator = fitted(spec.ac.generator)
    burns_too = generator is not None and generator.kind in ("lp", "unknown")
    without = ", without the generator" if burns_too else ""
    load = total([one.quantity for one in given], "Btu / hour")
    sheet.add(
        "lp.load",
        load,
        "Btu / hour",
        how="up",
        basis=f"{capital(each)}, all burning at once{without}.",
        given=given,
        source="own-labels",
    )
    if not burns_too:
        lp_use.regulator(spec, load, given, sheet)


def _hours(burner: Burner, gas: Gas, sheet: Sheet) -> None:
    name = f"lp.hours[{burner.item}]"
    given = (*gas.given, burner.given)
    if sheet.lacks(given, name) or gas.mass is None:
        return
    sheet.add(
        name,
        propane.runtime(gas.mass, burner.given.quantity),
        "hour",
        how="down",
        digits=2,
        basis=(
            f"{capital(gas.words)} {_HEAT}, for the {burner.words} alone "
            f"at {burner.given.text}, lit all the time."
        ),
        given=given,
        source=_SOURCE,
        label=burner.item.replace("-", " "),
    )


def _furnace(burner: Burner, gas: Gas, sheet: Sheet) -> None:
    if sheet.lacks([burner.given], "lp.furnace_night", "lp.furnace_nights"):
        return
    night = propane.burned(burner.given.quantity, furnace.NIGHT, duty=furnace.DUTY)
    usual = (
        f"{shown(furnace.NIGHT, 'hour')} with the burner lit "
        f"{furnace.DUTY:.0%} of the time, a typical cold night"
    ).replace("%", " %")
    sheet.add(
        "lp.furnace_night",
        night,
        "pound",
        how="up",
        digits=2,
        basis=f"The furnace at {burner.given.text} for {usual}, {_HEAT}.",
        given=[burner.given],
        source="common-practice",
        typical=True,
    )
    given = (*gas.given, burner.given)
    if sheet.lacks(given, "lp.furnace_nights") or gas.mass is None:
        return
    nights = quantity((gas.mass / night).to("dimensionless").magnitude, "night")
    sheet.add(
        "lp.furnace_nights",
        nights,
        "night",
        how="down",
        digits=whole(nights, "night"),
        basis=(
            f"{capital(gas.words)}, with the furnace at {burner.given.text} as the "
            f"only flame: {usual}."
        ),
        given=given,
        source="common-practice",
        typical=True,
    )
