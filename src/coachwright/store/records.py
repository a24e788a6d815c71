"""What the store hands out."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from coachwright.errors import Fault
from coachwright.model.build import BuildSheet
from coachwright.store.differences import Difference
from coachwright.store.edits import Edit

Judge = Callable[[BuildSheet], tuple[Fault, ...]]
"""Says what is wrong with a sheet beyond its form: parts that do not exist, names that lead
nowhere."""


class Deed(StrEnum):
    """What made an event."""

    CREATED = "created"
    EDITED = "edited"
    UNDONE = "undone"
    REDONE = "redone"
    RETURNED = "returned"
    """Went back to an earlier state."""
    IMPORTED = "imported"
    """Taken over from a file."""


class Role(StrEnum):
    """What a person may do."""

    OWNER = "owner"
    """Everything, accounts too."""
    DESIGNER = "designer"
    """Edit builds and print."""
    FLOOR = "floor"
    """Read and tick."""


class Purpose(StrEnum):
    """What a token is for."""

    SESSION = "session"
    """A person at the bench."""
    PROGRAM = "program"
    """Another program of the shop."""


@dataclass(frozen=True, kw_only=True, slots=True)
class WholeSheet:
    """A change of the sheet as a whole: its new text."""

    text: str


Change = tuple[Edit, ...] | WholeSheet
"""Edits at paths, or the sheet as a whole."""


@dataclass(frozen=True, kw_only=True, slots=True)
class BuildEntry:
    """One build in the list of all.

    Attributes
    ----------
    build_id
        Its number in the store.
    name, customer
        As the current sheet says.
    created_at, created_by
        When, and by whom.
    changed_at
        When the last event was.
    archived_at
        Since when it is put away; None where it is not.
    head
        Number of the last event.
    revision
        Name of the newest named revision; empty where there is none.
    """

    build_id: int
    name: str
    customer: str
    created_at: datetime
    created_by: str
    changed_at: datetime
    archived_at: datetime | None
    head: int
    revision: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """A build's sheet as it was after one event.

    Attributes
    ----------
    build_id
        The build.
    event
        Number of the event.
    text
        TOML.
    digest
        SHA-256 of the text, as hexadecimal digits.
    """

    build_id: int
    event: int
    text: str
    digest: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Event:
    """One line of a build's history.

    Attributes
    ----------
    number
        Counts from 1 in each build.
    at, actor
        When, and by whom.
    deed
        What it was.
    about
        The event that was undone, redone or returned to.
    places
        Where the sheet changed, as people write it: ``fittings.galley.at``.
    """

    number: int
    at: datetime
    actor: str
    deed: Deed
    about: int | None
    places: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Appended:
    """An edit that was kept.

    Attributes
    ----------
    sheet
        The sheet after it.
    differences
        What it changed of the sheet before it.
    merged
        What others had changed since the base, and which stands beside it now.
    """

    sheet: Sheet
    differences: tuple[Difference, ...]
    merged: tuple[Difference, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Conflict:
    """An edit that was not kept, because it would write over what others did meanwhile.

    To have it all the same, give the edit again on the base of `theirs`; to leave theirs where
    they collide, give `clear`; to keep both, make a new build of `mine`.

    Attributes
    ----------
    base_event
        What the edit began with.
    theirs
        The current sheet.
    their_differences
        What others have changed since the base.
    actors
        Who they are.
    mine
        Text of the sheet as the edit would have it.
    my_differences
        What the edit changes of its base.
    disputed
        Mine and theirs where they collide; empty where only comments or lines do, or where the
        merged sheet has faults.
    clear
        The edit as far as nobody disputes it, on the base of `theirs`; None where nothing is left.
    faults
        What is wrong with the sheet that has both; empty where paths collide.
    """

    base_event: int
    theirs: Sheet
    their_differences: tuple[Difference, ...]
    actors: tuple[str, ...]
    mine: str
    my_differences: tuple[Difference, ...]
    disputed: tuple[tuple[Difference, Difference], ...]
    clear: WholeSheet | None
    faults: tuple[Fault, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Reach:
    """What a person's next undo and redo would take back; None where there is nothing."""

    undo: int | None
    redo: int | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Revision:
    """A named point of a build."""

    name: str
    event: int
    at: datetime
    actor: str
    note: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Attachment:
    """A file kept with a build: a photograph of a weighing, a signed order.

    Attributes
    ----------
    digest
        SHA-256 of its bytes, as hexadecimal digits; its name in the store.
    name
        As the person calls it; only ever shown, never a path.
    media_type
        Told by its first bytes.
    size
        In bytes.
    note, at, actor
        What it is, when and by whom it was handed in.
    """

    digest: str
    name: str
    media_type: str
    size: int
    note: str
    at: datetime
    actor: str


class Step(StrEnum):
    """What the shop floor ticks off of each thing that a build has."""

    HERE = "here"
    """It was delivered, and lies ready."""
    FITTED = "fitted"


@dataclass(frozen=True, kw_only=True, slots=True)
class Tick:
    """Somebody on the shop floor ticked something off, or took a tick back.

    Attributes
    ----------
    thing
        What it is called in the list of the build.
    done
        False where a tick was taken back.
    part, place
        Which part it was at that moment, and where it stood in the build.
    """

    number: int
    thing: str
    step: Step
    done: bool
    part: str
    place: str
    at: datetime
    actor: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Account:
    """A person who may use the bench."""

    account_id: int
    name: str
    role: Role
    created_at: datetime
    closed_at: datetime | None
    has_password: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class TokenEntry:
    """A token that is valid still; the token itself is known only to who holds it."""

    digest: str
    account: str
    purpose: Purpose
    label: str
    created_at: datetime
    expires_at: datetime


@dataclass(frozen=True, kw_only=True, slots=True)
class AuditEntry:
    """One line of the log of what was done."""

    number: int
    at: datetime
    actor: str
    deed: str
    about: str
    place: str = ""
