"""Supplies and adapters, generators up high, heat, and fuses, against the outside."""

from __future__ import annotations

import pint
import pvlib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import electric_heat, generator, shore_power, wiring
from hatchleaf.engineering.shore_power import Outlet
from hatchleaf.units import number_in, quantity

FIFTY = Outlet(50, 2)
THIRTY = Outlet(30)


# NEC 551.71: a site has 20 A, 30 A or 50 A (125/250 V) receptacles; 15 A is a house's.
def test_the_outlets_are_those_of_the_code() -> None:
    """Only the 50 A one has two legs."""
    assert [(one.amps, one.legs) for one in shore_power.OUTLETS] == [
        (15, 1),
        (20, 1),
        (30, 1),
        (50, 2),
    ]


@pytest.mark.parametrize(
    ("outlet", "unit", "gets"),
    [
        (FIFTY, THIRTY, THIRTY),
        (THIRTY, FIFTY, THIRTY),
        (Outlet(15), FIFTY, Outlet(15)),
        (FIFTY, Outlet(20), Outlet(20)),
        (FIFTY, FIFTY, FIFTY),
    ],
)
def test_an_adapter_gives_the_smaller_of_the_two(
    outlet: Outlet, unit: Outlet, gets: Outlet
) -> None:
    """Common practice, no source: an adapter changes the shape of the plug, no more."""
    assert shore_power.through_adapter(outlet, unit) == gets


# 80 % of the breaker at 120 V (NEC 210.20(A)): 1,440, 1,920, 2,880 and 4,800 W a leg.
@pytest.mark.parametrize(
    ("watts", "amps"),
    [(1440, 15), (1441, 20), (1920, 20), (1921, 30), (2880, 30), (2881, 50), (4801, 0)],
)
def test_the_smallest_outlet_for_a_steady_load(watts: float, amps: float) -> None:
    """One load on one leg of a 50 A unit, at each edge."""
    found = shore_power.smallest_outlet([(watts, "a")], FIFTY, 120)

    assert (found.amps if found else 0) == amps


def test_two_legs_share_one_leg_of_a_smaller_outlet() -> None:
    """2,000 W on each leg is easy on 50 A, and too much for 30 A through an adapter."""
    both = [(2000.0, "a"), (2000.0, "b")]

    assert shore_power.smallest_outlet(both, FIFTY, 120) == FIFTY
    assert sum(watts for watts, _ in both) > 0.8 * 30 * 120


def test_a_printed_mix_trips_a_thirty_ampere_unit() -> None:
    """A trade page's kitchen of 48.7 A fits on no 30 A supply."""
    amps = (12.5, 12.5, 9, 10, 2, 2.7)
    loads = [(one * 120, "a") for one in amps]

    assert shore_power.smallest_outlet(loads, THIRTY, 120) is None


def test_a_unit_is_not_offered_more_than_its_own() -> None:
    """20 A units never plug into 30 A outlets: the breaker there is too large."""
    assert shore_power.outlets_for(Outlet(20)) == (Outlet(15), Outlet(20))
    assert shore_power.outlets_for(FIFTY)[-1] == FIFTY
    assert shore_power.outlets_for(Outlet(25))[-1] == Outlet(25)


# Advice to caravanners, six public pages: 16 A 3,680 W, 10 A 2,300 W, 6 A 1,380 W.
@pytest.mark.parametrize(("amps", "watts"), [(6, 1380), (10, 2300), (16, 3680)])
def test_a_site_of_230_v_gives_what_is_printed(amps: float, watts: float) -> None:
    """A load of just so much needs that supply, one watt more the next."""
    rule, unit = shore_power.EUROPE, Outlet(16)

    def smallest(load: float) -> Outlet | None:
        return shore_power.smallest_outlet([(load, "a")], unit, 230, rule=rule)

    assert smallest(watts) == Outlet(amps)
    above = smallest(watts + 1)
    assert above is None or above.amps > amps


def test_each_market_has_its_own_outlets() -> None:
    """No 120 V outlet is offered to a unit of 230 V."""
    assert shore_power.outlets_for(Outlet(16), shore_power.rule_of("uk")) == (
        Outlet(6),
        Outlet(10),
        Outlet(16),
    )
    assert shore_power.outlets_for(Outlet(15), shore_power.rule_of("au")) == (
        Outlet(10),
        Outlet(15),
    )
    assert shore_power.rule_of("ca").share < shore_power.rule_of("eu").share == 1


@given(
    st.lists(
        st.tuples(st.floats(1, 3000), st.sampled_from(["a", "b", "unknown"])),
        max_size=5,
    ),
    st.floats(1, 3000),
)
def test_one_more_load_never_needs_less(
    loads: list[tuple[float, str]], watts: float
) -> None:
    """Nothing is gained by turning more on."""
    before = shore_power.smallest_outlet(loads, FIFTY, 120)
    after = shore_power.smallest_outlet([*loads, (watts, "a")], FIFTY, 120)

    assert after is None or (before is not None and before.amps <= after.amps)


# Pressure of the standard atmosphere (pvlib alt2pres): an engine breathes by it.
@pytest.mark.parametrize("feet", [1000, 3000, 5000, 8000, 10_000])
def test_derating_follows_the_air(feet: float) -> None:
    """3.5 % for each 1,000 ft lies within 0.04 of the ratio of pressures."""
    air = float(pvlib.atmosphere.alt2pres(feet * 0.3048)) / 101_325
    left = number_in(
        generator.at_altitude(quantity(1, "watt"), quantity(feet, "foot")), "watt"
    )

    assert left == pytest.approx(air, abs=0.04)


