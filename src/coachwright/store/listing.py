"""The list of builds, their named revisions, and putting a build away."""

from datetime import datetime

from sqlalchemy import Connection, func, insert, select, update

from coachwright.errors import NotAllowed, UnknownName
from coachwright.store import tables
from coachwright.store.chain import head_of
from coachwright.store.records import BuildEntry, Revision

MOST_NAME = 80
"""Characters of a revision's name."""

_build, _revision = tables.build.c, tables.revision.c


def builds(connection: Connection, *, archived: bool) -> tuple[BuildEntry, ...]:
    """Return the builds that are put away, or those that are not; the last changed first."""
    away = _build.archived_at.is_not(None) if archived else _build.archived_at.is_(None)
    return _entries(connection, away)


def build(connection: Connection, build_id: int) -> BuildEntry:
    """Return one build.

    Raises
    ------
    UnknownName
        Where there is no such build.
    """
    head_of(connection, build_id)
    return _entries(connection, _build.id == build_id)[0]


def archive(connection: Connection, build_id: int, at: datetime | None) -> None:
    """Put a build away at a moment, or take it out again; nothing of it is lost.

    Raises
    ------
    UnknownName
        Where there is no such build.
    """
    head_of(connection, build_id, hold=True)
    connection.execute(update(tables.build).where(_build.id == build_id).values(archived_at=at))


def name_revision(connection: Connection, build_id: int, revision: Revision) -> Revision:
    """Name a point of a build.

    Raises
    ------
    NotAllowed
        Where the name is taken already, empty or too long.
    UnknownName
        Where there is no such build or event.
    """
    head = head_of(connection, build_id, hold=True)
    name = revision.name.strip()
    if not 0 < len(name) <= MOST_NAME:
        raise NotAllowed(f"a revision needs a name of 1 to {MOST_NAME} characters")
    if any(each.name == name for each in revisions(connection, build_id)):
        raise NotAllowed(f"there is a revision {name!r} already; a name stays where it is")
    if not 1 <= revision.event <= head:
        raise UnknownName("event", f"{revision.event}", [f"1 to {head}"])
    connection.execute(
        insert(tables.revision).values(
            build_id=build_id,
            name=name,
            event=revision.event,
            at=revision.at,
            actor=revision.actor,
            note=revision.note,
        )
    )
    return Revision(
        name=name,
        event=revision.event,
        at=revision.at,
        actor=revision.actor,
        note=revision.note,
    )


def revisions(connection: Connection, build_id: int) -> tuple[Revision, ...]:
    """Return the named points of a build, the first named first.

    Raises
    ------
    UnknownName
        Where there is no such build.
    """
    head_of(connection, build_id)
    rows = connection.execute(
        select(tables.revision)
        .where(_revision.build_id == build_id)
        .order_by(_revision.at, _revision.event, _revision.name)
    )
    return tuple(
        Revision(name=row.name, event=row.event, at=row.at, actor=row.actor, note=row.note)
        for row in rows
    )


def _entries(connection: Connection, wanted: object) -> tuple[BuildEntry, ...]:
    newest = select(
        _revision.build_id,
        _revision.name,
        func.row_number()
        .over(
            partition_by=_revision.build_id,
            order_by=(_revision.at.desc(), _revision.event.desc(), _revision.name.desc()),
        )
        .label("place"),
    ).subquery()
    rows = connection.execute(
        select(tables.build, newest.c.name.label("revision"))
        .join(
            newest,
            (newest.c.build_id == _build.id) & (newest.c.place == 1),
            isouter=True,
        )
        .where(wanted)  # type: ignore[arg-type]  # a condition in SQL
        .order_by(_build.changed_at.desc(), _build.id.desc())
    )
    return tuple(
        BuildEntry(
            build_id=row.id,
            name=row.name,
            customer=row.customer,
            created_at=row.created_at,
            created_by=row.created_by,
            changed_at=row.changed_at,
            archived_at=row.archived_at,
            head=row.head,
            revision=row.revision or "",
        )
        for row in rows
    )
