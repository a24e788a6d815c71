"""The log of what was done to the store and to accounts; builds have their own history."""

from datetime import datetime

from sqlalchemy import Connection, insert, select

from coachwright.store import tables
from coachwright.store.records import AuditEntry

_audit = tables.audit.c


def note(connection: Connection, *, actor: str, deed: str, about: str, at: datetime) -> None:
    """Write one line."""
    connection.execute(
        insert(tables.audit).values(at=at, actor=actor, deed=deed[:40], about=about)
    )


def entries(
    connection: Connection, *, most: int, before: int | None = None
) -> tuple[AuditEntry, ...]:
    """Return lines of the log, the newest first."""
    query = select(tables.audit).order_by(_audit.id.desc()).limit(most)
    if before is not None:
        query = query.where(_audit.id < before)
    return tuple(
        AuditEntry(number=row.id, at=row.at, actor=row.actor, deed=row.deed, about=row.about)
        for row in connection.execute(query)
    )
