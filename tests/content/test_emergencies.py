"""
Page 001: each emergency that this unit can have, by urgency, its first act first.

What comes first in each is what fire, gas, road and health services tell people to do:
out before anything else, no step towards a person who is still held by the current,
no foot on the brake of a swaying unit.  Common practice; the blocks name their sources.
"""

# Units are made up here without validation, field by field.
# mypy: disable-error-code="call-arg, arg-type"

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

import pytest

from hatchleaf.blocks.choose import choose
from hatchleaf.blocks.model import Library
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.assemble import assemble
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.gear import Leveling, Receiver, Slide
from hatchleaf.spec.model.unit import UnitSpec

MOTORHOMES: Final = ("class_a", "class_b", "class_c")
MOST_WORDS_BEFORE: Final = 16
"""Between a heading and its first step: one line that says what not to do."""
MOST_STEPS: Final = 7
MOST_WORDS_AFTER: Final = 80
"""Below the steps of one emergency: whoever reads on has acted already."""


@dataclass(frozen=True)
class Emergency:
    """One emergency: its heading, its first act, and which units can have it."""

    heading: str
    first: str
    can: Callable[[UnitSpec], bool] = lambda _: True


def _towed(spec: UnitSpec) -> bool:
    return spec.body.type not in (*MOTORHOMES, "truck_camper")


def _coupled(spec: UnitSpec) -> bool:
    return _towed(spec) and spec.gear.hitch != "none"


def _kind(part: Any) -> str:
    return part if isinstance(part, str) else str(part.kind)


def _gas_alarm(spec: UnitSpec) -> bool:
    alarms = spec.safety.alarms
    return not isinstance(alarms, str) and any(
        one.detects in ("lp", "co_and_lp") for one in alarms
    )


def _slide(spec: UnitSpec) -> bool:
    if isinstance(spec.slides, str):
        return spec.slides == "unknown"
    return any(one.kind != "manual" for one in spec.slides)


def _leveling(spec: UnitSpec) -> bool:
    return _kind(spec.gear.leveling) in ("hydraulic", "electric", "unknown")


def _jack(spec: UnitSpec) -> bool:
    return spec.gear.leveling == "none" and (
        _kind(spec.gear.jack) in ("electric", "landing_electric")
    )


BY_URGENCY: Final = (
    Emergency("Fire", r"get everyone out|^Driving: stop off the road"),
    Emergency("You smell gas", "^Get everyone out", lambda s: s.lp.supply != "none"),
    Emergency("Gas alarm, no smell", "^Get everyone out", _gas_alarm),
    Emergency("CO alarm, or you feel sick", "^Get everyone out into fresh air"),
    Emergency(
        "Battery smokes",
        "^Get everyone out",
        lambda s: s.dc.batteries != "none",
    ),
    Emergency("Shock or tingle", "^Keep everyone off", lambda s: s.ac.shore != "none"),
    Emergency("Storm or flood", "^Leave the unit now"),
    Emergency("A slide does not stop", "everyone clear of it", _slide),
    Emergency("A jack does not stop", "^Get everyone away", _jack),
    Emergency("A jack or leg does not stop", "^Get everyone away", _leveling),
    Emergency(
        "Water pours inside",
        r"step out, and switch off the breaker|^Shut the park tap|pump off",
        lambda s: s.water.tanks != "none",
    ),
    Emergency("It sways while you tow", "^Hold the wheel straight", _coupled),
    Emergency("A tire bursts", "^Grip the wheel", lambda s: s.gear.tires != "none"),
    Emergency("It comes loose on the road", "^Steer straight on", _coupled),
    Emergency(
        "What you tow sways or comes loose",
        "^Keep the wheel straight",
        lambda s: not isinstance(s.gear.receiver, str),
    ),
    Emergency(
        "Wheel hot or smoking", "^Stop off the road", lambda s: s.gear.tires != "none"
    ),
)
LAST: Final = "Where to shut it off"
STEP: Final = re.compile(r"^\d+\. (.+)$", re.MULTILINE)


def _sections(text: str) -> dict[str, str]:
    """Return the sections of page 001 by heading, in order."""
    parts = re.split(r"^## (.+)$", text, flags=re.MULTILINE)
    assert "1. " not in parts[0]
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def _of(spec: UnitSpec, library: Library) -> str:
    """Return page 001 of a unit as filled in, without its other pages."""
    facts = work_out(spec)
    selection = choose(library, spec, facts)
    # The other pages are there to be led to; their texts are not asked for.
    own = tuple(
        one
        for one in selection.chosen
        if one.block.shared or one.block.topic == "emergencies"
    )
    manual = assemble(
        library,
        spec,
        facts,
        replace(selection, chosen=own),
        dealer_name="Two Herons",
        dealer_phone="555-0142",
    )
    (topic,) = (t for t in manual.topics if t.topic.id == "emergencies")
    return "\n".join(part.markdown for part in topic.parts)


