"""
The command `hatchleaf`: its commands are loaded only when they run.

So ``--help`` and a mistyped command never wait for pydantic, pint or MkDocs.
Exit codes: 0 done, 1 problems in files, 2 a wrong command line, 130 interrupted.
"""

from __future__ import annotations

import atexit
import difflib
import gc
import importlib
import os
import sys
from collections.abc import Sequence
from typing import Final

import click

_OBJECTS_BETWEEN_LOOKS: Final = 100_000

COMMANDS: Final = {
    "new": "Write a unit's file from a model, with its own code.",
    "init": "Set up a workspace folder.",
    "check": "Check units and blocks; write nothing.",
    "build": "Build the website and phone copy of units.",
    "preview": "Show one unit in the browser, reloading on edits.",
    "explain": "Say why a block is in or out, or how a number came about.",
    "publish": "Put the website of units where owners find it.",
    "stickers": "Write the sticker sheet of a unit as PDF.",
    "print": "Write the whole guide of a unit as PDF, to be printed.",
    "private": "Write the owners' private copy: VIN, serials, keys, dates.",
    "schema": "Write JSON Schemas for editors.",
}

INTERRUPTED: Final = 130


class _Lazy(click.Group):
    """A group that knows its commands by name and imports them on use."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        return list(COMMANDS)

    def get_command(
        self,
        ctx: click.Context,  # noqa: ARG002
        cmd_name: str,
    ) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"hatchleaf.cli.{cmd_name}")
        command: click.Command = module.command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        name = args[0]
        if not name.startswith("-") and name not in COMMANDS:
            near = difflib.get_close_matches(name, COMMANDS, n=1)
            hint = f" Did you mean '{near[0]}'?" if near else ""
            ctx.fail(f"No such command '{name}'.{hint}")
        return super().resolve_command(ctx, args)

    def format_commands(
        self,
        ctx: click.Context,  # noqa: ARG002
        formatter: click.HelpFormatter,
    ) -> None:
        # The texts stand here: asking the commands would import them all.
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(
    cls=_Lazy,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="Start with: hatchleaf init --samples guides; then, there, hatchleaf build",
)
@click.version_option(package_name="hatchleaf", message="%(prog)s %(version)s")
def group() -> None:
    """Make the owner's manual of exactly one unit from its short file."""


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the command line; see the module for the exit codes."""
    # A run is short: looking for garbage at the usual rate costs a tenth of it.
    gc.set_threshold(_OBJECTS_BETWEEN_LOOKS)
    # Nor need what ends with the process be looked through as it ends.
    atexit.register(gc.freeze)
    try:
        sys.exit(
            group.main(args=arguments, prog_name="hatchleaf", standalone_mode=False)
        )
    except click.ClickException as error:
        error.show()
        sys.exit(error.exit_code)
    except (click.Abort, KeyboardInterrupt):
        # Ctrl-C: commands leave whole files only, so there is nothing to tell.
        sys.exit(INTERRUPTED)
    except BrokenPipeError:
        # Python would complain once more on flushing what nobody reads.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)
