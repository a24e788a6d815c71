"""The map of a supplier's price list: which column is which field of a part."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, Field
from pydantic.fields import FieldInfo

from coachwright.actions.paths import Steps, dotted
from coachwright.catalogue.loading import read_toml
from coachwright.errors import Fault, PriceListError
from coachwright.model.money import CURRENCIES, Money
from coachwright.model.part import FACET_NAMES, Part
from coachwright.model.reading import read_record
from coachwright.model.record import Quantity, Record
from coachwright.model.tyre_size import TyreSize
from coachwright.unit_table import KINDS
from coachwright.units import allowed_units

FieldKind = Literal["quantity", "sizes", "money", "whole", "number", "truth", "text"]
_STEP = re.compile(r"(?P<name>[a-z_0-9]+)(?:\[(?P<place>\d+)\])?")
_COLUMN_IN_ID = re.compile(r"\{([^{}]+)\}")
_SIZES = 3


class ColumnRule(Record):
    """One column of the list and the field that it fills."""

    column: str = Field(min_length=1)
    """Heading as it stands in the list."""
    field: str = Field(min_length=1)
    """Path of a part's field, such as ``body.mass``; without the facet where `facet` is given."""
    unit: str = ""
    """Unit of bare numbers in the column; for money its currency, where it is another."""
    words: dict[str, str] = Field(default_factory=dict)
    """What stands in the list, and what the field takes for it."""


class PriceMap(Record):
    """How to read one supplier's list."""

    format: Literal[1]
    id: str = Field(min_length=1)
    """How a part's id is made, with columns in braces: ``north-{Article}``."""
    currency: Literal["EUR", "GBP", "USD"]
    columns: tuple[ColumnRule, ...] = Field(min_length=1)
    facet: str = ""
    """Facet of the fields that are given without one."""
    defaults: dict[str, Any] = Field(default_factory=dict)
    """Fields of a new part that the list does not give, as a part's file spells them."""
    decimal: Literal[".", ","] = "."
    """What stands before the decimals in the list."""
    thousands: Literal["", ".", ",", " ", "'"] = ""
    """What parts the thousands; nothing unless it is said."""
    delimiter: Literal["", ",", ";", "\t"] = ""
    """What parts the columns of a CSV file; found out where not given."""
    encoding: Literal["utf-8", "latin-1", "cp1252", "utf-16"] = "utf-8"
    """How the text of a CSV file is coded."""
    sheet: str = ""
    """Sheet of a workbook; the first where not given."""
    heading_row: int = Field(default=1, ge=1)
    """Row in which the headings stand."""

    def id_columns(self) -> tuple[str, ...]:
        """Return the headings that the id is made of."""
        return tuple(" ".join(name.split()) for name in _COLUMN_IN_ID.findall(self.id))


@dataclass(frozen=True, kw_only=True, slots=True)
class Column:
    """A column rule with its field found.

    Attributes
    ----------
    steps
        Where the field stands in a part's file.
    unit
        Of bare numbers; the currency for money; empty where cells must bring their own.
    """

    heading: str
    steps: Steps
    path: str
    kind: FieldKind
    unit: str
    words: dict[str, str]


def read_map(path: Path) -> tuple[PriceMap, tuple[Column, ...]]:
    """Read a map and find the field of each column.

    Raises
    ------
    PriceListError
        With every fault of the map.
    """
    data, faults = read_toml(path)
    if data is None:
        raise PriceListError(faults)
    found, faults = read_record(PriceMap, data, str(path))
    if found is None:
        raise PriceListError(faults)
    columns: list[Column] = []
    wrong = list(_map_faults(found, str(path)))
    for index, rule in enumerate(found.columns):
        made = _column(found, rule, f"columns[{index}]", str(path))
        if isinstance(made, Fault):
            wrong.append(made)
        else:
            columns.append(made)
    if wrong:
        raise PriceListError(wrong)
    return found, tuple(columns)


def _map_faults(price_map: PriceMap, file: str) -> Iterator[Fault]:
    if price_map.facet and price_map.facet not in FACET_NAMES:
        close = get_close_matches(price_map.facet, FACET_NAMES, n=1)
        yield Fault(
            file=file,
            field="facet",
            found=f'"{price_map.facet}"',
            allowed=f"a facet: {', '.join(FACET_NAMES)}",
            action=f"did you mean {close[0]!r}?" if close else "write one that exists",
        )
    if not price_map.id_columns():
        yield Fault(
            file=file,
            field="id",
            found=f'"{price_map.id}"',
            allowed="text with at least one column in braces",
            action='write how ids are made, such as "north-{Article}"',
        )
    if price_map.thousands == price_map.decimal:
        yield Fault(
            file=file,
            field="thousands",
            found=f'"{price_map.thousands}", which parts the decimals too',
            allowed="another sign than decimal",
            action="say which of the two it is",
        )


