"""The sheet: its size, its frame and what the drawing may take of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import (
    Anchor,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Text,
    Weight,
)
from coachwright.model.brief import Jurisdiction

MARGIN_MM = 8.0
STRIP_MM = 44.0
"""Height of the strip with keys and title block."""
TITLE_MM = 182.0
"""Width of the title block."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Paper:
    """A size of paper, lying."""

    name: str
    size_mm: Point

    @property
    def room_mm(self) -> Point:
        """Width and height that a drawing may take."""
        return (
            self.size_mm[0] - 2 * MARGIN_MM - 2.0,
            self.size_mm[1] - 2 * MARGIN_MM - STRIP_MM - 2.0,
        )


A3 = Paper(name="A3", size_mm=(420.0, 297.0))
TABLOID = Paper(name="Tabloid", size_mm=(431.8, 279.4))
PAPER_OF = {Jurisdiction.US: TABLOID, Jurisdiction.EU: A3, Jurisdiction.UK: A3}


def words(
    at: Point,
    text: str,
    height_mm: float,
    *,
    anchor: Anchor = Anchor.START,
    strong: bool = False,
) -> Text:
    """Return lettering of a sheet's frame.

    Parameters
    ----------
    at
        Where it stands, on the paper.
    text
        One line.
    height_mm
        Em square. [mm]
    anchor
        Which end of it stands there.
    strong
        In the heavier type.
    """
    return Text(
        at_mm=at, text=text, layer=Layer.SHEET, anchor=anchor, height_mm=height_mm, strong=strong
    )


def rule(start: Point, end: Point, weight: Weight = Weight.FINE) -> Line:
    """Return a line of a sheet's frame."""
    return Line(start_mm=start, end_mm=end, layer=Layer.SHEET, weight=weight)


def box(low: Point, high: Point, weight: Weight = Weight.NORMAL) -> Polyline:
    """Return a box of a sheet's frame."""
    return Polyline(
        points_mm=(low, (high[0], low[1]), high, (low[0], high[1])),
        layer=Layer.SHEET,
        closed=True,
        weight=weight,
    )


def frame(paper: Paper) -> Iterator[Primitive]:
    """Yield the frame round the sheet and the line over its strip."""
    width, height = paper.size_mm
    yield box((MARGIN_MM, MARGIN_MM), (width - MARGIN_MM, height - MARGIN_MM), Weight.BOLD)
    top = MARGIN_MM + STRIP_MM
    yield rule((MARGIN_MM, top), (width - MARGIN_MM, top), Weight.NORMAL)
