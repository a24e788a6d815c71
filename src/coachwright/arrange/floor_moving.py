"""Write down where the fittings of a shifted module stand, as a designer would."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from coachwright.arrange.floor_groups import Group
from coachwright.arrange.floor_poses import STILL, Pose, moved_box, placing
from coachwright.layout.solids import box
from coachwright.model.build import Build, Fitted, Fitting
from coachwright.model.part import Part
from coachwright.model.placement import Point, placed
from coachwright.model.position import AXIS_FACES, Position, Relation, read_position
from coachwright.units import written

_PAIRS = (
    (("behind", "ahead of"), ("flush front", "flush rear")),
    (("right of", "left of"), ("flush left", "flush right"), ("left wall", "right wall")),
)
_OTHER_SIDE = tuple({a: b for pair in pairs for a, b in (pair, pair[::-1])} for pairs in _PAIRS)
"""Words of each axis → words of its mirror image."""
_EVEN_MM = 1.0
"""A centre of mass closer than this to the middle is in the middle."""
_HALF_TURN_DEG = 180.0
_WHOLE_TURN_DEG = 360.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Stand:
    """Where a module stands in a plan."""

    group: Group
    pose: Pose
    shift_mm: int

    @property
    def stays(self) -> bool:
        """Whether it stands as it does now."""
        return not self.shift_mm and self.pose.motion == STILL

    @property
    def low_x_mm(self) -> float:
        """Front of its root."""
        return self.pose.root.low_mm[0] + self.shift_mm

    @property
    def high_x_mm(self) -> float:
        """Rear of its root."""
        return self.pose.root.high_mm[0] + self.shift_mm


def moved_fittings(build: Build, stands: Sequence[Stand]) -> dict[str, Fitting]:
    """Return the fittings of a build that are to be written otherwise.

    Parameters
    ----------
    build
        As it is.
    stands
        Where its modules are to stand.

    Notes
    -----
    What is told by a fitting of the same module, or by a face of the shell, stays told by it, with
    left and right, or front and rear, exchanged where the module is mirrored; everything else
    becomes a length.
    """
    moved = {name: stand for stand in stands if not stand.stays for name in stand.group.names}
    found = {}
    for fitted in build.fittings:
        stand = moved.get(fitted.name)
        if stand is not None:
            found[fitted.name] = _moved(fitted, stand)
        elif any(
            isinstance(each, Relation) and each.target in moved for each in fitted.fitting.at_mm
        ):
            found[fitted.name] = _let_go(fitted, moved)
    return found


def _let_go(fitted: Fitted, moved: Mapping[str, Stand]) -> Fitting:
    at: tuple[Position, ...] = tuple(
        round(place, 2) if isinstance(told, Relation) and told.target in moved else told
        for told, place in zip(fitted.fitting.at_mm, fitted.at_mm, strict=True)
    )
    return fitted.fitting.model_copy(update={"at_mm": at})


def _moved(fitted: Fitted, stand: Stand) -> Fitting:
    fitting, motion = fitted.fitting, stand.pose.motion
    turn_deg = fitting.turn_deg + motion.turn_deg
    mirrored = motion.flip_y != motion.flip_x
    if mirrored:
        # a mirror image of a turned body is its own mirror image turned the other way round
        turn_deg = -turn_deg
    if motion.flip_x:
        turn_deg += _HALF_TURN_DEG
    if mirrored and same_mirrored(fitted.part, 1):
        mirrored = False
    elif mirrored and same_mirrored(fitted.part, 0):
        mirrored = False
        turn_deg += _HALF_TURN_DEG
    return fitting.model_copy(
        update={
            "at_mm": tuple(_positions(fitted, stand)),
            "turn_deg": turn_deg % _WHOLE_TURN_DEG,
            "mirror": fitting.mirror != mirrored,
        }
    )


def same_mirrored(part: Part, axis: int) -> bool:
    """Say whether a part is its own mirror image along one axis of its unturned body.

    Parameters
    ----------
    part
        Body, zones and centre of mass.
    axis
        0 is its length, 1 its width.

    Notes
    -----
    Such a part can stand in a mirrored module as it is, perhaps half turned; what is bought cannot
    be had mirrored.
    """
    size_mm = part.body.size_mm[axis]
    shapes = set(_shapes(part, axis))
    flipped = {
        (kind, round(size_mm - high_mm, 3), round(size_mm - low_mm, 3), others_mm)
        for kind, low_mm, high_mm, others_mm in shapes
    }
    centre_mm = part.body.centre_of_mass_mm()[axis]
    return shapes == flipped and abs(2 * centre_mm - size_mm) < _EVEN_MM


_Shape = tuple[str, float, float, tuple[float, ...]]
"""What it is, its ends along one axis, and all its ends along the others. [mm]"""


def _shapes(part: Part, axis: int) -> Iterator[_Shape]:
    for step in part.body.steps:
        yield _shape("body", step.from_mm, step.to_mm, axis)
    for zone in () if part.access is None else part.access.zones:
        yield _shape(zone.purpose, zone.from_mm, zone.to_mm, axis)
    for place in () if part.seat is None else part.seat.places:
        yield _shape("place", place.reference_mm, place.reference_mm, axis)


def _shape(kind: str, from_mm: Point, to_mm: Point, axis: int) -> _Shape:
    low_mm, high_mm = sorted((from_mm[axis], to_mm[axis]))
    others_mm = tuple(
        round(place, 3)
        for other in range(3)
        if other != axis
        for place in sorted((from_mm[other], to_mm[other]))
    )
    return kind, round(low_mm, 3), round(high_mm, 3), others_mm


def _positions(fitted: Fitted, stand: Stand) -> Iterator[Position]:
    pose = stand.pose
    place = placing(stand.group, pose.motion)
    now = placed(fitted)
    there = moved_box(box(now.low_mm, now.high_mm), place).low_mm
    lengths_mm = (there[0] + stand.shift_mm, there[1], there[2])
    for axis, told in enumerate(fitted.fitting.at_mm):
        kept = None
        if isinstance(told, Relation) and not pose.motion.turn_deg:
            kept = _kept(told, axis, stand)
        elif pose.motion.turn_deg and axis == 1 and fitted.name == stand.group.name:
            kept = read_position(f"against {pose.wall} wall", from_file=True)
        yield round(lengths_mm[axis], 2) if kept is None else kept


def _kept(told: Relation, axis: int, stand: Stand) -> Position | None:
    """Return a relation as it holds in the new place; None where it holds no more."""
    motion = stand.pose.motion
    by_shell = told.target in AXIS_FACES[axis]
    if told.target not in stand.group.names and not by_shell:
        return None
    if by_shell and axis == 0 and (stand.shift_mm or motion.flip_x):
        return None
    flipped = (motion.flip_x, motion.flip_y, False)[axis]
    return _other_side(told, axis) if flipped else told


def _other_side(told: Relation, axis: int) -> Position:
    words = _OTHER_SIDE[axis]
    kind, target = words.get(told.kind, told.kind), words.get(told.target, told.target)
    # from a centre the gap counts rearwards or to the right, from everything else away from it
    from_centre = told.kind == "centred on" or told.target == "centreline"
    gap = f" {written(-told.gap_mm, 'length')}" if told.gap_mm else ""
    if not from_centre:
        as_written = " ".join(told.text.split())
        gap = as_written.removeprefix(f"{told.kind} {told.target}")
    return read_position(f"{kind} {target}{gap}", from_file=True)
