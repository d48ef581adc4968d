"""Hot water, held against the equation of state, printed tables and a design guide."""

from __future__ import annotations

import pint
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import hot_water
from hatchleaf.units import Quantity, number_in, quantity

POUND = 0.45359237  # kg, exact
GALLON = 3.785411784e-3  # m3, exact
BTU = 1055.05585262  # J, exact for the international table BTU


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8 + 273.15


def _enthalpy(fahrenheit: float) -> float:
    value: float = PropsSI("H", "T", _kelvin(fahrenheit), "P", 101_325, "Water")
    return value


def _gallon_of_cold_water(cold: float) -> float:
    density: float = PropsSI("D", "T", _kelvin(cold), "P", 101_325, "Water")
    return density * GALLON


@pytest.mark.parametrize(
    ("cold", "hot"), [(40, 120), (50, 105), (60, 120), (60, 140), (75, 130)]
)
def test_heat_agrees_with_the_equation_of_state(cold: float, hot: float) -> None:
    """Enthalpy of 6 gal of water by IAPWS-95, from cold to hot."""
    # CoolProp: 60 to 120 degF gives 2,997 BTU where the rule gives 3,002.
    kilograms = 6 * _gallon_of_cold_water(cold)
    exact = kilograms * (_enthalpy(hot) - _enthalpy(cold)) / BTU

    ours = hot_water.heat(quantity(6, "gallon"), hot - cold)

    assert number_in(ours, "Btu") == pytest.approx(exact, rel=0.004)


@pytest.mark.parametrize(
    ("rate", "gpm", "cold"),
    [(42_000, 1.5, 50), (42_000, 2.5, 60), (60_000, 1.5, 55), (60_000, 2.0, 45)],
)
def test_rise_agrees_with_the_equation_of_state(
    rate: float, gpm: float, cold: float
) -> None:
    """The heat that the flow carries off by IAPWS-95 is the heat that went in."""
    rise = hot_water.rise(
        quantity(rate, "Btu / hour"), quantity(gpm, "gallon / minute"), efficiency=0.82
    )

    # CoolProp: mass flow of cold water times its rise of enthalpy.
    flow = gpm * _gallon_of_cold_water(cold) / 60
    warm = cold + number_in(rise, "delta_degF")
    carried = flow * (_enthalpy(warm) - _enthalpy(cold)) / BTU * 3600
    assert carried == pytest.approx(rate * 0.82, rel=0.004)


@pytest.mark.parametrize(
    ("rate", "gpm", "printed"),
    [(42_000, 1, 68.8), (42_000, 1.5, 45.9), (42_000, 2, 34.4), (60_000, 1.5, 65.5)],
)
def test_rise_agrees_with_the_rule_of_five_hundred(
    rate: float, gpm: float, printed: float
) -> None:
    """BTU/h = 500.4 x gpm x rise, the plumber's rule, worked by hand at 82 %."""
    rise = hot_water.rise(
        quantity(rate, "Btu / hour"), quantity(gpm, "gallon / minute"), efficiency=0.82
    )

    assert number_in(rise, "delta_degF") == pytest.approx(printed, abs=0.06)


def test_half_the_flow_gets_twice_as_warm() -> None:
    """A guide prints 33 degrees at 2 gpm and 65 at 1 gpm for one heater."""
    # Home repair guide on heaters without a tank (secondary), from a maker's data.
    rate = quantity(40_000, "Btu / hour")
    two, one = (
        hot_water.rise(rate, quantity(gpm, "gallon / minute"), efficiency=0.82)
        for gpm in (2, 1)
    )

    assert number_in(one / two, "dimensionless") == pytest.approx(65 / 33, rel=0.02)


@pytest.mark.parametrize(
    ("watts", "rise", "printed"),
    [
        # Electric water heater recovery table at 100 % efficiency, gallons an hour, on a
        # heater trade site (secondary); its 26.6 at 5,000 W and 80 degrees is a
        # misprint of 25.6 and left out.
        (750, 60, 5.1),
        (1000, 70, 5.8),
        (1250, 80, 6.4),
        (1500, 60, 10.2),
        (1500, 90, 6.8),
        (2000, 100, 8.2),
        (2500, 70, 14.6),
        (3000, 90, 13.6),
        (3500, 80, 17.9),
        (3800, 60, 26.0),
        (4500, 80, 23.0),
        (4500, 90, 20.5),
        (5500, 100, 22.5),
        (6000, 70, 35.0),
    ],
)
def test_recovery_agrees_with_a_printed_table(
    watts: float, rise: float, printed: float
) -> None:
    """Gallons an hour of an electric element."""
    ours = hot_water.recovery(quantity(watts, "watt"), rise)

    assert number_in(ours, "gallon / hour") == pytest.approx(printed, abs=0.1)


@pytest.mark.parametrize(
    ("rate", "efficiency", "minutes"),
    [
        # By hand: 3,002.4 BTU / (12,000 x 0.80) and / (1,440 W x 3.412).
        (quantity(12_000, "Btu / hour"), 0.80, 18.8),
        (quantity(1_440, "watt"), 1.0, 36.7),
    ],
)
def test_reheat_agrees_with_a_sum_by_hand(
    rate: Quantity, efficiency: float, minutes: float
) -> None:
    """6 gal by 60 degrees."""
    time = hot_water.reheat_time(quantity(6, "gallon"), 60, rate, efficiency=efficiency)

    assert number_in(time, "minute") == pytest.approx(minutes, abs=0.1)


