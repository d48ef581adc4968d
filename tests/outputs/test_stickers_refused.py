"""What stops a print, and that nothing half-done is left when something does."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from hatchleaf.ledger import Body, Event, Printed, Scrapped
from hatchleaf.ledger_files import read
from hatchleaf.outputs import qr
from hatchleaf.outputs.sticker_print import make
from hatchleaf.outputs.sticker_proof import prove
from hatchleaf.outputs.sticker_release import release
from hatchleaf.outputs.sticker_sheets import PRESETS, module_um
from hatchleaf.outputs.stickers import StickerSet, sheets_of
from hatchleaf.outputs.typesetting import FONTS, Document
from hatchleaf.problems import Place, Problem, ProblemsFound
from outputs.opened_pdf import opened
from outputs.sticker_hosts import host_of
from outputs.sticker_samples import CARD, CODE, HOST, LABELS, sample

WHERE = Place("unit_specs/heron-a.yml", 3, 1)
DAY = date(2027, 4, 16)


def refused(
    wanted: StickerSet, name: str = "a4-3x8", **how: Any
) -> tuple[Problem, ...]:
    """Return the problems with which a print is refused."""
    events = how.pop("events", ())
    with pytest.raises(ProblemsFound) as found:
        make(wanted, PRESETS[name], events, on=DAY, where=WHERE, **how)
    assert all(problem.place == WHERE for problem in found.value.problems)
    return found.value.problems


@pytest.mark.parametrize("name", PRESETS)
def test_a_host_that_is_too_long(name: str) -> None:
    """39 characters: the symbol would need version 6."""
    host = host_of(39)
    assert refused(sample(host=host), name) == (
        Problem(
            WHERE,
            "host",
            f"'{host}' has 39 characters, too many for a sticker",
            "up to 38 characters",
            "a short domain of your own",
        ),
    )


def test_a_host_with_capitals() -> None:
    """An address typed by hand from the sticker would go elsewhere on some hosts."""
    (problem,) = refused(sample(host="Manuals.example"))
    assert problem.field == "host"
    assert "lower case" in problem.allowed


def test_a_sheet_whose_labels_are_too_small_names_those_that_are_not() -> None:
    """Modules below 0.75 mm close up on a common printer."""
    small = replace(PRESETS["a4-3x8"], name="a4-5x13", label=(60_000, 30_700))
    assert module_um(small, 4) is None
    with pytest.raises(ProblemsFound) as found:
        make(sample(), small, (), on=DAY, where=WHERE)
    assert found.value.problems == (
        Problem(
            WHERE,
            "preset",
            f"the code for '{HOST}' would be too fine on a4-5x13",
            "letter-3x7, a4-3x8, letter-2x5",
            "use letter-3x7 or a4-3x8 or letter-2x5",
        ),
    )


@pytest.mark.parametrize(
    "change",
    [
        {"line": "Turn the handle and then go on turning it " * 6},
        {"title": "Electrohydraulicautomaticleveling"},
        {"fact": "unbreakableandfartoolongforalabelofthissize"},
        {"signal_text": "Hot and sharp and live and loud and wet. " * 5},
        {"extra": "And then call. " * 20},
    ],
)
def test_words_that_do_not_fit_name_their_label(change: dict[str, str]) -> None:
    """Text over the edge, or over other text, is never printed."""
    labels = (LABELS[2], replace(LABELS[0], **change), LABELS[3])  # type: ignore[arg-type]
    (problem,) = refused(sample(labels=labels))
    title = change.get("title", "LP gas supply")
    assert problem.what == (
        f"the words of sticker 110 '{title}' do not fit a label of a4-3x8"
    )


def test_words_that_do_not_fit_the_card() -> None:
    """Half a page is all there is behind the door."""
    card = replace(CARD, extinguisher="Beside the door, low. " * 300)
    (problem,) = refused(sample(card=card))
    assert problem.field == "emergency card"
    assert "do not fit" in problem.what


def test_a_name_that_does_not_fit_the_sheet() -> None:
    """The sheet's foot says whose stickers these are."""
    (problem,) = refused(replace(sample(), unit_name="A unit with a long name " * 8))
    assert problem.field == "name"


@pytest.mark.parametrize("character", ["漢", "→", "⅓", "\u0007", "😀"])
def test_a_character_that_the_fonts_do_not_have(character: str) -> None:
    """An empty box on a sticker is worse than no sticker."""
    labels = (LABELS[2], replace(LABELS[0], line=f"Walk away {character} now"))
    (problem,) = refused(sample(labels=labels))
    assert problem.what == (
        "sticker 110 'LP gas supply' has a character that cannot be printed:"
        f" {ascii(character)[1:-1]}"
    )


