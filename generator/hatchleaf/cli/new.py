"""``hatchleaf new``: a unit's file from a model, with a code of its own."""

from __future__ import annotations

import random
import re
from pathlib import Path
from typing import Final

import click

from hatchleaf.cli.edge import (
    open_workspace,
    reports,
    result,
    workspace_option,
)
from hatchleaf.library import UNITS
from hatchleaf.problems import Place, Problem, ProblemsFound, listed, suggestion
from hatchleaf.spec import code
from hatchleaf.workspace import Workspace

_NAME: Final = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


@click.command(
    "new", epilog="Example: hatchleaf new spring-delivery-3 --model marlpit-24"
)
@click.argument("name")
@click.option("--model", required=True, help="A model's file in unit_specs/models/.")
@workspace_option
@reports
def command(name: str, model: str, root: Path) -> None:
    """
    Write unit_specs/NAME.yml for a unit of a model.

    It gets a new code, which is its address on stickers for good.  What belongs to
    the unit alone, such as dates and label weights, waits there to be filled in.
    """
    name = name.removesuffix(".yml")
    if not _NAME.fullmatch(name):
        raise click.BadParameter(
            "small letters, digits and single hyphens, such as spring-delivery-3",
            param_hint="'NAME'",
        )
    workspace = open_workspace(root)
    target = workspace.root / UNITS / f"{name}.yml"
    shown = f"{UNITS}/{name}.yml"
    if target.exists():
        what = "is there already and stays as it is"
        raise ProblemsFound([Problem(Place(shown), "", what, hint="take another name")])
    text = _draft(workspace, model.removesuffix(".yml"))
    _write_new(target, text)
    result(f"{shown}: fill in the lines that wait there, then run: hatchleaf check")


def _draft(workspace: Workspace, model: str) -> str:
    # Here, since pydantic and pint are slow to import.
    from hatchleaf.spec import merge, source  # noqa: PLC0415
    from hatchleaf.spec.starter import starter  # noqa: PLC0415

    known = {path.stem: path for path in workspace.model_files()}
    if model not in known:
        problem = Problem(
            Place(f"{UNITS}/models"),
            "",
            f"there is no model {model!r}",
            allowed=listed(known) or "nothing yet: no model's file is here",
            hint=suggestion(model, known),
        )
        raise ProblemsFound([problem])
    tree = source.read(known[model], workspace.root)
    problems = [*merge.item_problems(tree), *merge.model_problems(tree)]
    if problems:
        raise ProblemsFound(problems)
    taken = workspace.codes()
    digits = random.SystemRandom()
    drawn = code.new(digits)
    while drawn in taken:
        drawn = code.new(digits)
    return starter(tree, model, drawn)


def _write_new(target: Path, text: str) -> None:
    """Write a file that must not be there yet, whole or not at all."""
    with target.open("x", encoding="utf-8", newline="\n") as file:
        try:
            file.write(text)
        except OSError:
            target.unlink()
            raise
