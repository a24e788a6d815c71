"""Begin a new build."""

from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.choices import Region, catalogue


def new(
    context: typer.Context,
    name: Annotated[
        Path, typer.Argument(metavar="NAME.toml", help="The new file.", show_default=False)
    ],
    vehicle: Annotated[
        str,
        typer.Option(metavar="ID", help="Base vehicle ('coachwright vehicles list')."),
    ] = "",
    jurisdiction: Annotated[
        Region | None, typer.Option(help="Whose rules apply.", show_default="the vehicle's market")
    ] = None,
    standard: Annotated[
        str,
        typer.Option(metavar="ID", help="Standard build to start from ('standards list')."),
    ] = "",
) -> None:
    """Write a starter build with comments; it checks without faults as it stands.

    A file that is there already is never overwritten.

    Example: coachwright new smith.toml --jurisdiction uk

    Example: coachwright new smith.toml --vehicle eu-l3h2-3500
    """
    from coachwright.actions.starting import new_build

    new_build(
        name,
        catalogue(context),
        vehicle=vehicle,
        jurisdiction="" if jurisdiction is None else jurisdiction.value,
        standard=standard,
    )
    typer.echo(f"{name} is written. Next: open it, then coachwright check {name}")
