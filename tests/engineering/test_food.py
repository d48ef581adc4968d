"""Hold times of food, held against what public authorities print."""

from __future__ import annotations

import pytest

from hatchleaf.engineering import food
from hatchleaf.units import Quantity, number_in


@pytest.mark.parametrize(
    ("ours", "hours"),
    [
        # USDA Food Safety and Inspection Service, as the press quoted it on 28 August
        # 2012 and 29 May 2018; FoodSafety.gov, as quoted on 29 October 2020.
        (food.FRIDGE_HOLDS, 4),
        (food.FULL_FREEZER_HOLDS, 48),
        (food.HALF_FREEZER_HOLDS, 24),
        (food.WARM_LIMIT, 2),
    ],
)
def test_times_are_those_of_the_authorities(ours: Quantity, hours: float) -> None:
    """Doors shut; perishable food above 40 degF for more than 2 hours goes."""
    assert number_in(ours, "hour") == hours
    assert food.COLD_ENOUGH == 40
