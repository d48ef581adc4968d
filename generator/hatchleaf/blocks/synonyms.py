"""Other names for what a guide speaks of, as owners type them: for search alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Synonyms:
    """The lists of search.yml, in small letters."""

    same: tuple[tuple[str, ...], ...] = ()
    """Names of one thing; each finds all others."""
    means: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What is typed -> what it may mean, not the other way round."""

    def joined(self, other: Synonyms) -> Synonyms:
        """Return these lists with those of *other* added; its meanings win."""
        return Synonyms(self.same + other.same, {**self.means, **other.means})
