"""What a block's text may call of the facts: a number, tables and charts of them."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from hatchleaf.blocks.choose import Chosen
from hatchleaf.blocks.conditions import values
from hatchleaf.blocks.text import Fault, Shown, escaped
from hatchleaf.facts.model import Fact, Facts, field_of
from hatchleaf.manual import stay
from hatchleaf.manual.charts import CHARTS
from hatchleaf.problems import listed
from hatchleaf.spec.model.unit import PlaceOnUnit, UnitSpec

NUMBERS_TOPIC: Final = 90

_HEADS: Final = {
    "awnings.wind_force": ("Wind", "Push on the awning"),
    "battery.charge_hours": ("Charged by", "Full again after"),
    "battery.hours": ("What runs", "Alone, on a full battery"),
    "lp.hours": ("What burns", "Alone, always lit"),
    "fuses.color": ("Fuse of", "Amps and color"),
    "generator.at_height": ("Above the sea", "Gives"),
    "inverter.hours": ("What runs", "Alone, on a full battery"),
    "shore.extension_drop": ("Wire of the cord", "Volts lost in 50 ft"),
    "shore.load": ("What", "Draws"),
    "shore.needs": ("With this on", "Smallest supply"),
    "shore.supply": ("Supply", "Gives for hours"),
    "shore.together": ("At the same time", "By the main breaker"),
    "tires.pressure_at": ("Air outside", "The gauge reads"),
    "water.bleach": ("Strength on the bottle", "Bleach"),
    "water.days": ("For", "Lasts"),
}
"""Column heads of a table of facts: what its rows are, and what stands beside them."""


def slug(text: str) -> str:
    """Return *text* as the part of an id: small letters, digits, hyphens."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def fact_link(name: str) -> str:
    """Return the symbolic link to how the fact *name* was worked out."""
    return f"topic:{NUMBERS_TOPIC:03d}#fact-{slug(name)}"


def fact_shown(fact: Fact) -> Shown:
    """Return a fact as printed: a link to its derivation, marked where it must be."""
    text = fact.shown()
    marks = [
        word
        for word, on in (("typical", fact.typical), ("brochure", fact.brochure))
        if on
    ]
    html = "".join(f' <span class="{mark}">({mark})</span>' for mark in marks)
    plain = "".join(f" ({mark})" for mark in marks)
    return Shown(f"[{escaped(text)}]({fact_link(fact.name)}){html}", text + plain)


@dataclass(frozen=True)
class FactWords:
    """The facts of a unit for its texts; a block names those that it quotes."""

    spec: UnitSpec
    facts: Facts
    places: Mapping[str, PlaceOnUnit]

    def names(self, one: Chosen) -> dict[str, object]:
        """Return what the text of *one* chosen block may use."""
        return {
            "has_fact": lambda name, item="": _named(name, item) in self.facts,
            "fact": self._fact_of(one),
            "table": self._table_of(one),
            "chart": self._chart_of(one),
            "days_table": self._stay_of(
                one, lambda: stay.table(self.facts, fact_link, self._read_it)
            ),
            "trip": self._stay_of(one, lambda: stay.trip(self.facts)),
        }

    def _fact_of(self, one: Chosen) -> Callable[..., Shown]:
        def fact(base: str, item: object = "") -> Shown:
            self._declared(one, base)
            name = _named(base, item)
            found = self.facts.get(name)
            if found is not None:
                return fact_shown(found)
            missing = self.facts.missing.get(name) or self.facts.missing_for(base)
            if missing:
                return self._read_it(missing[0])
            raise Fault(
                f"this unit has no fact '{name}'",
                listed(f.name for f in self.facts.of(base)),
                "a condition of the block should keep it off this unit",
            )

        return fact

    def _table_of(self, one: Chosen) -> Callable[..., Shown]:
        def table(
            base: str, left: str = "", right: str = "", at_once: int = 0
        ) -> Shown:
            self._declared(one, base)
            rows = self.facts.of(base)
            if not rows:
                missing = self.facts.missing_for(base)
                if missing:
                    return self._read_it(missing[0])
                raise Fault(f"this unit has no fact '{base}'")
            # Only the rows of so many things together; none of them are no table.
            if at_once:
                rows = tuple(r for r in rows if len(r.item.split(" + ")) == at_once)
                if not rows:
                    return Shown("", "")
            head = _HEADS.get(base, ("Which", "How much"))
            lines = [f"| {left or head[0]} | {right or head[1]} |", "| --- | --- |"]
            lines += [
                f"| {escaped(r.item_words)} | {fact_shown(r).markdown} |" for r in rows
            ]
            plain = "; ".join(f"{r.item_words}: {r.shown()}" for r in rows)
            return Shown("\n" + "\n".join(lines) + "\n", plain)

        return table

    def _chart_of(self, one: Chosen) -> Callable[..., Shown]:
        def chart(name: str) -> Shown:
            if name not in CHARTS:
                raise Fault(f"there is no chart '{name}'", listed(CHARTS))
            bases, draw = CHARTS[name]
            for base in bases:
                self._declared(one, base)
                missing = self.facts.missing_for(base)
                if missing and not self.facts.of(base):
                    return self._read_it(missing[0])
            return draw(self.facts)

        return chart

    def _stay_of(self, one: Chosen, make: Callable[[], Shown]) -> Callable[[], Shown]:
        def made() -> Shown:
            for base in stay.BASES:
                self._declared(one, base)
            return make()

        return made

    def _declared(self, one: Chosen, base: str) -> None:
        if base not in one.block.facts:
            raise Fault(
                f"fact '{base}' is not in the block's list of facts",
                listed(one.block.facts) or "none yet",
                f"add '{base}' to 'facts:' of the front matter",
            )

    def _read_it(self, path: str) -> Shown:
        """Return what to print for an unknown number: where to read it."""
        where = ""
        holder, _, _ = field_of(path).rpartition(".")
        for value in values(self.spec, holder) if holder else ():
            at = getattr(value, "at", "")
            if at in self.places:
                where = f" at {self.places[at].name}"
                break
        text = f"(not known: read the plate{where})"
        return Shown(escaped(text), text)


def _named(base: str, item: object) -> str:
    return f"{base}[{item}]" if item else base
