"""Bring a file of weather into the shop, and look at the weather of a site."""

import re
import unicodedata
from dataclasses import dataclass, replace
from importlib import resources
from pathlib import Path

import numpy as np

from coachwright.actions.files import write_all
from coachwright.actions.writing import record_text
from coachwright.catalogue import sites
from coachwright.catalogue.loading import Catalogue, read_toml
from coachwright.climate.design_day import DesignDay, cold_night, hot_day
from coachwright.climate.model import HOURS, Place, Weather
from coachwright.climate.months import Month, months
from coachwright.climate.read_logger import LoggerMap
from coachwright.climate.reading import read_weather
from coachwright.climate.synthetic import Normals, synthetic_year
from coachwright.errors import Fault, WeatherFileError
from coachwright.model.reading import read_record
from coachwright.model.site import Site, SiteOrigin

SEED = 1
"""Of every shipped synthetic year: two shops see the same weather."""
MOST_BYTES = 100_000_000
_DIGITS = 4
_MM_PER_M = 1000.0
_MIN_PER_H = 60.0
_COLUMNS = (
    "ghi_w_per_m2",
    "dni_w_per_m2",
    "dhi_w_per_m2",
    "air_degc",
    "dew_degc",
    "wind_m_per_s",
    "pressure_pa",
)


@dataclass(frozen=True, kw_only=True, slots=True)
class SiteRow:
    """One site in a list.

    Attributes
    ----------
    poorest_sun_h_per_day
        Peak-sun hours on a flat roof in the poorest month.
    """

    id: str
    name: str
    country: str
    origin: SiteOrigin
    year_degc: float
    poorest_sun_h_per_day: float


@dataclass(frozen=True, kw_only=True, slots=True)
class WeatherSheet:
    """What `weather show` shows of a site."""

    site: Site
    kept: str
    altitude_m: float
    months: tuple[Month, ...]
    cold_night: DesignDay
    hot_day: DesignDay


@dataclass(frozen=True, kw_only=True, slots=True)
class Added:
    """A file of weather that was read.

    Attributes
    ----------
    written
        Files that were written; none for a dry run.
    replaced
        A site of the shop's with this id was there before.
    """

    site: Site
    written: tuple[Path, ...]
    replaced: bool


def site_rows(catalogue: Catalogue, *, search: str = "") -> tuple[SiteRow, ...]:
    """Return the sites whose id, name or country hold the words."""
    found = (sites.site(catalogue, site_id) for site_id in sites.site_ids(catalogue))
    wanted = search.lower().split()
    return tuple(
        SiteRow(
            id=site.id,
            name=site.name,
            country=site.country,
            origin=site.origin,
            year_degc=sum(site.air_degc) / len(site.air_degc),
            poorest_sun_h_per_day=min(site.sun_h_per_day),
        )
        for site in found
        if all(word in f"{site.id} {site.name} {site.country}".lower() for word in wanted)
    )


def site_year(catalogue: Catalogue, site_id: str) -> Weather:
    """Return the hours of a site.

    Raises
    ------
    UnknownName
        Where there is no such site.
    WeatherFileError
        Where the shop's hours are gone or were changed.
    """
    site = sites.site(catalogue, site_id)
    if site.origin is SiteOrigin.IMPORTED:
        return _kept_year(catalogue, site)
    file = sites.station_file(site_id)
    if file:
        data = (resources.files("pvlib") / "data" / file).read_bytes()
        read = read_weather(data=data, file=file)
        return replace(read, title=site.name, origin=site.origin, attribution=site.attribution)
    return synthetic_year(
        title=site.name,
        place=_place(site),
        normals=Normals(monthly_degc=site.air_degc, sunshine_h=sites.sunshine_h(site_id) or 0.0),
        seed=SEED,
        attribution=site.attribution,
        caution=site.caution,
    )


def weather_sheet(catalogue: Catalogue, site_id: str) -> WeatherSheet:
    """Return what is shown of a site: months, design days, what was mended, how far it is off.

    Raises
    ------
    UnknownName
        Where there is no such site.
    """
    year = site_year(catalogue, site_id)
    return WeatherSheet(
        site=sites.site(catalogue, site_id),
        kept=str(sites.site_origin(catalogue, site_id)),
        altitude_m=year.place.altitude_m,
        months=months(weather=year),
        cold_night=cold_night(weather=year),
        hot_day=hot_day(weather=year),
    )


