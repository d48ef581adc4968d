"""
Drawings made ready for paper: what the website's style says of them, written within.

The style of a page does not reach a drawing in a PDF, nor do links within one: each
drawing brings its own style, and the map's links are boxes laid over it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from markupsafe import Markup

_FACE: Final = "font-family:'Barlow Semi Condensed'"
_LOOKS: Final = {
    "plan": (
        ".plan-body path{fill:none;stroke:#000;stroke-width:2;stroke-linejoin:round}"
        ".plan-body .plan-shell{fill:#fff}"
        ".plan-body .plan-pin{fill:#000}"
        ".plan-body .plan-wheel,.plan-ahead{fill:#000;stroke:none}"
        ".plan-body .plan-thin{stroke-width:1;stroke-dasharray:3 3}"
        ".plan-body .plan-gap{stroke:#fff;stroke-width:4}"
        f".plan-words text{{{_FACE};font-size:11px;fill:#333}}"
        ".plan-leads{fill:none;stroke:BRAND;stroke-width:1}"
        ".plan-dots path{fill:BRAND;stroke:#fff;stroke-width:1.25}"
        ".plan-dots .plan-in{fill:#fff;stroke:BRAND;stroke-width:1.75}"
        ".plan-mark rect{fill:#000;stroke:#000;stroke-width:2}"
        f".plan-mark text{{{_FACE};font-weight:700;font-size:13px;fill:#fff}}"
        ".plan-inside rect{fill:#fff}"
        ".plan-inside text{fill:#000}"
        ".plan-hit{fill:none}"
        f".plan-name{{{_FACE};font-weight:500;font-size:13px;fill:#000}}"
    ),
    "normal": (
        "svg{fill:none;stroke:#000;stroke-width:2;stroke-linecap:round;"
        "stroke-linejoin:round}"
        ".bold{stroke-width:5}"
        ".full{fill:#000}"
        ".flow{stroke:BRAND;stroke-width:5}"
        ".thin{stroke-width:1;stroke-dasharray:3 3}"
        "circle{fill:#fff}"
        "circle.full{fill:#000}"
        f"text{{{_FACE};font-weight:700;font-size:8px;fill:#000;stroke:none}}"
    ),
    "chart": (f"svg{{color:#000}}text{{{_FACE}}}"),
}
_OPENS: Final = re.compile(r"<svg\b[^>]*>")
_STAND: Final = re.compile(r'(?<=<figure class="stand">)<svg\b[^>]*>')
_CHART: Final = re.compile(r'<svg class="chart"[^>]*>')
_LINK: Final = re.compile(
    r'<a class="plan-link" href="([^"]*)" aria-label="([^"]*)">'
    r'<rect class="plan-hit" x="([\d.]+)" y="([\d.]+)"'
    r' width="([\d.]+)" height="([\d.]+)"/>(.*?)</a>',
    re.DOTALL,
)
_BOX: Final = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')
_WHITE_ON_RED: Final = re.compile(r'(<div class="box danger"[^>]*>\s*<p[^>]*><svg\b)')


@dataclass(frozen=True)
class Map:
    """The map of the unit with its links, which are in parts of a hundred of it."""

    svg: Markup
    width: float
    height: float
    links: tuple[tuple[str, str, float, float, float, float], ...]
    """Address, words, left, top, width, height."""


def plan_on_paper(svg: str, brand: str) -> Markup:
    """
    Return a plan of the unit that looks on paper as it does on a page.

    Args:
        svg: The drawing, or empty.
        brand: The dealership's colour as ``#rrggbb``.
    """
    return Markup(_styled(svg, _OPENS, "plan", brand))  # noqa: S704  # ours


def normal_on_paper(svg: str, brand: str) -> Markup:
    """Return the drawing of a normal position; see `plan_on_paper`."""
    return Markup(_styled(svg, _OPENS, "normal", brand))  # noqa: S704  # ours


def body_on_paper(html: str, brand: str) -> Markup:
    """
    Return a topic's body with its drawings ready for paper.

    Args:
        html: The body, links resolved.
        brand: The dealership's colour as ``#rrggbb``.
    """
    html = _styled(html, _STAND, "normal", brand)
    html = _styled(html, _CHART, "chart", brand)
    # The symbol is black but for the signal word that is white on red.
    return Markup(_WHITE_ON_RED.sub(r'\1 fill="#fff"', html))  # noqa: S704  # ours


def map_on_paper(svg: str, brand: str) -> Map:
    """
    Return the map of a unit.

    Args:
        svg: The drawing, links resolved.
        brand: The dealership's colour as ``#rrggbb``.
    """
    size = _BOX.search(svg)
    if size is None:
        raise ValueError("a drawing without a size")
    width, height = float(size[1]), float(size[2])
    links = tuple(
        (
            found[1],
            found[2],
            100 * float(found[3]) / width,
            100 * float(found[4]) / height,
            100 * float(found[5]) / width,
            100 * float(found[6]) / height,
        )
        for found in _LINK.finditer(svg)
    )
    bare = _LINK.sub(lambda found: f"<g>{found[7]}</g>", svg)
    return Map(plan_on_paper(bare, brand), width, height, links)


def _styled(html: str, opens: re.Pattern[str], look: str, brand: str) -> str:
    style = f"<style>{_LOOKS[look].replace('BRAND', brand)}</style>"
    return opens.sub(lambda found: found[0] + style, html)
