"""Which wishes collide where there is no floor plan: a smallest set, by name."""

import time
from collections.abc import Callable, Sequence

from coachwright.arrange.floor_model import FloorModel
from coachwright.arrange.solving import Search

_EACH_S = 2.0
"""Time for each trial."""


def colliding(floor: FloorModel, search: Search) -> tuple[str, ...]:
    """Return wishes that cannot all be met, each of which is needed for that.

    Parameters
    ----------
    floor
        A model without anything to be maximised, in which no wish is fixed.
    search
        Seed of the trials.

    Notes
    -----
    The solver names wishes that are enough for the contradiction; each of them is left out in turn
    and stays out where the others still collide.  Where a trial finds no answer in its time, or
    all of it is over, the wish stays in, so that the set may then not be the smallest.
    """
    wishes = dict(sorted(floor.wishes.items()))
    ends_s = time.monotonic() + search.limit_s

    def core(kept: Sequence[str]) -> list[str] | None:
        return None if time.monotonic() > ends_s else _core(floor, kept, search)

    found = core(tuple(wishes))
    return () if found is None else tuple(_smallest(found, core))


def _smallest(
    found: Sequence[str], core: Callable[[Sequence[str]], list[str] | None]
) -> list[str]:
    needed: list[str] = []
    left = list(found)
    while left:
        tried = left.pop(0)
        smaller = core([*needed, *left])
        if smaller is None:
            needed.append(tried)
        else:
            left = [words for words in left if words in smaller]
            needed = [words for words in needed if words in smaller]
    return needed


def _core(floor: FloorModel, kept: Sequence[str], search: Search) -> list[str] | None:
    """Return those of the wishes that suffice for a contradiction; None where there is none."""
    from ortools.sat.python import cp_model  # noqa: PLC0415  # half a second

    floor.model.clear_assumptions()
    floor.model.add_assumptions([floor.wishes[words] for words in kept])
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = _EACH_S
    solver.parameters.random_seed = search.seed
    solver.parameters.num_workers = 1
    if solver.solve(floor.model) != cp_model.INFEASIBLE:
        return None  # met, or not known in the time
    words = {variable.index: name for name, variable in floor.wishes.items()}
    enough = [words[index] for index in solver.sufficient_assumptions_for_infeasibility()]
    return enough or list(kept)
