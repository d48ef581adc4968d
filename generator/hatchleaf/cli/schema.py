"""``hatchleaf schema``: JSON Schemas that help an editor while typing."""

from __future__ import annotations

import json
from pathlib import Path

import click

from hatchleaf.cli.edge import print_json, reports, result


@click.command("schema", epilog="Example: hatchleaf schema --to .")
@click.option(
    "--to",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="A folder for unit.schema.json and model.schema.json.",
)
@reports
def command(to: Path | None) -> None:
    """
    Print the JSON Schemas of units' and models' files, or write them to a folder.

    They help while typing; `hatchleaf check` is the judge.
    """
    # Here, since pydantic is slow to import.
    from hatchleaf.outputs.land import land_file  # noqa: PLC0415
    from hatchleaf.spec.schema import of_models, of_units  # noqa: PLC0415

    schemas = {"unit": of_units(), "model": of_models()}
    if to is None:
        print_json(schemas)
        return
    for name, schema in schemas.items():
        text = json.dumps(schema, indent=2, ensure_ascii=False) + "\n"
        path = to / f"{name}.schema.json"
        land_file(path, text.encode())
        result(str(path))
