"""Facts of the battery's nights, of charging, sun, supplies and generators."""

from __future__ import annotations

import pytest

from facts.fitted import facts_of_everything
from facts.samples import UNKNOWN, changed, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.model.dc import DcLoad


@pytest.mark.parametrize(
    ("sample", "name", "shown"),
    [
        # AGM at 32 degF 80 %: 1,128 x 0.80 = 902; at 0 degF 45 %: 508.
        ("heron-a", "battery.usable_cold[32 °F]", "900 Wh"),
        ("heron-a", "battery.usable_cold[0 °F]", "500 Wh"),
        # 2.7 x 4 + 2.2 x 8 + 0.6 x 10 + 0.3 x 10 + 6.4 x 0.1 = 38.04 Ah, 456 Wh.
        ("heron-a", "battery.night_use[mild]", "460 Wh"),
        ("heron-a", "battery.nights[mild]", "2.4 nights"),
        # And 6.8 A for 3.5 hours: 61.84 Ah, 742 Wh; 902 / 742 = 1.2.
        ("heron-a", "battery.night_use[frost]", "750 Wh"),
        ("heron-a", "battery.nights[frost]", "1.2 nights"),
        # 94 Ah: 55 A by the charger (0.3 x 188 = 56.4 it takes), 85 %, 4 hours.
        ("heron-a", "battery.charge_hours[charger]", "6.1 hours"),
        ("heron-a", "battery.charge_hours[charge line]", "14 hours"),
        # 188 Ah, 0.9 A always: 94 / (21.6 + 0.188) = 4.3; 0.1 A: 94 / 2.588 = 36.3.
        ("heron-a", "battery.storage_days[switch on]", "4.3 days"),
        ("heron-a", "battery.storage_days[switch off]", "36 days"),
        ("heron-a", "battery.freezes[half full]", "\N{MINUS SIGN}10 °F"),
        ("heron-a", "battery.freezes[empty]", "15 °F"),
        ("heron-a", "battery.at_rest[half full]", "12.2 V to 12.4 V"),
        ("heron-b", "battery.coldest_charge", "32 °F"),
        ("heron-b", "battery.at_rest[any reading]", "tells you little"),
        # Lead-acid is not left alone for longer, however slowly it falls.
        ("heron-c", "battery.storage_days[switch off]", "90 days"),
        # 15 / 1.5625 = 9.6; 10.2 x 1.5625 = 15.94; 190 / 12 = 15.8.
        ("heron-a", "solar.most_isc[port]", "9.6 A"),
        ("heron-b", "solar.circuit_current[roof]", "16 A"),
        ("heron-b", "solar.fuse[roof]", "fits"),
        ("heron-b", "solar.controller[roof]", "fits"),
        ("heron-c", "solar.most_watts[port]", "120 W"),
        # 190 x 7.34 x 0.8592 x 0.7 = 838.8; 190 x 2.20 x the same = 251.4, at 12 V.
        ("heron-b", "solar.day_energy[June at 40° north]", "830 Wh"),
        ("heron-b", "solar.day_charge[December at 40° north]", "20 Ah"),
        ("heron-a", "shore.supply[15 A]", "1,440 W"),
        ("heron-a", "shore.needs[roof]", "20 A"),
        # Their watts are within 1,440 W, but neither is for a 15 A outlet.
        ("heron-a", "shore.needs[water-heater]", "20 A"),
        ("heron-b", "shore.needs[roof]", "20 A"),
        ("heron-b", "shore.needs[microwave]", "15 A"),
        ("heron-a", "shore.needs[roof + microwave]", "30 A"),
        ("heron-a", "shore.needs[roof + water-heater]", "too much"),
        ("heron-c", "shore.needs[cooktop + charger]", "not known"),
        # 2 x 24 A x 30 ft x 1.24 ohm/kft = 1.79 V; 2 x 12 x 50 x 3.14 = 3.77 V.
        ("heron-a", "shore.cord_drop", "1.8 V"),
        ("heron-a", "shore.extension_drop[14 gauge]", "3.8 V"),
        ("heron-a", "fuses.color[solar-port]", "15 A, blue"),
        ("heron-a", "generator.start[roof]", "3,000 W"),
        # Twice 1,480 W of the cooler and 940 W of the charger are 3,900 W.
        ("heron-a", "generator.needed", "3,900 W"),
        # Twice 1,190 W and 610 W are 2,990 W, rounded up to two figures.
        ("heron-b", "generator.needed", "3,000 W"),
        # 1,490 x 3.412 = 5,084.
        ("heron-b", "climate.strip_heat[roof]", "5,000 BTU/h"),
    ],
)
def test_numbers_of_the_samples(sample: str, name: str, shown: str) -> None:
    """Worked by hand beside each row."""
    assert facts(sample)[name].shown() == shown


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        # 2,800 W x (1 - 0.035 x 5) = 2,310 W.
        ("generator.rated", "2,800 W"),
        ("generator.at_height[5,000 ft]", "2,300 W"),
        ("shore.supply[50 A]", "4,800 W"),
        # 1,350 W are 132 A at 12 V: (9.4 / 132.4) ** 0.15 = 67 % of 1,128 Wh.
        ("inverter.hours[microwave]", "0.47 hours"),
        # The rest of what the sample needed 30 A for still needs it.
        ("shore.needs[roof + microwave]", "30 A"),
        ("shore.needs[roof + water-heater]", "50 A"),
    ],
)
def test_numbers_of_a_unit_with_more(name: str, shown: str) -> None:
    """An inverter, a generator and 50 A: what the samples lack."""
    assert facts_of_everything()[name].shown() == shown


