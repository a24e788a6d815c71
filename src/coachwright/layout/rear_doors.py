"""The rear doors: outlines, what is hidden from behind, and how far they open."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.layout.door_swing import first_contact
from coachwright.layout.model_outside import CoveredZone, DoorPlace, DoorSwing
from coachwright.layout.plane import BEHIND, Rectangle, covered_frac, overhang, seen
from coachwright.layout.solids import Box, Solid, solid
from coachwright.model.vehicle import RearZone

STRAIGHT_DEG = 180.0
"""Doors that open further do so on hinges that carry them round the edge of the body."""


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorFrame:
    """One rear door and the body beside it.

    Attributes
    ----------
    side_factor
        -1.0 for the left door, 1.0 for the right.
    rear_mm
        x of its outer face when closed.
    hinge_mm
        Distance of the hinge line from the centreline.
    bottom_mm, top_mm
        Above the load floor; `top_mm` is None where the vehicle does not state it.
    leaf_top_mm
        The same for swinging: the doorway's top or the ceiling where nothing better is known.
    thickness_mm
        Of the door.
    half_width_mm
        Of the vehicle.
    full_deg
        How far it opens.
    """

    name: str
    side_factor: float
    rear_mm: float
    hinge_mm: float
    bottom_mm: float
    top_mm: float | None
    leaf_top_mm: float
    thickness_mm: float
    half_width_mm: float
    full_deg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Obstacle:
    """Something fixed that a door may come up against.

    Attributes
    ----------
    tilts
        It can be tilted away, nobody knows how far.
    """

    body: Solid
    tilts: bool


def door_place(*, body: Solid, door: DoorFrame) -> DoorPlace:
    """Return how far a fitting reaches over the edges of the rear door that it hangs on.

    Parameters
    ----------
    body
        With the doors closed.
    door
        That it hangs on.
    """
    left, right = sorted((0.0, door.side_factor * door.hinge_mm))
    found = overhang(
        seen(body.bounds, BEHIND),
        Rectangle(low_mm=(left, door.bottom_mm), high_mm=(right, door.top_mm or 0.0)),
    )
    hinge, middle = found.first_low_mm, found.first_high_mm
    if door.side_factor > 0:
        hinge, middle = middle, hinge
    return DoorPlace(
        name=body.name,
        door=door.name,
        beyond_hinge_mm=hinge,
        beyond_middle_mm=middle,
        above_mm=None if door.top_mm is None else found.second_high_mm,
        below_mm=found.second_low_mm,
    )


def covered_zone(
    *, zone: RearZone, bodies: Sequence[Solid], repeating: frozenset[str]
) -> CoveredZone:
    """Return how much of a lamp, plate or the like is hidden from straight behind.

    Parameters
    ----------
    zone
        On the closed doors or beside them.
    bodies
        What stands out behind the vehicle.
    repeating
        Names of those that carry a lamp or plate of this kind themselves.

    Notes
    -----
    Seen along x from far behind.  The angles of visibility that lamps need to the sides, above
    and below are not looked at: a lamp that counts as free here can still be hidden from them.
    """
    target = Rectangle(low_mm=zone.from_mm, high_mm=zone.to_mm)
    shares = {
        body.name: covered_frac(target, [seen(part, BEHIND) for part in body.boxes])
        for body in bodies
    }
    hiding = [body for body in bodies if shares[body.name] > 0]
    views = [seen(part, BEHIND) for body in hiding for part in body.boxes]
    return CoveredZone(
        zone=zone.name,
        kind=zone.kind,
        covered_frac=covered_frac(target, views),
        covered_by=tuple(body.name for body in hiding),
        repeated=bool(hiding) and all(body.name in repeating for body in hiding),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Meeting:
    open_deg: float
    moving: str
    hits: str
    tilts: bool


def door_swing(
    *,
    door: DoorFrame,
    hung: Sequence[Solid],
    behind: Sequence[Obstacle],
    beside: Sequence[Solid],
) -> DoorSwing:
    """Return how far a rear door opens with everything in place.

    Parameters
    ----------
    door
        The door.
    hung
        What hangs on it, with the door closed.
    behind
        What stands behind it on the hitch.
    beside
        What is on the side of the body.

    Notes
    -----
    Seen from above; things at other heights do not count.  The door turns about its hinge line at
    its outer face.  A door that opens to at most 180° turns about `hinge_mm` and what hangs on it
    must clear the body between there and the side.  One that opens further is taken to turn about
    the edge of the body: what hangs on it comes up against the side.
    """
    far = door.full_deg > STRAIGHT_DEG
    leaf = solid("the door", (_leaf(door),))
    meetings = [
        found
        for body in (leaf, *hung)
        for found in _meetings(door, body, body is leaf, behind, beside if far else ())
    ]
    full = _Meeting(open_deg=door.full_deg, moving="", hits="", tilts=False)
    first = min((full, *meetings), key=lambda meeting: meeting.open_deg)
    return DoorSwing(
        door=door.name,
        hung=tuple(body.name for body in hung),
        behind=tuple(each.body.name for each in behind),
        open_deg=first.open_deg,
        full_deg=door.full_deg,
        moving=first.moving,
        hits=first.hits,
        tilts=first.tilts,
    )


def _meetings(
    door: DoorFrame,
    body: Solid,
    is_leaf: bool,
    behind: Sequence[Obstacle],
    beside: Sequence[Solid],
) -> list[_Meeting]:
    moving = _on_door(door, body.bounds)
    edge_mm = door.half_width_mm - door.hinge_mm
    far = door.full_deg > STRAIGHT_DEG
    fixed = [
        (each.body.name, _from_hinge(door, each.body.bounds, door.hinge_mm), each.tilts)
        for each in behind
        if share_height(body.bounds, each.body.bounds)
    ]
    fixed += [
        (each.name, _from_hinge(door, each.bounds, door.half_width_mm), False)
        for each in beside
        if share_height(body.bounds, each.bounds)
    ]
    if not is_leaf:
        side_mm = 0.0 if far else edge_mm
        wall = Rectangle(low_mm=(-2 * door.half_width_mm, -door.rear_mm), high_mm=(side_mm, 0.0))
        fixed.append(("the body", wall, False))
    return [
        _Meeting(open_deg=found.open_deg, moving=body.name, hits=name, tilts=tilts)
        for name, where, tilts in fixed
        if (found := first_contact(moving=moving, fixed=where, limit_deg=door.full_deg))
    ]


def _leaf(door: DoorFrame) -> Box:
    left, right = sorted((0.0, door.side_factor * door.hinge_mm))
    return Box(
        low_mm=(door.rear_mm - door.thickness_mm, left, door.bottom_mm),
        high_mm=(door.rear_mm, right, door.leaf_top_mm),
    )


def _on_door(door: DoorFrame, space: Box) -> Rectangle:
    """Return what moves with a door: along it from the hinge line, and outwards from its face."""
    along = sorted(
        door.hinge_mm - door.side_factor * y_mm for y_mm in (space.low_mm[1], space.high_mm[1])
    )
    return Rectangle(
        low_mm=(along[0], space.low_mm[0] - door.rear_mm),
        high_mm=(along[1], space.high_mm[0] - door.rear_mm),
    )


def _from_hinge(door: DoorFrame, space: Box, hinge_mm: float) -> Rectangle:
    """Return something fixed: away from the door beyond the hinge line, and rearwards."""
    away = sorted(
        door.side_factor * y_mm - hinge_mm for y_mm in (space.low_mm[1], space.high_mm[1])
    )
    return Rectangle(
        low_mm=(away[0], space.low_mm[0] - door.rear_mm),
        high_mm=(away[1], space.high_mm[0] - door.rear_mm),
    )


def door_reach_mm(*, door: DoorFrame, hung: Sequence[Solid], behind: Box) -> float:
    """Return how far a door with what hangs on it reaches from its hinge line. [mm].

    Parameters
    ----------
    door
        The door.
    hung
        What hangs on it.
    behind
        Only what shares a height with this counts.

    Notes
    -----
    The largest distance of a corner from the hinge line, seen from above.
    """
    leaf = _leaf(door)
    spaces = [leaf, *(body.bounds for body in hung)]
    views = [_on_door(door, space) for space in spaces if share_height(space, behind)]
    return max((math.hypot(view.high_mm[0], view.high_mm[1]) for view in views), default=0.0)


def share_height(one: Box, other: Box) -> bool:
    """Say whether two boxes have a height in common."""
    return min(one.high_mm[2], other.high_mm[2]) > max(one.low_mm[2], other.low_mm[2])
