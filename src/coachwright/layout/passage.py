"""The narrowest place on the best path through a floor with obstacles.

A round person of diameter w can pass from one opening to another exactly when no chain of
obstacles joins the two sides between them with every gap smaller than w.  So the widest person who
can pass equals the smallest, over all chains from one side to the other, of the largest gap in the
chain: a bottleneck path between the two sides, found without a grid.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange

Plan = tuple[float, float]
"""A point of the floor plan: x and y. [mm]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Patch:
    """A rectangle of the floor plan that cannot be walked on, or a piece of wall.

    Attributes
    ----------
    low_mm, high_mm
        Its corners with the smallest and largest x and y; a wall may have no thickness.
    """

    name: str
    low_mm: Plan
    high_mm: Plan


@dataclass(frozen=True, kw_only=True, slots=True)
class Passage:
    """The narrowest place on the best path.

    Attributes
    ----------
    width_mm
        Diameter of the widest round person who can pass; infinity where nothing stands between.
    between
        The two patches that form the narrowest place.
    from_mm, to_mm
        The ends of the shortest line between them.
    """

    width_mm: float
    between: tuple[str, str]
    from_mm: Plan
    to_mm: Plan


def narrowest_passage(
    *, side: Sequence[Patch], other_side: Sequence[Patch], obstacles: Sequence[Patch]
) -> Passage:
    """Return the narrowest place on the best path between two openings.

    Parameters
    ----------
    side, other_side
        The walls on the one and on the other side of the way from opening to opening: everything
        of the boundary that is not an opening, in two parts.
    obstacles
        What stands on the floor.

    Returns
    -------
    Passage
        The widest round person who can pass and where it is narrowest.

    Raises
    ------
    OutOfRange
        Where a side is empty.

    Notes
    -----
    Minimax path over the complete graph of patches, edge weight = distance between two rectangles
    (0 where they touch): Prim's order from the one side until the other is reached.  Exact for
    rectangles; a person is a disc and turns freely.

    Examples
    --------
    >>> left = Patch(name="left wall", low_mm=(0.0, -900.0), high_mm=(3000.0, -900.0))
    >>> right = Patch(name="right wall", low_mm=(0.0, 900.0), high_mm=(3000.0, 900.0))
    >>> galley = Patch(name="galley", low_mm=(500.0, -900.0), high_mm=(1500.0, -380.0))
    >>> bench = Patch(name="bench", low_mm=(500.0, 200.0), high_mm=(1500.0, 900.0))
    >>> found = narrowest_passage(side=[left], other_side=[right], obstacles=[galley, bench])
    >>> found.width_mm, found.between
    (580.0, ('galley', 'bench'))
    """
    if not side or not other_side:
        raise OutOfRange("side", "no walls", "at least one wall on each side of the way")
    nodes = [*side, *other_side, *obstacles]
    goals = set(range(len(side), len(side) + len(other_side)))
    best_mm = [0.0 if index < len(side) else math.inf for index in range(len(nodes))]
    reached_by: list[tuple[int, int] | None] = [None] * len(nodes)
    open_nodes = set(range(len(nodes)))
    while True:
        here = min(open_nodes, key=lambda index: (best_mm[index], index))
        open_nodes.discard(here)
        if here in goals:
            return _passage(nodes, best_mm[here], reached_by[here])
        for other in open_nodes:
            gap_mm = distance_mm(nodes[here], nodes[other])
            chain_mm = max(best_mm[here], gap_mm)
            if chain_mm < best_mm[other]:
                best_mm[other] = chain_mm
                widest = reached_by[here]
                reached_by[other] = (here, other) if gap_mm >= best_mm[here] else widest


def _passage(nodes: Sequence[Patch], width_mm: float, pair: tuple[int, int] | None) -> Passage:
    if pair is None:
        raise OutOfRange("side", "walls on both sides at once", "a wall on one side only")
    one, other = nodes[pair[0]], nodes[pair[1]]
    from_mm, to_mm = nearest_points_mm(one, other)
    return Passage(width_mm=width_mm, between=(one.name, other.name), from_mm=from_mm, to_mm=to_mm)


def distance_mm(one: Patch, other: Patch) -> float:
    """Return the distance between two rectangles, 0 where they touch. [mm].

    Examples
    --------
    >>> a = Patch(name="a", low_mm=(0.0, 0.0), high_mm=(1.0, 1.0))
    >>> b = Patch(name="b", low_mm=(4.0, 5.0), high_mm=(6.0, 6.0))
    >>> distance_mm(a, b)
    5.0
    """
    return math.hypot(_gap_mm(one, other, 0), _gap_mm(one, other, 1))


def _gap_mm(one: Patch, other: Patch, axis: int) -> float:
    return max(
        0.0,
        other.low_mm[axis] - one.high_mm[axis],
        one.low_mm[axis] - other.high_mm[axis],
    )


def nearest_points_mm(one: Patch, other: Patch) -> tuple[Plan, Plan]:
    """Return the ends of a shortest line between two rectangles, in its middle where many are."""
    ends = [_nearest_on_axis_mm(one, other, axis) for axis in (0, 1)]
    return (ends[0][0], ends[1][0]), (ends[0][1], ends[1][1])


def _nearest_on_axis_mm(one: Patch, other: Patch, axis: int) -> tuple[float, float]:
    if other.low_mm[axis] > one.high_mm[axis]:
        return one.high_mm[axis], other.low_mm[axis]
    if one.low_mm[axis] > other.high_mm[axis]:
        return one.low_mm[axis], other.high_mm[axis]
    middle_mm = (
        max(one.low_mm[axis], other.low_mm[axis]) + min(one.high_mm[axis], other.high_mm[axis])
    ) / 2
    return middle_mm, middle_mm
