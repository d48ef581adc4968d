"""The printed sheets: codes read, measured and compared, words where they belong."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import zxingcpp
from numpy.typing import NDArray
from PIL import Image

from hatchleaf.ledger import Event, Printed, PrintedLabel
from hatchleaf.outputs import qr
from hatchleaf.outputs.sticker_print import make
from hatchleaf.outputs.sticker_sheets import PRESETS, Preset
from hatchleaf.outputs.stickers import Label
from hatchleaf.problems import Place
from outputs.opened_pdf import drawn, opened, rectangle
from outputs.sticker_hosts import host_of
from outputs.sticker_samples import CARD, CODE, HOST, LABELS, sample

WHERE = Place("unit_specs/heron-a.yml")
DAY = date(2027, 4, 16)
NAMES = tuple(PRESETS)
LENGTHS = (10, 15, 24, 25, 38)
DPI = 600
POINTS_PER_UM = 72 / 25_400


@dataclass(frozen=True)
class Sheets:
    """A printed set, opened by another PDF library than made it."""

    preset: Preset
    pdf: bytes
    event: Event
    pages: tuple[Any, ...]

    @property
    def body(self) -> Printed:
        """Return what the event says was printed."""
        assert isinstance(self.event.body, Printed)
        return self.event.body

    def clip(self, row: PrintedLabel) -> Any:
        """Return the label's rectangle on its page, in points."""
        x, y = self.preset.corner(row.spot - 1)
        width, height = self.preset.label
        corners = (x, y, x + width, y + height)
        return rectangle(*(length * POINTS_PER_UM for length in corners))

    def gray(self, row: PrintedLabel, dpi: int = DPI) -> NDArray[np.uint8]:
        """Return the label as MuPDF draws it."""
        x, y = self.preset.corner(row.spot - 1)
        width, height = self.preset.label
        left, top, right, bottom = (
            round(length / 25_400 * dpi) for length in (x, y, x + width, y + height)
        )
        return whole_page(self.pdf, row.sheet - 1, dpi)[top:bottom, left:right]

    def words(self, row: PrintedLabel) -> str:
        """Return the label's text, with single spaces."""
        text: str = self.pages[row.sheet - 1].get_text(clip=self.clip(row))
        return " ".join(text.split())


@lru_cache(maxsize=2)
def whole_page(pdf: bytes, number: int, dpi: int) -> NDArray[np.uint8]:
    """Return a page in gray; one or two are kept, each is large."""
    return drawn(opened(pdf)[number], dpi)


@cache
def sheets(name: str, host: str = HOST) -> Sheets:
    """Return the sample set, optional stickers too, on a kind of sheet."""
    preset = PRESETS[name]
    pdf, event = make(
        sample(host=host), preset, (), on=DAY, where=WHERE, with_optional=True
    )
    return Sheets(preset, pdf, event, tuple(opened(pdf)))


def symbol_edges(gray: NDArray[np.uint8], side: int) -> tuple[int, int, int, int]:
    """Return left, top, right, bottom of the dark modules in the left square."""
    dark = gray[:, :side] < 128
    columns, rows = np.flatnonzero(dark.any(axis=0)), np.flatnonzero(dark.any(axis=1))
    return int(columns[0]), int(rows[0]), int(columns[-1]) + 1, int(rows[-1]) + 1


@pytest.mark.parametrize("length", LENGTHS)
@pytest.mark.parametrize("name", NAMES)
def test_every_label_reads_as_the_ledger_says(name: str, length: int) -> None:
    """Drawn by MuPDF, read by ZXing: the address of the row, and nothing else."""
    printed = sheets(name, host_of(length))
    assert len(printed.body.labels) == len(LABELS)
    for row in printed.body.labels:
        found = zxingcpp.read_barcodes(Image.fromarray(printed.gray(row, 300)))
        assert [code.text for code in found] == [row.payload]
        assert row.payload == f"https://{host_of(length)}/{CODE}/{row.topic:03d}/"


@pytest.mark.parametrize("length", LENGTHS)
@pytest.mark.parametrize("name", NAMES)
def test_modules_and_quiet_zone_are_as_wide_as_they_must_be(
    name: str, length: int
) -> None:
    """
    Measured on the page at 600 dpi.

    ISO/IEC 18004 asks for a quiet zone of 4 modules; a module may be off by 1 %.
    """
    printed = sheets(name, host_of(length))
    version = qr.version_for(host_of(length))
    assert version is not None
    modules = qr.modules_of(version)
    dots = printed.body.module_um / 25_400 * DPI
    assert printed.body.module_um >= 750
    for row in printed.body.labels:
        gray = printed.gray(row)
        left, top, right, bottom = symbol_edges(gray, int((modules + 8) * dots))
        assert (right - left) / modules == pytest.approx(dots, rel=0.01)
        assert (bottom - top) / modules == pytest.approx(dots, rel=0.01)
        quiet = 4 * dots - 1.5  # the edges fall between dots
        assert left >= quiet
        assert top >= quiet
        assert gray.shape[0] - bottom >= quiet
        around = gray[:, : right + int(quiet)].copy()
        # The last dots of the symbol's own edges are gray.
        around[top - 1 : bottom + 1, left - 1 : right + 1] = 255
        assert (around > 250).all(), "something is printed in the quiet zone"


