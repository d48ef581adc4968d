"""Cold, heavy loads, charging, storage and a night's use, against worked examples."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import battery, charging, inverter, power_use
from hatchleaf.units import number_in, quantity

_LEAD = st.sampled_from(["flooded", "agm", "gel"])


# A worked example of trade handbooks: 100 Ah at the 20-hour rate, exponent 1.25.
@pytest.mark.parametrize(("amps", "hours"), [(5, 20.0), (20, 3.54), (10, 8.41)])
def test_peukert_agrees_with_the_worked_example(amps: float, hours: float) -> None:
    """20 (100 / (20 I)) ** 1.25; the third row by hand: 20 / 2 ** 1.25."""
    found = battery.peukert_hours(
        quantity(100, "ampere_hour"), quantity(amps, "ampere"), 1.25
    )

    assert number_in(found, "hour") == pytest.approx(hours, abs=0.005)


def test_peukert_leaves_70_of_100_ampere_hours() -> None:
    """The same example: 20 A for 3.54 hours are 70.7 Ah."""
    share = battery.heavy_share(
        quantity(100, "ampere_hour"), quantity(20, "ampere"), 1.25
    )

    assert share == pytest.approx(0.707, abs=0.0005)


# Handbook of a battery monitor, exponents from 20-hour and 25 A data; other texts.
@pytest.mark.parametrize(
    ("kind", "low", "high"),
    [
        ("flooded", 1.14, 1.30),
        ("gel", 1.10, 1.25),
        ("agm", 1.05, 1.15),
        ("lfp", 1.0, 1.05),
    ],
)
def test_exponents_lie_in_the_printed_ranges(
    kind: str, low: float, high: float
) -> None:
    """And on the careful side of their middle."""
    assert (low + high) / 2 <= battery.TYPICAL_PEUKERT[kind] <= high


# A maker's sizing multiplier of 1.65 at 14 degF; "20 % or more lost" at 32 degF; two
# pages print 45 % and 60 % at 0 degF.
@pytest.mark.parametrize(
    ("degrees", "low", "high"), [(77, 1.0, 1.0), (32, 0.78, 0.80), (0, 0.45, 0.60)]
)
def test_cold_lead_acid_agrees_with_the_pages(
    degrees: float, low: float, high: float
) -> None:
    """The share that is left, by a page each."""
    assert low <= battery.cold_share("flooded", degrees) <= high


def test_cold_lead_acid_agrees_with_the_maker_s_multiplier() -> None:
    """1 / 1.65 at 14 degF."""
    assert battery.cold_share("agm", 14) == pytest.approx(1 / 1.65, abs=0.005)


# US Army TM: cranking power 65 % at 30 degF and 40 % at 0 degF of that at 80 degF.
@pytest.mark.parametrize(("degrees", "cranking"), [(30, 0.65), (0, 0.40)])
def test_capacity_falls_less_than_cranking_power(
    degrees: float, cranking: float
) -> None:
    """The two are often mixed up; ampere-hours hold up better than a starter's amps."""
    assert battery.cold_share("flooded", degrees) > cranking


def test_no_figure_below_the_table() -> None:
    """Below zero nothing worth printing is known."""
    with pytest.raises(ValueError, match="no figure below"):
        battery.cold_share("lfp", -1)


@given(
    st.sampled_from(["flooded", "agm", "gel", "lfp"]),
    st.floats(0, 90),
    st.floats(0, 90),
)
def test_colder_never_gives_more(kind: str, one: float, other: float) -> None:
    """And a warm battery gives what is rated, no more."""
    cold, warm = sorted((one, other))

    assert battery.cold_share(kind, cold) <= battery.cold_share(kind, warm) <= 1


@given(_LEAD, st.floats(1, 400), st.floats(0.1, 300))
def test_a_heavy_load_never_gains(kind: str, amp_hours: float, amps: float) -> None:
    """Below the 20-hour rate nothing is added; above it, something is lost."""
    share = battery.heavy_share(
        quantity(amp_hours, "ampere_hour"),
        quantity(amps, "ampere"),
        battery.TYPICAL_PEUKERT[kind],
    )

    assert 0 < share <= 1
    assert (share < 1 - 1e-9) == (amps > amp_hours / 20 * (1 + 1e-6)) or share > 0.999


def test_an_exponent_below_one_is_refused() -> None:
    """A battery that gains by heavy loads does not exist."""
    with pytest.raises(ValueError, match="exponent must be"):
        battery.peukert_hours(quantity(1, "ampere_hour"), quantity(1, "ampere"), 0.9)


# By hand, self-discharge left out: 100 Ah, half is 50 Ah; 50 / (24 x 0.25) and 0.5 A.
@pytest.mark.parametrize(("amps", "days"), [(0.25, 8.33), (0.5, 4.17), (1.2, 1.74)])
def test_a_standing_draw_takes_the_days_of_a_worked_table(
    amps: float, days: float
) -> None:
    """1.2 A was measured on one coach: two days to half."""
    found = charging.days_to_half(
        quantity(100, "ampere_hour"), quantity(amps, "ampere"), monthly_loss=0
    )

    assert number_in(found, "day") == pytest.approx(days, abs=0.005)


