"""
How long all facts of the largest sample take, and the import of all engineering.

The facts are worked out once everything is imported; the formulas are imported in a
fresh process that finds pint's registry in its cache, as every second command does.

Run it by hand: ``python tests/bench/facts_speed.py``.  It fails above its limit.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from hatchleaf.facts.work_out import work_out
from hatchleaf.spec.load import load_unit

ROOT = Path(__file__).resolve().parents[2]
LIMIT = 0.015  # seconds
RUNS = 9
IMPORT_LIMIT = 0.4  # seconds
IMPORT_RUNS = 5
_IMPORT = """
import importlib, pkgutil, sys, time
start = time.perf_counter()
from hatchleaf import engineering
names = [one.name for one in pkgutil.iter_modules(engineering.__path__)]
for name in names:
    importlib.import_module(f"hatchleaf.engineering.{name}")
# The registry is read when the first number needs it.
from hatchleaf.units import quantity
quantity(1, "pound").to("kilogram")
print(len(names), time.perf_counter() - start)
"""


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
    return int(median > LIMIT) | _imported()


def _imported() -> int:
    """Print the median time of importing all formulas; 1 if too slow."""
    with tempfile.TemporaryDirectory() as cache:
        found = [_fresh(cache) for _ in range(IMPORT_RUNS + 1)]
    # The first run fills the cache.
    median = statistics.median(seconds for _, seconds in found[1:])
    sys.stdout.write(
        f"{found[0][0]} engineering modules, imported in a fresh process: median of "
        f"{IMPORT_RUNS} {median * 1e3:.0f} ms, limit {IMPORT_LIMIT * 1e3:.0f} ms "
        f"(without a cache {found[0][1] * 1e3:.0f} ms)\n"
    )
    return int(median > IMPORT_LIMIT)


def _fresh(cache: str) -> tuple[int, float]:
    """Return how many modules a new process imported, and the seconds it took."""
    done = subprocess.run(
        [sys.executable, "-c", _IMPORT],
        env={**os.environ, "HATCHLEAF_CACHE": cache},
        check=True,
        capture_output=True,
        text=True,
    )
    count, seconds = done.stdout.split()
    return int(count), float(seconds)


if __name__ == "__main__":
    sys.exit(main())
