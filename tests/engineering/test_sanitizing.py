"""Bleach, held against the trade's rule and public drinking-water guidance."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import sanitizing
from hatchleaf.units import number_in, quantity


@pytest.mark.parametrize(
    ("strength", "ppm"), [(5.25, 54.7), (6, 62.5), (7.5, 78.1), (8.25, 85.9)]
)
def test_dose_agrees_with_the_quarter_cup(strength: float, ppm: float) -> None:
    """A quarter cup in 15 gal, which RV texts call about 50 ppm."""
    # Industry rule (secondary, many texts); ppm by hand: 59.15 ml in 56.78 l.
    dose = sanitizing.dose(
        quantity(15, "gallon"),
        quantity(strength, "percent"),
        target=quantity(ppm, "ppm"),
    )

    # A quarter of a US cup is 2 fl oz; the ppm have three figures.
    assert number_in(dose, "fluid_ounce") == pytest.approx(2, rel=0.002)


def test_dose_agrees_with_the_agency_s_drops() -> None:
    """8 drops of 6 % bleach in a gallon lie in the range published for that dose."""
    # EPA emergency disinfection (8 drops of 6 %, from memory; a drop is 0.05 ml), and
    # Environ. Sci. Technol. 2014, doi 10.1021/es405357y: 5.55 to 8.67 mg/l.
    gallon, six = quantity(1, "gallon"), quantity(6, "percent")

    least = sanitizing.dose(gallon, six, target=quantity(5.55, "ppm"))
    most = sanitizing.dose(gallon, six, target=quantity(8.67, "ppm"))

    assert number_in(least, "milliliter") < 8 * 0.05 < number_in(most, "milliliter")


def test_target_is_the_one_of_the_sanitation_manual() -> None:
    """The dose brings 50 mg of chlorine to each liter, no less."""
    # CDC Vessel Sanitation Program manual 5.3.4.1.4: at least 50 mg/l for 4 hours.
    # Bleach of 5 g in 100 ml holds 50 mg in each ml: 1 ml to the liter.
    dose = sanitizing.dose(quantity(100, "liter"), quantity(5, "percent"))

    assert number_in(dose, "milliliter") == pytest.approx(100)


@pytest.mark.parametrize("percent", [0.001, 0.004])
def test_bleach_weaker_than_the_target_is_refused(percent: float) -> None:
    """Water cannot be brought to a strength that the bottle does not have."""
    with pytest.raises(ValueError, match="strength must be above 50"):
        sanitizing.dose(quantity(40, "gallon"), quantity(percent, "percent"))


def test_a_share_without_dimension_is_asked_for() -> None:
    """Fluid ounces are no strength."""
    with pytest.raises(pint.DimensionalityError):
        sanitizing.dose(quantity(40, "gallon"), quantity(6, "fluid_ounce"))


@given(st.floats(1, 200), st.floats(1, 15), st.floats(1.01, 3))
def test_stronger_bleach_needs_less(gallons: float, percent: float, by: float) -> None:
    """The dose falls with the strength and grows with the water."""
    water, strength = quantity(gallons, "gallon"), quantity(percent, "percent")
    base = sanitizing.dose(water, strength)

    assert sanitizing.dose(water, strength * by) < base
    assert sanitizing.dose(water * by, strength) > base


def test_lines_agree_with_a_pipe_table() -> None:
    """100 ft of half-inch pipe hold 0.92 gal."""
    # Trade table of plastic water pipe to ASTM F876 (read in three copies).
    hundred = sanitizing.in_lines(quantity(100, "foot"), lines=1)

    assert number_in(hundred, "gallon") == pytest.approx(0.92, rel=0.005)


def test_no_line_at_all_is_refused() -> None:
    """A unit with water has at least the cold line."""
    with pytest.raises(ValueError, match="lines must be 1 or more, got 0"):
        sanitizing.in_lines(quantity(24, "foot"), lines=0)


@given(st.floats(6, 45), st.floats(1.01, 3))
def test_a_longer_unit_has_more_in_its_pipes(feet: float, by: float) -> None:
    """The hot line doubles it."""
    body = quantity(feet, "foot")
    one = sanitizing.in_lines(body, lines=1)

    assert sanitizing.in_lines(body * by, lines=1) > one
    both = number_in(sanitizing.in_lines(body, lines=2), "gallon")
    assert both == pytest.approx(2 * number_in(one, "gallon"))
