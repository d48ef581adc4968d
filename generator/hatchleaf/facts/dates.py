"""Date facts: when alarms, the extinguisher and the tires are at their end."""

from __future__ import annotations

import datetime as dt
from typing import Final

from hatchleaf.engineering import dates, tires
from hatchleaf.facts.sheet import Given, Sheet, fitted, items, word
from hatchleaf.spec.model.unit import UnitSpec

EXTINGUISHER_YEARS: Final = 12
"""Years from its make that a dry-chemical extinguisher without a refill serves."""
TIRE_YEARS: Final = 5
"""Years from its make after which a trailer tire should be replaced."""


def work_out(spec: UnitSpec, sheet: Sheet) -> None:
    """Write down all date facts."""
    _alarms(spec, sheet)
    _extinguisher(spec, sheet)
    _tires(spec, sheet)


def in_words(day: dt.date) -> str:
    """Return a month as an owner reads it: ``August 2031``."""
    return f"{day:%B} {day.year}"


def _month(path: str, value: object) -> Given:
    """Return a month of the file, of which ``unknown`` is not known."""
    return word(path, in_words(value) if isinstance(value, dt.date) else "unknown")


def _alarms(spec: UnitSpec, sheet: Sheet) -> None:
    if spec.safety.alarms == "unknown":
        sheet.stop(["safety.alarms"], "dates.alarm")
    for alarm in items(spec.safety.alarms):
        given = _month(f"safety.alarms[{alarm.id}].replace_by", alarm.replace_by)
        name = f"dates.alarm[{alarm.id}]"
        if not sheet.lacks([given], name):
            sheet.add(
                name,
                given.word,
                basis="The month that stands on the alarm itself.",
                given=[given],
                source="own-labels",
                label=f"{alarm.id.replace('-', ' ')} alarm",
                day=alarm.replace_by if isinstance(alarm.replace_by, dt.date) else None,
            )


def _extinguisher(spec: UnitSpec, sheet: Sheet) -> None:
    name = "dates.extinguisher"
    if spec.safety.extinguisher == "unknown":
        sheet.stop(["safety.extinguisher"], name)
    extinguisher = fitted(spec.safety.extinguisher)
    if extinguisher is None or extinguisher.kind != "dry_chemical":
        return
    given = _month("safety.extinguisher.made", extinguisher.made)
    kind = word("safety.extinguisher.kind", "dry chemical")
    if sheet.lacks([given], name) or not isinstance(extinguisher.made, dt.date):
        return
    end = dates.years_after(extinguisher.made, EXTINGUISHER_YEARS)
    sheet.add(
        name,
        in_words(end),
        basis=(
            f"Made {given.word}; one that cannot be refilled serves "
            f"{EXTINGUISHER_YEARS} years from then, or less if its label says so."
        ),
        given=[given, kind],
        source="nfpa-10",
        day=end,
    )


def _tires(spec: UnitSpec, sheet: Sheet) -> None:
    wheels = fitted(spec.gear.tires)
    if spec.gear.tires == "unknown":
        sheet.stop(["gear.tires"], "dates.tire")
    if wheels is None:
        return
    if wheels.fitted == "unknown":
        sheet.stop(["gear.tires.fitted"], "dates.tire")
    for tire in items(wheels.fitted):
        given = word(f"gear.tires.fitted[{tire.id}].made", tire.made)
        name = f"dates.tire[{tire.id}]"
        if sheet.lacks([given], name):
            continue
        made = tires.made_in(tire.made)
        end = dates.years_after(made, TIRE_YEARS)
        sheet.add(
            name,
            in_words(end),
            basis=(
                f"Its code {tire.made} is week {int(tire.made[:2])} of {made:%Y}; "
                f"{TIRE_YEARS} years from then are typical for a tire of such a unit."
            ),
            given=[given],
            source="common-practice",
            typical=True,
            label=tire.id.replace("-", " "),
            day=end,
        )
