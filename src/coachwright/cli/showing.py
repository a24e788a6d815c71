"""Put things on the screen: tables within 80 columns, records in words, JSON."""

import dataclasses
import datetime
import json
from collections.abc import Iterable, Iterator
from enum import Enum
from textwrap import wrap
from typing import TYPE_CHECKING, Any, Literal

import typer

from coachwright import units
from coachwright.units import shown, strip_unit, unit_of

if TYPE_CHECKING:
    from pydantic import BaseModel
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

_NARROW = 80
_WIDEST = 110
"""Wider tables are harder to read, however wide the screen."""
LONGEST_ID = 39
"""Letters of the longest rule id; a column that shows ids is never narrower."""
_FIGURE_BESIDE_ID = 10
"""Widest column of figures beside ids: three of them leave room for an id on a narrow screen."""
_WORDS_BESIDE_ID = 22
"""The same for columns of words, of which there is one."""


def console() -> "Console":
    """Return the console: as wide as the screen, within what is good to read."""
    from rich.console import Console

    made = Console(highlight=False)
    if made.is_terminal:
        made.width = max(_NARROW, min(made.width, _WIDEST))
    else:
        made.width = _NARROW
    return made


def table(
    *headings: str, right: Iterable[int] = (), whole: Iterable[int] = (), leading: int = 0
) -> "Table":
    """Return a table with its headings.

    Parameters
    ----------
    right
        Places of the columns that hold figures.
    whole
        Places of other columns that are never broken over lines: what is copied from the screen.
    leading
        Empty lines between rows.
    headings
        From the left.
    """
    from rich import box
    from rich.table import Table

    made = Table(box=box.SIMPLE_HEAD, pad_edge=False, header_style="bold", leading=leading)
    figures, kept = frozenset(right), frozenset(whole)
    for place, heading in enumerate(headings):
        figure = place in figures
        justify: Literal["right", "left"] = "right" if figure else "left"
        made.add_column(heading, justify=justify, overflow="fold", no_wrap=figure or place in kept)
    return made


def table_of_rules(*headings: str, right: Iterable[int] = (), leading: int = 1) -> "Table":
    """Return a table whose first column holds rule ids, which are copied and so never broken.

    The other columns give way instead: a unit may stand under its number.

    Parameters
    ----------
    right
        Places of the columns that hold figures.
    leading
        Empty lines between rows.
    headings
        From the left.
    """
    figures = frozenset(right)
    made = table(*headings, leading=leading)
    for place, column in enumerate(made.columns):
        if place == 0:
            column.min_width = LONGEST_ID
        elif place in figures:
            column.justify, column.max_width = "right", _FIGURE_BESIDE_ID
        else:
            column.max_width = _WORDS_BESIDE_ID
    return made


def add(rows: "Table", *cells: "str | Text") -> None:
    """Add a row to a table; nothing in a cell is taken for markup."""
    from rich.text import Text

    rows.add_row(*(cell if isinstance(cell, Text) else Text(str(cell)) for cell in cells))


def plain_text(said: str, style: str = "") -> "Text":
    """Return words to print in which nothing is taken for markup."""
    from rich.text import Text

    return Text(said, style=style)


def show(value: float | None, unit: str, system: str) -> str:
    """Return a value with its unit and a true minus sign.

    Parameters
    ----------
    value
        In `unit`; None is unknown.
    unit
        An internal unit, such as ``"kg"``.
    system
        ``"metric"`` or ``"us"``.

    Examples
    --------
    >>> show(-12.25, "kg", "metric"), show(None, "kg", "metric")
    ('−12.2 kg', 'unknown')
    """
    return signed(shown(value, unit, system))


def signed(text: str) -> str:
    """Return a number's text with a true minus sign."""
    return f"−{text[1:]}" if text.startswith("-") else text


def plain(value: float) -> str:
    """Return a number with the digits that a check with a pencil needs.

    Examples
    --------
    >>> plain(1481.375), plain(0.1), plain(2910.0)
    ('1,481.375', '0.1', '2,910')
    """
    return f"{value:,.7g}"


def print_json(data: Any) -> None:
    """Print JSON; a number that is no number is a fault of ours and raises.

    Quantities told in sentences are metric there, as every number is.
    """
    made = json.dumps(data, ensure_ascii=False, indent=2, allow_nan=False, default=_plain)
    typer.echo(units.worded(made))


def _plain(value: Any) -> Any:
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {field.name: getattr(value, field.name) for field in dataclasses.fields(value)}
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, datetime.date):
        return value.isoformat()
    return str(value)


def print_record(record: "BaseModel", system: str, skip: frozenset[str] = frozenset()) -> None:
    """Print a record's fields in words and units; what is not given is left out.

    Parameters
    ----------
    record
        Any record of the model.
    system
        ``"metric"`` or ``"us"``.
    skip
        Fields of the record that were shown already.
    """
    screen = console()
    for line in _lines(record, system, indent="", skip=skip):
        hang = f"{_lead(line)}  "
        typer.echo("\n".join(wrap(line, width=screen.width, subsequent_indent=hang)))


def _lead(line: str) -> str:
    """Return as many spaces as a line has before its first word."""
    return line[: line.index(line.lstrip(" -"))].replace("-", " ")


def _lines(
    record: "BaseModel", system: str, *, indent: str, skip: frozenset[str] = frozenset()
) -> list[str]:
    from pydantic import BaseModel

    lines: list[str] = []
    for name, value in _given(record, skip):
        label = f"{indent}{words(strip_unit(name))}"
        first = value[0] if isinstance(value, tuple) else value
        if not isinstance(first, BaseModel) or _is_amount(first):
            lines.append(f"{label}: {worded(name, value, system)}")
        elif isinstance(value, tuple):
            lines.append(label)
            lines.extend(f"{indent}  - {_inline(entry, system)}" for entry in value)
        else:
            lines.append(label)
            lines.extend(_lines(value, system, indent=f"{indent}  "))
    return lines


def _given(record: "BaseModel", skip: frozenset[str] = frozenset()) -> Iterator[tuple[str, Any]]:
    for name in type(record).model_fields:
        value = getattr(record, name)
        if name not in skip and value is not None and value not in ("", ()):
            yield name, value


def _is_amount(value: Any) -> bool:
    """Whether a record reads as one value: money, a tyre size."""
    return type(value).__name__ in ("Money", "TyreSize")


def _inline(record: "BaseModel", system: str) -> str:
    return ", ".join(
        f"{words(strip_unit(name))} {worded(name, value, system)}"
        for name, value in _given(record)
    )


def worded(name: str, value: Any, system: str) -> str:
    """Return a field's value for a person, with the unit that its name states.

    Examples
    --------
    >>> worded("size_mm", (900.0, 500.0), "metric"), worded("heated", True, "metric")
    ('900 mm × 500 mm', 'yes')
    """
    unit = unit_of(name)
    if isinstance(value, tuple):
        joint = " × " if name == "size_mm" else ", "
        said = joint.join(worded(name, entry, system) for entry in value)
    elif isinstance(value, bool):
        said = "yes" if value else "no"
    elif isinstance(value, float) and unit is not None:
        said = shown(value, unit, system)
    elif _is_amount(value):
        said = str(value.text if isinstance(value.text, str) else value.shown())
    elif hasattr(value, "model_fields"):
        said = f"({_inline(value, system)})"
    else:
        said = str(value)
    return said


def words(name: str) -> str:
    """Return a field's or facet's name as words.

    Examples
    --------
    >>> words("rear_door_carrier"), words("dc_load")
    ('rear door carrier', 'dc load')
    """
    return name.replace("_", " ")
