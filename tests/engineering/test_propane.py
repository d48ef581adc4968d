"""Propane, held against reference libraries and printed tables."""

from __future__ import annotations

import pint
import pytest
from chemicals.combustion import combustion_data
from chemicals.reaction import Hfg
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import furnace, propane
from hatchleaf.units import number_in, quantity

SIXTY_F = (60 - 32) / 1.8 + 273.15
POUND = 0.45359237  # kg, exact
GALLON = 3.785411784e-3  # m3, exact
BTU = 1055.056  # J


def test_heat_agrees_with_the_heat_of_formation() -> None:
    """Pure propane burned on paper: commercial gas lies within half a percent."""
    # chemicals: heats of formation give the gross heat of combustion of the gas.
    burned = combustion_data("C3H8", Hf=Hfg("74-98-6"))
    molar_mass = PropsSI("M", "Propane")  # CoolProp, kg/mol

    pure = -burned.HHV / molar_mass * POUND / BTU

    assert number_in(propane.HEAT_PER_MASS, "Btu / pound") == pytest.approx(
        pure, rel=0.005
    )


def test_density_agrees_with_the_equation_of_state() -> None:
    """Saturated liquid at 60 degF; the table rounds and is not pure propane."""
    # CoolProp: 4.2285 lb/gal for pure propane; the trade's 4.20 is 0.7 % below.
    pure = PropsSI("D", "T", SIXTY_F, "Q", 0, "Propane") * GALLON / POUND

    assert number_in(propane.LIQUID_DENSITY, "pound / gallon") == pytest.approx(
        pure, rel=0.01
    )


def test_density_agrees_with_the_table_own_specific_gravity() -> None:
    """The table's 0.504 times water is its pounds in a gallon."""
    # LP-gas property table: specific gravity 0.504 at 60 degF (secondary copies).
    water = PropsSI("D", "T", SIXTY_F, "P", 101_325, "Water") * GALLON / POUND

    assert number_in(propane.LIQUID_DENSITY, "pound / gallon") == pytest.approx(
        0.504 * water, rel=0.001
    )


def test_a_gallon_agrees_with_the_energy_agency() -> None:
    """A gallon by the equation of state holds the heat that the EIA prints."""
    # US Energy Information Administration, units and calculators: 91,452 BTU per
    # gallon (read where two pages quote it).
    gallon = PropsSI("D", "T", SIXTY_F, "Q", 0, "Propane") * GALLON / POUND

    heat = propane.stored_heat(quantity(gallon, "pound"))

    assert number_in(heat, "Btu") == pytest.approx(91_452, rel=0.005)


@pytest.mark.parametrize(
    ("pounds", "printed"),
    [
        # Printed in an owners' guide (secondary).
        (30, 646_440),
        # "20 lb = 430,270 BTU" on a cylinder page (secondary), which rounds elsewhere.
        (20, 430_270),
    ],
)
def test_a_cylinder_agrees_with_printed_figures(pounds: int, printed: int) -> None:
    """What others print for a full cylinder."""
    heat = propane.stored_heat(quantity(pounds, "pound"))

    assert number_in(heat, "Btu") == pytest.approx(printed, rel=0.002)


def test_fill_of_a_fixed_tank_agrees_with_osha() -> None:
    """The 80 % rule is the weight rule of 42 % said in another way."""
    # 29 CFR 1910.110(b)(19)(v), its own worked example: 100 gal of water volume, liquid
    # of specific gravity 0.510 -> 79.8 gal may be filled.
    gallons = propane.fixed_tank_fill(quantity(100, "gallon")) / propane.LIQUID_DENSITY

    assert number_in(gallons, "gallon") == pytest.approx(79.8, rel=0.003)


def test_a_half_lit_furnace_agrees_with_a_published_sum() -> None:
    """A page works out 1.32 gal for 30,000 BTU/h, half the time, 8 hours."""
    # Published sum (secondary), with 0.33 gal/h; good to 1 %.
    used = propane.burned(quantity(30_000, "Btu / hour"), quantity(8, "hour"), duty=0.5)

    gallons = number_in(used / propane.LIQUID_DENSITY, "gallon")

    assert gallons == pytest.approx(1.32, rel=0.01)


def test_the_typical_night_is_that_of_the_handed_down_example() -> None:
    """10 hours at 35 % of 30,000 BTU/h is 105,000 BTU, or 4.87 lb."""
    # Common practice, no source; worked by hand: 105,000 / 21,548.
    used = propane.burned(
        quantity(30_000, "Btu / hour"), furnace.NIGHT, duty=furnace.DUTY
    )

    assert number_in(used, "pound") == pytest.approx(4.873, abs=0.001)


def test_a_volume_is_refused() -> None:
    """Gallons where pounds belong must not be guessed at."""
    with pytest.raises(pint.DimensionalityError):
        propane.stored_heat(quantity(4.7, "gallon"))


@pytest.mark.parametrize("duty", [0.0, -0.1, 1.01, float("nan")])
def test_an_impossible_duty_is_refused(duty: float) -> None:
    """A burner is lit for some of the time, and never for more than all of it."""
    with pytest.raises(ValueError, match="duty must be above 0 and up to 1"):
        propane.runtime(quantity(20, "pound"), quantity(9_000, "Btu / hour"), duty=duty)


@given(
    st.floats(1, 500), st.floats(500, 80_000), st.floats(0.05, 1), st.floats(1.01, 3)
)
def test_more_gas_lasts_longer_and_a_bigger_flame_shorter(
    pounds: float, rate: float, duty: float, more: float
) -> None:
    """The direction of every input, whatever the constants are."""
    fill, burner = quantity(pounds, "pound"), quantity(rate, "Btu / hour")
    base = propane.runtime(fill, burner, duty=duty)

    assert propane.runtime(fill * more, burner, duty=duty) > base
    assert propane.runtime(fill, burner * more, duty=duty) < base
    assert propane.runtime(fill, burner, duty=duty / more) > base
    # What is burned until the gas runs out is the gas.
    back = propane.burned(burner, base, duty=duty)
    assert number_in(back, "pound") == pytest.approx(pounds)
