"""Pure formulas: quantities in, quantities out, sources beside them."""
