"""Sheets that are tables: where everything stands, and every finding of the layout."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachwright.drawing.content import Content
from coachwright.drawing.keys import sentence_of
from coachwright.drawing.lettering import shortened
from coachwright.drawing.marking import shape
from coachwright.drawing.measure import length_text
from coachwright.drawing.paper import (
    MARGIN_MM,
    PAPER_OF,
    Paper,
    frame,
    rule,
    words,
)
from coachwright.drawing.placing_findings import located
from coachwright.drawing.scene import Anchor, Point, Primitive, Sheet, Weight
from coachwright.drawing.sheets import ALONE, Place, framed
from coachwright.drawing.things import Thing
from coachwright.drawing.title_block import SheetWords, title_block
from coachwright.model.finding import Severity

_ROW_MM = 4.5
_FINDING_ROW_MM = 9.2
_HEAD_MM = 9.0
_LETTERS_MM = 2.9
_HEAD_LETTERS_MM = 2.6


@dataclass(frozen=True, kw_only=True, slots=True)
class _Column:
    head: tuple[str, str]
    share_frac: float
    anchor: Anchor = Anchor.END


_COLUMNS = (
    _Column(head=("", "pos."), share_frac=0.06),
    _Column(head=("", "reference"), share_frac=0.25, anchor=Anchor.START),
    _Column(head=("", "length × width × height"), share_frac=0.26),
    _Column(head=("front edge", "behind cab line"), share_frac=0.14),
    _Column(head=("left edge", "off centre"), share_frac=0.1),
    _Column(head=("right edge", "off centre"), share_frac=0.1),
    _Column(head=("over finished", "floor"), share_frac=0.09),
)


def setting_out(content: Content, *, page: int = 1, place: Place = ALONE) -> Sheet:
    """Return one sheet of the table of where every fitting stands.

    Parameters
    ----------
    content
        The build with its layout.
    page
        From 1.
    place
        Which sheet of how many.
    """
    paper = PAPER_OF[content.build.brief.jurisdiction]
    rows = [_setting_row(thing, content) for thing in content.things if thing.number]
    each = _rows_each(paper, _ROW_MM)
    shown = rows[2 * each * (page - 1) : 2 * each * page]
    primitives: list[Primitive] = []
    for index in range(2):
        part = shown[each * index : each * (index + 1)]
        primitives += _table(part, paper, index)
    return _table_sheet(
        content,
        paper,
        primitives,
        SheetWords(
            title="Setting out",
            subtitle="bounding boxes as placed; L left and R right of the centreline; "
            "numbers as on the parts list",
            scale="–",
            number=place.words,
        ),
        name="setting-out",
    )


def setting_out_pages(content: Content) -> int:
    """Return how many sheets the table takes."""
    paper = PAPER_OF[content.build.brief.jurisdiction]
    count = sum(1 for thing in content.things if thing.number)
    return max(1, -(-count // (2 * _rows_each(paper, _ROW_MM))))


def findings_sheet(content: Content, *, place: Place = ALONE) -> Sheet:
    """Return the sheet that lists the findings of the layout by their numbers.

    Parameters
    ----------
    content
        The build with its findings.
    place
        Which sheet of how many.
    """
    paper = PAPER_OF[content.build.brief.jurisdiction]
    found = located(content)
    each = _rows_each(paper, _FINDING_ROW_MM)
    width = paper.room_mm[0] / 2
    top = paper.size_mm[1] - MARGIN_MM - 6.0
    primitives: list[Primitive] = []
    for index, item in enumerate(found[: 2 * each]):
        left = MARGIN_MM + 4.0 + width * (index // each)
        middle = top - _FINDING_ROW_MM * (index % each)
        stop = item.finding.severity is Severity.STOP
        primitives += shape(item.number, (left + 4.0, middle), 1.0, stop=stop)
        first, _, second = sentence_of(item, content.system).partition("; ")
        where = "" if item.at_mm is not None else " (no one place)"
        room = width - 18.0
        primitives.append(
            words((left + 11.0, middle + 0.6), shortened(first + where, 3.1, room), 3.1)
        )
        primitives.append(words((left + 11.0, middle - 3.4), shortened(second, 2.8, room), 2.8))
    if not found:
        text = "No stop and no caution of the layout is broken. Unknown: see compliance sheet."
        primitives.append(words((MARGIN_MM + 6.0, top), text, 3.4))
    more = len(found) - 2 * each
    subtitle = "broken stops (triangles) and cautions (diamonds) of the layout, numbered as marked"
    if more > 0:
        subtitle = f"{subtitle}; {more} more on the compliance sheet"
    return _table_sheet(
        content,
        paper,
        primitives,
        SheetWords(title="Findings", subtitle=subtitle, scale="–", number=place.words),
        name="findings",
    )


def _rows_each(paper: Paper, row_mm: float) -> int:
    return int((paper.room_mm[1] - _HEAD_MM - 3.0) / row_mm)


def _setting_row(thing: Thing, content: Content) -> tuple[str, ...]:
    system = content.system
    cab = content.build.vehicle.shell.cab_line_mm
    floor = content.layout.build_up.floor_mm
    return (
        thing.number,
        thing.words,
        " × ".join(length_text(side, system) for side in thing.size_mm),
        length_text(thing.low_mm[0] - cab, system),
        _off_centre(thing.low_mm[1], system),
        _off_centre(thing.high_mm[1], system),
        length_text(thing.low_mm[2] - floor, system),
    )


def _off_centre(y_mm: float, system: str) -> str:
    text = length_text(abs(y_mm), system)
    if text == "0":
        return "0"
    return f"{text} {'R' if y_mm > 0 else 'L'}"


def _table(rows: Sequence[tuple[str, ...]], paper: Paper, index: int) -> Iterator[Primitive]:
    if not rows:
        return
    width = paper.room_mm[0] / 2 - 8.0
    left = MARGIN_MM + 5.0 + (width + 8.0) * index
    top = paper.size_mm[1] - MARGIN_MM - 4.5
    edges = _edges_mm(left, width)
    for column, (start, end) in zip(_COLUMNS, edges, strict=True):
        at = start if column.anchor is Anchor.START else end
        for line, text in enumerate(column.head):
            yield words((at, top - 3.3 * line), text, _HEAD_LETTERS_MM, anchor=column.anchor)
    yield rule((left, top - 4.8), (left + width, top - 4.8), Weight.NORMAL)
    for number, row in enumerate(rows):
        foot = top - _HEAD_MM - _ROW_MM * number
        for column, text, (start, end) in zip(_COLUMNS, row, edges, strict=True):
            at = start if column.anchor is Anchor.START else end
            kept = shortened(text, _LETTERS_MM, end - start)
            yield words((at, foot), kept, _LETTERS_MM, anchor=column.anchor)
        yield rule((left, foot - 1.3), (left + width, foot - 1.3))


def _edges_mm(left_mm: float, width_mm: float) -> tuple[Point, ...]:
    edges = []
    here = left_mm
    for column in _COLUMNS:
        end = here + width_mm * column.share_frac
        edges.append((here + 1.5, end - 1.0))
        here = end
    return tuple(edges)


def _table_sheet(
    content: Content, paper: Paper, table: Sequence[Primitive], sheet: SheetWords, *, name: str
) -> Sheet:
    primitives = [
        *frame(paper),
        *table,
        *title_block(content, paper, sheet),
    ]
    return Sheet(
        name=name,
        title=sheet.title,
        size_mm=paper.size_mm,
        frame=framed(primitives, paper),
        panes=(),
    )
