"""The log of what was done to the store and to accounts; builds have their own history."""

from datetime import datetime

from sqlalchemy import Connection, func, insert, or_, select

from coachwright.store import tables
from coachwright.store.engine import PLACE, Database
from coachwright.store.records import AuditEntry

REFUSED = "sign-in refused"
"""The one deed whose name is only what somebody has typed."""
_audit = tables.audit.c


class Log:
    """What was done, by whom and from where; `Store.log` is one."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def note(
        self, *, actor: str, deed: str, about: str, at: datetime, place: str | None = None
    ) -> None:
        """Write a line."""
        with self._database.writing() as connection:
            note(connection, actor=actor, deed=deed, about=about, at=at, place=place)

    def lines(
        self, *, most: int, before: int | None = None, actor: str = "", holding: str = ""
    ) -> tuple[AuditEntry, ...]:
        """Return lines, the newest first; of one person, or those that hold some words."""
        with self._database.reading() as connection:
            return entries(connection, most=most, before=before, actor=actor, holding=holding)

    def actors(self) -> tuple[str, ...]:
        """Return everybody of whom there is a line, by name."""
        with self._database.reading() as connection:
            found = connection.execute(select(_audit.actor).distinct().order_by(_audit.actor))
            return tuple(found.scalars())


def note(
    connection: Connection,
    *,
    actor: str,
    deed: str,
    about: str,
    at: datetime,
    place: str | None = None,
) -> None:
    """Write one line; from where it was done, the connection knows where it is not given."""
    known = connection.get_execution_options().get(PLACE, "") if place is None else place
    connection.execute(
        insert(tables.audit).values(at=at, actor=actor, deed=deed[:40], about=about, place=known)
    )


def entries(
    connection: Connection,
    *,
    most: int,
    before: int | None = None,
    actor: str = "",
    holding: str = "",
) -> tuple[AuditEntry, ...]:
    """Return lines of the log, the newest first.

    Parameters
    ----------
    connection
        Reads.
    most
        How many.
    before
        Only those before the line with this number.
    actor
        Only what this person did.
    holding
        Only those with these words in what was done, about what, or from where.
    """
    query = select(tables.audit).order_by(_audit.id.desc()).limit(most)
    if before is not None:
        query = query.where(_audit.id < before)
    if actor:
        query = query.where(_audit.actor == actor)
    if holding:
        wanted = holding.lower()
        places = (_audit.deed, _audit.about, _audit.place)
        query = query.where(
            or_(*(func.lower(each).contains(wanted, autoescape=True) for each in places))
        )
    return tuple(
        AuditEntry(
            number=row.id,
            at=row.at,
            actor=row.actor,
            deed=row.deed,
            about=row.about,
            place=row.place,
        )
        for row in connection.execute(query)
    )


def last_seen(connection: Connection) -> dict[str, datetime]:
    """Return when each actor last signed in, edited or ticked anything."""
    event = tables.event.c
    sources = (
        select(_audit.actor, func.max(_audit.at)).where(_audit.deed != REFUSED),
        select(event.actor, func.max(event.at)),
    )
    found: dict[str, datetime] = {}
    for query in sources:
        for actor, at in connection.execute(query.group_by(query.selected_columns[0])):
            found[actor] = max(at, found.get(actor, at))
    return found
