"""Weight, tire and awning facts of the samples, and of units changed in one thing."""

from __future__ import annotations

import pytest

from facts.samples import UNKNOWN, facts, reading, unit, with_
from hatchleaf import units
from hatchleaf.spec.model.unit import Added


@pytest.mark.parametrize(
    ("sample", "name", "shown"),
    [
        ("heron-a", "weights.gvwr", "7,400 lb"),
        ("heron-a", "weights.cargo", "1,612 lb"),
        # By hand: 7,400 - 1,612; 3,450 - 737.
        ("heron-a", "weights.empty", "5,788 lb"),
        ("heron-b", "weights.empty", "2,713 lb"),
        # 61 + 43; 1,612 - 383.64 - 104 = 1,124.4; 737 - 183.48 - 14 = 539.5.
        ("heron-a", "weights.added", "104 lb"),
        ("heron-a", "weights.water", "390 lb"),
        ("heron-a", "weights.cargo_left", "1,100 lb"),
        ("heron-b", "weights.cargo_left", "539 lb"),
        # 744 / 5,963 = 12.48 %; 171 / 1,438 = 11.89 %.
        ("heron-a", "weights.hitch", "744 lb"),
        ("heron-a", "weights.hitch_share", "12.5 %"),
        ("heron-c", "weights.hitch_share", "11.9 %"),
        # 2 x 30 lb of gas; 2 x 3,500 - (5,963 - 744); 2,000 - (1,438 - 171).
        ("heron-a", "weights.lp", "60 lb"),
        ("heron-a", "weights.axle_room", "1,781 lb"),
        ("heron-c", "weights.axle_room", "733 lb"),
        ("heron-a", "tires.pressure", "50 psi"),
        ("heron-a", "tires.load", "1,760 lb"),
        # 2 x 2,680 over 5,000 and 4 x 2,470 over 9,600, of the file's labels.
        ("heron-e", "weights.tire_reserve[front]", "7.2 %"),
        ("heron-e", "weights.tire_reserve[rear]", "2.9 %"),
        # (50 + 14.696) x (T + 459.67) / 529.67 - 14.696.
        ("heron-a", "tires.pressure_at[0 °F]", "41 psi"),
        ("heron-a", "tires.pressure_at[30 °F]", "45 psi"),
        ("heron-a", "tires.pressure_at[70 °F]", "50 psi"),
        ("heron-a", "tires.pressure_at[110 °F]", "55 psi"),
        # 15 ft x 98 in = 122.5 sq ft; x 0.576, 1.024, 1.6, 2.304 lb/sq ft.
        ("heron-a", "awnings.area[patio]", "130 sq ft"),
        ("heron-a", "awnings.wind_force[patio, 15 mph]", "71 lb of force"),
        ("heron-a", "awnings.wind_force[patio, 20 mph]", "130 lb of force"),
        ("heron-a", "awnings.wind_force[patio, 25 mph]", "200 lb of force"),
        ("heron-a", "awnings.wind_force[patio, 30 mph]", "290 lb of force"),
        ("heron-a", "awnings.wind_limit[patio]", "22 mph"),
        ("heron-b", "awnings.wind_limit[curb]", "18 mph"),
    ],
)
def test_numbers_of_the_samples(sample: str, name: str, shown: str) -> None:
    """Worked by hand beside each row."""
    assert facts(sample)[name].shown() == shown


def test_gas_is_not_taken_off_twice() -> None:
    """The label counts full gas: cargo left is the same with bigger cylinders."""
    heavier = with_(
        "heron-a",
        lp__supply__cylinders__left__holds=reading("40 lb", units.MASS),
        lp__supply__cylinders__right__holds=reading("40 lb", units.MASS),
    )

    assert heavier["weights.cargo_left"] == facts("heron-a")["weights.cargo_left"]
    assert "full gas is not taken off again" in heavier["weights.cargo_left"].basis


@pytest.mark.parametrize("regime", ["older_label", "canada", "metric_plate"])
def test_another_label_is_read_as_it_stands(regime: str) -> None:
    """Older labels took water off already: no empty weight, nothing left over."""
    some = with_("heron-a", weights__regime=regime)

    assert some["weights.cargo"].shown() == "1,612 lb"
    assert "read there what it already counts" in some["weights.cargo"].basis
    assert not some.of("weights.empty")
    assert not some.of("weights.cargo_left")
    assert "weights.cargo_left" not in some.missing
    assert "counts as cargo" not in some["weights.water"].basis


def test_a_hitch_that_was_not_weighed_is_not_judged() -> None:
    """The brochure's figure is marked, and no share is made of it."""
    hitch = facts("heron-b")["weights.hitch"]

    assert hitch.brochure
    assert hitch.basis == "318 lb, the maker's figure for an empty unit; not weighed."
    assert not facts("heron-b").of("weights.hitch_share")


def test_a_share_needs_the_whole_from_a_scale_too() -> None:
    """A scale's figure over a rating would be a wrong share."""
    some = with_("heron-a", weights__scale_total=UNKNOWN)

    assert some.missing["weights.hitch_share"] == ("weights.scale_total",)
    assert not some["weights.hitch"].brochure


