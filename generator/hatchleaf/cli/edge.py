"""What all commands share at the edge: the workspace, problems printed, exit codes."""

from __future__ import annotations

import contextlib
import functools
import json
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping, MutableMapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, ParamSpec

import click

from hatchleaf.cli.second import Alone, Help
from hatchleaf.library import UNITS
from hatchleaf.problems import Place, Problem, ProblemsFound
from hatchleaf.workspace import SETTINGS, Workspace

if TYPE_CHECKING:
    from hatchleaf.blocks.model import Library
    from hatchleaf.manual.make import Made
    from hatchleaf.spec.load import LoadedUnit

PROBLEMS: Final = 1

P = ParamSpec("P")

workspace_option = click.option(
    "--workspace",
    "root",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    default=".",
    show_default=True,
    help="The folder with mkdocs.yml, unit_specs/ and content_blocks/.",
)
json_option = click.option(
    "--json", "as_json", is_flag=True, help="Print the result as JSON."
)


def progress(text: str) -> None:
    """Say on standard error what is going on; results alone go to standard output."""
    click.echo(text, err=True)


def result(text: str) -> None:
    """Print a result."""
    click.echo(text)


def as_data(problem: Problem) -> dict[str, Any]:
    """Return a problem as data for ``--json``."""
    return {
        "file": problem.place.file,
        "line": problem.place.line,
        "column": problem.place.column,
        "field": problem.field,
        "what": problem.what,
        "allowed": problem.allowed,
        "hint": problem.hint,
        "severity": problem.severity,
    }


def print_json(data: object) -> None:
    """Print *data* as JSON, keys in the order they were made."""
    click.echo(json.dumps(data, indent=2, ensure_ascii=False))


def print_problems(problems: Iterable[Problem], ending: str) -> None:
    """Print all problems and notes, then how many, on standard error."""
    shown = list(problems)
    for problem in shown:
        click.echo(str(problem), err=True)
    count = sum(problem.severity == "problem" for problem in shown)
    if count:
        word = "problem" if count == 1 else "problems"
        click.echo(f"{count} {word}; {ending}", err=True)


def reports(command: Callable[P, None]) -> Callable[P, None]:
    """Print the problems that *command* meets, and exit with 1; nothing else."""

    @functools.wraps(command)
    def wrapped(*args: P.args, **kwargs: P.kwargs) -> None:
        try:
            command(*args, **kwargs)
        except ProblemsFound as found:
            if kwargs.get("as_json"):
                print_json({"problems": [as_data(p) for p in found.problems]})
            else:
                print_problems(found.problems, "nothing written")
            sys.exit(PROBLEMS)
        except BrokenPipeError:
            raise  # whoever read our output has seen enough; see `main`
        except OSError as error:
            # A full disk or a folder without permission: no bug of ours.
            what = (error.strerror or str(error)).lower()
            if kwargs.get("as_json"):
                problem = Problem(Place(str(error.filename or "")), "", what)
                print_json({"problems": [as_data(problem)]})
            else:
                where = f"{error.filename}: " if error.filename else ""
                click.echo(f"hatchleaf: {where}{what}", err=True)
            sys.exit(PROBLEMS)

    return wrapped


def open_workspace(root: Path) -> Workspace:
    """
    Return the workspace at *root*, with its cache in use.

    Raises:
        ProblemsFound: There is none, so nothing is to be left there either.
    """
    workspace = Workspace(root.resolve())
    if not (workspace.root / SETTINGS).is_file():
        what = "there is no such file, so this is no workspace"
        hint = "run 'hatchleaf init' to make one, or name it by --workspace"
        raise ProblemsFound([Problem(Place(SETTINGS), "", what, hint=hint)])
    workspace.keep_units_cached()
    return workspace


@contextlib.contextmanager
def known_engine() -> Iterator[None]:
    """
    Tell of an MkDocs that our pages were not tested with.

    Raises:
        ClickException: Names the version found and the one needed.
    """
    try:
        yield
    except RuntimeError as error:
        from hatchleaf.outputs.website import engine  # noqa: PLC0415  # slow

        if isinstance(error, engine.WrongEngineError):
            raise click.ClickException(str(error)) from None
        raise


