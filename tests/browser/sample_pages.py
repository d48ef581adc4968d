"""Pages of an invented unit, by hand: every form that a page can take, once."""

from __future__ import annotations

import datetime as dt

from hatchleaf.drawings.normal import drawing
from hatchleaf.manual.convert import convert, plain_text
from hatchleaf.manual.model import Page, Pages, Tile, UnitCard

_BODY = (
    '<rect x="64" y="22" width="288" height="56" rx="7"/>'
    '<path d="M64 30L24 50L64 70"/><circle cx="20" cy="50" r="4"/>'
    '<rect class="plan-wheel" x="210" y="17" width="26" height="5"/>'
    '<rect class="plan-wheel" x="210" y="78" width="26" height="5"/>'
)
_WORDS = (
    '<text x="208" y="11" text-anchor="middle">road side</text>'
    '<text x="208" y="95" text-anchor="middle">curb side</text>'
    '<text x="70" y="54">front</text><text x="346" y="54" text-anchor="end">rear</text>'
)


def _plan(key: str, marks: tuple[tuple[int, int, int], ...], *, links: bool) -> str:
    drawn = ""
    for number, x, y in marks:
        mark = (
            f'<g class="plan-mark"><circle cx="{x}" cy="{y}" r="11"/>'
            f'<text x="{x}" y="{y + 3.5}" text-anchor="middle">{number}</text></g>'
        )
        if links:
            mark = (
                f'<a class="plan-link" href="topic:{number}" '
                f'aria-label="{number}">{mark}</a>'
            )
        drawn += mark
    return (
        f'<svg class="plan" viewBox="0 0 360 102" role="{"group" if links else "img"}" '
        f'aria-labelledby="plan-{key}-t"><title id="plan-{key}-t">Plan</title>'
        f'<g class="plan-body">{_BODY}</g><g class="plan-words">{_WORDS}</g>'
        f"{drawn}</svg>"
    )


def _page(
    number: int,
    name: str,
    system: str,
    title: str,
    markdown: str,
    *,
    where: str = "",
    at: tuple[int, int] | None = None,
    normal: tuple[str, str] | None = None,
    tiles: tuple[Tile, ...] = (),
    ask: tuple[str, ...] = (),
    html: str = "",
) -> Page:
    made = convert(markdown, name)
    body = made.html + html
    key = f"{number:03d}"
    return Page(
        number=number,
        id=name,
        system=system,
        title=title,
        where=where,
        plan=_plan(key, ((number, *at),), links=False) if at else "",
        normal=f"<p>{normal[1]}</p>" if normal else "",
        normal_drawing=drawing(normal[0]) if normal else "",
        tiles=tiles,
        body=body,
        headings=made.headings,
        text=plain_text(body),
        ask=ask,
        sticker=at is not None,
    )


def _ticks(name: str, phases: tuple[tuple[str, tuple[str, ...]], ...]) -> str:
    made = ""
    count = 0
    for title, steps in phases:
        made += f'<h2 class="stage" id="{name}-{title.lower()}">{title}</h2>'
        made += '<ul class="ticks">'
        for step in steps:
            count += 1
            made += (
                f'<li><label><input type="checkbox" id="tick-{name}-{count}">'
                f"<span>{step}</span></label>"
                '<a class="see" href="topic:210">210</a></li>'
            )
        made += "</ul>"
    return made


INLET = """
!!! notice "A regulator is built in here"
    A second one in the line only weakens the flow.

## Connect city water

1. Turn the pump off at the panel by the door.
2. Screw the hose to the park tap and flush it for ten seconds.
3. Screw the other end to this inlet, hand tight, washer in.
4. Open the park tap slowly, then a hot and a cold tap until no air spits.

!!! warning "Pressure can burst a hose"
    Hot spray can hurt eyes.
    Close the park tap first.

## Tank and days

The tank holds [31 gal](topic:090#fact-water-capacity).
See [LP gas supply](topic:110).

| People | Careful | Normal | With a shower each day |
|---|---|---|---|
| 1 person | 10 days | 6 days | 3 days |
| 2 people | 5 days | 3 days | 1 day |

## It does not work

??? trouble "No water comes at any tap"
    Look at the park tap. Then:

    1. Clean the screen in the inlet.
    2. Close the city valve.

??? trouble "The pump runs and does not stop"
    Turn it off. Call the dealer.
"""

