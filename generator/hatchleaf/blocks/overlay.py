"""
A workspace's own blocks laid over the built-in ones, by id.

A block that replaces a built-in one names its fingerprint, so that an upgrade
tells which replacements to read again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from hatchleaf.blocks.model import Block
from hatchleaf.problems import Place, Problem


def laid_over(
    layers: Sequence[Mapping[str, Block]], problems: list[Problem]
) -> dict[str, Block]:
    """Return the blocks of all *layers*, later ones over earlier ones."""
    blocks: dict[str, Block] = {}
    for layer in layers:
        for block in layer.values():
            fault = _fault(block, blocks.get(block.id))
            if fault:
                problems.append(fault)
        blocks |= layer
    return blocks


def _fault(block: Block, below: Block | None) -> Problem | None:
    if below is None:
        if not block.replaces:
            return None
        return Problem(
            block.places["replaces"],
            "replaces",
            f"there is no built-in block '{block.id}' to replace",
            hint="take the line out",
        )
    place = block.places.get("replaces", Place(block.file))
    if not block.replaces:
        return Problem(
            place,
            "replaces",
            f"'{block.id}' is a built-in block; this one does not say it replaces it",
            below.fingerprint,
            f"write 'replaces: {below.fingerprint}', or choose another id",
        )
    if block.replaces != below.fingerprint:
        return Problem(
            place,
            "replaces",
            "the built-in block has changed since this replacement was written",
            below.fingerprint,
            f"compare with {below.file}, then write the new fingerprint",
        )
    if "!!! danger" in below.body and "!!! danger" not in block.body:
        return Problem(
            place,
            "replaces",
            "the built-in block warns of a danger, and this one does not",
            hint=f"keep the danger boxes of {below.file}",
        )
    return None
