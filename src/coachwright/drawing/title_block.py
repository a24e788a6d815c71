"""The title block: project, revision, view, scale, units, who drew and who checks, caution."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.content import Content
from coachwright.drawing.lettering import shortened, wrapped
from coachwright.drawing.measure import UNITS
from coachwright.drawing.paper import MARGIN_MM, STRIP_MM, TITLE_MM, Paper, box, rule, words
from coachwright.drawing.scene import Anchor, Point, Primitive, Weight

CAUTION = (
    "Drawn from the build as written; no certificate. Check every dimension in the vehicle "
    "before cutting. Structure, seats, gas and electrics: licensed practice and local codes."
)
_PAD_MM = 2.0
_NAME_MM = 2.5
"""Em square of the small words that say what a field is."""
_VALUE_MM = 3.2
_CAUTION_MM = 2.7
_RECORD_LETTERS = 10
_ROWS_MM = (12.0, 11.0, 9.5)
"""Heights of the rows from above; the last takes what is left."""
_DRAWN_MM = 36.0
_CHECKED_MM = 46.0


@dataclass(frozen=True, kw_only=True, slots=True)
class SheetWords:
    """What the title block says of the sheet itself."""

    title: str
    subtitle: str
    scale: str
    number: str


def title_block(content: Content, paper: Paper, sheet: SheetWords) -> Iterator[Primitive]:
    """Yield the title block in the lower right corner.

    Parameters
    ----------
    content
        The build.
    paper
        The sheet's size.
    sheet
        What is on it.
    """
    right, low = paper.size_mm[0] - MARGIN_MM, MARGIN_MM
    left, top = right - TITLE_MM, low + STRIP_MM
    yield box((left, low), (right, top), Weight.BOLD)
    lines = [top - sum(_ROWS_MM[: index + 1]) for index in range(len(_ROWS_MM))]
    for line in lines:
        yield rule((left, line), (right, line))
    yield from _project(content, (left, top))
    yield from _view(sheet, (left, lines[0]))
    yield from _fields(content, paper, sheet, (left, lines[1]))
    yield from _foot(content, (left, lines[2]))


def _project(content: Content, corner: Point) -> Iterator[Primitive]:
    left, top = corner
    build = content.build
    room = TITLE_MM - 2 * _PAD_MM
    yield words(
        (left + _PAD_MM, top - 5.4), shortened(build.name, 4.8, 0.6 * room), 4.8, strong=True
    )
    yield words(
        (left + TITLE_MM - _PAD_MM, top - 5.2),
        shortened(build.customer, _VALUE_MM, 0.38 * room),
        _VALUE_MM,
        anchor=Anchor.END,
    )
    vehicle = shortened(build.vehicle.name, 2.9, room)
    yield words((left + _PAD_MM, top - 10.2), vehicle, 2.9)


def _view(sheet: SheetWords, corner: Point) -> Iterator[Primitive]:
    left, top = corner
    room = TITLE_MM - 2 * _PAD_MM
    yield words((left + _PAD_MM, top - 4.8), shortened(sheet.title, 4.2, room), 4.2, strong=True)
    yield words((left + _PAD_MM, top - 9.2), shortened(sheet.subtitle, 2.9, room), 2.9)


def _fields(
    content: Content, paper: Paper, sheet: SheetWords, corner: Point
) -> Iterator[Primitive]:
    left, top = corner
    low = top - _ROWS_MM[2]
    build = content.build
    fields = (
        ("scale, paper", f"{sheet.scale}  {paper.name}", 30.0),
        ("sheet", sheet.number, 18.0),
        ("revision", build.revision, 18.0),
        ("date", content.date or "–", 24.0),
        ("record", build.digest[:_RECORD_LETTERS], 26.0),
        ("dimensions", UNITS[content.system], 66.0),
    )
    here = left
    for name, value, width in fields:
        yield words((here + _PAD_MM, top - 3.2), name, _NAME_MM)
        room = width - 2 * _PAD_MM + 1.0
        yield words((here + _PAD_MM, top - 7.8), shortened(value, _VALUE_MM, room), _VALUE_MM)
        here += width
        if here < left + TITLE_MM - 1.0:
            yield rule((here, top), (here, low))


def _foot(content: Content, corner: Point) -> Iterator[Primitive]:
    left, top = corner
    low = MARGIN_MM
    for name, value, start, width in (
        ("drawn by", content.program, 0.0, _DRAWN_MM),
        ("checked by, date", "", _DRAWN_MM, _CHECKED_MM),
    ):
        yield words((left + start + _PAD_MM, top - 3.2), name, _NAME_MM)
        room = width - 2 * _PAD_MM
        yield words(
            (left + start + _PAD_MM, top - 8.2), shortened(value, _VALUE_MM, room), _VALUE_MM
        )
        yield rule((left + start + width, top), (left + start + width, low))
    start = left + _DRAWN_MM + _CHECKED_MM + _PAD_MM
    room = TITLE_MM - _DRAWN_MM - _CHECKED_MM - 2 * _PAD_MM
    for index, line in enumerate(wrapped(CAUTION, _CAUTION_MM, room)):
        yield words((start, top - 3.2 - 3.5 * index), line, _CAUTION_MM)