def _changed(spec: UnitSpec, **changes: Mapping[str, object]) -> UnitSpec:
    """Return *spec* with fields of its groups replaced, or a part of its own."""
    update = {
        name: getattr(spec, name).model_copy(update=dict(fields))
        if isinstance(fields, dict)
        else fields
        for name, fields in changes.items()
    }
    return spec.model_copy(update=update)


SLIDE: Final = Slide.model_construct(
    id="sofa", kind="rack", name="Sofa slide", at="entry-door", switch_at="entry-door"
)
LEVELING: Final = Leveling.model_construct(
    kind="hydraulic", at="entry-door", fluid_at="none"
)
RECEIVER: Final = Receiver.model_construct(kind="receiver", at="coupler")
NOT_TOWED: Final = dict.fromkeys(
    ("hitch", "jack", "brakes", "breakaway", "distribution", "sway_control"), "none"
)


@pytest.fixture(scope="session")
def specs(samples: Mapping[str, LoadedUnit]) -> Mapping[str, UnitSpec]:
    """Return the samples and units like them with what no sample has."""
    towed = samples["heron-a"].spec
    coach = _changed(towed, body={"type": "class_c"}, gear=NOT_TOWED)
    return {
        **{name: loaded.spec for name, loaded in samples.items()},
        "a with a slide": _changed(towed, slides=(SLIDE,)),
        "a with leveling": _changed(towed, gear={"leveling": LEVELING}),
        "a fifth wheel": _changed(towed, body={"type": "fifth_wheel"}),
        "a motorhome": coach,
        "a motorhome that tows": _changed(coach, gear={"receiver": RECEIVER}),
        "nothing known": _changed(
            towed,
            lp={"supply": "unknown"},
            water={"tanks": "unknown", "pump": "unknown"},
            dc={"batteries": "unknown", "disconnect": "unknown"},
            ac={"shore": "unknown", "panel": "unknown"},
            slides="unknown",
            gear=dict.fromkeys(
                ("tires", "hitch", "jack", "brakes", "breakaway"), "unknown"
            ),
            safety={"alarms": "unknown", "exits": "unknown"},
        ),
    }


@pytest.fixture(scope="session")
def pages(specs: Mapping[str, UnitSpec], library: Library) -> Mapping[str, str]:
    """Return page 001 of each of them, as Markdown."""
    return {name: _of(spec, library) for name, spec in specs.items()}


def _called(heading: str, spec: UnitSpec) -> str:
    """Return a heading in the English of the unit's market."""
    british = spec.body.market in ("uk", "eu", "au")
    return heading.replace("tire", "tyre") if british else heading


def test_each_that_can_happen_is_there_by_urgency(
    specs: Mapping[str, UnitSpec], pages: Mapping[str, str]
) -> None:
    """Nothing that can happen is missing, nothing else is there, the worst is first."""
    for name, text in pages.items():
        spec = specs[name]
        wanted = [_called(one.heading, spec) for one in BY_URGENCY if one.can(spec)]
        assert list(_sections(text)) == [*wanted, LAST], name


def test_every_emergency_is_met(specs: Mapping[str, UnitSpec]) -> None:
    """Each row of the table is tried by a unit that has it and one that has not."""
    for one in BY_URGENCY:
        tried = {one.can(spec) for spec in specs.values()}
        assert True in tried, one.heading
    assert (
        sum({one.can(s) for s in specs.values()} == {True, False} for one in BY_URGENCY)
        > 7
    )


def test_the_first_step_saves_lives(pages: Mapping[str, str]) -> None:
    """Whoever reads one step and no more has done what matters most."""
    firsts = {one.heading: one.first for one in BY_URGENCY}
    firsts |= {"A tyre bursts": firsts["A tire bursts"]}
    for name, text in pages.items():
        for heading, section in _sections(text).items():
            if heading != LAST:
                step = STEP.findall(section)[0]
                assert re.search(firsts[heading], step), (name, heading, step)


