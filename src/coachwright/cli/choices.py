"""Options that several commands share, and where the shop's folder is."""

import os
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from coachwright.assess import Almanac
    from coachwright.catalogue.loading import Catalogue

SHOP_VARIABLE = "COACHWRIGHT_SHOP"
DATA_VARIABLE = "XDG_DATA_HOME"
KEPT_VARIABLE = "XDG_CACHE_HOME"
DATABASE_VARIABLE = "COACHWRIGHT_DATABASE"


class System(StrEnum):
    """In which units figures are shown."""

    METRIC = "metric"
    US = "us"


class Region(StrEnum):
    """Whose rules apply."""

    US = "us"
    EU = "eu"
    UK = "uk"


Json = Annotated[bool, typer.Option("--json", help="Print JSON instead, for other programs.")]
Units = Annotated[
    System | None,
    typer.Option(help="Show metric or US customary units.", show_default="the build's own"),
]
BuildFile = Annotated[
    Path, typer.Argument(metavar="BUILD", help="A build file.", show_default=False)
]


def catalogue(context: typer.Context, *, new: bool = False) -> "Catalogue":
    """Return the catalogue with the shop's own entries over it.

    Parameters
    ----------
    context
        Of the command.
    new
        The shop's folder may be missing: the command makes it.

    Raises
    ------
    CallError
        Where a shop's folder was asked for that is not there.
    """
    from coachwright.catalogue.loading import Catalogue
    from coachwright.errors import CallError

    asked: Path | None = context.obj
    if asked is not None and not asked.is_dir() and not new:
        raise CallError(
            f"the shop's folder {asked} is not there; "
            f"name another with --shop or {SHOP_VARIABLE}, or make it"
        )
    usual = _usual_shop()
    return Catalogue(asked or (usual if usual.is_dir() else None))


def shop_folder(context: typer.Context) -> Path:
    """Return the folder into which the shop's own entries are written."""
    asked: Path | None = context.obj
    return asked or _usual_shop()


def data_folder() -> Path:
    """Return Coachwright's own folder among the user's data."""
    data = os.environ.get(DATA_VARIABLE)
    home = Path(data) if data else Path.home() / ".local" / "share"
    return home / "coachwright"


def database() -> str:
    """Return the address of the store of builds: a file's path, or that of a server."""
    return os.environ.get(DATABASE_VARIABLE) or str(data_folder() / "builds.db")


def kept_folder() -> Path:
    """Return the folder of what can be computed anew at any time: sites' arrays, years."""
    kept = os.environ.get(KEPT_VARIABLE)
    home = Path(kept) if kept else Path.home() / ".cache"
    return home / "coachwright"


def almanac(where: "Catalogue", *, changes: bool = False) -> "Almanac":
    """Return the almanac of a catalogue's sites; it says so before it computes a year.

    Parameters
    ----------
    where
        The catalogue.
    changes
        Say what some changes would do, too.
    """
    from coachwright.actions.year_shelf import almanac_of

    return almanac_of(where, kept_folder(), began=_say_year, changes=changes)


def _say_year() -> None:
    typer.echo("Computing the year at the brief's sites; it is kept for the next time.", err=True)


def _usual_shop() -> Path:
    return data_folder() / "shop"
