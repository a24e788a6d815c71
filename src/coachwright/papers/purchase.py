"""The purchase list as a spreadsheet: by supplier and lead time, with living formulas."""

import datetime
import io
from dataclasses import dataclass
from typing import Any

from coachwright.assess import Assessment
from coachwright.model.money import Money
from coachwright.model.part import Part
from coachwright.papers.wording import PAPER_OF, positions

_CREATED = datetime.datetime(2000, 1, 1, tzinfo=datetime.UTC).replace(tzinfo=None)
"""Written into the file instead of today, so that the same build gives the same bytes."""

_PAPER_NUMBERS = {"us-letter": 1, "a4": 9}
_NO_SUPPLIER = "no supplier stated"
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
_HEAD_ROW = 4
"""Rows are counted from 1, as the spreadsheet shows them."""
_FIRST_ROW = 5

_HEADS = (
    "Supplier",
    "Part",
    "Description",
    "Positions",
    "Quantity",
    "Unit",
    "Unit cost",
    "Total",
    "Lead time, days",
)
_WIDTHS = (20, 34, 44, 14, 10, 8, 12, 13, 15)
_NOTE = (
    "Costs as the catalogue gives them, without tax and delivery; an empty unit cost is unknown "
    "and not in the sum. Check sizes and ratings with the designer before ordering: electrical, "
    "gas and seat parts must suit the codes that hold where the vehicle is registered."
)


@dataclass(frozen=True, kw_only=True, slots=True)
class PurchaseLine:
    """One part to be bought."""

    supplier: str
    part: str
    description: str
    fitted_as: str
    quantity: str
    unit: str
    cost: str
    lead_time: str


def purchase_lines(assessment: Assessment) -> tuple[PurchaseLine, ...]:
    """Return what has to be bought: by supplier, the longest lead time first."""
    build, currency = assessment.build, assessment.wishes.price.currency
    number = positions(build)
    wanted: dict[str, list[str]] = {}
    parts: dict[str, Part] = {}
    for fitted in build.fittings:
        parts[fitted.part.id] = fitted.part
        wanted.setdefault(fitted.part.id, []).append(number[fitted.name])
    counted = {item.name: item.count for item in assessment.wishes.price.items}
    lines = [_piece(part, wanted[part.id], currency) for part in parts.values()]
    finishes = {layer.part.id: layer.part for layer in build.finishes}
    lines += [_sheet(part, counted.get(part.id, 0), currency) for part in finishes.values()]
    lines.sort(key=lambda line: line.part)
    lines.sort(key=lambda line: float(line.lead_time or 0), reverse=True)
    lines.sort(key=lambda line: line.supplier)
    return tuple(lines)


def _piece(part: Part, fitted_as: list[str], currency: str) -> PurchaseLine:
    return _line(part, ", ".join(fitted_as), str(len(fitted_as)), "piece", currency)


def _sheet(part: Part, count: int, currency: str) -> PurchaseLine:
    return _line(part, "finish", str(count) if count else "", "sheet", currency)


def _line(part: Part, fitted_as: str, quantity: str, unit: str, currency: str) -> PurchaseLine:
    return PurchaseLine(
        supplier=part.supplier or _NO_SUPPLIER,
        part=part.name,
        description=part.description,
        fitted_as=fitted_as,
        quantity=quantity,
        unit=unit,
        cost=_plain(_cost(part, currency)),
        lead_time=f"{part.price.lead_time_d:g}" if part.price else "",
    )


def _cost(part: Part, currency: str) -> Money | None:
    costs = part.price.cost if part.price else ()
    return next((money for money in costs if money.currency == currency), None)


def _plain(money: Money | None) -> str:
    return money.text().removesuffix(f" {money.currency}") if money else ""


def neutral(text: str) -> str:
    """Return text that no spreadsheet takes for a formula, even after it was saved as CSV.

    Examples
    --------
    >>> neutral("=1+1"), neutral("Galley box")
    ("'=1+1", 'Galley box')
    """
    return f"'{text}" if text.startswith(_FORMULA_STARTS) else text


