"""Fresh air with everything shut, against what a dwelling is given."""

from coachwright.errors import OutOfRange
from coachwright.living.model import FreshAir
from coachwright.model.working import Given, Working
from coachwright.reference import limit

_L_PER_S_BY_ROOM = 3.5
"""For each bedroom and one more. [ashrae-62-2]"""
_M3_PER_H_BY_L_PER_S = 3.6


def fresh_air(*, floor_m2: float, people_count: int, open_m3_per_h: float) -> FreshAir:
    """Return the fresh air of a body with one bedroom, against the standard for dwellings.

    Parameters
    ----------
    floor_m2
        Of the living space. [m2]
    people_count
        Who live in it; told along, not part of the standard's formula.
    open_m3_per_h
        Through what cannot be shut or is kept open, and through leaks. [m3/h]

    Raises
    ------
    OutOfRange
        Where there is no floor.

    Notes
    -----
    Q = 0.15 A + 3.5 (N + 1) in L/s with N = 1 bedroom.  Written for dwellings: a vehicle is far
    smaller, so that carbon dioxide (`living.air-asleep`) is the better measure of the two.

    References
    ----------
    [ashrae-62-2]

    Examples
    --------
    >>> made = fresh_air(floor_m2=8, people_count=2, open_m3_per_h=20)
    >>> round(made.needed_m3_per_h, 2)
    29.52
    """
    if floor_m2 <= 0.0:
        raise OutOfRange("floor_m2", floor_m2, "more than 0")
    by_floor = limit("living.fresh-air").value
    needed_m3_per_h = (by_floor * floor_m2 + _L_PER_S_BY_ROOM * 2.0) * _M3_PER_H_BY_L_PER_S
    return FreshAir(
        people_count=people_count,
        open_m3_per_h=open_m3_per_h,
        needed_m3_per_h=needed_m3_per_h,
        working=Working(
            expression="Q = (a · A + b · (N + 1)) · 3.6",
            given=(
                Given(symbol="a", meaning="L/s for each m2 of floor", value=by_floor, unit="1"),
                Given(symbol="A", meaning="floor of the living space", value=floor_m2, unit="m2"),
                Given(symbol="b", meaning="L/s for each room", value=_L_PER_S_BY_ROOM, unit="1"),
                Given(symbol="N", meaning="bedrooms", value=1.0, unit="count"),
            ),
            result=needed_m3_per_h,
            unit="m3/h",
            references=("ashrae-62-2",),
            note="written for dwellings",
        ),
    )
