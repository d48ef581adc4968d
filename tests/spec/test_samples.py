"""The sample units are what they are meant to show, and nobody's."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

import pytest

from hatchleaf.spec import paths
from hatchleaf.spec.load import LoadedUnit, load_unit
from hatchleaf.spec.tree import without_items

ROOT: Final = Path(__file__).parents[2]
NAMES: Final = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")


@pytest.fixture(params=NAMES)
def unit(request: pytest.FixtureRequest) -> LoadedUnit:
    """Return each sample in turn."""
    return load_unit(ROOT / "unit_specs" / f"{request.param}.yml", ROOT)


def sample(name: str) -> Any:
    """Return a sample's spec; its parts are known here."""
    return load_unit(ROOT / "unit_specs" / f"{name}.yml", ROOT).spec


def test_samples_have_no_notes(unit: LoadedUnit) -> None:
    """What a newcomer sees first is clean."""
    assert unit.notes == ()


def test_every_place_is_used(unit: LoadedUnit) -> None:
    """And there are enough of them for a round with a phone."""
    used = {
        node.text
        for path, node in unit.tree.walk()
        if (form := paths.fields().get(without_items(path))) and form.form == "place"
    }
    listed = {place.id for place in unit.spec.places}
    assert listed == used - {"none"}
    assert len(listed) >= 12


def test_travel_trailer() -> None:
    """Twin cylinders, 30 A, AGM, diverter, bypass, rinse, powered awning."""
    spec = sample("heron-a")
    assert spec.body.type == "travel_trailer"
    assert spec.lp.supply.changeover == "automatic"
    assert [c.holds.quantity.magnitude for c in spec.lp.supply.cylinders] == [30, 30]
    assert spec.ac.shore.plug == "tt_30"
    assert [b.chemistry for b in spec.dc.batteries] == ["agm", "agm"]
    assert [(s.kind, s.fuse.known) for s in spec.dc.solar] == [("side_port", True)]
    assert [i.kind for i in spec.water.inlets] == ["diverter"]
    assert (spec.hot_water.kind, spec.hot_water.bypass) == ("tank", "two_valve")
    assert spec.hot_water.lp_input != "none"
    assert spec.hot_water.element != "none"
    assert [t.holds for t in spec.waste.tanks] == ["black", "gray"]
    assert spec.waste.rinse.tank == "black"
    assert [a.kind for a in spec.awnings] == ["powered"]
    door, bay = spec.doors
    assert (door.kind, door.screen) == ("entry", "own_latch")
    assert (bay.kind, bay.holds_open) == ("bay", "magnet")
    assert spec.gear.stabilizers.kind == "scissor"
    assert [load.id for load in spec.ac.loads] == ["microwave"], "one was removed"


def test_molded_trailer() -> None:
    """One cylinder without a gauge, outlet, LFP, on demand, combined tank, strap."""
    spec = sample("heron-b")
    assert spec.body.type == "molded_trailer"
    assert [(c.gauge, c.id) for c in spec.lp.supply.cylinders] == [(False, "tongue")]
    assert [o.kind for o in spec.lp.outlets] == ["low_pressure"]
    assert [b.chemistry for b in spec.dc.batteries] == ["lfp"]
    assert [i.kind for i in spec.water.inlets] == ["gravity_fill", "city"]
    assert spec.water.inlets[1].regulator == "built_in"
    assert spec.hot_water.kind == "on_demand"
    assert [t.holds for t in spec.waste.tanks] == ["combined"]
    assert [a.kind for a in spec.awnings] == ["strap"]
    door = spec.doors[0]
    assert (door.screen, door.dead_bolt) == ("latches_to_door", True)
    assert spec.weights.hitch.origin == "brochure"


def test_teardrop() -> None:
    """All-electric: no gas, 20 A, induction, portable toilet, no awning; used."""
    spec = sample("heron-c")
    assert spec.body.type == "teardrop"
    assert (spec.lp.supply, spec.lp.regulator, spec.lp.outlets) == ("none",) * 3
    assert spec.ac.shore.plug == "5_20"
    assert spec.kitchen.cooktop.kind == "induction"
    assert [t.holds for t in spec.waste.tanks] == ["gray"]
    assert spec.waste.toilet.kind == "portable"
    assert spec.awnings == "none"
    assert (spec.condition, spec.weights.regime) == ("used", "older_label")
    assert spec.found_on <= spec.delivery.date
    assert spec.water.low_points == "unknown"
    assert not spec.dc.converter.draw.known


def test_samples_are_told_apart() -> None:
    """A number copied from one sample to another would prove nothing."""
    specs = [sample(name) for name in NAMES]
    for field in ("code", "vin", "stock"):
        assert len({getattr(spec, field) for spec in specs}) == len(specs)
