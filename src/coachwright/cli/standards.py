"""The shop's standard builds and their options: list and show."""

from typing import Annotated

import typer

from coachwright.cli.choices import Json, catalogue
from coachwright.cli.showing import add, console, plain_text, print_json, table

app = typer.Typer(
    help="The shop's range: standard builds and the options offered with each.",
    no_args_is_help=True,
    epilog="Example: coachwright standards list",
)


@app.command("list")
def list_standards(context: typer.Context, json: Json = False) -> None:
    """List the standard builds that a build can start from.

    Example: coachwright standards list --json
    """
    from coachwright.actions.looking import standard_rows

    rows = standard_rows(catalogue(context))
    if json:
        print_json(rows)
        return
    screen = console()
    if not rows:
        screen.print(
            "There are no standard builds yet. Next: put one into the shop's folder as "
            "standards/ID.toml; any build file will do."
        )
        return
    listed = table("id", "name", "vehicle", "fittings", "options", right=(3,), whole=(0,))
    for row in rows:
        add(
            listed,
            row.id,
            row.name,
            row.vehicle,
            f"{row.fittings}",
            ", ".join(row.options) or "none",
        )
    screen.print(listed)
    screen.print("Next: coachwright new NAME.toml --standard ID")


@app.command("show")
def show_standard(
    context: typer.Context,
    standard_id: Annotated[
        str, typer.Argument(metavar="ID", help="A standard build's id.", show_default=False)
    ],
    json: Json = False,
) -> None:
    """Show a standard build: what is fitted, and each option with what it needs and excludes.

    Example: coachwright standards show weekender
    """
    found = catalogue(context)
    standard = found.standard(standard_id)
    if json:
        data = standard.model_dump(mode="json", by_alias=True, exclude_none=True)
        print_json({"origin": found.origin("standards", standard_id), **data})
        return
    screen = console()
    origin = found.origin("standards", standard_id)
    screen.print(plain_text(f"{standard.name} ({origin})", style="bold"))
    if standard.story:
        screen.print(plain_text(" ".join(standard.story.split())))
    fittings = table("fitting", "part", "mounting")
    for fitting in standard.fittings:
        add(fittings, fitting.name, fitting.part, fitting.mounting)
    screen.print(fittings)
    for option in standard.offers:
        screen.print(plain_text(f"option {option.name}: {option.title}", style="bold"))
        if option.requires:
            screen.print(plain_text(f"  needs {', '.join(option.requires)}"))
        for exclusion in option.excludes:
            screen.print(plain_text(f"  excludes {exclusion.option}: {exclusion.cause}"))
