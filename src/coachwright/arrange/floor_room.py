"""By how much modules may be shifted along the van: stretches in which two things would meet."""

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from coachwright.arrange.floor_poses import Piece, Pose
from coachwright.layout.doors import hole_of
from coachwright.layout.fit import shell_fit
from coachwright.layout.model import Layout, PlacedZone
from coachwright.layout.solids import Box, solid
from coachwright.layout.zones import MOVING
from coachwright.model.build import Build
from coachwright.model.part import Part
from coachwright.reference import limit

TOUCHING_MM = 0.05
"""Boxes that share less on an axis only touch.  Less than what is judged, so that a plan does not
use up what is meant for saws."""
Stretch = tuple[int, int]
"""First and last whole millimetre of a range of shifts."""
Wishes = tuple[str, ...]
"""What would have to be given up to allow something."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Room:
    """What is asked of shifts, and for the sake of which wishes.

    Attributes
    ----------
    forbidden
        Wishes → stretches of shifts in which one of them is not met.
    """

    forbidden: Mapping[Wishes, tuple[Stretch, ...]] = field(default_factory=dict)

    def free(self, shift_mm: int) -> bool:
        """Say whether a shift meets every wish."""
        return not any(
            low <= shift_mm <= high
            for stretches in self.forbidden.values()
            for low, high in stretches
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Surroundings:
    """What stays while modules are shifted.

    Attributes
    ----------
    staying
        Pieces of the fittings that stay.
    keepers
        Fitting that stays → in words, that it does.
    parts
        Name of every fitting → its part.
    """

    build: Build
    layout: Layout
    staying: tuple[Piece, ...]
    keepers: Mapping[str, str]
    parts: Mapping[str, Part]


def meeting_mm(one: Piece, other: Piece, parts: Mapping[str, Part]) -> Stretch | None:
    """Return the shifts of the other against the one at which they hinder each other. [mm].

    Parameters
    ----------
    one, other
        Solids or zones of different modules.
    parts
        Name of every fitting → its part.

    Notes
    -----
    Two boxes that share more than the slack s on y and z share more than s on x where
    a0 − b1 + s < d < a1 − b0 − s.  A zone may hold what it says it may, and two zones hinder each
    other only where they may not share.
    """
    if not _hinder(one, other, parts):
        return None
    a, b = one.space, other.space
    for axis in (1, 2):
        shared_mm = min(a.high_mm[axis], b.high_mm[axis]) - max(a.low_mm[axis], b.low_mm[axis])
        if shared_mm <= TOUCHING_MM:
            return None
    low_mm = math.floor(a.low_mm[0] - b.high_mm[0] + TOUCHING_MM) + 1
    high_mm = math.ceil(a.high_mm[0] - b.low_mm[0] - TOUCHING_MM) - 1
    return (low_mm, high_mm) if low_mm <= high_mm else None


def _hinder(one: Piece, other: Piece, parts: Mapping[str, Part]) -> bool:
    if one.zone is not None and other.zone is not None:
        return not (_shares(one.zone, other.zone) and _shares(other.zone, one.zone))
    for zone_piece, body in ((one, other), (other, one)):
        if zone_piece.zone is not None and _may_hold(zone_piece, parts, body.owner):
            return False
    return True


def _shares(zone: PlacedZone, other: PlacedZone) -> bool:
    if zone.shares_with is None:
        return not (zone.always and other.purpose in MOVING)
    return other.purpose in zone.shares_with


def _may_hold(piece: Piece, parts: Mapping[str, Part], name: str) -> bool:
    access = parts[piece.owner].access
    if access is None or piece.zone is None or name not in parts:
        return False
    return any(
        getattr(parts[name], facet, None) is not None
        for zone in access.zones
        if zone.purpose == piece.zone.purpose
        for facet in zone.may_hold
    )


def room_between(one: Pose, other: Pose, parts: Mapping[str, Part]) -> Room:
    """Return the shifts of the other module against the one that are forbidden.

    Parameters
    ----------
    one, other
        Poses of two modules.
    parts
        Name of every fitting → its part.
    """
    found: dict[Wishes, list[Stretch]] = defaultdict(list)
    for a in one.pieces:
        for b in other.pieces:
            stretch = meeting_mm(a, b, parts)
            if stretch is not None:
                found[_wishes(a, b)].append(stretch)
    return Room(forbidden={wishes: tuple(stretches) for wishes, stretches in found.items()})


def room_of(pose: Pose, around: Surroundings) -> Room:
    """Return the shifts of a module in one pose that are forbidden by what stays.

    Parameters
    ----------
    pose
        Of the module.
    around
        Shell, wheel arches, doors and fittings that stay.
    """
    found: dict[Wishes, list[Stretch]] = defaultdict(list)
    for piece in pose.pieces:
        for wishes, stretch in _by_what_stays(piece, around):
            found[wishes].append(stretch)
    return Room(forbidden={wishes: tuple(stretches) for wishes, stretches in found.items()})


def _by_what_stays(piece: Piece, around: Surroundings) -> Iterator[tuple[Wishes, Stretch]]:
    own: Wishes = (piece.wish,) if piece.wish else ()
    for stretch in _by_shell(piece, around):
        yield own, stretch
    for arch in around.layout.arches:
        for part in arch.boxes:
            met = meeting_mm(Piece(owner=arch.name, space=part), piece, around.parts)
            if met is not None:
                yield own, met
    for other in around.staying:
        met = meeting_mm(other, piece, around.parts)
        if met is not None:
            yield (*_wishes(other, piece), around.keepers[other.owner]), met


def _by_shell(piece: Piece, around: Surroundings) -> Iterator[Stretch]:
    """Yield the shifts at which a piece leaves the living space, or hangs where a door is."""
    shell, space = around.build.vehicle.shell, piece.space
    rear_mm = shell.rear_mm - around.layout.build_up.doors_mm
    if piece.zone is None:  # the cab line is open for people and for what they move
        yield (-_FAR_MM, math.ceil(shell.cab_line_mm - space.low_mm[0] - TOUCHING_MM) - 1)
    if piece.zone is None or space.high_mm[0] <= rear_mm + TOUCHING_MM:
        yield (math.floor(rear_mm - space.high_mm[0] + TOUCHING_MM) + 1, _FAR_MM)
    yield from _by_doors(piece, around)


def _by_doors(piece: Piece, around: Surroundings) -> Iterator[Stretch]:
    """Yield the shifts at which something on a wall has a door behind it.

    Notes
    -----
    A window needs whole wall behind it; a cabinet is held where some of it is on the wall.
    """
    if not piece.on_wall:
        return
    space = piece.space
    let_in = around.parts[piece.owner].opening is not None
    for door in around.build.vehicle.apertures:
        hole = hole_of(door)
        side = "left" if space.low_mm[1] + space.high_mm[1] < 0 else "right"
        at_height = space.low_mm[2] < hole.top_mm and space.high_mm[2] > hole.bottom_mm
        within = space.low_mm[2] >= hole.bottom_mm and space.high_mm[2] <= hole.top_mm
        if hole.wall != side or not (at_height if let_in else within):
            continue
        ends_mm = (space.low_mm[0], space.high_mm[0])
        near_mm, far_mm = ends_mm[::-1] if let_in else ends_mm
        low_mm = math.floor(hole.from_mm - near_mm) + 1
        high_mm = math.ceil(hole.to_mm - far_mm) - 1
        if low_mm <= high_mm:
            yield low_mm, high_mm


_FAR_MM = 1_000_000


def _wishes(one: Piece, other: Piece) -> Wishes:
    return tuple(sorted({piece.wish for piece in (one, other) if piece.wish}))


def fits_across(pose: Pose, build: Build, layout: Layout, openings: frozenset[str]) -> bool:
    """Say whether a pose stays within walls, floor and ceiling, wherever it is along the van.

    Parameters
    ----------
    pose
        Of a module.
    build, layout
        As they are.
    openings
        Names of fittings that are let into the shell.
    """
    slack_mm = limit("layout.judged-to").value
    now_mm = {fit.name: fit.spare_mm for fit in layout.shell_fits}
    shell = build.vehicle.shell
    middle_mm = (shell.cab_line_mm + shell.rear_mm) / 2
    for piece in pose.pieces:
        if piece.zone is None and piece.owner not in openings:
            fit = shell_fit(
                body=solid(piece.owner, (_at_x(piece.space, middle_mm),)),
                shell=shell,
                build_up=layout.build_up,
            )
            if fit.spare_mm < min(0.0, now_mm.get(piece.owner, 0.0)) - slack_mm:
                return False
    return True


def _at_x(space: Box, middle_mm: float) -> Box:
    half_mm = (space.high_mm[0] - space.low_mm[0]) / 2
    return Box(
        low_mm=(middle_mm - half_mm, *space.low_mm[1:]),
        high_mm=(middle_mm + half_mm, *space.high_mm[1:]),
    )


def steps_of(root: Box, around: Surroundings, step_mm: int) -> tuple[int, int]:
    """Return how many steps a module can go forwards (negative) and rearwards in the van.

    Parameters
    ----------
    root
        Box around its root.
    around
        Shell.
    step_mm
        Of the grid through its own place.
    """
    shell = around.build.vehicle.shell
    rear_mm = shell.rear_mm - around.layout.build_up.doors_mm
    return (
        min(0, math.ceil((shell.cab_line_mm - TOUCHING_MM - root.low_mm[0]) / step_mm)),
        max(0, math.floor((rear_mm + TOUCHING_MM - root.high_mm[0]) / step_mm)),
    )
