"""Published tables, as CSV with a source in every row, and the limits that rules compare with."""

from coachwright.reference.limits import Limit, limit, limits
from coachwright.reference.tables import table

__all__ = ["Limit", "limit", "limits", "table"]
