"""``hatchleaf init``: a workspace's folders and files, nothing ever overwritten."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Final

import click

from hatchleaf.cli.edge import progress, reports, result
from hatchleaf.library import CONTENT, UNITS, builtin
from hatchleaf.workspace import CACHE, SETTINGS

_SETTINGS: Final = f"""\
# The dealership's settings; hatchleaf check tells what is missing here.
site_name: ""  # the dealership's name, such as Two Herons
site_url: ""  # https://HOST/ of the published guides; it stands on every sticker
docs_dir: {UNITS}  # MkDocs wants a folder; nothing in it is published
plugins:
  - hatchleaf:
      phone: ""  # the dealership's number, such as 555-0142
"""
_OWN_CONTENT: Final = """\
Blocks of your own: Markdown files named by their ids, in folders as you like.
They are laid over the built-in ones by id. A block that replaces a built-in one
says so in its head; 'hatchleaf check' tells what to write there.
"""
_MODELS: Final = """\
A model's file, NAME.yml, states what all units of the model have. A unit's file in
the folder above is based on it: hatchleaf new UNIT --model NAME
"""
_SITE_IGNORED: Final = "*\n!.gitignore\n"
_IGNORED: Final = (f"{CACHE}/", "printed-out/", "/private/")
_FIRST_STEPS: Final = "fill in mkdocs.yml, add a model, then run: hatchleaf check"
_SAMPLES_NEXT: Final = "now run: hatchleaf build"


@click.command("init", epilog="Example: hatchleaf init --samples guides")
@click.argument(
    "folder",
    metavar="[DIR]",
    default=".",
    type=click.Path(file_okay=False, path_type=Path),
)
@click.option(
    "--samples", is_flag=True, help="Put the sample models, units and settings there."
)
@reports
def command(folder: Path, *, samples: bool) -> None:
    """
    Make a workspace of DIR (this folder when left out).

    What is there already stays as it is.
    """
    files = dict(_files())
    if samples:
        files |= _samples()
    for name, content in files.items():
        _put(folder / name, content)
    _add_lines(folder / ".gitignore", _IGNORED)
    result(f"{folder}: {_SAMPLES_NEXT if samples else _FIRST_STEPS}")


def _files() -> Iterator[tuple[str, bytes]]:
    yield SETTINGS, _SETTINGS.encode()
    yield f"{UNITS}/models/README.txt", _MODELS.encode()
    yield f"{CONTENT}/README.txt", _OWN_CONTENT.encode()
    yield "site/.gitignore", _SITE_IGNORED.encode()


def _samples() -> dict[str, bytes]:
    source = builtin()
    found = [*(source / UNITS).glob("*.yml"), *(source / UNITS).glob("models/*.yml")]
    found += (source / UNITS / "photos").glob("*.*")
    return {
        path.relative_to(source).as_posix(): path.read_bytes()
        for path in [source / SETTINGS, *sorted(found)]
    }


def _put(path: Path, content: bytes) -> None:
    """Write a file that is not there yet, whole or not at all."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        file = path.open("xb")
    except FileExistsError:
        if not path.is_file() or path.read_bytes() != content:
            progress(f"{path} is there already and stays as it is")
        return
    with file:
        try:
            file.write(content)
        except OSError:
            path.unlink()
            raise


def _add_lines(path: Path, lines: tuple[str, ...]) -> None:
    """Add the lines that a file lacks at its end."""
    text = path.read_text("utf-8") if path.exists() else ""
    missing = [line for line in lines if line not in text.splitlines()]
    if missing:
        start = "\n" if text and not text.endswith("\n") else ""
        with path.open("a", encoding="utf-8", newline="\n") as file:
            file.write(start + "".join(f"{line}\n" for line in missing))
