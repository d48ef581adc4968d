"""
The private copy: what the owners need and what may not stand behind a sticker.

The guide is as public as the sticker that leads to it.  VIN, numbers of serials and
keys, readings and promises are handed over in this, on paper or as one file.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from hatchleaf.facts.findings.acknowledged import Judged
from hatchleaf.facts.market_words import in_words_of
from hatchleaf.facts.model import Facts
from hatchleaf.facts.warranties import warranty_ends
from hatchleaf.manual.model import UnitCard, day_in_words
from hatchleaf.outputs.registrations import not_known, registrations
from hatchleaf.spec.checked import items
from hatchleaf.spec.model.gas import Bottles, Cylinders
from hatchleaf.spec.model.readings import Reading
from hatchleaf.spec.model.unit import UnitSpec
from hatchleaf.units import in_file_units

BLANK: Final = ""
"""A cell to write into by hand."""

_TESTS: Final = {
    "gas_leak": "Gas, leak test",
    "brakes": "Brakes",
    "breakaway": "Breakaway",
    "alarms": "Alarms",
    "ground_fault": "Ground-fault protection",
    "lights": "Lights",
    "other": "Other test",
}
_ORIGINS: Final = {
    "plate": "its plate",
    "label": "its label",
    "scale": "a scale",
    "paper": "a paper",
    "brochure": "a brochure",
}
_RECALLS: Final = {
    "yes": "A recall was open.",
    "no": "No recall was open.",
    "unknown": "It could not be told.",
}
_BY_HAND: Final = (
    "Registration plate",
    "Insurance: company, number, telephone",
    "Roadside help: number, telephone",
    "Where the spare keys are",
)


@dataclass(frozen=True)
class Section:
    """One part of the private copy: words, then a table."""

    id: str
    title: str
    lead: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    """A cell that is `BLANK` is for writing in."""


@dataclass(frozen=True)
class PrivateCopy:
    """All that the private copy says, in order."""

    title: str
    unit: str
    dealer_name: str
    dealer_phone: str
    market: str
    lead: tuple[str, ...]
    sections: tuple[Section, ...]


def private_copy(
    spec: UnitSpec, facts: Facts, judged: Judged, card: UnitCard, address: str
) -> PrivateCopy:
    """
    Return what the private copy of a unit says.

    Args:
        spec: The unit.
        facts: Its facts, for what is due when.
        judged: Its findings as of the hand-over, with who answers for them.
        card: Who the guide is from, and its edition.
        address: Where the guide stands: ``https://HOST/<code>/``.
    """
    return PrivateCopy(
        title="Private copy",
        unit=f"{card.year} {card.maker} {card.name}",
        dealer_name=card.dealer_name,
        dealer_phone=card.dealer_phone,
        market=card.market,
        lead=(
            "Keep this at home. Do not leave it in the unit, and do not publish it.",
            "Whoever has it knows your VIN and the numbers of your keys.",
            "The makers' papers and the labels come first.",
        ),
        sections=(
            _identity(spec, card, address),
            _serials(spec),
            _keys(spec),
            _warranties(spec),
            _cards(spec),
            _dates(spec, facts),
            _recall(spec),
            _tests(spec),
            _weights(spec),
            _answered(judged),
            Section(
                "by-hand",
                "To fill in",
                "",
                ("What", "Yours"),
                tuple((what, BLANK) for what in _BY_HAND),
            ),
        ),
    )


def _identity(spec: UnitSpec, card: UnitCard, address: str) -> Section:
    rows = [
        ("VIN", "none: this unit has none" if spec.vin == "none" else spec.vin),
        ("Stock number at the dealership", spec.stock),
        ("Sold as", f"{spec.condition} unit"),
        ("Handed over", day_in_words(spec.delivery.date)),
        ("Guide", address),
        ("Code of the guide", card.shown_code),
        ("Edition of the guide", card.edition),
    ]
    if isinstance(spec.found_on, dt.date):
        rows.insert(4, ("Looked over", day_in_words(spec.found_on)))
    return Section("unit", "The unit", "", ("What", "Yours"), tuple(rows))


def _listed(value: object, nothing: str) -> str:
    """Return what to say in place of a table that has no rows."""
    if value == "unknown":
        return "Nobody could tell."
    return nothing if value == "none" else ""


def _serials(spec: UnitSpec) -> Section:
    return Section(
        "serials",
        "Serial numbers",
        _listed(spec.serials, "None was written down."),
        ("Part", "Number"),
        tuple((_words(one.id), one.number) for one in items(spec.serials)),
    )


def _keys(spec: UnitSpec) -> Section:
    return Section(
        "keys",
        "Keys",
        _listed(spec.keys, "None was written down."),
        ("Key of", "Number"),
        tuple((_words(one.id), one.number) for one in items(spec.keys)),
    )


def _warranties(spec: UnitSpec) -> Section:
    stated = _listed(spec.warranties, "None was written down: ask for the papers.")
    lead = (
        "Counted from the day of the hand-over. The maker's paper is what counts: "
        "it tells what is left out, and what you must do to keep it."
    )
    return Section(
        "warranties",
        "Warranties",
        stated or lead,
        ("What", "Lasts", "Up on"),
        tuple(
            (one.what, _months(one.lasts), day_in_words(ends))
            for one, ends in warranty_ends(spec)
        ),
    )


def _months(count: int) -> str:
    return "1 month" if count == 1 else f"{count} months"


def _cards(spec: UnitSpec) -> Section:
    lead = (
        "Look for each maker's card or web page among the papers, and send it soon: "
        "it is how a maker finds you for a recall."
    )
    if spec.condition == "used":
        lead += " You are not the first owner: ask each maker to change the name."
    if unlooked := not_known(spec):
        lead += f" Nobody could tell about these: {', '.join(unlooked).lower()}."
    return Section(
        "cards",
        "Cards to send to makers",
        lead,
        ("Part", "Number", "Sent on"),
        tuple(
            (in_words_of(spec.body.market, one.what), one.number, BLANK)
            for one in registrations(spec)
        ),
    )


def _dates(spec: UnitSpec, facts: Facts) -> Section:
    def due(name: str, unknown: str, words: str = "{}") -> str:
        return words.format(facts[name].value) if name in facts else unknown

    def rows() -> Iterator[tuple[str, str, str]]:
        supply = spec.lp.supply
        if isinstance(supply, Cylinders):
            for one in supply.cylinders:
                fact = f"lp.requalify[{one.id}]"
                end = due(fact, "read its collar", "first test by {}")
                yield f"Gas cylinder ({_plain(one.id)})", _month(one.made), end
        if isinstance(supply, Bottles):
            for one in supply.bottles:
                yield (
                    f"Gas bottle ({_plain(one.id)})",
                    _month(one.made),
                    "read its mark",
                )
        for alarm in items(spec.safety.alarms):
            end = due(f"dates.alarm[{alarm.id}]", "read its label", "replace by {}")
            yield f"Alarm ({_plain(alarm.id)})", _month(alarm.made), end
        extinguisher = spec.safety.extinguisher
        if not isinstance(extinguisher, str):
            end = due("dates.extinguisher", "read its label", "out of use by {}")
            yield "Extinguisher", _month(extinguisher.made), end
        tires = spec.gear.tires
        for tire in items(tires if isinstance(tires, str) else tires.fitted):
            fact = f"dates.tire[{tire.id}]"
            end = due(fact, "read its side wall", "replace by {} (typical)")
            named = in_words_of(spec.body.market, f"Tire ({_plain(tire.id)})")
            yield named, _week(tire.made), end

    return Section(
        "dates",
        "Made when, due when",
        "The date on the part itself counts.",
        ("Part", "Made", "Due"),
        tuple(rows()),
    )


def _month(value: dt.date | str) -> str:
    return "not known" if isinstance(value, str) else f"{value:%B} {value.year}"


def _week(value: str) -> str:
    """Return a tire's week and year, ``WWYY``, as words; years from 2000 on."""
    return value if value == "unknown" else f"week {int(value[:2])} of 20{value[2:]}"


