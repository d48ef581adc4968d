"""
How long all facts of the largest sample take, once everything is imported.

Run it by hand: ``python tests/bench/facts_speed.py``.  It fails above its limit.
"""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.load import load_unit

ROOT = Path(__file__).resolve().parents[2]
LIMIT = 0.015  # seconds
RUNS = 9


def main() -> int:
    """Print the number of facts, the first and the median time; 1 if too slow."""
    units = [
        load_unit(path, ROOT).spec for path in sorted(ROOT.glob("unit_specs/*.yml"))
    ]
    largest = max(units, key=lambda spec: len(work_out(spec)))
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        facts = work_out(largest)
        for fact in facts.values():
            fact.shown()
        times.append(time.perf_counter() - start)
    median = statistics.median(times)
    sys.stdout.write(
        f"{len(facts)} facts of {largest.body.name}, worked out and printed: "
        f"median of {RUNS} {median * 1e3:.1f} ms, limit {LIMIT * 1e3:.0f} ms\n"
    )
    return int(median > LIMIT)


if __name__ == "__main__":
    sys.exit(main())
