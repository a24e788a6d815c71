"""The narrowest place on the best path through a floor with obstacles.

A round person of diameter w can pass from one opening to another exactly when no chain of
obstacles joins the two sides between them with every gap smaller than w.  So the widest person who
can pass equals the smallest, over all chains from one side to the other, of the largest gap in the
chain: a bottleneck path between the two sides, found without a grid.
"""

import math
from collections.abc import Collection, Iterable, Sequence
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
        Diameter of the widest round person who can pass.
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
    patches = [*side, *other_side, *obstacles]
    return bottleneck(
        patches=patches,
        gaps_mm=gap_table_mm(patches),
        sources=range(len(side)),
        goals=range(len(side), len(side) + len(other_side)),
        nodes=range(len(patches)),
    )


def gap_table_mm(patches: Sequence[Patch]) -> list[list[float]]:
    """Return the distance of each patch from each other, to be used for several ways."""
    table = [[0.0] * len(patches) for _ in patches]
    for index, one in enumerate(patches):
        for other_index in range(index):
            gap_mm = distance_mm(one, patches[other_index])
            table[index][other_index] = table[other_index][index] = gap_mm
    return table


def bottleneck(
    *,
    patches: Sequence[Patch],
    gaps_mm: Sequence[Sequence[float]],
    sources: Collection[int],
    goals: Collection[int],
    nodes: Iterable[int],
) -> Passage:
    """Return the passage of `narrowest_passage`, from distances that are known already.

    Parameters
    ----------
    patches
        Walls and obstacles.
    gaps_mm
        As from `gap_table_mm`.
    sources, goals
        Numbers of the patches of the one and of the other side.
    nodes
        Numbers of all patches that count for this way, those of both sides too.
    """
    best_mm = dict.fromkeys(nodes, math.inf) | dict.fromkeys(sources, 0.0)
    pairs = {node: (node, node) for node in best_mm}
    wanted = frozenset(goals)
    while True:
        here = min(best_mm, key=best_mm.__getitem__)
        here_mm = best_mm.pop(here)
        if here in wanted:
            return _passage(patches, here_mm, pairs[here])
        row_mm = gaps_mm[here]
        for other, known_mm in best_mm.items():
            gap_mm = row_mm[other]
            chain_mm = max(gap_mm, here_mm)
            if chain_mm < known_mm:
                best_mm[other] = chain_mm
                pairs[other] = (here, other) if gap_mm >= here_mm else pairs[here]


def _passage(patches: Sequence[Patch], width_mm: float, pair: tuple[int, int]) -> Passage:
    one, other = patches[pair[0]], patches[pair[1]]
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
    (ax0, ay0), (ax1, ay1) = one.low_mm, one.high_mm
    (bx0, by0), (bx1, by1) = other.low_mm, other.high_mm
    x_mm = max(0.0, bx0 - ax1, ax0 - bx1)
    y_mm = max(0.0, by0 - ay1, ay0 - by1)
    return math.hypot(x_mm, y_mm)


def outermost(patches: Iterable[Patch]) -> tuple[Patch, ...]:
    """Return the patches that lie within no other, the largest first."""
    found: list[Patch] = []
    for patch in sorted(patches, key=_area_mm2, reverse=True):
        if not any(_lies_in(patch, larger) for larger in found):
            found.append(patch)
    return tuple(found)


def _area_mm2(patch: Patch) -> float:
    return (patch.high_mm[0] - patch.low_mm[0]) * (patch.high_mm[1] - patch.low_mm[1])


def _lies_in(one: Patch, other: Patch) -> bool:
    return (
        other.low_mm[0] <= one.low_mm[0]
        and other.low_mm[1] <= one.low_mm[1]
        and one.high_mm[0] <= other.high_mm[0]
        and one.high_mm[1] <= other.high_mm[1]
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
