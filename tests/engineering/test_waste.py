"""Waste tanks, held against public tests of flow, codes and reference libraries."""

from __future__ import annotations

import math

import pint
import pytest
from fluids.flow_meter import C_Reader_Harris_Gallagher
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from hatchleaf.engineering import waste, water
from hatchleaf.units import number_in, quantity


def test_time_agrees_with_the_bucket_test() -> None:
    """Half a gallon at 2.0 gpm takes 15 seconds."""
    # EPA WaterSense (NEPIS P100WT70): at most 0.5 gal in 15 s is 2.0 gpm.
    time = waste.time_to_overflow(
        quantity(0.5, "gallon"), quantity(2, "gallon / minute")
    )

    assert number_in(time, "second") == pytest.approx(15)


@pytest.mark.parametrize(("gallons", "water"), [(20, 2), (40, 2), (60, 3), (100, 5)])
def test_starting_water_follows_the_rule(gallons: float, water: float) -> None:
    """5 % of the tank, at least 2 gal."""
    # Common practice, no source; worked by hand.
    assert number_in(
        waste.precharge(quantity(gallons, "gallon")), "gallon"
    ) == pytest.approx(water)


def test_a_length_is_refused() -> None:
    """A tank's length says nothing of its volume."""
    with pytest.raises(pint.DimensionalityError):
        waste.precharge(quantity(40, "inch"))


@given(st.floats(1, 100), st.floats(0.2, 10), st.floats(1.01, 3))
def test_a_stronger_rinse_overflows_sooner(
    gallons: float, gpm: float, by: float
) -> None:
    """The highest flow gives the soonest time, a bigger tank a later one."""
    tank, flow = quantity(gallons, "gallon"), quantity(gpm, "gallon / minute")
    base = waste.time_to_overflow(tank, flow)

    assert waste.time_to_overflow(tank, flow * by) < base
    assert waste.time_to_overflow(tank * by, flow) > base


@pytest.mark.parametrize(
    ("gallons", "inches", "depth"), [(40, 3, 0.25), (40, 2, 0.25), (25, 3, 0.15)]
)
def test_drain_time_agrees_with_an_integral(
    gallons: float, inches: float, depth: float
) -> None:
    """The flow summed up over the falling level by a numerical library."""
    # scipy: dt = A dh / (C a sqrt(2 g h)); 40 gal, 0.25 m: 48.4 s by 3 in, 108.8 s by
    # 2 in.
    tank = gallons * 3.785411784e-3
    area = tank / depth
    hole = math.pi * (inches * 0.0254 / 2) ** 2
    exact, _ = quad(
        lambda h: area / (waste.ORIFICE * hole * math.sqrt(2 * 9.80665 * h)), 0, depth
    )

    ours = waste.drain_time(
        quantity(gallons, "gallon"),
        quantity(inches, "inch"),
        depth=quantity(depth, "meter"),
    )

    assert number_in(ours, "second") == pytest.approx(exact, rel=1e-4)


def test_drain_time_agrees_with_a_published_demonstration() -> None:
    """Water 2 m high in a tank of 2.5 m radius, by a spigot of 0.01 m radius."""
    # A mathematics publisher's demonstration of Torricelli's law:
    # t = sqrt(2 h / g) (r / a)^2, without a coefficient, g 9.81.
    published = math.sqrt(2 * 2 / 9.81) * (2.5 / 0.01) ** 2

    ours = waste.drain_time(
        quantity(math.pi * 2.5**2 * 2, "meter ** 3"),
        quantity(0.02, "meter"),
        depth=quantity(2, "meter"),
    )

    assert number_in(ours, "second") * waste.ORIFICE == pytest.approx(
        published, rel=0.001
    )


def test_orifice_agrees_with_a_reference_library() -> None:
    """A sharp-edged opening: 0.6 to 0.63 at the flow of a sewer outlet."""
    # fluids: ISO 5167 (Reader-Harris and Gallagher), a 3 in opening in a wide pipe.
    coefficient = C_Reader_Harris_Gallagher(
        D=0.6, Do=0.0762, rho=999.0, mu=1.1e-3, m=6.0, taps="corner"
    )

    assert coefficient == pytest.approx(waste.ORIFICE, abs=0.03)


