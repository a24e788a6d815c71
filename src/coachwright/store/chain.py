"""A build's chain of events: what it held after any of them, and the next link of it."""

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, insert, select, update

from coachwright.errors import StoreDamaged, UnknownName
from coachwright.store import tables
from coachwright.store.edits import parsed
from coachwright.store.records import Deed, Event, Reach, Sheet
from coachwright.store.splices import as_text, from_text, spliced, splices

SNAPSHOT_EVERY = 50
"""Events after which the whole text is kept again; so many splices are made in a millisecond."""

_event = tables.event.c


@dataclass(frozen=True, kw_only=True, slots=True)
class Link:
    """A new event of a build.

    Attributes
    ----------
    after
        Text of the sheet.
    places
        Where it changed.
    deed, about
        What it is, and of which event it is the undoing, redoing or return.
    actor, at
        By whom, and when.
    reach
        What the actor's next undo and redo take back after it; the event itself where None.
    """

    after: str
    places: tuple[str, ...]
    deed: Deed
    actor: str
    at: datetime
    about: int | None = None
    reach: Reach | None = None


def digest_of(text: str) -> str:
    """Return the SHA-256 of a text, as hexadecimal digits."""
    return hashlib.sha256(text.encode()).hexdigest()


def head_of(connection: Connection, build_id: int, *, hold: bool = False) -> int:
    """Return the number of a build's last event.

    Parameters
    ----------
    connection
        Of an open transaction.
    build_id
        The build.
    hold
        Let nobody else append until the transaction ends.

    Raises
    ------
    UnknownName
        Where there is no such build.
    """
    query = select(tables.build.c.head).where(tables.build.c.id == build_id)
    found = connection.execute(query.with_for_update() if hold else query).scalar()
    if found is None:
        listed = connection.execute(select(tables.build.c.id).order_by(tables.build.c.id))
        raise UnknownName("build", f"{build_id}", [f"{each}" for each in listed.scalars()])
    return int(found)


def sheet_at(connection: Connection, build_id: int, number: int) -> Sheet:
    """Return a build's sheet after one of its events.

    Raises
    ------
    UnknownName
        Where there is no such event.
    StoreDamaged
        Where what is kept does not lead to the sheet that was kept.
    """
    kept = tables.snapshot.c
    near = connection.execute(
        select(kept.number, kept.text)
        .where(kept.build_id == build_id, kept.number <= number)
        .order_by(kept.number.desc())
        .limit(1)
    ).first()
    start, text = (near.number, near.text) if near is not None else (0, "")
    rows = connection.execute(
        select(_event.number, _event.splices, _event.digest)
        .where(_event.build_id == build_id, _event.number.between(max(start, 1), number))
        .order_by(_event.number)
    ).all()
    if not rows or rows[-1].number != number:
        raise UnknownName("event", f"{number}", [f"1 to {head_of(connection, build_id)}"])
    for row in rows:
        if row.number > start:
            text = spliced(text, from_text(row.splices))
    if digest_of(text) != rows[-1].digest:
        raise StoreDamaged(
            f"event {number} of build {build_id} does not lead to the sheet that was kept; "
            "keep the store as it is and restore the last backup"
        )
    return Sheet(build_id=build_id, event=number, text=text, digest=rows[-1].digest)


def append(connection: Connection, before: Sheet, link: Link) -> Sheet:
    """Append an event to a build whose head is held."""
    number = before.event + 1
    digest = digest_of(link.after)
    reach = link.reach or Reach(undo=number, redo=None)
    connection.execute(
        insert(tables.event).values(
            build_id=before.build_id,
            number=number,
            at=link.at,
            actor=link.actor,
            deed=link.deed.value,
            about=link.about,
            splices=as_text(splices(before.text, link.after)),
            places=json.dumps(link.places, ensure_ascii=False),
            digest=digest,
            undo_next=number if reach.undo == THIS else reach.undo,
            redo_next=number if reach.redo == THIS else reach.redo,
        )
    )
    if number == 1 or number % SNAPSHOT_EVERY == 0:
        connection.execute(
            insert(tables.snapshot).values(
                build_id=before.build_id, number=number, text=link.after
            )
        )
    data = parsed(link.after)
    connection.execute(
        update(tables.build)
        .where(tables.build.c.id == before.build_id)
        .values(
            head=number,
            changed_at=link.at,
            name=_printable(data["name"]),
            customer=_printable(data.get("customer", "")),
        )
    )
    return Sheet(build_id=before.build_id, event=number, text=link.after, digest=digest)


THIS = -1
"""In a reach: the event itself, whose number is not known yet."""


def reach_of(
    connection: Connection, build_id: int, actor: str, *, before: int | None = None
) -> Reach:
    """Return what a person's next undo and redo take back.

    Parameters
    ----------
    connection
        Of an open transaction.
    build_id
        The build.
    actor
        The person.
    before
        As it was before this event; as it is now where None.
    """
    query = select(_event.undo_next, _event.redo_next).where(
        _event.build_id == build_id, _event.actor == actor
    )
    if before is not None:
        query = query.where(_event.number < before)
    row = connection.execute(query.order_by(_event.number.desc()).limit(1)).first()
    if row is None:
        return Reach(undo=None, redo=None)
    return Reach(undo=row.undo_next, redo=row.redo_next)


def history(
    connection: Connection, build_id: int, *, after: int = 0, most: int | None = None
) -> tuple[Event, ...]:
    """Return events of a build, the newest first."""
    head_of(connection, build_id)
    query = (
        select(_event.number, _event.at, _event.actor, _event.deed, _event.about, _event.places)
        .where(_event.build_id == build_id, _event.number > after)
        .order_by(_event.number.desc())
        .limit(most)
    )
    return tuple(_as_event(row) for row in connection.execute(query))


def actors_since(connection: Connection, build_id: int, number: int) -> tuple[str, ...]:
    """Return who appended events after one, in their order."""
    query = (
        select(_event.actor)
        .where(_event.build_id == build_id, _event.number > number)
        .order_by(_event.number)
    )
    return tuple(dict.fromkeys(connection.execute(query).scalars()))


def _printable(given: str) -> str:
    """Return text for a list, where a line break or a null would only do harm."""
    return "".join(sign if sign.isprintable() else " " for sign in given).strip()


def _as_event(row: Row[*tuple[Any, ...]]) -> Event:
    return Event(
        number=row.number,
        at=row.at,
        actor=row.actor,
        deed=Deed(row.deed),
        about=row.about,
        places=tuple(_listed(row.places)),
    )


def _listed(kept: str) -> Iterable[str]:
    listed: list[str] = json.loads(kept)
    return listed
