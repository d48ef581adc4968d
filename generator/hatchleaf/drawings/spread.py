"""Labels in a row, none upon another, each as near to its hatch as that allows."""

from __future__ import annotations

from collections.abc import Sequence


def spread(
    wanted: Sequence[float], step: float, first: float, last: float
) -> list[float]:
    """
    Return the middles of labels, at least *step* apart, in the order of *wanted*.

    The sum of squared ways from where each is wanted is the least possible (isotonic
    regression by pooling neighbors).

    Args:
        wanted: Where each label would stand alone, in rising order.
        step: What a label takes, in the drawing's units.
        first: Least middle.
        last: Greatest middle; passed when the labels need more room.
    """
    # Less its turn in the row, a label may stand where its forerunner does.
    pools: list[tuple[float, int]] = []
    for turn, at in enumerate(wanted):
        total, count = at - turn * step, 1
        while pools and pools[-1][0] / pools[-1][1] >= total / count:
            more, others = pools.pop()
            total, count = total + more, count + others
        pools.append((total, count))
    most = max(first, last - step * (len(wanted) - 1))
    middles = [
        min(max(total / count, first), most)
        for total, count in pools
        for _ in range(count)
    ]
    return [middle + turn * step for turn, middle in enumerate(middles)]
