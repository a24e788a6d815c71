"""Propose panels for a roof and plans for a floor."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, Units, catalogue

if TYPE_CHECKING:
    from coachwright.arrange.model import RoofPlan
    from coachwright.arrange.solving import Proof

app = typer.Typer(
    help="Propose panels for a roof and plans for a floor.",
    no_args_is_help=True,
)

Seed = Annotated[int, typer.Option(min=0, help="Of the solver's chance.")]
Write = Annotated[
    Path | None,
    typer.Option(metavar="FILE.toml", help="Write a copy of the build with the proposal."),
]


@app.command("roof")
def roof(
    context: typer.Context,
    *,
    build: BuildFile,
    panels: Annotated[
        str, typer.Option(metavar="ID,ID,...", help="Panels to choose from; all of them.")
    ] = "all",
    most: Annotated[
        int | None, typer.Option(min=1, help="At most so many of each.", show_default="any")
    ] = None,
    kinds: Annotated[
        int | None, typer.Option(min=1, help="Mix at most so many kinds.", show_default="any")
    ] = None,
    mount: Annotated[
        str,
        typer.Option(
            metavar="ID",
            help="Part under each rigid panel, or none.",
            show_default="what is under them now",
        ),
    ] = "",
    walkway: Annotated[
        list[str] | None,
        typer.Option(metavar="FROM:TO", help="Strip across the roof to keep free; repeatable."),
    ] = None,
    seconds: Annotated[float, typer.Option(min=0.1, help="Time for each search.")] = 10.0,
    seed: Seed = 1,
    write: Write = None,
    json: Json = False,
    units: Units = None,
) -> None:
    """Choose solar panels for the roof so that they give the most watts, and prove it.

    The build's own panels are exchanged; everything else on the roof stays. It also says how many
    watts each obstacle costs. Ctrl-C shows the best so far.

    Example: coachwright arrange roof smith.toml

    Example: coachwright arrange roof smith.toml --kinds 1 --write smith-solar.toml
    """
    from coachwright.actions.arranging import RoofQuestion, arrange_roof, write_roof
    from coachwright.arrange.solving import Search
    from coachwright.cli.arranging import print_roof
    from coachwright.cli.showing import console, print_json

    question = RoofQuestion(
        panels=tuple(each.strip() for each in panels.split(",")),
        most=most,
        most_kinds=kinds,
        walkways=tuple(walkway or ()),
        mount=mount,
    )
    entries = catalogue(context)
    with console().status("Packing the roof") as status:

        def better(proof: "Proof") -> None:
            status.update(f"Packing the roof: {proof.value} so far, at most {proof.bound}")

        plan: RoofPlan = arrange_roof(
            build,
            entries,
            question,
            Search(limit_s=seconds, seed=seed),
            on_better=better,
            on_obstacle=lambda name: status.update(f"Packing the roof without {name}"),
        )
    if write is not None:
        write_roof(build, entries, plan, write)
    if json:
        print_json(plan)
    else:
        print_roof(plan, units.value if units else plan.build.brief.units, write)