def test_an_addition_of_unknown_weight_stops_the_cargo_left() -> None:
    """A sum without one of its parts would promise too much."""
    additions = unit("heron-a").added
    assert not isinstance(additions, str)
    some = with_(
        "heron-a", added=(*additions, Added(id="rack-2", what="rack", weight=UNKNOWN))
    )

    for name in ("weights.added", "weights.cargo_left"):
        assert some.missing[name] == ("added[rack-2].weight",)
        assert name not in some


def test_nothing_added_is_nothing_said() -> None:
    """No fact of nought pounds."""
    some = with_("heron-a", added="none")

    assert not some.of("weights.added")
    # 1,612 - 383.64 = 1,228.4.
    assert some["weights.cargo_left"].shown() == "1,200 lb"
    assert "added" not in some["weights.cargo_left"].basis


def test_too_much_on_board_shows_below_zero() -> None:
    """Water alone is above the label: the number says so."""
    some = with_("heron-a", weights__cargo_label=reading("300 lb", units.MASS, "label"))

    # 300 - 383.64 - 104 = -187.6, rounded away from comfort.
    assert some["weights.cargo_left"].shown() == "-190 lb"


def test_a_missing_wind_limit_is_named() -> None:
    """The force can be told without it; the limit cannot be guessed."""
    some = with_("heron-a", awnings__patio__wind_limit=UNKNOWN)

    assert some.missing["awnings.wind_limit[patio]"] == ("awnings[patio].wind_limit",)
    assert some.of("awnings.wind_force")
    assert not some.of("awnings.wind_limit")


def test_a_unit_without_awning_has_no_wind() -> None:
    """The teardrop says nothing of an awning."""
    assert not [name for name in facts("heron-c") if name.startswith("awnings.")]


def test_a_metric_reading_is_not_made_finer_than_it_was() -> None:
    """1,000 kg is 2,204.62 lb, of which three figures are printed, downwards."""
    some = with_(
        "heron-a",
        weights__gvwr=reading("3357 kg", units.MASS, "label"),
        gear__tires__pressure=reading("3.5 bar", units.PRESSURE, "label"),
    )

    # 3,357 kg = 7,400.9 lb; 3.5 bar = 50.76 psi.
    assert some["weights.gvwr"].shown() == "7,400 lb"
    assert some["tires.pressure"].shown() == "50.8 psi"


def test_room_on_the_axles_takes_figures_of_a_scale_alone() -> None:
    """A brochure's hitch weight, or a whole off a scale, would promise room."""
    brochure = reading("744 lb", units.MASS, "brochure")
    paper = reading("5963 lb", units.MASS, "paper")
    unweighed = with_("heron-a", weights__scale_total=UNKNOWN)

    assert not with_("heron-a", weights__hitch=brochure).of("weights.axle_room")
    assert not with_("heron-a", weights__scale_total=paper).of("weights.axle_room")
    assert unweighed.missing["weights.axle_room"] == ("weights.scale_total",)


def test_gas_is_weighed_where_the_label_of_2008_counts_it() -> None:
    """Older labels count gas each in its own way: nothing is said of them."""
    older = with_("heron-a", weights__regime="older_label")

    assert not older.of("weights.lp")
    assert "already" in facts("heron-a")["weights.lp"].basis


@pytest.mark.parametrize(
    ("market", "height", "shown"),
    [
        # 13 ft 6 in is 4.1148 m by the definition of the inch (25.4 mm).
        ("us", "162 in", "13 ft 6 in"),
        ("us", "162.1 in", "13 ft 7 in"),
        ("eu", "162 in", "4.12 m"),
        ("uk", "4.114 m", "4.12 m (13 ft 6 in)"),
    ],
)
def test_height_is_told_as_signs_give_it(market: str, height: str, shown: str) -> None:
    """Rounded up: a bridge is hit by the part of an inch that was left out."""
    told = with_(
        "heron-a", body__market=market, body__height=reading(height, units.LENGTH)
    )

    assert told["body.height"].shown() == shown


def test_an_unknown_height_is_no_number() -> None:
    """And the sheet says what is missing."""
    told = with_("heron-a", body__height=UNKNOWN)

    assert "body.height" not in told
    assert told.missing["body.height"] == ("body.height",)


def test_usual_nose_weight_of_a_caravan_on_a_stabilizing_head() -> None:
    """5 to 7 % of 1,600 kg are 80 to 112 kg: the kind of head changes nothing."""
    # Towing advice of the UK caravan trade: 5 to 7 % of the actual laden mass, within
    # the lowest limit of car, towbar and coupling (secondary).
    found = facts("heron-f")
    for said, share, printed in (("least", 0.05, "80 kg"), ("most", 0.07, "110 kg")):
        fact = found[f"weights.hitch_usual[at {said}]"]
        assert not isinstance(fact.value, str | bool)
        assert units.number_in(fact.value, "kilogram") == pytest.approx(share * 1600)
        assert fact.shown() == printed
