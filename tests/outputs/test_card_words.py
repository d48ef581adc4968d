"""Why: in an emergency the card is read once, in the words the owner knows."""

from __future__ import annotations

from collections.abc import Mapping

from hatchleaf.manual.make import Made
from hatchleaf.outputs.card import Card
from hatchleaf.outputs.sticker_labels import sticker_set


def card(made: Made) -> Card:
    """Return the emergency card of a sample."""
    return sticker_set(made.manual, made.pages, "manuals.example").card


def test_a_caravan_speaks_its_own_words(guides: Mapping[str, Made]) -> None:
    """No LP gas, no shore power, and no tap where a pump hangs in a container."""
    assert [one.name for one in card(guides["heron-f"]).shut_offs] == [
        "Gas: the valve at the supply",
        "Mains power: the main switch",
        "Battery: the battery switch",
        "Water: the pump's switch",
    ]


def test_a_trailer_on_a_hose_is_shut_off_at_its_tap(guides: Mapping[str, Made]) -> None:
    """Both the pump and the hose can flood it."""
    assert [one.name for one in card(guides["heron-a"]).shut_offs][-2:] == [
        "Water: the pump's switch",
        "Water: the tap that the hose is on",
    ]


def test_alarms_that_sound_alike_have_one_line(guides: Mapping[str, Made]) -> None:
    """Two smoke alarms of one kind are told apart by nobody who hears one."""
    alarms = card(guides["heron-d"]).alarms
    assert [one.name for one in alarms] == ["Smoke alarm", "CO and LP gas alarm"]