@pytest.mark.parametrize(("cold", "printed"), [(40, 1.75), (50, 1.667), (80, 1.25)])
def test_mix_agrees_with_a_design_guide(cold: float, printed: float) -> None:
    """Hot water in a 2.5 gpm shower at 110 degF from a tank at 140 degF."""
    # UFC 3-420-01 (25 October 2004), appendix, mixing equation.
    share = hot_water.hot_share(cold, 140, 110)

    assert 2.5 * share == pytest.approx(printed, abs=0.001)


@pytest.mark.parametrize(
    ("mixed", "cold", "percent"),
    [
        # Table of the share of 180 degF water in a mix, water heating formulas of a
        # heater maker (read in a copy).
        (140, 40, 71),
        (140, 50, 69),
        (140, 60, 67),
        (120, 40, 57),
        (120, 50, 54),
        (120, 60, 50),
        (120, 80, 40),
        (100, 40, 43),
        (100, 60, 33),
        (100, 70, 27),
    ],
)
def test_mix_agrees_with_a_printed_table(
    mixed: float, cold: float, percent: float
) -> None:
    """Share of hot water from a supply at 180 degF."""
    assert 100 * hot_water.hot_share(cold, 180, mixed) == pytest.approx(
        percent, abs=0.9
    )


def test_a_shower_agrees_with_the_agency() -> None:
    """10 minutes at 2.5 gpm are 25 gal."""
    # EPA WaterSense (NEPIS P10180T5): federal limit 2.5 gpm, 25 gal in 10 minutes.
    time = hot_water.shower_time(
        quantity(25, "gallon"), flow=quantity(2.5, "gallon / minute")
    )

    assert number_in(time, "minute") == pytest.approx(10)


@pytest.mark.parametrize(
    ("fahrenheit", "seconds"), [(150, 2), (140, 6), (130, 30), (120, 300)]
)
def test_scald_times_are_those_of_the_commission(
    fahrenheit: float, seconds: float
) -> None:
    """Water that burns an adult's skin deeply."""
    # CPSC, tap water scalds, as reproduced on public pages (secondary).
    assert number_in(hot_water.SCALDS[fahrenheit], "second") == seconds


def test_scald_times_agree_with_a_university() -> None:
    """130 degF in 30 seconds; hotter water takes less time, always."""
    # A university's health column: 30 seconds at 130 degF burn to the third degree.
    assert number_in(hot_water.SCALDS[130], "second") == 30
    by_heat = [number_in(t, "second") for _, t in sorted(hot_water.SCALDS.items())]
    assert by_heat == sorted(by_heat, reverse=True)


def test_the_usable_share_is_that_of_the_first_hour_rating() -> None:
    """First-hour rating = recovery + 70 % of the tank."""
    # Heater trade site and a reference site on sizes (secondary).
    assert hot_water.USABLE_SHARE == 0.70


def test_temperatures_out_of_order_are_refused() -> None:
    """No mix is hotter than the hot water or colder than the cold."""
    for cold, hot, mixed in ((60, 120, 130), (60, 120, 50), (60, 60, 60)):
        with pytest.raises(ValueError, match="out of order"):
            hot_water.hot_share(cold, hot, mixed)


def test_nonsense_is_refused() -> None:
    """A heater of 120 % efficiency, no rise, pounds of water."""
    rate, flow = quantity(42_000, "Btu / hour"), quantity(1, "gallon / minute")
    with pytest.raises(ValueError, match="efficiency must be from 0 to 1"):
        hot_water.rise(rate, flow, efficiency=1.2)
    with pytest.raises(ValueError, match="rise must be above 0"):
        hot_water.recovery(rate, 0)
    with pytest.raises(ValueError, match="efficiency must be above 0"):
        hot_water.reheat_time(quantity(6, "gallon"), 60, rate, efficiency=0)
    with pytest.raises(ValueError, match="mixed above cold must be above 0"):
        hot_water.mixed_volume(quantity(6, "gallon"), mixed=hot_water.COLD)
    with pytest.raises(pint.DimensionalityError):
        hot_water.heat(quantity(50, "pound"), 60)


@given(st.floats(1, 40), st.floats(5, 90), st.floats(2_000, 80_000), st.floats(1.01, 3))
def test_each_input_has_its_direction(
    gallons: float, rise: float, rate: float, by: float
) -> None:
    """More flame is quicker and warmer; more water and more rise take longer."""
    tank, burner = quantity(gallons, "gallon"), quantity(rate, "Btu / hour")
    flow = quantity(gallons / 10, "gallon / minute")
    time = hot_water.reheat_time(tank, rise, burner)
    got = hot_water.rise(burner, flow, efficiency=0.8)

    assert hot_water.reheat_time(tank, rise, burner * by) < time
    assert hot_water.reheat_time(tank * by, rise, burner) > time
    assert hot_water.reheat_time(tank, rise * by, burner) > time
    assert hot_water.rise(burner, flow * by, efficiency=0.8) < got
    assert hot_water.rise(burner * by, flow, efficiency=0.8) > got
    # What the heat warms is the water that took it.
    back = hot_water.warmed(hot_water.heat(tank, rise), rise)
    assert number_in(back, "gallon") == pytest.approx(gallons)
    # A tank that gives its recovery for its reheat time is full again.
    again = hot_water.recovery(burner, rise) * time
    assert number_in(again, "gallon") == pytest.approx(gallons)


@given(st.floats(35, 80), st.floats(1, 60), st.floats(0, 1))
def test_a_mix_keeps_its_heat(cold: float, by: float, share: float) -> None:
    """Hot and cold water mixed by the share have the temperature asked for."""
    hot = cold + by
    mixed = min(hot, max(cold, cold + share * by))

    found = hot_water.hot_share(cold, hot, mixed)

    assert found * hot + (1 - found) * cold == pytest.approx(mixed)
