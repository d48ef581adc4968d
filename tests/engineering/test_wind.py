"""Wind, held against the density of air and the standard's metric form."""

from __future__ import annotations

import pint
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import wind
from hatchleaf.units import number_in, quantity


def _pascals(meters_per_second: float) -> float:
    speed = quantity(meters_per_second, "meter / second")
    return number_in(wind.velocity_pressure(speed), "pascal")


def test_pressure_agrees_with_the_density_of_air() -> None:
    """Half the density times the speed squared, air at 59 degF and sea level."""
    # CoolProp: 1.2256 kg/m3; the standard rounds its factor to three figures.
    density = PropsSI("D", "T", 288.15, "P", 101_325, "Air")

    assert _pascals(10) == pytest.approx(density / 2 * 100, rel=0.003)


@pytest.mark.parametrize(("km_h", "pascals"), [(30, 43), (40, 76), (50, 118)])
def test_pressure_agrees_with_the_metric_form(km_h: float, pascals: float) -> None:
    """0.613 V^2 in Pa with V in m/s, as the same standard prints it."""
    # ASCE 7 in SI units: q = 0.613 V^2; worked by hand, to whole pascals.
    assert _pascals(km_h / 3.6) == pytest.approx(pascals, abs=0.6)


@pytest.mark.parametrize(
    ("mph", "force"), [(15, 73.7), (20, 131.1), (25, 204.8), (30, 294.9)]
)
def test_force_on_a_sixteen_foot_awning(mph: float, force: float) -> None:
    """16 x 8 ft, by hand; 15 to 30 mph are Beaufort 4 to 6."""
    # 0.00256 V^2 times 128 sq ft (ASCE 7); weather service's Beaufort scale.
    area = quantity(128, "foot ** 2")

    found = wind.force(quantity(mph, "mile / hour"), area)

    assert number_in(found, "pound_force") == pytest.approx(force, abs=0.06)


def test_a_length_is_no_area() -> None:
    """A width alone has no force."""
    with pytest.raises(pint.DimensionalityError):
        wind.force(quantity(20, "mile / hour"), quantity(16, "foot"))


@given(st.floats(1, 60), st.floats(10, 400))
def test_twice_the_speed_is_four_times_the_force(mph: float, area: float) -> None:
    """What makes a gust dangerous."""
    speed, cloth = quantity(mph, "mile / hour"), quantity(area, "foot ** 2")

    ratio = wind.force(speed * 2, cloth) / wind.force(speed, cloth)

    assert number_in(ratio, "dimensionless") == pytest.approx(4)


@pytest.mark.parametrize(
    ("lowest", "highest", "number", "name"),
    [
        (0, 0, 0, "calm"),
        (1, 3, 1, "light air"),
        (4, 7, 2, "light breeze"),
        (8, 12, 3, "gentle breeze"),
        (13, 18, 4, "moderate breeze"),
        (19, 24, 5, "fresh breeze"),
        (25, 31, 6, "strong breeze"),
        (32, 38, 7, "near gale"),
        (39, 46, 8, "gale"),
        (47, 54, 9, "strong gale"),
        (55, 63, 10, "storm"),
        (64, 72, 11, "violent storm"),
        (73, 120, 12, "hurricane"),
    ],
)
def test_beaufort_agrees_with_the_weather_service(
    lowest: float, highest: float, number: int, name: str
) -> None:
    """Both ends of each row of the table in whole miles an hour."""
    # US National Weather Service, Beaufort Wind Scale; rows 0 to 3 and 8 to 12 memory.
    for mph in (lowest, highest):
        step = wind.beaufort(quantity(mph, "mile / hour"))
        assert (step.number, step.name) == (number, name)


@pytest.mark.parametrize("number", range(1, 12))
def test_beaufort_agrees_with_the_formula_behind_it(number: int) -> None:
    """The middle of each step by v = 0.836 B^1.5 in m/s lies in the step."""
    # World Meteorological Organization, velocity equivalents of 1946 (memory).
    speed = quantity(0.836 * number**1.5, "meter / second")

    assert wind.beaufort(speed).number == number


@pytest.mark.parametrize(("inches", "pounds"), [(1, 665.6), (0.5, 332.8), (3, 1996.8)])
def test_rain_on_a_sixteen_foot_awning(inches: float, pounds: float) -> None:
    """5.2 lb per square foot and inch on 128 sq ft."""
    # Worked by hand: 62.4 lb per cubic foot / 12 = 5.2 lb.
    found = wind.rain(quantity(128, "foot ** 2"), quantity(inches, "inch"))

    assert number_in(found, "pound") == pytest.approx(pounds)


def test_rain_agrees_with_the_density_of_water() -> None:
    """One millimeter on one square meter is a kilogram."""
    # CoolProp: water at 60 degF, 999.0 kg/m3; the pound figure is 0.05 % higher.
    density = PropsSI("D", "T", 288.706, "P", 101_325, "Water")
    found = wind.rain(quantity(1, "meter ** 2"), quantity(1, "millimeter"))

    assert number_in(found, "kilogram") == pytest.approx(density / 1000, rel=0.001)


@given(st.floats(0, 200), st.floats(0.1, 30))
def test_a_stronger_wind_is_never_a_lower_step(mph: float, more: float) -> None:
    """No hole in the scale, and no step back."""
    here = wind.beaufort(quantity(mph, "mile / hour")).number

    assert wind.beaufort(quantity(mph + more, "mile / hour")).number >= here
