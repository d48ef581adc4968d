"""
In which unit a market reads a number first, and which one stands beside it.

Units of the United States come first there and, but for weights, in Canada, whose
labels state kilograms; elsewhere SI comes first, though the United Kingdom drives by
miles.  Running text prints the first unit alone; the page of numbers and the tiles
print both.
"""

from __future__ import annotations

import re
from typing import Final

_SI: Final = {
    "pound": "kilogram",
    "pound / day": "kilogram / day",
    "gallon": "liter",
    "gallon / minute": "liter / minute",
    "gallon / day": "liter / day",
    "gallon / hour": "liter / hour",
    "delta_degF": "delta_degC",
    "fluid_ounce": "milliliter",
    "quart": "liter",
    "foot": "meter",
    "inch": "centimeter",
    "foot ** 2": "meter ** 2",
    "psi": "bar",
    "mile / hour": "kilometer / hour",
    "pound_force": "newton",
    "Btu": "kilowatt_hour",
    "Btu / hour": "kilowatt",
    "inH2O": "millibar",
}
"""Unit of the United States -> the one of SI that stands for it."""
_KILOPASCAL: Final = {"psi": "kilopascal"}
"""Tire placards of North America and Australia state kPa, those of Europe bar."""
_OWN_FIRST: Final = {
    "us": frozenset(_SI),
    "ca": frozenset(_SI) - {"pound", "pound / day"},
    "uk": frozenset({"mile / hour"}),
    "eu": frozenset[str](),
    "au": frozenset[str](),
}
"""Market -> the units of the United States that come first there."""


def in_market(unit: str, market: str) -> tuple[str, str]:
    """
    Return the unit that *market* reads first, and the one beside it.

    Args:
        unit: A unit of the registry, as facts are worked out in.
        market: A market of the vocabulary.

    Returns:
        Two units of the registry; the second is empty where all read the first.
    """
    other = _SI.get(unit, "")
    if not other:
        return unit, ""
    if market in ("us", "ca", "au"):
        other = _KILOPASCAL.get(unit, other)
    return (unit, other) if unit in _OWN_FIRST[market] else (other, unit)


_FAHRENHEIT: Final = ("us", "ca")
"""Markets whose guides speak of temperatures in degrees Fahrenheit."""
_DEGREES: Final = re.compile(r"((?<!\d)[-\u2212]?\d+(?:\.\d+)?) °F")


def temperatures(text: str, market: str) -> str:
    """
    Return *text* with its temperatures as *market* reads them.

    Temperatures alone: a difference of so many degrees is a quantity, not a text.

    Args:
        text: Words with temperatures in °F, whole ones.
        market: A market of the vocabulary.

    >>> temperatures("from 60 °F to 120 °F", "uk")
    'from 16 °C to 49 °C'
    """
    if market in _FAHRENHEIT:
        return text

    def celsius(found: re.Match[str]) -> str:
        fahrenheit = float(found[1].replace("\u2212", "-"))
        degrees = round((fahrenheit - 32) / 1.8)
        return f"{degrees} °C".replace("-", "\u2212")

    return _DEGREES.sub(celsius, text)
