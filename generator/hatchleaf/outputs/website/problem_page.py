"""The page that the preview shows in place of a guide that cannot be made."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from hatchleaf.problems import Problem


def problem_page(problems: Sequence[Problem], style: str) -> bytes:
    """
    Return a page that lists what to put right.

    Args:
        problems: In the order of their files.

        style: Address of the style sheet.
    """
    count = "one problem" if len(problems) == 1 else f"{len(problems)} problems"
    rows = "\n".join(_row(problem) for problem in problems)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta name="robots" content="noindex, nofollow">\n'
        # A page asked for by a number that no guide had yet is served without the
        # script that reloads; it looks again by itself.
        '<meta http-equiv="refresh" content="3">\n'
        f"<title>{count.capitalize()} to put right</title>\n"
        f'<link rel="stylesheet" href="{escape(style)}">\n</head>\n<body>\n<main>\n'
        f'<article class="sheet"><div class="text">\n'
        f"<h1>{count.capitalize()} to put right</h1>\n"
        "<p>This page gives way to the guide once the files are in order.</p>\n"
        f"<ol>\n{rows}\n</ol>\n</div></article>\n</main>\n</body>\n</html>\n"
    ).encode()


def _row(problem: Problem) -> str:
    parts = [f"<p><code>{escape(str(problem.place))}</code></p>"]
    field = f"<strong>{escape(problem.field)}</strong>: " if problem.field else ""
    parts.append(f"<p>{field}{escape(problem.what)}</p>")
    if problem.allowed:
        parts.append(f"<p>Allowed: {escape(problem.allowed)}</p>")
    if problem.hint:
        parts.append(f"<p>Hint: {escape(problem.hint)}</p>")
    return f"<li>{''.join(parts)}</li>"
