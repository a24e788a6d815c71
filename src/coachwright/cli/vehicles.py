"""The base vehicles: list and show."""

from typing import Annotated

import typer

from coachwright.cli.choices import Json, System, catalogue
from coachwright.cli.showing import add, console, plain_text, print_json, print_record, table
from coachwright.units import shown

app = typer.Typer(
    help="The base vehicles that a build can start from.",
    no_args_is_help=True,
    epilog="Example: coachwright vehicles show eu-l3h2-3500",
)
ShownIn = Annotated[System, typer.Option("--units", help="Show metric or US customary units.")]


@app.command("list")
def list_vehicles(
    context: typer.Context, json: Json = False, units: ShownIn = System.METRIC
) -> None:
    """List the base vehicles with their ratings and sizes.

    The wheelbase, the overall height and the gross rating tell them apart; a build names one by
    its id.

    Example: coachwright vehicles list --units us
    """
    from coachwright.actions.looking import vehicle_rows

    rows = vehicle_rows(catalogue(context))
    if json:
        print_json(rows)
        return
    listed = table(
        "id", "market", "gross", "wheelbase", "height", "seats", right=(2, 3, 4, 5), whole=(0,)
    )
    for row in rows:
        add(
            listed,
            row.id,
            row.market,
            shown(row.gross_kg, "kg", units),
            shown(row.wheelbase_mm, "mm", units),
            shown(row.height_mm, "mm", units),
            f"{row.seats}",
        )
    screen = console()
    screen.print(listed)
    screen.print("Next: coachwright vehicles show ID, or coachwright new NAME.toml --vehicle ID")


@app.command("show")
def show_vehicle(
    context: typer.Context,
    vehicle_id: Annotated[
        str, typer.Argument(metavar="ID", help="A vehicle's id.", show_default=False)
    ],
    json: Json = False,
    units: ShownIn = System.METRIC,
) -> None:
    """Show everything that is known of one base vehicle.

    What its maker does not state is left out here, and a rule that needs it says unknown.

    Example: coachwright vehicles show us-148-high-9070 --units us
    """
    found = catalogue(context)
    vehicle = found.vehicle(vehicle_id)
    origin = found.origin("vehicles", vehicle_id)
    if json:
        data = vehicle.model_dump(mode="json", by_alias=True, exclude_none=True)
        print_json({"origin": origin, **data})
        return
    screen = console()
    screen.print(plain_text(vehicle.name, style="bold"))
    screen.print(plain_text(f"{vehicle.id} ({origin})"))
    print_record(vehicle, units, skip=frozenset({"id", "name"}))