@pytest.mark.parametrize(
    ("feet", "inches"),
    [
        # IRC and IPC, table of the slope of drains: 1/4 in a foot up to 2-1/2 in.
        (10, 2.5),
        (20, 5),
    ],
)
def test_fall_agrees_with_the_plumbing_code(feet: float, inches: float) -> None:
    """A quarter inch for each foot, about 2 %."""
    fall = waste.hose_fall(quantity(feet, "foot"))

    assert number_in(fall, "inch") == pytest.approx(inches)
    assert number_in(waste.FALL, "percent") == pytest.approx(2.08, abs=0.01)


def test_two_fills_thin_a_gallon_to_less_than_a_hundredth() -> None:
    """1 gal left, 10 gal filled, twice: 0.8 % stays."""
    # Worked by hand: (1 / 11)^2 = 0.83 %, so a promise of 0.8 % takes a third fill.
    ten = quantity(10, "gallon")
    assert waste.rinse_fills(ten) == 2
    assert waste.rinse_fills(ten, leave=0.0083) == 2
    assert waste.rinse_fills(ten, leave=0.0082) == 3


def test_an_exact_number_of_fills_is_not_rounded_up() -> None:
    """9 gal thin 1 gal to a tenth, so two leave just a hundredth."""
    assert waste.rinse_fills(quantity(9, "gallon")) == 2


def test_days_agree_with_a_sum_by_hand() -> None:
    """30 gal that start with 2 gal take 28 days of one person's 1 gal."""
    days = waste.days(
        quantity(30, "gallon"),
        people=1,
        each=waste.DAILY["black"],
        start=quantity(2, "gallon"),
    )

    assert number_in(days, "day") == pytest.approx(28)


def test_what_goes_in_comes_out() -> None:
    """Gray and black together take the water that a careful person uses."""
    both = waste.DAILY["gray"] + waste.DAILY["black"]

    assert both == waste.DAILY["combined"] == water.CAREFUL_USE


def test_nonsense_is_refused() -> None:
    """Nobody on board, a rinse without water."""
    tank, none = quantity(30, "gallon"), quantity(0, "gallon")
    with pytest.raises(ValueError, match="people must be 1 or more"):
        waste.days(tank, people=0, each=waste.DAILY["gray"], start=none)
    with pytest.raises(ValueError, match="must be above 0"):
        waste.rinse_fills(none)


@given(st.floats(5, 100), st.floats(1.01, 3), st.integers(1, 8))
def test_bigger_tanks_last_and_drain_longer(
    gallons: float, by: float, people: int
) -> None:
    """More people fill them sooner; a wider outlet empties them sooner."""
    tank, start = quantity(gallons, "gallon"), quantity(2, "gallon")
    each, outlet = waste.DAILY["gray"], quantity(3, "inch")
    base = waste.days(tank, people=people, each=each, start=start)

    assert waste.days(tank * by, people=people, each=each, start=start) > base
    assert waste.days(tank, people=people + 1, each=each, start=start) < base
    time = waste.drain_time(tank, outlet)
    assert waste.drain_time(tank * by, outlet) > time
    assert waste.drain_time(tank, outlet * by) < time


@given(st.floats(0.5, 30), st.floats(0.1, 5))
def test_rinsing_leaves_no_more_than_it_promises(fill: float, residue: float) -> None:
    """And one fill fewer would leave more."""
    count = waste.rinse_fills(
        quantity(fill, "gallon"), residue=quantity(residue, "gallon")
    )
    thinned = residue / (residue + fill)

    assert thinned**count <= waste.CLEAN_ENOUGH * (1 + 1e-6)
    assert count == 1 or thinned ** (count - 1) > waste.CLEAN_ENOUGH
