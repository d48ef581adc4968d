"""Read all blocks, say what is wrong, and print the samples' guides as text."""

from __future__ import annotations

import sys
from pathlib import Path

from hatchleaf.blocks.reading import read_library
from hatchleaf.problems import ProblemsFound


def main() -> None:
    root = Path.cwd()
    try:
        library = read_library([root / "content_blocks"], root)
    except ProblemsFound as found:
        print(found)
        print(len(found.problems), "problems")
        sys.exit(1)
    from hatchleaf.manual.make import make
    from hatchleaf.spec.load import load_unit

    for unit in sys.argv[1:] or ["heron-a", "heron-b", "heron-c"]:
        try:
            loaded = load_unit(root / f"unit_specs/{unit}.yml", root)
            made = make(
                loaded,
                library,
                dealer_name="Two Herons",
                dealer_phone="555-0142",
            )
        except ProblemsFound as found:
            print(found)
            print(unit, len(found.problems), "problems")
            continue
        out = root / ".hatchleaf" / f"{unit}.txt"
        out.parent.mkdir(exist_ok=True)
        lines = []
        for text in made.manual.topics:
            lines.append(
                f"\n===== {text.topic.number:03d} {text.topic.title}  [{text.where}]"
            )
            if text.normal:
                lines.append(f"NORMAL: {text.normal.markdown}")
            lines += [f"TILE: {t.says} {t.value} {t.note}" for t in text.tiles]
            lines += [
                f"STICKER: {s.place_id} | {s.signal} | {s.line} | {s.fact} | {s.extra}"
                for s in text.stickers
            ]
            lines += [f"--- {p.id}\n{p.markdown}" for p in text.parts]
        for journey, steps in made.manual.steps.items():
            lines.append(f"\n===== journey {journey}")
            lines += [f"{s.phase} {s.rank} {s.markdown}  <{s.block}>" for s in steps]
        out.write_text("\n".join(lines))
        print(unit, "good:", len(made.pages.pages), "pages ->", out)


main()
