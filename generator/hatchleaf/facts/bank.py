"""All house batteries together, as the facts about them see it."""

from __future__ import annotations

from dataclasses import dataclass

from hatchleaf.facts.sheet import Given
from hatchleaf.units import Quantity, convert, shown


@dataclass(frozen=True)
class Bank:
    """The batteries of a unit, and what may be used of them."""

    capacity: Quantity
    usable: Quantity
    volts: Quantity
    chemistry: str
    """Of all of them; ``unknown`` where it is, or where they differ."""
    chemistry_given: tuple[Given, ...]
    given: tuple[Given, ...]
    """What the usable energy rests on."""
    typical: bool
    source: str

    @property
    def charge(self) -> Quantity:
        """Capacity in ampere-hours at the voltage of the bank."""
        return convert(self.capacity / self.volts, "ampere_hour")

    @property
    def taken(self) -> Quantity:
        """Ampere-hours that may be used, to be put back by charging."""
        return convert(self.usable / self.volts, "ampere_hour")

    @property
    def kind(self) -> str:
        """The chemistry in the words of a sentence."""
        return {"lfp": "LFP", "agm": "AGM", "flooded": "flooded lead-acid"}.get(
            self.chemistry, self.chemistry
        )

    @property
    def lead(self) -> bool:
        """True for lead-acid of any kind."""
        return self.chemistry in ("flooded", "agm", "gel")

    @property
    def known(self) -> bool:
        """True where the chemistry is known and one."""
        return self.lead or self.chemistry == "lfp"

    @property
    def with_chemistry(self) -> tuple[Given, ...]:
        """The inputs of facts that need the chemistry too."""
        return tuple(dict.fromkeys((*self.given, *self.chemistry_given)))

    @property
    def usable_words(self) -> str:
        """The usable energy at the start of a sentence."""
        share = " by a typical share" if self.typical else ""
        return f"{shown(self.usable, 'watt_hour', how='down')} that may be used{share},"
