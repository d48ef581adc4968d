"""Which formulas a unit calls for, and what came out."""