def add_weather(
    path: Path,
    catalogue: Catalogue,
    folder: Path,
    *,
    site_id: str = "",
    map_file: Path | None = None,
    year: int | None = None,
    dry_run: bool = False,
) -> Added:
    """Read a file of weather and keep it in the shop's folder.

    Parameters
    ----------
    path
        The file.
    catalogue
        Of the shop.
    folder
        The shop's.
    site_id
        Under which a build names it; made of the file's own title where empty.
    map_file
        Which column is what, for a logger's file.
    year
        Which one, where the file holds several.
    dry_run
        Write nothing.

    Raises
    ------
    WeatherFileError
        Where it cannot be read, or something cannot be mended safely.
    CannotWrite
        Where the shop's folder cannot be written to.
    """
    logger = None if map_file is None else _map(map_file)
    read = read_weather(data=_bytes(path), file=str(path), logger=logger, year=year)
    found = _rounded(read)
    chosen = site_id or _slug(found.title) or _slug(path.stem)
    site = _site(chosen, found, path)
    there = sites.site_origin(catalogue, chosen) if chosen in sites.site_ids(catalogue) else None
    written: tuple[Path, ...] = ()
    if not dry_run:
        hours = sites.hours_file(folder, site)
        sheet = folder / sites.FOLDER / f"{site.id}.toml"
        write_all({hours: _text(found).encode(), sheet: record_text(site).encode()})
        written = (sheet, hours)
    return Added(site=site, written=written, replaced=there is not None)


def _bytes(path: Path) -> bytes:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise _refused(path, "more than 100 MB", "a year of hours", "cut it to one year")
        return path.read_bytes()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise _refused(path, reason, "a file that can be read", "check the path") from None


def _map(path: Path) -> LoggerMap:
    data, faults = read_toml(path)
    found, faults = (None, faults) if data is None else read_record(LoggerMap, data, str(path))
    if found is None:
        raise WeatherFileError(faults)
    return found


def _refused(path: Path, found: str, allowed: str, action: str) -> WeatherFileError:
    fault = Fault(
        file=str(path), field="the whole file", found=found, allowed=allowed, action=action
    )
    return WeatherFileError([fault])


def _site(site_id: str, found: Weather, path: Path) -> Site:
    by_month = months(weather=found)
    return Site(
        id=site_id,
        name=found.title or site_id,
        latitude_deg=found.place.latitude_deg,
        longitude_deg=found.place.longitude_deg,
        altitude_mm=found.place.altitude_m * _MM_PER_M,
        zone_h=found.place.zone_h,
        origin=SiteOrigin.IMPORTED,
        sun_h_per_day=tuple(round(month.sun_h_per_day, 3) for month in by_month),
        air_degc=tuple(round(month.air_degc, 2) for month in by_month),
        file=path.name,
        light_at_h=found.sun_min / _MIN_PER_H,
        repairs=found.repairs,
        digest=found.digest,
    )


def _place(site: Site) -> Place:
    return Place(
        latitude_deg=site.latitude_deg,
        longitude_deg=site.longitude_deg,
        altitude_m=site.altitude_mm / _MM_PER_M,
        zone_h=site.zone_h,
    )


def _rounded(found: Weather) -> Weather:
    """Return a year as it comes back from its file, so that its digest holds."""
    place = replace(found.place, altitude_m=round(found.place.altitude_m, 3))
    columns = {name: _digits(column) for name, column in found.columns.items()}
    light_at_h = round(found.sun_min / _MIN_PER_H, 6)
    return replace(found, place=place, sun_min=light_at_h * _MIN_PER_H, **columns)  # type: ignore[arg-type]


def _digits(column: np.ndarray) -> np.ndarray:
    return np.array([float(f"{value:.{_DIGITS}f}") for value in column])


def _text(found: Weather) -> str:
    rows = zip(*(found.columns[name] for name in _COLUMNS), strict=True)
    lines = (",".join(f"{value:.{_DIGITS}f}" for value in row) for row in rows)
    return "\n".join([",".join(_COLUMNS), *lines, ""])


def _kept_year(catalogue: Catalogue, site: Site) -> Weather:
    path = sites.hours_file(catalogue.shop or Path(), site)
    lines = _bytes(path).decode("utf-8", errors="replace").splitlines()
    again = "add the file again: coachwright weather add"
    try:
        table = np.array([[float(cell) for cell in line.split(",")] for line in lines[1:]])
        columns = dict(zip(_COLUMNS, np.ascontiguousarray(table.T), strict=True))
    except ValueError:
        raise _refused(path, "rows that are no numbers", f"{HOURS} rows", again) from None
    year = Weather(
        title=site.name,
        place=_place(site),
        origin=site.origin,
        sun_min=site.light_at_h * _MIN_PER_H,
        attribution=site.attribution,
        caution=site.caution,
        repairs=site.repairs,
        **columns,
    )
    if year.digest != site.digest:
        raise _refused(path, "other hours than were added", "the hours as they were", again)
    return year


def _slug(title: str) -> str:
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")
