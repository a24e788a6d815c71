"""Room for knees and shoulders on the toilet."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.layout.model_interior import ToiletSpace


@dataclass(frozen=True, kw_only=True, slots=True)
class Knees:
    """What was measured ahead of a toilet, from its back.

    Attributes
    ----------
    room_mm
        To what stands in front, the stall's door closed.
    open_room_mm
        With its door open; None where no door stands in front.
    in_front
        What ends the room that counts.
    """

    room_mm: float
    open_room_mm: float | None
    in_front: str


def toilet_space(
    *,
    name: str,
    stall: str,
    stowed: bool,
    seat_mm: float,
    knees: Knees | None,
    left_mm: float | None,
    right_mm: float | None,
    buttock_knee_mm: float,
    back_mm: float,
    shoulders_mm: float,
) -> ToiletSpace:
    """Return the space around somebody who sits on a toilet.

    Parameters
    ----------
    name, stall
        The toilet, and what it is built into; empty where it stands free.
    stowed
        It is put away in a cabinet and taken out to be used.
    seat_mm
        Its top above the finished floor. [mm]
    knees
        What was measured ahead of it; None where nothing says which way it faces.
    left_mm, right_mm
        Free width to either side of its middle at the shoulders. [mm]
    buttock_knee_mm
        Of the largest user. [mm]
    back_mm
        What stands between the toilet's back and the user's. [mm]
    shoulders_mm
        Breadth of the broadest user. [mm]

    Raises
    ------
    OutOfRange
        Where the sides are given without the knees, or the other way round.

    Notes
    -----
    Knees reach n = back + buttock-knee length from the back of the toilet.  Behind a door they
    come out of it by max(0, n - room inside).  The user sits upright with the back against it.

    References
    ----------
    [ansur-ii-2012]

    Examples
    --------
    >>> knees = Knees(room_mm=650.0, open_room_mm=1200.0, in_front="stall")
    >>> found = toilet_space(
    ...     name="toilet", stall="stall", stowed=False, seat_mm=450.0, knees=knees, left_mm=380.0,
    ...     right_mm=380.0, buttock_knee_mm=669.0, back_mm=60.0, shoulders_mm=567.0,
    ... )
    >>> found.reach_mm, found.shoulders_mm
    (79.0, 760.0)
    """
    if (knees is None) != (left_mm is None) or (left_mm is None) != (right_mm is None):
        raise OutOfRange("knees", "given in part", "knees and both sides, or none of them")
    needed_mm = back_mm + buttock_knee_mm
    reach_mm = 0.0
    if knees is not None and knees.open_room_mm is not None:
        reach_mm = max(0.0, needed_mm - knees.room_mm)
    known = left_mm is not None and right_mm is not None
    return ToiletSpace(
        name=name,
        stall=stall,
        stowed=stowed,
        seat_mm=seat_mm,
        knees_mm=knees.room_mm if knees else None,
        knees_open_mm=knees.open_room_mm if knees else None,
        knees_needed_mm=needed_mm,
        reach_mm=reach_mm,
        in_front=knees.in_front if knees else "",
        shoulders_mm=(left_mm or 0.0) + (right_mm or 0.0) if known else None,
        shoulders_needed_mm=shoulders_mm,
        side_mm=min(left_mm or 0.0, right_mm or 0.0) if known else None,
        missing=""
        if knees or stowed
        else f"zone for the knees of {name}, which says where it faces",
    )
