"""In which order the big parts must be brought in."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

from coachwright.layout.model_interior import LoadingStep
from coachwright.model.placement import Point

SLACK_MM = 1.0
"""Overlaps that are not deeper do not count."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Space:
    """A box seen through a door: along the wall, up, and inwards from the opening."""

    low_mm: Point
    high_mm: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Gate:
    """A door and what stands inside it.

    Attributes
    ----------
    standing
        Name → boxes of each big part, seen through the door.
    fixed
        Boxes that are always there, such as wheel arches.
    """

    name: str
    width_mm: float
    from_height_mm: float
    to_height_mm: float
    depth_mm: float
    standing: Mapping[str, tuple[Space, ...]]
    fixed: tuple[Space, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Order:
    """The order in which parts are brought in, and those for which there is none."""

    steps: tuple[LoadingStep, ...]
    stuck: tuple[str, ...]


def loading_order(
    *,
    sizes_mm: Mapping[str, Point],
    gates: Sequence[Gate],
    carried_by: Mapping[str, frozenset[str]],
) -> Order:
    """Return an order in which every big part still finds a way in.

    Parameters
    ----------
    sizes_mm
        Name → size of the box around each big part. [mm]
    gates
        The doors.
    carried_by
        Name → the parts that must be in before it, because they carry it.

    Notes
    -----
    Taken apart from the end: a part can leave when nothing that it carries is left and it can
    stand free, in one of its six attitudes, just inside a door among what is left.  Read backwards
    that is an order of loading.  Taking out the first part that can leave never closes a way, so
    an order is found whenever there is one.  The way from the door to the place is not looked at.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> bed = Space(low_mm=(0.0, 0.0, 0.0), high_mm=(1560.0, 1300.0, 1900.0))
    >>> locker = Space(low_mm=(0.0, 0.0, 2000.0), high_mm=(600.0, 1500.0, 2600.0))
    >>> rear = Gate(
    ...     name="rear doors", width_mm=1560.0, from_height_mm=0.0, to_height_mm=1790.0,
    ...     depth_mm=3000.0, standing={"bed": (bed,), "locker": (locker,)},
    ... )
    >>> found = loading_order(
    ...     sizes_mm={"bed": (1900.0, 1560.0, 1300.0), "locker": (600.0, 600.0, 1500.0)},
    ...     gates=[rear], carried_by={},
    ... )
    >>> [(step.name, step.before) for step in found.steps]
    [('locker', ('bed',)), ('bed', ())]
    """
    left = list(sizes_mm)
    closed = {name for name in left if not _way(name, sizes_mm[name], gates, left)}
    steps: list[LoadingStep] = []
    freed_by = ""
    while left:
        carrying = {holder for name in left for holder in carried_by.get(name, ())}
        for name in sorted(left, key=lambda name: name not in closed):
            door = "" if name in carrying else _way(name, sizes_mm[name], gates, left)
            if door:
                break
        else:
            break
        before = (freed_by,) if name in closed else ()
        steps.append(LoadingStep(name=name, door=door, before=before))
        left.remove(name)
        freed_by = name
    return Order(steps=tuple(reversed(steps)), stuck=tuple(left))


def _way(name: str, size_mm: Point, gates: Sequence[Gate], left: Sequence[str]) -> str:
    """Return the first door with room for a part just inside it; empty where there is none."""
    for gate in gates:
        standing = list(gate.fixed)
        for other in left:
            if other != name:
                standing.extend(gate.standing.get(other, ()))
        for along_mm, up_mm, inwards_mm in permutations(size_mm):
            if _has_room(gate, (along_mm, up_mm, inwards_mm), standing):
                return gate.name
    return ""


def _has_room(gate: Gate, held_mm: Point, standing: Sequence[Space]) -> bool:
    """Say whether a part held in one way stands free just inside a door."""
    along_mm, up_mm, inwards_mm = held_mm
    top_mm = gate.to_height_mm - up_mm
    side_mm = gate.width_mm - along_mm
    if side_mm < 0 or top_mm < gate.from_height_mm or inwards_mm > gate.depth_mm:
        return False
    near = [space for space in standing if space.low_mm[2] < inwards_mm - SLACK_MM]
    return any(
        not any(
            space.low_mm[0] < start_mm + along_mm - SLACK_MM
            and space.high_mm[0] > start_mm + SLACK_MM
            and space.low_mm[1] < bottom_mm + up_mm - SLACK_MM
            and space.high_mm[1] > bottom_mm + SLACK_MM
            for space in near
        )
        for start_mm in _starts_mm(0.0, side_mm, along_mm, near, 0)
        for bottom_mm in _starts_mm(gate.from_height_mm, top_mm, up_mm, near, 1)
    )


def _starts_mm(
    least_mm: float, most_mm: float, size_mm: float, near: Sequence[Space], axis: int
) -> Iterator[float]:
    """Yield where a part may begin: at an end of the opening or beside something."""
    yield least_mm
    yield most_mm
    for space in near:
        for start_mm in (space.high_mm[axis], space.low_mm[axis] - size_mm):
            if least_mm < start_mm < most_mm:
                yield start_mm