def test_next_to_nothing_stands_before_the_first_step(
    pages: Mapping[str, str],
) -> None:
    """The act comes first and the reason after it, both short."""
    for name, text in pages.items():
        for heading, section in _sections(text).items():
            if heading == LAST:
                continue
            steps = STEP.findall(section)
            before = section[: section.index(steps[0])]
            after = section[section.rindex(steps[-1]) + len(steps[-1]) :]
            assert len(re.findall(r"[A-Za-z]+", before)) <= MOST_WORDS_BEFORE, heading
            assert 2 < len(steps) <= MOST_STEPS, (name, heading)
            plain = re.sub(r"\]\([^)]*\)|&#\d+;", " ", after)
            assert len(plain.split()) <= MOST_WORDS_AFTER, (name, heading)


NEVER: Final = {
    "You smell gas": r"\bcall\b(?! from in here)(?!.*from there)|\bswitch (?:on|off)\b",
    "Battery smokes": r"extinguisher|\bspray|\bpour|\bwater on\b",
    "Shock or tingle": r"\bpull (?:him|her|them|the person)|\bdrag\b",
    "It sways while you tow": r"^\d+\. (?:Brake|Steer|Speed)",
    "A tire bursts": r"^\d+\. (?:Brake|Press the brake)",
    "Storm or flood": r"\bstay in the unit\b",
}
"""What an order of each must not say: it has killed people."""


@pytest.mark.parametrize("heading", NEVER)
def test_no_order_that_kills(heading: str, pages: Mapping[str, str]) -> None:
    """No switch in gas, no fight with a battery, no hand on who hangs on the current."""
    said = re.compile(NEVER[heading], re.IGNORECASE | re.MULTILINE)
    for text in pages.values():
        sections = _sections(text)
        section = sections.get(heading) or sections.get(heading.replace("ire", "yre"))
        for step in STEP.finditer(section or ""):
            assert not said.search(step[0]), step[0]


def test_this_units_own_places(
    samples: Mapping[str, LoadedUnit], pages: Mapping[str, str]
) -> None:
    """Each names the place where this unit is shut off: nobody looks for it in smoke."""
    towed = _sections(pages["heron-a"])
    assert "LP locker (front" in towed["You smell gas"]
    assert "LP locker (front" in towed["CO alarm, or you feel sick"]
    assert "near the front" in towed["Battery smokes"]
    assert "Control panel" in towed["Water pours inside"]
    assert (
        "Battery switch ("
        in _sections(pages["a with a slide"])["A slide does not stop"]
    )
    shut = towed[LAST]
    for place in ("LP locker", "Control panel", "power post", "Battery switch"):
        assert place in shut
    assert "four quick beeps" in towed["CO alarm, or you feel sick"]
    assert samples["heron-a"].spec.lp.supply != "none"


def test_a_unit_of_which_nothing_is_known(pages: Mapping[str, str]) -> None:
    """No place is made up, and nobody is sent to look for a valve."""
    sections = _sections(pages["nothing known"])
    assert "Do not go and look for a valve" in sections["You smell gas"]
    assert "Close the gas" not in pages["nothing known"]
    assert "battery switch off" not in pages["nothing known"]
    assert "not known" in sections[LAST]


def test_a_motorhome_stops_first(pages: Mapping[str, str]) -> None:
    """Its people sit in what burns; and nothing comes loose that it does not tow."""
    fire = STEP.findall(_sections(pages["a motorhome"])["Fire"])
    assert fire[0].startswith("Driving: stop off the road and turn off the engine")
    assert "**Engine**" in pages["a motorhome"]
    assert "trailer" not in pages["a motorhome"]
    assert "**Engine**" not in pages["heron-a"]


@pytest.mark.parametrize(
    ("market", "number"),
    [("us", "911"), ("ca", "911"), ("uk", "999"), ("eu", "112"), ("au", "000")],
)
def test_the_number_of_the_country(
    market: str, number: str, samples: Mapping[str, LoadedUnit], library: Library
) -> None:
    """Common knowledge of each country; another country's number is nowhere."""
    spec = _changed(samples["heron-a"].spec, body={"market": market})
    text = _of(spec, library)
    assert len(re.findall(rf"\b{number}\b", text)) > 8
    others = {"911", "999", "112", "000"} - {number}
    # From the United Kingdom people drive to where it is 112.
    others -= {"112"} if market == "uk" else set()
    assert not [one for one in others if re.search(rf"\b{one}\b", text)]


def test_no_gas_on_a_unit_without(pages: Mapping[str, str]) -> None:
    """Carbon monoxide is for all, a gas valve for those that have one."""
    text = pages["heron-c"]
    assert "You smell gas" not in text
    assert not re.search(r"cylinder|propane|LP gas", text)
    assert "CO alarm, or you feel sick" in text