def purchase_list(assessment: Assessment) -> bytes:
    """Return the purchase list as a workbook; the same build gives the same bytes."""
    import xlsxwriter  # noqa: PLC0415  # only needed to print

    target = io.BytesIO()
    book = xlsxwriter.Workbook(
        target,
        {
            "in_memory": True,
            "strings_to_formulas": False,
            "strings_to_urls": False,
            "strings_to_numbers": False,
        },
    )
    book.set_properties({"title": f"Purchase list – {assessment.build.name}", "created": _CREATED})
    _fill(book, assessment)
    book.close()
    return target.getvalue()


def _fill(book: Any, assessment: Assessment) -> None:
    build, currency = assessment.build, assessment.wishes.price.currency
    lines = purchase_lines(assessment)
    sheet = book.add_worksheet("Purchase list")
    strong = book.add_format({"bold": True})
    head = book.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "top"})
    quiet = book.add_format({"font_color": "#56626D", "text_wrap": True, "valign": "top"})
    for column, width in enumerate(_WIDTHS):
        sheet.set_column(column, column, width)
    sheet.write_string("A1", neutral(f"Purchase list: {build.name}"), strong)
    sheet.write_string(
        "A2",
        neutral(
            f"{build.customer or 'no customer stated'}, revision {build.revision}, "
            f"record {build.digest[:10]}; money in {currency}"
        ),
    )
    sheet.merge_range("A3:I3", "", quiet)
    sheet.write_string("A3", _NOTE, quiet)
    sheet.set_row(2, 42)
    for letter, name in zip("ABCDEFGHI", _HEADS, strict=True):
        sheet.write_string(f"{letter}{_HEAD_ROW}", name, head)
    *rows, sums, counts = [row for row, _ in enumerate((*lines, None, None), start=_FIRST_ROW)]
    for row, line in zip(rows, lines, strict=True):
        _write_line(book, sheet, row, line)
    last = rows[-1] if rows else _FIRST_ROW
    _write_sums(book, sheet, last, sums, counts)
    sheet.freeze_panes(_HEAD_ROW, 2)
    sheet.autofilter(f"A{_HEAD_ROW}:I{last}")
    sheet.set_landscape()
    sheet.fit_to_pages(1, 0)
    sheet.set_paper(_PAPER_NUMBERS[PAPER_OF[build.brief.jurisdiction]])
    sheet.repeat_rows(3)


def _write_line(book: Any, sheet: Any, row: int, line: PurchaseLine) -> None:
    money = book.add_format({"num_format": "#,##0.00"})
    wrap = book.add_format({"text_wrap": True})
    for letter, text in (
        ("A", line.supplier),
        ("B", line.part),
        ("C", line.description),
        ("D", line.fitted_as),
        ("F", line.unit),
    ):
        sheet.write_string(f"{letter}{row}", neutral(text), wrap)
    if line.quantity:
        sheet.write_number(f"E{row}", float(line.quantity))
    if line.cost:
        sheet.write_number(f"G{row}", float(line.cost), money)
    sheet.write_formula(f"H{row}", f'=IF(OR(E{row}="",G{row}=""),"",E{row}*G{row})', money, "")
    if line.lead_time:
        sheet.write_number(f"I{row}", float(line.lead_time))


def _write_sums(book: Any, sheet: Any, last: int, sums: int, counts: int) -> None:
    total = book.add_format({"bold": True, "top": 1, "num_format": "#,##0.00"})
    words = book.add_format({"bold": True, "top": 1})
    count = book.add_format({"num_format": "0"})
    sheet.write_string(f"B{sums}", "Sum of the costs that are known", words)
    sheet.write_formula(f"H{sums}", f"=SUM(H{_FIRST_ROW}:H{last})", total, "")
    sheet.write_string(f"B{counts}", "Lines without quantity or cost")
    sheet.write_formula(f"H{counts}", f"=COUNTBLANK(H{_FIRST_ROW}:H{last})", count, "")
