"""Stands of a run: full at noon of each day, or from one step on; none where there is no bank."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.living import off_grid
from coachwright.living.simulate import Run

LONGEST_D = 21.0
"""How long a stand is followed."""
NOON_H = 12.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Followed:
    """Stands, in the order of the days on which they began.

    Attributes
    ----------
    lasted_d
        Until the reserve, or as long as they were followed.
    lowest_frac
        Least charge on the way.
    reserve
        Whether the reserve ended it.
    """

    lasted_d: NDArray[np.float64]
    lowest_frac: NDArray[np.float64]
    reserve: NDArray[np.bool_]


def stands(run: Run, *, begin_h: float = NOON_H, most_d: float = LONGEST_D) -> Followed:
    """Follow the full bank from an hour of each day until its reserve.

    Parameters
    ----------
    run
        Off the grid; it goes on from its end at its beginning.
    begin_h
        Hour of the day at which each begins. [h]
    most_d
        How long a stand is followed. [d]

    Notes
    -----
    As `off_grid.stands`; where there is no bank every stand ends at once.
    """
    if run.given.bank is None:
        nothing = np.zeros(run.days)
        ended = np.ones(run.days, dtype=bool)
        return Followed(lasted_d=nothing, lowest_frac=nothing, reserve=ended)
    found = off_grid.stands(run, begin_h=begin_h, longest_d=most_d)
    return Followed(lasted_d=found.days_d, lowest_frac=found.lowest_frac, reserve=~found.still)
