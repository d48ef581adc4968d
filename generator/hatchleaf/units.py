"""
Quantities with units: the one pint registry, and the only ways in and out of it.

A spec's text never reaches pint's own parser, which reads ``100 ah`` as
attohours and ``cfm`` as centifermi: each kind of quantity lists its spellings.
Temperatures are plain degF numbers, with `fahrenheit_point` and
`fahrenheit_difference` to say which of the two is meant.
"""

from __future__ import annotations

import math
import os
import pickle
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Literal, TypeAlias, cast

if TYPE_CHECKING:
    import pint

    Quantity: TypeAlias = pint.Quantity[float]
else:
    # pydantic looks at the annotations of what holds one.
    Quantity = Any

Rounding: TypeAlias = Literal["down", "up", "near"]
_Items: TypeAlias = tuple[tuple[str, float], ...]
"""A unit as its parts and their powers, which unlike pint's own compares fast."""

LARGEST: Final = 1e9
"""No number of a unit is larger, whatever its unit of measure."""

CACHE_VARIABLE: Final = "HATCHLEAF_CACHE"
"""Environment variable naming the folder for pint's cache; empty means none."""

_DAMAGED: Final = (
    AttributeError,
    EOFError,
    ImportError,
    IndexError,
    ValueError,
    pickle.UnpicklingError,
)
"""What reading half a file of pint's cache may raise, as Python's pickle tells."""

_OURS: Final = (
    "psig = psi",
    "gpm = gallon / minute",
    "psf = pound_force / foot ** 2",
    "night = count",
    "fill = count",
)


@cache
def registry() -> pint.UnitRegistry[float]:
    """Return the one registry; made on first use, since it costs 0.14 s uncached."""
    # The import costs as much, and who reads blocks needs neither.
    import pint  # noqa: PLC0415

    folder = os.environ.get(CACHE_VARIABLE) or None
    made: pint.UnitRegistry[float]
    try:
        made = pint.UnitRegistry(cache_folder=folder)
    except _DAMAGED:
        if folder is None:
            raise
        for path in Path(folder).glob("*.pickle"):
            path.unlink(missing_ok=True)
        made = pint.UnitRegistry(cache_folder=folder)
    for definition in _OURS:
        made.define(definition)
    return made


@cache
def _unit(name: str) -> pint.Unit:
    return registry().Unit(name)


@cache
def _factor(have: _Items, want: str) -> float:
    """
    Return what a number in *have* is multiplied by to be in *want*.

    Raises:
        pint.DimensionalityError: The two are of different dimensions.
        ValueError: One is a point of a temperature scale, where a factor is not enough.
    """
    made = registry().UnitsContainer(dict(have))
    one, none = (registry().Quantity(number, made).m_as(want) for number in (1.0, 0.0))
    if none != 0:
        raise ValueError(f"{made} and {want} do not start at the same zero")
    return float(one)


def quantity(value: float, unit: str) -> Quantity:
    """Return *value* in the registry's *unit*; a float is 64 bits wide."""
    return cast("Quantity", registry().Quantity(float(value), _unit(unit)))


def convert(value: Quantity, unit: str) -> Quantity:
    """
    Return *value* in *unit*, and its type to the type checker.

    Raises:
        pint.DimensionalityError: *unit* is of another dimension.
    """
    return quantity(number_in(value, unit), unit)


def number_in(value: Quantity, unit: str) -> float:
    """
    Return the bare number of *value* in *unit*: the only way out of the registry.

    Raises:
        pint.DimensionalityError: *unit* is of another dimension.
    """
    # The registry finds the factor anew each time; a guide asks some thousand times.
    return float(value.magnitude) * _factor(tuple(value.unit_items()), unit)


def fahrenheit_point(degrees: float) -> float:
    """Return the absolute temperature in degrees Rankine of a point in degF."""
    return degrees + 459.67


def fahrenheit_difference(warm: float, cold: float) -> float:
    """Return the difference of two points in degF, in Fahrenheit degrees."""
    return warm - cold


@dataclass(frozen=True)
class Kind:
    """A kind of quantity, with every spelling that a file may use for it."""

    name: str
    spellings: Mapping[str, str]
    """Spelling in a file -> unit of the registry."""
    example: str
    may_be_zero: bool = False

    def allowed(self) -> str:
        """Return the ``allowed`` text of a problem about this kind."""
        words = ", ".join(self.spellings)
        return f"a number and one of {words}, like '{self.example}'"


