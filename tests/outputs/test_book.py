"""
The guide on paper, read back by PyMuPDF and pypdf, which share nothing with its maker.

One unit on A4 and one on Letter; each is set once for all tests of a run.
"""

from __future__ import annotations

import io
import logging
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Any

import pypdf
import pytest
import zxingcpp
from PIL import Image

from hatchleaf.cli.edge import gathered, open_workspace
from hatchleaf.ledger import fold
from hatchleaf.manual.make import Made
from hatchleaf.outputs import qr
from hatchleaf.outputs.book import book, paper_of
from hatchleaf.outputs.book_index import index_of
from hatchleaf.outputs.book_paper import as_pdf
from hatchleaf.outputs.palette import OUR_BRAND, stylesheet
from hatchleaf.outputs.sticker_labels import sticker_set
from hatchleaf.outputs.stickers import StickerSet
from outputs.opened_pdf import opened, rectangle
from outputs.printing import need_print

ROOT = Path(__file__).parents[2]
HOST = "manuals.example"

# ISO 216 has A4, ANSI/ASME Y14.1 has Letter (its size A); in points of 1/72 in.
SIZES = {"a4": (210 / 25.4 * 72, 297 / 25.4 * 72), "letter": (8.5 * 72, 11 * 72)}
MARKETS = {"heron-f": "a4", "heron-c": "letter"}
INDEX = "Index in owners\u2019 words"
EDGE = 3 / 25.4 * 72
"""What common printers leave blank is below 5 mm; nothing but the cover goes there."""


@dataclass(frozen=True)
class Printed:
    """A unit's guide on paper."""

    made: Made
    stickers: StickerSet
    html: str
    pdf: bytes
    paper: str
    said: tuple[str, ...]
    """What the setter complained of."""

    @cached_property
    def document(self) -> Any:
        """The PDF as MuPDF reads it."""
        return opened(self.pdf)

    def part(self, name: str) -> range:
        """Return the pages, from 0, that a top bookmark has until the next one."""
        tops = [(title, at - 1) for level, title, at in self.toc if level == 1]
        names = [title for title, _ in tops]
        ends = [at for _, at in tops[1:]] + [len(self.document)]
        at = names.index(name)
        return range(tops[at][1], ends[at])

    @cached_property
    def toc(self) -> list[tuple[int, str, int]]:
        """The bookmarks: level, words, page from 1."""
        return [tuple(row) for row in self.document.get_toc()]

    @cached_property
    def topics(self) -> dict[int, int]:
        """The page, from 1, on which each topic begins, by the bookmarks."""
        return {int(t[:3]): page for level, t, page in self.toc if level == 2}


