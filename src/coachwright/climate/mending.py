"""Make a year of a file's rows: whole hours, gaps, leap days, units; mend and say, or refuse."""

from dataclasses import dataclass, field

import numpy as np

from coachwright.climate import air as air_of
from coachwright.climate.light_checks import check_light
from coachwright.climate.model import DAYS, HOURS, MONTH_DAYS, Hours, Place, Weather
from coachwright.climate.raw import DAY_BEFORE_MONTH, DAY_MIN, Column, RawRows, refused
from coachwright.climate.sun import clear_sky_w_per_m2, sun_path
from coachwright.climate.synthetic import MOST_DNI_FACTOR, split_light
from coachwright.model.site import MONTHS, SiteOrigin

MOST_GAP_H = 6
"""Longer gaps are not filled. [shop-practice-climate]"""
MOST_GAPS_H = 88
"""One hour in a hundred. [shop-practice-climate]"""
MOST_SHARED = 24
"""Hours that more rows share than the others: the night on which clocks go back, and the like."""
OVER_THE_END_FRAC = 0.05
"""Of a month: so much of the next year may stand in a file of one."""
LIGHT = ("ghi_w_per_m2", "dni_w_per_m2", "dhi_w_per_m2")
WORDS = {
    "ghi_w_per_m2": "light on the flat",
    "dni_w_per_m2": "light of the sun alone",
    "dhi_w_per_m2": "light of the sky alone",
    "air_degc": "temperature",
    "dew_degc": "dew point",
    "humidity_frac": "humidity",
    "wind_m_per_s": "wind",
    "pressure_pa": "pressure",
}
_RANGES = {
    "air_degc": (-75.0, 60.0, "degC"),
    "dew_degc": (-90.0, 40.0, "degC"),
    "humidity_frac": (0.0, 1.1, "of 1"),
    "wind_m_per_s": (0.0, 75.0, "m/s"),
    "pressure_pa": (45000.0, 110000.0, "Pa"),
    "ghi_w_per_m2": (-20.0, 1700.0, "W/m2"),
    "dni_w_per_m2": (-20.0, 1500.0, "W/m2"),
    "dhi_w_per_m2": (-20.0, 1100.0, "W/m2"),
}
"""Beyond these the unit is another, or the logger is broken."""
_KELVIN = 273.15


@dataclass(slots=True)
class _Job:
    """A file on its way to a year."""

    file: str
    place: Place
    columns: dict[str, Column]
    said: list[str] = field(default_factory=list)


def year_of(*, raw: RawRows, file: str, year: int | None = None) -> Weather:
    """Return the year of a file's rows.

    Parameters
    ----------
    raw
        As read.
    file
        Its name, for faults.
    year
        Which one, where the file holds several.

    Raises
    ------
    WeatherFileError
        Where something cannot be mended safely.

    Notes
    -----
    Mended and said: rows shorter than an hour (means), leap days (left out), gaps of up to six
    hours and one hour in a hundred (air along a straight line, light as the days around),
    kelvin, millibars, missing light of sun or sky (Erbs, or the difference), missing dew point
    (from the humidity, else the day's lowest temperature), missing wind (3.2 m/s), missing
    pressure (standard atmosphere).  Refused: anything else.

    References
    ----------
    [erbs-1982], [shop-practice-climate]
    """
    job = _Job(file=file, place=raw.place, columns={}, said=list(raw.said))
    _place(job)
    rows = _chosen(raw, year, job)
    _hours(raw, rows, job)
    if "air_degc" not in job.columns:
        raise refused(file, "temperature", "no column", "a temperature for each hour", "add it")
    if not any(name in job.columns for name in LIGHT):
        raise refused(file, "light", "no column", "light on the flat for each hour", "add it")
    _units(job)
    _gaps(job)
    _air(job)
    _light(job, raw.sun_min)
    return Weather(
        title=raw.title,
        place=raw.place,
        origin=SiteOrigin.IMPORTED,
        sun_min=raw.sun_min,
        ghi_w_per_m2=job.columns["ghi_w_per_m2"],
        dni_w_per_m2=job.columns["dni_w_per_m2"],
        dhi_w_per_m2=job.columns["dhi_w_per_m2"],
        air_degc=job.columns["air_degc"],
        dew_degc=job.columns["dew_degc"],
        wind_m_per_s=job.columns["wind_m_per_s"],
        pressure_pa=job.columns["pressure_pa"],
        repairs=tuple(job.said),
    )


def _place(job: _Job) -> None:
    place = job.place
    for name, value, most in (
        ("latitude", place.latitude_deg, 90.0),
        ("longitude", place.longitude_deg, 180.0),
        ("zone", place.zone_h, 14.0),
    ):
        if not abs(value) <= most:
            raise refused(
                job.file, name, f"{value:g}", f"from -{most:g} to {most:g}", "correct the heading"
            )
    if not -500.0 <= place.altitude_m <= 6000.0:  # noqa: PLR2004  # where people drive
        raise refused(
            job.file,
            "altitude",
            f"{place.altitude_m:g} m",
            "-500 to 6000 m",
            "correct the heading",
        )


