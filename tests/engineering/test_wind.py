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
