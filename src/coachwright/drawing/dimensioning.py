"""Chains of dimensions beside a drawing, and clear widths inside it."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from coachwright.drawing.board import Board, text_patch, upright_patch
from coachwright.drawing.hiding import Patch
from coachwright.drawing.lettering import CAP_RATIO, text_width_mm
from coachwright.drawing.measure import length_text
from coachwright.drawing.scene import (
    Dimension,
    Layer,
    Line,
    Point,
    Primitive,
    Span,
    Weight,
)

Side = Literal["above", "below", "left", "right"]

LETTERS_MM = 3.5
"""Em square of a dimension's text: its figures are 2.5 mm high on the paper."""
_FIRST_MM = 5.0
_TEXT_OVER_LINE_MM = 0.9
_AIR_MM = 1.6
_ROW_MM = LETTERS_MM * CAP_RATIO + 1.5
_LINE_AFTER_MM = 3.4
_NEAR_MM = 6.0
"""From here on a line leads from a clear width to its text."""
_MOST_ROWS = 6
_SHIFTS_MM = (0.0, 2.0, -2.0, 4.0, -4.0, 7.0, -7.0, 10.0, -10.0)
_LEAST_MM = 1.0
"""Stops nearer to each other than this are one."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Chain:
    """Lengths measured one after the other along a line beside the drawing.

    Attributes
    ----------
    side
        Where it stands.
    stops_mm
        What is measured between, along the line.
    foot_mm
        Where its extension lines begin, across it.
    words
        Said before the length, where it is only one.
    """

    side: Side
    stops_mm: tuple[float, ...]
    foot_mm: float
    words: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Width:
    """A clear width inside the drawing."""

    start_mm: Point
    end_mm: Point
    words: str
    length_mm: float


def stops_of_mm(values_mm: Iterable[float], least_mm: float = _LEAST_MM) -> tuple[float, ...]:
    """Return measured places in their order, those that nearly coincide only once.

    Examples
    --------
    >>> stops_of_mm([10.0, 0.0, 10.4, 500.0])
    (0.0, 10.0, 500.0)
    """
    kept: list[float] = []
    for value_mm in sorted(values_mm):
        if not kept or value_mm - kept[-1] >= least_mm:
            kept.append(value_mm)
    return tuple(kept)


def thinned(chain: Chain, least_mm: float) -> Chain:
    """Return a chain without the stops that stand too near to the one before; its ends stay.

    Parameters
    ----------
    chain
        A chain.
    least_mm
        Least distance between two stops. [mm]
    """
    stops = chain.stops_mm
    if len(stops) <= 2 or not least_mm:  # noqa: PLR2004  # two ends
        return chain
    kept = [stops[0]]
    for stop in stops[1:-1]:
        if stop - kept[-1] >= least_mm and stops[-1] - stop >= least_mm:
            kept.append(stop)
    return replace(chain, stops_mm=(*kept, stops[-1]))


class Dimensioner:
    """Places chains outwards from the drawing, each beyond the last on its side."""

    def __init__(self, board: Board, around: Patch, scale_ratio: float, system: str) -> None:
        """Keep the drawing's own bounds on the paper, its scale and the units shown."""
        self._board = board
        self._scale = scale_ratio
        self._system = system
        self._reach = {
            "above": around[3] + _FIRST_MM,
            "below": around[1] - _FIRST_MM,
            "left": around[0] - _FIRST_MM,
            "right": around[2] + _FIRST_MM,
        }

    def chain(self, chain: Chain) -> Iterator[Primitive]:
        """Yield the dimensions of a chain."""
        stops = [stop_mm / self._scale for stop_mm in chain.stops_mm]
        texts = [
            f"{chain.words} {length_text(high - low, self._system)}".strip()
            for low, high in pairwise(chain.stops_mm)
        ]
        rows = _rows(stops, texts)
        line = self._line_mm(chain.side, max((row for row, _ in rows), default=0))
        for index, (text, (row, shift)) in enumerate(zip(texts, rows, strict=True)):
            ends = (chain.stops_mm[index], chain.stops_mm[index + 1])
            yield from self._dimension(chain, ends, line, text, (row, shift))

    def _line_mm(self, side: Side, rows: int) -> float:
        """Return where the next line stands, and keep the room that its text needs."""
        text_room = _TEXT_OVER_LINE_MM + _ROW_MM * (rows + 1)
        here = self._reach[side]
        # text stands above a line that lies, and on the left of one that is upright
        if side in ("above", "right"):
            line = here if side == "above" else here + text_room
            self._reach[side] = here + text_room + _LINE_AFTER_MM
        else:
            line = here if side == "left" else here - text_room
            self._reach[side] = here - text_room - _LINE_AFTER_MM
        return line

    def _dimension(
        self,
        chain: Chain,
        ends: Point,
        line_mm: float,
        text: str,
        place: tuple[int, float],
    ) -> Iterator[Primitive]:
        upright = chain.side in ("left", "right")
        scale, foot = self._scale, chain.foot_mm
        row, middle = place
        lift = _TEXT_OVER_LINE_MM + _ROW_MM * row
        at = (line_mm - lift, middle) if upright else (middle, line_mm + lift)
        self._board.take((upright_patch if upright else text_patch)(at, text, LETTERS_MM))
        start, end = (foot, ends[0]), (foot, ends[1])
        if not upright:
            start, end = (start[1], start[0]), (end[1], end[0])
        yield Dimension(
            start_mm=start,
            end_mm=end,
            line_mm=line_mm * scale,
            text=text,
            upright=upright,
            text_at_mm=(at[0] * scale, at[1] * scale),
            letters_mm=LETTERS_MM,
        )
        if row:
            here = (ends[0] + ends[1]) / 2 / scale
            tip = (at[0] + 0.6, at[1]) if upright else (at[0], at[1] - 0.6)
            base = (line_mm, here) if upright else (here, line_mm)
            yield Line(
                start_mm=(base[0] * scale, base[1] * scale),
                end_mm=(tip[0] * scale, tip[1] * scale),
                layer=Layer.DIMENSION,
                weight=Weight.FINE,
            )

    def width(self, width: Width, around: Patch) -> Iterator[Primitive]:
        """Yield a clear width; its text stands on the line or as near to it as there is room."""
        scale = self._scale
        text = f"{width.words} {length_text(width.length_mm, self._system)}".strip()
        start = (width.start_mm[0] / scale, width.start_mm[1] / scale)
        end = (width.end_mm[0] / scale, width.end_mm[1] / scale)
        half = text_width_mm(text, LETTERS_MM, strong=True) / 2
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        for foot in (*_feet(start, end, 2 * half), *_anywhere(middle, half, around)):
            patch = text_patch(foot, text, LETTERS_MM, strong=True)
            if self._board.free(patch) and _within(patch, around):
                self._board.take(patch)
                yield Span(
                    start_mm=width.start_mm,
                    end_mm=width.end_mm,
                    text=text,
                    text_at_mm=(foot[0] * scale, foot[1] * scale),
                    letters_mm=LETTERS_MM,
                )
                if math.dist(foot, middle) > half + _NEAR_MM:
                    yield Line(
                        start_mm=(middle[0] * scale, middle[1] * scale),
                        end_mm=(foot[0] * scale, (foot[1] + LETTERS_MM) * scale),
                        layer=Layer.DIMENSION,
                        weight=Weight.FINE,
                    )
                return


