"""What is assumed about people and parts where the record says nothing."""

from functools import cache

from coachwright.errors import UnknownName
from coachwright.reference import table


@cache
def assumed_mm(name: str) -> float:
    """Return one length of ``layout_interior``. [mm].

    Parameters
    ----------
    name
        Id of a row.

    Raises
    ------
    UnknownName
        Where there is no such row.

    Examples
    --------
    >>> assumed_mm("shoes")
    30.0
    """
    rows = {row["id"]: row for row in table("layout_interior")}
    if name not in rows:
        raise UnknownName("assumption", name, sorted(rows))
    return float(rows[name]["value"])


@cache
def entry_widths_mm() -> tuple[float, ...]:
    """Return the widths of way that are looked at, widest first. [mm]."""
    return tuple(float(row["width_mm"]) for row in table("layout_entry_widths"))
