"""The sites whose weather is known: shipped ones as a table, the shop's own as files.

A shop's folder holds ``weather/<id>.toml`` (place, months, what was mended) and beside it the
hours, ``weather/<id>-<digest>.csv``.  A shop's site with the id of a shipped one takes its place.
"""

from functools import cache
from pathlib import Path

from coachwright import reference
from coachwright.catalogue.loading import Catalogue, Origin, read_toml
from coachwright.errors import CatalogueError, UnknownName
from coachwright.model.reading import read_record
from coachwright.model.site import Site, SiteOrigin
from coachwright.units import told

FOLDER = "weather"
ATTRIBUTION = {
    "nrel-tmy3": "Typical year TMY3, National Renewable Energy Laboratory, as pvlib ships it",
    "nrel-tmy2": "Typical year TMY2, National Renewable Energy Laboratory, as pvlib ships it",
    "georank-temperature georank-sunshine": (
        "Temperature data © GeoRank.place (georank.place), CC-BY-4.0, derived from CHELSA v2.1; "
        "sunshine data © GeoRank.place (georank.place), CC-BY-4.0; made into hours here"
    ),
}
CAUTION = (
    "Synthetic: made from monthly temperature and yearly sunshine. Held against measured years of "
    "eight places its yearly sun was 10 % low to 13 % high, single months 20 % low to 25 % high; "
    "where the rains come in summer those months were 60 % high; design nights and days were "
    f"off by up to {told(5.0, 'K')}"
)
"""Said on every figure of a synthetic site; docs/climate.md has the table."""


def site_ids(catalogue: Catalogue) -> tuple[str, ...]:
    """Return the ids of all sites, sorted."""
    return tuple(sorted({*_shipped(), *_own(catalogue)}))


def site(catalogue: Catalogue, site_id: str) -> Site:
    """Return one site.

    Raises
    ------
    UnknownName
        Where there is no such site.
    CatalogueError
        Where its file has faults.
    """
    own = _own(catalogue).get(site_id)
    if own is None:
        try:
            return _shipped()[site_id]
        except KeyError:
            raise UnknownName("site", site_id, site_ids(catalogue)) from None
    data, faults = read_toml(own)
    found, faults = (None, faults) if data is None else read_record(Site, data, str(own))
    if found is None:
        raise CatalogueError(faults)
    return found


def site_origin(catalogue: Catalogue, site_id: str) -> Origin:
    """Return where a site comes from."""
    if site_id not in _own(catalogue):
        return Origin.SHIPPED
    return Origin.OVERRIDE if site_id in _shipped() else Origin.SHOP


def hours_file(folder: Path, found: Site) -> Path:
    """Return where the hours of a shop's site are kept."""
    return folder / FOLDER / f"{found.id}-{found.digest[:16]}.csv"


def sunshine_h(site_id: str) -> float | None:
    """Return the hours of sunshine in a year of a shipped site that has no measured hours [h]."""
    for row in reference.table("sites"):
        if row["id"] == site_id and row["sunshine_h"]:
            return float(row["sunshine_h"])
    return None


def station_file(site_id: str) -> str:
    """Return the file of pvlib that holds a shipped site's hours; empty where there is none."""
    rows = {row["id"]: row["file"] for row in reference.table("sites")}
    return rows.get(site_id, "")


@cache
def _shipped() -> dict[str, Site]:
    return {row["id"]: _of_row(row) for row in reference.table("sites")}


def _of_row(row: dict[str, str]) -> Site:
    origin = SiteOrigin(row["origin"])
    months = range(1, 13)
    return Site(
        id=row["id"],
        name=row["name"],
        country=row["country"],
        latitude_deg=float(row["lat_deg"]),
        longitude_deg=float(row["lon_deg"]),
        altitude_mm=float(row["altitude_m"]) * 1000.0,
        zone_h=float(row["zone_h"]),
        origin=origin,
        sun_h_per_day=tuple(float(row[f"sun_{month:02d}_h_per_day"]) for month in months),
        air_degc=tuple(float(row[f"air_{month:02d}_degc"]) for month in months),
        attribution=ATTRIBUTION[row["source"]],
        caution=CAUTION if origin is SiteOrigin.SYNTHETIC else "",
    )


def _own(catalogue: Catalogue) -> dict[str, Path]:
    folder = None if catalogue.shop is None else catalogue.shop / FOLDER
    if folder is None or not folder.is_dir():
        return {}
    return {path.stem: path for path in sorted(folder.glob("*.toml"))}
