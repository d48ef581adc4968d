"""Rules on who the unit is: VIN, condition, what is not known, what is private."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from hatchleaf.problems import Problem
from hatchleaf.spec import paths, vin
from hatchleaf.spec.checked import Checked
from hatchleaf.spec.model.unit import Body
from hatchleaf.spec.private import PRIVATE
from hatchleaf.spec.tree import without_items

_CHECKED_MARKETS: Final = ("us", "ca")
"""Where the check digit is law: 49 CFR 565.15(c); Canada's rules ask for the same."""
_WITHOUT_VIN: Final = "truck_camper"
_NOT_PUBLIC: Final = (*PRIVATE, "code")
_SHORTEST_SECRET: Final = 4
"""A shorter number stands in other texts by chance."""


def vin_is_right(unit: Checked) -> Iterator[Problem]:
    """Yield what the VIN's check digit and model year tell."""
    text = unit.values.get("vin")
    body = unit.section("body", Body)
    if text is None or body is None:
        return
    if text == "none":
        if body.type != _WITHOUT_VIN:
            what = "a trailer or motorhome has a VIN"
            yield unit.problem("vin", what, hint="only a truck camper has none")
        return
    if not vin.check_digit_is_right(text):
        found = unit.problem(
            "vin",
            f"the check digit of '{text}' does not fit",
            hint="read the VIN again from the plate, one character at a time",
        )
        checked = body.market in _CHECKED_MARKETS
        yield found if checked else replace(found, severity="note")
        return
    years = vin.model_years(text)
    if body.market in _CHECKED_MARKETS and body.year not in years:
        says = f"the tenth character says {' or '.join(map(str, years))}"
        if not years:
            says = f"no year has the tenth character '{text[9]}'"
        what = f"the VIN's model year is not {body.year}, as body.year has it"
        yield unit.problem("vin", what, hint=says)


def found_on_day(unit: Checked) -> Iterator[Problem]:
    """Yield where a used unit lacks the day it was looked over, or a new has one."""
    condition, found_on = (unit.values.get(name) for name in ("condition", "found_on"))
    if condition == "used" and found_on == "none":
        what = "a used unit needs the day it was looked over"
        yield unit.problem("found_on", what, "year-month-day, like 2027-04-16")
    if condition == "new" and isinstance(found_on, dt.date):
        yield unit.problem("found_on", "a new unit has no such day", "none")


def new_unit_is_known(unit: Checked) -> Iterator[Problem]:
    """Yield what of a new unit its file calls unknown though anyone can look."""
    if unit.values.get("condition") != "new":
        return
    for path, node in unit.tree.walk():
        form = paths.fields().get(without_items(path))
        if node.text != "unknown" or form is None:
            continue
        what = "part" if form.form in ("part", "list") else "field"
        if what == "field" and not form.used_only:
            continue
        what = f"only a used unit may have a {what} that is not known"
        hint = "look at the unit"
        if "none" in form.words:
            hint += "; write none if it is not fitted"
        yield Problem(node.place, path, what, hint=hint)


def private_stays_private(unit: Checked) -> Iterator[Problem]:
    """Yield texts for the public pages that hold what belongs to the owner alone."""
    secrets = {
        node.text: path
        for path, node in unit.tree.walk()
        if without_items(path)
        in (
            "vin",
            "stock",
            "serials.number",
            "keys.number",
            "readings.found",
            "acknowledged.reason",
        )
        and node.text not in (None, "none", "unknown")
    }
    for path, node in unit.tree.walk():
        field = without_items(path)
        form = paths.fields().get(field)
        if field.split(".")[0] in _NOT_PUBLIC or field.endswith(".made"):
            continue
        if not form or form.form != "text" or not node.text:
            continue
        for secret, where in secrets.items():
            if secret and len(secret) >= _SHORTEST_SECRET and secret in node.text:
                what = f"the text holds the private number of {where}"
                hint = "anyone who scans a sticker reads this text"
                yield Problem(node.place, path, what, hint=hint)


RULES: Final = (
    vin_is_right,
    found_on_day,
    new_unit_is_known,
    private_stays_private,
)
