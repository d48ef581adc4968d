"""Hatchleaf: an owner's manual for exactly one unit, and the sheets around it."""
