"""Standard ratings of overcurrent devices."""

from coachwright import reference
from coachwright.errors import OutOfRange

_SLACK = 1e-9


def next_rating_a(*, wanted_a: float) -> float:
    """Return the smallest standard rating that is not below a current [A].

    Parameters
    ----------
    wanted_a
        What the device must carry, factors included. [A]

    Raises
    ------
    OutOfRange
        Where it is above the largest rating of the table.

    Notes
    -----
    The ratings 225 and 400 A are from memory.

    References
    ----------
    [nec-240-6]

    Examples
    --------
    >>> next_rating_a(wanted_a=17.5)
    20.0
    """
    ratings = sorted(float(row["rated_a"]) for row in reference.table("fuse_ratings"))
    for rating in ratings:
        if rating >= wanted_a - _SLACK:
            return rating
    raise OutOfRange("wanted_a", wanted_a, f"at most {ratings[-1]:g}")
