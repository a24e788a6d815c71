"""A place whose weather is known, as a build names it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from pydantic import Field

from coachwright.model.part import ID_PATTERN
from coachwright.model.record import Angle, Length, Quantity, Record, Temperature, TimeUse

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


class SiteOrigin(StrEnum):
    """Where the hours of a site's year come from."""

    MEASURED = "measured"
    SYNTHETIC = "synthetic"
    IMPORTED = "imported"


class Site(Record):
    """A place, and what its year of weather comes to by month."""

    id: str = Field(pattern=ID_PATTERN)
    name: str = Field(min_length=1)
    country: str = ""
    latitude_deg: Annotated[float, Quantity("angle", least=-90.0, most=90.0)]
    """North is positive."""
    longitude_deg: Angle
    """East is positive."""
    altitude_mm: Length = 0.0
    zone_h: Annotated[float, Quantity("time", least=-14.0, most=14.0)]
    """Standard time ahead of universal time."""
    origin: SiteOrigin
    sun_h_per_day: tuple[TimeUse, ...] = Field(min_length=12, max_length=12)
    """Peak-sun hours on a flat roof, the mean of each month."""
    air_degc: tuple[Temperature, ...] = Field(min_length=12, max_length=12)
    """The mean of each month."""
    attribution: str = ""
    """Who must be named wherever a figure of it is shown."""
    caution: str = ""
    """How far the year may be off."""
    light_at_h: Annotated[float, Quantity("time", least=0.0, most=1.0)] = 0.5
    """Part of each hour after which the sun stands as for the hour's light."""
    file: str = ""
    """The file that it was read from, where the shop brought one."""
    repairs: tuple[str, ...] = ()
    """What was mended in that file."""
    digest: str = ""
    """SHA-256 of its hours, as hexadecimal digits, where the shop brought them."""


@dataclass(frozen=True, kw_only=True, slots=True)
class SunMonth:
    """The month of a site that a season's sun is taken from."""

    site: Site
    month: str
    sun_h_per_day: float


WARM_NORTH = frozenset(range(3, 9))
"""April to September: the warm half-year north of the equator; the cold one south of it."""


def poorest_month(sites: Iterable[Site], *, warm: bool) -> SunMonth | None:
    """Return the month with the least sun in the warm or the cold half-year, over all sites.

    Parameters
    ----------
    sites
        Where the vehicle will stand.
    warm
        April to September in the north, October to March in the south; else the other half.

    Returns
    -------
    SunMonth or None
        None without sites.
    """
    months = (
        SunMonth(site=site, month=name, sun_h_per_day=site.sun_h_per_day[at])
        for site in sites
        for at, name in enumerate(MONTHS)
        if ((at in WARM_NORTH) == (site.latitude_deg >= 0.0)) is warm
    )
    return min(months, key=lambda each: each.sun_h_per_day, default=None)