@pytest.mark.parametrize("name", NAMES)
def test_the_matrix_on_the_page_is_the_one_in_the_ledger(name: str) -> None:
    """Each module sampled at its middle gives the digest that was recorded."""
    printed = sheets(name)
    for row in printed.body.labels:
        gray = printed.gray(row)
        modules = qr.modules_of(row.version)
        dots = printed.body.module_um / 25_400 * DPI
        left, top, right, bottom = symbol_edges(gray, int((modules + 8) * dots))
        across = left + (np.arange(modules) + 0.5) * (right - left) / modules
        down = top + (np.arange(modules) + 0.5) * (bottom - top) / modules
        dark = gray[np.ix_(down.astype(int), across.astype(int))] < 128
        rows = tuple("".join("01"[int(cell)] for cell in line) for line in dark)
        seen = qr.Symbol(row.payload, row.version, row.mask, rows)
        assert seen.digest == row.matrix


@pytest.mark.parametrize("name", NAMES)
def test_the_words_of_each_label_are_on_it(name: str) -> None:
    """Everything a label says can be read, and copied as text, at its own place."""
    printed = sheets(name)
    for row, label in zip(printed.body.labels, LABELS, strict=True):
        words = printed.words(row)
        assert row.topic == label.topic
        for text in (
            label.title,
            label.line,
            label.extra,
            label.fact,
            label.signal_text,
        ):
            assert text in words
        assert words.count(label.line) == 1
        assert f"{label.topic:03d}" in words.split()
        guide = f"No signal? Saved or paper guide, topic {label.topic:03d}"
        assert guide in words
        assert "83920 17436 51830" in words
        assert HOST in words
        panels = {word for word in words.split() if word.isupper()} & {
            "DANGER",
            "WARNING",
            "CAUTION",
            "NOTICE",
        }
        assert panels == ({label.signal.upper()} if label.signal else set())


@pytest.mark.parametrize("name", NAMES)
def test_the_gas_locker_says_what_to_do_in_this_order(name: str) -> None:
    """A phone may spark: away from the gas first, then the call."""
    printed = sheets(name)
    words = printed.words(printed.body.labels[0])
    order = [
        "WARNING",
        "Smell gas?",
        "Do not use the phone here",
        "Walk away",
        "Then call",
    ]
    places = [words.index(part) for part in order]
    assert places == sorted(places)


@pytest.mark.parametrize("name", NAMES)
def test_sizes_of_type(name: str) -> None:
    """The topic's number has 15 pt or more, and no word less than 5 pt."""
    printed = sheets(name)
    for row in printed.body.labels:
        page = printed.pages[row.sheet - 1]
        spans = [
            span
            for block in page.get_text("dict", clip=printed.clip(row))["blocks"]
            for line in block.get("lines", ())
            for span in line["spans"]
            if span["text"].strip()
        ]
        number = [s["size"] for s in spans if s["text"].strip() == f"{row.topic:03d}"]
        assert max(number) >= 15
        assert min(span["size"] for span in spans) >= 5


# Colors of the panels by what they must be (ANSI Z535.1 names them: red, orange,
# yellow, blue); the hue ranges in degrees are a wide reading of those names.
@pytest.mark.parametrize(
    ("signal", "hues"),
    [
        ("danger", (340, 360)),
        ("warning", (20, 40)),
        ("caution", (45, 60)),
        ("notice", (205, 230)),
    ],
)
def test_signal_panels_have_their_colors(signal: str, hues: tuple[int, int]) -> None:
    """The color says how bad it is before the word is read."""
    labels = (replace(LABELS[7], signal=signal),)  # type: ignore[arg-type]
    pdf, _ = make(sample(labels=labels), PRESETS["letter-3x7"], (), on=DAY, where=WHERE)
    image = opened(pdf)[0].get_pixmap(dpi=150)
    hsv = Image.open(io.BytesIO(image.tobytes("png"))).convert("HSV")
    pixels = np.asarray(hsv).reshape(-1, 3)
    vivid = pixels[(pixels[:, 1] > 180) & (pixels[:, 2] > 120)]
    assert len(vivid) > 2_000
    hue = float(np.median(vivid[:, 0])) * 360 / 255
    assert hues[0] <= hue <= hues[1]