@pytest.mark.parametrize(
    "text",
    [
        "#panic()",
        "*bold* _it_ `code`",
        "$x^2$",
        "<label> @ref",
        "= Heading",
        "- item",
        "\\ \\u{41}",
        "\"quoted\" 'single'",
        "[x] {y} (z)",
        "// not a comment /* nor this */",
        "https://manuals.example",
        "a ~ b -- c --- d ...",
        "#sys.inputs.data",
        "</svg><b>&amp;",
    ],
)
def test_words_are_never_taken_for_markup(text: str) -> None:
    """A unit's file comes from anyone; what it says is printed as it says it."""
    labels = (replace(LABELS[3], line=text),)
    pdf, _ = make(sample(labels=labels), PRESETS["a4-3x8"], (), on=DAY, where=WHERE)
    words = "".join(opened(pdf)[0].get_text().split())
    assert "".join(text.split()) in words


def test_a_scrapped_unit_gets_no_more_stickers() -> None:
    """Its code is never used again."""
    gone: Body = Scrapped("burned out")
    (problem,) = refused(sample(), events=(Event(CODE, DAY, (), gone),))
    assert "scrapped" in problem.what


def test_all_that_is_wrong_is_said_at_once() -> None:
    """One run, one list."""
    labels = (LABELS[0], LABELS[0])
    problems = refused(sample(labels=labels, host=host_of(50)), skip=24)
    assert {problem.field for problem in problems} == {"host", "skip", "stickers"}


def test_no_sticker_at_all() -> None:
    """Then there is nothing to print, and nothing to record."""
    (problem,) = refused(sample(labels=()))
    assert problem.what == "there is none to print"


def one_printed() -> tuple[bytes, Event]:
    """Return a set of one sticker."""
    return make(sample(labels=LABELS[:1]), PRESETS["a4-3x8"], (), on=DAY, where=WHERE)


def test_a_symbol_that_changed_since_it_was_printed() -> None:
    """Should a library ever draw another one, the old stickers win."""
    _, event = one_printed()
    assert isinstance(event.body, Printed)
    row = replace(event.body.labels[0], matrix="0" * 64)
    other = replace(event, body=replace(event.body, labels=(row,)))
    (problem,) = refused(sample(labels=LABELS[:1]), events=(other,))
    assert "another symbol than was printed" in problem.what


@pytest.mark.parametrize("fault", ["other topic", "other spot", "no code", "two codes"])
def test_a_sheet_that_does_not_read_as_recorded_is_not_released(fault: str) -> None:
    """The last look before the ledger: what the page really carries."""
    _, event = one_printed()
    preset = PRESETS["a4-3x8"]
    symbol = qr.symbol(HOST, CODE, 210 if fault == "other topic" else 110)
    chosen = [(LABELS[0], symbol)]
    data = dict(sheets_of(sample(), chosen, preset, code_side=32_800, skip=0))
    drawn = data["sheets"][0][0]
    if fault == "other spot":
        drawn["at"] = preset.corner(5)
    if fault == "no code":
        drawn["svg"] = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>'
    if fault == "two codes":
        at = [preset.corner(0)[0] + 31_000, preset.corner(0)[1]]
        data["sheets"][0].append(dict(drawn) | {"at": at})
    with pytest.raises(ProblemsFound) as found:
        prove(Document("stickers.typ", data), preset, event, WHERE)
    (problem,) = found.value.problems
    assert problem.what == "the code of sticker 110 does not read as it must"


def test_the_ledger_and_the_sheets_are_both_there(tmp_path: Path) -> None:
    """The usual case."""
    pdf, event = one_printed()
    ledger, to = tmp_path / "printed" / CODE, tmp_path / "heron-a.pdf"
    recorded = release(pdf, event, ledger, to)
    assert to.read_bytes() == pdf
    assert read(ledger, tmp_path) == (event,)
    assert sorted(tmp_path.rglob("*.*")) == sorted([recorded, to])


def test_no_sheets_without_the_ledger(tmp_path: Path) -> None:
    """The record cannot be written: no PDF comes out, nor a part of one."""
    pdf, event = one_printed()
    (tmp_path / "printed").write_text("a file where a folder should be")
    with pytest.raises(OSError, match="printed"):
        release(pdf, event, tmp_path / "printed" / CODE, tmp_path / "heron-a.pdf")
    assert [path.name for path in tmp_path.iterdir()] == ["printed"]


def test_no_ledger_without_the_sheets(tmp_path: Path) -> None:
    """The PDF cannot get its name: the record is taken back."""
    pdf, event = one_printed()
    to = tmp_path / "heron-a.pdf"
    to.mkdir()
    with pytest.raises(OSError, match="irectory"):
        release(pdf, event, tmp_path / "printed" / CODE, to)
    assert [path for path in tmp_path.rglob("*") if path.is_file()] == []


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    """A mistyped path is found before anything is recorded."""
    pdf, event = one_printed()
    with pytest.raises(FileNotFoundError):
        release(pdf, event, tmp_path / "printed" / CODE, tmp_path / "x" / "y.pdf")
    assert list(tmp_path.iterdir()) == []


def test_the_fonts_come_with_their_license_and_are_small() -> None:
    """The SIL Open Font License asks to be kept beside the fonts."""
    files = list(FONTS.iterdir())
    text = (FONTS / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert sum(file.stat().st_size for file in files) < 2_000_000