def test_derating_agrees_with_a_printed_figure() -> None:
    """Trade pages: 3.5 % per 1,000 ft leaves 82.5 % at 5,000 ft."""
    left = generator.at_altitude(quantity(4000, "watt"), quantity(5000, "foot"))

    assert number_in(left, "watt") == pytest.approx(3300)


# Trade pages: 13,500 BTU units run at 1,250-1,600 W and start at 2,300-3,000 W.
@pytest.mark.parametrize("running", [1250, 1400, 1500])
def test_a_start_lies_within_the_printed_range(running: float) -> None:
    """Pages disagree by half; twice the running power lies among them."""
    found = number_in(generator.start(quantity(running, "watt")), "watt")

    assert 2300 <= found <= 3500


# Trade pages: a 13,500 BTU unit wants a generator of 3,000-4,000 W; a 30 A one is 3,600.
@pytest.mark.parametrize("running", [1250, 1400])
def test_a_generator_with_the_charger_on_is_of_the_usual_size(running: float) -> None:
    """From memory; the charger of 55 A takes about 900 W, and none takes nothing."""
    cooler = quantity(running, "watt")
    beside = generator.needed(cooler, quantity(900, "watt"))

    assert 3000 <= number_in(beside, "watt") <= 4000
    assert generator.needed(cooler, None) == generator.start(cooler)


@pytest.mark.parametrize("feet", [-1, 15_001])
def test_no_figure_for_heights_where_nobody_camps(feet: float) -> None:
    """Below the sea or above the roads."""
    with pytest.raises(ValueError, match="height must be"):
        generator.at_altitude(quantity(1, "watt"), quantity(feet, "foot"))


@given(st.floats(0, 15_000), st.floats(0, 15_000))
def test_higher_is_never_stronger(one: float, other: float) -> None:
    """Thin air gives nothing."""
    low, high = sorted((one, other))
    rated = quantity(3000, "watt")

    assert generator.at_altitude(rated, quantity(high, "foot")) <= (
        generator.at_altitude(rated, quantity(low, "foot")) + quantity(1e-9, "watt")
    )


# Printed heat strips: 5,600 BTU/h from 1,641 W; 1 kW is 3,412.141 BTU/h (unit tables).
@pytest.mark.parametrize(
    ("watts", "btu"), [(1641, 5600), (1000, 3412.141), (1500, 5118), (1800, 6142)]
)
def test_heat_agrees_with_printed_strips(watts: float, btu: float) -> None:
    """Every watt is 3.412 BTU an hour."""
    found = electric_heat.heat(quantity(watts, "watt"))

    assert number_in(found, "Btu / hour") == pytest.approx(btu, rel=0.0003)


# ISO 8820-3 and SAE J1284, as two trade pages print them.
@pytest.mark.parametrize(
    ("amps", "color"),
    [
        (1, "black"),
        (2, "gray"),
        (3, "violet"),
        (4, "pink"),
        (5, "tan"),
        (7.5, "brown"),
        (10, "red"),
        (15, "blue"),
        (20, "yellow"),
        (25, "clear"),
        (30, "green"),
        (35, "blue-green"),
        (40, "orange"),
    ],
)
def test_fuse_colors_are_those_of_the_standard(amps: float, color: str) -> None:
    """One row each."""
    assert wiring.fuse_color(quantity(amps, "ampere")) == color


# MAXI fuses of the same pages: red is 50 A, brown 35 A, blue 60 A.
@pytest.mark.parametrize("amps", [50, 60, 12])
def test_no_color_is_told_for_other_kinds(amps: float) -> None:
    """The larger family uses the same colors for other ratings: say nothing."""
    assert wiring.fuse_color(quantity(amps, "ampere")) == ""


# Worked with R of NEC table 8 (12 AWG 1.98, 14 AWG 3.14, 10 AWG 1.24 ohm/kft).
@pytest.mark.parametrize(("gauge", "volts"), [(14, 3.768), (12, 2.376), (10, 1.488)])
def test_fifty_feet_of_extension_cord_by_the_table(gauge: int, volts: float) -> None:
    """12 A out and back through 50 ft: 2 x 12 x 50 x R / 1000."""
    found = wiring.drop(quantity(12, "ampere"), gauge, quantity(50, "foot"))

    assert number_in(found, "volt") == pytest.approx(volts, rel=0.006)


# ABYC E-11: CM = 10.75 I L / E with L out and back; 12 AWG is 6,530 circular mils.
def test_drop_agrees_with_the_marine_formula() -> None:
    """Its constant is for cool copper: 10 A over 15 ft each way lose 0.494 V there."""
    found = number_in(
        wiring.drop(quantity(10, "ampere"), 12, quantity(15, "foot")), "volt"
    )
    marine = 10.75 * 10 * 30 / 6530

    assert marine == pytest.approx(0.494, abs=0.001)
    # 75 degC against 25 degC, and the strands: a fifth more.
    assert found / marine == pytest.approx(1 + 0.00393 * 50, rel=0.03)


def test_a_tow_vehicle_s_long_wire_loses_its_voltage() -> None:
    """30 ft one way of 12 gauge: 0.119 ohm, so 1.2 V at 10 A (NEC table 8)."""
    found = wiring.drop(quantity(10, "ampere"), 12, quantity(30, "foot"))

    assert number_in(found, "volt") == pytest.approx(1.188, rel=0.006)


def test_a_length_is_not_a_power() -> None:
    """By their dimension."""
    with pytest.raises(pint.DimensionalityError):
        electric_heat.heat(quantity(1, "foot"))
