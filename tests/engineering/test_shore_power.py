"""Shore power, held against the code's own figures for campsites."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import shore_power
from hatchleaf.units import number_in, quantity


def _service(amps: float, volts: float, legs: int) -> float:
    whole = shore_power.service(
        quantity(amps, "ampere"), quantity(volts, "volt"), legs=legs
    )
    return number_in(whole, "watt")


@pytest.mark.parametrize(("amps", "printed"), [(20, 2_400), (30, 3_600)])
def test_service_agrees_with_the_park_table(amps: float, printed: float) -> None:
    """The code reckons these volt-amperes for such a site."""
    # NEC 551.73 as a trade magazine's worked example quotes it.
    assert _service(amps, 120, 1) == pytest.approx(printed)


def test_service_agrees_with_the_code_s_park_example() -> None:
    """Twenty 30 A sites at the demand factor of 45 % make 32,400 VA."""
    # NEC article 551 (2008), text on 20 sites: 1,620 VA a site, 32,400 VA in all.
    assert 20 * _service(30, 120, 1) * 0.45 == pytest.approx(32_400)


@pytest.mark.parametrize("volts", [120, 240])
def test_fifty_amperes_are_twelve_thousand_watts(volts: float) -> None:
    """120 or 240 may be written for the two legs: never 6,000, never 24,000."""
    # A 14-50 receptacle is 125/250 V, 50 A (NEC 551.71): 2 x 120 V x 50 A.
    assert _service(50, volts, 2) == pytest.approx(12_000)


def test_continuous_load_agrees_with_the_breaker_rule() -> None:
    """A breaker of 125 % of the continuous load is a load of 80 % of the breaker."""
    # NEC 210.20(A), as a code article quotes it: 24 A continuous needs 30 A.
    held = shore_power.continuous(quantity(30, "ampere"))

    assert number_in(held, "ampere") == pytest.approx(24)
    assert number_in(held * 1.25, "ampere") == pytest.approx(30)


def test_a_kitchen_of_a_trade_page_is_too_much_for_30_amperes() -> None:
    """A printed mix of 48.7 A, on one leg."""
    # Trade page (secondary): cooler 12.5, heater 12.5, coffee 9, toaster 10,
    # television 2, fridge 2.7 A "more than 30 A".
    amps = (12.5, 12.5, 9, 10, 2, 2.7)
    watts = [(one * 120, "a") for one in amps]

    assert shore_power.heaviest_leg(watts) == pytest.approx(48.7 * 120)


def test_loads_on_two_legs_do_not_add_up() -> None:
    """Each leg has its own breaker; the heavier one decides."""
    assert shore_power.heaviest_leg([(1500, "a"), (1400, "b")]) == 1500


def test_an_unknown_leg_counts_where_it_hurts() -> None:
    """Nobody knows which: so it stands on the heavier leg, and with its like."""
    assert shore_power.heaviest_leg([(1500, "a"), (1400, "unknown")]) == 2900
    assert shore_power.heaviest_leg([(900, "unknown"), (800, "unknown")]) == 1700


def test_no_leg_is_refused() -> None:
    """A service has one leg at least."""
    with pytest.raises(ValueError, match="legs must be 1 or more, got 0"):
        _service(30, 120, 0)


def test_volts_for_amperes_are_refused() -> None:
    """The order of two numbers must not be guessed at."""
    with pytest.raises(pint.DimensionalityError):
        shore_power.service(quantity(120, "volt"), quantity(30, "ampere"), legs=1)


_LOADS = st.lists(
    st.tuples(st.floats(1, 5_000), st.sampled_from(["a", "b", "unknown"])), max_size=8
)


@given(_LOADS, st.floats(1, 5_000), st.sampled_from(["a", "b", "unknown"]))
def test_a_further_load_never_lightens_a_leg(
    loads: list[tuple[float, str]], watts: float, leg: str
) -> None:
    """What does not fit cannot be made to fit by switching more on."""
    before = shore_power.heaviest_leg(loads)
    after = shore_power.heaviest_leg([*loads, (watts, leg)])

    assert after >= before
    assert sum(one for one, _ in loads) / 2 <= before * (1 + 1e-9) + 1e-9


@given(_LOADS)
def test_knowing_a_leg_never_makes_it_worse(loads: list[tuple[float, str]]) -> None:
    """The guess for an unknown leg is the worst of both answers."""
    for leg in ("a", "b"):
        known = [(watts, leg if on == "unknown" else on) for watts, on in loads]
        worst = shore_power.heaviest_leg(loads)
        assert shore_power.heaviest_leg(known) <= worst + 1e-6
