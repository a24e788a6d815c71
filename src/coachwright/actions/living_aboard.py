"""How long, how warm, how cool, how dry: the years of a build, for whoever asks by command."""

import csv
import datetime
import io
from dataclasses import dataclass, replace
from pathlib import Path

from coachwright.actions.files import write_text
from coachwright.actions.opening import open_build
from coachwright.assess import Almanac, Assessment, assess, place_of
from coachwright.catalogue.loading import Catalogue
from coachwright.catalogue.sites import site as site_of
from coachwright.errors import CallError
from coachwright.living.figures import sentence
from coachwright.living.model import Change, Living, Picture, SiteYear, Stands
from coachwright.model.site import MONTHS
from coachwright.units import shown

_NOT_LEAP = 2027
LONGEST_D = 365


@dataclass(frozen=True, kw_only=True, slots=True)
class Lived:
    """The years of a build, and the one that is shown.

    Attributes
    ----------
    changes
        What some changes would do; none where nobody asked.
    promise
        The sentence of the season's poorest month; empty where there is no battery.
    """

    assessment: Assessment
    living: Living
    year: SiteYear
    changes: tuple[Change, ...]
    promise: str


@dataclass(frozen=True, kw_only=True, slots=True)
class MonthRow:
    """A month as it is printed."""

    month: str
    nine: str
    five: str
    one: str
    sun: str
    drive: str
    hookup: str
    use: str
    unmet: str
    fuel: str
    comfort: str
    inside: str


def live(
    path: Path, catalogue: Catalogue, almanac: Almanac, *, site: str = "", changes: bool = False
) -> Lived:
    """Assess a build at a site.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its vehicle, parts and sites are.
    almanac
        Of the weather.
    site
        Instead of those that the brief names.
    changes
        Say what some changes would do.

    Raises
    ------
    BuildFileError
        With every fault of the file and of what it names.
    UnknownName
        Where there is no such site.
    CallError
        Where neither brief nor call names a site.
    """
    build = open_build(path, catalogue).build
    if site:
        build = build.model_copy(update={"sites": (site_of(catalogue, site),)})
    if not build.sites:
        raise CallError(
            f"{path} names no site under brief.climate.sites; name one with --site ID, "
            "coachwright weather list shows them all"
        )
    found = assess(build, almanac=replace(almanac, changes=changes))
    stands = found.living.promise
    first = found.living.years[0]
    return Lived(
        assessment=found,
        living=found.living,
        year=first,
        changes=found.living.changes,
        promise="" if stands is None else sentence(stands, first.title),
    )


def month_rows(year: SiteYear, system: str) -> tuple[MonthRow, ...]:
    """Return the months of a year as they are printed.

    Parameters
    ----------
    year
        At a site.
    system
        ``"metric"`` or ``"us"``.
    """
    stands: dict[int | None, Stands] = {each.month: each for each in year.stands}
    fuel = "kg" if year.fuel_by_mass else "L"
    rows = []
    for month in year.months:
        held = stands.get(month.month)
        low = shown(month.air_low_degc, "degC", system).partition(" ")[0]
        high = shown(month.air_high_degc, "degC", system)
        rows.append(
            MonthRow(
                month=MONTHS[month.month - 1][:3],
                nine=_days(None if held is None else held.p10_d, held),
                five=_days(None if held is None else held.p50_d, held),
                one=_days(None if held is None else held.p90_d, held),
                sun=shown(month.in_wh["sun"], "Wh", system),
                drive=shown(month.in_wh["drive"], "Wh", system),
                hookup=shown(month.in_wh["hookup"], "Wh", system),
                use=shown(sum(month.out_wh.values()), "Wh", system),
                unmet=shown(sum(month.unmet_wh.values()), "Wh", system),
                fuel=shown(month.fuel_l, fuel, system) if year.fuel else "–",
                comfort=shown(month.comfort_frac, "frac", system),
                inside=f"{_minus(low)} to {_minus(high)}",
            )
        )
    return tuple(rows)


def write_steps(lived: Lived, almanac: Almanac, file: Path, *, start: str, days: int) -> None:
    """Write temperatures, flows, charge, humidity and carbon dioxide step by step.

    Parameters
    ----------
    lived
        The build at its site.
    almanac
        Of the weather.
    file
        A table of comma-separated values.
    start
        First day, as month and day: ``"01-31"``.
    days
        How many.

    Raises
    ------
    CallError
        Where there is no such day, or the days do not lie within one year.
    CannotWrite
        Where the file cannot be written.
    """
    first = _day_of_year(start)
    left = LONGEST_D - first
    if not 1 <= days <= left:
        raise CallError(f"--days {days} does not end within the year; name 1 to {left} days")
    write_text(file, _table(steps(lived, almanac, from_day=first, days=days)))


def steps(lived: Lived, almanac: Almanac, *, from_day: int, days: int) -> Picture:
    """Return some days of the typical year, step by step.

    Parameters
    ----------
    lived
        The build at its site.
    almanac
        Of the weather.
    from_day, days
        First day of the year, from 0, and how many.
    """
    from coachwright.living.pictures import picture  # noqa: PLC0415  # heavy
    from coachwright.living.simulate import prepare, year  # noqa: PLC0415
    from coachwright.living.stage_given import given  # noqa: PLC0415
    from coachwright.living.stretch import stretch  # noqa: PLC0415

    found = lived.assessment
    at = place_of(found.build, found.layout, lived.year.site, almanac)
    weather = at.sky.weather
    made = given(found.build, found.electrics, found.water, weather, sun_w=at.sun_w)
    run = year(prepare(made, at.sky), series=True)
    return picture(run=stretch(run, from_day=from_day, days=days), title=lived.year.title)


def _day_of_year(start: str) -> int:
    try:
        day = datetime.date.fromisoformat(f"{_NOT_LEAP}-{start}")
    except ValueError:
        raise CallError(
            f"--start {start} is no day of a year of 365 days; write month and day, such as 01-31"
        ) from None
    return day.timetuple().tm_yday - 1


def _table(made: Picture) -> str:
    columns = {
        **{f"{name} degC": values for name, values in made.nodes_degc.items()},
        **{f"{name} W": values for name, values in made.flows_w.items()},
        "relative humidity": made.humidity_frac,
        "carbon dioxide ppm": made.co2_ppm,
    }
    if made.charge_frac:
        columns["charge"] = made.charge_frac
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(["month", "day", "hour", *columns])
    begin = datetime.datetime(_NOT_LEAP, 1, 1) + datetime.timedelta(days=made.day)  # noqa: DTZ001
    for place, values in enumerate(zip(*columns.values(), strict=True)):
        at = begin + datetime.timedelta(minutes=made.step_min * place)
        rows.writerow([at.month, at.day, f"{at:%H:%M}", *values])
    return text.getvalue()


def _days(lasted_d: float | None, held: Stands | None) -> str:
    if lasted_d is None or held is None:
        return "unknown"
    more = "+" if lasted_d >= held.followed_d else ""
    return f"{lasted_d:.1f}{more}"


def _minus(text: str) -> str:
    return f"−{text[1:]}" if text.startswith("-") else text
