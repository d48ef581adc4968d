"""Tires, held against an equation of state for real air."""

from __future__ import annotations

import datetime as dt

import pint
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import tires
from hatchleaf.units import number_in, quantity

PSI = 6894.757293168  # Pa
ATMOSPHERE = 101_325.0  # Pa


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8 + 273.15


def _at(psi: float, now: float, set_at: float = 70) -> float:
    found = tires.pressure_at(quantity(psi, "psi"), set_at=set_at, now=now)
    return number_in(found, "psi")


@pytest.mark.parametrize("psi", [35, 50, 65, 80])
@pytest.mark.parametrize("now", [0, 30, 50, 90, 110])
def test_pressure_agrees_with_real_air(psi: float, now: float) -> None:
    """The same air in the same room at another temperature, by CoolProp."""
    # CoolProp, air by Lemmon et al.; the gas law differs by less than 0.3 psi.
    density = PropsSI("D", "T", _kelvin(70), "P", psi * PSI + ATMOSPHERE, "Air")
    absolute = PropsSI("P", "T", _kelvin(now), "D", density, "Air")

    assert _at(psi, now) == pytest.approx((absolute - ATMOSPHERE) / PSI, abs=0.3)


@pytest.mark.parametrize(
    ("psi", "now", "then"),
    [
        (65, 30, 58.98),
        (65, 0, 54.47),
        (65, 110, 71.02),
        (35, 80, 35.94),
        (80, 80, 81.79),
    ],
)
def test_pressure_agrees_with_sums_by_hand(psi: float, now: float, then: float) -> None:
    """Worked on paper from the gas law, absolute both times."""
    # (P + 14.696) (T + 459.67) / 529.67 - 14.696, done by hand.
    assert _at(psi, now) == pytest.approx(then, abs=0.01)


def test_the_car_rule_of_thumb_understates_a_trailer() -> None:
    """A psi for ten degrees fits 35 psi; an 80 psi tire moves nearly twice as much."""
    # Common practice, no source: "1 psi per 10 degF".
    assert _at(35, 80) - 35 == pytest.approx(1, abs=0.1)
    assert _at(80, 80) - 80 > 1.7


def test_below_absolute_zero_is_refused() -> None:
    """A slip of sign must not give a pressure."""
    with pytest.raises(ValueError, match="no tire is at -500 degF"):
        _at(65, -500)


def test_a_force_is_refused() -> None:
    """Pounds are no pounds per square inch."""
    with pytest.raises(pint.DimensionalityError):
        tires.pressure_at(quantity(65, "pound_force"), set_at=70, now=30)


@given(st.floats(20, 110), st.floats(-40, 130), st.floats(-40, 130))
def test_there_and_back_is_the_same_air(psi: float, there: float, back: float) -> None:
    """Warmer is higher, and the way back ends where it began."""
    cold = quantity(psi, "psi")
    moved = tires.pressure_at(cold, set_at=back, now=there)

    if there > back + 0.01:
        assert moved > cold
    again = tires.pressure_at(moved, set_at=there, now=back)
    assert number_in(again, "psi") == pytest.approx(psi)


@pytest.mark.parametrize(
    ("code", "monday"),
    [
        # 49 CFR 574.5: "2319" is week 23 of 2019; Mondays by ISO 8601's calendar.
        ("2319", (2019, 6, 3)),
        ("0101", (2001, 1, 1)),
        ("0927", (2027, 3, 1)),
        ("5220", (2020, 12, 21)),
        # 2020 has a week 53, 2021 has none: a maker's own count runs on.
        ("5320", (2020, 12, 28)),
        ("5321", (2022, 1, 3)),
    ],
)
def test_a_tire_s_code_is_a_week(code: str, monday: tuple[int, int, int]) -> None:
    """Week first, then year, as the rule has it since 2000."""
    assert tires.made_in(code) == dt.date(*monday)


@pytest.mark.parametrize("code", ["0019", "5419", "9927"])
def test_a_week_that_no_year_has(code: str) -> None:
    """A year written first is caught where it can be."""
    with pytest.raises(ValueError, match="there is no week"):
        tires.made_in(code)


def test_two_tires_carry_an_axle() -> None:
    """ST205/75R15 at 50 psi: 1,820 lb each, 3,640 lb for two."""
    # Public table of special-trailer tires (secondary).
    found = tires.carried(quantity(1820, "pound"), 2)

    assert number_in(found, "pound") == pytest.approx(3640)


@given(st.integers(1, 52), st.integers(1, 40))
def test_a_week_starts_on_its_monday(week: int, year: int) -> None:
    """Python's own ISO calendar agrees."""
    monday = tires.made_in(f"{week:02d}{year:02d}")

    assert monday.isocalendar()[:2] == (2000 + year, week)
    assert monday.weekday() == 0