@dataclass(frozen=True, kw_only=True, slots=True)
class _Standing:
    """A text beside a line: its row, its ends along the line, and where its leader begins."""

    row: int
    low_mm: float
    high_mm: float
    from_mm: float

    @property
    def middle_mm(self) -> float:
        return (self.low_mm + self.high_mm) / 2

    def leader_mm(self, row: int) -> float:
        """Return where its leader passes a nearer row."""
        share = (row + 0.5) / (self.row + 0.5)
        return self.from_mm + (self.middle_mm - self.from_mm) * share

    def crosses(self, other: "_Standing") -> bool:
        """Return whether its leader passes through another text."""
        if other.row >= self.row:
            return False
        return other.low_mm - 0.4 < self.leader_mm(other.row) < other.high_mm + 0.4

    def clashes(self, other: "_Standing") -> bool:
        """Return whether the two cannot both stand."""
        meet = (
            self.row == other.row
            and self.low_mm - _AIR_MM < other.high_mm
            and other.low_mm - _AIR_MM < self.high_mm
        )
        return meet or self.crosses(other) or other.crosses(self)


def _rows(stops_mm: Sequence[float], texts: Sequence[str]) -> list[tuple[int, float]]:
    """Return for each text its row beside the line and its middle along it.

    A text that fits between its stops stands there, in the first row.  The others stand further
    out, each at the nearest free place, with a line that leads to it.
    """
    halves = [text_width_mm(text, LETTERS_MM) / 2 for text in texts]
    middles = [(low + high) / 2 for low, high in pairwise(stops_mm)]
    roomy = [
        2 * half + _AIR_MM <= high - low
        for half, (low, high) in zip(halves, pairwise(stops_mm), strict=True)
    ]
    placed: dict[int, _Standing] = {}
    for index in sorted(range(len(texts)), key=lambda index: (not roomy[index], index)):
        placed[index] = _stood(
            middles[index], halves[index], tuple(placed.values()), first=0 if roomy[index] else 1
        )
    return [(placed[index].row, placed[index].middle_mm) for index in range(len(texts))]


