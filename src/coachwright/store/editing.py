"""Every way in which a build changes: each appends an event, and none takes one away."""

from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache

from sqlalchemy import Connection, insert

from coachwright.errors import (
    BuildFileError,
    CannotEdit,
    Fault,
    NothingToUndo,
)
from coachwright.model.build import BuildSheet
from coachwright.model.reading import read_record
from coachwright.store import tables
from coachwright.store.chain import (
    THIS,
    Link,
    actors_since,
    append,
    digest_of,
    head_of,
    reach_of,
    sheet_at,
)
from coachwright.store.differences import Difference, differences
from coachwright.store.edits import edited, parsed
from coachwright.store.entries import with_known_entries
from coachwright.store.merging import Disputed, merged, overruling, undisputed
from coachwright.store.records import (
    Appended,
    Change,
    Conflict,
    Deed,
    Judge,
    Reach,
    Sheet,
    WholeSheet,
)

SHEET = "the sheet"
"""What a fault calls a text that is in no file."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Wish:
    """What a person wants of a build.

    Attributes
    ----------
    base
        What the person began with.
    mine
        What the person made of it.
    deed, about, actor, at, reach
        As the event will say.
    """

    base: Sheet
    mine: str
    deed: Deed
    actor: str
    at: datetime
    about: int | None = None
    reach: Reach | None = None


@lru_cache(maxsize=8)
def read_sheet(text: str, file: str = SHEET) -> BuildSheet:
    """Return the record of a sheet's text.

    Raises
    ------
    BuildFileError
        With every fault of it.
    """
    data = parsed(text) if file == SHEET else parsed(text, file)
    sheet, faults = read_record(BuildSheet, with_known_entries(data), file)
    if sheet is None:
        faults = read_record(BuildSheet, data, file)[1]
        raise BuildFileError(faults)
    return sheet


def create(connection: Connection, text: str, actor: str, at: datetime, judge: Judge) -> Sheet:
    """Keep a new build, whose first event is the sheet as it comes.

    Raises
    ------
    BuildFileError
        With every fault of the sheet.
    """
    _approved(text, judge)
    values = {
        "name": "",
        "customer": "",
        "created_at": at,
        "created_by": actor,
        "changed_at": at,
        "head": 0,
    }
    made = insert(tables.build).values(values).returning(tables.build.c.id)
    build_id = int(connection.execute(made).scalar_one())
    nothing = Sheet(build_id=build_id, event=0, text="", digest=digest_of(""))
    link = Link(
        after=text,
        places=(),
        deed=Deed.CREATED,
        actor=actor,
        at=at,
        reach=Reach(undo=None, redo=None),
    )
    return append(connection, nothing, link)


def change(
    connection: Connection,
    build_id: int,
    base_event: int,
    wanted: Change,
    *,
    actor: str,
    at: datetime,
    judge: Judge,
    deed: Deed = Deed.EDITED,
    about: int | None = None,
) -> Appended | Conflict:
    """Append an edit that began with some event of a build.

    Raises
    ------
    BuildFileError
        Where the edit itself makes a sheet with faults.
    CannotEdit
        Where the edit has no place in the sheet.
    """
    head_of(connection, build_id, hold=True)
    base = sheet_at(connection, build_id, base_event)
    mine = wanted.text if isinstance(wanted, WholeSheet) else edited(base.text, wanted)
    read_sheet(mine)
    wish = Wish(base=base, mine=mine, deed=deed, about=about, actor=actor, at=at)
    return _kept(connection, wish, judge)


def take_back(
    connection: Connection,
    build_id: int,
    *,
    redo: bool,
    actor: str,
    at: datetime,
    judge: Judge,
    seen_event: int | None = None,
    leave_theirs: bool = False,
) -> Appended | Conflict:
    """Undo a person's last edit of a build, or redo what was undone last.

    Parameters
    ----------
    connection
        Of an open transaction that writes.
    build_id
        The build.
    redo
        Redo instead of undo.
    actor, at
        By whom, and when.
    judge
        Says what is wrong with the sheet that it makes.
    seen_event
        The last event that the person has seen: what others did up to it is written over.
    leave_theirs
        Take back only what nobody has changed since.

    Raises
    ------
    NothingToUndo
        Where the person has made nothing that could be taken back.
    BuildFileError
        Where it would make a sheet with faults.
    CannotEdit
        Where others took out what it stood in.
    """
    head = head_of(connection, build_id, hold=True)
    wish = _taking_back(connection, build_id, redo=redo, actor=actor, at=at)
    if not leave_theirs and seen_event != head:
        return _kept(connection, wish, judge)
    theirs = sheet_at(connection, build_id, head)
    way = undisputed if leave_theirs else overruling
    after = way(wish.base.text, wish.mine, theirs.text)
    _approved(after, judge)
    return _appended(connection, wish, theirs, after)


def _taking_back(
    connection: Connection, build_id: int, *, redo: bool, actor: str, at: datetime
) -> Wish:
    """Return the wish to be where one was before an event; redoing is to undo an undoing."""
    reach = reach_of(connection, build_id, actor)
    target = reach.redo if redo else reach.undo
    if target is None:
        raise NothingToUndo(f"there is nothing that {actor} could {'redo' if redo else 'undo'}")
    below = reach_of(connection, build_id, actor, before=target)
    return Wish(
        base=sheet_at(connection, build_id, target),
        mine=sheet_at(connection, build_id, target - 1).text,
        deed=Deed.REDONE if redo else Deed.UNDONE,
        about=target,
        actor=actor,
        at=at,
        reach=Reach(undo=THIS, redo=below.redo) if redo else Reach(undo=below.undo, redo=THIS),
    )


def _approved(text: str, judge: Judge) -> None:
    faults = judge(read_sheet(text))
    if faults:
        raise BuildFileError(faults)


def _kept(connection: Connection, wish: Wish, judge: Judge) -> Appended | Conflict:
    build_id = wish.base.build_id
    head = head_of(connection, build_id)
    theirs = wish.base if head == wish.base.event else sheet_at(connection, build_id, head)
    both = merged(wish.base.text, wish.mine, theirs.text)
    if isinstance(both, Disputed):
        return _conflict(connection, wish, theirs, pairs=both.pairs)
    try:
        _approved(both, judge)
    except BuildFileError as error:
        if both == wish.mine:
            raise
        return _conflict(connection, wish, theirs, faults=error.faults)
    return _appended(connection, wish, theirs, both)


def _appended(connection: Connection, wish: Wish, theirs: Sheet, after: str) -> Appended:
    made = differences(parsed(theirs.text), parsed(after))
    others: tuple[Difference, ...] = ()
    if theirs.text != wish.base.text:
        others = differences(parsed(wish.base.text), parsed(theirs.text))
    if after == theirs.text and wish.reach is None:
        return Appended(sheet=theirs, differences=made, merged=others)
    link = Link(
        after=after,
        places=tuple(each.place for each in made),
        deed=wish.deed,
        about=wish.about,
        actor=wish.actor,
        at=wish.at,
        reach=wish.reach,
    )
    sheet = append(connection, theirs, link)
    return Appended(sheet=sheet, differences=made, merged=others)


def _conflict(
    connection: Connection,
    wish: Wish,
    theirs: Sheet,
    *,
    pairs: tuple[tuple[Difference, Difference], ...] = (),
    faults: tuple[Fault, ...] = (),
) -> Conflict:
    base = parsed(wish.base.text)
    acted = actors_since(connection, wish.base.build_id, wish.base.event)
    others = tuple(each for each in acted if each != wish.actor)
    return Conflict(
        base_event=wish.base.event,
        theirs=theirs,
        their_differences=differences(base, parsed(theirs.text)),
        actors=others or acted,
        mine=wish.mine,
        my_differences=differences(base, parsed(wish.mine)),
        disputed=pairs,
        clear=_clear(wish, theirs) if pairs else None,
        faults=faults,
    )


def _clear(wish: Wish, theirs: Sheet) -> WholeSheet | None:
    try:
        text = undisputed(wish.base.text, wish.mine, theirs.text)
    except CannotEdit:
        return None
    return None if text == theirs.text else WholeSheet(text=text)
