"""A usual day and night on gas, held against worked examples and the weather service."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import furnace, gas_day, propane
from hatchleaf.units import number_in, quantity


def test_a_day_agrees_with_the_handed_down_example() -> None:
    """Furnace 3.5 h, heater 1 h, fridge 12 h, one burner 45 min: 141,750 BTU."""
    # Common practice, no source; worked by hand: 141,750 / 21,548 = 6.578 lb a day.
    night = number_in(furnace.NIGHT, "hour") * furnace.DUTY
    day = gas_day.burned_a_day(
        (quantity(rate, "Btu / hour"), hours)
        for rate, hours in (
            (30_000, night),
            (12_000, gas_day.TANK_HEATER_HOURS),
            (1_500, gas_day.FRIDGE_HOURS),
            (9_000, gas_day.COOKTOP_HOURS),
        )
    )

    assert number_in(day, "pound / day") == pytest.approx(6.578, abs=0.001)
    # Two 20 lb cylinders: 861,920 / 141,750 BTU.
    days = quantity(40, "pound") / day
    assert number_in(days, "day") == pytest.approx(6.08, abs=0.005)


@pytest.mark.parametrize(
    ("rate", "printed"),
    [
        # Gallons an hour of a flame on a page about burners (secondary): 0.33.
        (30_000, 0.33),
        # By hand with the energy agency's 91,452 BTU a gallon.
        (16_000, 0.175),
        (42_000, 0.459),
    ],
)
def test_an_hour_agrees_with_printed_gallons(rate: float, printed: float) -> None:
    """A flame that is always lit, by the gallon."""
    day = gas_day.burned_a_day([(quantity(rate, "Btu / hour"), 24)])
    hourly = day * quantity(1, "hour") / propane.LIQUID_DENSITY

    assert number_in(hourly, "gallon") == pytest.approx(printed, rel=0.02)


def test_a_night_on_the_battery_agrees_with_the_handed_down_example() -> None:
    """8.5 A, 10 hours, 35 % of the time: 29.8 Ah."""
    # Common practice, no source; worked by hand.
    charge = furnace.charge(quantity(8.5, "ampere"))

    assert number_in(charge, "ampere_hour") == pytest.approx(29.75)


def test_heat_is_needed_below_the_base_of_degree_days() -> None:
    """No heat at 65 degF outside, the typical share near freezing."""
    # US National Weather Service: heating degree days count from 65 degF.
    assert furnace.duty_at(65) == 0
    assert furnace.duty_at(80) == 0
    assert furnace.duty_at(32) == pytest.approx(furnace.DUTY)


@pytest.mark.parametrize(
    ("mean", "degree_days"), [(50, 15), (40, 25), (30, 35), (20, 45), (0, 65)]
)
def test_the_share_follows_degree_days(mean: float, degree_days: float) -> None:
    """Twice the degree days of a day take twice the heat."""
    # US National Weather Service: degree days of a day are 65 less its mean.
    per_degree_day = furnace.duty_at(mean) / degree_days

    assert per_degree_day == pytest.approx(furnace.DUTY / 33)


def test_a_furnace_never_runs_for_more_than_the_night() -> None:
    """However cold it is."""
    assert furnace.duty_at(-60) == 1


def test_nonsense_is_refused() -> None:
    """25 hours a day, a duty above all the time, a current that is none."""
    with pytest.raises(ValueError, match="hours must be from 0 to 24"):
        gas_day.burned_a_day([(quantity(1_500, "Btu / hour"), 25)])
    with pytest.raises(ValueError, match="duty must be from 0 to 1"):
        furnace.charge(quantity(8, "ampere"), duty=1.1)
    with pytest.raises(pint.DimensionalityError):
        furnace.charge(quantity(8, "watt"))


@pytest.mark.parametrize(
    ("load", "capacity", "percent"), [(59_050, 150_000, 39.4), (160_000, 160_000, 100)]
)
def test_a_regulator_is_used_by_its_share(
    load: float, capacity: float, percent: float
) -> None:
    """Worked by hand."""
    used = propane.regulator_use(
        quantity(load, "Btu / hour"), quantity(capacity, "Btu / hour")
    )

    assert number_in(used, "percent") == pytest.approx(percent, abs=0.05)


@given(st.floats(-60, 90), st.floats(0.1, 30))
def test_colder_never_needs_less(outside: float, colder: float) -> None:
    """And the share stays a share."""
    assert 0 <= furnace.duty_at(outside) <= furnace.duty_at(outside - colder) <= 1


@given(
    st.lists(
        st.tuples(st.floats(500, 60_000), st.floats(0, 24)), min_size=1, max_size=5
    )
)
def test_a_day_is_the_sum_of_its_burners(uses: list[tuple[float, float]]) -> None:
    """In any order; each burner adds what it burns alone."""
    given_uses = [(quantity(rate, "Btu / hour"), hours) for rate, hours in uses]
    each = sum(
        number_in(gas_day.burned_a_day([use]), "pound / day") for use in given_uses
    )

    whole = gas_day.burned_a_day(reversed(given_uses))

    assert number_in(whole, "pound / day") == pytest.approx(each)
