"""Values and tables as TOML text, as they are written into a sheet."""

from collections.abc import Mapping, Sequence
from typing import Any

import tomlkit
from tomlkit import items

_WIDE = 88
"""A list wider than this is written one entry a line."""


def inline(value: Any) -> items.Item:
    """Return a value as it stands behind a key."""
    if isinstance(value, Mapping):
        table = tomlkit.inline_table()
        for key, entry in value.items():
            table.add(key, inline(entry))
        return table
    if isinstance(value, (list, tuple)):
        array = tomlkit.array()
        for entry in value:
            array.append(inline(entry))
        if len(array.as_string()) > _WIDE:
            array.multiline(multiline=True)
        return array
    made: items.Item = tomlkit.item(value)
    return made


def section(keys: Sequence[str], value: Mapping[str, Any], *, of_list: bool) -> str:
    r"""Return a table with its header, and under it the tables inside it.

    Parameters
    ----------
    keys
        Words of the header.
    value
        What the table holds.
    of_list
        Write it as an entry of a list of tables.

    Examples
    --------
    >>> print(section(["brief", "stay"], {"parked": "3 d"}, of_list=False), end="")
    [brief.stay]
    parked = "3 d"
    """
    header = ".".join(tomlkit.key(key).as_string() for key in keys)
    lines = [f"[[{header}]]\n" if of_list else f"[{header}]\n"]
    inner: list[str] = []
    for key, entry in value.items():
        if isinstance(entry, Mapping):
            inner.append(section([*keys, key], entry, of_list=False))
        elif is_tables(entry):
            inner += [section([*keys, key], each, of_list=True) for each in entry]
        else:
            lines.append(f"{tomlkit.key(key).as_string()} = {inline(entry).as_string()}\n")
    if inner and len(lines) == 1 and not of_list:
        return "\n".join(inner)  # the headers inside say that it is there
    return "\n".join(["".join(lines), *inner])


def is_tables(value: Any) -> bool:
    """Say whether a value is a list of nothing but tables, and at least one."""
    return (
        isinstance(value, (list, tuple))
        and bool(value)
        and all(isinstance(each, Mapping) for each in value)
    )