@pytest.mark.parametrize(
    "base",
    [
        "inverter.hours",
        "generator.rated",
        "generator.at_height",
        "battery.coldest_charge",
        "climate.strip_heat",
        "solar.day_energy",
    ],
)
def test_nothing_is_said_of_what_is_not_fitted(base: str) -> None:
    """The first sample has none of these."""
    assert not facts("heron-a").of(base)
    assert base not in facts("heron-a").missing


def test_two_loads_on_two_legs_share_one_leg_of_a_small_outlet() -> None:
    """On legs of their own 50 A carries them; a 30 A adapter joins the legs."""
    spec = changed(
        unit("heron-a"),
        {
            "ac.shore.plug": "14_50",
            "ac.shore.service": reading("50 A", units.CURRENT),
            "ac.shore.legs": 2,
            "climate.air_conditioners.roof.watts": reading("2700 W", units.POWER),
            "ac.loads.microwave.watts": reading("2700 W", units.POWER),
            "ac.loads.microwave.leg": "b",
        },
    )
    some = work_out(spec)

    # 2,700 W is within 2,880 W of a leg; both together are 5,400 W.
    assert some["shore.needs[roof]"].value == "30 A"
    assert some["shore.needs[roof + microwave]"].value == "50 A"


def test_a_heavy_load_on_lead_acid_lasts_less_than_its_share() -> None:
    """Above the 20-hour rate, and it says why; on LFP nothing is taken off."""
    heavy = (
        DcLoad(
            id="heater",
            name="seat heater",
            draw=reading("47 A", units.CURRENT),
            runs="at_times",
        ),
    )
    lead = with_("heron-a", dc__loads=heavy)["battery.hours[heater]"]
    lithium = with_("heron-b", dc__loads=heavy)["battery.hours[heater]"]

    # 188 Ah at 20 hours is 9.4 A: (9.4 / 47) ** 0.15 = 0.786 of 1,128 Wh; 1.57 h.
    assert lead.shown() == "1.5 hours"
    assert lead.typical
    assert "leaves 79 % of it (typical for AGM)" in lead.basis
    assert "leaves" not in lithium.basis


def test_unknown_hours_of_a_load_stop_the_nights_alone() -> None:
    """Nothing is guessed; the hours of each load stay."""
    some = with_("heron-a", dc__loads__fan__runs="unknown")

    assert not some.of("battery.nights")
    assert some.missing["battery.nights"] == ("dc.loads[fan].runs",)
    assert "battery.hours[fan]" in some


@pytest.mark.parametrize("fuse", ["15 A", "10 A"])
def test_a_fuse_below_what_the_panel_may_give_is_too_small(fuse: str) -> None:
    """15.94 A are needed."""
    some = with_("heron-b", dc__solar__roof__fuse=reading(fuse, units.CURRENT))

    assert some["solar.fuse[roof]"].value == "too small"


def test_a_small_controller_is_told() -> None:
    """190 W at 12 V are 15.8 A."""
    small = reading("15 A", units.CURRENT)
    some = with_("heron-b", dc__solar__roof__controller_amps=small)

    assert some["solar.controller[roof]"].value == "too small"


def test_an_unknown_panel_current_names_its_field() -> None:
    """Never a guess for a safety limit."""
    some = with_("heron-b", dc__solar__roof__isc=UNKNOWN)

    assert some.missing["solar.fuse[roof]"] == ("dc.solar[roof].isc",)
    assert not some.of("solar.circuit_current")


def test_the_south_has_its_summer_in_december() -> None:
    """A unit for that market names its own latitudes."""
    some = with_("heron-b", body__market="au")
    summer = some["solar.day_energy[December at 40° south]"]
    winter = some["solar.day_energy[June at 40° south]"]

    assert summer.shown() == "830 Wh"
    assert units.number_in(winter.value, "watt_hour") < 300  # type: ignore[arg-type]


def test_no_supply_of_north_america_elsewhere() -> None:
    """By hand: 1,480 W need 10 A of 230 V, with 1,420 W beside it 16 A."""
    elsewhere = with_(
        "heron-a",
        body__market="uk",
        ac__shore__plug="iec_16",
        ac__shore__service=reading("16 A", units.CURRENT),
        ac__shore__volts=reading("230 V", units.VOLTAGE),
    )

    assert [fact.item for fact in elsewhere.of("shore.supply")] == [
        "6 A",
        "10 A",
        "16 A",
    ]
    assert elsewhere["shore.needs[roof]"].value == "10 A"
    assert elsewhere["shore.needs[roof + water-heater]"].value == "16 A"
    assert all(
        "80 %" not in fact.basis and "20 A" not in fact.basis
        for fact in elsewhere.of("shore.needs")
    )


def test_a_generator_must_start_the_largest_air_conditioner_alone() -> None:
    """By hand: twice 1,480 W without a charger; a second, smaller cooler adds none."""
    coolers = unit("heron-a").climate.air_conditioners
    assert not isinstance(coolers, str)
    small = coolers[0].model_copy(
        update={"id": "rear", "watts": reading("900 W", units.POWER)}
    )
    no_charger = with_(
        "heron-a",
        dc__converter="none",
        climate__air_conditioners=(*coolers, small),
    )
    unknown = with_("heron-a", dc__converter__draw=UNKNOWN)

    assert no_charger["generator.needed"].shown() == "3,000 W"
    assert "charger" not in no_charger["generator.needed"].basis
    assert unknown.missing["generator.needed"] == ("dc.converter.draw",)
    assert not facts("heron-c").of("generator.needed")
