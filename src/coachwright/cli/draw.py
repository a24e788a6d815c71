"""Draw one view of a build."""

from datetime import datetime
from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, catalogue

_VIEWS = (
    "plan, plan@hip, plan@bed, left, right, rear, rear-open, roof, under, side, side@right, iso, "
    "section@x (behind the front axle: section@2400, or with its unit), setting-out, findings, all"
)


def draw(
    context: typer.Context,
    *,
    build: BuildFile,
    out: Annotated[
        Path,
        typer.Option("--out", "-o", metavar="FILE", help="The file: .svg, .dxf, .pdf or .glb."),
    ],
    view: Annotated[str, typer.Option(metavar="NAME", help=f"What to draw: {_VIEWS}.")] = "plan",
    date: Annotated[
        datetime | None,
        typer.Option(formats=["%Y-%m-%d"], help="The date for the title block."),
    ] = None,
    json: Json = False,
) -> None:
    """Draw one view on a sheet at a stated scale, or the whole build as a 3-D file.

    A .dxf holds the drawing in millimetres at true size, on layers named by trade; a .glb always
    holds the whole build. The file is written beside its place and takes it only when complete.

    Example: coachwright draw smith.toml --view plan@hip -o plan.pdf

    Example: coachwright draw smith.toml --view section@2400 -o section.dxf

    Example: coachwright draw smith.toml -o smith.glb
    """
    from coachwright.actions.drawing import draw as draw_file
    from coachwright.cli.showing import console, print_json

    with console().status(f"Drawing {out.name}"):
        written = draw_file(
            build, catalogue(context), out, view=view, date=date.date() if date else None
        )
    if json:
        print_json({"written": [written]})
        return
    typer.echo(f"{written}")
