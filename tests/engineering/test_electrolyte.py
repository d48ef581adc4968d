"""Battery acid, held against the tables of the industry's council and of the army."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.engineering import electrolyte


@pytest.mark.parametrize(
    ("charged", "gravity"),
    [(1.0, 1.265), (0.75, 1.225), (0.5, 1.190), (0.25, 1.155), (0.0, 1.120)],
)
def test_gravity_agrees_with_the_council(charged: float, gravity: float) -> None:
    """BCI's table of state of charge and specific gravity at 80 degF."""
    assert electrolyte.gravity(charged) == pytest.approx(gravity, abs=0.0005)


# US Army TM 5-1185 and an ordnance text, with a maker's chart that agrees; where two
# figures are printed both are allowed.
@pytest.mark.parametrize(
    ("gravity", "printed"),
    [
        (1.280, (-90,)),
        (1.250, (-62,)),
        (1.200, (-17, -16)),
        (1.150, (5,)),
        (1.100, (18, 19)),
        (1.050, (27,)),
    ],
)
def test_freezing_agrees_with_the_army(
    gravity: float, printed: tuple[float, ...]
) -> None:
    """And where manuals differ, the warmer or the agreed one."""
    found = electrolyte.freezes_at(gravity)

    assert min(printed) - 0.5 <= found <= max(printed) + 0.5


def test_water_freezes_as_water_does() -> None:
    """The end of the table that anybody knows: 32 degF at a gravity of 1."""
    assert electrolyte.freezes_at(1.0) == 32.0


# The same two tables read together by a practitioner: ranges in degF.
@pytest.mark.parametrize(
    ("charged", "low", "high"),
    [(1.0, -80, -70), (0.75, -42, -33), (0.5, -13, -9), (0.25, 2, 6), (0.0, 12, 15)],
)
def test_freezing_by_charge_is_between_the_printed_figures(
    charged: float, low: float, high: float
) -> None:
    """Council's gravity through the army's table."""
    found = electrolyte.freezes_at(electrolyte.gravity(charged))

    assert low <= found <= high


@pytest.mark.parametrize(("charged", "wrong"), [(0.5, -34), (0.25, -16), (0.0, -10)])
def test_the_much_copied_list_is_not_used(charged: float, wrong: float) -> None:
    """It prints degC as degF: by it a flat battery would stand any winter."""
    found = electrolyte.freezes_at(electrolyte.gravity(charged))

    assert found > wrong + 15


def test_empty_is_close_to_the_list_s_figures_in_celsius() -> None:
    """Which is how the mistake shows: -10 on the list, -10 degC is 14 degF."""
    found = electrolyte.freezes_at(electrolyte.gravity(0.0))

    assert found == pytest.approx(-10 * 9 / 5 + 32, abs=2)


# BCI flooded at 80 degF; a maker's table of AGM (12.8 V full, 12.3 V half).
@pytest.mark.parametrize(
    ("kind", "full", "half"), [("flooded", 12.65, 12.24), ("agm", 12.8, 12.3)]
)
def test_rest_voltage_is_within_a_tenth_of_the_tables(
    kind: str, full: float, half: float
) -> None:
    """A meter reads no better."""
    assert electrolyte.FULL_FROM[kind] == pytest.approx(full, abs=0.1)
    assert electrolyte.HALF_AT[kind] == pytest.approx(half, abs=0.1)


@pytest.mark.parametrize("gravity", [0.99, 1.3])
def test_no_guess_outside_the_table(gravity: float) -> None:
    """Beyond 1.280 the freezing point turns back up."""
    with pytest.raises(ValueError, match="is outside"):
        electrolyte.freezes_at(gravity)


@given(st.floats(0, 1), st.floats(0, 1))
def test_a_fuller_battery_freezes_later(one: float, other: float) -> None:
    """More acid, more frost."""
    less, more = sorted((one, other))

    assert electrolyte.freezes_at(electrolyte.gravity(more)) <= (
        electrolyte.freezes_at(electrolyte.gravity(less)) + 1e-9
    )
