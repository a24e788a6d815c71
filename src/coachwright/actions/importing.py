"""Import a supplier's price list into the shop's own parts."""

import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from coachwright.actions.files import write_all
from coachwright.actions.paths import Steps, dotted, got, put
from coachwright.actions.price_cells import CellFault, part_id, value_of
from coachwright.actions.price_list import Row, read_rows
from coachwright.actions.price_map import Column, PriceMap, read_map
from coachwright.actions.writing import record_text, text_with_values
from coachwright.catalogue.loading import SHIPPED, Catalogue, Origin, parse_toml
from coachwright.errors import CannotWrite, Fault
from coachwright.model.part import ID_PATTERN, Part
from coachwright.model.reading import read_record


@dataclass(frozen=True, kw_only=True, slots=True)
class FieldChange:
    """One field that an import changes, as the part's file holds it."""

    field: str
    before: str
    after: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PlannedPart:
    """What an import does with one row.

    Attributes
    ----------
    action
        ``"new"``, ``"changed"``, ``"unchanged"`` or ``"overrides"``: takes the place of a shipped
        part from now on.
    text
        The part's file.
    """

    id: str
    name: str
    row: int
    action: str
    changes: tuple[FieldChange, ...]
    text: str


@dataclass(frozen=True, kw_only=True, slots=True)
class _Import:
    """What every row needs to be read."""

    prices: Path
    price_map: PriceMap
    columns: tuple[Column, ...]
    catalogue: Catalogue


@dataclass(frozen=True, kw_only=True, slots=True)
class ImportPlan:
    """What an import would do, and every fault of the list."""

    file: str
    folder: Path
    rows: int
    parts: tuple[PlannedPart, ...]
    faults: tuple[Fault, ...]


def plan_import(prices: Path, map_file: Path, catalogue: Catalogue, folder: Path) -> ImportPlan:
    """Read a price list by its map and say what its import would do; nothing is written.

    Parameters
    ----------
    prices
        The list, CSV or XLSX.
    map_file
        Which column is which field.
    catalogue
        The parts that are there.
    folder
        The shop's folder.

    Raises
    ------
    PriceListError
        Where the map has faults, or the list as a whole cannot be read; faults of single rows are
        part of the plan.
    """
    price_map, columns = read_map(map_file)
    headings = (*(column.heading for column in columns), *price_map.id_columns())
    rows = read_rows(prices, price_map, tuple(dict.fromkeys(headings)))
    job = _Import(prices=prices, price_map=price_map, columns=columns, catalogue=catalogue)
    parts: list[PlannedPart] = []
    faults: list[Fault] = []
    seen: dict[str, int] = {}
    for row in rows:
        made, wrong = _plan_row(row, job)
        faults.extend(wrong)
        if made is None:
            continue
        if made.id in seen:
            faults.append(_twice(prices, row, made.id, seen[made.id]))
            continue
        seen[made.id] = row.number
        parts.append(made)
    return ImportPlan(
        file=str(prices), folder=folder, rows=len(rows), parts=tuple(parts), faults=tuple(faults)
    )


def write_import(plan: ImportPlan) -> tuple[Path, ...]:
    """Write the parts of a plan into the shop's folder; return the files written.

    Raises
    ------
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    files = {
        plan.folder / "parts" / f"{part.id}.toml": part.text.encode()
        for part in plan.parts
        if part.action != "unchanged"
    }
    write_all(files)
    return tuple(files)


def _plan_row(row: Row, job: _Import) -> tuple[PlannedPart | None, list[Fault]]:
    faults: list[Fault] = []
    entry_id = part_id(job.price_map, row.cells)
    if re.fullmatch(ID_PATTERN, entry_id) is None or row.surplus:
        faults.append(_row_fault(row, entry_id, job))
    values: dict[Steps, Any] = {}
    for column in job.columns:
        value = value_of(row.cells[column.heading], column, job.price_map)
        if isinstance(value, CellFault):
            faults.append(_cell_fault(row, column, value, job.prices))
        elif value is not None:
            values[column.steps] = value
    if faults:
        return None, faults
    there = _file_of(entry_id, job.catalogue)
    if there is None:
        return _new_part(row, entry_id, values, job)
    return _changed_part(row, values, there, job)


def _file_of(entry_id: str, catalogue: Catalogue) -> Path | None:
    """Return the file of a part that is there: the shop's own, else the shipped one."""
    folders = [SHIPPED] if catalogue.shop is None else [catalogue.shop, SHIPPED]
    for folder in folders:
        path = folder / "parts" / f"{entry_id}.toml"
        if path.is_file():
            return path
    return None


def _new_part(
    row: Row, entry_id: str, values: Mapping[Steps, Any], job: _Import
) -> tuple[PlannedPart | None, list[Fault]]:
    data: dict[str, Any] = deepcopy(job.price_map.defaults) | {"id": entry_id}
    for steps, value in values.items():
        put(data, steps, [value] if _is_money(steps) else value)
    part, faults = read_record(Part, data, str(job.prices))
    if part is None:
        return None, [_in_row(fault, row, job.columns) for fault in faults]
    heading = f"# From the price list {job.prices.name}, row {row.number}.\n"
    planned = PlannedPart(
        id=entry_id,
        name=part.name,
        row=row.number,
        action="new",
        changes=(),
        text=f"{heading}{record_text(part)}",
    )
    return planned, []