class _Kept(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep what was said."""
        self.said.append(record.getMessage())


_PRINTED: dict[str, Printed] = {}


def _printed(unit: str) -> Printed:
    if unit not in _PRINTED:
        need_print()
        (found,) = gathered(open_workspace(ROOT), [unit])
        made = found.made
        wanted = sticker_set(made.manual, made.pages, HOST)
        paper = paper_of(made.pages.unit.market)
        html = book(made.manual, made.pages, wanted, fold(()), paper=paper)
        kept, logger = _Kept(), logging.getLogger("weasyprint")
        logger.addHandler(kept)
        pdf = as_pdf(html, paper)
        logger.removeHandler(kept)
        said = tuple(kept.said)
        _PRINTED[unit] = Printed(made, wanted, html, pdf, paper, said)
    return _PRINTED[unit]


@pytest.fixture(params=sorted(MARKETS))
def printed(request: pytest.FixtureRequest) -> Printed:
    """Return the guide of a unit of each paper."""
    return _printed(str(request.param))


def _linked(page: Any) -> Iterator[tuple[str, int]]:
    """Yield each inner link's text and the page, from 1, that it leads to."""
    words = page.get_text("words")
    for link in page.get_links():
        if "page" in link and link["page"] >= 0:
            box = link["from"]
            inside = (
                text
                for left, top, right, bottom, text, *_ in words
                if box.x0 <= (left + right) / 2 <= box.x1
                and box.y0 <= (top + bottom) / 2 <= box.y1
            )
            yield " ".join(inside), link["page"] + 1


def test_size(printed: Printed) -> None:
    """Every sheet has the size of the market's paper."""
    assert printed.paper == MARKETS[_name(printed)]
    for page in printed.document:
        assert page.rect.width == pytest.approx(SIZES[printed.paper][0], abs=0.5)
        assert page.rect.height == pytest.approx(SIZES[printed.paper][1], abs=0.5)


def _name(printed: Printed) -> str:
    return next(name for name, each in _PRINTED.items() if each is printed)


def test_nothing_to_complain_of(printed: Printed) -> None:
    """No rule it did not know, no link without a target, no font it could not load."""
    assert printed.said == ()


def test_every_topic(printed: Printed) -> None:
    """Each topic has a bookmark, its number and title on its page, its number on top."""
    wanted = [page.number for page in printed.made.pages.pages]
    assert list(printed.topics) == wanted == sorted(wanted)
    document = printed.document
    ends = [
        *list(printed.topics.values())[1:],
        printed.part(INDEX)[0] + 1,
    ]
    for page, end in zip(printed.made.pages.pages, ends, strict=True):
        first = document[printed.topics[page.number] - 1]
        text = " ".join(first.get_text().split())
        title = printed.made.pages.unit.title if page.number == 0 else page.title
        assert title in text
        for at in range(printed.topics[page.number] - 1, end - 1):
            sheet = document[at]
            head = sheet.get_text(clip=(0, 0, sheet.rect.width, 21 / 25.4 * 72))
            assert page.shown_number in head.split(), (page.number, at)


def test_words_of_topics(printed: Printed) -> None:
    """What a page says is said on paper, but for what only a screen can do."""
    document = printed.document
    starts = [*printed.topics.values(), printed.part(INDEX)[0] + 1]
    for at, page in enumerate(printed.made.pages.pages):
        text = " ".join(
            document[i].get_text() for i in range(starts[at] - 1, starts[at + 1] - 1)
        )
        found = set(re.findall(r"\w+", text.lower()))
        body = re.sub(
            r"<form.*?</form>|<ul class=\"jump\">.*?</ul>|<svg.*?</svg>",
            " ",
            page.body,
            flags=re.DOTALL,
        )
        asked = set(
            re.findall(r"[a-z]+", re.sub(r"<[^>]+>|&#?\w+;", " ", body).lower())
        )
        # The foot of a sheet parts words at most in two.
        assert len(asked - found) <= 0.01 * len(asked), (page.number, asked - found)


def test_contents_are_true(printed: Printed) -> None:
    """The page named beside a topic is the one where the topic begins."""
    document = printed.document
    told = {}
    for at in printed.part("Contents"):
        for words, target in _linked(document[at]):
            if found := re.fullmatch(r"(\d{3}) .+?[ .]+(\d+)", words):
                told[int(found[1])] = int(found[2])
                assert int(found[2]) == target, words
    assert told == printed.topics


def test_page_numbers(printed: Printed) -> None:
    """The number at the foot is the sheet's own; the cover has none."""
    for at, page in enumerate(printed.document):
        height = page.rect.height
        foot = page.get_text(clip=(0, height - 19 / 25.4 * 72, page.rect.width, height))
        assert (str(at + 1) in foot.split()) == (at > 0), at + 1


def test_index(printed: Printed) -> None:
    """All that owners say for a thing is there, with topic and page, in order."""
    document = printed.document
    part = printed.part(INDEX)
    text = " ".join(" ".join(document[at].get_text() for at in part).split())
    asked = {said for page in printed.made.pages.pages for said in page.ask}
    entries = [entry for _, group in index_of(printed.made.pages) for entry in group]
    assert len(entries) > 300
    assert len(entries) >= 0.9 * len({said.lower() for said in asked})
    for entry in entries:
        places = "; ".join(
            f"{topic:03d}, p. {printed.topics[topic]}" for topic in entry.topics
        )
        assert f"{entry.words} {places}" in text
    plain = [
        re.sub(r"[^a-z0-9 ]", "", e.words.lower().replace("-", " ")) for e in entries
    ]
    rising = sum(one <= other for one, other in pairwise(plain))
    assert rising >= 0.99 * (len(plain) - 1)


def test_links(printed: Printed) -> None:
    """Every link of the document leads to a page that exists, or is a phone number."""
    reader = pypdf.PdfReader(io.BytesIO(printed.pdf))
    names = reader.named_destinations
    inner = phones = 0
    for page in reader.pages:
        for annotation in page.get("/Annots", []):
            entry = annotation.get_object()
            if "/A" in entry and "/URI" in entry["/A"]:
                assert str(entry["/A"]["/URI"]).startswith("tel:")
                phones += 1
                continue
            target = entry.get("/Dest") or entry["/A"]["/D"]
            assert target in names or isinstance(target, list), target
            inner += 1
    assert phones > 0
    assert inner > 900
    ids = set(re.findall(r'\sid="([^"]+)"', printed.html))
    for target in re.findall(r'href="#([^"]+)"', printed.html):
        assert target in ids


def test_map_links(printed: Printed) -> None:
    """Each number on the map of the cover leads to its topic."""
    cover = printed.document[0]
    found = {
        words.split()[-1] if words.split()[-1].isdigit() else words.split()[0]: page
        for words, page in _linked(cover)
        if re.search(r"\b\d{3}\b", words) and "topic" not in words
    }
    placed = {page.number for page in printed.made.pages.pages if page.sticker}
    assert {int(number) for number in found} == placed
    assert all(printed.topics[int(number)] == page for number, page in found.items())


def test_fonts(printed: Printed) -> None:
    """All are embedded and ours, so that paper looks the same from every machine."""
    faces = {
        (name, kind)
        for page in printed.document
        for _, kind, _, name, *_ in page.get_fonts()
    }
    assert faces
    assert {kind for _, kind in faces} == {"ttf"}
    assert all("+Barlow-Semi-Condensed" in name for name, _ in faces), faces


def test_nothing_off_the_page(printed: Printed) -> None:
    """No letter stands where a printer cannot print, nor below the foot."""
    for at, page in enumerate(printed.document):
        inner = rectangle(EDGE, EDGE, page.rect.width - EDGE, page.rect.height - EDGE)
        for block in page.get_text("dict")["blocks"]:
            for line in block.get("lines", []):
                for span in line["spans"]:
                    if span["text"].strip() and span["size"] > 2:
                        left, top, right, bottom = span["bbox"]
                        assert left >= inner.x0, (at, span["text"])
                        assert right <= inner.x1, (at, span["text"])
                        assert top >= inner.y0, (at, span["text"])
                        assert bottom <= inner.y1, (at, span["text"])


def test_boxes_to_tick(printed: Printed) -> None:
    """Each step of a journey has its box, and none is ticked."""
    ticks = printed.html.count('<input type="checkbox" id="tick-')
    assert ticks > 100
    assert not re.search(r"<input[^>]*checked", printed.html)
    # 4 mm and a border of 0.4 mm all round, as drawn; only these are such squares.
    side = 4.8 / 25.4 * 72
    squares = sum(
        drawing["rect"].width == pytest.approx(side, abs=0.1)
        and drawing["rect"].height == pytest.approx(side, abs=0.1)
        for page in printed.document
        for drawing in page.get_drawings()
    )
    assert squares == ticks


def test_codes_can_be_read(printed: Printed) -> None:
    """A scanner reads each code of the last pages: one for each topic with a sticker."""
    document = printed.document
    read = []
    for at in printed.part("The codes of the stickers"):
        pixels = document[at].get_pixmap(dpi=200)
        image = Image.frombytes("RGB", (pixels.width, pixels.height), pixels.samples)
        read += [found.text for found in zxingcpp.read_barcodes(image)]
        text = " ".join(document[at].get_text().split())
        for label in printed.stickers.labels:
            if (
                f"/{label.topic:03d}/" in "".join(read[-30:])
                and f"{label.topic:03d}" in text
            ):
                assert label.title in text
    wanted = {
        qr.payload(HOST, printed.stickers.code, label.topic)
        for label in printed.stickers.labels
    }
    assert len(read) == len(wanted)
    assert set(read) == wanted
    cover = document[0].get_pixmap(dpi=200)
    image = Image.frombytes("RGB", (cover.width, cover.height), cover.samples)
    (home,) = zxingcpp.read_barcodes(image)
    assert home.text == qr.payload(HOST, printed.stickers.code, 0)


def test_cover(printed: Printed) -> None:
    """The cover says what unit it is, who made the guide, which edition, whom to call."""
    text = " ".join(printed.document[0].get_text().split())
    unit = printed.made.pages.unit
    for words in (unit.name, unit.maker, unit.title, unit.shown_code, unit.edition):
        assert words in text
    assert f"Call {unit.emergency_number}." in text
    assert f"topic 001, page {printed.topics[1]}" in text


def test_as_public_as_the_site(printed: Printed) -> None:
    """What belongs to the unit alone is on no sheet."""
    spec = printed.made.manual.spec
    text = re.sub(r"\s", "", "".join(page.get_text() for page in printed.document))
    for private in (spec.vin, spec.stock):
        assert re.sub(r"\s", "", private) not in text


def test_our_color() -> None:
    """Paper and screen begin from the same color."""
    assert f"--brand-day: {OUR_BRAND};" in stylesheet()


def test_no_day_of_today(printed: Printed) -> None:
    """Nothing in the file tells when or where it was made."""
    reader = pypdf.PdfReader(io.BytesIO(printed.pdf))
    facts: dict[str, Any] = dict(reader.metadata or {})
    assert "/CreationDate" not in facts
    assert "/ModDate" not in facts
    assert str(ROOT) not in printed.html
    assert str(facts["/Title"]).startswith(printed.made.pages.unit.title)
