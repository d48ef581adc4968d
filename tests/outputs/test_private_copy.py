"""The private copy: all that is private, nothing made up, the same bytes each time."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping
from html.parser import HTMLParser
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta

from hatchleaf.facts.findings.acknowledged import judge
from hatchleaf.facts.findings.find import findings
from hatchleaf.facts.work_out import work_out
from hatchleaf.manual.model import UnitCard
from hatchleaf.outputs.private_copy import BLANK, PrivateCopy, private_copy
from hatchleaf.outputs.private_files import as_page, as_paper
from hatchleaf.outputs.registrations import CARDED, registrations
from hatchleaf.outputs.typesetting import NoGlyph
from hatchleaf.spec.load import LoadedUnit
from hatchleaf.spec.model.unit import Acknowledgement, Serial, UnitSpec, Warranty
from hatchleaf.spec.paths import fields
from outputs.opened_pdf import opened

SAMPLES = ("heron-a", "heron-b", "heron-c", "heron-d", "heron-e", "heron-f")
HOSTILE = '<script>alert(1)</script>"\'&#x3c; #panic("x") $x$ *b* @a \\ ' + "W" * 120
NO_TAG = {"meta", "link", "br"}


def _copy(spec: UnitSpec) -> PrivateCopy:
    facts = work_out(spec)
    judged = judge(spec, findings(spec, facts, spec.delivery.date))
    body = spec.body
    card = UnitCard(
        code=spec.code,
        name=body.name,
        maker=body.maker,
        year=str(body.year),
        dealer_name="Two Herons",
        dealer_phone="555-0142",
        title="Guide to this unit by Two Herons",
        edition="00000000 of 2027-01-01",
        delivered=spec.delivery.date,
        emergency_number="911",
        market=body.market,
        condition=spec.condition,
        found_on="",
    )
    address = f"https://manuals.example/{spec.code}/"
    return private_copy(spec, facts, judged, card, address)


def _changed(unit: LoadedUnit, **changes: Any) -> UnitSpec:
    return unit.spec.model_copy(update=changes)


def _rows(copy: PrivateCopy, section: str) -> dict[str, tuple[str, ...]]:
    (found,) = (one for one in copy.sections if one.id == section)
    return {row[0]: row[1:] for row in found.rows}


def _lead(copy: PrivateCopy, section: str) -> str:
    (found,) = (one for one in copy.sections if one.id == section)
    return found.lead


class _Page(HTMLParser):
    """What a browser would build: elements, attributes, and text outside of style."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.words.append(data)

    @property
    def text(self) -> str:
        return re.sub(r"\s+", " ", " ".join(self.words))


def _paper_text(pdf: bytes) -> str:
    # Lines are broken anywhere in a long number: compare without any space.
    joined = "".join(page.get_text() for page in opened(pdf))
    return re.sub(r"[\s\u200b\xad]+", "", joined)


@pytest.mark.parametrize("name", SAMPLES)
def test_all_that_is_private_stands_in_it(
    name: str, samples: Mapping[str, LoadedUnit]
) -> None:
    """Each number, reading and promise of the file, on the page and on paper alike."""
    spec = samples[name].spec
    copy = _copy(spec)
    page, paper = _Page(as_page(copy)).text, _paper_text(as_paper(copy))
    texts = [spec.vin, spec.stock]
    for several, field in (
        (spec.serials, "number"),
        (spec.keys, "number"),
        (spec.readings, "found"),
        (spec.warranties, "what"),
        (spec.acknowledged, "reason"),
    ):
        if isinstance(several, tuple):
            texts += [getattr(one, field) for one in several]
    for text in texts:
        assert text in page
        assert re.sub(r"\s+", "", text) in paper


