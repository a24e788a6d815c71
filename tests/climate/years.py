"""Measured years to hold the program against."""

import gzip
from functools import cache
from importlib import resources
from pathlib import Path

from coachwright.climate.model import Weather
from coachwright.climate.read_logger import LoggerMap
from coachwright.climate.reading import read_weather

DATA = Path(__file__).parent / "data"
PACKAGED = {
    "greensboro": "723170TYA.CSV",
    "sand-point": "703165TY.csv",
    "miami-tmy2": "12839.tm2",
}
LOGGED = {
    "golden": (39.73, -105.18, 1876.0, -7.0),
    "miami": (25.77, -80.18, 7.0, -5.0),
    "nyc": (40.65, -73.98, 27.0, -5.0),
}
"""Latitude, longitude, altitude, zone, as the metadata beside the files say."""


def packaged(name: str) -> bytes:
    """Return a file of pvlib's own."""
    return (resources.files("pvlib") / "data" / PACKAGED[name]).read_bytes()


def logger_map(name: str) -> LoggerMap:
    """Return the map of a database file that was cut down to a logger's columns."""
    latitude, longitude, altitude, zone = LOGGED[name]
    columns = (
        ("air", "temp_air", "degC"),
        ("dew", "dew_point", "degC"),
        ("ghi", "ghi", "W/m2"),
        ("dni", "dni", "W/m2"),
        ("dhi", "dhi", "W/m2"),
        ("wind", "wind_speed", "m/s"),
        ("pressure", "pressure", "mbar"),
    )
    return LoggerMap.model_validate(
        {
            "place": {
                "name": name,
                "latitude_deg": latitude,
                "longitude_deg": longitude,
                "altitude_mm": altitude * 1000.0,
                "zone_h": zone,
            },
            "time": {"heading": "stamp", "stamp": "middle"},
            "columns": [
                {"quantity": quantity, "heading": heading, "unit": unit}
                for quantity, heading, unit in columns
            ],
        }
    )


@cache
def measured(name: str) -> Weather:
    """Return a measured or typical year."""
    if name in PACKAGED:
        return read_weather(data=packaged(name), file=PACKAGED[name])
    if name in LOGGED:
        data = gzip.decompress((DATA / f"{name}.csv.gz").read_bytes())
        return read_weather(data=data, file=f"{name}.csv", logger=logger_map(name))
    data = gzip.decompress((DATA / f"{name}.epw.gz").read_bytes())
    return read_weather(data=data, file=f"{name}.epw")
