"""The parts of the catalogue: list, show, import."""

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import Json, System, catalogue, shop_folder
from coachwright.cli.showing import (
    add,
    console,
    plain_text,
    print_json,
    print_record,
    table,
    words,
)
from coachwright.units import shown

if TYPE_CHECKING:
    from coachwright.actions.importing import ImportPlan, PlannedPart
    from coachwright.model.part import Part

app = typer.Typer(
    help="The parts that a build can be made of: the shipped ones and the shop's own.",
    no_args_is_help=True,
    epilog="Example: coachwright parts list --facet battery",
)
ShownIn = Annotated[System, typer.Option("--units", help="Show metric or US customary units.")]


class Currency(StrEnum):
    """In which prices are shown."""

    EUR = "EUR"
    GBP = "GBP"
    USD = "USD"


_MOST_SHOWN = 12
"""Parts of an import that are listed one by one."""


@app.command("list")
def list_parts(
    context: typer.Context,
    *,
    facet: Annotated[
        str, typer.Option(help="Only parts with this facet, such as battery or tank.")
    ] = "",
    search: Annotated[
        str, typer.Option(help="Only parts whose id, name or description hold these words.")
    ] = "",
    currency: Annotated[Currency, typer.Option(help="Show prices in it.")] = Currency.EUR,
    json: Json = False,
    units: ShownIn = System.METRIC,
) -> None:
    """List parts; a build names one by its id.

    Example: coachwright parts list --facet solar_panel

    Example: coachwright parts list --search "window 900"
    """
    from coachwright.actions.looking import part_rows

    rows = part_rows(catalogue(context), facet=facet, search=search)
    if json:
        print_json(rows)
        return
    screen = console()
    if not rows:
        screen.print("No part is like that. Next: coachwright parts list shows them all.")
        return
    listed = table("id", "mass", "price", "facets", right=(1, 2))
    for row in rows:
        own = "" if row.origin == "shipped" else f" ({row.origin})"
        add(
            listed,
            f"{row.id}{own}",
            shown(row.mass_kg, "kg", units),
            ", ".join(price for price in row.prices if price.endswith(currency)),
            ", ".join(words(facet) for facet in row.facets),
        )
    screen.print(listed)
    screen.print(f"{len(rows)} parts. Next: coachwright parts show ID")


@app.command("show")
def show_part(
    context: typer.Context,
    part_id: Annotated[str, typer.Argument(metavar="ID", help="A part's id.", show_default=False)],
    json: Json = False,
    units: ShownIn = System.METRIC,
) -> None:
    """Show everything that is known of one part, facet by facet, and where it comes from.

    Example: coachwright parts show lfp-100 --units us
    """
    found = catalogue(context)
    part = found.part(part_id)
    origin = found.origin("parts", part_id)
    if json:
        data = part.model_dump(mode="json", by_alias=True, exclude_none=True)
        print_json({"origin": origin, **data})
        return
    _print_part(part, origin, units)


def _print_part(part: "Part", origin: str, units: str) -> None:
    screen = console()
    screen.print(plain_text(part.name, style="bold"))
    screen.print(plain_text(f"{part.id} ({origin})"))
    if part.description:
        screen.print(plain_text(part.description))
    print_record(part, units, skip=frozenset({"id", "name", "description"}))


@app.command("import")
def import_parts(
    context: typer.Context,
    *,
    prices: Annotated[
        Path,
        typer.Argument(metavar="FILE", help="A price list, .csv or .xlsx.", show_default=False),
    ],
    map_file: Annotated[
        Path,
        typer.Option(
            "--map", metavar="MAP.toml", help="Which column is which field.", show_default=False
        ),
    ],
    accept_good_rows: Annotated[
        bool, typer.Option("--accept-good-rows", help="Write the good rows although some are not.")
    ] = False,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Say what would be done and write nothing.")
    ] = False,
    json: Json = False,
) -> None:
    """Read a supplier's price list into the shop's own parts.

    Every fault of every row is shown; nothing is written while there is one, unless
    --accept-good-rows is given. A part that is there keeps its comments and all that the list
    does not give. A shop's part with the id of a shipped one takes its place, and this is said.

    Example: coachwright parts import prices.csv --map supplier.toml --dry-run
    """
    from coachwright.actions.importing import plan_import, write_import
    from coachwright.errors import PriceListError

    screen = console()
    folder = shop_folder(context)
    with screen.status(f"Reading {prices}"):
        plan = plan_import(prices, map_file, catalogue(context, new=True), folder)
    if plan.faults and not accept_good_rows:
        raise PriceListError(plan.faults)
    for fault in plan.faults:
        typer.echo(fault.sentence(), err=True)
    written = () if dry_run else write_import(plan)
    if json:
        print_json(_plan_data(plan, written))
        return
    _print_plan(plan, dry_run=dry_run)


def _plan_data(plan: "ImportPlan", written: tuple[Path, ...]) -> dict[str, object]:
    return {
        "file": plan.file,
        "rows": plan.rows,
        "parts": [
            {
                "id": part.id,
                "name": part.name,
                "row": part.row,
                "action": part.action,
                "changes": part.changes,
            }
            for part in plan.parts
        ],
        "faults": plan.faults,
        "written": written,
    }


def _print_plan(plan: "ImportPlan", *, dry_run: bool) -> None:
    screen = console()
    listed = [part for part in plan.parts if part.action != "unchanged"]
    for part in listed[:_MOST_SHOWN]:
        screen.print(f"{part.id}: {_words_of(part)}", markup=False)
    if len(listed) > _MOST_SHOWN:
        screen.print("... and so on; --json lists them all")
    for part in listed:
        if part.action == "overrides":
            screen.print(
                f"{part.id} takes the place of the shipped part with this id", markup=False
            )
    counted = f"{plan.rows} rows, {len(listed)} parts new or changed, {len(plan.faults)} faults"
    done = "nothing was written (dry run)" if dry_run else f"in {plan.folder / 'parts'}"
    screen.print(f"{counted}; {done}", markup=False)
    screen.print("Next: coachwright parts show ID")


def _words_of(part: "PlannedPart") -> str:
    if part.action == "new":
        return f"new, {part.name}"
    return "; ".join(f"{c.field} {c.before} → {c.after}" for c in part.changes)
