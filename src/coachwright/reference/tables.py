"""Read the packaged tables."""

import csv
from functools import cache
from importlib import resources

from coachwright.errors import UnknownName

Row = dict[str, str]


def table_names() -> tuple[str, ...]:
    """Return the names of the packaged tables, sorted."""
    folder = resources.files(__package__)
    return tuple(
        sorted(
            entry.name.removesuffix(".csv")
            for entry in folder.iterdir()
            if entry.name.endswith(".csv")
        )
    )


@cache
def table(name: str) -> tuple[Row, ...]:
    """Return the rows of a packaged table as text, by column heading.

    Parameters
    ----------
    name
        File name without ``.csv``.

    Raises
    ------
    UnknownName
        Where there is no such table.
    """
    path = resources.files(__package__) / f"{name}.csv"
    if not path.is_file():
        raise UnknownName("table", name, table_names())
    with path.open(encoding="utf-8") as lines:
        return tuple(csv.DictReader(lines))
