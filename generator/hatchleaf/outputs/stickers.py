"""The stickers of a unit and its emergency card: what they say, ready to be set."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from hatchleaf.outputs.card import Card, data_of
from hatchleaf.outputs.qr import Symbol, drawn
from hatchleaf.outputs.sticker_sheets import Preset


@dataclass(frozen=True)
class Label:
    """
    One sticker.

    ``line`` is the one thing to do, ``extra`` what must follow it, ``fact`` a number
    with its unit; ``signal_text`` stands below the signal word, or, left empty, the
    line does.  ``place`` and ``side_height`` say where on the unit it is stuck.
    """

    topic: int
    title: str
    place_id: str
    place: str
    side_height: str
    line: str
    fact: str = ""
    signal: Literal["danger", "warning", "caution", "notice"] | None = None
    signal_text: str = ""
    extra: str = ""
    optional: bool = False


@dataclass(frozen=True)
class StickerSet:
    """All stickers of a unit and its card; the edition is that of the guide."""

    code: str
    host: str
    unit_name: str
    labels: tuple[Label, ...]
    card: Card
    edition: str


def grouped(code: str) -> str:
    """Return a unit's code as it is read out: three groups of five digits."""
    return " ".join(code[i : i + 5] for i in range(0, len(code), 5))


def sheets_of(
    wanted: StickerSet,
    chosen: Sequence[tuple[Label, Symbol]],
    preset: Preset,
    *,
    code_side: int,
    skip: int,
) -> Mapping[str, Any]:
    """
    Return all that the typst template sets; lengths in micrometers.

    Args:
        wanted: the set
        chosen: the labels to print, each with its symbol
        preset: the kind of sheet
        code_side: side of a symbol with its quiet zone
        skip: spots of the first sheet that stay empty
    """
    sheets: list[list[dict[str, Any]]] = []
    for index, (label, symbol) in enumerate(chosen):
        sheet, spot = divmod(skip + index, preset.labels)
        if sheet == len(sheets):
            sheets.append([])
        sheets[sheet].append(
            {
                "at": preset.corner(spot),
                "index": index,
                "number": f"{label.topic:03d}",
                "title": label.title,
                "where": label.place,
                "signal": label.signal,
                "warning": label.signal_text,
                "line": label.line,
                "extra": label.extra,
                "fact": label.fact,
                "code": grouped(wanted.code),
                "host": wanted.host,
                "svg": drawn(symbol),
            }
        )
    width, height = preset.label
    below = preset.corner(preset.labels - 1)[1] + height
    return {
        "title": f"Stickers and emergency card: {wanted.unit_name}",
        "name": wanted.unit_name,
        "host": wanted.host,
        "code": grouped(wanted.code),
        "edition": wanted.edition,
        "paper": preset.paper,
        "label": preset.label,
        "code_side": code_side,
        "cuts": {
            "x": [preset.left + i * width for i in range(preset.columns + 1)],
            "y": [preset.top + i * height for i in range(preset.rows + 1)],
        }
        if preset.cut
        else {"x": [], "y": []},
        "strip": (
            preset.left + 2_000,
            below + 3_000,
            preset.paper[0] - 2 * preset.left - 4_000,
        ),
        "sheets": sheets,
        "card": data_of(wanted.card),
        "where": [
            {
                "number": f"{label.topic:03d}",
                "title": label.title,
                "where": ", ".join(x for x in (label.place, label.side_height) if x),
            }
            for label, _ in chosen
        ],
    }
