"""Propose panels for a roof and plans for a floor."""

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, Units, catalogue

if TYPE_CHECKING:
    from coachwright.arrange.model import FloorProposal, RoofPlan
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


class By(StrEnum):
    """What a roof's panels are chosen by."""

    YEAR = "year"
    MONTH = "month"
    WATTS = "watts"


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
    by: Annotated[
        By | None,
        typer.Option(
            help="Most energy in the year, in its poorest month, or most watts.",
            show_default="the year where a site is known, else watts",
        ),
    ] = None,
    site: Annotated[
        str,
        typer.Option(
            metavar="ID", help="Whose sun counts.", show_default="the first that the brief names"
        ),
    ] = "",
    seconds: Annotated[float, typer.Option(min=0.1, help="Time for each search.")] = 10.0,
    seed: Seed = 1,
    write: Write = None,
    json: Json = False,
    units: Units = None,
) -> None:
    """Choose solar panels for the roof so that they give the most, and prove it.

    Where a site is known the most is energy under the shade of what stands on the roof, else
    watts. The build's own panels are exchanged; everything else on the roof stays. It also says
    what each obstacle costs. Ctrl-C shows the best so far.

    Example: coachwright arrange roof smith.toml --site denver-us --by month

    Example: coachwright arrange roof smith.toml --kinds 1 --write smith-solar.toml
    """
    from coachwright.actions.arranging import RoofQuestion, arrange_roof, plan_data, write_roof
    from coachwright.arrange.solving import Search
    from coachwright.cli.arranging import print_roof
    from coachwright.cli.showing import console, print_json

    question = RoofQuestion(
        panels=tuple(each.strip() for each in panels.split(",")),
        most=most,
        most_kinds=kinds,
        walkways=tuple(walkway or ()),
        mount=mount,
        by=by.value if by else "",
        site=site,
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
        print_json(plan_data(plan))
    else:
        print_roof(plan, units.value if units else plan.build.brief.units, write)


@app.command("floor")
def floor(
    context: typer.Context,
    *,
    build: BuildFile,
    modules: Annotated[
        str,
        typer.Option(
            metavar="NAME,NAME,...", help="Place only these.", show_default="every module"
        ),
    ] = "",
    pin: Annotated[
        str, typer.Option(metavar="NAME,NAME,...", help="These stay where they are.")
    ] = "",
    free: Annotated[
        str, typer.Option(metavar="NAME,NAME,...", help="These may leave the rear doors.")
    ] = "",
    turn: Annotated[
        str, typer.Option(metavar="NAME,NAME,...", help="These may be turned by a quarter.")
    ] = "",
    aisle: Annotated[
        str,
        typer.Option(metavar="LENGTH", help="Least width of the way.", show_default="passable"),
    ] = "",
    plans: Annotated[int, typer.Option(min=1, max=5, help="So many plans at most.")] = 5,
    seconds: Annotated[float, typer.Option(min=0.5, help="Time for all of them.")] = 8.0,
    seed: Seed = 1,
    plan: Annotated[int, typer.Option(min=1, help="Which of them --write takes.")] = 1,
    write: Write = None,
    json: Json = False,
    units: Units = None,
) -> None:
    """Propose clearly different floor plans, best first, or say which wishes collide.

    The build's own modules are placed anew: nothing stands in one place, zones stay free, people
    get through. Every plan is checked by the layout's rules before it is shown. Ctrl-C shows the
    best so far.

    Example: coachwright arrange floor smith.toml

    Example: coachwright arrange floor smith.toml --pin bed,galley --plan 2 --write smith-two.toml
    """
    from coachwright.actions.arranging import (
        arrange_floor,
        chosen_plan,
        floor_wish,
        proposal_data,
        write_floor,
    )
    from coachwright.arrange.solving import Search
    from coachwright.cli.arranging import print_floor
    from coachwright.cli.showing import console, print_json

    entries = catalogue(context)
    wish = floor_wish(modules=modules, pinned=pin, freed=free, turned=turn, aisle=aisle)
    with console().status("Placing the modules") as status:
        proposal: FloorProposal = arrange_floor(
            build,
            entries,
            wish,
            Search(limit_s=seconds, seed=seed),
            most=plans,
            on_better=lambda _proof: status.update("Placing the modules: there is a plan"),
            on_plan=lambda words: status.update(f"Placing the modules: {words}"),
        )
    if write is not None:
        write_floor(build, entries, chosen_plan(proposal, plan), write)
    if json:
        print_json(proposal_data(proposal))
    else:
        system = units.value if units else None
        print_floor(proposal, system, write)
