"""A dealership's own color stays legible, measured by axe-core and against WCAG."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from browser.conftest import Phone, Site, faults
from hatchleaf.outputs.palette import DAY, NIGHT, contrast, legible, stylesheet
from hatchleaf.outputs.phone_copy import phone_copy

COLORS = ["#ffe600", "#ffffff", "#000000", "#8a8a8a", "#003cff", "#ff6f61"]


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # The ends of the scale, WCAG 2.2, "contrast ratio": "1 to 21".
        ("#000000", "#ffffff", 21.0),
        ("#123456", "#123456", 1.0),
        # WCAG technique G18's luminance formula, worked by hand: pure red 0.2126,
        # pure green 0.7152, pure blue 0.0722, each plus 0.05 against white's 1.05.
        ("#ff0000", "#ffffff", 1.05 / 0.2626),
        ("#00ff00", "#ffffff", 1.05 / 0.7652),
        ("#0000ff", "#ffffff", 1.05 / 0.1222),
    ],
)
def test_contrast(one: str, other: str, ratio: float) -> None:
    """The ratio is WCAG's, whichever color comes first."""
    assert contrast(one, other) == pytest.approx(ratio)
    assert contrast(other, one) == pytest.approx(ratio)


@pytest.mark.parametrize("ground", [DAY, NIGHT])
@pytest.mark.parametrize("color", COLORS)
def test_every_color_becomes_legible(color: str, ground: str) -> None:
    """However pale or dark; and one that can be read is left as it is."""
    shade = legible(color, ground)
    assert contrast(shade, ground) >= 4.5
    assert legible(shade, ground) == shade


def test_grounds_are_those_of_the_style() -> None:
    """The shades are worked out on the grounds that the style has."""
    style = stylesheet()
    assert f"--raised: {DAY};" in style
    assert f"--raised: {NIGHT};" in style


@pytest.mark.parametrize("wrong", ["red", "#fff", "#12345g", "#123456;}"])
def test_only_colors_reach_the_style(wrong: str) -> None:
    """What is no color would be style of its own."""
    with pytest.raises(ValueError, match="rrggbb"):
        stylesheet(wrong)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("brand", ["#ffe600", "#000000"])
def test_axe_can_read_it(
    site: Site, phone_with: Callable[..., Phone], brand: str, scheme: str
) -> None:
    """The palest and the darkest brand, by day and by night."""
    file = site.folder.parent / f"brand{brand[1:]}.html"
    file.write_text(phone_copy(site.pages, brand=brand), encoding="utf-8")
    phone = phone_with(color_scheme=scheme)
    for number in (0, 10, 210):
        page = phone.open(f"{file.as_uri()}#t-{number:03d}")
        assert not faults(page), number
