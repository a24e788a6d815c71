"""What a weather file holds before it is a year: rows, their stamps, and what was said of them."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import MONTH_DAYS, Place
from coachwright.errors import Fault, WeatherFileError

Column = NDArray[np.float64]
"""One value for each row; NaN where there is none."""
DAY_BEFORE_MONTH = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])
DAY_MIN = 1440.0
YEAR_MIN = 365 * DAY_MIN


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class RawRows:
    """The rows of a weather file.

    Attributes
    ----------
    kind
        The form of the file, such as "EPW".
    year, month, day
        Of each row.
    start_min
        Minutes from midnight at which the time begins that a row stands for.
    sun_min
        Minute of each hour at which the sun stands as for the row's light.
    columns
        By the names of `Weather.columns`, and ``humidity_frac``.
    said
        What the reader had to take for granted or mend.
    """

    kind: str
    title: str
    place: Place
    year: NDArray[np.int64]
    month: NDArray[np.int64]
    day: NDArray[np.int64]
    start_min: Column
    sun_min: float
    columns: dict[str, Column]
    said: tuple[str, ...] = ()


def refused(file: str, field: str, found: str, allowed: str, action: str) -> WeatherFileError:
    """Return the exception that refuses a file for one fault."""
    return WeatherFileError(
        [Fault(file=file, field=field, found=found, allowed=allowed, action=action)]
    )


def number(text: str, *, file: str, field: str) -> float:
    """Return a number of a heading.

    Raises
    ------
    WeatherFileError
        Where it is none.
    """
    try:
        return float(text)
    except ValueError:
        raise refused(
            file, field, f'"{text.strip()}"', "a number", "correct it, or fetch the file again"
        ) from None


def numbers(
    rows: Sequence[Sequence[str]], place: int, *, file: str, first_line: int, heading: str
) -> Column:
    """Return one column of rows; an empty cell is NaN.

    Raises
    ------
    WeatherFileError
        With the line of the first cell that is no number, or of a row that ends before it.
    """
    try:
        return np.array([float(row[place]) for row in rows])
    except (ValueError, IndexError):
        return np.array(
            [
                _cell(row, place, f"{file}", f"line {first_line + at}, {heading}")
                for at, row in enumerate(rows)
            ]
        )


def _cell(row: Sequence[str], place: int, file: str, field: str) -> float:
    if place >= len(row):
        raise refused(
            file,
            field,
            f"a row of {len(row)} cells",
            f"at least {place + 1} cells",
            "the file was cut or a row has slipped: fetch it again",
        )
    text = row[place].strip()
    return np.nan if text == "" else number(text, file=file, field=field)


def without(column: Column, missing: float, *, above: bool = True) -> Column:
    """Return a column with the values that mean "missing" as NaN.

    Parameters
    ----------
    column
        Any.
    missing
        This and more (or this and less) means missing.
    above
        More, not less.
    """
    gone = column >= missing if above else column <= missing
    return np.where(gone, np.nan, column)


def moved(
    month: NDArray[np.int64], day: NDArray[np.int64], start_min: Column, *, by_min: float
) -> tuple[NDArray[np.int64], NDArray[np.int64], Column]:
    """Return stamps moved by some minutes; beyond the ends of the year they come in again.

    Leap days stay where they are: they are left out later.
    """
    leap = (month == 2) & (day == 29)  # noqa: PLR2004  # 29 February
    whole = (DAY_BEFORE_MONTH[month - 1] + np.where(leap, 28, day) - 1) * DAY_MIN + start_min
    there = (whole + by_min) % YEAR_MIN
    of_year = (there // DAY_MIN).astype(np.int64)
    to_month = np.searchsorted(DAY_BEFORE_MONTH, of_year, side="right").astype(np.int64)
    to_day = (of_year - DAY_BEFORE_MONTH[to_month - 1] + 1).astype(np.int64)
    return (
        np.where(leap, month, to_month),
        np.where(leap, day, to_day),
        np.where(leap, start_min, there % DAY_MIN),
    )
