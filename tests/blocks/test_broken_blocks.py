"""Each way a block can be wrong, with the whole text of its problem."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from hatchleaf.blocks.model import Library
from hatchleaf.blocks.reading import read_library
from hatchleaf.problems import ProblemsFound, listed

HEAD: Final = "id: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n"
"""A head with nothing wrong, to be broken in one place."""

# What is wrong -> the file, and the problems with FILE for its name.
BROKEN: Final = {
    "no front matter": (
        b"Just text.\n",
        "FILE:1:1: the front matter is missing or not closed\n    allowed: a line '---', the fields, a line '---', the text",
    ),
    "not closed": (
        b"---\nid: my-block\ntopic: water-pump\n",
        "FILE:1:1: the front matter is missing or not closed\n    allowed: a line '---', the fields, a line '---', the text",
    ),
    "not UTF-8": (
        b"---\nid: my-block\n---\n\xff\n",
        "FILE:1:1: the file is not UTF-8\n    hint: save it so",
    ),
    "misspelt key": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nfact: [water.capacity]\n---\nText.\n",
        "FILE:6:1: fact: no such field\n    allowed: also, always, ask, do, each, every, facts, id, mandated, needs, normal, order, replaces, reviewed, show, sources, sticker, tiles, topic, when, words\n    hint: did you mean 'facts'?",
    ),
    "missing id": (
        b"---\ntopic: water-pump\norder: 95\n---\nText.\n",
        "FILE:2:1: id: field is missing",
    ),
    "id is not the name": (
        b"---\nid: other\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\nText.\n",
        "FILE:2:1: id: 'other' is not the file's name\n    allowed: my-block",
    ),
    "no such topic": (
        b"---\nid: my-block\ntopic: water-pmp\norder: 95\nsources: [common-practice]\n---\nText.\n",
        "FILE:3:1: topic: 'water-pmp' is not a topic\n    hint: did you mean 'water-pump'?",
    ),
    "order is no count": (
        b"---\nid: my-block\ntopic: water-pump\norder: first\nsources: [common-practice]\n---\nText.\n",
        "FILE:4:8: order: 'first' is not a count\n    allowed: a whole number from 0 to 9999",
    ),
    "duplicate key": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\norder: 96\n---\nText.\n",
        "FILE:6:1: order: field is written twice\n    hint: first in line 4",
    ),
    "something private, for each": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\neach: serials\n---\nText.\n",
        "FILE:6:1: each: 'serials' is private: no page may depend on it",
    ),
    "something private in a condition": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {recall.open: yes}\n---\nText.\n",
        "FILE:6:8: when.recall.open: 'recall.open' is private: no page may depend on it",
    ),
    "a warranty in a condition": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {warranties: present}\n---\nText.\n",
        "FILE:6:8: when.warranties: 'warranties' is private: no page may depend on it",
    ),
    "no such field in a condition": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {water.pmp: present}\n---\nText.\n",
        "FILE:6:8: when.water.pmp: no unit's file has this field\n    hint: did you mean 'water.pump'?",
    ),
    "no such value in a condition": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {water.pump.kind: demmand}\n---\nText.\n",
        "FILE:6:8: when.water.pump.kind: 'demmand' is no value of this field\n    allowed: demand, submersible, unknown\n    hint: did you mean 'demand'?",
    ),
    "a condition of no form": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {water.pump.kind: {is: demand}}\n---\nText.\n",
        "FILE:6:8: when.water.pump.kind: this is not a condition\n    allowed: a word, [words], {not: word}, {at_least: number}, {at_most: number}, present, [present, words] or absent",
    ),
    "a number without its unit": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {water.pump.flow: {at_least: 3}}\n---\nText.\n",
        "FILE:6:8: when.water.pump.flow: '3' cannot stand here\n    allowed: a number and one of gpm, l/min, like '2.5 gpm'",
    ),
    "a unit of another kind": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {water.pump.flow: {at_least: 3 lb}}\n---\nText.\n",
        "FILE:6:8: when.water.pump.flow: '3 lb' cannot stand here\n    allowed: a number and one of gpm, l/min, like '2.5 gpm'",
    ),
    "a condition on a fact that is none": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nwhen: {fact.water.capasity: known}\n---\nText.\n",
        "FILE:6:8: when.fact.water.capasity: 'water.capasity' is not a fact\n    hint: did you mean 'water.capacity'?",
    ),
    "no such list": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\neach: water.pump\n---\nText.\n",
        "FILE:6:1: each: 'water.pump' is not a list of a unit's file\n    hint: did you mean 'water.taps'?",
    ),
    "it without each": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\nLook at {{ place(it.at) }}.\n",
        "FILE:1:1: 'it' is only known with 'each'\n    hint: add 'each: LIST'",
    ),
    "always with a condition": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nalways: yes\nwhen: {water.pump: present}\n---\nText.\n",
        "FILE:6:1: always: a block that is always in has no condition\n    hint: general hazards only",
    ),
    "no such fact": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nfacts: [water.capasity]\n---\nText.\n",
        "FILE:6:1: facts: 'water.capasity' is not a fact\n    hint: did you mean 'water.capacity'?",
    ),
    "no such source": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [comon-practice]\n---\nText.\n",
        "FILE:5:1: sources: 'comon-practice' is not a source\n    hint: did you mean 'common-practice'?",
    ),
    "no such journey": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ndo: {arive: [{phase: water, rank: 1, step: Go.}]}\n---\nText.\n",
        "FILE:6:44: do.arive: 'arive' is not a journey\n    allowed: {JOURNEYS}\n    hint: did you mean 'arrive'?",
    ),
    "no such phase": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ndo: {arrive: [{phase: watter, rank: 1, step: Go.}]}\n---\nText.\n",
        "FILE:6:46: do.arrive: 'watter' is not a phase of this journey\n    allowed: comfort, gas, power, spot, steady, unhitch, waste, water\n    hint: did you mean 'water'?",
    ),
    "no such place of a step": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ndo: {arrive: [{phase: water, rank: 1, at: gear.jack.kind, step: Go.}]}\n---\nText.\n",
        "FILE:6:65: do.arrive: 'gear.jack.kind' is no field that names a place\n    hint: it.at with each, or a path like gear.jack.at",
    ),
    "a rank out of range": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ndo: {arrive: [{phase: water, rank: 100, step: Go.}]}\n---\nText.\n",
        "FILE:6:36: do.arrive[0].rank: '100' is not a rank\n    allowed: a whole number from 1 to 99",
    ),
    "no such interval": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look., interval: sometimes}]\n---\nText.\n",
        "FILE:6:33: every[0].interval: 'sometimes' is no interval\n    allowed: 10 days, 6 months, 2 years; 12000 miles, 20000 km; 12 months or 12000 miles; before each trip, each trip, each use, each season, each spring, each autumn",
    ),
    "a start on an occasion": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look., interval: each trip, first: each trip}]\n---\nText.\n",
        "FILE:6:51: every[0].first: 'each trip' is no start: it is counted from the delivery\n    allowed: a time, a distance or both: 1 month, 50 miles",
    ),
    "a start without its interval": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look., interval: each trip, first: 1 month}]\n---\nText.\n",
        "FILE:6:16: every: a first time by the calendar needs an interval by the calendar\n    allowed: first: 50 miles; or interval: 6 months",
    ),
    "a task without a time": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look.}]\n---\nText.\n",
        "FILE:6:16: every: nothing says when this is due\n    allowed: interval, first or due",
    ),
    "a fact that says no day": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look., due: dates.alarms}]\n---\nText.\n",
        "FILE:6:16: every: 'dates.alarms' is not a fact that says a day\n    allowed: dates.alarm, dates.extinguisher, dates.tire, lp.requalify\n    hint: did you mean 'dates.alarm'?",
    ),
    "a day and an interval": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nevery: [{task: Look., due: dates.tire, interval: 1 year}]\n---\nText.\n",
        "FILE:6:16: every: what is due on a day has no interval",
    ),
    "a tile of two minds": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ntiles: [{says: holds, fact: water.capacity, value: 1 gal, note: x}]\n---\nText.\n",
        "FILE:6:9: tiles: a tile has either a fact or a value",
    ),
    "a tile like a gauge": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\ntiles: [{says: water left, value: 1 gal, note: x}]\n---\nText.\n",
        "FILE:6:16: tiles[0].says: 'water left' reads like a gauge\n    allowed: words such as holds, set to, takes",
    ),
    "no such drawing": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nnormal: {draw: handle, text: Off.}\n---\nText.\n",
        "FILE:6:16: normal.draw: 'handle' is no drawing\n    allowed: awning_in, awning_out, battery_switch_off, battery_switch_on, breakaway_pin_in, breakaway_pin_out, breaker_off, breaker_on, breaker_tripped, bypass_lever_normal, bypass_lever_winter, bypass_one_valve_normal, bypass_one_valve_winter, bypass_three_valve_normal, bypass_three_valve_winter, bypass_two_valve_normal, bypass_two_valve_winter, cap_on, changeover_left, changeover_right, coupler_latched, coupler_open, cylinder_valve_closed, cylinder_valve_open, drain_plug_in, drain_plug_out, drain_valve_closed, drain_valve_open, inlet_diverter_city, inlet_diverter_tank, latch_closed, lever_across, lever_along, none, plug_out, stabilizer_down, stabilizer_up, step_in, step_out, switch_off, switch_on, taps_closed, taps_open, valve_closed, waste_cap_off, waste_cap_on, waste_valve_closed, waste_valve_open",
    ),
    "no such signal word": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nsticker: {line: Off, signal: alert}\n---\nText.\n",
        "FILE:6:30: sticker.signal: 'alert' is not one of the words\n    allowed: 'danger', 'warning', 'caution' or 'notice'",
    ),
    "needs no such field": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nneeds: [awnings.wind_limits]\n---\nText.\n",
        "FILE:6:1: needs: 'awnings.wind_limits' is not a field of a unit's file\n    hint: did you mean 'awnings.wind_limit'?",
    ),
    "raw HTML": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\nText.\n\n<b>Bold</b>\n",
        "FILE:9:1: raw HTML is not allowed in a block\n    allowed: Markdown",
    ),
    "a value in a link": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\n[x](topic:{{ 210 }})\n",
        "FILE:7:1: a value inside a link's target is not allowed in a block\n    allowed: Markdown",
    ),
    "a value in code": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\nType `{{ body.name }}`.\n",
        "FILE:7:1: a value inside code is not allowed in a block\n    allowed: Markdown",
    ),
    "an attribute list": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\nText {: .big }\n",
        "FILE:7:1: an attribute list is not allowed in a block\n    allowed: Markdown",
    ),
    "an image": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\n---\n![x](x.png)\n",
        "FILE:7:1: an image is not allowed in a block\n    allowed: Markdown",
    ),
    "replaces nothing": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nreplaces: 0123456789ab\n---\nText.\n",
        "FILE:6:1: replaces: there is no built-in block 'my-block' to replace\n    hint: take the line out",
    ),
    "an alias": (
        b"---\nid: my-block\ntopic: water-pump\norder: 95\nsources: [common-practice]\nask: &a [x]\nfacts: *a\n---\nText.\n",
        "FILE:6:6: the anchor '&a' is not allowed\n    hint: take it out, or quote the text\nFILE:7:8: the alias '*a' is not allowed\n    hint: write the text out, or quote it",
    ),
}


def _problems(root: Path, name: str, data: bytes) -> str:
    """Return the problems of the built-in library with one block of ours over it."""
    folder = root / "content_blocks" / "water"
    folder.mkdir(parents=True)
    (folder / name).write_bytes(data)
    built_in = Path(__file__).parents[2] / "content_blocks"
    with pytest.raises(ProblemsFound) as found:
        read_library([built_in, root / "content_blocks"], root)
    return str(found.value).replace(f"content_blocks/water/{name}", "FILE")


@pytest.mark.parametrize("what", BROKEN)
def test_a_broken_block_says_how_to_mend_it(
    what: str, tmp_path: Path, library: Library
) -> None:
    """The text is all that an editor has: where, what, what is allowed, a hint."""
    data, expected = BROKEN[what]
    expected = expected.replace("{JOURNEYS}", listed(library.journeys))
    assert _problems(tmp_path, "my-block.md", data) == expected


def test_all_problems_of_a_block_show_at_once(tmp_path: Path) -> None:
    """Mending one line after the other, with a run between, is a day's work."""
    data = HEAD.replace("water-pump", "pump") + "facts: [x.y]\nneeds: [lp.suply]\n"
    text = _problems(tmp_path, "my-block.md", f"---\n{data}---\n<br>\n".encode())
    assert [line for line in text.splitlines() if line.startswith("FILE")] == [
        "FILE:3:1: topic: 'pump' is not a topic",
        "FILE:6:1: facts: 'x.y' is not a fact",
        "FILE:7:1: needs: 'lp.suply' is not a field of a unit's file",
        "FILE:9:1: raw HTML is not allowed in a block",
    ]