GAS = """
!!! danger "Leaking gas can burn or explode"
    If you smell gas: do not use the phone here. Walk away, then call.

!!! caution "Cold burns"
    Liquid propane freezes skin. Wear gloves.

## Open

1. Turn the valve slowly to the left.
2. Wait five seconds.

- One cylinder lasts [9 h](topic:090#fact-lp-hours) of furnace.
- Typical values are marked.
"""


def sample_pages() -> Pages:
    """Return the pages."""
    inlet_tiles = (
        Tile("set to", "45 psi", "regulator, built in", ""),
        Tile("holds", "31 gal", "fresh tank", "topic:090#fact-water-capacity"),
        Tile("takes", "1/2 in", "drinking-water hose", ""),
    )
    pages = (
        _page(0, "home", "home", "Guide to this unit", ""),
        _page(
            1,
            "emergencies",
            "home",
            "Emergencies",
            '## Fire\n\n!!! danger "Get everyone out"\n    Then call 911.\n\n'
            "1. Get out.\n2. Call 911.\n3. Give your site number.\n",
            ask=("fire", "smell gas", "alarm goes off"),
        ),
        _page(2, "general-dangers", "home", "Dangers in any camper", "Text."),
        _page(
            10,
            "arrive",
            "journey",
            "When you arrive",
            "Go from top to bottom.",
            html=_ticks(
                "arrive",
                (
                    ("Spot", ("Chock both wheels on the low side.", "Level across.")),
                    ("Water", ("Turn the handle at the water inlet to CITY.",)),
                ),
            ),
        ),
        _page(
            30,
            "before-towing",
            "journey",
            "Before towing",
            "Go from top to bottom.",
            html=_ticks("before-towing", (("Gas", ("Close both cylinders.",)),)),
        ),
        _page(
            90,
            "numbers",
            "home",
            "How the numbers were worked out",
            "",
            html='<h2 id="numbers-water">Fresh water</h2><dl class="working">'
            '<dt id="fact-water-capacity">Fresh water</dt><dd><p><b>31 gal</b></p>'
            '<p>The tank.</p><p class="source">Common practice, no source.</p></dd>'
            '<dt id="fact-lp-hours">Furnace</dt><dd><p><b>9 h</b></p></dd></dl>',
        ),
        _page(
            110,
            "lp-supply",
            "lp",
            "LP gas supply",
            GAS,
            where="Front, on the tongue",
            at=(44, 50),
            normal=("valve_closed", "Both valves closed while towing."),
            ask=("swap the bottle", "one bottle empty", "propane"),
        ),
        _page(
            210,
            "water-inlet",
            "water",
            "City water inlet",
            INLET,
            where="Road side, behind the axle",
            at=(256, 22),
            normal=("lever_along", "Hose off, cap on. The taps draw from the tank."),
            tiles=inlet_tiles,
            ask=("no water comes", "how do I fill the tank", "hook up the hose"),
        ),
        _page(
            230,
            "water-pump",
            "water",
            "Water pump",
            "## Use\n\nTurn it off when you leave.",
            where="Inside, panel by the door",
            at=(180, 64),
            normal=("switch_off", "Off."),
            ask=("pump keeps running", "strange noise under the bed"),
        ),
    )
    marks = ((110, 44, 50), (210, 256, 22), (230, 180, 64))
    home = pages[0]
    first = Page(**{**vars(home), "plan": _plan("000", marks, links=True)})
    card = UnitCard(
        code="839201743651830",
        name="Marlpit 24",
        maker="Heron Vale",
        year="2027",
        dealer_name="Two Herons",
        dealer_phone="555-0142",
        title="Guide to this unit by Two Herons",
        edition="1f3a9c20 of 2027-04-16",
        delivered=dt.date(2027, 4, 16),
        emergency_number="911",
        market="US",
        condition="new",
        found_on="",
    )
    return Pages(card, (first, *pages[1:]), (110, 210, 230))
