"""Water, held against the reference equation of state and public guidance."""

from __future__ import annotations

import pint
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import water
from hatchleaf.units import number_in, quantity

POUND = 0.45359237  # kg, exact
GALLON = 3.785411784e-3  # m3, exact


def _pounds_in_a_gallon(fahrenheit: float) -> float:
    kelvin = (fahrenheit - 32) / 1.8 + 273.15
    density: float = PropsSI("D", "T", kelvin, "P", 101_325, "Water")
    return density * GALLON / POUND


def test_density_agrees_with_the_equation_of_state() -> None:
    """8.34 is water at 60 degF, rounded up: CoolProp gives 8.337."""
    ours = number_in(water.DENSITY, "pound / gallon")

    assert ours == pytest.approx(_pounds_in_a_gallon(60), rel=0.0005)
    assert ours >= _pounds_in_a_gallon(60)


def test_weight_is_never_understated_where_water_is_drunk() -> None:
    """From 60 to 140 degF a full tank weighs no more than we say."""
    # CoolProp: at most 8.345 lb/gal, near 39 degF, is 0.06 % above ours.
    ours = number_in(water.DENSITY, "pound / gallon")

    for fahrenheit in range(60, 141, 10):
        assert _pounds_in_a_gallon(fahrenheit) < ours
    assert _pounds_in_a_gallon(39) == pytest.approx(ours, rel=0.0007)


def test_label_weight_agrees_with_a_federal_label() -> None:
    """40 gal stand as 332 lb on a label that reckons 8.3 lb/gal."""
    # 72 FR 68442: full load of water at 1 kg/l (8.3 lb/gal).
    on_label = water.weight(quantity(40, "gallon"), density=water.LABEL_DENSITY)

    assert number_in(on_label, "pound") == pytest.approx(332, abs=0.05)


def test_days_agree_with_the_emergency_rule() -> None:
    """A gallon a person a day, three days at least: four people need 12 gal."""
    # CDC, creating and storing an emergency water supply: 1 gal a person a day.
    least = quantity(1, "gallon / day")

    lasts = water.days(quantity(12, "gallon"), people=4, each=least)

    assert number_in(lasts, "day") == pytest.approx(3)


def test_nobody_is_refused() -> None:
    """A supply for no people has no end."""
    with pytest.raises(ValueError, match="people must be 1 or more, got 0"):
        water.days(quantity(40, "gallon"), people=0)


def test_weight_is_no_volume() -> None:
    """Pounds of water are not gallons of it."""
    with pytest.raises(pint.DimensionalityError):
        water.weight(quantity(40, "pound"))


@given(st.floats(1, 200), st.integers(1, 12))
def test_each_guest_shortens_the_stay(gallons: float, people: int) -> None:
    """More people, fewer days; more water, more days."""
    tank = quantity(gallons, "gallon")

    assert water.days(tank, people=people + 1) < water.days(tank, people=people)
    assert water.days(tank * 2, people=people) > water.days(tank, people=people)