def _recall(spec: UnitSpec) -> Section:
    lead = (
        "Look it up again with the VIN once a year: page 085 of the guide tells where."
    )
    if isinstance(spec.recall, str):
        said = _listed(spec.recall, "Nobody has looked yet.")
        return Section("recall", "Recalls", f"{said} {lead}", (), ())
    row = (
        day_in_words(spec.recall.looked_up),
        _plain(spec.recall.by),
        _RECALLS[spec.recall.open],
    )
    return Section(
        "recall", "Recalls", lead, ("Looked up on", "By the", "Found"), (row,)
    )


def _tests(spec: UnitSpec) -> Section:
    return Section(
        "tests",
        "Tests at the hand-over",
        _listed(spec.readings, "None was written down."),
        ("Test", "Result", "Found"),
        tuple(
            (in_words_of(spec.body.market, _TESTS[one.kind]), one.result, one.found)
            for one in items(spec.readings)
        ),
    )


def _weights(spec: UnitSpec) -> Section:
    weights = spec.weights
    rating = " (GVWR)" if spec.body.market in ("us", "ca") else ""
    rows = [
        _weight(f"Most that the unit may weigh{rating}", weights.gvwr),
        _weight("Cargo, by the label", weights.cargo_label),
        _weight("On the hitch", weights.hitch),
        _weight("On the scale, all of it", weights.scale_total),
    ]
    rows += [_weight(f"Added: {one.what}", one.weight) for one in items(spec.added)]
    return Section(
        "weights",
        "Weights of this unit",
        "",
        ("What", "Weight", "Read from"),
        tuple(rows),
    )


def _weight(what: str, reading: Reading) -> tuple[str, str, str]:
    if reading.quantity is None:
        return what, "not known", BLANK
    read = _ORIGINS.get(reading.origin or "", "not said")
    if reading.on:
        read = f"{read}, {day_in_words(reading.on)}"
    return what, in_file_units(reading.quantity), read


def _answered(judged: Judged) -> Section:
    rows = tuple(
        (one.what, f"{_plain(answer.role)}: {answer.reason}")
        for one in judged.findings
        if (answer := judged.answered.get(one.id))
    )
    return Section(
        "answered",
        "Found, and who answers for it",
        "" if rows else "Nobody had to answer for anything that was found.",
        ("Found", "Who says why it may be so"),
        rows,
    )


def _plain(word: str) -> str:
    return word.replace("-", " ").replace("_", " ")


def _words(item: str) -> str:
    return _plain(item).capitalize()
