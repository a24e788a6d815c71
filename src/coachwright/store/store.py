"""The store: the one way in for shells and actions.

Time, chance and the address come in as arguments.  Every call is one transaction: it is kept whole
or not at all, and what is kept is never changed, only added to.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from typing import Self

from sqlalchemy import Connection, select, update

from coachwright.store import attaching, auditing, chain, editing, listing, tables
from coachwright.store.differences import Difference, differences
from coachwright.store.edits import parsed
from coachwright.store.engine import Checked, Database
from coachwright.store.records import (
    Appended,
    Attachment,
    AuditEntry,
    BuildEntry,
    Change,
    Conflict,
    Deed,
    Event,
    Judge,
    Reach,
    Revision,
    Sheet,
    WholeSheet,
)
from coachwright.store.roster import Roster
from coachwright.store.ticking import Floor


class Store:
    """Builds as appended events and named revisions, and the people who make them.

    `coachwright.store.opening.open_store` makes it.  It may be used by several threads.
    """

    def __init__(
        self,
        database: Database,
        judge: Judge,
        *,
        floor: Database | None = None,
        owner: Database | None = None,
    ) -> None:
        self._database = database
        self._judge = judge
        self.people = Roster(owner or database)
        self.log = auditing.Log(database)
        self.floor = Floor(floor or database)

    def __enter__(self) -> Self:
        """Return the store itself."""
        return self

    def __exit__(self, *_: object) -> None:
        """Close it."""
        self.close()

    def close(self) -> None:
        """Let go of the database."""
        self._database.close()

    def checked(
        self,
        check: Callable[[], None],
        *,
        floor: Callable[[], None] | None = None,
        owner: Callable[[], None] | None = None,
        place: str = "",
    ) -> "Store":
        """Return the same store, with a check before each writing; what it raises is raised.

        Parameters
        ----------
        check
            Before everything.
        floor, owner
            In its place, before what the shop floor ticks off, and before accounts are changed.
        place
            From where it is written, for the log.
        """
        return Store(
            Checked(self._database, check, place),
            self._judge,
            floor=Checked(self._database, floor or check, place),
            owner=Checked(self._database, owner or check, place),
        )

    @property
    def shown(self) -> str:
        """The address as a person may see it, without a password."""
        return self._database.shown

    # ----------------------------------------------------------------------------------- builds

    def create_build(self, text: str, *, actor: str, at: datetime) -> Sheet:
        """Keep a new build.

        Raises
        ------
        BuildFileError
            With every fault of the sheet.
        """
        with self._database.writing() as connection:
            return editing.create(connection, text, actor, at, self._judge)

    def builds(self, *, archived: bool = False) -> tuple[BuildEntry, ...]:
        """Return the builds in work, or those that are put away; the last changed first."""
        with self._database.reading() as connection:
            return listing.builds(connection, archived=archived)

    def build(self, build_id: int) -> BuildEntry:
        """Return one build's entry.

        Raises
        ------
        UnknownName
            Where there is no such build.
        """
        with self._database.reading() as connection:
            return listing.build(connection, build_id)

    def archive(self, build_id: int, *, actor: str, at: datetime) -> None:
        """Put a build away; nothing of it is lost."""
        with self._noted(actor, "build archived", f"build {build_id}", at) as connection:
            listing.archive(connection, build_id, at)

    def unarchive(self, build_id: int, *, actor: str, at: datetime) -> None:
        """Take a build out again that was put away."""
        with self._noted(actor, "build taken out", f"build {build_id}", at) as connection:
            listing.archive(connection, build_id, None)

    # ------------------------------------------------------------------------------------ sheets

    def sheet(self, build_id: int, at_event: int | None = None) -> Sheet:
        """Return a build's current sheet, or the one after an event.

        Raises
        ------
        UnknownName
            Where there is no such build or event.
        """
        with self._database.reading() as connection:
            head = chain.head_of(connection, build_id)
            return chain.sheet_at(connection, build_id, head if at_event is None else at_event)

    def append(
        self, build_id: int, base_event: int, change: Change, *, actor: str, at: datetime
    ) -> Appended | Conflict:
        """Keep an edit that began with the sheet after `base_event`.

        Where others appended since, both are merged if they touch different places, and the edit
        comes back as a `Conflict` if not.

        Raises
        ------
        BuildFileError
            With every fault of the sheet that the edit makes.
        CannotEdit
            Where the edit has no place in the sheet.
        UnknownName
            Where there is no such build or event.
        """
        with self._database.writing() as connection:
            return editing.change(
                connection, build_id, base_event, change, actor=actor, at=at, judge=self._judge
            )

    def undo(
        self,
        build_id: int,
        *,
        actor: str,
        at: datetime,
        seen_event: int | None = None,
        leave_theirs: bool = False,
    ) -> Appended | Conflict:
        """Undo the actor's own last edit, also one made days ago; again and again to the first.

        What others did meanwhile stays.  Where it collides, the undo comes back as a `Conflict`:
        give the number of its current sheet as `seen_event` to undo all the same, or
        `leave_theirs` to undo only the rest.

        Raises
        ------
        NothingToUndo
            Where the actor has made nothing that could be undone.
        BuildFileError, CannotEdit
            Where the undo would break the sheet.
        """
        with self._database.writing() as connection:
            return editing.take_back(
                connection,
                build_id,
                redo=False,
                actor=actor,
                at=at,
                judge=self._judge,
                seen_event=seen_event,
                leave_theirs=leave_theirs,
            )

    def redo(
        self,
        build_id: int,
        *,
        actor: str,
        at: datetime,
        seen_event: int | None = None,
        leave_theirs: bool = False,
    ) -> Appended | Conflict:
        """Redo what the actor undid last; as `undo` in everything else.

        Raises
        ------
        NothingToUndo
            Where the actor has undone nothing since the last edit.
        BuildFileError, CannotEdit
            Where the redo would break the sheet.
        """
        with self._database.writing() as connection:
            return editing.take_back(
                connection,
                build_id,
                redo=True,
                actor=actor,
                at=at,
                judge=self._judge,
                seen_event=seen_event,
                leave_theirs=leave_theirs,
            )

    def reach(self, build_id: int, *, actor: str) -> Reach:
        """Return what the actor's next undo and redo would take back."""
        with self._database.reading() as connection:
            return chain.reach_of(connection, build_id, actor)

    def history(
        self, build_id: int, *, after: int = 0, most: int | None = None
    ) -> tuple[Event, ...]:
        """Return a build's events after one, the newest first."""
        with self._database.reading() as connection:
            return chain.history(connection, build_id, after=after, most=most)

    def go_back(
        self, build_id: int, base_event: int, to_event: int, *, actor: str, at: datetime
    ) -> Appended | Conflict:
        """Make the sheet again what it was after an earlier event; this too can be undone."""
        with self._database.writing() as connection:
            text = chain.sheet_at(connection, build_id, to_event).text
            return editing.change(
                connection,
                build_id,
                base_event,
                WholeSheet(text=text),
                actor=actor,
                at=at,
                judge=self._judge,
                deed=Deed.RETURNED,
                about=to_event,
            )

    # -------------------------------------------------------------------------------- revisions

    def name_revision(
        self, build_id: int, event: int, name: str, *, actor: str, at: datetime, note: str = ""
    ) -> Revision:
        """Name the state after an event.

        Raises
        ------
        NotAllowed
            Where the name is taken already, empty or too long.
        UnknownName
            Where there is no such build or event.
        """
        wanted = Revision(name=name, event=event, at=at, actor=actor, note=note)
        with self._database.writing() as connection:
            return listing.name_revision(connection, build_id, wanted)

    def revisions(self, build_id: int) -> tuple[Revision, ...]:
        """Return the named points of a build, the first named first."""
        with self._database.reading() as connection:
            return listing.revisions(connection, build_id)

    def compare(self, build_id: int, before: int, after: int) -> tuple[Difference, ...]:
        """Return at which places the sheets after two events differ."""
        old, new = self.sheet(build_id, before), self.sheet(build_id, after)
        return differences(parsed(old.text), parsed(new.text))

    # ------------------------------------------------------------------------------------- files

    def export_toml(self, build_id: int, *, actor: str, at: datetime) -> Sheet:
        """Return the current sheet for a file, and remember that the file holds this state."""
        about = f"build {build_id}"
        with self._noted(actor, "build exported", about, at) as connection:
            head = chain.head_of(connection, build_id, hold=True)
            connection.execute(
                update(tables.build).where(tables.build.c.id == build_id).values(exported=head)
            )
            return chain.sheet_at(connection, build_id, head)

    def import_toml(
        self,
        build_id: int,
        text: str,
        *,
        actor: str,
        at: datetime,
        base_event: int | None = None,
    ) -> Appended | Conflict:
        """Take over a file that was edited outside.

        What changed here since the file was exported stays, as with two persons who edit; the
        file began with `base_event`, or where not given with the last export.

        Raises
        ------
        BuildFileError
            With every fault of the file.
        """
        with self._database.writing() as connection:
            if base_event is None:
                exported = tables.build.c.exported
                query = select(exported).where(tables.build.c.id == build_id)
                base_event = connection.execute(query).scalar() or 1
            return editing.change(
                connection,
                build_id,
                base_event,
                WholeSheet(text=text),
                actor=actor,
                at=at,
                judge=self._judge,
                deed=Deed.IMPORTED,
            )

    def attach(
        self,
        build_id: int,
        content: bytes,
        *,
        name: str,
        actor: str,
        at: datetime,
        note: str = "",
    ) -> Attachment:
        """Keep a file with a build: a photograph of a weighing, a signed order.

        Raises
        ------
        NotAllowed
            Where it is empty, too large, or of a type that is not kept.
        """
        with self._noted(actor, "file attached", f"build {build_id}", at) as connection:
            return attaching.attach(
                connection, build_id, content, name=name, note=note, actor=actor, at=at
            )

    def attachments(self, build_id: int) -> tuple[Attachment, ...]:
        """Return what is kept with a build, without the bytes."""
        with self._database.reading() as connection:
            return attaching.attachments(connection, build_id)

    def attachment(self, build_id: int, digest: str) -> bytes:
        """Return the bytes of what is kept with a build.

        Raises
        ------
        UnknownName
            Where nothing of that digest is kept with this build.
        """
        with self._database.reading() as connection:
            return attaching.content_of(connection, build_id, digest)

    # --------------------------------------------------------------------------------------- log

    def note(self, *, actor: str, deed: str, about: str, at: datetime) -> None:
        """Write a line into the log: a paper that was printed."""
        self.log.note(actor=actor, deed=deed, about=about, at=at)

    def audit(self, *, most: int = 100, before: int | None = None) -> tuple[AuditEntry, ...]:
        """Return lines of the log, the newest first."""
        with self._database.reading() as connection:
            return auditing.entries(connection, most=most, before=before)

    @contextmanager
    def _noted(self, actor: str, deed: str, about: str, at: datetime) -> Iterator[Connection]:
        """Give a connection that writes, and write a line into the log with it."""
        with self._database.writing() as connection:
            yield connection
            auditing.note(connection, actor=actor, deed=deed, about=about, at=at)