def _chosen(raw: RawRows, year: int | None, job: _Job) -> np.ndarray:
    """Return which rows count: of one year, or of a typical year without regard to theirs."""
    if not len(raw.month):
        raise refused(job.file, "the rows", "none", "a row for each hour", "fetch it again")
    leap = _checked_leap(raw, job)
    years = ", ".join(f"{each}" for each in np.unique(raw.year))
    if year is not None:
        chosen = raw.year == year
        if not chosen.any():
            raise refused(job.file, "year", f"{year}", f"one of {years}", "choose another year")
    elif _several(raw):
        raise refused(job.file, "years", years, "one year", "choose one with --year")
    else:
        chosen = np.ones(len(raw.year), dtype=bool)
    if (leap & chosen).any():
        job.said.append("29 February left out")
    return np.asarray(chosen & ~leap)


def _several(raw: RawRows) -> bool:
    """Say whether a month stands there in two years; a few hours over the end do not count."""
    for month in range(1, len(MONTHS) + 1):
        counts = np.sort(np.unique(raw.year[raw.month == month], return_counts=True)[1])
        if len(counts) > 1 and counts[-2] > OVER_THE_END_FRAC * counts[-1]:
            return True
    return False


def _checked_leap(raw: RawRows, job: _Job) -> np.ndarray:
    """Return which rows are of a leap day, if all stamps are dates of the calendar."""
    leap = (raw.month == 2) & (raw.day == 29)  # noqa: PLR2004  # 29 February
    wrong = ~((raw.month >= 1) & (raw.month <= len(MONTHS)))
    month = np.where(wrong, 1, raw.month)
    wrong |= (raw.day < 1) | ((raw.day > np.asarray(MONTH_DAYS)[month - 1]) & ~leap)
    wrong |= (raw.start_min < 0.0) | (raw.start_min > DAY_MIN)
    if wrong.any():
        at = int(np.flatnonzero(wrong)[0])
        raise refused(
            job.file,
            f"row {at + 1}",
            f"month {raw.month[at]}, day {raw.day[at]}, minute {raw.start_min[at]:g}",
            "a date of the calendar",
            "correct the stamp",
        )
    return np.asarray(leap)


