"""Hand-made pages of a small unit, for tests of what is done with pages."""

from __future__ import annotations

import datetime as dt

from hatchleaf.manual.model import Heading, Page, Pages, Tile, UnitCard

CODE = "839201743651830"


def page(number: int, **named: object) -> Page:
    """Return a page with the given fields; the others hold something plain."""
    fields: dict[str, object] = {
        "number": number,
        "id": f"topic-{number}",
        "system": "home" if number < 10 else "water",
        "title": f"Topic {number}",
        "where": "",
        "plan": "",
        "normal": "",
        "normal_drawing": "",
        "tiles": (),
        "body": f'<h2 id="s-{number}">Use</h2><p>See <a href="topic:000">home</a>.</p>',
        "headings": (Heading(f"s-{number}", "Use", 2),),
        "text": f"words of {number}",
        "ask": (),
        "sticker": False,
    }
    return Page(**{**fields, **named})  # type: ignore[arg-type]


def pages(*more: Page) -> Pages:
    """Return the pages of a unit: home, emergencies, two hatches, and more."""
    made = (
        page(0, title="Home"),
        page(1, title="Emergencies"),
        page(
            210,
            title="Water inlet & diverter",
            where="Road side, behind the axle",
            normal="<p>The handle points to CITY.</p>",
            tiles=(Tile("holds", "31 gal", "fresh tank", "topic:230#s-230"),),
            sticker=True,
        ),
        page(230, title="Water pump", sticker=True),
        *more,
    )
    card = UnitCard(
        code=CODE,
        name="Marlpit 24",
        maker="Marlpit",
        year="2027",
        dealer_name="Two Herons",
        dealer_phone="555-0142",
        title="Guide to this unit by Two Herons",
        edition="0123abcd",
        delivered=dt.date(2027, 4, 16),
        emergency_number="911",
        market="US",
        condition="new",
        found_on="",
    )
    return Pages(unit=card, pages=made, round=(210, 230))
