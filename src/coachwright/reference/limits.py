"""The limits that rules compare with: one row each in the ``limits_<discipline>.csv`` tables."""

import datetime
from dataclasses import dataclass
from functools import cache

from coachwright.errors import UnknownName
from coachwright.model.finding import Source, Status
from coachwright.reference.tables import table, table_names


@dataclass(frozen=True, kw_only=True, slots=True)
class Limit:
    """A limit with its source.

    Attributes
    ----------
    value
        In `unit`.
    valid_from
        The day from which the rule holds; None where the source does not say.
    """

    id: str
    title: str
    value: float
    unit: str
    source: Source
    valid_from: datetime.date | None
    note: str


@cache
def limits() -> dict[str, Limit]:
    """Return every limit by id."""
    found: dict[str, Limit] = {}
    for name in table_names():
        if name.startswith("limits_"):
            for row in table(name):
                found[row["id"]] = _limit(row)
    return found


def limit(limit_id: str) -> Limit:
    """Return one limit.

    Raises
    ------
    UnknownName
        Where there is no such limit.
    """
    try:
        return limits()[limit_id]
    except KeyError:
        raise UnknownName("limit", limit_id, sorted(limits())) from None


def _limit(row: dict[str, str]) -> Limit:
    return Limit(
        id=row["id"],
        title=row["title"],
        value=float(row["value"]),
        unit=row["unit"],
        source=Source(
            key=row["source"],
            clause=row["clause"],
            edition=row["edition"],
            status=Status(row["status"]),
        ),
        valid_from=datetime.date.fromisoformat(row["valid_from"]) if row["valid_from"] else None,
        note=row["note"],
    )
