"""How a module can stand: as it does, mirrored to the other wall, turned; and what it takes so."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from coachwright.arrange.floor_groups import Group
from coachwright.layout.model import Layout, PlacedZone
from coachwright.layout.solids import Box, box
from coachwright.model.build import Build, Mounting
from coachwright.model.placement import Point
from coachwright.model.shell import BuildUp, narrowest_half_width_mm
from coachwright.model.vehicle import Shell

_QUARTERS_DEG = (90.0, 270.0)
_WALLS = ("left", "right")


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """A box of a fitting, or one of its access zones.

    Attributes
    ----------
    owner
        Name of the fitting.
    space
        Where it is while its module is not shifted along the van.
    zone
        The zone, where it is one.
    on_wall
        The fitting hangs on a wall and needs one behind it.
    """

    owner: str
    space: Box
    zone: PlacedZone | None = None
    on_wall: bool = False

    @property
    def wish(self) -> str:
        """The zone in words; empty for a solid."""
        return "" if self.zone is None else f"the {self.zone.purpose} of {self.owner} is free"


@dataclass(frozen=True, kw_only=True, slots=True)
class Motion:
    """How a module is moved before it is shifted along the van.

    Attributes
    ----------
    flip_x
        It is its mirror image about the middle of its root, front to rear.
    flip_y
        It is its mirror image about the centreline, left to right.
    turn_deg
        By which it is turned, anticlockwise from above, about the middle of its root.
    shift_y_mm
        By which it is moved across the van after that.
    """

    flip_x: bool = False
    flip_y: bool = False
    turn_deg: float = 0.0
    shift_y_mm: float = 0.0


STILL = Motion()


@dataclass(frozen=True, kw_only=True, slots=True)
class Pose:
    """One way in which a module can stand.

    Attributes
    ----------
    wall
        ``"left"`` or ``"right"``, where its root stands there; else ``"middle"``.
    root
        Box around its root.
    """

    wall: str
    motion: Motion
    root: Box
    pieces: tuple[Piece, ...]


Place = Callable[[Point], Point]
"""Where a point of the van goes."""


def poses_of(group: Group, build: Build, layout: Layout) -> tuple[Pose, ...]:
    """Return the ways in which a module can stand, the present one first.

    Parameters
    ----------
    group
        The module.
    build, layout
        As they are.
    """
    pieces = tuple(pieces_of(group.names, build, layout))
    found: dict[frozenset[tuple[object, ...]], Pose] = {}
    for motion in _motions(group, build.vehicle.shell, layout.build_up):
        pose = _pose(group, pieces, motion)
        found.setdefault(_looks(pose), pose)
    return tuple(found.values())


def _motions(group: Group, shell: Shell, build_up: BuildUp) -> Iterator[Motion]:
    yield STILL
    if group.pinned:
        return
    if not group.centred:
        yield Motion(flip_y=True)
    if group.reverses:
        yield Motion(flip_x=True)
        if not group.centred:
            yield Motion(flip_x=True, flip_y=True)
    if group.turns:
        for turn_deg in _QUARTERS_DEG:
            for wall in _WALLS:
                shift_mm = _to_wall_mm(group, turn_deg, wall, shell, build_up)
                yield Motion(turn_deg=turn_deg, shift_y_mm=shift_mm)


def _looks(pose: Pose) -> frozenset[tuple[object, ...]]:
    """Return what a pose takes, so that poses that take the same are one."""
    return frozenset(
        (
            piece.owner,
            piece.wish,
            tuple(round(place) for place in (*piece.space.low_mm, *piece.space.high_mm)),
        )
        for piece in pose.pieces
    )


def pieces_of(names: frozenset[str], build: Build, layout: Layout) -> Iterator[Piece]:
    """Yield the boxes of fittings and their zones that were not given up.

    Parameters
    ----------
    names
        Of the fittings.
    build, layout
        As they are.
    """
    hung = {f.name for f in build.fittings if f.fitting.mounting is Mounting.WALL}
    for body in layout.solids:
        if body.name in names:
            for part in body.boxes:
                yield Piece(owner=body.name, space=part, on_wall=body.name in hung)
    for zone in layout.zones:
        if zone.fitting in names and zone.waived is None:
            yield Piece(owner=zone.fitting, space=zone.space, zone=zone)


def _pose(group: Group, pieces: Sequence[Piece], motion: Motion) -> Pose:
    place = placing(group, motion)
    root = moved_box(group.bounds, place)
    return Pose(
        wall=_wall(root, group),
        motion=motion,
        root=root,
        pieces=tuple(
            Piece(
                owner=piece.owner,
                space=moved_box(piece.space, place),
                zone=piece.zone,
                on_wall=piece.on_wall,
            )
            for piece in pieces
        ),
    )


def placing(group: Group, motion: Motion) -> Place:
    """Return where a motion takes the points of a module.

    Parameters
    ----------
    group
        The module.
    motion
        Of it.

    Notes
    -----
    Flipped: x → 2 x0 − x, y → −y.  Turned by 90 degrees about (x0, y0): (x, y) → (x0 − (y − y0),
    y0 + (x − x0)); by 270 degrees the other way round.
    """
    low, high = group.bounds.low_mm, group.bounds.high_mm
    x0_mm, y0_mm = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2

    def place(point_mm: Point) -> Point:
        x_mm, y_mm, z_mm = point_mm
        if motion.turn_deg == _QUARTERS_DEG[0]:
            x_mm, y_mm = x0_mm - (y_mm - y0_mm), y0_mm + (x_mm - x0_mm)
        elif motion.turn_deg == _QUARTERS_DEG[1]:
            x_mm, y_mm = x0_mm + (y_mm - y0_mm), y0_mm - (x_mm - x0_mm)
        if motion.flip_x:
            x_mm = 2 * x0_mm - x_mm
        if motion.flip_y:
            y_mm = -y_mm
        return (x_mm, y_mm + motion.shift_y_mm, z_mm)

    return place


def moved_box(space: Box, place: Place) -> Box:
    """Return where a box goes."""
    return box(place(space.low_mm), place(space.high_mm))


def _wall(root: Box, group: Group) -> str:
    if group.centred:
        return "middle"
    return "left" if root.low_mm[1] + root.high_mm[1] < 0 else "right"


def _to_wall_mm(
    group: Group, turn_deg: float, wall: str, shell: Shell, build_up: BuildUp
) -> float:
    """Return by how much a turned module is moved so that its root stands against a wall."""
    place = placing(group, Motion(turn_deg=turn_deg))
    turned = moved_box(group.bounds, place)
    half_mm = (
        narrowest_half_width_mm(shell, turned.low_mm[2], turned.high_mm[2]) - build_up.walls_mm
    )
    return -half_mm - turned.low_mm[1] if wall == "left" else half_mm - turned.high_mm[1]
