"""Labels in a column on the left and on the right of a drawing, in the order of their things."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachwright.drawing.board import Board
from coachwright.drawing.hiding import Patch, covered
from coachwright.drawing.labels import Label, leader, lettered
from coachwright.drawing.scene import Point, Primitive

_ROW_MM = 6.0
_AWAY_MM = 4.0
_SHARES = (0.5, 0.3, 0.7, 0.15, 0.85)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Row:
    label: Label
    dot_mm: Point


def columns(
    labels: Sequence[Label],
    *,
    board: Board,
    bare: Patch,  # noqa: ARG001  # flags need it, and both are called alike
    around: Patch,
    room: Patch,
    scale_ratio: float,
) -> tuple[Primitive, ...] | None:
    """Return labels on the left and right of a drawing, or None where they have no room.

    Parameters
    ----------
    labels
        In the order of their numbers.
    board
        What is written so far; taken places are added.
    bare
        The drawing itself.
    around
        The drawing with its dimensions.
    room
        What the paper offers.
    scale_ratio
        Of the drawing.
    """
    most = int((room[3] - room[1]) / _ROW_MM)
    if len(labels) > 2 * most:
        return None
    sides = _sides(labels, around, most)
    drawn: list[Primitive] = []
    for right, column in sides.items():
        edge_mm = around[2] + _AWAY_MM if right else around[0] - _AWAY_MM
        widest = max((label.extent_mm(label.row)[0] for label in column), default=0.0)
        if (edge_mm + widest > room[2]) if right else (edge_mm - widest < room[0]):
            return None
        drawn.extend(_drawn(column, edge_mm, board, room, scale_ratio, right=right))
    return tuple(drawn)


def _sides(labels: Sequence[Label], around: Patch, most: int) -> dict[bool, list[Label]]:
    """Return the labels of each side: the nearer one, unless it is full."""
    middle = (around[0] + around[2]) / 2
    by_side: dict[bool, list[Label]] = {False: [], True: []}
    for label in sorted(labels, key=lambda label: (_across_mm(label), label.number)):
        across = _across_mm(label)
        if abs(across - middle) < 0.04 * (around[2] - around[0]):
            right = len(by_side[True]) < len(by_side[False])
        else:
            right = across > middle
        if len(by_side[right]) >= most:
            right = not right
        by_side[right].append(label)
    return by_side


def _across_mm(label: Label) -> float:
    place = label.places_mm[0]
    return (place[0] + place[2]) / 2


def _drawn(
    column: list[Label],
    edge_mm: float,
    board: Board,
    room: Patch,
    scale_ratio: float,
    *,
    right: bool,
) -> Iterator[Primitive]:
    rows = [_Row(label=label, dot_mm=_dot(label, edge_mm, board)) for label in column]
    rows.sort(key=lambda row: (-row.dot_mm[1], abs(edge_mm - row.dot_mm[0]), row.label.number))
    heights = _spread_mm([row.dot_mm[1] for row in rows], room[1], room[3])
    _uncross(rows, heights, edge_mm)
    for row, middle in zip(rows, heights, strict=True):
        form = row.label.row
        width, height = row.label.extent_mm(form)
        left = edge_mm if right else edge_mm - width
        patch = (left, middle - height / 2, left + width, middle + height / 2)
        board.take(patch)
        stub = edge_mm - 1.5 if right else edge_mm + 1.5
        touch = edge_mm - 0.3 if right else edge_mm + 0.3
        yield from leader((row.dot_mm, (stub, middle), (touch, middle)), scale_ratio)
        yield from lettered(row.label, form, patch, scale_ratio, ring_last=not right)


def _dot(label: Label, edge_mm: float, board: Board) -> Point:
    """Return where a leader begins: where it passes over nothing written, if there is such."""
    tries = [
        (
            place[0] + (place[2] - place[0]) * across,
            place[1] + (place[3] - place[1]) * up,
        )
        for place in label.places_mm[:2]
        for up in _SHARES
        for across in _SHARES
    ]
    for dot in tries:
        if not any(
            covered(dot, (edge_mm, dot[1]), patch) for patch in (*board.taken_mm, *board.soft_mm)
        ):
            return dot
    return tries[0]


def _spread_mm(wanted_mm: list[float], low_mm: float, high_mm: float) -> list[float]:
    """Return heights in the wanted order, a row apart, as near to the wanted ones as can be."""
    heights: list[float] = []
    for want in wanted_mm:
        top = heights[-1] - _ROW_MM if heights else high_mm - _ROW_MM / 2
        heights.append(min(want, top))
    floor = low_mm + _ROW_MM / 2
    for index in range(len(heights) - 1, -1, -1):
        heights[index] = max(heights[index], floor)
        floor = heights[index] + _ROW_MM
    return heights


def _uncross(rows: list[_Row], heights_mm: list[float], edge_mm: float) -> None:
    """Swap neighbours whose leaders cross, until none do or no more is gained."""
    for _ in range(len(rows)):
        swapped = False
        for index in range(len(rows) - 1):
            one, other = rows[index], rows[index + 1]
            ends = ((edge_mm, heights_mm[index]), (edge_mm, heights_mm[index + 1]))
            if _cross(one.dot_mm, ends[0], other.dot_mm, ends[1]):
                rows[index], rows[index + 1] = other, one
                swapped = True
        if not swapped:
            return


def _cross(one: Point, one_end: Point, other: Point, other_end: Point) -> bool:
    """Return whether two leaders cross."""

    def turn_mm2(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return (
        turn_mm2(one, one_end, other) * turn_mm2(one, one_end, other_end) < 0
        and turn_mm2(other, other_end, one) * turn_mm2(other, other_end, one_end) < 0
    )
