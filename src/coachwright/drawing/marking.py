"""Marks of findings: a triangle for a stop, a diamond for a caution, each with its number."""

import math
from collections.abc import Iterator

from coachwright.drawing.board import Board
from coachwright.drawing.drafting import Mark
from coachwright.drawing.hiding import Patch
from coachwright.drawing.lettering import CAP_RATIO
from coachwright.drawing.scene import (
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Text,
    Weight,
)

_LETTERS_MM = 2.8
_HALF_MM = 4.0
_RINGS = (0.0, 6.0, 9.0, 12.0, 16.0, 20.0, 25.0, 30.0, 40.0)
_TURNS_DEG = (90.0, 45.0, 135.0, 0.0, 180.0, -45.0, -135.0, -90.0)
_FAR_MM = 4.0
"""From here on a line leads from the mark to its place."""


def placed_marks(
    marks: tuple[Mark, ...], board: Board, scale_ratio: float, *, whole: bool = True
) -> Iterator[Primitive] | None:
    """Return the marks at their places or as near as there is room; None where there is none.

    Parameters
    ----------
    marks
        In the order of their numbers.
    board
        What is written so far; taken places are added.
    scale_ratio
        Of the drawing.
    whole
        Every mark must find room; else those that find none are only in the key.
    """
    leads: list[Primitive] = []
    shapes: list[Primitive] = []
    for mark in marks:
        place = (mark.at_mm[0] / scale_ratio, mark.at_mm[1] / scale_ratio)
        middle = _middle(place, board)
        if middle is None and whole:
            return None
        if middle is None:
            continue
        board.take(_patch(middle))
        if math.dist(place, middle) > _FAR_MM:
            leads.append(_lead(place, middle, scale_ratio))
        shapes.extend(shape(mark.number, middle, scale_ratio, stop=mark.stop))
    return iter((*leads, *shapes))


def _middle(place: Point, board: Board) -> Point | None:
    for ring in _RINGS:
        for turn in _TURNS_DEG if ring else (0.0,):
            middle = (
                place[0] + ring * math.cos(math.radians(turn)),
                place[1] + ring * math.sin(math.radians(turn)),
            )
            if board.free(_patch(middle)):
                return middle
    return None


def _patch(middle: Point) -> Patch:
    return (
        middle[0] - _HALF_MM,
        middle[1] - _HALF_MM,
        middle[0] + _HALF_MM,
        middle[1] + _HALF_MM,
    )


def _lead(place: Point, middle: Point, scale_ratio: float) -> Line:
    return Line(
        start_mm=(place[0] * scale_ratio, place[1] * scale_ratio),
        end_mm=(middle[0] * scale_ratio, middle[1] * scale_ratio),
        layer=Layer.FINDING,
        weight=Weight.NORMAL,
    )


def shape(number: str, middle: Point, scale_ratio: float, *, stop: bool) -> Iterator[Primitive]:
    """Yield one mark.

    Parameters
    ----------
    number
        Of the finding.
    middle
        Of the mark, on the paper.
    scale_ratio
        Of the drawing.
    stop
        A triangle; else a diamond.
    """
    half = _HALF_MM
    corners = (
        ((-half, -0.85 * half), (half, -0.85 * half), (0.0, 0.95 * half))
        if stop
        else ((0.0, -half), (half, 0.0), (0.0, half), (-half, 0.0))
    )
    yield Polyline(
        points_mm=tuple(
            ((middle[0] + x) * scale_ratio, (middle[1] + y) * scale_ratio) for x, y in corners
        ),
        layer=Layer.FINDING,
        weight=Weight.BOLD,
        closed=True,
        filled=True,
    )
    lift = 0.6 if stop else _LETTERS_MM * CAP_RATIO / 2
    foot = middle[1] - (0.85 * half - lift if stop else lift)
    yield Text(
        at_mm=(middle[0] * scale_ratio, foot * scale_ratio),
        text=number,
        layer=Layer.FINDING,
        height_mm=_LETTERS_MM,
        strong=True,
    )
