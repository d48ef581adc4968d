"""Why: a map that is mirrored or out of scale sends an owner to the wrong hatch."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Mapping
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hatchleaf.blocks.model import Library
from hatchleaf.drawings.outline import axles, outline
from hatchleaf.drawings.plan import Mark, plan
from hatchleaf.drawings.sides import Lie, Spot, front_wall
from hatchleaf.drawings.spots import dot_of
from hatchleaf.drawings.spread import spread
from hatchleaf.drawings.unit_map import PAPER, WIDTH, Hatch, unit_map, wrapped
from hatchleaf.manual.assemble import places_of
from hatchleaf.manual.links import resolve
from hatchleaf.manual.make import Made
from hatchleaf.manual.places import in_words, places_by_id
from hatchleaf.outputs.fragments import copy_target, website_target
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec
from hatchleaf.units import number_in

UPRIGHT = Lie(start=100, length=1000, middle=180, half=40, upright=True)
LYING = Lie(start=100, length=1000, middle=180, half=40, upright=False)
TYPES = (
    "travel_trailer",
    "molded_trailer",
    "teardrop",
    "fifth_wheel",
    "folding_trailer",
    "truck_camper",
    "class_a",
    "class_b",
    "class_c",
    "caravan",
)
LEAST_CSS = 44.0
"""WCAG 2.2, 2.5.5: the least target."""
PHONE = 390.0 - 32.0
"""A phone's width less the page's margins, in CSS pixels."""


def hatches(spec: UnitSpec, library: Library) -> list[Hatch]:
    """Return each place of each topic of the registry."""
    places = places_by_id(spec)
    return [
        Hatch(place, topic.number, topic.title, in_words(place, spec.body.market))
        for topic in library.topics.values()
        for place in places_of(topic, spec, places)
    ]


def of_type(spec: UnitSpec, kind: str, market: str = "us") -> UnitSpec:
    """Return the unit as if it were of another type."""
    body = spec.body.model_copy(update={"type": kind, "market": market})
    return spec.model_copy(update={"body": body})


def boxes(svg: str, css: str) -> list[tuple[float, float, float, float]]:
    """Return left, top, right and bottom of the rectangles of a class."""
    found = re.findall(rf"<rect {css}([^>]*)/>", svg)
    made = []
    for attributes in found:
        a = {k: float(v) for k, v in re.findall(r'(\w+)="([\d.-]+)"', attributes)}
        made.append((a["x"], a["y"], a["x"] + a["width"], a["y"] + a["height"]))
    return made


def clear(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    """Return True where two boxes do not overlap."""
    return (
        one[2] <= other[0] + 0.11
        or other[2] <= one[0] + 0.11
        or one[3] <= other[1] + 0.11
        or other[3] <= one[1] + 0.11
    )


def units(samples: Mapping[str, LoadedUnit]) -> Iterator[UnitSpec]:
    """Yield each sample, and one as each type of unit."""
    for loaded in samples.values():
        yield loaded.spec
    first = next(iter(samples.values())).spec
    for kind in TYPES:
        yield of_type(first, kind)


@pytest.mark.parametrize("lie", [UPRIGHT, LYING], ids=["upright", "lying"])
def test_every_dot_is_where_the_file_says(
    samples: Mapping[str, LoadedUnit], lie: Lie
) -> None:
    """Along the unit to a tenth of a drawing unit; on its own side of the middle."""
    seen = 0
    for spec in (loaded.spec for loaded in samples.values()):
        for place in spec.places:
            dot = dot_of(place, lie, spec.body.market)
            along, across = (dot.y, dot.x) if lie.upright else (dot.x, dot.y)
            assert place.from_front.quantity is not None
            share = number_in(place.from_front.quantity, "percent") / 100
            assert along == pytest.approx(lie.start + share * lie.length, abs=0.06)
            if place.side in ("road", "curb"):
                assert across != lie.middle
                seen += 1
            else:
                assert across == lie.middle
    assert seen > 40


# Which side is the road's is common knowledge of each country: where traffic keeps
# right, the left of a vehicle that faces forward is toward the road.
@pytest.mark.parametrize(
    ("market", "road_is_left"),
    [("us", True), ("ca", True), ("eu", True), ("uk", False), ("au", False)],
)
def test_the_drawing_is_never_mirrored(market: str, *, road_is_left: bool) -> None:
    """
    Seen from above with the front up, left is left; with the front left, left is down.

    A quarter turn against the clock takes the first drawing to the second: a mirror
    image would need a flip.
    """
    place = PlaceOnUnit.model_validate(
        {
            "id": "a",
            "name": "A",
            "side": "road",
            "from_front": "30 %",
            "height": "low",
            "where": "outside",
        }
    )
    up, lying = dot_of(place, UPRIGHT, market), dot_of(place, LYING, market)
    assert (up.x < UPRIGHT.middle) is road_is_left
    assert (lying.y > LYING.middle) is road_is_left
    # The turn itself: forward (0, -1) goes to (-1, 0), so (x, y) goes to (y, -x).
    turned = (up.y - UPRIGHT.start, -(up.x - UPRIGHT.middle))
    assert turned == pytest.approx((lying.x - LYING.start, lying.y - LYING.middle))


def test_heights_and_inside_are_told_apart(samples: Mapping[str, LoadedUnit]) -> None:
    """A roof vent and a drain below it must not look the same."""
    spec = samples["heron-a"].spec
    base = spec.places[6]
    shapes = {}
    for height, where in itertools.product(
        ("under", "low", "high", "roof"), ("outside", "inside")
    ):
        place = base.model_copy(update={"height": height, "where": where})
        dot = dot_of(place, UPRIGHT, "us")
        shape = re.sub(r"M[-\d.]+ [-\d.]+", "M", dot.path)
        shapes[height, where] = (shape, dot.inside)
    assert len(set(shapes.values())) == len(shapes)


def test_no_mark_lies_on_the_words_of_front_and_rear(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """A dot upon "front" hides both."""
    for spec in units(samples):
        for place in spec.places:
            svg = plan(spec, [Mark(place, "210")], key="210", title="x")
            found = re.search(r'x="([\d.]+)" y="60">front.*?x="([\d.]+)" y="60"', svg)
            assert found
            front, rear = float(found[1]), float(found[2])
            lie = Lie(start=8, length=344, middle=56, half=28, upright=False)
            dot = dot_of(place, lie, spec.body.market)
            if abs(dot.y - 56) < 10:
                assert not front - 4 < dot.x < front + 30, (spec.code, place.id)
                assert not rear - 26 < dot.x < rear + 4, (spec.code, place.id)


def test_every_hatch_with_a_page_can_be_tapped(guides: Mapping[str, Made]) -> None:
    """Exactly the topics that have a place, each place by a line to its label."""
    for made in guides.values():
        svg = made.pages.by_number[0].plan
        linked = {int(n) for n in re.findall(r'href="topic:(\d{3})"', svg)}
        placed = [text for text in made.manual.topics if text.places]
        assert linked == {text.topic.number for text in placed}
        leads = re.search(r'class="plan-leads" d="([^"]*)"', svg)
        assert leads is not None
        assert leads[1].count("M") == sum(len(text.places) for text in placed)
        for target in (website_target(0), copy_target):
            assert "topic:" not in resolve(svg, target)


def test_labels_are_large_enough_and_apart(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """A wet thumb hits one hatch and not its neighbor."""
    for spec in units(samples):
        svg = unit_map(spec, hatches(spec, library), title="Map")
        hits = boxes(svg, 'class="plan-hit"')
        assert len(hits) > 15
        css = PHONE / WIDTH
        for left, top, right, bottom in hits:
            assert (right - left) * css >= LEAST_CSS
            assert (bottom - top) * css >= LEAST_CSS
            assert left >= 0
            assert right <= WIDTH
            assert top >= 0
        for one, other in itertools.combinations(hits, 2):
            assert clear(one, other), (spec.body.type, one, other)


def test_on_paper_each_name_has_its_line(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """Labels stand close there, so a name of two lines would run into the next one."""
    for spec in units(samples):
        svg = unit_map(spec, hatches(spec, library), title="Map", sheet=PAPER)
        hits = boxes(svg, 'class="plan-hit"')
        assert len(hits) > 15
        assert svg.count("<tspan") == len(hits)
        for left, _, right, _ in hits:
            assert left >= 0
            assert right <= PAPER.width
        for one, other in itertools.combinations(hits, 2):
            assert clear(one, other), (spec.body.type, one, other)


def test_lines_to_labels_do_not_cross(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """Between wall and labels the order stays, so that a line can be followed."""
    for spec in units(samples):
        svg = unit_map(spec, hatches(spec, library), title="Map")
        lines = [
            tuple(map(float, numbers))
            for numbers in re.findall(
                r"M[\d.]+ ([\d.-]+)H([\d.]+)L[\d.]+ ([\d.-]+)", svg
            )
        ]
        for side in {wall for _, wall, _ in lines}:
            column = sorted((at, to) for at, wall, to in lines if wall == side)
            for (at, to), (next_at, next_to) in itertools.pairwise(column):
                assert at == next_at or to <= next_to


def test_names_fit_beside_their_plates(library: Library) -> None:
    """Four lines would run into the label below."""
    for topic in library.topics.values():
        if topic.parts:
            assert len(wrapped(topic.title, 75)) <= 3, topic.title


def test_the_map_is_sound_markup(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """No style attribute, no handler; a name in words that holds what is seen."""
    for spec in units(samples):
        svg = unit_map(spec, hatches(spec, library), title="Map <b>&")
        root = ElementTree.fromstring(svg)  # noqa: S314  # our own
        for element in root.iter():
            assert not {name for name in element.attrib if name.startswith("on")}
            assert "style" not in element.attrib
            if element.tag == "a":
                # WCAG 2.5.3: the label is in the name.
                seen = " ".join("".join(element.itertext()).split())
                assert element.attrib["aria-label"].startswith(
                    f"{seen[:3]} {seen[3:]}:"
                )
    assert "<b>" not in svg


def test_a_strip_shows_its_own_hatches_alone(
    samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """Marks of others would hide the one that matters; plates and words keep apart."""
    for spec in units(samples):
        places = places_by_id(spec)
        for topic in library.topics.values():
            found = places_of(topic, spec, places)
            if not found:
                continue
            number = f"{topic.number:03d}"
            svg = plan(
                spec, [Mark(place, number) for place in found], key=number, title="x"
            )
            assert set(re.findall(r">(\d{3})<", svg)) == {number}
            assert "<a " not in svg
            plates = boxes(svg, "")
            words = [
                (float(x) - 27, float(y) - 11, float(x) + 27, float(y) + 3)
                for x, y in re.findall(
                    r'<text x="([\d.]+)" y="([\d.]+)" text-anchor="middle">\w+ ?side',
                    svg,
                )
            ]
            assert plates
            assert len(words) == 2
            for one, other in itertools.combinations([*plates, *words], 2):
                assert clear(one, other), (topic.id, one, other)


def test_what_couples_and_what_drives_is_drawn(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """A trailer has a coupling ahead, a fifth wheel its pin within, a motorhome none."""
    spec = samples["heron-a"].spec
    kinds = {
        kind: [stroke.kind for stroke in outline(of_type(spec, kind), UPRIGHT)]
        for kind in TYPES
    }
    for kind in ("travel_trailer", "molded_trailer", "teardrop", "caravan"):
        assert "plan-bar" in kinds[kind]
        assert front_wall(of_type(spec, kind)) > 0
    assert "plan-pin" in kinds["fifth_wheel"]
    assert "plan-bar" not in kinds["fifth_wheel"]
    for kind in ("class_a", "class_b", "class_c", "truck_camper"):
        assert "plan-pin" not in kinds[kind]
        assert front_wall(of_type(spec, kind)) == 0
    assert "plan-wheel" not in kinds["truck_camper"]
    shapes = {
        kind: tuple(outline(of_type(spec, kind), UPRIGHT))
        for kind in TYPES
        if kind != "caravan"
    }
    assert len(set(shapes.values())) == len(shapes)


def test_wheels_stand_where_the_papers_say(samples: Mapping[str, LoadedUnit]) -> None:
    """192 in of 24 ft from the coupling to between the axles: two thirds of the way."""
    found = axles(samples["heron-a"].spec)
    assert len(found) == 2
    assert sum(found) / 2 == pytest.approx(192 / (24 * 12))


def test_the_body_holds_every_place_of_its_walls(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """No side hatch hangs in the air beside the drawbar."""
    for loaded in samples.values():
        wall = front_wall(loaded.spec)
        for place in loaded.spec.places:
            if place.side in ("road", "curb"):
                assert place.from_front.quantity is not None
                assert number_in(place.from_front.quantity, "percent") / 100 > wall


@given(
    st.lists(st.integers(0, 60), min_size=1, max_size=5).map(sorted),
    st.integers(1, 12),
)
def test_labels_move_no_more_than_they_must(wanted: list[int], step: int) -> None:
    """Held against trying all whole positions: none does better."""
    last = 60 + step * len(wanted)
    found = spread([float(each) for each in wanted], step, 0, last)
    assert all(b - a >= step - 1e-9 for a, b in itertools.pairwise(found))
    assert found[0] >= 0
    way = sum((a - b) ** 2 for a, b in zip(found, wanted, strict=True))
    # Least sum for labels up to some place, by that place: each place follows one
    # that is a step or more before it.
    least = [float(at - wanted[0]) ** 2 for at in range(last + 1)]
    for each in wanted[1:]:
        before = list(itertools.accumulate(least, min))
        least = [
            before[at - step] + (at - each) ** 2 if at >= step else float("inf")
            for at in range(last + 1)
        ]
    assert way <= min(least) + 1e-6


def test_a_spot_between_the_sides_is_on_the_line() -> None:
    """The coupler is in the middle, whichever way the unit lies."""
    assert UPRIGHT.at(Spot(0, 0)) == (180, 100)
    assert LYING.at(Spot(0, 0)) == (100, 180)


def test_sides_are_named_as_the_market_does(samples: Mapping[str, LoadedUnit]) -> None:
    """A European caravan's page has no word of the United States on its drawing."""
    spec = samples["heron-a"].spec
    place = spec.places[3]
    for market, curb, other in (
        ("us", "curb side", "kerb|nearside"),
        ("ca", "curb side", "kerb|nearside"),
        ("uk", "nearside", "curb|kerb|road side"),
        ("eu", "kerb side", "curb|nearside"),
        ("au", "kerb side", "curb|nearside"),
    ):
        unit = of_type(spec, "caravan", market)
        strip = plan(unit, [Mark(place, "435")], key="435", title="x")
        whole = unit_map(unit, [Hatch(place, 435, "Switch", "there")], title="Map")
        for drawn in (strip, whole):
            assert drawn.count(f"{curb}<") == 1
            assert not re.search(other, drawn)
    curb_place = place.model_copy(update={"side": "curb"})
    assert in_words(curb_place, "eu").startswith("kerb side")
    assert in_words(curb_place, "uk").startswith("nearside")
