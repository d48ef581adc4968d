"""Copper wire, held against the electrical code's table."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import wiring
from hatchleaf.units import number_in, quantity

# NEC chapter 9, table 8: uncoated stranded copper at 75 degC, ohms in 1,000 ft (two
# full copies agree).
TABLE_8 = {
    14: 3.14,
    12: 1.98,
    10: 1.24,
    8: 0.778,
    6: 0.491,
    4: 0.308,
    3: 0.245,
    2: 0.194,
    1: 0.154,
    0: 0.122,
    -1: 0.0967,
    -2: 0.0766,
    -3: 0.0608,
}


@pytest.mark.parametrize(("gauge", "ohms"), TABLE_8.items())
def test_resistance_agrees_with_the_code(gauge: int, ohms: float) -> None:
    """From the metal alone, every size lies within the table's rounding."""
    found = wiring.resistance(gauge, quantity(1000, "foot"))

    assert number_in(found, "ohm") == pytest.approx(ohms, rel=0.006)


@pytest.mark.parametrize(
    ("amps", "gauge", "feet", "volts"),
    [(24, 10, 50, 2.98), (15, 14, 50, 4.71), (10, 12, 15, 0.594)],
)
def test_drop_agrees_with_sums_from_the_table(
    amps: float, gauge: int, feet: float, volts: float
) -> None:
    """A shore cord and a 12 V run: out and back, by hand from table 8."""
    # 2 L I R / 1000 with R of NEC table 8.
    lost = wiring.drop(quantity(amps, "ampere"), gauge, quantity(feet, "foot"))

    assert number_in(lost, "volt") == pytest.approx(volts, rel=0.006)


@pytest.mark.parametrize("gauge", [-4, 37])
def test_a_gauge_that_does_not_exist_is_refused(gauge: int) -> None:
    """4/0 is the thickest, 36 the thinnest of the definition."""
    with pytest.raises(ValueError, match="gauge must be -3 to 36"):
        wiring.resistance(gauge, quantity(1, "foot"))


def test_watts_are_refused() -> None:
    """Current is asked for, not power."""
    with pytest.raises(pint.DimensionalityError):
        number_in(wiring.drop(quantity(100, "watt"), 12, quantity(5, "foot")), "volt")


@given(st.integers(-3, 35), st.floats(1, 200))
def test_thinner_wire_loses_more(gauge: int, feet: float) -> None:
    """A higher number is a thinner wire."""
    length = quantity(feet, "foot")

    assert wiring.resistance(gauge + 1, length) > wiring.resistance(gauge, length)
