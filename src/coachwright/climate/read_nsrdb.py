"""Read the CSV files of the national solar radiation database, PSM3 and PSM4."""

import numpy as np

from coachwright.climate.model import Place
from coachwright.climate.raw import Column, RawRows, number, numbers, refused

HEADINGS = {
    "ghi_w_per_m2": ("GHI", 1.0),
    "dni_w_per_m2": ("DNI", 1.0),
    "dhi_w_per_m2": ("DHI", 1.0),
    "air_degc": ("Temperature", 1.0),
    "dew_degc": ("Dew Point", 1.0),
    "humidity_frac": ("Relative Humidity", 0.01),
    "pressure_pa": ("Pressure", 100.0),
    "wind_m_per_s": ("Wind Speed", 1.0),
}
NEEDED = ("Year", "Month", "Day", "Hour", "GHI", "Temperature")
_UNITS = {
    "GHI Units": ("w/m2",),
    "Temperature Units": ("c",),
    "Pressure Units": ("mbar", "hpa", "millibar"),
    "Wind Speed Units": ("m/s", "m s-1"),
}
_FIRST_ROW = 4


def read_nsrdb(*, text: str, file: str) -> RawRows:
    """Return the rows of a PSM3 or PSM4 file.

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
    Rows stand for the middle of their time (minute 30 of an hour, 15 and 45 of half hours); local
    standard time, or universal time where the heading says zone 0.

    References
    ----------
    [nsrdb-psm]
    """
    lines = text.splitlines()
    about = _about(lines, file)
    headings = [word.strip() for word in lines[2].split(",")]
    _need(headings, file)
    rows = [line.split(",") for line in lines[3:] if line.strip()]

    def column(heading: str) -> Column:
        place = headings.index(heading)
        return numbers(rows, place, file=file, first_line=_FIRST_ROW, heading=heading)

    minute = column("Minute") if "Minute" in headings else np.full(len(rows), 30.0)
    where = {
        name: number(about[name], file=file, field=f"line 2, {name}")
        for name in ("Latitude", "Longitude", "Elevation")
    }
    zone = about.get("Local Time Zone") if about.get("Time Zone") is None else about["Time Zone"]
    several = len(np.unique(minute)) > 1
    return RawRows(
        kind=f"NSRDB {about.get('Version', '').strip()}".strip(),
        title=f"{where['Latitude']:.2f}, {where['Longitude']:.2f}",
        place=Place(
            latitude_deg=where["Latitude"],
            longitude_deg=where["Longitude"],
            altitude_m=where["Elevation"],
            zone_h=number(zone or "0", file=file, field="line 2, Time Zone"),
        ),
        year=column("Year").astype(np.int64),
        month=column("Month").astype(np.int64),
        day=column("Day").astype(np.int64),
        start_min=column("Hour") * 60.0 + minute,
        sun_min=30.0 if several else float(minute[0]) if len(minute) else 30.0,
        columns={
            name: column(heading) * factor
            for name, (heading, factor) in HEADINGS.items()
            if heading in headings
        },
    )


def _about(lines: list[str], file: str) -> dict[str, str]:
    """Return what the first two lines say, if it is all there and in the usual units."""
    about = dict(zip(lines[0].split(","), lines[1].split(","), strict=False))
    for name in ("Latitude", "Longitude", "Elevation"):
        if name not in about:
            raise refused(file, "line 1", f"no {name}", "latitude, longitude, elevation", "fetch")
    for name, allowed in _UNITS.items():
        unit = about.get(name, "").strip().lower()
        if unit and unit not in allowed:
            raise refused(
                file, f"line 2, {name}", f'"{unit}"', " or ".join(allowed), "fetch it in SI units"
            )
    return about


def _need(headings: list[str], file: str) -> None:
    missing = [name for name in NEEDED if name not in headings]
    if missing:
        raise refused(
            file,
            "line 3",
            f"no column {', '.join(missing)}",
            f"at least {', '.join(NEEDED)}",
            "fetch the file with these attributes",
        )
