"""From one cell of a price list to the value that a part's file holds."""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from coachwright.actions.price_list import Cell
from coachwright.actions.price_map import Column, PriceMap

Value = str | int | float | bool | list[str]
_SEPARATOR = re.compile(r"\s*[x×*]\s*")
_TRUTH = {"true": True, "yes": True, "1": True, "false": False, "no": False, "0": False}
_MOST_DECIMALS = 2
_SIZES = 3


@dataclass(frozen=True, kw_only=True, slots=True)
class CellFault:
    """Why a cell cannot be used."""

    found: str
    allowed: str
    action: str


def value_of(cell: Cell, column: Column, price_map: PriceMap) -> Value | CellFault | None:
    """Return a cell as a part's file holds it; None for an empty one."""
    text = "" if cell is None else str(cell).strip()
    if text in column.words:
        cell = text = column.words[text]
    if not text:
        return None
    match column.kind:
        case "quantity":
            made: Value | CellFault = _quantity(cell, text, column, price_map)
        case "sizes":
            made = _sizes(text, column, price_map)
        case "money":
            made = _money(cell, text, column, price_map)
        case "whole" | "number":
            made = _number_field(cell, text, column, price_map)
        case "truth":
            made = _truth(text)
        case _:
            made = _text(cell, text)
    return made


def part_id(price_map: PriceMap, cells: Mapping[str, Cell]) -> str:
    """Return the id that the map's pattern gives a row: lower-case words joined by hyphens.

    Letters with accents lose them; whatever is no letter or digit becomes a hyphen.
    """
    made = price_map.id
    for heading in re.findall(r"\{([^{}]+)\}", price_map.id):
        cell = cells.get(" ".join(heading.split()))
        made = made.replace("{" + heading + "}", "" if cell is None else _text(cell, str(cell)))
    plain = unicodedata.normalize("NFKD", made).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")


def _number(text: str, price_map: PriceMap) -> tuple[str, str] | CellFault:
    """Return the number that a text begins with, with a point, and what stands behind it."""
    thousands = re.escape(price_map.thousands)
    grouped = rf"\d{{1,3}}(?:{thousands}\d{{3}})+|" if thousands else ""
    form = rf"(?P<number>[+-]?(?:{grouped}\d+)(?:{re.escape(price_map.decimal)}\d+)?)(?P<rest>.*)"
    match = re.fullmatch(form, text, re.DOTALL)
    if match is None or re.match(r"[\d.,']", match["rest"].strip()):
        signs = f'"{price_map.decimal}" before the decimals'
        if price_map.thousands:
            signs += f' and "{price_map.thousands}" between thousands'
        return CellFault(
            found=f'"{text}"',
            allowed=f"a number with {signs}",
            action="correct the cell, or set decimal and thousands in the map",
        )
    number = match["number"]
    if price_map.thousands:
        number = number.replace(price_map.thousands, "")
    return number.replace(price_map.decimal, "."), match["rest"].strip()


def _parted(cell: Cell, text: str, price_map: PriceMap) -> tuple[str, str] | CellFault:
    """Return number and rest; a workbook's own numbers need no reading."""
    if isinstance(cell, (int, Decimal)) and not isinstance(cell, bool):
        return f"{cell:f}" if isinstance(cell, Decimal) else f"{cell}", ""
    return _number(text, price_map)


def _quantity(cell: Cell, text: str, column: Column, price_map: PriceMap) -> str | CellFault:
    parted = _parted(cell, text, price_map)
    if isinstance(parted, CellFault):
        return parted
    number, unit = parted
    if not (unit or column.unit):
        return CellFault(
            found=f'"{text}"',
            allowed="a number with its unit",
            action="name the column's unit in the map",
        )
    return f"{number} {unit or column.unit}"


def _sizes(text: str, column: Column, price_map: PriceMap) -> list[str] | CellFault:
    unit = column.unit
    pieces = _SEPARATOR.split(text)
    numbers: list[str] = []
    for piece in pieces:
        parted = _number(piece, price_map)
        if isinstance(parted, CellFault):
            return parted
        numbers.append(parted[0])
        unit = parted[1] or unit
    if len(numbers) != _SIZES or not unit:
        return CellFault(
            found=f'"{text}"',
            allowed="length x width x height with a unit, such as 900 x 500 x 880 mm",
            action="correct the cell, or name the column's unit in the map",
        )
    return [f"{number} {unit}" for number in numbers]


def _money(cell: Cell, text: str, column: Column, price_map: PriceMap) -> str | CellFault:
    parted = _parted(cell, text, price_map)
    if isinstance(parted, CellFault):
        return parted
    number, currency = parted
    amount = Decimal(number)
    exponent = amount.normalize().as_tuple().exponent
    decimals = -exponent if isinstance(exponent, int) else 0
    if amount < 0 or decimals > _MOST_DECIMALS or currency not in ("", column.unit):
        return CellFault(
            found=f'"{text}"',
            allowed=f"an amount of {column.unit}, not negative, with two decimals at most",
            action="correct the cell, or name the column's currency as its unit in the map",
        )
    return f"{amount:.2f} {column.unit}"


def _number_field(cell: Cell, text: str, column: Column, price_map: PriceMap) -> Value | CellFault:
    parted = _parted(cell, text, price_map)
    if isinstance(parted, CellFault):
        return parted
    number = Decimal(parted[0])
    whole = number == number.to_integral_value()
    if parted[1] or (column.kind == "whole" and not whole):
        return CellFault(
            found=f'"{text}"',
            allowed="a whole number" if column.kind == "whole" else "a number",
            action="correct the cell",
        )
    return int(number) if column.kind == "whole" else float(number)


def _truth(text: str) -> bool | CellFault:
    found = _TRUTH.get(text.lower())
    if found is None:
        return CellFault(
            found=f'"{text}"',
            allowed="true, false, yes, no, 1 or 0",
            action="say in the map's words what it means",
        )
    return found


def _text(cell: Cell, text: str) -> str:
    """Return text; a workbook's whole number is written without decimals."""
    if isinstance(cell, Decimal) and cell == cell.to_integral_value():
        return f"{int(cell)}"
    return " ".join(text.split())
