"""From a record to TOML text, and edits of a text that leave its comments alone."""

import datetime
import itertools
from collections.abc import Mapping, Sequence
from enum import Enum
from typing import Any

import tomlkit
from pydantic import BaseModel
from tomlkit import items
from tomlkit.container import Container
from tomlkit.exceptions import TOMLKitError

from coachwright.actions.paths import Steps, dotted
from coachwright.catalogue.loading import parse_toml
from coachwright.errors import BuildFileError, CannotWrite
from coachwright.model.build import Decision

_WIDE = 88
"""A list wider than this is written one entry a line."""


def record_text(record: BaseModel) -> str:
    """Return a record as a TOML file: what is given and not the usual, in the record's order.

    Parameters
    ----------
    record
        A build sheet, a part or a base vehicle.

    Examples
    --------
    >>> from coachwright.model.build import ModeUse
    >>> use = ModeUse(mode="on", summer_use_h_per_day=2, winter_use_h_per_day=3)
    >>> print(record_text(use), end="")
    mode = "on"
    summer_use = "2 h/day"
    winter_use = "3 h/day"
    """
    data = record.model_dump(by_alias=True, exclude_none=True, exclude_defaults=True)
    document = tomlkit.document()
    _fill(document, data)
    return tomlkit.dumps(document)


def text_with_decision(text: str, decision: Decision) -> str:
    """Return a build file's text with one decision more; everything else stays as it was.

    Raises
    ------
    BuildFileError
        Where the text is not TOML.
    """
    data = _plain(decision.model_dump(by_alias=True, exclude_none=True, exclude_defaults=True))
    return _with_entry(text, "decisions", data)


def text_with_values(text: str, values: Mapping[Steps, Any]) -> str:
    r"""Return a file's text with some values set; comments and all other values stay.

    Parameters
    ----------
    text
        TOML.
    values
        What to set where, as a file spells it; tables that are not there yet are made.

    Raises
    ------
    BuildFileError
        Where the text is not TOML.
    CannotWrite
        Where a path leads through something that is no table or list.

    Examples
    --------
    >>> print(text_with_values('[body]\nmass = "2 kg"  # weighed', {("body", "mass"): "3 kg"}))
    [body]
    mass = "3 kg"  # weighed
    """
    document = _parsed(text)
    for path, value in values.items():
        _set(document, path, _plain(value))
    return _checked(tomlkit.dumps(document))


def _with_entry(text: str, field: str, data: Mapping[str, Any]) -> str:
    document = _parsed(text)
    there = document.get(field)
    if there is None:
        # appended as text: a list of tables at the end of a file disturbs nothing before it
        return _checked(f"{text.rstrip()}\n\n[[{field}]]\n{tomlkit.dumps(_table(data))}")
    if isinstance(there, items.AoT):
        entry = _table(data)
        there.append(entry)
        return _checked(tomlkit.dumps(document))
    if isinstance(there, items.Array):
        there.append(_inline(data))
        return _checked(tomlkit.dumps(document))
    raise CannotWrite(f"{field} is not a list of tables; make it one and try again")


def _parsed(text: str) -> tomlkit.TOMLDocument:
    data, faults = parse_toml(text, "the file")
    if data is None:
        raise BuildFileError(faults)
    return tomlkit.parse(text)


def _checked(text: str) -> str:
    """Return the text if it is TOML; an edit must never leave a file that cannot be read."""
    data, faults = parse_toml(text, "the edited file")
    if data is None:
        raise CannotWrite(
            "the change cannot be made without breaking the file's form "
            f"({faults[0].found}); edit it by hand"
        )
    return text


def _set(document: tomlkit.TOMLDocument, path: Steps, value: Any) -> None:
    here: Any = document
    for step, after in itertools.pairwise(path):
        here = _child(here, step, path, list_wanted=isinstance(after, int))
    last = path[-1]
    try:
        if isinstance(last, int) and last == len(here):
            here.append(value)
        else:
            here[last] = value
    except (TypeError, IndexError, TOMLKitError) as error:
        raise _no_place(path) from error


def _child(here: Any, step: str | int, path: Steps, *, list_wanted: bool) -> Any:
    try:
        if isinstance(step, str) and step not in here:
            here[step] = [] if list_wanted else tomlkit.table()
        elif isinstance(step, int) and step == len(here):
            here.append(tomlkit.inline_table())
        return here[step]
    except (TypeError, IndexError, TOMLKitError) as error:
        raise _no_place(path) from error


def _no_place(path: Steps) -> CannotWrite:
    return CannotWrite(f"there is no place for {dotted(path)} in the file; edit it by hand")


def _fill(container: Container | items.Table | tomlkit.TOMLDocument, data: Any) -> None:
    """Put values into a table: plain values first, then tables, then lists of tables."""
    plain = {key: value for key, value in data.items() if not _is_table_like(value)}
    tables = {key: value for key, value in data.items() if isinstance(value, Mapping)}
    for key, value in plain.items():
        container.add(key, _item(value))
    for key, value in tables.items():
        container.add(key, _table(value))
    for key, value in data.items():
        if key not in plain and key not in tables:
            container.add(key, _tables(value))


def _is_table_like(value: Any) -> bool:
    return isinstance(value, Mapping) or (
        isinstance(value, (list, tuple)) and bool(value) and isinstance(value[0], Mapping)
    )


def _table(data: Mapping[str, Any]) -> items.Table:
    table = tomlkit.table()
    _fill(table, data)
    return table


def _tables(values: Sequence[Mapping[str, Any]]) -> items.AoT:
    array = tomlkit.aot()
    for value in values:
        array.append(_table(value))
    return array


def _inline(data: Mapping[str, Any]) -> items.InlineTable:
    table = tomlkit.inline_table()
    for key, value in data.items():
        table.add(key, _inline(value) if isinstance(value, Mapping) else _item(value))
    return table


def _item(value: Any) -> items.Item:
    plain = _plain(value)
    made: items.Item = tomlkit.item(plain)
    if isinstance(made, items.Array) and len(made.as_string()) > _WIDE:
        made.multiline(multiline=True)
    return made


def _plain(value: Any) -> Any:
    """Return a value with nothing but what TOML knows."""
    if isinstance(value, Mapping):
        return {str(key): _plain(entry) for key, entry in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(entry) for entry in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, (str, bool, int, float, datetime.date)):
        return value
    raise CannotWrite(f"{value!r} cannot be written to a file")
