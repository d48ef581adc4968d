"""Batteries, held against the definition of the watt-hour and handed-down sums."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import battery, furnace
from hatchleaf.units import number_in, quantity


def test_an_ampere_hour_at_a_volt_is_3600_joules() -> None:
    """The SI's own definition."""
    energy = battery.energy(quantity(1, "ampere_hour"), quantity(1, "volt"))

    assert number_in(energy, "joule") == pytest.approx(3600)


def test_two_six_volt_batteries_hold_what_one_of_twelve_does() -> None:
    """In series volts add up, not ampere-hours: adding these would double it."""
    charge = quantity(220, "ampere_hour")
    series = 2 * battery.energy(charge, quantity(6, "volt"))

    assert number_in(series, "watt_hour") == pytest.approx(
        number_in(battery.energy(charge, battery.NOMINAL), "watt_hour")
    )


@pytest.mark.parametrize(
    ("chemistry", "volts", "usable"), [("flooded", 12, 600), ("lfp", 12.8, 1024)]
)
def test_typical_use_of_100_ah(chemistry: str, volts: float, usable: float) -> None:
    """What trade pages give for a 100 Ah battery: half, or four fifths for LFP."""
    # Common practice (secondary): 600 Wh flooded, 1,024 Wh LFP.
    energy = battery.energy(quantity(100, "ampere_hour"), quantity(volts, "volt"))

    assert number_in(energy, "watt_hour") * battery.TYPICAL_USABLE[
        chemistry
    ] == pytest.approx(usable)


def test_a_furnace_night_takes_30_ampere_hours() -> None:
    """8.5 A at 35 % for 10 hours is 29.75 Ah: that much lasts one night."""
    # A blower of 8 to 9 A by two trade lists (secondary); worked by hand.
    charge = battery.energy(quantity(29.75, "ampere_hour"), battery.NOMINAL)

    night = battery.hours(
        charge, quantity(8.5, "ampere"), battery.NOMINAL, duty=furnace.DUTY
    )

    assert number_in(night, "hour") == pytest.approx(number_in(furnace.NIGHT, "hour"))


def test_milliampere_hours_need_a_voltage() -> None:
    """Charge alone is no energy."""
    with pytest.raises(pint.DimensionalityError):
        battery.hours(
            quantity(100, "ampere_hour"), quantity(1, "ampere"), battery.NOMINAL
        )


@pytest.mark.parametrize("duty", [0.0, 1.5])
def test_an_impossible_duty_is_refused(duty: float) -> None:
    """A load runs for some of the time, and never for more than all of it."""
    with pytest.raises(ValueError, match="duty must be above 0 and up to 1"):
        battery.hours(
            quantity(600, "watt_hour"),
            quantity(1, "ampere"),
            battery.NOMINAL,
            duty=duty,
        )


@given(st.floats(50, 10_000), st.floats(0.05, 50), st.floats(1.01, 3))
def test_a_heavier_load_runs_shorter(watt_hours: float, amps: float, by: float) -> None:
    """Hours fall with the current and grow with the energy."""
    energy, draw = quantity(watt_hours, "watt_hour"), quantity(amps, "ampere")
    base = battery.hours(energy, draw, battery.NOMINAL)

    assert battery.hours(energy, draw * by, battery.NOMINAL) < base
    assert battery.hours(energy * by, draw, battery.NOMINAL) > base
