"""The keys of a sheet: kinds of lines, where the front is, scale bar, findings."""

from collections.abc import Iterator, Sequence

from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Front
from coachwright.drawing.lettering import shortened, wrapped
from coachwright.drawing.marking import shape
from coachwright.drawing.paper import MARGIN_MM, STRIP_MM, TITLE_MM, Paper, rule, words
from coachwright.drawing.placing_findings import Located
from coachwright.drawing.scene import (
    Anchor,
    Area,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Style,
    Weight,
)
from coachwright.model.finding import Severity
from coachwright.units import shown

_LETTERS_MM = 2.8
_LINES: tuple[tuple[str, Layer, Weight, Style], ...] = (
    ("cut", Layer.SHELL, Weight.BOLD, Style.SOLID),
    ("seen", Layer.SHELL, Weight.NORMAL, Style.SOLID),
    ("hidden, or hanging above", Layer.SHELL, Weight.FINE, Style.DASHED),
    ("access zone, kept free", Layer.ZONE, Weight.FINE, Style.DASH_DOT),
)
_KEY_MM = 62.0
"""Width of the key of lines."""
_BARS = {"metric": (100.0, 200.0, 250.0, 500.0, 1000.0), "us": (76.2, 152.4, 304.8, 609.6)}
"""Lengths of one part of the scale bar that may be chosen."""
_BAR_UNITS = {"metric": ("mm", 1.0), "us": ("in", 25.4)}
_PARTS = 4
_LONGEST_MM = 44.0
_ROW_MM = 8.0
_MOST_ROWS = 5


def line_key(corner: Point) -> Iterator[Primitive]:
    """Yield what the kinds of lines mean, below and right of a corner."""
    left, top = corner
    for index, (meaning, layer, weight, style) in enumerate(_LINES):
        height = top - 4.0 - 4.6 * index
        yield Line(
            start_mm=(left + 2.0, height),
            end_mm=(left + 14.0, height),
            layer=layer,
            weight=weight,
            style=style,
        )
        yield words((left + 16.5, height - 1.0), meaning, _LETTERS_MM)


