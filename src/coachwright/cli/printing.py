"""Print the job pack."""

from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, almanac, catalogue


def print_papers(
    context: typer.Context,
    *,
    build: BuildFile,
    out: Annotated[
        Path, typer.Option("--out", "-o", metavar="DIR", help="The folder; it is made if needed.")
    ],
    only: Annotated[
        list[str] | None,
        typer.Option(
            metavar="NAME", help="Only this document, such as weight-statement; may be repeated."
        ),
    ] = None,
    json: Json = False,
) -> None:
    """Print the job pack: statements, sheets, lists and the calculation appendix.

    The papers are all written or none is, and what is there is replaced only at the end. A build
    with broken stops is printed too: its papers say so.

    Example: coachwright print smith.toml -o out

    Example: coachwright print smith.toml -o out --only weight-statement
    """
    from coachwright.actions.printing import document_names, print_pack
    from coachwright.cli.showing import console, print_json

    names = document_names(tuple(only or ()))
    screen = console()
    where = catalogue(context)
    with screen.status("Reading the build") as status:
        written = print_pack(
            build,
            where,
            out,
            names=names,
            on_document=lambda name: status.update(f"Printing {name}"),
            almanac=almanac(where, changes=True),
        )
    if json:
        print_json({"written": written})
        return
    for path in written:
        typer.echo(f"{path}")
    typer.echo(f"Next: open the papers in {out} and read them line by line.")
