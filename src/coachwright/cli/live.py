"""Live aboard: days of independence, warmth, cooling and drying by month at a site."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, Units, almanac, catalogue

if TYPE_CHECKING:
    from rich.console import Console

    from coachwright.actions.living_aboard import Lived

_WEEK_D = 7
_CAUTION = (
    "Whatever burns needs air, an exhaust and an alarm beside it, as its maker and local codes "
    "say. This is a computed year: weather and people differ from it."
)


def live(
    context: typer.Context,
    *,
    build: BuildFile,
    site: Annotated[
        str, typer.Option(metavar="ID", help="A site, instead of the brief's own.")
    ] = "",
    start: Annotated[
        str, typer.Option(metavar="MM-DD", help="First day of the table of steps.")
    ] = "01-01",
    days: Annotated[int, typer.Option(help="Days of the table of steps.")] = _WEEK_D,
    csv: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write steps of ten minutes to a table.")
    ] = None,
    changes: Annotated[
        bool, typer.Option("--changes", help="Say what a panel, a battery, insulation, shade do.")
    ] = False,
    json: Json = False,
    units: Units = None,
) -> None:
    """Show how long, how warm, how cool and how dry it is aboard, month by month.

    Example: coachwright live smith.toml

    Example: coachwright live smith.toml --site oslo-no --changes

    Example: coachwright live smith.toml --start 01-10 --days 5 --csv january.csv
    """
    from coachwright.actions.living_aboard import live as lived_at
    from coachwright.actions.living_aboard import write_steps
    from coachwright.cli.showing import console, print_json

    screen = console()
    where = catalogue(context)
    weather = almanac(where)
    with screen.status("Walking through the year"):
        found = lived_at(build, where, weather, site=site, changes=changes)
        if csv is not None:
            write_steps(found, weather, csv, start=start, days=days)
    if json:
        print_json({"living": found.living, "changes": found.changes, "promise": found.promise})
        return
    system = units.value if units is not None else found.assessment.build.brief.units
    print_lived(screen, found, system)
    if csv is not None:
        typer.echo(f"{csv} holds {days} days, step by step.")


def print_lived(screen: "Console", found: "Lived", system: str) -> None:
    """Print a year at a site: months, days, changes, and what the weather may be off by."""
    from coachwright.actions.living_aboard import month_rows
    from coachwright.cli.showing import add, plain_text, table
    from coachwright.units import worded

    year, summary = found.year, found.assessment.summary
    screen.print(plain_text(f"{summary.name} at {year.title}", style="bold"))
    screen.print(plain_text(f"a typical year, {year.origin}, under the brief's stay pattern"))
    rows = month_rows(year, system)
    stays = table("", "9 of 10", "5 of 10", "1 of 10", "comfort", "inside", right=range(1, 6))
    for row in rows:
        add(stays, row.month, row.nine, row.five, row.one, row.comfort, row.inside)
    screen.print(stays)
    screen.print(
        plain_text(
            "9, 5 and 1 of 10 stays begun in the month last at least so many days without driving "
            "or hook-up; + where following ended."
        )
    )
    energy = table(
        "", "sun", "driving", "hook-up", "used", "not served", "fuel", right=range(1, 7)
    )
    for row in rows:
        add(energy, row.month, row.sun, row.drive, row.hookup, row.use, row.unmet, row.fuel)
    screen.print(energy)
    if found.promise:
        screen.print(plain_text(worded(found.promise, system), style="bold"))
    _print_days(screen, found, system)
    _print_changes(screen, found, system)
    for line in (year.caution, year.attribution):
        if line:
            screen.print(plain_text(worded(line, system)))
    screen.print(plain_text(_CAUTION))


def _print_days(screen: "Console", found: "Lived", system: str) -> None:
    from coachwright.cli.showing import plain_text, show
    from coachwright.units import worded

    for figure in found.living.figures:
        if "-at-" in figure.name:
            continue
        value = show(figure.value, figure.unit, system)
        told = figure.missing if figure.value is None else value
        screen.print(plain_text(f"{worded(figure.label, system)}: {worded(told, system)}"))


def _print_changes(screen: "Console", found: "Lived", system: str) -> None:
    from coachwright.cli.showing import add, show, table
    from coachwright.units import worded

    if not found.changes:
        return
    fuel = "kg" if found.year.fuel_by_mass else "L"
    listed = table("with", "9 of 10", "was", "fuel", "was", "comfort", "was", right=range(1, 7))
    for each in found.changes:
        add(
            listed,
            worded(each.name, system),
            show(each.nine_of_ten_d, "d", system),
            show(each.was_nine_of_ten_d, "d", system),
            show(each.fuel_l, fuel, system),
            show(each.was_fuel_l, fuel, system),
            show(each.comfort_frac, "frac", system),
            show(each.was_comfort_frac, "frac", system),
        )
    screen.print(listed)
