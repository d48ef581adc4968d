"""Both systems of units: the market's own first, the other beside, both safe."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from facts.samples import NAMES, changed, facts, reading, unit
from facts.test_every_fact import _printed_number
from hatchleaf import units
from hatchleaf.facts.model import Fact
from hatchleaf.facts.unit_systems import in_market, temperatures
from hatchleaf.facts.work_out import work_out
from hatchleaf.units import Rounding, quantity

MARKETS = ("us", "ca", "uk", "eu", "au")


@pytest.mark.parametrize(
    ("unit_", "us", "ca", "uk", "eu", "au"),
    [
        ("pound", "pound", "kilogram", "kilogram", "kilogram", "kilogram"),
        ("gallon", "gallon", "gallon", "liter", "liter", "liter"),
        ("psi", "psi", "psi", "bar", "bar", "kilopascal"),
        ("Btu / hour", "Btu / hour", "Btu / hour", "kilowatt", "kilowatt", "kilowatt"),
        (
            "mile / hour",
            "mile / hour",
            "mile / hour",
            "mile / hour",
            "kilometer / hour",
            "kilometer / hour",
        ),
        ("watt", "watt", "watt", "watt", "watt", "watt"),
    ],
)
def test_each_market_reads_its_own_first(
    unit_: str, us: str, ca: str, uk: str, eu: str, au: str
) -> None:
    """Canada's labels state kilograms (its safety regulations); the UK drives miles."""
    found = [in_market(unit_, market)[0] for market in MARKETS]

    assert found == [us, ca, uk, eu, au]


@pytest.mark.parametrize(
    ("name", "both"),
    [
        # By hand: 46 x 3.785 = 174.1 l; 7,400 x 0.4536 = 3,356.6 kg, a limit, down.
        ("water.capacity", "46 gal (174 l)"),
        ("weights.gvwr", "7,400 lb (3,350 kg)"),
        # 383.6 lb are 174.0 kg, a load, up; 50 psi are 344.7 kPa.
        ("weights.water", "390 lb (180 kg)"),
        ("tires.pressure", "50 psi (345 kPa)"),
        # 60 lb x 21,548 BTU x 0.29307 Wh = 378.9 kWh, stock, down.
        ("lp.energy", "1,290,000 BTU (378 kWh)"),
        ("awnings.wind_limit[patio]", "22 mph (35.4 km/h)"),
        ("battery.capacity", "2,250 Wh"),
    ],
)
def test_the_other_system_stands_beside(name: str, both: str) -> None:
    """Worked by hand beside each row; watts are the same everywhere."""
    assert facts("heron-a")[name].shown_with_other() == both


def test_a_metric_unit_reads_metric_first() -> None:
    """The same trailer on a plate in kilograms, for Germany."""
    spec = changed(
        unit("heron-a"),
        {
            "body.market": "eu",
            "weights.regime": "metric_plate",
            "weights.gvwr": reading("3357 kg", units.MASS, "label"),
            "water.tanks.fresh.volume": reading("174 l", units.VOLUME),
        },
    )
    some = work_out(spec)

    # As read: no figure lost.  3,357 kg are 7,400.9 lb.
    assert some["weights.gvwr"].shown() == "3,357 kg"
    assert some["weights.gvwr"].beside() == "7,400 lb"
    assert some["water.capacity"].shown() == "174 l"
    assert some["tires.pressure"].shown() == "3.45 bar"
    assert some["awnings.wind_force[patio, 20 mph]"].shown() == "560 N"


def test_canada_reads_weights_in_kilograms_and_water_in_gallons() -> None:
    """Kilograms on the label by law; pounds beside them."""
    spec = changed(unit("heron-a"), {"body.market": "ca", "weights.regime": "canada"})
    some = work_out(spec)

    assert some["weights.gvwr"].shown_with_other() == "3,350 kg (7,400 lb)"
    assert some["water.capacity"].shown() == "46 gal"


@pytest.mark.parametrize("market", MARKETS)
@pytest.mark.parametrize("name", NAMES)
def test_both_keep_to_the_safe_side(name: str, market: str) -> None:
    """Rounded in either system, a limit is never above and a load never below."""
    some = work_out(changed(unit(name), {"body.market": market}))
    seen = 0
    for fact in some.values():
        if isinstance(fact.value, str | bool) or not fact.other_unit:
            continue
        seen += 1
        for printed, unit_ in (
            (_printed_number(fact), fact.unit),
            (float(fact.beside().split()[0].replace(",", "")), fact.other_unit),
        ):
            exact = units.number_in(fact.value, unit_)
            slack = abs(exact) * 1e-9
            if fact.rounding == "down":
                assert printed <= exact + slack, fact.name
            if fact.rounding == "up":
                assert printed >= exact - slack, fact.name
    assert seen > 20


@given(
    st.floats(1, 1e5),
    st.sampled_from(["down", "up", "near"]),
    st.integers(1, 6),
    st.sampled_from(["pound", "gallon", "psi", "foot", "Btu", "mile / hour"]),
)
def test_beside_is_the_same_number(
    value: float, how: Rounding, digits: int, unit_: str
) -> None:
    """The other system says the same within the figures that it prints."""
    first, other = in_market(unit_, "us")
    fact = Fact(
        "water.capacity",
        "water.capacity",
        "",
        quantity(value, unit_),
        first,
        digits,
        how,
        "",
        (),
        "",
        other_unit=other,
    )

    exact = units.number_in(fact.value, other)  # type: ignore[arg-type]
    printed = float(fact.beside().split()[0].replace(",", ""))
    assert printed == pytest.approx(exact, rel=0.1)


@pytest.mark.parametrize(
    ("text", "abroad"),
    [
        # By the definition of the scales: (F - 32) / 1.8.
        ("Water at 140 °F", "Water at 60 °C"),
        ("32 °F", "0 °C"),
        ("\u221240 °F", "\u221240 °C"),
        ("from 60 °F to 120 °F", "from 16 °C to 49 °C"),
        ("at 68 psi", "at 68 psi"),
    ],
)
def test_temperatures_are_read_on_the_scale_of_the_market(
    text: str, abroad: str
) -> None:
    """A reader in Europe has no feeling for 140 °F, and burns all the same."""
    assert [temperatures(text, market) for market in ("us", "ca")] == [text, text]
    assert [temperatures(text, market) for market in ("uk", "eu", "au")] == [abroad] * 3


def test_no_fact_abroad_speaks_of_fahrenheit() -> None:
    """Names of facts stay, since blocks call them; what is printed does not."""
    spec = changed(unit("heron-a"), {"body.market": "uk"})
    told = work_out(spec)

    assert "hot_water.scald[140 °F]" in told
    for fact in told.values():
        assert "°F" not in f"{fact.item_words} {fact.shown()} {fact.basis}", fact.name
