"""Tell the form of a weather file and read it into a year."""

import re
from collections.abc import Callable
from dataclasses import replace

from coachwright.climate.mending import year_of
from coachwright.climate.model import Weather
from coachwright.climate.raw import RawRows, refused
from coachwright.climate.read_epw import read_epw
from coachwright.climate.read_logger import LoggerMap, read_logger
from coachwright.climate.read_nsrdb import read_nsrdb
from coachwright.climate.read_pvgis import read_pvgis_csv, read_pvgis_json
from coachwright.climate.read_tmy import TMY2_HEAD, read_tmy2, read_tmy3

FORMS = "EPW, TMY2, TMY3, NSRDB PSM3 or PSM4 CSV, PVGIS CSV or JSON, or any CSV with a map"
_Reader = Callable[..., RawRows]
_TMY3 = re.compile(r"^[^\n]*\n\"?Date \(MM/DD/YYYY\)")

_FORMS: tuple[tuple[Callable[[str], object], _Reader], ...] = (
    (lambda start: start.upper().startswith("LOCATION,"), read_epw),
    (lambda start: start.lstrip().startswith("{"), read_pvgis_json),
    (lambda start: start.startswith("Source,") or "\nYear,Month,Day,Hour" in start, read_nsrdb),
    (lambda start: "Latitude (decimal degrees)" in start, read_pvgis_csv),
    (_TMY3.match, read_tmy3),
    (lambda start: TMY2_HEAD.match(start.split("\n", maxsplit=1)[0]), read_tmy2),
)
"""How the first 4,000 signs of a form are told → its reader."""


def read_weather(
    *, data: bytes, file: str, logger: LoggerMap | None = None, year: int | None = None
) -> Weather:
    """Return the year that a weather file holds.

    Parameters
    ----------
    data
        Of the file.
    file
        Its name, for faults.
    logger
        Which column is what, for a logger's file.
    year
        Which one, where the file holds several.

    Raises
    ------
    WeatherFileError
        Where its form is not known, or something cannot be mended safely.

    Notes
    -----
    Text that is not UTF-8 is read as Latin-1: what is computed with is plain ASCII in every form.
    """
    text, said = _decoded(data)
    raw = read_rows(text=text, file=file, logger=logger)
    made = year_of(raw=raw, file=file, year=year)
    return replace(made, repairs=(said, *made.repairs)) if said else made


def read_rows(*, text: str, file: str, logger: LoggerMap | None = None) -> RawRows:
    """Return the rows of a weather file of any form.

    Parameters
    ----------
    text
        Of the file.
    file
        Its name, for faults.
    logger
        Which column is what, for a logger's file.

    Raises
    ------
    WeatherFileError
        Where its form is not known.
    """
    if logger is not None:
        return read_logger(text=text, file=file, logger=logger)
    start = text[:4000]
    for fits, read in _FORMS:
        if fits(start):
            return read(text=text, file=file)
    first = start.split("\n", maxsplit=1)[0].strip()[:60]
    raise refused(
        file,
        "line 1",
        f'"{first}"' if first else "nothing",
        FORMS,
        "name a file of one of these, or write a map and give it with --map",
    )


def _decoded(data: bytes) -> tuple[str, str]:
    try:
        return data.decode("utf-8-sig"), ""
    except UnicodeDecodeError:
        return data.decode("latin-1"), "text in Latin-1 instead of UTF-8"
