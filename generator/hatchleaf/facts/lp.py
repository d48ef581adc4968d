"""LP gas facts: what is stored, what burns it, how long it lasts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hatchleaf.engineering import furnace, propane
from hatchleaf.facts.sheet import (
    Given,
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
from hatchleaf.spec.model.electrical import AbsorptionFridge, GasCooktop
from hatchleaf.spec.model.gas_and_water import Cylinders, FixedTank
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import Quantity, quantity, shown

_SOURCE = "nfpa-58-properties"
_HEAT = "at 21,548 BTU per lb"
_OF_GAS = ("lp.stored", "lp.energy", "lp.cylinder_energy")


@dataclass(frozen=True)
class _Burner:
    """One gas appliance; `given` is its input, or the part that is not known."""

    item: str
    words: str
    given: Given


@dataclass(frozen=True)
class _Gas:
    """All the gas of a unit; `mass` is None where it is not known."""

    mass: Quantity | None
    given: tuple[Given, ...]
    words: str


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all LP facts; a unit without LP has none."""
    if spec.lp.supply == "none":
        return
    gas = _gas(spec, sheet)
    burners = tuple(_burners(spec))
    _load(burners, spec, sheet)
    if not gas:
        return
    for burner in burners:
        _hours(burner, gas, sheet)
    for burner in burners:
        if burner.item == "furnace":
            _furnace(burner, gas, sheet)


def _gas(spec: UnitSpec, sheet: Sheet) -> _Gas | None:
    """Return the gas, with its facts written down; None where it cannot be told."""
    supply = spec.lp.supply
    if isinstance(supply, Cylinders):
        return _cylinders(supply, sheet)
    if isinstance(supply, FixedTank):
        volume = number("lp.supply.volume", supply.volume)
        if sheet.lacks([volume], "lp.stored", "lp.energy"):
            return _Gas(None, (volume,), "")
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
        return _energy(_Gas(mass, (volume,), f"a full tank ({words})"), sheet, 2)
    if supply == "unknown":
        everything = (*_OF_GAS, "lp.load", "lp.hours", "lp.furnace_nights")
        sheet.stop(["lp.supply"], *everything)
    # Bottles may hold butane or propane, whose heat differs: no figure for them yet.
    return None


def _cylinders(supply: Cylinders, sheet: Sheet) -> _Gas:
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
        return _Gas(None, given, "")
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
    return _energy(_Gas(mass, given, words), sheet)


def _energy(gas: _Gas, sheet: Sheet, digits: int = 3) -> _Gas:
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


def _burners(spec: UnitSpec) -> Iterator[_Burner]:
    """Yield the appliances that burn gas, or may: those that are not known too."""
    heating = spec.climate.furnace
    if heating == "unknown":
        yield _Burner("furnace", "furnace", Given("climate.furnace"))
    elif there := fitted(heating):
        given = number("climate.furnace.lp_input", there.lp_input)
        yield _Burner("furnace", "furnace", given)

    heater = spec.hot_water
    burns = getattr(heater, "lp_input", "none")
    if heater == "unknown":
        yield _Burner("water-heater", "water heater", Given("hot_water"))
    elif not isinstance(burns, str):
        given = number("hot_water.lp_input", burns)
        yield _Burner("water-heater", "water heater", given)

    cooktop = spec.kitchen.cooktop
    if cooktop == "unknown":
        yield _Burner("cooktop", "cooktop", Given("kitchen.cooktop"))
    elif isinstance(cooktop, GasCooktop):
        given = number("kitchen.cooktop.lp_input", cooktop.lp_input)
        yield _Burner("cooktop", "cooktop with all burners", given)

    fridge = spec.kitchen.fridge
    if fridge == "unknown":
        yield _Burner("fridge", "fridge", Given("kitchen.fridge"))
    elif isinstance(fridge, AbsorptionFridge):
        given = number("kitchen.fridge.lp_input", fridge.lp_input)
        yield _Burner("fridge", "fridge", given)


def _load(burners: tuple[_Burner, ...], spec: UnitSpec, sheet: Sheet) -> None:
    given = [burner.given for burner in burners]
    if not given or sheet.lacks(given, "lp.load"):
        return
    each = plus([f"{one.words} {one.given.text}" for one in burners])
    # A generator's plate states its power, not what it burns.
    generator = fitted(spec.ac.generator)
    burns_too = generator is not None and generator.kind in ("lp", "unknown")
    without = ", without the generator" if burns_too else ""
    sheet.add(
        "lp.load",
        total([one.quantity for one in given], "Btu / hour"),
        "Btu / hour",
        how="up",
        basis=f"{capital(each)}, all burning at once{without}.",
        given=given,
        source="own-labels",
    )


def _hours(burner: _Burner, gas: _Gas, sheet: Sheet) -> None:
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


def _furnace(burner: _Burner, gas: _Gas, sheet: Sheet) -> None:
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
