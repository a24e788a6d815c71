"""Edits of a sheet: what they make of its data, and the differences that they come down to."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from typing import Any

from coachwright.catalogue.loading import parse_toml
from coachwright.errors import BuildFileError, CannotEdit, Fault
from coachwright.model.reading import field_path
from coachwright.store.differences import (
    Steps,
    differences,
    entry_name,
    place_after,
    place_of,
)
from coachwright.store.writing import Wanted, made, made_in_whole, written_by


@dataclass(frozen=True, kw_only=True, slots=True)
class Put:
    """Set a value, a table or a list at a path, or put an entry into a list.

    Attributes
    ----------
    path
        Where; tables on the way that are not there yet are made.  An entry of a list is told by
        its name: ``("fittings", "galley", "at")``.
    value
        As a file spells it: text with a unit, number, truth value, date, list or table.
    follows
        Of a new entry of a list: the name of the entry to put it after, empty for the first
        place, None for the last.
    """

    path: Steps
    value: Any
    follows: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Take:
    """Take out what stands at a path: a value, a table or an entry of a list."""

    path: Steps


Edit = Put | Take


@lru_cache(maxsize=16)
def parsed(text: str, file: str = "the sheet") -> Mapping[str, Any]:
    """Return what a TOML text holds; kept for a while, so nobody may change it.

    Raises
    ------
    BuildFileError
        Where it is not TOML.
    """
    try:
        text.encode()
    except UnicodeEncodeError as error:
        raise BuildFileError([_half_sign(text, file, error.start)]) from error
    data, faults = parse_toml(text, file)
    if data is None:
        raise BuildFileError(faults)
    return data


def edited(text: str, edits: Iterable[Edit]) -> str:
    r"""Return a sheet's text with edits made in their order; all else stays, comments too.

    Raises
    ------
    BuildFileError
        Where the text is not TOML.
    CannotEdit
        Where there is no such place, or the text's form does not take the edit.

    Examples
    --------
    >>> sheet = '[[fittings]]\nname = "galley"  # to measure\npart = "galley-900"\n'
    >>> longer = Put(path=("fittings", "galley", "part"), value="galley-1200")
    >>> print(edited(sheet, [longer]), end="")
    [[fittings]]
    name = "galley"  # to measure
    part = "galley-1200"
    """
    data = parsed(text)
    goal = dict(data)
    for edit in edits:
        _make(goal, edit)
    return written(text, data, goal)


def written(text: str, data: Mapping[str, Any], goal: Mapping[str, Any], pattern: str = "") -> str:
    """Return a sheet's text changed so that it holds something else, and read again to be sure.

    Parameters
    ----------
    text
        TOML.
    data
        What it holds.
    goal
        What it shall hold.
    pattern
        Another text, from which new entries of lists are taken with their comments.

    Raises
    ------
    CannotEdit
        Where the text's form does not take the change.
    """
    found = differences(data, goal)
    held = parsed(pattern)
    wanted = tuple(
        Wanted(difference=each, written=written_by(pattern, held, each)) for each in found
    )
    for way in (made, made_in_whole):
        try:
            attempt = way(text, data, wanted)
            got = parsed(attempt)
        except (LookupError, TypeError, ValueError, BuildFileError):
            continue
        if not differences(goal, got):
            return attempt
    places = ", ".join(each.place for each in found)
    raise CannotEdit(
        f"{places}: the sheet's form does not take this change; edit its text by hand"
    )


def _half_sign(text: str, file: str, place: int) -> Fault:
    return Fault(
        file=file,
        field=f"line {text.count(chr(10), 0, place) + 1}",
        found="half a sign, which no file can hold",
        allowed="text in Unicode",
        action="take it out",
    )


def _make(after: dict[str, Any], edit: Edit) -> None:
    """Make an edit in parsed data, whose tables and lists on the way are copied, not changed."""
    if not edit.path:
        raise _no_place(edit.path)
    value = _plain(edit.value) if isinstance(edit, Put) else None
    here: Any = after
    for depth, step in enumerate(edit.path[:-1]):
        here = _step_down(here, step, edit, depth)
    last = edit.path[-1]
    if isinstance(here, list):
        _edit_list(here, last, value, edit)
    elif not isinstance(here, dict) or not isinstance(last, str):
        raise _no_place(edit.path)
    elif isinstance(edit, Put):
        here[last] = value
    elif last in here:
        del here[last]
    else:
        raise _no_place(edit.path)


def _plain(value: Any) -> Any:
    """Return a value as the reader of TOML would give it, sharing nothing with what was given."""
    if isinstance(value, Enum):
        return _plain(value.value)
    if isinstance(value, Mapping):
        return {str(key): _plain(entry) for key, entry in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(entry) for entry in value]
    return str(value) if isinstance(value, str) else value


def _step_down(here: Any, step: str | int, edit: Edit, depth: int) -> Any:
    if isinstance(here, list):
        index = place_of(here, step)
        if index is not None:
            return _own(here, index)
    elif isinstance(here, dict) and isinstance(step, str):
        if step not in here and isinstance(edit, Put):
            last_table = depth == len(edit.path) - 2
            here[step] = [] if last_table and _names_itself(edit) else {}
        if step in here:
            return _own(here, step)
    raise _no_place(edit.path)


def _own(here: Any, step: str | int) -> Any:
    """Put a copy in the place of a table or list that others have too, and return it."""
    if isinstance(here[step], (dict, list)):
        here[step] = here[step].copy()
    return here[step]


def _names_itself(edit: Put) -> bool:
    """Say whether the value is an entry of a list: a table that bears the path's last word."""
    step = edit.path[-1]
    return isinstance(step, int) or (
        isinstance(edit.value, Mapping) and entry_name([edit.value], 0) == step
    )


def _edit_list(entries: list[Any], step: str | int, value: Any, edit: Edit) -> None:
    index = place_of(entries, step)
    if isinstance(edit, Take):
        if index is None:
            raise _no_place(edit.path)
        del entries[index]
    elif index is not None:
        entries[index] = value
    elif step == len(entries) or _names_itself(edit):
        entries.insert(place_after(entries, edit.follows), value)
    else:
        raise _no_place(edit.path)


def _no_place(path: Steps) -> CannotEdit:
    return CannotEdit(f"there is no place for {field_path(path)} in the sheet; look at it again")