MASS: Final = Kind("weight", {"lb": "pound", "kg": "kilogram"}, "20 lb")
VOLUME: Final = Kind("volume", {"gal": "gallon", "qt": "quart", "l": "liter"}, "31 gal")
FLOW: Final = Kind(
    "flow", {"gpm": "gallon / minute", "l/min": "liter / minute"}, "2.5 gpm"
)
LENGTH: Final = Kind(
    "length",
    {"ft": "foot", "in": "inch", "m": "meter", "cm": "centimeter", "mm": "millimeter"},
    "16 ft",
)
PRESSURE: Final = Kind(
    "pressure", {"psi": "psi", "bar": "bar", "kPa": "kilopascal"}, "65 psi"
)
GAS_PRESSURE: Final = Kind(
    "gas pressure", {"inwc": "inH2O", "mbar": "millibar"}, "11 inwc"
)
HEAT_RATE: Final = Kind(
    "heat rate", {"BTU/h": "Btu / hour", "kW": "kilowatt", "W": "watt"}, "30000 BTU/h"
)
POWER: Final = Kind("power", {"W": "watt", "kW": "kilowatt"}, "1500 W")
CURRENT: Final = Kind("current", {"A": "ampere", "mA": "milliampere"}, "30 A")
VOLTAGE: Final = Kind("voltage", {"V": "volt"}, "12 V")
CHARGE: Final = Kind("battery capacity", {"Ah": "ampere_hour"}, "100 Ah")
SPEED: Final = Kind(
    "speed", {"mph": "mile / hour", "km/h": "kilometer / hour"}, "20 mph"
)
DURATION: Final = Kind(
    "duration",
    {
        "min": "minute",
        "h": "hour",
        "days": "day",
        "months": "month",
        "years": "year",
    },
    "30 min",
)
TORQUE: Final = Kind(
    "torque",
    {"ft-lb": "foot * pound_force", "Nm": "newton * meter"},
    "110 ft-lb",
)
DISTANCE: Final = Kind("distance", {"mi": "mile", "km": "kilometer"}, "50 mi")
SHARE: Final = Kind("share", {"%": "percent"}, "80 %", may_be_zero=True)

_NUMBER: Final = re.compile(
    r"(?P<number>\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?) ?(?P<unit>[^\d\s].*)",
    re.ASCII,
)


class NotAQuantity(ValueError):  # noqa: N818  # read as a sentence by its catcher
    """The text is not a quantity of the kind; `hint` says how to mend it."""

    def __init__(self, what: str, hint: str = "") -> None:
        """Keep the message and the hint apart, for a `Problem`."""
        super().__init__(what)
        self.hint = hint


def parse(text: str, kind: Kind) -> Quantity:
    """
    Return the quantity that *text* states, such as ``20 lb``.

    Args:
        text: A number, a space or none, and one of the spellings of *kind*.
        kind: What the field holds.

    Raises:
        NotAQuantity: Other text, another unit, or a number that is zero where
            zero has no meaning.
    """
    number, unit = stated(text, kind)
    return quantity(number, unit)


def stated(text: str, kind: Kind) -> tuple[float, str]:
    """
    Return the number and the registry's unit that *text* states.

    Raises:
        NotAQuantity: As `parse`.
    """
    wrong = f"'{text}' is not a {kind.name}"
    found = _NUMBER.fullmatch(text)
    if not found:
        hint = (
            "write the unit after the number" if re.fullmatch(r"[\d.,]+", text) else ""
        )
        raise NotAQuantity(wrong, hint)
    spelling = found["unit"]
    if spelling not in kind.spellings:
        raise NotAQuantity(wrong, _unit_hint(spelling, kind))
    number = float(found["number"].replace(",", ""))
    if number > LARGEST:
        raise NotAQuantity(f"the {kind.name} is larger than any there is")
    if number == 0 and not kind.may_be_zero:
        hint = "write unknown if nobody can tell"
        raise NotAQuantity(f"the {kind.name} cannot be zero", hint)
    return number, kind.spellings[spelling]


def _unit_hint(spelling: str, kind: Kind) -> str:
    for good in kind.spellings:
        if spelling.casefold() == good.casefold():
            return f"units are case-sensitive; write '{good}'"
        if spelling.casefold() == good.casefold() + "s":
            return f"no plural s; write '{good}'"
    return ""