def test_warranties_end_as_the_calendar_says(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """Held against dateutil: whole months from the hand-over, to a month's last day."""
    unit = samples["heron-a"]
    for day, months in ((dt.date(2027, 4, 16), 12), (dt.date(2027, 8, 31), 18)):
        spec = _changed(
            unit,
            delivery=unit.spec.delivery.model_copy(update={"date": day}),
            warranties=(Warranty.model_construct(id="all", what="x", lasts=months),),
        )
        ends = day + relativedelta(months=months)
        assert _rows(_copy(spec), "warranties")["x"] == (
            f"{months} months",
            f"{ends.day} {ends:%B} {ends.year}",
        )


def test_cards_are_of_what_is_fitted(samples: Mapping[str, LoadedUnit]) -> None:
    """Each fitted part once, with the serial number that is named after it."""
    unit = samples["heron-a"]
    serials = (
        Serial.model_construct(id="furnace", number="F-1"),
        Serial.model_construct(id="alarm-smoke", number="S-2"),
        Serial.model_construct(id="roof-box", number="R-3"),
    )
    rows = {
        one.what: one.number for one in registrations(_changed(unit, serials=serials))
    }
    assert rows["The unit itself"] == unit.spec.vin
    assert rows["Furnace"] == "F-1"
    assert rows["Alarm (smoke)"] == "S-2"
    assert rows["Roof box"] == "R-3", "a serial of something else has a line too"
    assert rows["Awning"] == BLANK
    assert not {"Generator", "Inverter", "Slide-out", "Base vehicle"} & set(rows)
    assert "Furnace" not in {one.what for one in registrations(samples["heron-c"].spec)}


def test_parts_with_cards_are_fields_of_a_unit() -> None:
    """A misspelt path would leave a maker out without a word."""
    assert {path for path, _, _ in CARDED} <= set(fields())
    ids = [base for _, _, base in CARDED]
    assert len(set(ids)) == len(ids)


def test_a_used_unit_tells_what_nobody_knows(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """Unknown is said, none is said, and nothing stands in their place."""
    unit = samples["heron-c"]
    kitchen = unit.spec.kitchen.model_copy(update={"fridge": "unknown"})
    spec = _changed(
        unit,
        vin="none",
        serials="unknown",
        keys="none",
        readings="unknown",
        recall="none",
        warranties="unknown",
        kitchen=kitchen,
    )
    copy = _copy(spec)
    assert _rows(copy, "unit")["VIN"] == ("none: this unit has none",)
    assert "Looked over" in _rows(copy, "unit")
    assert _lead(copy, "serials") == "Nobody could tell."
    assert _lead(copy, "keys") == "None was written down."
    assert _lead(copy, "recall").startswith("Nobody has looked yet.")
    assert _lead(copy, "warranties") == "Nobody could tell."
    assert "not the first owner" in _lead(copy, "cards")
    assert "Nobody could tell about these: fridge." in _lead(copy, "cards")
    assert _rows(copy, "cards")["The unit itself"] == (BLANK, BLANK)
    tire = _rows(copy, "dates")["Tire (spare)"]
    assert tire == ("unknown", "read its side wall")
    assert _rows(copy, "weights")["Cargo, by the label"] == ("not known", BLANK)
    assert as_paper(copy).startswith(b"%PDF")


def test_findings_that_somebody_answers_for(
    samples: Mapping[str, LoadedUnit],
) -> None:
    """By role and reason; one that nobody found is not in it."""
    copy = _copy(samples["heron-a"].spec)
    (answers,) = _rows(copy, "answered").values()
    assert answers[0].startswith("service manager: a corrected cargo label")
    idle = Acknowledgement.model_construct(
        id="added-label-two", role="sales_manager", reason="never found"
    )
    spec = _changed(samples["heron-b"], acknowledged=(idle,))
    assert _rows(_copy(spec), "answered") == {}


def test_hostile_text_is_only_text(samples: Mapping[str, LoadedUnit]) -> None:
    """Markup in a unit's file is printed as it is, and does nothing anywhere."""
    unit = samples["heron-a"]
    clean = _Page(as_page(_copy(unit.spec)))
    assert isinstance(unit.spec.serials, tuple)
    assert isinstance(unit.spec.readings, tuple)
    spec = _changed(
        unit,
        stock=HOSTILE,
        serials=tuple(
            one.model_copy(update={"number": HOSTILE}) for one in unit.spec.serials
        ),
        readings=tuple(
            one.model_copy(update={"found": HOSTILE}) for one in unit.spec.readings
        ),
    )
    copy = _copy(spec)
    page = _Page(as_page(copy))
    assert [tag for tag, _ in page.elements] == [tag for tag, _ in clean.elements]
    assert re.sub(r"\s+", " ", HOSTILE) in page.text
    assert re.sub(r"\s+", "", HOSTILE) in _paper_text(as_paper(copy))
    for sheet in opened(as_paper(copy)):
        for x0, _, x1, *_ in sheet.get_text("words"):
            assert 0 <= x0 < x1 <= sheet.rect.width, "a long number leaves the paper"


def test_the_page_fetches_and_runs_nothing(samples: Mapping[str, LoadedUnit]) -> None:
    """One file that opens from anywhere: no script, no request, no form."""
    page = as_page(_copy(samples["heron-a"].spec))
    elements = _Page(page).elements
    tags = {tag for tag, _ in elements}
    assert not tags & {"script", "img", "iframe", "form", "object", "base", "a"}
    attributes = {name for _, found in elements for name in found}
    assert not {name for name in attributes if name.startswith("on")} | (
        attributes & {"src", "style", "action"}
    )
    assert [found["href"] for tag, found in elements if tag == "link"] == ["data:,"]
    (policy,) = (
        str(found["content"])
        for _, found in elements
        if found.get("http-equiv") == "Content-Security-Policy"
    )
    assert policy.startswith("default-src 'none'; style-src 'sha256-")
    assert "noindex" in page


def test_same_bytes_every_time(samples: Mapping[str, LoadedUnit]) -> None:
    """No clock and no chance: a second print is the first one."""
    one, other = (_copy(samples["heron-b"].spec) for _ in range(2))
    assert as_page(one) == as_page(other)
    assert as_paper(one) == as_paper(other)
    assert b"CreationDate" not in as_paper(one), "two prints may fall in one second"


def test_a_letter_that_our_fonts_lack(samples: Mapping[str, LoadedUnit]) -> None:
    """The page shows it; the PDF says so, and prints no box in its place."""
    copy = _copy(_changed(samples["heron-a"], stock="庫-1"))
    assert "庫-1" in as_page(copy)
    with pytest.raises(NoGlyph):
        as_paper(copy)