def test_flooded_batteries_lose_five_percent_a_month() -> None:
    """A maker's page at 77 degF: ten months to half with nothing connected."""
    loss = charging.TYPICAL["flooded"].monthly_loss
    found = charging.days_to_half(
        quantity(100, "ampere_hour"), quantity(0, "ampere"), monthly_loss=loss
    )

    assert number_in(found, "day") == pytest.approx(300)


def test_a_battery_that_loses_nothing_is_refused() -> None:
    """For ever is not a number of days."""
    with pytest.raises(ValueError, match="no time to half"):
        charging.days_to_half(
            quantity(1, "ampere_hour"), quantity(0, "ampere"), monthly_loss=0
        )


# By hand: 50 Ah at 10 A and 80 % is 6.25 hours, and 4 hours more for the slow end.
@pytest.mark.parametrize(("slow_end", "hours"), [(0, 6.25), (4, 10.25)])
def test_charging_time_by_hand(slow_end: float, hours: float) -> None:
    """Losses first, then the slow end."""
    found = charging.hours(
        quantity(50, "ampere_hour"),
        quantity(10, "ampere"),
        efficiency=0.8,
        slow_end=slow_end,
    )

    assert number_in(found, "hour") == pytest.approx(hours)


# 7-way charge lines in trade pages: 5 to 15 A at the end of the wire.
def test_the_charge_line_is_within_what_pages_print() -> None:
    """And in the lower half, so that the time is not too short."""
    assert 5 <= number_in(charging.CHARGE_LINE, "ampere") <= 10


def test_an_impossible_efficiency_is_refused() -> None:
    """More out than in."""
    with pytest.raises(ValueError, match="efficiency must be"):
        charging.hours(
            quantity(1, "ampere_hour"), quantity(1, "ampere"), efficiency=1.1
        )


@given(st.floats(1, 400), st.floats(1, 100), st.floats(1, 100))
def test_more_amperes_charge_sooner(amp_hours: float, one: float, other: float) -> None:
    """Whatever the battery."""
    weak, strong = sorted((one, other))
    taken = quantity(amp_hours, "ampere_hour")

    assert charging.hours(
        taken, quantity(strong, "ampere"), efficiency=0.85
    ) <= charging.hours(taken, quantity(weak, "ampere"), efficiency=0.85)


# Trade figures of a furnace's night: 8.5 A for 10 hours at 35 % are 29.8 Ah.
def test_the_blower_s_night_agrees_with_the_trade_s_sum() -> None:
    """As watt-hours at 12 V: 357."""
    found = power_use.energy(
        [(quantity(8.5, "ampere"), 10 * 0.35)], quantity(12, "volt")
    )

    assert number_in(found, "watt_hour") == pytest.approx(29.75 * 12)


# A compressor fridge takes 30 to 60 Ah a day by trade lists, 3 to 6 A while it runs.
@pytest.mark.parametrize("amps", [3, 4.5, 6])
def test_a_fridge_s_day_is_within_the_lists(amps: float) -> None:
    """At 40 % of the time, from 28.8 to 57.6 Ah."""
    hours = power_use.DAY_HOURS["always"] * power_use.FRIDGE_DUTY
    found = power_use.energy([(quantity(amps, "ampere"), hours)], quantity(12, "volt"))

    assert 28 <= number_in(found, "watt_hour") / 12 <= 60


@pytest.mark.parametrize("when", ["always", "evenings", "nights", "at_times"])
def test_a_night_is_part_of_its_day(when: str) -> None:
    """Nothing runs longer in a night than in the whole day."""
    assert power_use.NIGHT_HOURS[when] <= power_use.DAY_HOURS[when] <= 24


def test_hours_cannot_be_negative() -> None:
    """A load that gives power back is no load."""
    with pytest.raises(ValueError, match="must not be negative"):
        power_use.energy([(quantity(1, "ampere"), -1)], quantity(12, "volt"))


# By hand: 1,200 Wh x 0.85 / 1,000 W = 1.02 h; 1,000 / (12 x 0.85) = 98 A.
def test_an_inverter_by_hand() -> None:
    """A kettle empties a large battery in an hour, by 98 A."""
    usable, load = quantity(1200, "watt_hour"), quantity(1000, "watt")

    assert number_in(inverter.hours(usable, load), "hour") == pytest.approx(1.02)
    assert number_in(
        inverter.draw(load, quantity(12, "volt")), "ampere"
    ) == pytest.approx(98.04, abs=0.01)


# The usual rule of the trade: amperes at 12 V are watts over ten.
@pytest.mark.parametrize("watts", [100, 600, 2000])
def test_inverter_amperes_agree_with_watts_over_ten(watts: float) -> None:
    """The rule of thumb holds the losses too."""
    drawn = inverter.draw(quantity(watts, "watt"), quantity(12, "volt"))

    assert number_in(drawn, "ampere") == pytest.approx(watts / 10, rel=0.03)


def test_amperes_for_watts_are_refused() -> None:
    """By their dimension."""
    with pytest.raises(pint.DimensionalityError):
        inverter.hours(quantity(1, "watt_hour"), quantity(1, "ampere"))
