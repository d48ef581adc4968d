"""
Food when the fridge is off: the times of the US Department of Agriculture.

They are of household fridges and freezers with the door kept shut (FSIS, food and
power outages; many public pages agree).  A small fridge warms up sooner.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import quantity

FRIDGE_HOLDS: Final = quantity(4, "hour")
"""A fridge that stays shut keeps food safe for about this long."""

FULL_FREEZER_HOLDS: Final = quantity(48, "hour")
"""A full freezer that stays shut keeps its temperature for about this long."""

HALF_FREEZER_HOLDS: Final = quantity(24, "hour")
"""A half-full freezer, the same."""

COLD_ENOUGH: Final = 40.0
"""degF that a fridge must not pass."""

WARM_LIMIT: Final = quantity(2, "hour")
"""Perishable food that was above `COLD_ENOUGH` for longer is thrown out."""
