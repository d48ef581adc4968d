"""Blocks of content: read, laid over, chosen by the unit's spec, filled in."""
