"""The tallest that people can walk through the van.

Somebody of a stated width and a height h can pass from one opening to another exactly when no
chain of obstacles that reach down below h joins the two sides between them with every gap
narrower than that width.  So the tallest who can pass is the smallest, over all such chains, of
the height at which the chain closes: a bottleneck path, found without a grid.
"""

import heapq
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from coachwright.layout.model_interior import Headroom


@dataclass(frozen=True, kw_only=True, slots=True)
class Hanging:
    """A rectangle of the plan and the height from which upwards it is taken."""

    name: str
    x_from_mm: float
    x_to_mm: float
    y_from_mm: float
    y_to_mm: float
    from_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Edge:
    """A piece of the boundary of the floor, in order round it.

    Attributes
    ----------
    wall
        ``"left"``, ``"right"``, ``"rear"`` or ``"cab"``.
    from_mm, to_mm
        x along a side wall, y along the rear or the cab line; from the smaller one.
    opening
        Name of the opening; empty for a piece of wall.
    """

    wall: str
    from_mm: float
    to_mm: float
    opening: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class _Closing:
    height_mm: float
    name: str


def headrooms(
    *,
    edges: Sequence[Edge],
    hangings: Sequence[Hanging],
    width_mm: float,
    rear_mm: float,
    ceiling_mm: float,
    wall_reaches_mm: Callable[[float], float],
    floor_mm: float,
) -> tuple[Headroom, ...]:
    """Return the tallest that somebody of a width can be on the way between each two openings.

    Parameters
    ----------
    edges
        The boundary: cab, right wall, rear, left wall, with the openings in it.
    hangings
        What stands or hangs in the living space.
    width_mm
        Of head and shoulders. [mm]
    rear_mm
        x of the rear wall's finished face. [mm]
    ceiling_mm
        Finished ceiling above the load floor. [mm]
    wall_reaches_mm
        Distance from the centreline -> the lowest height at which the side wall comes in to it.
    floor_mm
        Finished floor above the load floor. [mm]

    Returns
    -------
    tuple of Headroom
        For each pair of openings, in their order.

    Notes
    -----
    h = min over chains from one side of the way to the other, all gaps < w, of the largest
    closing height in the chain; the ceiling where there is no chain.  An obstacle closes from its
    underside; a gap to a side wall closes where the wall has come in far enough.  Exact for
    rectangles and a round person; Dijkstra with the larger of two heights instead of their sum.

    References
    ----------
    [geometry]
    """
    gaps = _gaps(hangings, width_mm)
    places = [index for index, edge in enumerate(edges) if edge.opening]
    found = []
    for number, first in enumerate(places):
        for last in places[number + 1 :]:
            sides = (
                edges[first + 1 : last],
                (*edges[last + 1 :], *edges[:first]),
            )
            one, other = (
                [
                    _closed_from_mm(side, hanging, width_mm, rear_mm, wall_reaches_mm)
                    for hanging in hangings
                ]
                for side in sides
            )
            closing = _closes(
                hangings, gaps, one, other, _Closing(height_mm=ceiling_mm, name="ceiling")
            )
            narrow = min(edges[first], edges[last], key=_length_mm)
            if _length_mm(narrow) < width_mm:
                closing = _Closing(height_mm=floor_mm, name=narrow.opening)
            found.append(
                Headroom(
                    way=f"{edges[first].opening} to {edges[last].opening}",
                    width_mm=width_mm,
                    clear_mm=max(0.0, closing.height_mm - floor_mm),
                    under=closing.name,
                )
            )
    return tuple(found)


def _length_mm(edge: Edge) -> float:
    return edge.to_mm - edge.from_mm


def _gaps(hangings: Sequence[Hanging], width_mm: float) -> list[list[int]]:
    """Return for each obstacle the others that are nearer than the width."""
    near: list[list[int]] = [[] for _ in hangings]
    order = sorted(range(len(hangings)), key=lambda index: hangings[index].x_from_mm)
    for position, index in enumerate(order):
        here = hangings[index]
        reach_mm = here.x_to_mm + width_mm
        for other_index in order[position + 1 :]:
            other = hangings[other_index]
            if other.x_from_mm >= reach_mm:
                break
            dx = max(0.0, other.x_from_mm - here.x_to_mm)
            dy = max(0.0, other.y_from_mm - here.y_to_mm, here.y_from_mm - other.y_to_mm)
            if dx * dx + dy * dy < width_mm * width_mm:
                near[index].append(other_index)
                near[other_index].append(index)
    return near


def _closed_from_mm(
    side: Sequence[Edge],
    hanging: Hanging,
    width_mm: float,
    rear_mm: float,
    wall_reaches_mm: Callable[[float], float],
) -> float:
    """Return the height from which an obstacle and a side leave no gap; infinity for never."""
    lowest_mm = math.inf
    for edge in side:
        if edge.opening:
            continue
        start, end = (
            (hanging.y_from_mm, hanging.y_to_mm)
            if edge.wall == "rear"
            else (hanging.x_from_mm, hanging.x_to_mm)
        )
        along_mm = max(0.0, edge.from_mm - end, start - edge.to_mm)
        if along_mm >= width_mm:
            continue
        reach_mm = math.sqrt(width_mm**2 - along_mm**2)
        if edge.wall == "rear":
            closes_mm = 0.0 if rear_mm - hanging.x_to_mm < reach_mm else math.inf
        elif edge.wall == "left":
            closes_mm = wall_reaches_mm(max(0.0, reach_mm - hanging.y_from_mm))
        else:
            closes_mm = wall_reaches_mm(max(0.0, reach_mm + hanging.y_to_mm))
        lowest_mm = min(lowest_mm, closes_mm)
    return max(lowest_mm, hanging.from_mm)


def _closes(
    hangings: Sequence[Hanging],
    gaps: Sequence[Sequence[int]],
    one_mm: Sequence[float],
    other_mm: Sequence[float],
    open_until: _Closing,
) -> _Closing:
    """Return the lowest height at which a chain from the one side to the other is closed."""
    best_mm = list(one_mm)
    queue = [
        (height_mm, index, hangings[index].name)
        for index, height_mm in enumerate(one_mm)
        if height_mm < open_until.height_mm
    ]
    heapq.heapify(queue)
    found = open_until
    while queue:
        height_mm, index, name = heapq.heappop(queue)
        if height_mm >= found.height_mm:
            break
        if height_mm > best_mm[index]:
            continue
        through_mm = max(height_mm, other_mm[index])
        if through_mm < found.height_mm:
            closing = name if through_mm == height_mm else hangings[index].name
            found = _Closing(height_mm=through_mm, name=closing)
        for neighbour in gaps[index]:
            next_mm = max(height_mm, hangings[neighbour].from_mm)
            if next_mm < best_mm[neighbour]:
                best_mm[neighbour] = next_mm
                closing = name if next_mm == height_mm else hangings[neighbour].name
                heapq.heappush(queue, (next_mm, neighbour, closing))
    return found
