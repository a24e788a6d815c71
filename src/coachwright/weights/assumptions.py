"""Tolerances and places that are assumed where the record gives none."""

from dataclasses import dataclass
from functools import cache

from coachwright.errors import UnknownName
from coachwright.reference import limit, table


@dataclass(frozen=True, kw_only=True, slots=True)
class Assumption:
    """One assumed value.

    Attributes
    ----------
    value
        In `unit`.
    """

    value: float
    unit: str


@cache
def assumption(name: str) -> Assumption:
    """Return one row of ``weights_assumptions``.

    Raises
    ------
    UnknownName
        Where there is no such row.
    """
    rows = {row["id"]: row for row in table("weights_assumptions")}
    if name not in rows:
        raise UnknownName("assumption", name, sorted(rows))
    return Assumption(value=float(rows[name]["value"]), unit=rows[name]["unit"])


def limit_kg(name: str) -> float:
    """Return a mass of the limits.

    Parameters
    ----------
    name
        Id in ``limits_weights``; its unit is kg.
    """
    return limit(name).value
