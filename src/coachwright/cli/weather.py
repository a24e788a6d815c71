"""The weather of sites: add, list, show."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import Json, System, catalogue, shop_folder
from coachwright.cli.showing import add, console, plain_text, print_json, show, table
from coachwright.units import shown, worded

if TYPE_CHECKING:
    from coachwright.actions.weather import WeatherSheet

app = typer.Typer(
    help="The sites whose weather is known: typical years, synthetic years, the shop's own files.",
    no_args_is_help=True,
    epilog="Example: coachwright weather list --search denver",
)
ShownIn = Annotated[System, typer.Option("--units", help="Show metric or US customary units.")]


@app.command("add")
def add_file(
    context: typer.Context,
    *,
    file: Annotated[
        Path,
        typer.Argument(
            metavar="FILE",
            help="EPW, TMY2, TMY3, NSRDB PSM3 or PSM4 CSV, PVGIS CSV or JSON, or a logger's CSV.",
            show_default=False,
        ),
    ],
    site: Annotated[
        str,
        typer.Option("--id", help="Name it so in a build.", show_default="made of its title"),
    ] = "",
    map_file: Annotated[
        Path | None,
        typer.Option(
            "--map",
            metavar="MAP.toml",
            help="Which column of a logger is what.",
            show_default=False,
        ),
    ] = None,
    year: Annotated[
        int | None, typer.Option(help="Which year, where the file holds several.")
    ] = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Say what would be done and write nothing.")
    ] = False,
    json: Json = False,
) -> None:
    """Read a file of weather into the shop's folder, so that a build can name its site.

    Gaps, leap days, half hours and the like are mended where that is safe, and each is said. What
    is not safe is refused with what stood there and what to do.

    Example: coachwright weather add yard.epw --id yard
    """
    from coachwright.actions.weather import add_weather

    screen = console()
    folder = shop_folder(context)
    with screen.status(f"Reading {file}"):
        added = add_weather(
            file,
            catalogue(context, new=True),
            folder,
            site_id=site,
            map_file=map_file,
            year=year,
            dry_run=dry_run,
        )
    if json:
        print_json({"site": added.site.model_dump(mode="json"), "written": added.written})
        return
    screen.print(plain_text(f"{added.site.name}: named {added.site.id} in a build", style="bold"))
    for repair in added.site.repairs:
        screen.print(plain_text(f"mended: {repair}"))
    if added.replaced:
        screen.print(plain_text(f"{added.site.id} takes the place of a site with this id"))
    done = "Nothing was written (dry run)." if dry_run else f"Kept in {folder / 'weather'}."
    screen.print(plain_text(done))
    screen.print(plain_text(f"Next: coachwright weather show {added.site.id}"))


@app.command("list")
def list_sites(
    context: typer.Context,
    *,
    search: Annotated[
        str, typer.Option(help="Only sites whose id, name or country hold these words.")
    ] = "",
    json: Json = False,
    units: ShownIn = System.METRIC,
) -> None:
    """List the sites; a build names one by its id under brief.climate.sites.

    Example: coachwright weather list --search us
    """
    from coachwright.actions.weather import site_rows

    rows = site_rows(catalogue(context), search=search)
    if json:
        print_json(rows)
        return
    screen = console()
    if not rows:
        screen.print("No site is like that. Next: coachwright weather list shows them all.")
        return
    listed = table("id", "name", "year", "mean", "poorest sun", right=(3, 4), whole=(0,))
    for row in rows:
        add(
            listed,
            row.id,
            f"{row.name}, {row.country}" if row.country else row.name,
            str(row.origin),
            show(row.year_degc, "degC", units),
            shown(row.poorest_sun_h_per_day, "h/day", units),
        )
    screen.print(listed)
    screen.print(f"{len(rows)} sites. Next: coachwright weather show ID")


@app.command("show")
def show_site(
    context: typer.Context,
    site: Annotated[str, typer.Argument(metavar="SITE", help="A site's id.", show_default=False)],
    json: Json = False,
    units: ShownIn = System.METRIC,
) -> None:
    """Show a site's year by month, its design days, and how far it may be off.

    Example: coachwright weather show miami-fl --units us
    """
    from coachwright.actions.weather import weather_sheet

    screen = console()
    with screen.status(f"Computing the year of {site}"):
        sheet = weather_sheet(catalogue(context), site)
    if json:
        data = {
            "site": sheet.site.model_dump(mode="json"),
            "kept": sheet.kept,
            "months": sheet.months,
            "cold_night": sheet.cold_night,
            "hot_day": sheet.hot_day,
        }
        print_json(data)
        return
    _print_sheet(sheet, units)


def _print_sheet(sheet: "WeatherSheet", units: str) -> None:
    from coachwright.model.site import MONTHS

    screen = console()
    found = sheet.site
    screen.print(plain_text(found.name, style="bold"))
    screen.print(plain_text(f"{found.id} ({sheet.kept}), {found.origin} year"))
    where = f"{found.latitude_deg:.2f}°, {found.longitude_deg:.2f}°"
    screen.print(plain_text(f"{where}, {shown(sheet.altitude_m, 'm', units)} above the sea"))
    listed = table(
        "month", "mean", "coldest", "warmest", "humidity", "sun", "5 dull days",
        right=range(1, 7),
    )  # fmt: skip
    for name, month in zip(MONTHS, sheet.months, strict=True):
        add(
            listed,
            name[:3],
            show(month.air_degc, "degC", units),
            show(month.coldest_degc, "degC", units),
            show(month.warmest_degc, "degC", units),
            shown(month.humidity_frac, "frac", units),
            shown(month.sun_h_per_day, "h/day", units),
            shown(month.sun_low_h_per_day, "h/day", units),
        )
    screen.print(listed)
    cold, hot = sheet.cold_night, sheet.hot_day
    colder = f"Cold night, {shown(cold.exceeded_frac, 'frac', units)} of the hours are warmer: "
    hotter = f"Hot day, {shown(hot.exceeded_frac, 'frac', units)} of the hours are warmer: "
    screen.print(plain_text(f"{colder}{show(cold.air_degc, 'degC', units)} ({cold.month})"))
    screen.print(plain_text(f"{hotter}{show(hot.air_degc, 'degC', units)} ({hot.month})"))
    for line in (*(f"Mended: {each}" for each in found.repairs), found.caution):
        if line:
            screen.print(plain_text(worded(line, units)))
    if found.attribution:
        screen.print(plain_text(found.attribution))
