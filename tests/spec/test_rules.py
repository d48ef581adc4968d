"""Rules whose outcome is not a problem, or depends on the market or condition."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

import pytest

from hatchleaf.problems import ProblemsFound
from hatchleaf.spec.load import LoadedUnit, load_unit

HERE: Final = Path(__file__).parent
MODEL: Final = "unit_specs/models/model.yml"
UNIT: Final = "unit_specs/unit.yml"


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """Return a copy of the sound workspace."""
    return Path(shutil.copytree(HERE / "workspace", tmp_path / "workspace"))


def changed(workspace: Path, *changes: tuple[str, str, str]) -> LoadedUnit:
    """Return the unit after changes of its file or its model's."""
    for name, old, new in changes:
        path = workspace / name
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")
    return load_unit(workspace / UNIT, workspace)


def test_a_check_digit_is_a_note_elsewhere(workspace: Path) -> None:
    """49 CFR 565 asks for it; the European and Australian rules do not."""
    unit = changed(
        workspace,
        (MODEL, "market: us", "market: uk"),
        (UNIT, "regime: cargo_label_2008", "regime: metric_plate"),
        (UNIT, "7ZZTB2426V1000173", "7ZZTB2427V1000173"),
    )
    (note,) = unit.notes
    assert str(note) == (
        "unit_specs/unit.yml:5:6: vin: note: "
        "the check digit of '7ZZTB2427V1000173' does not fit\n"
        "    hint: read the VIN again from the plate, one character at a time"
    )


def test_a_used_unit_may_have_parts_not_known(workspace: Path) -> None:
    """Nobody left can tell; the guide then says to ask, and is not silent."""
    unit = changed(
        workspace,
        (UNIT, "condition: new", "condition: used\nfound_on: 2027-04-02"),
        (UNIT, "serials:\n", "water: {filter: unknown}\nawnings: unknown\nserials:\n"),
    )
    assert unit.spec.awnings == "unknown"


def test_a_truck_camper_needs_no_vin(workspace: Path) -> None:
    """It is cargo, and has a serial number of its maker at most."""
    unit = changed(
        workspace,
        (MODEL, "type: travel_trailer", "type: truck_camper"),
        (UNIT, "vin: 7ZZTB2426V1000173", "vin: none"),
    )
    assert unit.spec.vin == "none"


def test_html_in_a_text_is_text(workspace: Path) -> None:
    """It is written where it lands as what it is: letters and angle brackets."""
    text = "<script>alert(1)</script> & {{ vin }} [x](javascript:y)"
    unit = changed(
        workspace, (UNIT, "what: bicycle rack on the rear frame", f"what: '{text}'")
    )
    assert unit.spec.added[1].what == text  # type: ignore[union-attr]


def test_all_problems_at_once(workspace: Path) -> None:
    """One broken section hides neither another nor the rules over the others."""
    with pytest.raises(ProblemsFound) as found:
        changed(
            workspace,
            (MODEL, "kind: demand", "kind: dmand"),
            (MODEL, "at: control-panel}\n\ndc:", "at: nowhere}\n\ndc:"),
            (UNIT, "1612 lb", "16120 lb"),
            (UNIT, "winterized: no", "winterized: maybe"),
        )
    fields = {problem.field for problem in found.value.problems}
    assert fields == {
        "water.pump.kind",
        "waste.monitor.at",
        "weights.cargo_label",
        "delivery.winterized",
    }


def test_a_unit_without_a_model(workspace: Path) -> None:
    """A one-off states everything in its own file; there is nothing to remove."""
    text = (workspace / UNIT).read_text(encoding="utf-8")
    own, rest = text.split("based_on: model\n")
    (workspace / UNIT).write_text(own + rest, encoding="utf-8")
    with pytest.raises(ProblemsFound) as found:
        load_unit(workspace / UNIT, workspace)
    told = [str(problem) for problem in found.value.problems]
    line = "unit_specs/unit.yml:18:1: remove: there is no model to take anything from"
    assert line in told
    assert (
        "unit_specs/unit.yml:2:1: water: field is missing\n    allowed: "
        "{tanks, inlets, most_pressure, pump, low_points, filter, softener, "
        "purifier, accumulator, winter_hose, outside_shower, showers, taps}"
    ) in told


def test_a_broken_model_is_told_with_the_unit(workspace: Path) -> None:
    """The model's file is another's work; the place leads there."""
    with pytest.raises(ProblemsFound) as found:
        changed(workspace, (MODEL, "body:\n", "body: &x\n"))
    assert str(found.value) == (
        "unit_specs/models/model.yml:2:7: the anchor '&x' is not allowed\n"
        "    hint: take it out, or quote the text"
    )
