"""Read EPW files by position: rows of 35 fields, of 32, and of any number from 22 on."""

from collections.abc import Callable

import numpy as np

from coachwright.climate.model import Place
from coachwright.climate.raw import Column, RawRows, number, numbers, refused, without

FIELDS = 35
LEAST_FIELDS = 22
HEADING = 8
_PLACES = {"latitude": 6, "longitude": 7, "zone": 8, "elevation": 9}


def read_epw(*, text: str, file: str) -> RawRows:
    """Return the rows of an EPW file.

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
    Hours 1 to 24 end at their stamp; values that the form calls missing are gaps.

    References
    ----------
    [epw-form]
    """
    lines = text.splitlines()
    head = lines[0].split(",")
    if len(head) <= _PLACES["elevation"]:
        raise refused(
            file, "line 1", f"{len(head)} fields", "LOCATION with 10 fields", "fetch it again"
        )
    where = {
        name: number(head[place], file=file, field=f"line 1, {name}")
        for name, place in _PLACES.items()
    }
    start = next(
        (at + 1 for at, line in enumerate(lines) if line.upper().startswith("DATA PERIODS")),
        HEADING,
    )
    rows = [line.split(",") for line in lines[start:] if line.strip()]
    if not rows:
        raise refused(file, "the rows", "none", "a row for each hour", "fetch the file again")

    def column(place: int, name: str) -> Column:
        return numbers(rows, place, file=file, first_line=start + 1, heading=name)

    return RawRows(
        kind="EPW",
        title=", ".join(word.strip() for word in head[1:4] if word.strip() not in ("", "-")),
        place=Place(
            latitude_deg=where["latitude"],
            longitude_deg=where["longitude"],
            altitude_m=where["elevation"],
            zone_h=where["zone"],
        ),
        year=column(0, "year").astype(np.int64),
        month=column(1, "month").astype(np.int64),
        day=column(2, "day").astype(np.int64),
        start_min=(column(3, "hour") - 1.0) * 60.0,
        sun_min=30.0,
        columns=_columns(column),
        said=_said(len(rows[0])),
    )


def _columns(column: Callable[[int, str], Column]) -> dict[str, Column]:
    """Return the columns that count; what the form calls missing is NaN."""
    return {
        "air_degc": without(column(6, "dry bulb"), 99.9),
        "dew_degc": without(column(7, "dew point"), 99.9),
        "humidity_frac": without(column(8, "relative humidity"), 999.0) / 100.0,
        "pressure_pa": without(column(9, "pressure"), 999999.0),
        "ghi_w_per_m2": without(column(13, "global light"), 9999.0),
        "dni_w_per_m2": without(column(14, "direct light"), 9999.0),
        "dhi_w_per_m2": without(column(15, "diffuse light"), 9999.0),
        "wind_m_per_s": without(column(21, "wind speed"), 999.0),
    }


def _said(fields: int) -> tuple[str, ...]:
    if fields >= FIELDS:
        return ()
    return (f"rows of {fields} fields instead of {FIELDS}: read by position",)
