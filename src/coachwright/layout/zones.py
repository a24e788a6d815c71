"""Access zones: the spaces that must stay free around a fitting."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from coachwright.layout.doors import hole_of
from coachwright.layout.model import Intrusion, PlacedZone
from coachwright.layout.solids import Box, Solid, box, common_box, overlap, solid, volume_l
from coachwright.layout.standing import Standing
from coachwright.layout.through_shell import shell_intrusions
from coachwright.model.build import INSIDE, Build, Fitted
from coachwright.model.facets import Zone
from coachwright.model.finding import Acceptance
from coachwright.model.placement import point_of

MOVING = frozenset({"drawer", "door swing", "hatch swing", "slide-out travel"})
"""Purposes of zones that a part of the fitting moves through; people use the others."""
EXIT = "exit"


def zone_space(fitted: Fitted, zone: Zone) -> Box:
    """Return an access zone in the vehicle's axes."""
    return box(point_of(fitted, zone.from_mm), point_of(fitted, zone.to_mm))


def free_frac(space: Box, takers: Iterable[Box]) -> float:
    """Return the share of a space that no taker fills.

    Notes
    -----
    The takers' corners cut the space into cells; a cell is free where no taker covers it.  Exact
    for boxes that overlap each other.

    Examples
    --------
    >>> space = box((0.0, 0.0, 0.0), (10.0, 10.0, 10.0))
    >>> free_frac(space, [box((5.0, 0.0, 0.0), (15.0, 10.0, 10.0))] * 2)
    0.5
    """
    inside = [shared for taker in takers if (shared := common_box(space, taker)) is not None]
    if not inside:
        return 1.0
    cuts = [
        sorted(
            {space.low_mm[axis], space.high_mm[axis]}
            | {edge for part in inside for edge in (part.low_mm[axis], part.high_mm[axis])}
        )
        for axis in range(3)
    ]
    taken_l = 0.0
    for x0, x1 in pairwise(cuts[0]):
        for y0, y1 in pairwise(cuts[1]):
            for z0, z1 in pairwise(cuts[2]):
                middle = ((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2)
                if any(_holds(part, middle) for part in inside):
                    taken_l += volume_l(Box(low_mm=(x0, y0, z0), high_mm=(x1, y1, z1)))
    return 1.0 - taken_l / volume_l(space)


def _holds(part: Box, point_mm: tuple[float, float, float]) -> bool:
    return all(
        low <= value <= high
        for low, value, high in zip(part.low_mm, point_mm, part.high_mm, strict=True)
    )


def placed_zones(here: Standing) -> tuple[PlacedZone, ...]:
    """Return every access zone of a build and what stands in it.

    Notes
    -----
    A fitting does not block its own zone, nor does what it is built into or what is built into it,
    nor what carries it, nor a part whose facet the zone may hold.  What stands on it does.

    A zone inside the van that reaches through the shell is blocked by it, except where it runs
    through a door: a part in motion within the clear rectangle, people within the clear width.  A
    zone that is always kept free runs through no door, because doors are mostly closed; an exit
    does.  Where a zone reaches through the rear end the rear doors stand open, with what hangs on
    them.
    """
    return tuple(
        _placed_zone(here, fitted, zone)
        for fitted in here.build.fittings
        if fitted.part.access is not None
        for zone in fitted.part.access.zones
    )


def _placed_zone(here: Standing, fitted: Fitted, zone: Zone) -> PlacedZone:
    space = zone_space(fitted, zone)
    takers = (*_takers(here, fitted, zone, space), *here.arches)
    intrusions = [
        *_by_solids(space, takers, here.slack_mm),
        *_by_shell(here, fitted, zone, space),
    ]
    intrusions.sort(key=lambda found: -found.depth_mm)
    names = {found.name for found in intrusions}
    return PlacedZone(
        fitting=fitted.name,
        purpose=zone.purpose,
        space=space,
        intrusions=tuple(intrusions),
        free_frac=free_frac(
            space, [part for taker in takers if taker.name in names for part in taker.boxes]
        ),
        waived=_waiver(here.build, fitted.name, zone.purpose),
        shares_with=zone.shares_with,
        always=zone.always,
    )


def _takers(here: Standing, fitted: Fitted, zone: Zone, space: Box) -> Iterator[Solid]:
    """Yield the fittings that can stand in the way of a zone, with the doors as it needs them."""
    through_rear = space.high_mm[0] > here.build.vehicle.shell.rear_mm + here.slack_mm
    held_by = here.kin.carriers[fitted.name]
    for other in here.build.fittings:
        name = other.name
        if (
            name == fitted.name
            or name not in here.solids
            or name in held_by
            or frozenset((name, fitted.name)) in here.kin.nested
            or any(getattr(other.part, facet, None) is not None for facet in zone.may_hold)
        ):
            continue
        closed = here.solids[name]
        yield here.opened.get(name, closed) if through_rear else closed


def _by_solids(space: Box, takers: Iterable[Solid], slack_mm: float) -> Iterator[Intrusion]:
    as_solid = solid("", (space,))
    for taker in takers:
        shared = overlap(as_solid, taker, slack_mm=slack_mm)
        if shared is not None:
            yield Intrusion(name=taker.name, depth_mm=shared.shift_mm)


def _by_shell(here: Standing, fitted: Fitted, zone: Zone, space: Box) -> tuple[Intrusion, ...]:
    if fitted.fitting.mounting not in INSIDE:
        return ()
    vehicle = here.build.vehicle
    doors = () if zone.always and zone.purpose != EXIT else vehicle.apertures
    return shell_intrusions(
        space=space,
        vehicle=vehicle,
        build_up=here.build_up,
        holes=[hole_of(door, any_height=zone.purpose not in MOVING) for door in doors],
        slack_mm=here.slack_mm,
    )


def _waiver(build: Build, name: str, purpose: str) -> Acceptance | None:
    for waiver in build.waivers:
        if waiver.fitting == name and waiver.purpose in ("", purpose):
            return Acceptance(role=waiver.role, reason=waiver.reason)
    return None
