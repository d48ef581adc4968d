"""Drawings as SVG: the plan of the unit, valves and switches, charts."""
