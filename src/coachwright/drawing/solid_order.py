"""Boxes seen in isometric projection: which lies before which, and what hides an edge.

Points on one line of sight agree in three sums of coordinates (`sights`), so two boxes overlap on
the paper exactly where their ranges of all three overlap, and an edge is hidden where it runs
inside all three ranges of a box that lies before it.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.drawing.hiding import Stretch
from coachwright.drawing.scene import Point
from coachwright.drawing.things import Corner

_SLACK_MM = 0.5
_FLAT_MM = 1e-9
_ACROSS_FACTOR = 1 / math.sqrt(2)
_BACK_FACTOR = 1 / math.sqrt(6)
_UP_FACTOR = math.sqrt(2 / 3)


@dataclass(frozen=True, kw_only=True, slots=True)
class Eye:
    """Where an isometric view is seen from.

    Attributes
    ----------
    turn_factor
        1.0 from the front left above, -1.0 from the rear right above.
    """

    turn_factor: float

    def flat(self, point: Corner) -> Point:
        """Return where a point falls on the drawing."""
        x, y, z = point
        turn = self.turn_factor
        return (
            turn * (x - y) * _ACROSS_FACTOR,
            turn * (x + y) * _BACK_FACTOR + z * _UP_FACTOR,
        )

    def sights(self, point: Corner) -> Corner:
        """Return the three sums in which points on one line of sight agree. [mm]."""
        x, y, z = point
        turn = self.turn_factor
        return (turn * (x - y), turn * x + z, turn * y + z)


@dataclass(frozen=True, kw_only=True, slots=True)
class Block:
    """A box with its ranges of the three sums."""

    name: str
    low_mm: Corner
    high_mm: Corner
    least_mm: Corner
    most_mm: Corner


def block(name: str, low: Corner, high: Corner, eye: Eye) -> Block:
    """Return a box as it is seen by an eye."""
    corners = [
        (x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])
    ]
    sums = [eye.sights(corner) for corner in corners]
    ranges = [(min(each), max(each)) for each in zip(*sums, strict=True)]
    return Block(
        name=name,
        low_mm=low,
        high_mm=high,
        least_mm=(ranges[0][0], ranges[1][0], ranges[2][0]),
        most_mm=(ranges[0][1], ranges[1][1], ranges[2][1]),
    )


def overlap(one: Block, other: Block) -> bool:
    """Return whether two boxes overlap on the paper."""
    return all(
        one.least_mm[axis] < other.most_mm[axis] - _SLACK_MM
        and other.least_mm[axis] < one.most_mm[axis] - _SLACK_MM
        for axis in range(3)
    )


def behind(one: Block, other: Block, eye: Eye) -> bool:
    """Return whether a box lies behind another that it overlaps on the paper."""
    if one.high_mm[2] <= other.low_mm[2] + _SLACK_MM:
        return True
    if other.high_mm[2] <= one.low_mm[2] + _SLACK_MM:
        return False
    for axis in (0, 1):
        far, near = (one, other) if eye.turn_factor > 0 else (other, one)
        if far.low_mm[axis] >= near.high_mm[axis] - _SLACK_MM:
            return True
        if near.low_mm[axis] >= far.high_mm[axis] - _SLACK_MM:
            return False
    return _depth_mm(one, eye) > _depth_mm(other, eye)


def _depth_mm(body: Block, eye: Eye) -> float:
    middle = [(low + high) / 2 for low, high in zip(body.low_mm, body.high_mm, strict=True)]
    return eye.turn_factor * (middle[0] + middle[1]) - middle[2]


def painted(blocks: Sequence[Block], eye: Eye) -> list[Block]:
    """Return boxes from the farthest to the nearest, as they must be painted."""
    ordered = sorted(blocks, key=lambda body: (-_depth_mm(body, eye), body.name))
    before = {
        index: [
            other
            for other, body in enumerate(ordered)
            if other != index and overlap(body, here) and behind(body, here, eye)
        ]
        for index, here in enumerate(ordered)
    }
    done: dict[int, None] = {}
    open_: set[int] = set()

    def visit(index: int) -> None:
        if index in done or index in open_:
            return
        open_.add(index)
        for other in before[index]:
            visit(other)
        done[index] = None

    for index in range(len(ordered)):
        visit(index)
    return [ordered[index] for index in done]


def hidden(start: Corner, end: Corner, cover: Block, eye: Eye) -> Stretch | None:
    """Return the part of an edge that a nearer box hides, or None.

    Parameters
    ----------
    start, end
        Of the edge, in the vehicle.
    cover
        A box that lies before what the edge belongs to.
    eye
        From where it is seen.
    """
    first, last = 0.0, 1.0
    for axis, (from_, to) in enumerate(zip(eye.sights(start), eye.sights(end), strict=True)):
        low, high = cover.least_mm[axis] + _SLACK_MM, cover.most_mm[axis] - _SLACK_MM
        step = to - from_
        if abs(step) < _FLAT_MM:
            if not low < from_ < high:
                return None
            continue
        shares = sorted(((low - from_) / step, (high - from_) / step))
        first, last = max(first, shares[0]), min(last, shares[1])
        if first >= last:
            return None
    return (first, last)