def _stood(
    wanted_mm: float, half_mm: float, others: tuple[_Standing, ...], *, first: int
) -> _Standing:
    for row in range(first, _MOST_ROWS):
        for shift in _SHIFTS_MM if row else (0.0,):
            middle = wanted_mm + shift * row
            text = _Standing(
                row=row, low_mm=middle - half_mm, high_mm=middle + half_mm, from_mm=wanted_mm
            )
            if not any(text.clashes(other) for other in others):
                return text
    far = max((other.row for other in others), default=0) + 1
    return _Standing(
        row=far, low_mm=wanted_mm - half_mm, high_mm=wanted_mm + half_mm, from_mm=wanted_mm
    )


def _feet(start: Point, end: Point, width_mm: float) -> Iterator[Point]:
    """Yield where the text of a clear width may stand, the best place first."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    drop = LETTERS_MM * CAP_RATIO / 2
    beside = width_mm / 2 + 1.2
    for share in (0.0, 0.15, -0.15, 0.3, -0.3):
        here = (
            middle[0] + (end[0] - start[0]) * share,
            middle[1] + (end[1] - start[1]) * share,
        )
        yield (here[0] + beside, here[1] - drop)
        yield (here[0] - beside, here[1] - drop)
    for step in range(1, 16):
        for sign in (1, -1):
            yield (middle[0] + beside, middle[1] - drop + sign * step * 2.0)
            yield (middle[0] - beside, middle[1] - drop + sign * step * 2.0)


def _anywhere(middle: Point, half_mm: float, around: Patch) -> list[Point]:
    """Return places all over the drawing, the nearest to a point first."""
    across = range(int(around[0] + half_mm), int(around[2] - half_mm), 4)
    up = range(int(around[1]), int(around[3]), 4)
    places = [(float(x), float(y)) for x in across for y in up]
    return sorted(places, key=lambda place: (math.dist(place, middle), place))


def _within(patch: Patch, around: Patch) -> bool:
    return (
        around[0] <= patch[0]
        and around[1] <= patch[1]
        and patch[2] <= around[2]
        and patch[3] <= around[3]
    )