def _hours(raw: RawRows, rows: np.ndarray, job: _Job) -> None:
    """Take the means of the rows of each hour."""
    day = DAY_BEFORE_MONTH[raw.month[rows] - 1] + raw.day[rows] - 1
    slot = (day * 24 + raw.start_min[rows] // 60.0).astype(np.int64) % HOURS
    count = np.bincount(slot, minlength=HOURS)
    usual = int(np.median(count[count > 0]))
    shared = int((count > usual).sum())
    if shared > MOST_SHARED:
        at = int(np.flatnonzero(count > usual)[0])
        raise refused(
            job.file,
            _when(at),
            f"{count[at]} rows in an hour, and so in {shared} hours",
            f"{usual} in each",
            "take the doubled rows out",
        )
    if usual > 1:
        job.said.append(f"means of {usual} rows in each hour")
    if shared:
        job.said.append(f"{shared} hours with more rows than the others: their mean")
    for name, column in raw.columns.items():
        values = column[rows]
        here = ~np.isnan(values)
        if not here.any():
            continue
        known = np.bincount(slot[here], minlength=HOURS)
        total = np.bincount(slot[here], weights=values[here], minlength=HOURS)
        job.columns[name] = np.divide(
            total, known, out=np.full(HOURS, np.nan), where=2 * known >= usual
        )


def _units(job: _Job) -> None:
    air = job.columns["air_degc"]
    if np.nanmin(air) > 150.0:  # noqa: PLR2004  # no place is so hot in its coldest hour
        for name in ("air_degc", "dew_degc"):
            if name in job.columns:
                job.columns[name] = job.columns[name] - _KELVIN
        job.said.append("temperatures in kelvin: turned into degC")
    pressure = job.columns.get("pressure_pa")
    if pressure is not None and 450.0 < np.nanmedian(pressure) < 1100.0:  # noqa: PLR2004
        job.columns["pressure_pa"] = pressure * 100.0
        job.said.append("pressure in millibars: turned into Pa")
    for name, column in job.columns.items():
        low, high, unit = _RANGES[name]
        beyond = np.flatnonzero((column < low) | (column > high))
        if len(beyond):
            at = int(beyond[0])
            raise refused(
                job.file,
                f"{WORDS[name]}, {_when(at)}",
                f"{column[at]:g}",
                f"{low:g} to {high:g} {unit}",
                "another unit or a wrong reading: correct it, or say the unit in a map",
            )
        if name in LIGHT:
            job.columns[name] = np.maximum(column, 0.0)


def _gaps(job: _Job) -> None:
    filled: dict[str, int] = {}
    for name, column in job.columns.items():
        gone = np.isnan(column)
        count = int(gone.sum())
        if not count:
            continue
        at, longest = _longest(gone)
        if longest > MOST_GAP_H or count > MOST_GAPS_H:
            raise refused(
                job.file,
                WORDS[name],
                f"{count} hours without a value, {longest} together from {_when(at)}",
                f"gaps of up to {MOST_GAP_H} hours, {MOST_GAPS_H} hours in all",
                "fill them, or bring another year",
            )
        job.columns[name] = _as_days_around(column) if name in LIGHT else _along_a_line(column)
        filled[WORDS[name]] = count
    if filled:
        told = ", ".join(f"{word} {count} h" for word, count in filled.items())
        job.said.append(f"gaps filled: {told}")


def _longest(gone: np.ndarray) -> tuple[int, int]:
    """Return where the longest gap begins and its hours; the year's ends meet."""
    if gone.all():
        return 0, len(gone)
    first = int(np.flatnonzero(~gone)[0])
    turned = np.concatenate([[False], np.roll(gone, -first), [False]]).astype(np.int8)
    edges = np.diff(turned)
    starts, ends = np.flatnonzero(edges == 1), np.flatnonzero(edges == -1)
    longest = int(np.argmax(ends - starts))
    return int(starts[longest] + first) % len(gone), int(ends[longest] - starts[longest])


def _along_a_line(column: Hours) -> Hours:
    known = np.flatnonzero(~np.isnan(column))
    return np.interp(np.arange(HOURS), known, column[known], period=float(HOURS))


def _as_days_around(column: Hours) -> Hours:
    """Fill each gap with the mean of the same hour on the days before and after."""
    made = column.copy()
    for at in np.flatnonzero(np.isnan(column)):
        for days in range(1, DAYS // 2):
            around = column[[(at - 24 * days) % HOURS, (at + 24 * days) % HOURS]]
            if not np.isnan(around).all():
                made[at] = np.nanmean(around)
                break
    return made


def _air(job: _Job) -> None:
    air = job.columns["air_degc"]
    humidity = job.columns.pop("humidity_frac", None)
    if "dew_degc" not in job.columns:
        if humidity is not None:
            job.columns["dew_degc"] = air_of.dew_of_humidity_degc(air=air, humidity=humidity)
            job.said.append("dew point from the humidity")
        else:
            job.columns["dew_degc"] = air_of.dew_degc(air=air, sunshine_frac=0.0)
            job.said.append("no humidity in the file: dew point taken as the day's lowest degC")
    job.columns["dew_degc"] = np.minimum(job.columns["dew_degc"], air)
    if "wind_m_per_s" not in job.columns:
        job.columns["wind_m_per_s"] = np.full(HOURS, air_of.MEAN_WIND_M_PER_S)
        job.said.append("no wind in the file: a usual wind taken all year")
    if "pressure_pa" not in job.columns:
        pressure = air_of.standard_pressure_pa(altitude_m=job.place.altitude_m)
        job.columns["pressure_pa"] = np.full(HOURS, pressure)
        job.said.append("no pressure in the file: that of the altitude taken")


def _light(job: _Job, sun_min: float) -> None:
    path = sun_path(place=job.place, sun_min=sun_min)
    clear, clear_dni = clear_sky_w_per_m2(place=job.place, path=path, sun_min=sun_min)
    upright = np.maximum(np.sin(np.radians(path.altitude_deg)), 0.0)
    ghi, dni, dhi = (job.columns.get(name) for name in LIGHT)
    if ghi is None:
        if dni is None or dhi is None:
            raise refused(job.file, "light", "not on the flat", "light on the flat", "add it")
        ghi = dni * upright + dhi
        job.said.append("light on the flat made of that of sun and sky")
    check_light(ghi=ghi, clear=clear, path=path, file=job.file)
    if dhi is None and dni is None:
        dni, dhi = split_light(
            ghi=ghi, path=path, clear_dni=clear_dni, zone_h=job.place.zone_h, sun_min=sun_min
        )
        job.said.append("light of sun and sky told apart by Erbs' equation")
    elif dhi is None and dni is not None:
        dhi = np.maximum(ghi - dni * upright, 0.0)
        job.said.append("light of the sky from the difference")
    elif dni is None and dhi is not None:
        beam = np.divide(ghi - dhi, upright, out=np.zeros(HOURS), where=upright > 0.03)  # noqa: PLR2004
        dni = np.clip(beam, 0.0, MOST_DNI_FACTOR * clear_dni)
        job.said.append("light of the sun alone from the difference")
    job.columns.update(dict(zip(LIGHT, (ghi, dni, dhi), strict=True)))  # type: ignore[arg-type]


def _when(slot: int) -> str:
    day = slot // 24
    month = int(np.searchsorted(DAY_BEFORE_MONTH, day, side="right"))
    return f"{day - DAY_BEFORE_MONTH[month - 1] + 1} {MONTHS[month - 1]} {slot % 24:02d}:00"
