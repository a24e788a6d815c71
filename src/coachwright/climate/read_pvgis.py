"""Read the hourly and typical years of PVGIS, CSV and JSON."""

import csv
import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from coachwright.climate.model import Place
from coachwright.climate.raw import Column, RawRows, moved, number, numbers, refused

STAMP = re.compile(r"\d{8}:\d{4}$")
NAMES = {
    "T2m": ("air_degc", 1.0),
    "RH": ("humidity_frac", 0.01),
    "G(h)": ("ghi_w_per_m2", 1.0),
    "Gb(n)": ("dni_w_per_m2", 1.0),
    "Gd(h)": ("dhi_w_per_m2", 1.0),
    "G(i)": ("ghi_w_per_m2", 1.0),
    "Gd(i)": ("dhi_w_per_m2", 1.0),
    "WS10m": ("wind_m_per_s", 1.0),
    "SP": ("pressure_pa", 1.0),
}
_TIMES = ("time", "time(UTC)")
_SLOPE = re.compile(r"^Slope:\s*(-?[\d.]+)")


def read_pvgis_csv(*, text: str, file: str) -> RawRows:
    """Return the rows of a CSV file of PVGIS.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.

    Raises
    ------
    WeatherFileError
        With what stood there, also for light on a slope.

    Notes
    -----
    Universal time, moved to the zone of the longitude; light of one moment in each hour.

    References
    ----------
    [pvgis]
    """
    lines = text.splitlines()
    about: dict[str, str] = {}
    slope = 0.0
    at = next((at for at, line in enumerate(lines) if line.split(",")[0] in _TIMES), -1)
    if at < 0:
        raise refused(file, "the heading", "no column time", "time or time(UTC)", "fetch it again")
    for line in lines[:at]:
        key, _, value = line.partition(":")
        about[key.split("(")[0].strip()] = value.strip()
        found = _SLOPE.match(line.strip())
        slope = number(found[1], file=file, field="slope") if found else slope
    _flat(slope, file)
    rows = [row for row in csv.reader(lines[at + 1 :]) if row and STAMP.match(row[0])]
    headings = lines[at].split(",")
    cells = {
        name: numbers(rows, place, file=file, first_line=at + 2, heading=name)
        for place, name in enumerate(headings)
        if name in NAMES or name == "Gb(i)"
    }
    where = [
        number(about.get(name, ""), file=file, field=name)
        for name in ("Latitude", "Longitude", "Elevation")
    ]
    offset = about.get("Irradiance Time Offset", "")
    return _rows([row[0] for row in rows], cells, _place(where), offset, file)


def read_pvgis_json(*, text: str, file: str) -> RawRows:
    """Return the rows of a JSON file of PVGIS.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.

    Raises
    ------
    WeatherFileError
        With what stood there, also for light on a slope.

    Notes
    -----
    As `read_pvgis_csv`.

    References
    ----------
    [pvgis]
    """
    try:
        data = json.loads(text)
        about = data["inputs"]["location"]
        where = [float(about[name]) for name in ("latitude", "longitude", "elevation")]
        outputs = data["outputs"]
        entries = outputs["tmy_hourly"] if "tmy_hourly" in outputs else outputs["hourly"]
        times = [
            str(entry[_TIMES[1]] if _TIMES[1] in entry else entry["time"]) for entry in entries
        ]
        cells = {
            name: np.array([float(entry[name]) for entry in entries])
            for name in (entries[0] if entries else {})
            if name in NAMES or name == "Gb(i)"
        }
    except (ValueError, KeyError, TypeError) as error:
        raise refused(
            file,
            "the whole file",
            f"{type(error).__name__}: {error}",
            "inputs.location and outputs.hourly or outputs.tmy_hourly",
            "fetch it again as JSON",
        ) from None
    _flat(_slope_deg(data), file)
    offset = about.get("irradiance_time_offset", "")
    return _rows(times, cells, _place(where), str(offset), file)


def _place(where: Sequence[float]) -> Place:  # latitude, longitude, elevation
    latitude, longitude, altitude = where
    return Place(
        latitude_deg=latitude,
        longitude_deg=longitude,
        altitude_m=altitude,
        zone_h=float(round(longitude / 15.0)),
    )


def _slope_deg(data: Mapping[str, Any]) -> float:
    fixed = data["inputs"].get("mounting_system", {}).get("fixed", {})
    return float(fixed.get("slope", {}).get("value", 0.0))


def _flat(slope_deg: float, file: str) -> None:
    if slope_deg != 0.0:
        raise refused(
            file,
            "slope",
            f"{slope_deg:g} deg",
            "0 deg: light on a flat plane",
            "fetch it for slope 0",
        )


def _rows(
    times: Sequence[str], cells: Mapping[str, Column], place: Place, offset: str, file: str
) -> RawRows:
    if not times or not all(STAMP.match(each) for each in times):
        raise refused(file, "time", "no stamps", "such as 20160101:0010", "fetch the file again")
    zone = place.zone_h
    minute = float(times[0][11:13])
    columns = {
        NAMES[name][0]: cell * NAMES[name][1] for name, cell in cells.items() if name in NAMES
    }
    if "Gb(i)" in cells and "ghi_w_per_m2" not in columns:
        columns["ghi_w_per_m2"] = cells["Gb(i)"] + columns["dhi_w_per_m2"]
    year, month, day, hour = (
        np.array([int(each[start:end]) for each in times])
        for start, end in ((0, 4), (4, 6), (6, 8), (9, 11))
    )
    month, day, start_min = moved(month, day, hour * 60.0, by_min=60.0 * zone)
    later = 60.0 * number(offset, file=file, field="time offset") if offset else 0.0
    return RawRows(
        kind="PVGIS",
        title=f"{place.latitude_deg:.2f}, {place.longitude_deg:.2f}",
        place=place,
        year=year,
        month=month,
        day=day,
        start_min=start_min,
        sun_min=minute + later,
        columns=columns,
        said=(f"universal time moved by {zone:+g} h to the zone of the longitude",),
    )
