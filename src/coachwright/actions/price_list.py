"""Read a supplier's price list, CSV or workbook, into rows of cells; nothing else."""

import csv
import io
import zipfile
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from coachwright.actions.price_map import PriceMap
from coachwright.errors import Fault, PriceListError

Cell = str | int | Decimal | bool | None
"""Numbers only from workbooks, as they are shown there; a CSV file has text."""

MOST_BYTES = 20_000_000
MOST_UNPACKED_BYTES = 200_000_000
MOST_ROWS = 20_000
MOST_COLUMNS = 200
_DELIMITERS = (";", "\t", ",")


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """One row of a list.

    Attributes
    ----------
    number
        As the program that made the list counts.
    surplus
        Cells beyond the last heading that hold something: the row has slipped.
    """

    number: int
    cells: dict[str, Cell]
    surplus: tuple[str, ...] = ()


def read_rows(path: Path, price_map: PriceMap, wanted: tuple[str, ...]) -> tuple[Row, ...]:
    """Read the rows of a list.

    Parameters
    ----------
    path
        A file ending in ``.csv`` or ``.xlsx``.
    price_map
        How it is coded, and where its headings stand.
    wanted
        Headings that must be there.

    Raises
    ------
    PriceListError
        Where the list cannot be read, or lacks a heading.
    """
    content = _content(path)
    ending = path.suffix.lower()
    if ending == ".xlsx":
        lines = _workbook_lines(path, content, price_map)
    elif ending == ".csv":
        lines = _csv_lines(path, content, price_map, wanted)
    else:
        raise _refused(
            path, f"a file ending in {ending or 'nothing'}", ".csv or .xlsx", "save it as one"
        )
    return _rows(path, lines, price_map, wanted)


def _content(path: Path) -> bytes:
    try:
        size = path.stat().st_size
        if size > MOST_BYTES:
            raise _refused(path, f"{size} bytes", f"at most {MOST_BYTES} bytes", "split the list")
        return path.read_bytes()
    except FileNotFoundError:
        raise _refused(path, "no such file", "a price list", "check the path") from None
    except IsADirectoryError:
        raise _refused(path, "a folder", "a price list", "name the file in it") from None
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise _refused(path, reason, "a readable file", "change its rights") from None


def _csv_lines(
    path: Path, content: bytes, price_map: PriceMap, wanted: tuple[str, ...]
) -> list[list[Cell]]:
    text = _text(path, content, price_map)
    delimiter = price_map.delimiter or _delimiter(text, price_map, wanted)
    try:
        read = list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))
    except csv.Error as error:
        raise _refused(
            path, f"{error}", "CSV with complete quotes", "save the list as CSV again"
        ) from None
    return [list(line) for line in read]


def _text(path: Path, content: bytes, price_map: PriceMap) -> str:
    encoding = price_map.encoding
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        encoding = "utf-16"
    try:
        text = content.decode("utf-8-sig" if encoding == "utf-8" else encoding)
    except UnicodeError:
        raise _refused(
            path,
            f"bytes that are not {encoding}",
            "text in UTF-8, or in the encoding that the map names",
            'add encoding = "latin-1" (or "cp1252") to the map, or save the list as UTF-8',
        ) from None
    if "\0" in text:
        raise _refused(
            path, "zero bytes in the text", "text", "save the list as CSV in UTF-8 again"
        )
    return text


def _delimiter(text: str, price_map: PriceMap, wanted: tuple[str, ...]) -> str:
    """Return the sign that parts the heading row into the most of the wanted headings."""
    lines = text.splitlines()
    if len(lines) < price_map.heading_row:
        return ","
    heading = lines[price_map.heading_row - 1]

    def found(delimiter: str) -> int:
        headings = {cell.strip().strip('"') for cell in heading.split(delimiter)}
        return len(headings & set(wanted))

    return max(_DELIMITERS, key=found)