def rounded(value: float, digits: int, how: Rounding) -> float:
    """
    Return *value* at *digits* significant figures.

    Limits, time and stock go ``down``, loads go ``up``, so that an error of
    printing is always on the safe side.  A value already that short is kept.
    """
    if value == 0 or not math.isfinite(value):
        return value
    # The float's shortest text, not its binary tail: 0.1 + 0.2 is 0.3 to a reader.
    exact = Decimal(f"{value:.12g}")
    step = Decimal(1).scaleb(exact.adjusted() - digits + 1)
    mode = {"down": ROUND_FLOOR, "up": ROUND_CEILING, "near": ROUND_HALF_EVEN}[how]
    return float((exact / step).to_integral_value(mode) * step)


def shown(
    value: Quantity, unit: str, *, digits: int = 3, how: Rounding = "near"
) -> str:
    """
    Return *value* in *unit* as a reader sees it: ``1,490 lb``.

    Args:
        value: Any quantity of the dimension of *unit*.
        unit: A unit of the registry; its symbol is printed in plain words.
        digits: Significant figures, 1 or more.
        how: Which way to round.
    """
    number = rounded(number_in(value, unit), digits, how)
    text = f"{number:,.10g}"
    symbol = symbol_of(unit)
    if text == "1" and symbol in (
        "hours",
        "minutes",
        "days",
        "nights",
        "months",
        "years",
    ):
        symbol = symbol.removesuffix("s")
    return f"{text} {symbol}" if symbol else text


def in_file_units(value: Quantity) -> str:
    """Return *value* as its file states it, in the unit it was written in."""
    number = f"{value.magnitude:,.10g}"
    return f"{number} {_spelling(tuple(value.unit_items()))}"


@cache
def _spelling(items: _Items) -> str:
    unit = str(registry().Unit(registry().UnitsContainer(dict(items))))
    for kind in (v for v in globals().values() if isinstance(v, Kind)):
        for spelling, name in kind.spellings.items():
            if str(registry().Unit(name)) == unit:
                return {"inwc": "in. w.c."}.get(spelling, spelling)
    return unit


_SYMBOLS: Final = {
    "pound": "lb",
    "pound / day": "lb a day",
    "kilogram": "kg",
    "gallon": "gal",
    "fluid_ounce": "fl oz",
    "milliliter": "ml",
    "liter": "l",
    "gallon / minute": "gal a minute",
    "gallon / hour": "gal an hour",
    "liter / hour": "l an hour",
    "delta_degF": "°F",
    "delta_degC": "°C",
    "foot": "ft",
    "inch": "in",
    "foot ** 2": "sq ft",
    "psi": "psi",
    "bar": "bar",
    "Btu": "BTU",
    "Btu / hour": "BTU/h",
    "watt": "W",
    "watt_hour": "Wh",
    "ampere": "A",
    "ampere_hour": "Ah",
    "volt": "V",
    "second": "seconds",
    "hour": "hours",
    "minute": "minutes",
    "day": "days",
    "night": "nights",
    "fill": "fills",
    "mile / hour": "mph",
    "pound_force": "lb of force",
    "percent": "%",
    "dimensionless": "",
    "inH2O": "in. w.c.",
    "year": "years",
    "month": "months",
    "kilogram / day": "kg a day",
    "liter / minute": "l a minute",
    "gallon / day": "gal a day",
    "liter / day": "l a day",
    "quart": "qt",
    "meter": "m",
    "centimeter": "cm",
    "meter ** 2": "sq m",
    "kilopascal": "kPa",
    "millibar": "mbar",
    "kilometer / hour": "km/h",
    "newton": "N",
    "kilowatt": "kW",
    "kilowatt_hour": "kWh",
}


def symbol_of(unit: str) -> str:
    """
    Return the plain symbol of a registry *unit*, as the trade writes it.

    Raises:
        KeyError: The unit has no agreed symbol yet; add one here.
    """
    return _SYMBOLS[unit]


def stated_in_any(text: str) -> tuple[float, str] | None:
    """Return the number and unit that *text* states, in any kind's spelling."""
    for kind in (v for v in globals().values() if isinstance(v, Kind)):
        if states(text, kind):
            return stated(text, kind)
    return None


def states(text: str, kind: Kind) -> bool:
    """Return True when *text* states a quantity of *kind*."""
    try:
        stated(text, kind)
    except NotAQuantity:
        return False
    return True
