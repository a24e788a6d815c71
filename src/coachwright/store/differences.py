"""What differs between two sheets, told by paths that survive what others add and take away.

A path leads through tables by their names.  An entry of a list of tables is told by what names it
(a fitting by its name, an own part by its id), so that it stays the same entry when another is
put before it; where nothing names the entries, by its place.  A list of plain values, such as a
position, is one value.
"""

import copy
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from coachwright.model.reading import field_path

Steps = tuple[str | int, ...]
"""Such as ``("fittings", "galley", "at")`` or ``("finishes", 2, "area")``."""

_NAMING: tuple[tuple[str, ...], ...] = (
    ("id",),
    ("name",),
    ("fitting", "purpose"),
    ("rule", "subject"),
    ("option",),
    ("mode",),
    ("part", "surface"),
)
"""Fields that name an entry of a list, tried in this order; only the first must be there."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Difference:
    """One place at which two sheets differ.

    Attributes
    ----------
    path
        Where.
    before
        What stood there; None where nothing did.
    after
        What stands there now; None where it was taken out.
    follows
        Of an entry that was put into a list: the name of the entry before it, empty for the
        first; None everywhere else.
    """

    path: Steps
    before: Any
    after: Any
    follows: str | None = None

    @property
    def place(self) -> str:
        """The path as people write it."""
        return field_path(self.path)


def differences(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[Difference, ...]:
    """Return what differs from one parsed sheet to another.

    A list that is missing and one that is empty are the same; everything else differs by value
    and by type, because ``1``, ``1.0`` and ``true`` are different in a file.

    Examples
    --------
    >>> old = {"fittings": [{"name": "galley", "part": "galley-900"}]}
    >>> new = {"fittings": [{"name": "fan"}, {"name": "galley", "part": "galley-1200"}]}
    >>> for each in differences(old, new):
    ...     print(each.place, each.before, each.after)
    fittings.fan None {'name': 'fan'}
    fittings.galley.part galley-900 galley-1200
    """
    return tuple(_between((), before, after))


def disputed(
    mine: Sequence[Difference], theirs: Sequence[Difference]
) -> tuple[tuple[Difference, Difference], ...]:
    """Return the pairs of two persons' differences that cannot both stand.

    They collide where one path leads to or through the other, unless both did the same.
    """
    return tuple(
        (one, other)
        for one in mine
        for other in theirs
        if _one_leads_through(one.path, other.path) and not _same_deed(one, other)
    )


def changed(data: Mapping[str, Any], wanted: Sequence[Difference]) -> dict[str, Any]:
    """Return parsed data with differences made; the given data stays as it was.

    Raises
    ------
    LookupError
        Where a path leads nowhere.
    """
    made: dict[str, Any] = copy.deepcopy(dict(data))
    for each in wanted:
        _make(made, each)
    return made


def entry_name(entries: Sequence[Any], index: int) -> str | None:
    """Return what names one entry of a list; None where the entries have no names."""
    names = _names(entries)
    return None if names is None else names[index]


def place_of(entries: Sequence[Any], step: str | int) -> int | None:
    """Return the place of an entry in a list, told by its name or by its place."""
    if isinstance(step, int):
        return step if 0 <= step < len(entries) else None
    names = _names(entries)
    if names is None or step not in names:
        return None
    return names.index(step)


def place_after(entries: Sequence[Any], follows: str | None) -> int:
    """Return where an entry goes that follows another; at the end where that one is gone."""
    if follows == "":
        return 0
    found = None if follows is None else place_of(entries, follows)
    return len(entries) if found is None else found + 1


def _same(one: Any, other: Any) -> bool:
    """Say at once that most of a sheet is as it was; what is not is then looked at closely."""
    if one is other:
        return True
    if type(one) is not type(other):
        return False
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(_same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(_same, one, other))
    return bool(one == other)


def _between(path: Steps, before: Any, after: Any) -> Iterator[Difference]:
    if _same(before, after):
        return
    if isinstance(before, Mapping) and isinstance(after, Mapping):
        for key in dict.fromkeys((*before, *after)):
            yield from _between((*path, key), before.get(key), after.get(key))
        return
    old, new = _as_lists(before, after)
    if old is None or new is None:
        if type(before) is not type(after) or before != after:
            yield Difference(path=path, before=before, after=after)
        return
    yield from _between_lists(path, old, new)


def _as_lists(before: Any, after: Any) -> tuple[list[Any] | None, list[Any] | None]:
    """Return both as lists where they are; what is missing counts as an empty list."""
    if isinstance(before, list) and isinstance(after, list):
        return before, after
    if before is None and _names_or_empty(after):
        return [], after
    if after is None and _names_or_empty(before):
        return before, []
    return None, None


def _names_or_empty(entries: Any) -> bool:
    return isinstance(entries, list) and (not entries or _names(entries) is not None)


def _between_lists(path: Steps, old: list[Any], new: list[Any]) -> Iterator[Difference]:
    fields = _shared_naming(old, new)
    if fields is None:
        yield from _between_unnamed(path, old, new)
        return
    olds = {_named(entry, fields): entry for entry in old}
    news = {_named(entry, fields): entry for entry in new}
    if [key for key in olds if key in news] != [key for key in news if key in olds]:
        yield Difference(path=path, before=old, after=new)
        return
    for key, entry in olds.items():
        if key not in news:
            yield Difference(path=(*path, key), before=entry, after=None)
    follows = ""
    for key, entry in news.items():
        if key in olds:
            yield from _between((*path, key), olds[key], entry)
        else:
            yield Difference(path=(*path, key), before=None, after=entry, follows=follows)
        follows = key


def _between_unnamed(path: Steps, old: list[Any], new: list[Any]) -> Iterator[Difference]:
    """Compare lists whose entries have no names: tables by place, all others as one value."""
    if len(old) != len(new):
        yield Difference(path=path, before=old, after=new)
        return
    inner = [
        each
        for index, (before, after) in enumerate(zip(old, new, strict=True))
        for each in _between((*path, index), before, after)
    ]
    if inner and all(isinstance(entry, Mapping) for entry in (*old, *new)):
        yield from inner
    elif inner:
        yield Difference(path=path, before=old, after=new)


def _shared_naming(old: list[Any], new: list[Any]) -> tuple[str, ...] | None:
    if not old and not new:
        return None
    for fields in _NAMING:
        if _all_named(old, fields) and _all_named(new, fields):
            return fields
    return None


def _names(entries: Sequence[Any]) -> list[str] | None:
    for fields in _NAMING:
        if entries and _all_named(entries, fields):
            return [_named(entry, fields) for entry in entries]
    return None


def _all_named(entries: Sequence[Any], fields: tuple[str, ...]) -> bool:
    named = all(isinstance(entry, Mapping) and _can_name(entry, fields) for entry in entries)
    return named and len({_named(entry, fields) for entry in entries}) == len(entries)


def _can_name(entry: Mapping[str, Any], fields: tuple[str, ...]) -> bool:
    first = entry.get(fields[0])
    rest = (entry.get(field, "") for field in fields[1:])
    return isinstance(first, str) and bool(first) and all(isinstance(each, str) for each in rest)


def _named(entry: Mapping[str, Any], fields: tuple[str, ...]) -> str:
    return "/".join(entry[field] for field in fields if entry.get(field))


def _one_leads_through(one: Steps, other: Steps) -> bool:
    shorter = min(len(one), len(other))
    return one[:shorter] == other[:shorter]


def _same_deed(one: Difference, other: Difference) -> bool:
    return one.path == other.path and not differences({"": one.after}, {"": other.after})


def _make(data: dict[str, Any], wanted: Difference) -> None:
    here: Any = data
    for step in wanted.path[:-1]:
        here = _down(here, step)
    last = wanted.path[-1]
    value = copy.deepcopy(wanted.after)
    if isinstance(here, list):
        _make_in_list(here, last, value, wanted.follows)
    elif value is None:
        here.pop(last, None)
    else:
        here[last] = value


def _down(here: Any, step: str | int) -> Any:
    if isinstance(here, list):
        index = place_of(here, step)
        if index is None:
            raise LookupError(step)
        return here[index]
    if step not in here:
        here[step] = []
    return here[step]


def _make_in_list(entries: list[Any], step: str | int, value: Any, follows: str | None) -> None:
    index = place_of(entries, step)
    if index is None and value is not None:
        entries.insert(place_after(entries, follows), value)
    elif index is None:
        raise LookupError(step)
    elif value is None:
        del entries[index]
    else:
        entries[index] = value
