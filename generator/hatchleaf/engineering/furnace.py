"""
A furnace's cold night: usual figures of the trade, never those of one unit.

Common practice, no source: a thermostat lights the burner for about a third of a
night near freezing.  Colder weather, wind and an open roof vent raise the share.
"""

from __future__ import annotations

from typing import Final

from hatchleaf.units import quantity

NIGHT: Final = quantity(10, "hour")
"""How long the heat is on in a typical cold night."""

DUTY: Final = 0.35
"""Share of that time that burner and blower run."""