@dataclass(frozen=True)
class Unit:
    """One unit: its file, its spec and everything made from it."""

    file: Path
    loaded: LoadedUnit
    made: Made


def gathered(
    workspace: Workspace, units: Iterable[str], helper: Help | None = None
) -> list[Unit]:
    """
    Return every unit asked for, made.

    Args:
        workspace: Where its units and content are.
        units: The units' names or codes.
        helper: Who reads the library; this process when left out.

    Raises:
        ProblemsFound: The problems of all units together.
    """
    problems: list[Problem] = []
    with gathering(problems):
        workspace.settings  # noqa: B018  # its problems belong to this list
    # Units first: a second process may be reading the library meanwhile.
    loaded: dict[Path, LoadedUnit] = {}
    for unit in units:
        with gathering(problems):
            file = workspace.unit_file(unit)
            if file not in loaded:
                loaded[file] = workspace.load(file.stem)
    library: Library | None = None
    with gathering(problems):
        library = (helper or Alone()).library(workspace)
    done = _all_made(workspace, library, loaded, problems) if library else []
    problems.extend(_same_codes(workspace, done))
    if problems:
        raise ProblemsFound(problems)
    return done


@contextlib.contextmanager
def gathering(problems: list[Problem]) -> Iterator[None]:
    """Add the problems that are met to a list, so that the next look is taken."""
    try:
        yield
    except ProblemsFound as found:
        problems.extend(found.problems)


def _all_made(
    workspace: Workspace,
    library: Library,
    loaded: Mapping[Path, LoadedUnit],
    problems: list[Problem],
) -> list[Unit]:
    from hatchleaf.manual.kept import Kept  # noqa: PLC0415  # slow with its package

    done: list[Unit] = []
    with Kept(workspace.cache / "fragments.json") as kept:
        for file, unit in loaded.items():
            with gathering(problems):
                made = _made(workspace, library, unit, kept)
                done.append(Unit(file, unit, made))
    return done


def _same_codes(workspace: Workspace, units: Iterable[Unit]) -> Iterator[Problem]:
    """Yield the units whose code is also another's: their stickers would lie."""
    codes = workspace.codes_by_file()
    for unit in units:
        for file, code in codes.items():
            if code == unit.loaded.spec.code and file != unit.file:
                yield Problem(
                    unit.loaded.place_of("code"),
                    "code",
                    f"{UNITS}/{file.name} has the same code",
                    hint="'hatchleaf new' gives each unit its own",
                )


def _made(
    workspace: Workspace,
    library: Library,
    loaded: LoadedUnit,
    kept: MutableMapping[str, str],
) -> Made:
    from hatchleaf.manual.make import make  # noqa: PLC0415  # slow
    from hatchleaf.photo_files import photo_sources  # noqa: PLC0415  # few need it

    settings = workspace.settings
    return make(
        loaded,
        library,
        dealer_name=settings.site_name,
        dealer_phone=settings.phone,
        kept=kept,
        photos=photo_sources(loaded, workspace.root, workspace.cache),
        statement_checked=settings.checked_in_words,
    )


def units_or_all(workspace: Workspace, units: tuple[str, ...]) -> tuple[str, ...]:
    """Return *units*, or every unit of the workspace when none is named."""
    return units or tuple(path.stem for path in workspace.unit_files())


def check_pdf_target(to: Path, workspace: Workspace) -> None:
    """
    Refuse a file that is no PDF, has no folder or would be published.

    Raises:
        BadParameter: Says which of them.
    """
    where = "'--to'"
    if to.suffix.lower() != ".pdf":
        raise click.BadParameter("the file's name has to end in .pdf", param_hint=where)
    if not to.parent.is_dir():
        raise click.BadParameter(
            f"there is no folder {str(to.parent)!r}", param_hint=where
        )
    if to.resolve().is_relative_to(workspace.site.resolve()):
        raise click.BadParameter(
            "nothing is kept in the site folder but what build writes there",
            param_hint=where,
        )
