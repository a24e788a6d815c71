"""The JSON schemas of the records."""

from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.showing import print_json


def schema(
    record: Annotated[
        str,
        typer.Argument(
            metavar="RECORD",
            help="part, vehicle, build, assessment or price-map.",
            show_default=False,
        ),
    ] = "",
    out: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Write the schema of every record into this folder."),
    ] = None,
) -> None:
    """Print the JSON schema of a record, or write them all.

    An editor that knows TOML schemas can check and complete a build with the schema 'build';
    'assessment' is the schema of 'coachwright check --json'.

    Example: coachwright schema part
    """
    from coachwright.actions.schemas import RECORDS, write_schemas
    from coachwright.actions.schemas import schema as schema_of

    if out is not None:
        for path in write_schemas(out):
            typer.echo(f"{path}")
    elif record:
        print_json(schema_of(record))
    else:
        typer.echo("\n".join(RECORDS))
        typer.echo("Next: coachwright schema RECORD, or coachwright schema --out DIR")