@pytest.mark.parametrize("name", NAMES)
def test_every_sheet_has_its_rule_and_says_how_to_print(name: str) -> None:
    """Printed "to fit" the modules shrink; the rule shows it."""
    printed = sheets(name)
    last = max(row.sheet for row in printed.body.labels)
    for page in printed.pages[:last]:
        words = " ".join(page.get_text().split())
        assert "Print at 100 %, not “fit to page”." in words
        lines = [
            abs(item[2].x - item[1].x)
            for drawing in page.get_drawings()
            for item in drawing["items"]
            if item[0] == "l" and item[1].y == item[2].y > page.rect.height - 36
        ]
        rules = [length for length in lines if abs(length - 50 / 25.4 * 72) < 0.05]
        assert len(rules) == 1


@pytest.mark.parametrize("name", NAMES)
def test_all_is_on_the_paper(name: str) -> None:
    """Nothing within 4.2 mm of the edge, where many printers cannot print."""
    printed = sheets(name)
    for page in printed.pages:
        width, height = page.rect.width, page.rect.height
        assert (round(width / POINTS_PER_UM), round(height / POINTS_PER_UM)) == (
            pytest.approx(printed.preset.paper, abs=10)
        )
        edge = 4.2 / 25.4 * 72
        for block in page.get_text("blocks"):
            assert edge <= block[0] < block[2] <= width - edge
            assert edge <= block[1] < block[3] <= height - edge


@pytest.mark.parametrize("name", NAMES)
def test_labels_do_not_touch_each_other(name: str) -> None:
    """Columns, rows, gaps and margins add up to the paper."""
    preset = PRESETS[name]
    width, height = preset.label
    corners = [preset.corner(spot) for spot in range(preset.labels)]
    assert len(set(corners)) == preset.columns * preset.rows
    assert min(x for x, _ in corners) >= 3_900
    assert preset.paper[0] - max(x for x, _ in corners) - width >= 3_900
    assert preset.paper[1] - max(y for _, y in corners) - height >= 12_000
    for a in corners:
        for b in corners:
            apart = abs(a[0] - b[0]) >= width or abs(a[1] - b[1]) >= height
            assert a == b or apart


@pytest.mark.parametrize("name", NAMES)
def test_the_emergency_card_says_all_of_it(name: str) -> None:
    """The card is the last page's upper half, with everything the unit has."""
    page = sheets(name).pages[-1]
    half = rectangle(0, 0, page.rect.width, page.rect.height / 2)
    words = " ".join(page.get_text(clip=half).split())
    expected = [CARD.emergency_number, "Give your site number", CARD.extinguisher]
    expected += [part for off in CARD.shut_offs for part in (off.name, off.place)]
    expected += [f"{off.topic:03d}" for off in CARD.shut_offs]
    expected += list(CARD.exits)
    expected += [alarm.name for alarm in CARD.alarms]
    expected += [CARD.dealer_name, CARD.dealer_phone, CARD.title]
    for text in expected:
        assert text in words
    assert words.count("see its label") == 1  # the one sound that is not known
    assert "3 beeps, pause, 3 beeps" in words
    assert "road side" in words  # the plan's own words


def test_the_plan_on_the_card_is_a_drawing_in_lines() -> None:
    """A drawing styled by a page's sheet alone would come out as black areas."""
    printed = sheets("letter-3x7")
    page = printed.pages[-1]
    left_half = rectangle(0, 0, page.rect.width / 2, page.rect.height / 2)
    ((_, _, _, bottom, *_),) = (
        word for word in page.get_text("words", clip=left_half) if word[4] == "road"
    )
    scale = 150 / 72
    top, middle = int(bottom * scale), int(page.rect.width / 2 * scale)
    plan = drawn(page, 150)[top : top + int(70 * scale), :middle]
    assert 0.005 < (plan < 128).mean() < 0.15


def test_the_card_keeps_silent_on_what_is_not_fitted() -> None:
    """No heading without something below it."""
    bare = replace(CARD, alarms=(), extinguisher="", exits=(), plan_svg="")
    pdf, _ = make(sample(card=bare), PRESETS["letter-3x7"], (), on=DAY, where=WHERE)
    words = opened(pdf)[-1].get_text().upper()
    assert "SHUT OFF" in words
    for heading in ("ALARMS", "FIRE EXTINGUISHER\n", "WAYS OUT\n", "END OF LIFE"):
        assert heading not in words


def test_the_page_of_the_card_lists_where_each_sticker_goes() -> None:
    """Whoever sticks them on walks round with this list."""
    printed = sheets("letter-3x7")
    page = printed.pages[-1]
    lower = rectangle(0, page.rect.height / 2, page.rect.width, page.rect.height)
    words = " ".join(page.get_text(clip=lower).split())
    for label in LABELS:
        assert (
            f"{label.topic:03d} {label.title} {label.place}, {label.side_height}"
            in words
        )


