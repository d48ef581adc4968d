"""Cylinders, held against the transport rules and the equation of state."""

from __future__ import annotations

import datetime as dt

import pint
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from hatchleaf.engineering import cylinders, propane
from hatchleaf.units import number_in, quantity

POUND = 0.45359237  # kg, exact
GALLON = 3.785411784e-3  # m3, exact


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8 + 273.15


def _liquid(fahrenheit: float) -> float:
    density: float = PropsSI("D", "T", _kelvin(fahrenheit), "Q", 0, "Propane")
    return density


@pytest.mark.parametrize(
    ("water_capacity", "nominal"), [(47.6, 20), (71.4, 30), (95.2, 40)]
)
def test_fill_agrees_with_the_usual_sizes(
    water_capacity: float, nominal: float
) -> None:
    """The WC on the collar times 42 % is the size that the trade calls it by."""
    # 49 CFR 173.304a(d), the same table in WAC 296-307-41037: 42 % for specific
    # gravity 0.504 to 0.510.
    fill = cylinders.fill_limit(quantity(water_capacity, "pound"))

    assert number_in(fill, "pound") == pytest.approx(nominal, abs=0.02)


def test_a_legal_fill_is_four_fifths_of_the_space_when_cold() -> None:
    """42 % by weight and 80 % by volume at 40 degF are one rule."""
    # OSHA 1910.110(b)(19)(v) takes 4.37 lb/gal at 40 degF; CoolProp gives 80.3 %.
    water = PropsSI("D", "T", _kelvin(60), "P", 101_325, "Water")
    share = number_in(cylinders.fill_limit(quantity(1, "pound")), "pound") * (
        water / _liquid(40)
    )

    assert share == pytest.approx(0.80, abs=0.005)


def test_a_legal_fill_has_room_up_to_a_hot_day_and_beyond() -> None:
    """A full cylinder is all liquid only above 140 degF."""
    # CoolProp, saturated liquid: 42 % of the water's weight fills it at 146.6 degF.
    water = PropsSI("D", "T", _kelvin(60), "P", 101_325, "Water")
    full = brentq(lambda f: _liquid(f) - cylinders.FILLING_DENSITY * water, 60, 190)

    assert full == pytest.approx(146.6, abs=0.5)


@pytest.mark.parametrize(
    ("holds", "low", "high"),
    [
        # Full weights on cylinder pages (secondary); 40 lb from memory.
        (20, 37, 39),
        (30, 54, 57),
        (40, 70, 73),
    ],
)
def test_full_weight_agrees_with_printed_ranges(
    holds: float, low: float, high: float
) -> None:
    """Gas and steel together; loads are the heavy end."""
    gas = quantity(holds, "pound")
    tare = cylinders.usual_tare(gas)
    assert tare is not None

    assert low <= number_in(gas + tare, "pound") <= high


@pytest.mark.parametrize("pounds", [5, 11, 25, 100])
def test_no_weight_is_guessed_for_other_sizes(pounds: float) -> None:
    """A tare comes from the collar, where the usual table has none."""
    assert cylinders.usual_tare(quantity(pounds, "pound")) is None


@pytest.mark.parametrize(
    ("mark", "years"),
    [
        # 49 CFR 180.209(e), (g) and 180.213(f)(1), (4), (5), where others quote them:
        # volumetric, no letter: 12; proof pressure, S: 10; external visual, E: 5.
        ("", 12),
        ("S", 10),
        ("E", 5),
    ],
)
def test_next_dates_follow_the_mark(mark: cylinders.Mark, years: int) -> None:
    """Counted from the month on the collar."""
    due = cylinders.requalify_next(dt.date(2026, 11, 1), mark)

    assert due == dt.date(2026 + years, 11, 1)


def test_the_first_date_is_twelve_years_after_the_original_test() -> None:
    """Not ten, as the rule said from 2017 to 2020."""
    # 49 CFR 180.209(e) and (g); 85 FR 68790 (30 October 2020) brought 12 years back.
    assert cylinders.requalify_first(dt.date(2026, 8, 1)) == dt.date(2038, 8, 1)


@pytest.mark.parametrize(("pounds", "gallons"), [(20, 4.76), (30, 7.14), (40, 9.52)])
def test_pounds_agree_with_gallons(pounds: float, gallons: float) -> None:
    """What a filler's meter in gallons shows for a full cylinder."""
    # Trade table at 4.2 lb a gallon.
    liquid = quantity(pounds, "pound") / propane.LIQUID_DENSITY

    assert number_in(liquid, "gallon") == pytest.approx(gallons, abs=0.005)


def test_a_volume_is_no_weight() -> None:
    """WC is a weight of water."""
    with pytest.raises(pint.DimensionalityError):
        cylinders.fill_limit(quantity(5.7, "gallon"))


@given(st.dates(dt.date(1970, 1, 1), dt.date(2200, 12, 31)))
def test_every_month_has_a_due_month(made: dt.date) -> None:
    """Also the 29th of February, which 12 years later may not be there."""
    first = cylinders.requalify_first(made)

    assert (first.year - made.year, first.month, first.day) == (12, made.month, 1)
    assert first > made
