"""Steps from the ground into the van."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange


@dataclass(frozen=True, kw_only=True, slots=True)
class Stair:
    """Equal steps from one level to another."""

    count: int
    riser_mm: float


def stair(*, height_mm: float, most_riser_mm: float) -> Stair:
    """Return how many equal risers a height takes.

    Parameters
    ----------
    height_mm
        From the ground to the floor. [mm]
    most_riser_mm
        Highest riser. [mm]

    Raises
    ------
    OutOfRange
        Where the height is negative or the riser is not above 0.

    Notes
    -----
    n = ceil(h / r),  riser = h / n; no step for no height.  The last riser leads onto the floor
    itself, so n - 1 treads stand before the door.

    References
    ----------
    [us-29cfr1910-25]

    Examples
    --------
    >>> stair(height_mm=620.0, most_riser_mm=177.8)
    Stair(count=4, riser_mm=155.0)
    """
    if height_mm < 0:
        raise OutOfRange("height_mm", height_mm, "at least 0")
    if most_riser_mm <= 0:
        raise OutOfRange("most_riser_mm", most_riser_mm, "above 0")
    count = math.ceil(height_mm / most_riser_mm)
    return Stair(count=count, riser_mm=height_mm / count if count else 0.0)


def rises_mm(*, height_mm: float, first_step_mm: float | None) -> tuple[float, ...]:
    """Return what is climbed at a time on the way in. [mm].

    Parameters
    ----------
    height_mm
        Floor above the ground. [mm]
    first_step_mm
        Fitted step above the ground; None without one. [mm]

    Notes
    -----
    A step above the floor's height is no help and is left out.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> rises_mm(height_mm=560.0, first_step_mm=260.0)
    (260.0, 300.0)
    """
    if first_step_mm is None or first_step_mm >= height_mm:
        return (height_mm,)
    return (first_step_mm, height_mm - first_step_mm)