def test_only_our_own_fonts_are_used_and_they_are_in_the_file() -> None:
    """The print shop has none of them."""
    printed = sheets("letter-3x7")
    for page in printed.pages:
        for _, extension, _, name, *_ in page.get_fonts():
            assert "Barlow" in name
            assert extension in {"ttf", "otf", "cff"}


def test_the_pdf_says_that_it_is_accessible() -> None:
    """PDF/UA-1 (ISO 14289-1) names itself in the metadata; every code has a text."""
    printed = sheets("letter-3x7")
    document = opened(printed.pdf)
    assert "pdfuaid" in document.get_xml_metadata()
    assert document.metadata["title"] == "Stickers and emergency card: Marlpit 24"
    assert not document.metadata["creationDate"]


def test_the_same_set_gives_the_same_bytes(tmp_path: Path) -> None:
    """In another process, with another clock zone and hash seed."""
    printed = sheets("letter-3x7")
    script = (
        "import sys; from datetime import date\n"
        "from hatchleaf.outputs.sticker_print import make\n"
        "from hatchleaf.outputs.sticker_sheets import PRESETS\n"
        "from hatchleaf.problems import Place\n"
        "from outputs.sticker_samples import sample\n"
        "pdf, event = make(sample(), PRESETS['letter-3x7'], (), with_optional=True,\n"
        "    on=date(2027, 4, 16), where=Place('unit_specs/heron-a.yml'))\n"
        "open(sys.argv[1], 'wb').write(pdf + event.content)\n"
    )
    tests = Path(__file__).parent.parent
    environment = os.environ | {
        "PYTHONPATH": str(tests),
        "PYTHONHASHSEED": "7",
        "TZ": "Asia/Tokyo",
    }
    to = tmp_path / "again"
    subprocess.run([sys.executable, "-c", script, to], check=True, env=environment)
    assert to.read_bytes() == printed.pdf + printed.event.content


def print_again(events: Sequence[Event], labels: tuple[Label, ...] = LABELS) -> Printed:
    """Return what a print after others says it printed."""
    _, event = make(
        sample(labels=labels), PRESETS["letter-2x5"], events, on=DAY, where=WHERE
    )
    assert isinstance(event.body, Printed)
    assert event.after == tuple(sorted(e.digest for e in events))
    return event.body


def test_a_print_follows_its_ledger() -> None:
    """Printed again, on other sheets, each sticker has the symbol it had."""
    first = sheets("letter-3x7")
    again = print_again([first.event])
    before = {row.payload: row.matrix for row in first.body.labels}
    assert {row.payload: row.matrix for row in again.labels}.items() <= before.items()


def test_a_mask_chosen_long_ago_is_printed_again() -> None:
    """Not the mask that today's library would choose."""
    first = sheets("letter-3x7")
    row = first.body.labels[0]
    other = (row.mask + 3) % 8
    symbol = qr.symbol(HOST, CODE, row.topic, mask=other)
    old = replace(row, mask=other, matrix=symbol.digest)
    event = replace(first.event, body=replace(first.body, labels=(old,)))
    again = print_again([event], LABELS[:1])
    assert (again.labels[0].mask, again.labels[0].matrix) == (other, symbol.digest)


def test_optional_stickers_are_left_out_unless_asked_for() -> None:
    """The default is a dozen or so: more are not read."""
    few = print_again([])
    assert {row.topic for row in few.labels} == {
        label.topic for label in LABELS if not label.optional
    }
    assert 12 <= len(few.labels) <= 15


def test_a_used_sheet_can_be_printed_on() -> None:
    """Skipped spots stay empty, and the ledger knows where each sticker was."""
    preset = PRESETS["letter-2x5"]
    pdf, event = make(
        sample(labels=LABELS[:3]), preset, (), on=DAY, where=WHERE, skip=8
    )
    assert isinstance(event.body, Printed)
    assert [(r.sheet, r.spot) for r in event.body.labels] == [(1, 9), (1, 10), (2, 1)]
    printed = Sheets(preset, pdf, event, tuple(opened(pdf)))
    empty = replace(event.body.labels[0], spot=1)
    assert printed.words(empty) == ""
    assert (printed.gray(empty, 100) == 255).all()
    for row in event.body.labels:
        assert f"{row.topic:03d}" in printed.words(row)


def test_two_places_of_a_topic_get_the_same_code() -> None:
    """Two awnings, one page: each sticker leads there."""
    twice = (LABELS[11], replace(LABELS[11], place_id="road", place="Road side"))
    rows = print_again([], twice).labels
    assert rows[0].matrix == rows[1].matrix
    assert [row.place for row in rows] == ["curb", "road"]
    assert rows[0].text != rows[1].text