def scale_bar(corner: Point, scale_ratio: float, system: str) -> Iterator[Primitive]:
    """Yield a bar of four parts whose left end stands at a corner.

    Parameters
    ----------
    corner
        Its lower left end, on the paper.
    scale_ratio
        Of the drawing.
    system
        Units shown.
    """
    fitting = [part for part in _BARS[system] if _PARTS * part / scale_ratio <= _LONGEST_MM]
    part = max(fitting, default=_BARS[system][0])
    unit, size = _BAR_UNITS[system]
    step = part / scale_ratio
    left, low = corner
    for index in range(_PARTS):
        points = (
            (left + index * step, low),
            (left + (index + 1) * step, low),
            (left + (index + 1) * step, low + 1.4),
            (left + index * step, low + 1.4),
        )
        if index % 2 == 0:
            yield Area(points_mm=points, layer=Layer.CENTRE_FILL)
        yield Polyline(points_mm=points, layer=Layer.SHEET, closed=True, weight=Weight.FINE)
    for index, anchor in (
        (0, Anchor.MIDDLE),
        (_PARTS // 2, Anchor.MIDDLE),
        (_PARTS, Anchor.START),
    ):
        value = f"{index * part / size:.0f}"
        text = f"{value} {unit}" if index == _PARTS else value
        shift = -1.5 if index == _PARTS else 0.0
        yield words((left + index * step + shift, low + 2.4), text, _LETTERS_MM, anchor=anchor)


def front_arrow(corner: Point, front: Front) -> Iterator[Primitive]:
    """Yield which way the front of the vehicle lies, right of a corner.

    Parameters
    ----------
    corner
        Its left end at half height, on the paper.
    front
        Where the front lies on the paper.
    """
    left, middle = corner
    if front in ("left", "right"):
        sign = -1.0 if front == "left" else 1.0
        tip, tail = (left, left + 18.0) if front == "left" else (left + 18.0, left)
        yield Line(
            start_mm=(tail, middle),
            end_mm=(tip - sign * 4.0, middle),
            layer=Layer.SHEET,
            weight=Weight.BOLD,
        )
        head = ((tip, middle), (tip - sign * 5.0, middle + 1.8), (tip - sign * 5.0, middle - 1.8))
        yield Area(points_mm=head, layer=Layer.CENTRE_FILL)
        yield words((left + 21.0, middle - 1.1), "front of the vehicle", 3.0, strong=True)
    elif front == "away":
        yield words((left, middle - 1.1), "seen towards the front", 3.0, strong=True)


def keys(
    content: Content,
    paper: Paper,
    *,
    front: Front,
    scale_ratio: float | None,
    findings: Sequence[Located],
) -> Iterator[Primitive]:
    """Yield the keys of a sheet, on the left of its title block.

    Parameters
    ----------
    content
        For the units.
    paper
        The sheet's size.
    front
        Where the front lies on the drawing.
    scale_ratio
        Of the drawing; None where nothing is to scale.
    findings
        Those that are marked on the sheet.
    """
    top = MARGIN_MM + STRIP_MM
    left = MARGIN_MM
    if scale_ratio is not None:
        yield from line_key((left, top))
        yield from front_arrow((left + 2.0, MARGIN_MM + 15.5), front)
        yield from scale_bar((left + 3.0, MARGIN_MM + 3.0), scale_ratio, content.system)
        left += _KEY_MM
        yield rule((left, top), (left, MARGIN_MM))
    right = paper.size_mm[0] - MARGIN_MM - TITLE_MM
    yield from finding_key(findings, (left, top), right - left, content.system)


def finding_key(
    findings: Sequence[Located], corner: Point, width_mm: float, system: str
) -> Iterator[Primitive]:
    """Yield what the marked findings say, in two columns.

    Parameters
    ----------
    findings
        In the order of their numbers.
    corner
        Upper left, on the paper.
    width_mm
        Of both columns. [mm]
    system
        Units shown.
    """
    left, top = corner
    if not findings:
        yield words((left + 3.0, top - 5.0), "No finding of the layout is marked here.", 2.8)
        yield words((left + 3.0, top - 9.0), "All findings: compliance sheet.", 2.8)
        return
    column = width_mm / 2
    most = 2 * _MOST_ROWS
    shown_ones = findings if len(findings) <= most else findings[: most - 1]
    for index, item in enumerate(shown_ones):
        at = (left + column * (index // _MOST_ROWS), top - _ROW_MM * (index % _MOST_ROWS) - 4.9)
        yield from _finding_row(item, at, column, system)
    if len(findings) > most:
        rest = len(findings) - len(shown_ones)
        at = (left + column + 3.0, top - _ROW_MM * (_MOST_ROWS - 1) - 5.0)
        yield words(at, f"and {rest} more on this sheet: see sheet “Findings”", 2.8)


def _finding_row(item: Located, at: Point, column_mm: float, system: str) -> Iterator[Primitive]:
    stop = item.finding.severity is Severity.STOP
    yield from shape(item.number, (at[0] + 5.5, at[1]), 1.0, stop=stop)
    room = column_mm - 13.0
    lines = wrapped(sentence_of(item, system), _LETTERS_MM, room)
    kept = [*lines[:1], " ".join(lines[1:])] if lines[1:] else list(lines)
    for index, line in enumerate(kept):
        lift = 0.7 if len(kept) > 1 else -1.0
        text = shortened(line, _LETTERS_MM, room)
        yield words((at[0] + 11.5, at[1] + lift - 3.5 * index), text, _LETTERS_MM)


def sentence_of(item: Located, system: str) -> str:
    """Return a finding in one line: what it is about, how far off it is, and the rule not met."""
    finding = item.finding
    value, limit = (
        shown(number, finding.unit, system).replace("-", "−")
        for number in (finding.value, finding.limit)
    )
    title = f"{finding.title[:1].lower()}{finding.title[1:]}"
    subject = finding.subject.replace("-", " ")
    return f"{subject}: {value}, limit {limit}; not met: {title}"
