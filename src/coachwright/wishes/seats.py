"""Which way a seat faces, and which seats count."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Count:
    """So many of something, and how they were counted."""

    count: int
    working: Working


def facing(
    *, faces_deg: float, turn_deg: float, mirror: bool, tolerance_deg: float
) -> Literal["forward", "rearward", "side"]:
    """Return the way that a seat faces in the vehicle.

    Parameters
    ----------
    faces_deg
        Of the unturned seat: 0 forwards, 90 to the right, 180 rearwards. [deg]
    turn_deg
        Anticlockwise, seen from above. [deg]
    mirror
        Left and right are swapped before it is turned.
    tolerance_deg
        What still counts as straight ahead or straight back. [deg]

    Returns
    -------
    str
        Forward, rearward, or side for all between.

    Raises
    ------
    OutOfRange
        Where the tolerance is not within 0 to 90.

    Notes
    -----
    A quarter turn anticlockwise takes a seat that faces forwards to the left.

    References
    ----------
    [un-r17]

    Examples
    --------
    >>> facing(faces_deg=0, turn_deg=90, mirror=False, tolerance_deg=10)
    'side'
    """
    if not 0 <= tolerance_deg <= 90:  # noqa: PLR2004 - a right angle is the most there is
        raise OutOfRange("tolerance_deg", tolerance_deg, "0 to 90 deg")
    clockwise = (-faces_deg if mirror else faces_deg) - turn_deg
    from_ahead = abs((clockwise + 180) % 360 - 180)
    if from_ahead <= tolerance_deg:
        return "forward"
    return "rearward" if 180 - from_ahead <= tolerance_deg else "side"


def belted_seats(*, factory: int, fitted: int) -> Count:
    """Return the seats with belts that count for travelling.

    Parameters
    ----------
    factory
        Seats of the vehicle with a belt.
    fitted
        Places of fitted travel seats with a belt.

    Returns
    -------
    Count
        Their sum.

    Notes
    -----
    n = nv + nf.  Seats meant only for the parked vehicle do not count.

    References
    ----------
    [customer-brief]

    Examples
    --------
    >>> belted_seats(factory=2, fitted=2).count
    4
    """
    working = Working(
        expression="n = nv + nf",
        given=(
            Given(symbol="nv", meaning="vehicle's seats with a belt", value=factory, unit="count"),
            Given(symbol="nf", meaning="fitted places with a belt", value=fitted, unit="count"),
        ),
        result=factory + fitted,
        unit="count",
        references=("customer-brief",),
        note="seats meant only for the parked vehicle do not count",
    )
    return Count(count=factory + fitted, working=working)


def regulations_named(*, evidence: str, wanted: Sequence[str]) -> int:
    """Return how many of the regulations wanted a statement names.

    Parameters
    ----------
    evidence
        What is said to have been tested.
    wanted
        Such as ``"R14"``.

    Returns
    -------
    int
        How many are named; spaces and case do not matter.

    Notes
    -----
    A name is no proof: the papers are looked at by whoever inspects the vehicle.

    References
    ----------
    [de-inspection-leaflet]

    Examples
    --------
    >>> regulations_named(evidence="UN R14, R 17", wanted=("R14", "R17"))
    2
    """
    words = evidence.upper().replace(" ", "").replace(".", "")
    return sum(name in words for name in wanted)
