"""Edits that give a fitting a place, and how they are written where the sheet has it.

A place told by something else becomes a length on the axis that the fitting is moved along, and
stays as it is on the others.
"""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from coachwright.actions.following import AXES, carried_by_length, followers
from coachwright.errors import CallError, CannotEdit, UnknownName
from coachwright.model.build import Build, BuildSheet, Fitted
from coachwright.model.position import Relation
from coachwright.store.edits import Edit, Put
from coachwright.units import QuantityFault, parse, shown, written

SAME_MM = 0.05
"""A move shorter than this is none."""

Wanted = dict[str, dict[int | str, Any]]
"""Reference name → axis or field → what shall stand there."""


def fitted_of(build: Build, name: str) -> Fitted:
    """Return a fitting of a build.

    Raises
    ------
    UnknownName
        Where there is none of that name.
    """
    fitted = build.fitted(name)
    if fitted is None:
        raise UnknownName("fitting", name, [each.name for each in build.fittings])
    return fitted


def refuse_pinned(build: Build, name: str, along: Iterable[str] = ()) -> None:
    """Let nothing go on that would move a pinned fitting.

    Raises
    ------
    CannotEdit
        Where the fitting is pinned, or something that goes along with it.
    """
    if fitted_of(build, name).fitting.pinned:
        raise CannotEdit(f"{_words(name)} is pinned; unpin it to move it")
    for other in along:
        if fitted_of(build, other).fitting.pinned:
            raise CannotEdit(
                f"{_words(other)} is pinned and would go along with {_words(name)}; unpin it first"
            )


def _words(name: str) -> str:
    return name.replace("-", " ")


def move_as_written(
    sheet: BuildSheet, build: Build, name: str, axis: int, text: str
) -> tuple[Edit, ...]:
    """Return the edits that give a fitting a place as a person types it.

    Parameters
    ----------
    sheet, build
        As written, and with everything found.
    name
        Of the fitting.
    axis
        0, 1 or 2 for x, y and z.
    text
        A length with its unit, a bare number of the unit that the brief is read in, or a relation
        such as ``"behind galley 20 mm"``.

    Raises
    ------
    CannotEdit
        Where it is pinned, or something that goes with it.
    """
    here = fitted_of(build, name)
    refuse_pinned(build, name, followers(build, name, axis))
    bare = as_typed(build, text)
    wanted: Wanted = {name: {axis: bare}}
    found_mm = parse(bare, "length")
    if not isinstance(found_mm, QuantityFault):
        _carry(build, name, axis, found_mm - here.at_mm[axis], wanted)
    return edits_for(sheet, build, wanted)


def as_typed(build: Build, text: str) -> str:
    """Return a length or relation as a file spells it: a bare number gets the brief's unit."""
    bare = text.strip().replace("−", "-").replace(",", "")
    if bare.replace(".", "", 1).removeprefix("-").isdigit():
        return f"{bare} {'in' if build.brief.units == 'us' else 'mm'}"
    return bare


def entry_of(sheet: BuildSheet, name: str) -> tuple[str, ...]:
    """Return the path of a fitting's own entry; empty where only the standard build has it."""
    if any(fitting.name == name for fitting in sheet.fittings):
        return ("fittings", name)
    if any(fitting.name == name for fitting in sheet.changes.added):
        return ("changes", "added", name)
    return ()


def as_written(fitted: Fitted) -> list[str]:
    """Return a fitting's place as a file spells it."""
    return [
        place.text if isinstance(place, Relation) else written(place, "length")
        for place in fitted.fitting.at_mm
    ]


def edits_for(sheet: BuildSheet, build: Build, wanted: Wanted) -> tuple[Edit, ...]:
    """Return the edits that write something of several fittings."""
    return tuple(
        edit
        for name, values in wanted.items()
        for edit in _edits_of(sheet, fitted_of(build, name), values)
    )


def place_texts(fitted: Fitted, system: str) -> list[str]:
    """Return a fitting's place for a reader: relations as written, lengths in their units."""
    return [
        place.text if isinstance(place, Relation) else shown(place, "mm", system, more_digits=1)
        for place in fitted.fitting.at_mm
    ]


def _carry(build: Build, name: str, axis: int, shift_mm: float, wanted: Wanted) -> None:
    for each in carried_by_length(build, name, axis):
        wanted.setdefault(each.name, {})[axis] = written_mm(each.at_mm[axis] + shift_mm)


def _edits_of(sheet: BuildSheet, here: Fitted, values: Mapping[int | str, Any]) -> Iterator[Edit]:
    """Yield the edits of one fitting, where the sheet has it: its own entry or what differs."""
    own = entry_of(sheet, here.name)
    if own:
        yield from _puts(own, values)
        return
    if not sheet.standard:
        raise CallError(f"{here.name} is in no list of this sheet; look at it again")
    left = dict(values)
    if any(e.fitting == here.name and e.at_mm is not None for e in sheet.changes.exchanged):
        places: dict[int | str, Any] = {a: left.pop(a) for a in AXES if a in left}
        yield from _puts(("changes", "exchanged", here.name), places)
    if not left:
        return
    path = ("changes", "moved", here.name)
    if any(move.fitting == here.name for move in sheet.changes.moved):
        yield from _puts(path, left)
    else:
        yield Put(path=path, value=_moved(here, left))


def _puts(path: tuple[str, ...], values: Mapping[int | str, Any]) -> Iterator[Edit]:
    for key, value in values.items():
        steps = ("at", key) if isinstance(key, int) else (key,)
        yield Put(path=(*path, *steps), value=value)


def _moved(here: Fitted, values: Mapping[int | str, Any]) -> dict[str, Any]:
    """Return the entry of what the sheet says of a fitting that the standard build has."""
    at = as_written(here)
    for axis in AXES:
        at[axis] = values.get(axis, at[axis])
    return {
        "fitting": here.name,
        "at": at,
        "turn": f"{here.fitting.turn_deg:g} deg",
        "mirror": here.fitting.mirror,
    } | {str(field): value for field, value in values.items() if field not in AXES}


def written_mm(length_mm: float) -> str:
    """Return a length for the file, to a tenth of a millimetre."""
    return written(round(length_mm, 1), "length")
