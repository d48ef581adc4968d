"""
One unit's build beside one plain ``mkdocs build`` of the same pages.

Run as ``python tests/bench/build_speed.py [UNIT]``; it is no test, since a busy
machine tells nothing. Both run as cold processes, in turn, nine times; pint's parsed
registry is kept, as on any second build; what else earlier builds keep is measured
apart, since a dealership's second unit finds it. The plain build is mkdocs-material with its defaults over Markdown files that hold the
same text and drawings; what no block states, such as the list of numbers, is HTML in
them. numpy is hidden from both: only the test tools bring it, and pint would load it.
Exit code 1 when ours takes longer or needs more than 200 MB.
"""

from __future__ import annotations

import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Final

ROOT: Final = Path(__file__).resolve().parents[2]
ROUNDS: Final = 9
MOST_MEMORY: Final = 200.0
"""Megabytes at the peak."""

ROWS: Final = {
    "units": "hatchleaf build, pint's units kept",
    "templates": "the same, compiled templates kept too",
    "all": "the same, converted blocks kept too",
    "plain": "mkdocs build",
}

OURS: Final = """\
import sys
sys.modules["numpy"] = None
from hatchleaf.cli.main import main
main()
"""

THEIRS: Final = """\
import sys
sys.modules["numpy"] = None
from mkdocs.__main__ import cli
cli()
"""

PLAIN: Final = """\
site_name: Guide
theme: {name: material}
markdown_extensions: [tables, admonition, pymdownx.details, sane_lists]
"""

MARKDOWN: Final = r"""
import re, sys
from pathlib import Path
from hatchleaf.cli.edge import gathered, open_workspace

(unit,) = gathered(open_workspace(Path(sys.argv[1])), [sys.argv[2]])
manual, pages = unit.made.manual, unit.made.pages
for topic in manual.topics:
    page = pages.by_number[topic.topic.number]
    texts = [f"# {page.title}", page.where, page.plan, page.normal_drawing]
    texts += [topic.normal.markdown] if topic.normal else []
    texts += [f"* {tile.says} **{tile.value}** {tile.note}" for tile in page.tiles]
    texts += [part.markdown for part in topic.parts]
    steps = manual.steps.get(page.id.replace("-", "_"), ())
    texts += [f"1. {step.markdown}" for step in steps]
    if not topic.parts:
        texts.append(page.body)
    text = "\n\n".join(texts) + "\n"
    text = re.sub(r"topic:(\d{3})(#[\w.-]*)?", r"\1.md", text)
    (Path(sys.argv[3]) / f"{page.shown_number}.md").write_text(text, "utf-8")
"""

STAGES: Final = r"""
import sys, time
sys.modules["numpy"] = None
begun = last = time.perf_counter()
rows = []
def stage(name):
    global last
    now = time.perf_counter()
    rows.append((name, now - last))
    last = now
from pathlib import Path
from hatchleaf.workspace import Workspace
workspace = Workspace(Path(sys.argv[1]))
workspace.keep_units_cached()
settings = workspace.settings
stage("settings")
import hatchleaf.spec.load
stage("import spec (pydantic, pint)")
loaded = workspace.load(sys.argv[2])
stage("read and check the unit")
from hatchleaf.blocks.reading import read_library
stage("import blocks")
library = read_library(workspace.content_folders(), workspace.root)
stage("read all blocks")
from hatchleaf.manual import make
stage("import manual (markdown)")
facts = make.work_out(loaded.spec)
stage("facts")
selection = make.choose(library, loaded.spec, facts)
stage("choose")
dealer = {"dealer_name": settings.site_name, "dealer_phone": settings.phone}
manual = make.assemble(library, loaded.spec, facts, selection, **dealer)
stage("assemble")
pages = make.make_pages(manual, kept={}, **dealer)
stage("pages")
from hatchleaf.outputs.website.assets import land_site
from hatchleaf.outputs.website.loop import build_site
stage("import website (mkdocs)")
files = build_site(pages, settings)
stage("website and phone copy")
land_site(Path(sys.argv[3]), files)
stage("put in place")
rows.append(("in all", last - begun))
for name, seconds in rows:
    print(f"  {name:32}{seconds * 1000:8.0f} ms")
"""


def compiled(folder: Path) -> dict[str, str]:
    """Return an environment that keeps bytecode, as every installation does."""
    kept = {name: value for name, value in os.environ.items() if "BYTECODE" not in name}
    return {**kept, "PYTHONPYCACHEPREFIX": str(folder)}


def timed(
    command: list[str], folder: Path, environment: dict[str, str]
) -> tuple[float, float]:
    """Run a command; return its wall time in s and its peak memory in MB."""
    begun = time.perf_counter()
    with (folder / "said").open("wb") as said:
        process = subprocess.Popen(
            command, cwd=folder, env=environment, stdout=said, stderr=said
        )
        _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    seconds = time.perf_counter() - begun
    if process.returncode:
        raise SystemExit((folder / "said").read_text(encoding="utf-8"))
    return seconds, usage.ru_maxrss / 1024


def main() -> int:
    """Measure, print, and judge."""
    unit = sys.argv[1] if len(sys.argv) > 1 else "heron-a"
    python = sys.executable
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        ours, plain = folder / "ours", folder / "plain"
        shutil.copytree(ROOT / "unit_specs", ours / "unit_specs")
        shutil.copy(ROOT / "mkdocs.yml", ours)
        (plain / "docs").mkdir(parents=True)
        (plain / "mkdocs.yml").write_text(PLAIN, encoding="utf-8")
        subprocess.run(
            [python, "-c", MARKDOWN, str(ours), unit, str(plain / "docs")], check=True
        )
        pages = len(list((plain / "docs").glob("*.md")))
        words = sum(
            len(re.findall(r"\w+", path.read_text(encoding="utf-8")))
            for path in (plain / "docs").glob("*.md")
        )
        print(f"{unit}: {pages} pages, {words} words; median of {ROUNDS}")
        build = [python, "-c", OURS, "build", unit]
        mkdocs = [python, "-c", THEIRS, "build", "--quiet"]
        rows: dict[str, list[tuple[float, float]]] = {name: [] for name in ROWS}
        environment = compiled(folder / "bytecode")
        timed(build, ours, environment)
        timed(mkdocs, plain, environment)
        for _ in range(ROUNDS):
            (ours / ".hatchleaf" / "fragments.json").unlink(missing_ok=True)
            for kept in (ours / ".hatchleaf" / "compiled").glob("templates*"):
                kept.unlink()
            rows["units"].append(timed(build, ours, environment))
            (ours / ".hatchleaf" / "fragments.json").unlink()
            rows["templates"].append(timed(build, ours, environment))
            rows["all"].append(timed(build, ours, environment))
            rows["plain"].append(timed(mkdocs, plain, environment))
        ratios = {}
        for name, what in ROWS.items():
            seconds = statistics.median(row[0] for row in rows[name])
            ratios[name] = statistics.median(
                one[0] / other[0]
                for one, other in zip(rows[name], rows["plain"], strict=True)
            )
            print(f"  {what:40}{seconds * 1000:6.0f} ms  ratio {ratios[name]:.2f}")
        memory = max(row[1] for name in ROWS if name != "plain" for row in rows[name])
        print(f"  peak memory {memory:.0f} MB (below {MOST_MEMORY:.0f})")
        print("stages, in one cold process:")
        command = [python, "-c", STAGES, str(ours), unit, str(folder / "site")]
        subprocess.run(command, cwd=ours, env=environment, check=True)
    return int(ratios["units"] > 1 or memory > MOST_MEMORY)


if __name__ == "__main__":
    sys.exit(main())
