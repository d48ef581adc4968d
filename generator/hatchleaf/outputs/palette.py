"""
The dealership's colour, made legible by day and by night.

A dealership gives one colour.  On warm paper it may be too pale to read, at night too
dark, so it is shaded towards ink or paper until it meets the contrast that WCAG 2.2
asks of text (success criterion 1.4.3: 4.5 to 1).
"""

from __future__ import annotations

import re
from typing import Final, TypeAlias

from hatchleaf.outputs.fragments import theme_text

Color: TypeAlias = tuple[int, int, int]

DAY: Final = "#f3ecda"
"""The darkest ground by day; the same as ``--raised`` in style.css."""
NIGHT: Final = "#1b242c"
"""The lightest ground at night; the same as ``--raised`` in style.css after dark."""
OUR_BRAND: Final = "#12564f"
"""The same as ``--brand-day`` in style.css."""
ENOUGH: Final = 4.5
"""Contrast that WCAG 2.2 asks of text, success criterion 1.4.3."""

_FORM: Final = re.compile(r"#[0-9a-fA-F]{6}")
_DAY: Final = re.compile(r"--brand-day: #[0-9a-f]{6};")
_DARK: Final = re.compile(r"--brand-night: #[0-9a-f]{6};")
_STEPS: Final = 50


def stylesheet(brand: str = "") -> str:
    """
    Return the style of all pages in the dealership's colour.

    Args:
        brand: ``#rrggbb``, or empty for our own colour.

    Returns:
        The text of style.css with the brand's two shades in it.

    Raises:
        ValueError: *brand* is no colour of that form.
    """
    text = theme_text("assets/style.css")
    if not brand:
        return text
    if not _FORM.fullmatch(brand):
        raise ValueError(f"a colour is written #rrggbb, such as #0f5a52, not {brand}")
    text = _DAY.sub(f"--brand-day: {legible(brand, DAY)};", text, count=1)
    return _DARK.sub(f"--brand-night: {legible(brand, NIGHT)};", text, count=1)


def variable(style: str, name: str) -> str:
    """
    Return a colour that a style names.

    Args:
        style: What `stylesheet` returned.

        name: Such as ``paper``.

    Returns:
        The colour by day as ``#rrggbb``.

    Raises:
        KeyError: The style has no such colour.
    """
    found = re.search(rf"--{re.escape(name)}: (#[0-9a-f]{{6}});", style)
    if not found:
        raise KeyError(name)
    return found[1]


def legible(color: str, paper: str) -> str:
    """
    Return the nearest shade of a colour that can be read on *paper*.

    Args:
        color: ``#rrggbb``.

        paper: The ground, ``#rrggbb``.

    Returns:
        *color* itself where its contrast is enough, else mixed with black on a light
        ground or with white on a dark one, in steps of a fiftieth.
    """
    start = _parts(color)
    end = (
        (0, 0, 0) if _luminance(_parts(paper)) > _luminance((119,) * 3) else (255,) * 3
    )
    for step in range(_STEPS + 1):
        mixed = (
            round(start[0] + (end[0] - start[0]) * step / _STEPS),
            round(start[1] + (end[1] - start[1]) * step / _STEPS),
            round(start[2] + (end[2] - start[2]) * step / _STEPS),
        )
        shade = "#{:02x}{:02x}{:02x}".format(*mixed)
        if contrast(shade, paper) >= ENOUGH:
            return shade
    return "#{:02x}{:02x}{:02x}".format(*end)


def contrast(one: str, other: str) -> float:
    """
    Return the contrast ratio of two colours as WCAG 2.2 defines it.

    Args:
        one: ``#rrggbb``.

        other: ``#rrggbb``.

    Returns:
        From 1 (the same) to 21 (black on white).
    """
    light, dark = sorted(
        (_luminance(_parts(one)), _luminance(_parts(other))), reverse=True
    )
    return (light + 0.05) / (dark + 0.05)


def _parts(color: str) -> Color:
    """Return red, green and blue, each from 0 to 255."""
    return int(color[1:3], 16), int(color[3:5], 16), int(color[5:7], 16)


def _luminance(color: Color) -> float:
    """Return the relative luminance as WCAG 2.2 defines it, from 0 to 1."""
    red, green, blue = (
        part / 255 / 12.92
        if part / 255 <= 0.04045  # noqa: PLR2004
        else ((part / 255 + 0.055) / 1.055) ** 2.4
        for part in color
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
