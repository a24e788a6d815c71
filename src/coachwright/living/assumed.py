"""What the coupled year assumes where no build says it: a table with status, source and range."""

from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import UnknownName
from coachwright.model.finding import Status


@dataclass(frozen=True, kw_only=True, slots=True)
class Assumed:
    """One assumption and the range that it may lie in.

    Attributes
    ----------
    value, low, high
        In `unit`.
    """

    id: str
    title: str
    value: float
    low: float
    high: float
    unit: str
    status: Status
    source: str
    note: str


def assumed(assumption_id: str) -> Assumed:
    """Return one row of ``living_assumptions``.

    Raises
    ------
    UnknownName
        Where there is no such row.

    Examples
    --------
    >>> assumed("rib-share").value
    0.1
    """
    rows = _rows()
    if assumption_id not in rows:
        raise UnknownName("assumption", assumption_id, sorted(rows))
    return rows[assumption_id]


@cache
def _rows() -> dict[str, Assumed]:
    return {
        row["id"]: Assumed(
            id=row["id"],
            title=row["title"],
            value=float(row["value"]),
            low=float(row["low"]),
            high=float(row["high"]),
            unit=row["unit"],
            status=Status(row["status"]),
            source=row["source"],
            note=row["note"],
        )
        for row in reference.table("living_assumptions")
    }
