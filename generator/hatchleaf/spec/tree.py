"""The tree of texts that a file states, each with its place."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Final, TypeAlias

from hatchleaf.problems import Place

Content: TypeAlias = "str | Mapping[str, Node] | tuple[Node, ...]"

_NO_KEYS: Final[Mapping[str, Place]] = MappingProxyType({})
_ID: Final = re.compile(r"[A-Za-z0-9_-]{1,60}", re.ASCII)
_STEP: Final = re.compile(r"[^.\[\]]+")


@dataclass(frozen=True)
class Node:
    """One text, mapping or list of a file, and where it stands."""

    place: Place
    """Where the text or the item starts; of a mapping or list, its own key."""
    content: Content
    keys: Mapping[str, Place] = field(default_factory=lambda: _NO_KEYS)
    """Of a mapping: where each key is written."""
    model_place: Place | None = None
    """Where the model's file has it, if the unit's file has it too."""

    @property
    def text(self) -> str | None:
        """The text, or None for a mapping or a list."""
        return self.content if isinstance(self.content, str) else None

    @property
    def fields(self) -> Mapping[str, Node]:
        """The fields of a mapping; empty for anything else."""
        return self.content if isinstance(self.content, Mapping) else {}

    @property
    def items(self) -> tuple[Node, ...]:
        """The items of a list; empty for anything else."""
        return self.content if isinstance(self.content, tuple) else ()

    @property
    def id(self) -> str | None:
        """The text of the field ``id`` of a list's item."""
        found = self.fields.get("id")
        return found.text if found else None

    def named(self, index: int) -> str:
        """Return how paths call this item of a list: its id, else its index."""
        return self.id if self.id and _ID.fullmatch(self.id) else str(index)

    def item(self, name: str) -> Node | None:
        """Return the item of a list by its id, or by its index from 0."""
        for item in self.items:
            if item.id == name:
                return item
        if name.isascii() and name.isdecimal() and int(name) < len(self.items):
            return self.items[int(name)]
        return None

    def find(self, path: str) -> Node | None:
        """
        Return the node at *path*, or None.

        Args:
            path: Fields and the ids or indexes of items, such as
                ``awnings.patio.width``, ``awnings[patio].width`` or
                ``awnings[0].width``.

        """
        node: Node | None = self
        for step in _STEP.findall(path):
            node = node.step(step) if node else None
        return node

    def step(self, name: str) -> Node | None:
        """Return the field or item *name* right below this node."""
        if isinstance(self.content, tuple):
            return self.item(name)
        return self.fields.get(name)

    def place_of(self, path: str) -> Place:
        """Return the place of *path*, or of the nearest node above it that exists."""
        node = self
        for step in _STEP.findall(path):
            below = node.step(step)
            if below is None:
                # A key may stand there without a node of its own.
                return node.keys.get(step, node.place)
            node = below
        return node.place

    def plain(self) -> Any:
        """Return the texts alone, as dicts, lists and strings."""
        if isinstance(self.content, str):
            return self.content
        if isinstance(self.content, tuple):
            return [item.plain() for item in self.content]
        return {key: node.plain() for key, node in self.content.items()}

    def walk(self, path: str = "") -> Iterator[tuple[str, Node]]:
        """Return this node and all below with their paths, items by their ids."""
        yield path, self
        for key, node in self.fields.items():
            yield from node.walk(f"{path}.{key}" if path else key)
        for index, node in enumerate(self.items):
            yield from node.walk(f"{path}[{node.named(index)}]")


def without_items(path: str) -> str:
    """Return *path* without ids and indexes of items: ``awnings.width``."""
    return re.sub(r"\[[^\]]*\]", "", path)