def _column(price_map: PriceMap, rule: ColumnRule, where: str, file: str) -> Column | Fault:
    steps = _steps(rule.field, price_map.facet)
    kind = None if steps is None else _kind(Part, steps)
    if steps is None or kind is None:
        known = _paths(Part)
        close = get_close_matches(rule.field, known, n=1, cutoff=0.5)
        return Fault(
            file=file,
            field=f"{where}.field ({rule.column})",
            found=f'"{rule.field}"',
            allowed="a field of a part, such as body.mass or price.price ('coachwright schema "
            "part' shows them)",
            action=f"did you mean {close[0]!r}?" if close else "write one that exists",
        )
    unit = rule.unit or (price_map.currency if kind[0] == "money" else "")
    allowed = _units(kind)
    if unit and unit not in allowed:
        return Fault(
            file=file,
            field=f"{where}.unit ({rule.column})",
            found=f'"{unit}"',
            allowed=f"one of: {', '.join(allowed)}" if allowed else "no unit for such a field",
            action="write one that fits the field, or leave it out",
        )
    return Column(
        heading=" ".join(rule.column.split()),
        steps=steps,
        path=dotted(steps),
        kind=kind[0],
        unit=unit,
        words=rule.words,
    )


def _units(kind: tuple[FieldKind, str]) -> tuple[str, ...]:
    if kind[0] == "money":
        return CURRENCIES
    return allowed_units(kind[1]) if kind[1] in KINDS else ()


def _steps(field: str, facet: str) -> Steps | None:
    """Return the steps of a path; the facet is put before one that does not begin at the part."""
    steps: list[str | int] = []
    for piece in field.split("."):
        match = _STEP.fullmatch(piece)
        if match is None:
            return None
        steps.append(match["name"])
        if match["place"] is not None:
            steps.append(int(match["place"]))
    if facet and steps[0] not in _aliases(Part):
        steps.insert(0, facet)
    return tuple(steps)


def _aliases(record: type[BaseModel]) -> dict[str, FieldInfo]:
    return {field.alias or name: field for name, field in record.model_fields.items()}


def _kind(record: type[BaseModel], steps: Steps) -> tuple[FieldKind, str] | None:
    """Return what kind of value a field takes, and the kind of its quantity."""
    field = _aliases(record).get(str(steps[0]))
    if field is None or steps == ("id",):
        return None
    rest = steps[1:]
    in_list = bool(rest) and isinstance(rest[0], int)
    if in_list and len(rest) == 1:
        return _leaf(field) if _quantity(field.annotation) else None
    if rest:
        inner = _first_record(field.annotation)
        return None if inner is None else _kind(inner, rest[1:] if in_list else rest)
    leaf = _leaf(field)
    if leaf is not None and leaf[0] == "quantity" and _is_triple(field.annotation):
        return ("sizes", leaf[1])
    return leaf


def _leaf(field: FieldInfo) -> tuple[FieldKind, str] | None:
    for mark in field.metadata:
        if isinstance(mark, Quantity):
            return ("quantity", mark.kind)
    quantity = _quantity(field.annotation)
    if quantity is not None:
        return ("quantity", quantity.kind)
    inner = _first_record(field.annotation)
    if inner is Money:
        return ("money", "")
    if inner is not None and inner is not TyreSize:
        return None
    plain: dict[Any, FieldKind] = {bool: "truth", int: "whole", float: "number"}
    for kind, word in plain.items():
        if field.annotation is kind or kind in getattr(field.annotation, "__args__", ()):
            return (word, "")
    return ("text", "")


def _quantity(annotation: Any) -> Quantity | None:
    for mark in getattr(annotation, "__metadata__", ()):
        if isinstance(mark, Quantity):
            return mark
    for argument in getattr(annotation, "__args__", ()):
        found = _quantity(argument)
        if found is not None:
            return found
    return None


def _is_triple(annotation: Any) -> bool:
    arguments = getattr(annotation, "__args__", ())
    if len(arguments) == _SIZES and len(set(map(str, arguments))) == 1:
        return True
    return any(_is_triple(argument) for argument in arguments)


def _first_record(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for argument in getattr(annotation, "__args__", ()):
        found = _first_record(argument)
        if found is not None:
            return found
    return None


def _paths(record: type[BaseModel]) -> list[str]:
    """Return the paths of a part's fields down to those of its facets."""
    paths: list[str] = []
    for alias, field in _aliases(record).items():
        inner = _first_record(field.annotation)
        if inner is None or inner in (Money, TyreSize):
            paths.append(alias)
        elif record is Part:
            paths.extend(f"{alias}.{path}" for path in _paths(inner))
    return paths