def _workbook_lines(path: Path, content: bytes, price_map: PriceMap) -> list[list[Cell]]:
    import openpyxl  # noqa: PLC0415  # heavy, and seldom wanted

    _refuse_bomb(path, content)
    try:
        book = openpyxl.load_workbook(io.BytesIO(content), read_only=True, data_only=True)
        sheets = {sheet.title: sheet for sheet in book.worksheets}
        name = price_map.sheet or next(iter(sheets), "")
        lines = _sheet_lines(sheets[name]) if name in sheets else None
    except Exception as error:  # noqa: BLE001  # whatever a broken workbook brings about
        raise _refused(
            path,
            f"a workbook that cannot be read ({type(error).__name__})",
            "an XLSX workbook",
            "save it again as XLSX, or as CSV",
        ) from None
    if lines is None:
        raise _refused(
            path,
            f'no sheet "{name}"',
            f"one of the sheets: {', '.join(sheets)}",
            "name one of them as sheet in the map",
        )
    return lines


def _sheet_lines(sheet: Any) -> list[list[Cell]]:
    """Return a sheet's lines; more than are allowed, so that too many are seen."""
    lines = sheet.iter_rows(max_row=MOST_ROWS + 100, max_col=MOST_COLUMNS, values_only=True)
    return [[_cell(value) for value in line] for line in lines]


def _cell(value: object) -> Cell:
    if isinstance(value, float):
        return Decimal(repr(value))
    if value is None or isinstance(value, (str, int)):
        return value
    return str(value)


def _refuse_bomb(path: Path, content: bytes) -> None:
    """Refuse a workbook that unpacks to far more than a price list can be."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            unpacked = sum(entry.file_size for entry in archive.infolist())
    except zipfile.BadZipFile:
        raise _refused(
            path, "a file that is no XLSX workbook", "an XLSX workbook", "save it again as XLSX"
        ) from None
    if unpacked > MOST_UNPACKED_BYTES:
        raise _refused(
            path,
            f"a workbook that unpacks to {unpacked} bytes",
            f"at most {MOST_UNPACKED_BYTES} bytes",
            "split the list, or save it as CSV",
        )


def _rows(
    path: Path, lines: list[list[Cell]], price_map: PriceMap, wanted: tuple[str, ...]
) -> tuple[Row, ...]:
    place = price_map.heading_row
    if len(lines) - place > MOST_ROWS:
        raise _too_many_rows(path)
    headings = [_heading(cell) for cell in (lines[place - 1] if len(lines) >= place else [])]
    faults = [fault for name in wanted for fault in _heading_faults(path, name, headings, place)]
    if faults:
        raise PriceListError(faults)
    rows: list[Row] = []
    for number, line in enumerate(lines[place:], start=place + 1):
        if all(cell is None or str(cell).strip() == "" for cell in line):
            continue
        cells = dict(zip(headings, line, strict=False))
        rows.append(
            Row(
                number=number,
                cells={name: cells.get(name) for name in wanted},
                surplus=tuple(f"{cell}" for cell in line[len(headings) :] if cell is not None),
            )
        )
    return tuple(rows)


def _heading(cell: Cell) -> str:
    return "" if cell is None else " ".join(str(cell).split())


def _heading_faults(path: Path, name: str, headings: list[str], place: int) -> list[Fault]:
    times = headings.count(name)
    if times == 1:
        return []
    there = ", ".join(f'"{heading}"' for heading in headings if heading) or "none"
    return [
        Fault(
            file=str(path),
            field=f"row {place}",
            found=f'the heading "{name}" {times} times' if times else f'no heading "{name}"',
            allowed=f"each mapped heading once; there are: {there}",
            action="correct the heading in the map, or its heading_row, delimiter or sheet",
        )
    ]


def _too_many_rows(path: Path) -> PriceListError:
    return _refused(
        path, f"more than {MOST_ROWS} rows", f"at most {MOST_ROWS} rows", "split the list"
    )


def _refused(path: Path, found: str, allowed: str, action: str) -> PriceListError:
    return PriceListError(
        [
            Fault(
                file=str(path),
                field="the whole file",
                found=found,
                allowed=allowed,
                action=action,
            )
        ]
    )