def _changed_part(
    row: Row, values: Mapping[Steps, Any], there: Path, job: _Import
) -> tuple[PlannedPart | None, list[Fault]]:
    text = there.read_text(encoding="utf-8-sig")
    data, faults = parse_toml(text, str(there))
    if data is None:
        return None, list(faults)
    before, faults = read_record(Part, data, str(there))
    if before is None:
        return None, list(faults)
    wanted = {
        steps: _with_amount(got(data, steps), value) if _is_money(steps) else value
        for steps, value in values.items()
    }
    for steps, value in wanted.items():
        put(data, steps, value)
    part, faults = read_record(Part, data, str(job.prices))
    if part is None:
        return None, [_in_row(fault, row, job.columns) for fault in faults]
    changes = tuple(_changes(before, part, wanted))
    planned = PlannedPart(
        id=part.id,
        name=part.name,
        row=row.number,
        action=_action(part.id, changes, job.catalogue),
        changes=tuple(change for _, change in changes),
        text=_verified(
            text_with_values(text, {steps: wanted[steps] for steps, _ in changes}), part
        ),
    )
    return planned, []


def _changes(
    before: Part, after: Part, steps: Iterable[Steps]
) -> Iterator[tuple[Steps, FieldChange]]:
    """Yield the fields that really change: other words for the same value are no change."""
    old, new = before.model_dump(by_alias=True), after.model_dump(by_alias=True)
    for path in steps:
        was, becomes = got(old, path), got(new, path)
        if was != becomes:
            yield path, FieldChange(field=dotted(path), before=_said(was), after=_said(becomes))


def _action(entry_id: str, changes: Collection[object], catalogue: Catalogue) -> str:
    if not changes:
        return "unchanged"
    shipped = catalogue.origin("parts", entry_id) is Origin.SHIPPED
    return "overrides" if shipped else "changed"


def _verified(text: str, part: Part) -> str:
    """Return the edited text if it reads as the part that was planned."""
    data, _ = parse_toml(text, part.id)
    read, _ = (None, ()) if data is None else read_record(Part, data, part.id)
    if read != part:
        raise CannotWrite(
            f"the file of the part {part.id} cannot be changed without losing something; "
            "change it by hand"
        )
    return text


def _is_money(steps: Steps) -> bool:
    return steps in (("price", "price"), ("price", "cost"))


def _with_amount(before: Any, amount: Any) -> list[str]:
    """Return the amounts with one exchanged: each currency has one."""
    currency = str(amount).split()[-1]
    others = [
        entry
        for entry in (before if isinstance(before, list) else [])
        if not str(entry).endswith(currency)
    ]
    return [*others, amount]


def _said(value: Any) -> str:
    if value is None:
        return "nothing"
    if isinstance(value, (list, tuple)):
        return ", ".join(f"{entry}" for entry in value)
    return f"{value}"


def _row_fault(row: Row, entry_id: str, job: _Import) -> Fault:
    if row.surplus:
        return Fault(
            file=str(job.prices),
            field=f"row {row.number}",
            found=f"cells beyond the last heading: {', '.join(row.surplus)}",
            allowed="no more cells than headings",
            action="put texts that hold the delimiter in quotes",
        )
    return Fault(
        file=str(job.prices),
        field=f"row {row.number} (id)",
        found=f'"{entry_id}"',
        allowed=f"an id made as {job.price_map.id!r} of letters and digits",
        action="fill the columns that the id is made of",
    )


def _cell_fault(row: Row, column: Column, wrong: CellFault, prices: Path) -> Fault:
    return Fault(
        file=str(prices),
        field=f'row {row.number}, column "{column.heading}" ({column.path})',
        found=wrong.found,
        allowed=wrong.allowed,
        action=wrong.action,
    )


def _in_row(fault: Fault, row: Row, columns: tuple[Column, ...]) -> Fault:
    """Return a part's fault as one of the row, with the column that brought it."""
    for column in columns:
        if fault.field.startswith(column.path):
            where = f'row {row.number}, column "{column.heading}" ({fault.field})'
            stood = row.cells[column.heading]
            found = fault.found if stood in (None, "") else f'"{stood}"'
            return Fault(
                file=fault.file,
                field=where,
                found=found,
                allowed=fault.allowed,
                action=fault.action,
            )
    return Fault(
        file=fault.file,
        field=f"row {row.number} ({fault.field})",
        found=fault.found,
        allowed=fault.allowed,
        action=f"{fault.action}, by a column or under defaults in the map",
    )


def _twice(prices: Path, row: Row, entry_id: str, first: int) -> Fault:
    return Fault(
        file=str(prices),
        field=f"row {row.number} (id)",
        found=f'"{entry_id}", as in row {first}',
        allowed="each part once",
        action="take one of the rows out, or make the id of more columns",
    )
