"""From where a view looks, and how boxes fall flat onto the paper."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.drawing.scene import Point
from coachwright.drawing.things import Corner, Thing

_LEAST_MM = 0.5
"""A body that reaches less than this through the cutting plane is not cut."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Gaze:
    """A direction to look in, and perhaps a plane that cuts away what stands before it.

    Attributes
    ----------
    across_axis, across_factor
        The axis that runs to the right on the paper, and 1.0 or -1.0 for its sense.
    up_axis
        The axis that runs up on the paper.
    away_axis, away_factor
        The axis that leads away from the eye, and its sense.
    cut_mm
        Where the plane stands on that axis; None where nothing is cut.
    """

    across_axis: int
    across_factor: float
    up_axis: int
    away_axis: int
    away_factor: float
    cut_mm: float | None = None

    def flat(self, point: Corner) -> Point:
        """Return where a point of the vehicle falls on the drawing."""
        return (self.across_factor * point[self.across_axis], point[self.up_axis])

    def away_mm(self, point: Corner) -> float:
        """Return how far behind the cutting plane a point is; without a plane, behind 0."""
        return self.away_factor * (point[self.away_axis] - (self.cut_mm or 0.0))


def from_above(cut_mm: float | None = None) -> Gaze:
    """Return the gaze of a plan: the front of the vehicle on the left, its right side above."""
    return Gaze(
        across_axis=0,
        across_factor=1.0,
        up_axis=1,
        away_axis=2,
        away_factor=-1.0,
        cut_mm=cut_mm,
    )


def to_the_left(cut_mm: float | None = None) -> Gaze:
    """Return the gaze from inside at the left wall: the front of the vehicle on the right."""
    return Gaze(
        across_axis=0,
        across_factor=-1.0,
        up_axis=2,
        away_axis=1,
        away_factor=-1.0,
        cut_mm=cut_mm,
    )


def to_the_right(cut_mm: float | None = None) -> Gaze:
    """Return the gaze at the right wall, or at the vehicle's left side: the front on the left."""
    return Gaze(
        across_axis=0,
        across_factor=1.0,
        up_axis=2,
        away_axis=1,
        away_factor=1.0,
        cut_mm=cut_mm,
    )


def forwards(cut_mm: float | None = None) -> Gaze:
    """Return the gaze from behind: the vehicle's right side on the right."""
    return Gaze(
        across_axis=1,
        across_factor=1.0,
        up_axis=2,
        away_axis=0,
        away_factor=-1.0,
        cut_mm=cut_mm,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Flat:
    """A box fallen flat: its rectangle, and how far behind the plane it begins and ends."""

    low_mm: Point
    high_mm: Point
    near_mm: float
    far_mm: float
    cut: bool

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The corners of its rectangle, anticlockwise from the lowest left."""
        low, high = self.low_mm, self.high_mm
        return (low, (high[0], low[1]), high, (low[0], high[1]))


@dataclass(frozen=True, kw_only=True, slots=True)
class Fallen:
    """A thing fallen flat.

    Attributes
    ----------
    seen
        Boxes at and behind the cutting plane.
    before
        Boxes between the eye and the plane: cut away, and drawn as hanging above where wanted.
    """

    thing: Thing
    seen: tuple[Flat, ...]
    before: tuple[Flat, ...]

    @property
    def cut(self) -> bool:
        """Whether the plane cuts it."""
        return any(flat.cut for flat in self.seen)

    @property
    def near_mm(self) -> float:
        """How far behind the plane its nearest point stands."""
        return min(flat.near_mm for flat in (self.seen or self.before))


def fallen(thing: Thing, gaze: Gaze) -> Fallen:
    """Return a thing fallen flat along a gaze.

    Parameters
    ----------
    thing
        A body; a cylinder that lies across the gaze is one rectangle.
    gaze
        From where it is looked at.
    """
    boxes = thing.boxes_mm
    if thing.round_axis is not None and thing.round_axis != gaze.away_axis:
        boxes = ((thing.low_mm, thing.high_mm),)
    flats = tuple(_flats(boxes, gaze))
    return Fallen(
        thing=thing,
        seen=tuple(flat for flat in flats if flat.far_mm > _least_mm(gaze)),
        before=tuple(flat for flat in flats if flat.far_mm <= _least_mm(gaze)),
    )


def _least_mm(gaze: Gaze) -> float:
    return -float("inf") if gaze.cut_mm is None else _LEAST_MM


def _flats(boxes: tuple[tuple[Corner, Corner], ...], gaze: Gaze) -> Iterator[Flat]:
    for low, high in boxes:
        one, other = gaze.flat(low), gaze.flat(high)
        ends = sorted((gaze.away_mm(low), gaze.away_mm(high)))
        cut = gaze.cut_mm is not None and ends[0] < -_LEAST_MM and ends[1] > _LEAST_MM
        beyond = gaze.cut_mm is not None and ends[1] > _LEAST_MM
        yield Flat(
            low_mm=(min(one[0], other[0]), one[1]),
            high_mm=(max(one[0], other[0]), other[1]),
            near_mm=max(0.0, ends[0]) if beyond else ends[0],
            far_mm=ends[1],
            cut=cut,
        )


def plane(low: Point, high: Point, near_mm: float = 0.0) -> Flat:
    """Return a part of the vehicle that hides what lies behind it.

    Parameters
    ----------
    low, high
        Corners on the drawing.
    near_mm
        How far behind the cutting plane it stands. [mm]
    """
    return Flat(low_mm=low, high_mm=high, near_mm=near_mm, far_mm=near_mm, cut=True)
