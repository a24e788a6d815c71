"""Where a person of a given width can walk to.

The floor is looked at on a grid of points; each row of the grid is one whole number whose bits are
the points that are free for the middle of a round person.  Filling from a door is then a few
shifts for each row.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from coachwright.layout.passage import Patch

Rows = tuple[int, ...]
"""Bits along x for each row along y."""
DOUBLINGS = (1, 2, 4, 8, 16, 32, 64)
"""Shifts that reach along a row of up to 128 points."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Floor:
    """The points of the floor that are free for the middle of a person of one width."""

    x_from_mm: float
    y_from_mm: float
    step_mm: float
    columns: int
    width_mm: float
    free: Rows


def free_floor(
    *,
    low_mm: tuple[float, float],
    high_mm: tuple[float, float],
    patches: Iterable[Patch],
    width_mm: float,
    step_mm: float,
) -> Floor:
    """Return where the middle of a round person can be.

    Parameters
    ----------
    low_mm, high_mm
        Corners of the floor. [mm]
    patches
        What cannot be walked on, walls too.
    width_mm
        Of the person. [mm]
    step_mm
        Distance between the points. [mm]

    Notes
    -----
    A point is free where no patch is nearer than w/2.  A way that is less than √2 steps wider than
    the person may be missed; between two points a corner may stand up to
    w/2 - sqrt((w/2)² - (step/2)²) in the way unseen, 2 mm for 330 mm and steps of 50 mm.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> hall = free_floor(
    ...     low_mm=(0.0, 0.0), high_mm=(1000.0, 200.0), width_mm=100.0, step_mm=50.0,
    ...     patches=[Patch(name="post", low_mm=(500.0, 100.0), high_mm=(500.0, 100.0))],
    ... )
    >>> bin(hall.free[1])
    '0b11111111100111111111'
    """
    columns = max(1, round((high_mm[0] - low_mm[0]) / step_mm))
    rows = max(1, round((high_mm[1] - low_mm[1]) / step_mm))
    every = (1 << columns) - 1
    taken = [0] * rows
    radius_mm = width_mm / 2
    x_first_mm, y_first_mm = low_mm[0] + step_mm / 2, low_mm[1] + step_mm / 2
    for patch in patches:
        first = math.ceil((patch.low_mm[1] - radius_mm - y_first_mm) / step_mm)
        last = math.floor((patch.high_mm[1] + radius_mm - y_first_mm) / step_mm)
        for row in range(max(0, first), min(rows - 1, last) + 1):
            y_mm = y_first_mm + row * step_mm
            off_mm = max(0.0, patch.low_mm[1] - y_mm, y_mm - patch.high_mm[1])
            reach_mm = math.sqrt(max(0.0, radius_mm**2 - off_mm**2))
            start = math.floor((patch.low_mm[0] - reach_mm - x_first_mm) / step_mm) + 1
            end = math.ceil((patch.high_mm[0] + reach_mm - x_first_mm) / step_mm)
            if off_mm < radius_mm and end > max(0, start):
                taken[row] |= (1 << end) - (1 << max(0, start))
    return Floor(
        x_from_mm=x_first_mm,
        y_from_mm=y_first_mm,
        step_mm=step_mm,
        columns=columns,
        width_mm=width_mm,
        free=tuple(every & ~row for row in taken),
    )


def points_in(floor: Floor, patch: Patch) -> Rows:
    """Return the free points of the floor within a patch, its edges too."""
    step_mm = floor.step_mm
    start = max(0, math.ceil((patch.low_mm[0] - floor.x_from_mm) / step_mm))
    end = min(floor.columns, math.floor((patch.high_mm[0] - floor.x_from_mm) / step_mm) + 1)
    bits = (1 << end) - (1 << start) if end > start else 0
    return tuple(
        row & bits
        if patch.low_mm[1] <= floor.y_from_mm + number * step_mm <= patch.high_mm[1]
        else 0
        for number, row in enumerate(floor.free)
    )


def reached_from(floor: Floor, start: Rows) -> Rows:
    """Return the points that can be walked to from some free points, these too.

    Notes
    -----
    Steps go to the four neighbours of a point.  Rows are swept to and fro until nothing is added;
    within a row the bits spread by doubling.
    """
    free = floor.free
    last = len(free) - 1
    reached = [_along(here & row, row) for here, row in zip(start, free, strict=True)]
    added = True
    while added:
        added = False
        for number in (*range(last + 1), *range(last, -1, -1)):
            above = reached[number - 1] if number else 0
            below = reached[number + 1] if number < last else 0
            here = (reached[number] | above | below) & free[number]
            if here != reached[number]:
                reached[number] = _along(here, free[number])
                added = True
    return tuple(reached)


def _along(seeds: int, row: int) -> int:
    """Return the runs of free points in a row that hold a seed."""
    up, open_up = seeds, row
    down, open_down = seeds, row
    for shift in DOUBLINGS:
        up |= open_up & (up << shift)
        open_up &= open_up << shift
        down |= open_down & (down >> shift)
        open_down &= open_down >> shift
    return up | down


def meets(one: Rows, other: Rows) -> bool:
    """Say whether two sets of points share one."""
    return any(a & b for a, b in zip(one, other, strict=True))


def union(sets: Sequence[Rows]) -> Rows:
    """Return the points of any of some sets; at least one set."""
    return tuple(_any(bits) for bits in zip(*sets, strict=True))


def _any(bits: Iterable[int]) -> int:
    found = 0
    for each in bits:
        found |= each
    return found


def around(patch: Patch, by_mm: float) -> Patch:
    """Return a patch grown on all sides. [mm]."""
    return Patch(
        name=patch.name,
        low_mm=(patch.low_mm[0] - by_mm, patch.low_mm[1] - by_mm),
        high_mm=(patch.high_mm[0] + by_mm, patch.high_mm[1] + by_mm),
    )


def walls_between(
    *, low_mm: tuple[float, float], high_mm: tuple[float, float], openings: Sequence[Patch]
) -> Iterator[Patch]:
    """Yield the walls of a rectangle with openings in its sides.

    Parameters
    ----------
    low_mm, high_mm
        Corners of the rectangle. [mm]
    openings
        Each a line on one of the four sides.

    Notes
    -----
    A side runs from corner to corner; what an opening covers is left out.
    """
    for axis in (0, 1):
        across = 1 - axis
        for place_mm in (low_mm[across], high_mm[across]):
            doors = sorted(
                (door.low_mm[axis], door.high_mm[axis])
                for door in openings
                if door.low_mm[across] == place_mm == door.high_mm[across]
            )
            here_mm = low_mm[axis]
            for start_mm, end_mm in (*doors, (high_mm[axis], high_mm[axis])):
                if start_mm > here_mm or not doors:
                    yield _line(axis, here_mm, start_mm, place_mm)
                here_mm = max(here_mm, end_mm)


def _line(axis: int, start_mm: float, end_mm: float, place_mm: float) -> Patch:
    if axis == 0:
        return Patch(name="wall", low_mm=(start_mm, place_mm), high_mm=(end_mm, place_mm))
    return Patch(name="wall", low_mm=(place_mm, start_mm), high_mm=(place_mm, end_mm))
