"""Whether a part passes a door: a box through a rectangle."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import permutations

from coachwright.errors import OutOfRange
from coachwright.model.placement import Point

STEPS = 16
"""Halvings with which a spare length is searched; the last is under a tenth of a millimetre."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Doorway:
    """The clear rectangle of a door and the room behind it.

    Attributes
    ----------
    height_mm
        Above the sill, or above the finished floor where that is higher.
    depth_mm
        From the opening straight to what faces it.
    """

    name: str
    width_mm: float
    height_mm: float
    depth_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Passes:
    """The best door for a part and the room to spare in it; negative where it does not pass."""

    door: str
    spare_mm: float


def rectangle_fits(*, long_mm: float, short_mm: float, width_mm: float, height_mm: float) -> bool:
    """Say whether a rectangle fits in another one, turned to any angle.

    Parameters
    ----------
    long_mm, short_mm
        Sides of the rectangle. [mm]
    width_mm, height_mm
        Sides of the opening. [mm]

    Notes
    -----
    p >= q within a >= b: p <= a and q <= b, or p > a, q <= b and
    b >= (2·p·q·a + (p² - q²)·sqrt(p² + q² - a²)) / (p² + q²).

    References
    ----------
    [carver-1957]

    Examples
    --------
    >>> rectangle_fits(long_mm=2100, short_mm=100, width_mm=1560, height_mm=1790)
    True
    >>> rectangle_fits(long_mm=2100, short_mm=600, width_mm=1560, height_mm=1790)
    False
    """
    p, q = max(long_mm, short_mm), min(long_mm, short_mm)
    a, b = max(width_mm, height_mm), min(width_mm, height_mm)
    if q > b:
        return False
    if p <= a:
        return True
    squares = p * p + q * q
    return b >= (2 * p * q * a + (p * p - q * q) * math.sqrt(squares - a * a)) / squares


def section_spare_mm(
    *, long_mm: float, short_mm: float, width_mm: float, height_mm: float
) -> float:
    """Return by how much both sides of a section could grow and still pass an opening. [mm].

    Parameters
    ----------
    long_mm, short_mm
        Sides of the section. [mm]
    width_mm, height_mm
        Sides of the opening. [mm]

    Returns
    -------
    float
        Negative: both sides must shrink by so much.

    Notes
    -----
    Upright or on its side: min(a - p, b - q).  Where that is negative the section is rolled about
    the direction in which it is carried: 0 where it then passes (the spare is not counted), else
    the largest e < 0 for which p + e and q + e fit, by halving.

    References
    ----------
    [carver-1957]

    Examples
    --------
    >>> section_spare_mm(long_mm=1000, short_mm=750, width_mm=1250, height_mm=1750)
    500
    """
    p, q = max(long_mm, short_mm), min(long_mm, short_mm)
    a, b = max(width_mm, height_mm), min(width_mm, height_mm)
    upright_mm = min(a - p, b - q)
    if upright_mm >= 0:
        return upright_mm
    if rectangle_fits(long_mm=p, short_mm=q, width_mm=a, height_mm=b):
        return 0.0
    low_mm, high_mm = upright_mm, 0.0
    for _ in range(STEPS):
        middle_mm = (low_mm + high_mm) / 2
        grown = (p + middle_mm, q + middle_mm)
        if rectangle_fits(long_mm=grown[0], short_mm=grown[1], width_mm=a, height_mm=b):
            low_mm = middle_mm
        else:
            high_mm = middle_mm
    return low_mm


def passes_at_all(*, sizes_mm: Sequence[Point], doors: Sequence[Doorway]) -> Passes:
    """Return the best door for a part that may be tipped and rolled in any way.

    Parameters
    ----------
    sizes_mm
        Of the boxes that make up the part: each must pass. [mm]
    doors
        Of the vehicle.

    Raises
    ------
    OutOfRange
        Where there are no doors or no boxes.

    Notes
    -----
    A box a >= b >= c passes a flat opening only where its smallest section b x c fits in it: the
    plane of the opening cuts the box through its middle at some moment, and no such cut fits a
    smaller rectangle than b x c itself (checked over random cuts).  So what fails here cannot be
    carried in as a whole; what passes may still lack room to turn.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> rear = Doorway(name="rear doors", width_mm=1560, height_mm=1790, depth_mm=3000)
    >>> passes_at_all(sizes_mm=[(1950.0, 1400.0, 220.0)], doors=[rear]).spare_mm
    390.0
    """
    if not doors or not sizes_mm:
        raise OutOfRange("doors", "none", "at least one door and one box")
    return max(
        (
            Passes(
                door=door.name,
                spare_mm=min(
                    section_spare_mm(
                        long_mm=sorted(size)[1],
                        short_mm=min(size),
                        width_mm=door.width_mm,
                        height_mm=door.height_mm,
                    )
                    for size in sizes_mm
                ),
            )
            for door in doors
        ),
        key=lambda found: found.spare_mm,
    )


def passes_straight(*, size_mm: Point, doors: Sequence[Doorway]) -> Passes:
    """Return the best door for a part that is carried straight in, square to the opening.

    Parameters
    ----------
    size_mm
        Of the box around the part. [mm]
    doors
        Of the vehicle.

    Raises
    ------
    OutOfRange
        Where there are no doors.

    Notes
    -----
    Over the six ways to hold it: min(width - p, height - q, depth - t).  Carrying it in at an
    angle, while it still sticks out of the door, is not counted.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> side = Doorway(name="sliding door", width_mm=1250, height_mm=1750, depth_mm=1800)
    >>> passes_straight(size_mm=(2000.0, 600.0, 600.0), doors=[side]).spare_mm
    -200.0
    """
    if not doors:
        raise OutOfRange("doors", "none", "at least one door")
    return max(
        (
            Passes(
                door=door.name,
                spare_mm=min(door.width_mm - p, door.height_mm - q, door.depth_mm - t),
            )
            for door in doors
            for p, q, t in permutations(size_mm)
        ),
        key=lambda found: found.spare_mm,
    )
