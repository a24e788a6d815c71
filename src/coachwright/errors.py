"""The exception tree, and faults as data.

A fault in what the user wrote is data (`Fault`): all faults of a file are collected and carried
by one exception of the `BadInput` branch.  A fault of the call is a `CallError`.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

_MOST_NAMES = 60
"""A longer list of names helps nobody."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Fault:
    """One fault in something a person wrote.

    Attributes
    ----------
    file
        The file as the person named it.
    field
        Path of the field, such as ``brief.travellers[1].mass``; or a line or row.
    found
        What stood there.
    allowed
        What is allowed there.
    action
        What to do about it.
    """

    file: str
    field: str
    found: str
    allowed: str
    action: str

    def sentence(self) -> str:
        """Return the fault as one line for a person."""
        return (
            f"{self.file}: {self.field}: found {self.found}; "
            f"allowed: {self.allowed}; {self.action}"
        )


class CoachwrightError(Exception):
    """Anything that Coachwright itself raises."""


class BadInput(CoachwrightError):
    """What a person wrote cannot be used; carries every fault that was found."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(fault.sentence() for fault in self.faults))


class BuildFileError(BadInput):
    """A build file has faults."""


class CatalogueError(BadInput):
    """A part, a base vehicle or a standard build has faults."""


class PriceListError(BadInput):
    """A supplier's price list or its map has faults."""


class WeatherFileError(BadInput):
    """A file of weather, or the map of a logger, has faults."""


class CallError(CoachwrightError):
    """The call itself was wrong."""


class OutOfRange(CallError):
    """A subject function was given a value outside its validity.

    Parameters
    ----------
    name
        The argument.
    value
        What it was given.
    allowed
        What it may be, in words.
    """

    def __init__(self, name: str, value: object, allowed: str) -> None:
        self.name = name
        self.value = value
        self.allowed = allowed
        super().__init__(f"{name} is {value}; allowed: {allowed}")


class UnknownName(CallError):
    """A name was asked for that does not exist; says which names do."""

    def __init__(self, kind: str, name: str, known: Iterable[str]) -> None:
        self.kind = kind
        self.name = name
        self.known = tuple(known)
        close = get_close_matches(name, self.known, n=1, cutoff=0.6)
        meant = f"did you mean {close[0]!r}? " if close else ""
        listed = ", ".join(self.known[:_MOST_NAMES]) if self.known else "none"
        more = len(self.known) - _MOST_NAMES
        rest = f" and {more} more" if more > 0 else ""
        super().__init__(f"there is no {kind} {name!r}; {meant}there are: {listed}{rest}")


class CannotWrite(CallError):
    """A file could not be written; nothing half-written was left."""


class CannotEdit(CallError):
    """A sheet has no such place, or its form does not take the edit; it is as it was."""


class NothingToUndo(CallError):
    """The person has made nothing in this build that could be undone, or redone."""


class NotAllowed(CallError):
    """A rule of the shop's accounts forbids it; says which."""


class StoreError(CoachwrightError):
    """The store could not do what was asked; what it kept before is as it was."""


class StoreFull(StoreError):
    """There is no room left where the store is kept."""


class StoreReadOnly(StoreError):
    """The store, or the folder it is in, may only be read."""


class StoreBusy(StoreError):
    """Another program holds the store and did not let go in time."""


class StoreDamaged(StoreError):
    """What is kept is not whole, or not a store at all."""


class StoreSchema(StoreError):
    """The store was written by a newer Coachwright."""


class StoreUnreachable(StoreError):
    """The store, or the server that it is on, cannot be reached or opened."""
