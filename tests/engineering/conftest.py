"""Settings of the property tests."""

from __future__ import annotations

from hypothesis import settings

# The first example pays for the making of the unit registry; time is not the point.
settings.register_profile("steady", deadline=None)
settings.load_profile("steady")
