"""Read the shop's own logger: any CSV file, with a map that says which column is what."""

import csv
import datetime
import io
from typing import Annotated, Literal

import numpy as np
from pydantic import Field

from coachwright.climate.model import Place
from coachwright.climate.raw import Column, RawRows, numbers, refused
from coachwright.model.record import Angle, Length, Quantity, Record

UNITS: dict[str, dict[str, tuple[float, float]]] = {
    "air": {"degC": (1.0, 0.0), "degF": (5.0 / 9.0, -160.0 / 9.0), "K": (1.0, -273.15)},
    "dew": {"degC": (1.0, 0.0), "degF": (5.0 / 9.0, -160.0 / 9.0), "K": (1.0, -273.15)},
    "humidity": {"%": (0.01, 0.0), "frac": (1.0, 0.0)},
    "ghi": {"W/m2": (1.0, 0.0), "kW/m2": (1000.0, 0.0), "kJ/m2/h": (1.0 / 3.6, 0.0)},
    "dni": {"W/m2": (1.0, 0.0), "kW/m2": (1000.0, 0.0), "kJ/m2/h": (1.0 / 3.6, 0.0)},
    "dhi": {"W/m2": (1.0, 0.0), "kW/m2": (1000.0, 0.0), "kJ/m2/h": (1.0 / 3.6, 0.0)},
    "wind": {"m/s": (1.0, 0.0), "km/h": (1.0 / 3.6, 0.0), "mph": (0.44704, 0.0)},
    "pressure": {"Pa": (1.0, 0.0), "hPa": (100.0, 0.0), "mbar": (100.0, 0.0), "kPa": (1e3, 0.0)},
}
"""Quantity → unit that a map may name → factor and offset to the unit inside."""
_INSIDE = {
    "air": "air_degc",
    "dew": "dew_degc",
    "humidity": "humidity_frac",
    "ghi": "ghi_w_per_m2",
    "dni": "dni_w_per_m2",
    "dhi": "dhi_w_per_m2",
    "wind": "wind_m_per_s",
    "pressure": "pressure_pa",
}
Quantities = Literal["air", "dew", "humidity", "ghi", "dni", "dhi", "wind", "pressure"]


class LoggerPlace(Record):
    """Where the logger stands."""

    name: str = Field(min_length=1)
    latitude_deg: Angle
    longitude_deg: Angle
    altitude_mm: Length = 0.0
    zone_h: Annotated[float, Quantity("time", least=-14.0, most=14.0)]
    """Its clock ahead of universal time, the same all year."""


class LoggerTime(Record):
    """How it stamps its rows."""

    heading: str
    form: str = "%Y-%m-%d %H:%M"
    """As Python's strptime writes it."""
    stamp: Literal["start", "middle", "end"]
    """Which moment of a row's time the stamp is."""
    every_h: Annotated[float, Quantity("time", above=0.0, most=1.0)] = 1.0
    """Time that a row stands for, such as "10 min"."""


class LoggerColumn(Record):
    """One column of it."""

    quantity: Quantities
    heading: str
    unit: str


class LoggerMap(Record):
    """Which column of a logger's file is what."""

    place: LoggerPlace
    time: LoggerTime
    columns: tuple[LoggerColumn, ...] = Field(min_length=1)
    delimiter: Literal[",", ";", "\t"] = ","
    decimal: Literal[".", ","] = "."


def read_logger(*, text: str, file: str, logger: LoggerMap) -> RawRows:
    """Return the rows of a logger's file.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.
    logger
        Which column is what.

    Raises
    ------
    WeatherFileError
        With the line and what stood there, or what of the map is not in the file.

    Notes
    -----
    Stamps at the end or in the middle of a row's time are moved to its start.
    """
    rows = list(csv.reader(io.StringIO(text), delimiter=logger.delimiter))
    if not rows:
        raise refused(file, "the whole file", "nothing", "headings and rows", "export it again")
    headings = [word.strip() for word in rows[0]]
    body = [row for row in rows[1:] if any(cell.strip() for cell in row)]
    year, month, day, start = _stamps(
        body, _place_of(headings, logger.time.heading, file), logger, file
    )
    if logger.decimal == ",":
        body = [[cell.replace(",", ".") for cell in row] for row in body]
    return RawRows(
        kind="logger",
        title=logger.place.name,
        place=Place(
            latitude_deg=logger.place.latitude_deg,
            longitude_deg=logger.place.longitude_deg,
            altitude_m=logger.place.altitude_mm / 1000.0,
            zone_h=logger.place.zone_h,
        ),
        year=year,
        month=month,
        day=day,
        start_min=start,
        sun_min=30.0,
        columns=dict(_column(column, headings, body, file) for column in logger.columns),
    )


def _place_of(headings: list[str], heading: str, file: str) -> int:
    if heading not in headings:
        raise refused(
            file,
            "line 1",
            f'no column "{heading}"',
            "one of " + ", ".join(f'"{word}"' for word in headings),
            "correct the heading in the map",
        )
    return headings.index(heading)


def _column(
    column: LoggerColumn, headings: list[str], body: list[list[str]], file: str
) -> tuple[str, Column]:
    units = UNITS[column.quantity]
    if column.unit not in units:
        raise refused(
            "the map",
            f"columns, {column.quantity}, unit",
            f'"{column.unit}"',
            "one of " + ", ".join(units),
            "write the unit that the logger uses",
        )
    factor, offset = units[column.unit]
    place = _place_of(headings, column.heading, file)
    found = numbers(body, place, file=file, first_line=2, heading=column.heading)
    return _INSIDE[column.quantity], found * factor + offset


def _stamps(
    body: list[list[str]], place: int, logger: LoggerMap, file: str
) -> tuple[np.ndarray, np.ndarray, np.ndarray, Column]:
    every = logger.time.every_h
    back = {"start": 0.0, "middle": every / 2.0, "end": every}[logger.time.stamp]
    earlier = datetime.timedelta(hours=back)
    found = []
    for at, row in enumerate(body):
        try:
            stamp = datetime.datetime.strptime(row[place].strip(), logger.time.form)  # noqa: DTZ007
            found.append(stamp - earlier)
        except (ValueError, IndexError):
            stood = row[place] if place < len(row) else "nothing"
            raise refused(
                file,
                f"line {at + 2}, {logger.time.heading}",
                f'"{stood}"',
                f"a stamp as {logger.time.form}",
                "correct the form in the map, or take the row out",
            ) from None
    return (
        np.array([each.year for each in found], dtype=np.int64),
        np.array([each.month for each in found], dtype=np.int64),
        np.array([each.day for each in found], dtype=np.int64),
        np.array([each.hour * 60.0 + each.minute + each.second / 60.0 for each in found]),
    )
