"""
Printing a unit's stickers and its card: a PDF, and the event that records it.

Nothing here writes a file.  A set that this module returns has been decoded from its
own rendering, label by label, and compared with the event.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, replace
from datetime import date
from typing import Any

from hatchleaf.ledger import Event, Printed, PrintedLabel, State, fold
from hatchleaf.outputs import qr
from hatchleaf.outputs.sticker_proof import prove
from hatchleaf.outputs.sticker_sheets import PRESETS, Preset, fitting, module_um
from hatchleaf.outputs.stickers import Label, StickerSet, sheets_of
from hatchleaf.outputs.typesetting import Document, NoGlyph, TooMuch
from hatchleaf.problems import Place, Problem, ProblemsFound


def make(
    wanted: StickerSet,
    preset: Preset,
    events: Sequence[Event],
    *,
    on: date,
    where: Place,
    with_optional: bool = False,
    skip: int = 0,
    presets: Mapping[str, Preset] = PRESETS,
) -> tuple[bytes, Event]:
    """
    Return the PDF of a set and the event to be recorded before it is released.

    Args:
        wanted: the set
        preset: the kind of sheet
        events: the unit's ledger, whose symbols are printed again as they were
        on: the day of printing
        where: the unit's file, for problems
        with_optional: whether the optional stickers are printed as well
        skip: spots of the first sheet that are used up already
        presets: the kinds of sheet to name where this one will not do

    Raises:
        ProblemsFound: if the set cannot be printed so
    """
    labels = tuple(x for x in wanted.labels if with_optional or not x.optional)
    state = fold(events)
    problems = [*_refusals(labels, preset, state, skip, where)]
    try:
        version, module = _measured(wanted.host, preset, presets, where)
    except ProblemsFound as error:
        problems.extend(error.problems)
    if problems:
        raise ProblemsFound(problems)
    chosen = [(label, _symbol(wanted, label, state, where)) for label in labels]
    side = module * qr.side_of(version)
    document = Document(
        "stickers.typ",
        sheets_of(wanted, chosen, preset, code_side=side, skip=skip),
    )
    try:
        pdf = document.pdf()
    except TooMuch as error:
        raise ProblemsFound([_too_much(error, labels, preset, where)]) from error
    except NoGlyph as error:
        raise ProblemsFound([_no_glyph(error, labels, where)]) from error
    event = Event(
        code=wanted.code,
        on=on,
        after=state.heads,
        body=Printed(
            host=wanted.host,
            preset=preset.name,
            module_um=module,
            edition=wanted.edition,
            card=_digest(asdict(wanted.card)),
            labels=tuple(
                _row(label, symbol, preset, skip + index)
                for index, (label, symbol) in enumerate(chosen)
            ),
        ),
    )
    prove(document, preset, event, where)
    return pdf, event


def _measured(
    host: str, preset: Preset, presets: Mapping[str, Preset], where: Place
) -> tuple[int, int]:
    """
    Return the version of a host's symbols and their module in micrometers.

    Raises:
        ProblemsFound: if the host cannot be printed, or not on these sheets
    """
    if not qr.host_is_plain(host):
        what = f"'{host}' cannot stand in a sticker's address"
        allowed = "a domain name in lower case, without a port"
        raise ProblemsFound([Problem(where, "host", what, allowed)])
    version = qr.version_for(host)
    if version is None:
        what = f"'{host}' has {len(host)} characters, too many for a sticker"
        allowed = f"up to {qr.HOST_LIMITS[-1][0]} characters"
        hint = "a short domain of your own"
        raise ProblemsFound([Problem(where, "host", what, allowed, hint)])
    module = module_um(preset, version)
    if module is None:
        names = fitting(presets.values(), version)
        what = f"the code for '{host}' would be too fine on {preset.name}"
        hint = f"use {' or '.join(names)}" if names else "use a shorter host"
        raise ProblemsFound([Problem(where, "preset", what, ", ".join(names), hint)])
    return version, module


def _refusals(
    labels: Sequence[Label], preset: Preset, state: State, skip: int, where: Place
) -> Iterator[Problem]:
    """Yield what forbids printing these labels at all."""
    if state.scrapped:
        yield Problem(where, "code", "this unit was scrapped: no more stickers")
    if not labels:
        yield Problem(where, "stickers", "there is none to print")
    if skip not in range(preset.labels):
        allowed = f"0 to {preset.labels - 1}"
        yield Problem(where, "skip", f"{skip} spots of a sheet", allowed)
    seen: set[tuple[int, str]] = set()
    for label in labels:
        key = (label.topic, label.place_id)
        if key in seen:
            what = f"topic {label.topic:03d} twice at {label.place_id}"
            yield Problem(where, "stickers", what)
        seen.add(key)


def _symbol(wanted: StickerSet, label: Label, state: State, where: Place) -> qr.Symbol:
    """Return the label's symbol: as it was printed before, if it was."""
    address = qr.payload(wanted.host, wanted.code, label.topic)
    before = state.newest.get(address)
    if before is None:
        return qr.symbol(wanted.host, wanted.code, label.topic)
    again = qr.symbol(
        wanted.host, wanted.code, label.topic, version=before.version, mask=before.mask
    )
    if again.digest != before.matrix:
        what = f"topic {label.topic:03d} would get another symbol than was printed"
        hint = "go back to the library versions of the lock file"
        raise ProblemsFound([Problem(where, "stickers", what, hint=hint)])
    return again


def _row(label: Label, symbol: qr.Symbol, preset: Preset, at: int) -> PrintedLabel:
    """Return the label's line in the ledger."""
    sheet, spot = divmod(at, preset.labels)
    said = asdict(replace(label, optional=False))  # not a word on the label
    return PrintedLabel(
        topic=label.topic,
        place=label.place_id,
        payload=symbol.payload,
        version=symbol.version,
        ecc="Q",
        mask=symbol.mask,
        matrix=symbol.digest,
        text=_digest(said),
        sheet=sheet + 1,
        spot=spot + 1,
    )


def _digest(data: Mapping[str, Any]) -> str:
    """Return the SHA-256 of data that JSON can hold, in one way of writing it."""
    text = json.dumps(data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def _too_much(
    error: TooMuch, labels: Sequence[Label], preset: Preset, where: Place
) -> Problem:
    """Return the problem of words that do not fit their label or the card."""
    if error.part == "label":
        label = labels[error.index]
        what = (
            f"the words of sticker {label.topic:03d} '{label.title}' do not fit"
            f" a label of {preset.name}"
        )
        return Problem(
            where, "stickers", what, hint="shorter words, or a larger preset"
        )
    if error.part == "list":
        what = f"the list of {len(labels)} stickers does not fit half a page"
        return Problem(where, "stickers", what, hint="print the optional ones apart")
    if error.part == "name":
        what = "the unit's name does not fit the foot of a sheet"
        return Problem(where, "name", what, hint="a shorter name")
    what = "the words of the emergency card do not fit half a page"
    return Problem(where, "emergency card", what, hint="shorter words for places")


def _no_glyph(error: NoGlyph, labels: Sequence[Label], where: Place) -> Problem:
    """Return the problem of a character that our fonts do not have."""
    of = next(
        (
            f"sticker {label.topic:03d} '{label.title}'"
            for label in labels
            if any(error.text in str(value) for value in asdict(label).values())
        ),
        "the emergency card or the sheet's foot",
    )
    what = f"{of} has a character that cannot be printed: {ascii(error.text)[1:-1]}"
    return Problem(where, "stickers", what, hint="write it in Latin letters")
