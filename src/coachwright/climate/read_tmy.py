"""Read typical years in the forms TMY2 and TMY3."""

import re

import numpy as np

from coachwright.climate.model import Place
from coachwright.climate.raw import Column, RawRows, number, numbers, refused, without

TMY2_HEAD = re.compile(
    r"\s*(?P<id>\d{5})\s+(?P<city>.+?)\s+(?P<state>[A-Z]{2})\s+(?P<zone>-?\d+)"
    r"\s+(?P<ns>[NS])\s*(?P<lat>\d+)\s+(?P<lat_min>\d+)"
    r"\s+(?P<ew>[EW])\s*(?P<lon>\d+)\s+(?P<lon_min>\d+)\s+(?P<up>-?\d+)"
)
_TMY2_FIELDS = {
    "year": (1, 3),
    "month": (3, 5),
    "day": (5, 7),
    "hour": (7, 9),
    "ghi_w_per_m2": (17, 21),
    "dni_w_per_m2": (23, 27),
    "dhi_w_per_m2": (29, 33),
    "air_degc": (67, 71),
    "dew_degc": (73, 77),
    "humidity_frac": (79, 82),
    "pressure_pa": (84, 88),
    "wind_m_per_s": (95, 98),
}
"""Name → where it stands in a row, from 0."""
_TMY2_SCALE = {
    "air_degc": 0.1,
    "dew_degc": 0.1,
    "humidity_frac": 0.01,
    "pressure_pa": 100.0,
    "wind_m_per_s": 0.1,
}
_TMY2_MISSING = {"air_degc": 9999.0, "dew_degc": 9999.0, "pressure_pa": 9999.0}
TMY3_HEADINGS = {
    "ghi_w_per_m2": ("GHI (W/m^2)", 1.0),
    "dni_w_per_m2": ("DNI (W/m^2)", 1.0),
    "dhi_w_per_m2": ("DHI (W/m^2)", 1.0),
    "air_degc": ("Dry-bulb (C)", 1.0),
    "dew_degc": ("Dew-point (C)", 1.0),
    "humidity_frac": ("RHum (%)", 0.01),
    "pressure_pa": ("Pressure (mbar)", 100.0),
    "wind_m_per_s": ("Wspd (m/s)", 1.0),
}
_GONE = -9900.0
_TMY3_HEAD = 7


def read_tmy2(*, text: str, file: str) -> RawRows:
    """Return the rows of a TMY2 file.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.

    Raises
    ------
    WeatherFileError
        With the line and what stood there.

    Notes
    -----
    Columns by position; temperatures and wind in tenths; hours 1 to 24 end at their stamp.

    References
    ----------
    [nrel-tmy2]
    """
    lines = [line for line in text.splitlines() if line.strip()]
    head = TMY2_HEAD.match(lines[0])
    if head is None:
        raise refused(
            file, "line 1", f'"{lines[0][:60]}"', "the heading of a TMY2 file", "fetch it again"
        )
    columns: dict[str, Column] = {}
    for name, (start, end) in _TMY2_FIELDS.items():
        field = slice(start, end)
        cells = list(zip(line[field] for line in lines[1:]))  # rows of one cell
        found = numbers(cells, 0, file=file, first_line=2, heading=name)
        if name in _TMY2_MISSING:
            found = without(found, _TMY2_MISSING[name])
        columns[name] = found * _TMY2_SCALE.get(name, 1.0)
    stamps = {name: columns.pop(name) for name in ("year", "month", "day", "hour")}
    north = 1.0 if head["ns"] == "N" else -1.0
    east = 1.0 if head["ew"] == "E" else -1.0
    return RawRows(
        kind="TMY2",
        title=f"{head['city'].strip().title()}, {head['state']}",
        place=Place(
            latitude_deg=north * (int(head["lat"]) + int(head["lat_min"]) / 60.0),
            longitude_deg=east * (int(head["lon"]) + int(head["lon_min"]) / 60.0),
            altitude_m=float(head["up"]),
            zone_h=float(head["zone"]),
        ),
        year=stamps["year"].astype(np.int64) + 1900,
        month=stamps["month"].astype(np.int64),
        day=stamps["day"].astype(np.int64),
        start_min=(stamps["hour"] - 1.0) * 60.0,
        sun_min=30.0,
        columns=columns,
    )


def read_tmy3(*, text: str, file: str) -> RawRows:
    """Return the rows of a TMY3 file.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.

    Raises
    ------
    WeatherFileError
        With the line and what stood there.

    Notes
    -----
    Columns by heading; stamps 01:00 to 24:00 end the hour; months come from several years.

    References
    ----------
    [nrel-tmy3]
    """
    lines = text.splitlines()
    head = lines[0].split(",")
    if len(head) < _TMY3_HEAD:
        raise refused(file, "line 1", f"{len(head)} fields", "7 fields", "fetch it again")
    where = [number(head[at], file=file, field=f"line 1, field {at + 1}") for at in (3, 4, 5, 6)]
    headings = lines[1].split(",")
    known = {heading for heading, _ in TMY3_HEADINGS.values()}
    # what stands behind the last column is left in one piece
    last = max((at + 1 for at, each in enumerate(headings) if each in known), default=1)
    rows = [line.split(",", last) for line in lines[2:] if line.strip()]
    month, day, year, hour = _tmy3_stamps(rows, file)
    return RawRows(
        kind="TMY3",
        title=f"{head[1].strip().strip(chr(34)).title()}, {head[2].strip()}",
        place=Place(
            zone_h=where[0],
            latitude_deg=where[1],
            longitude_deg=where[2],
            altitude_m=where[3],
        ),
        year=year.astype(np.int64),
        month=month.astype(np.int64),
        day=day.astype(np.int64),
        start_min=(hour - 1.0) * 60.0,
        sun_min=30.0,
        columns=_tmy3_columns(rows, headings, file),
    )


def _tmy3_columns(rows: list[list[str]], headings: list[str], file: str) -> dict[str, Column]:
    columns = {}
    for name, (heading, factor) in TMY3_HEADINGS.items():
        if heading not in headings:
            raise refused(
                file, "line 2", f'no column "{heading}"', "the columns of TMY3", "fetch it again"
            )
        found = numbers(rows, headings.index(heading), file=file, first_line=3, heading=heading)
        columns[name] = without(found, _GONE, above=False) * factor
    return columns


def _tmy3_stamps(rows: list[list[str]], file: str) -> tuple[Column, Column, Column, Column]:
    days = [row[0] for row in rows]
    clock = [row[1] if len(row) > 1 else "" for row in rows]
    parted = {day: day.split("/") for day in set(days)}  # a date has 24 rows
    told = {time: time.split(":") for time in set(clock)}
    dates, hours = [parted[day] for day in days], [told[time] for time in clock]
    month, day, year, hour = (
        numbers(cells, at, file=file, first_line=3, heading=word)
        for cells, at, word in (
            (dates, 0, "month"),
            (dates, 1, "day"),
            (dates, 2, "year"),
            (hours, 0, "hour"),
        )
    )
    return month, day, year, hour
