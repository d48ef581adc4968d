"""A plausible set of stickers for an invented unit, for the tests of their sheets."""

from __future__ import annotations

from typing import Final

from hatchleaf.outputs.card import Alarm, Card, ShutOff
from hatchleaf.outputs.stickers import Label, StickerSet

CODE: Final = "839201743651830"
HOST: Final = "manuals.example"

PLAN: Final = (
    '<svg class="plan" viewBox="0 0 360 118" role="img"><title>From above</title>'
    '<g class="plan-body"><rect x="64" y="22" width="288" height="56" rx="7"/>'
    '<path d="M64 30L24 50L64 70"/><circle cx="20" cy="50" r="4"/>'
    '<rect class="plan-wheel" x="200" y="17" width="26" height="5"/>'
    '<rect class="plan-wheel" x="200" y="78" width="26" height="5"/></g>'
    '<g class="plan-words"><text x="208" y="11" text-anchor="middle">road side</text>'
    '<text x="70" y="54">front</text></g>'
    '<a class="plan-link" href="topic:110"><g class="plan-mark">'
    '<circle cx="40" cy="50" r="11"/><text x="40" y="53.5" text-anchor="middle">110'
    "</text></g></a></svg>"
)

LABELS: Final = (
    Label(
        topic=110,
        title="LP gas supply",
        place_id="front",
        place="A-frame, at the cylinders",
        side_height="low",
        line="Walk away from the unit.",
        signal="warning",
        signal_text="Smell gas? Do not use the phone here.",
        extra="Then call.",
    ),
    Label(
        topic=120,
        title="Outside gas outlet",
        place_id="outlet",
        place="Curb side, below the galley window",
        side_height="low",
        line="Close the valve before you unplug the hose",
        signal="warning",
        fact="low pressure only",
    ),
    Label(
        topic=210,
        title="City water inlet",
        place_id="road-rear",
        place="Road side, behind the axle",
        side_height="waist high",
        line="Turn the handle to CITY before you open the tap",
        signal="notice",
        signal_text="A second regulator only weakens the flow.",
        fact="drinking-water hose",
    ),
    Label(
        topic=215,
        title="Fresh tank fill",
        place_id="fill",
        place="Road side, ahead of the axle",
        side_height="waist high",
        line="Fill until water shows at the vent, then cap it",
        fact="holds 31 gal",
    ),
    Label(
        topic=230,
        title="Water pump",
        place_id="panel",
        place="Inside, panel by the entry door",
        side_height="eye height",
        line="Off whenever nobody is at the unit",
    ),
    Label(
        topic=240,
        title="Low-point drains",
        place_id="drains",
        place="Curb side, under the floor",
        side_height="low",
        line="Open both caps before the first frost",
    ),
    Label(
        topic=310,
        title="Waste tanks and dumping",
        place_id="dump",
        place="Road side, rear",
        side_height="low",
        line="Black first, then gray. Rinse the hose, cap the outlet.",
        signal="caution",
        signal_text="Wear gloves. Wash your hands after.",
        fact="black 30 gal, gray 38 gal",
    ),
    Label(
        topic=320,
        title="Tank rinse inlet",
        place_id="rinse",
        place="Road side, rear",
        side_height="low",
        line="Open the black valve before you open the tap",
        signal="notice",
    ),
    Label(
        topic=410,
        title="Shore power",
        place_id="inlet",
        place="Road side, rear corner",
        side_height="waist high",
        line="Turn the main breaker off before you plug in",
        signal="danger",
        signal_text="Live parts can kill. Dry hands, dry plug.",
        fact="30 A / 120 V",
    ),
    Label(
        topic=415,
        title="Breakers and fuses",
        place_id="panel-low",
        place="Inside, below the wardrobe",
        side_height="low",
        line="Same size back in, never a larger one",
        signal="danger",
    ),
    Label(
        topic=435,
        title="Battery switch",
        place_id="switch",
        place="Inside, below the front bed",
        side_height="low",
        line="Off stops all but the alarms",
    ),
    Label(
        topic=510,
        title="Awning",
        place_id="curb",
        place="Curb side",
        side_height="high",
        line="In before you leave the site or go to sleep",
    ),
    Label(
        topic=710,
        title="Water heater",
        place_id="heater",
        place="Road side, rear",
        side_height="low",
        line="Full of water before you switch it on",
        signal="caution",
        signal_text="Let it cool for two hours before you drain it.",
    ),
    Label(
        topic=790,
        title="Smoke, CO and gas alarms",
        place_id="ceiling",
        place="Inside, ceiling and kick board",
        side_height="high",
        line="Press every test button before each trip",
        optional=True,
    ),
    Label(
        topic=795,
        title="Fire extinguisher and ways out",
        place_id="door",
        place="Inside, beside the entry door",
        side_height="low",
        line="Out first. Only then think of the fire.",
        optional=True,
    ),
)

CARD: Final = Card(
    title="Marlpit 24",
    shut_offs=(
        ShutOff("LP gas", "A-frame: close both cylinder valves, clockwise", 110),
        ShutOff("Water", "Park tap, then the pump switch by the entry door", 210),
        ShutOff("Mains power", "Main breaker, inside, below the wardrobe", 415),
        ShutOff("Battery", "Battery switch, inside, below the front bed", 435),
    ),
    exits=(
        "Entry door, curb side, behind the axle",
        "Bedroom window, road side: pull both red handles, push out",
    ),
    extinguisher="Inside, beside the entry door, low. Pull the pin, aim at the base.",
    alarms=(
        Alarm(
            "Smoke", "3 beeps, pause, 3 beeps", "1 chirp a minute", "2 chirps a minute"
        ),
        Alarm("CO", "4 beeps, pause, 4 beeps", "1 chirp a minute", "2 chirps a minute"),
        Alarm("LP gas", "steady tone, red light", "amber light", ""),
    ),
    emergency_number="911",
    plan_svg=PLAN,
    dealer_name="Two Herons",
    dealer_phone="555-0142",
)


def sample(
    labels: tuple[Label, ...] = LABELS, host: str = HOST, card: Card = CARD
) -> StickerSet:
    """Return a set with some labels, a host and a card."""
    return StickerSet(
        code=CODE,
        host=host,
        unit_name="Marlpit 24",
        labels=labels,
        card=card,
        edition="2027-04-16 5c1e",
    )
