"""The unit's file: read as text with positions, checked, and made a value."""
