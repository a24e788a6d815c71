"""Check a build."""

from typing import Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, Units, almanac, catalogue

STOPPED = 1


def check(
    context: typer.Context,
    *,
    build: BuildFile,
    json: Json = False,
    units: Units = None,
    working: Annotated[
        str, typer.Option(metavar="NAME", help="Print how a figure was reached; 'list' names all.")
    ] = "",
    every: Annotated[
        bool,
        typer.Option(
            "--all", help="Show what is met or not applicable, too; of each rule its closest case."
        ),
    ] = False,
) -> None:
    """Say whether a build is all right: figures, and every rule that is broken or unknown.

    Leaves with 0 where no stop is broken, 1 where one is, 2 where the file cannot be read.

    Example: coachwright check smith.toml

    Example: coachwright check smith.toml --working weights.total-travelling
    """
    from coachwright.actions.checking import check as assessed
    from coachwright.actions.checking import is_stopped, report_data
    from coachwright.cli.showing import print_json

    where = catalogue(context)
    assessment = assessed(build, where, almanac(where))
    system = units.value if units is not None else assessment.build.brief.units
    if working:
        from coachwright.cli.working import print_figures, print_working

        if working == "list":
            print_figures(assessment, system)
        else:
            print_working(assessment.figure(working), system, as_json=json)
        return
    if json:
        print_json(report_data(assessment))
    else:
        from coachwright.cli.verdict import print_verdict

        print_verdict(assessment, build, system, every=every)
    if is_stopped(assessment):
        raise typer.Exit(STOPPED)
