"""Access zones: the spaces that must stay free around a fitting."""

from collections.abc import Iterable, Sequence

from coachwright.layout.fit import shell_fit
from coachwright.layout.model import PlacedZone
from coachwright.layout.solids import Box, Solid, box, common_box, overlap, solid, volume_l
from coachwright.model.build import INSIDE, Build, Fitted
from coachwright.model.facets import Zone
from coachwright.model.placement import point_of
from coachwright.model.shell import BuildUp

SLACK_MM = 1.0
"""Intrusions not deeper than this do not count."""


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
    for x0, x1 in zip(cuts[0], cuts[0][1:], strict=False):
        for y0, y1 in zip(cuts[1], cuts[1][1:], strict=False):
            for z0, z1 in zip(cuts[2], cuts[2][1:], strict=False):
                middle = ((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2)
                if any(_holds(part, middle) for part in inside):
                    taken_l += volume_l(Box(low_mm=(x0, y0, z0), high_mm=(x1, y1, z1)))
    return 1.0 - taken_l / volume_l(space)


def _holds(part: Box, point_mm: tuple[float, float, float]) -> bool:
    return all(
        low <= value <= high
        for low, value, high in zip(part.low_mm, point_mm, part.high_mm, strict=True)
    )


def placed_zones(
    *, build: Build, solids: Sequence[Solid], fixed: Sequence[Solid], build_up: BuildUp
) -> tuple[PlacedZone, ...]:
    """Return every access zone of a build and what stands in it.

    Parameters
    ----------
    build
        The fittings, their zones and the waivers.
    solids
        The fittings as solids.
    fixed
        Wheel arches and the like.
    build_up
        What the finishes take of the shell.

    Notes
    -----
    A fitting does not block its own zone, nor does what it is built into or what is built into it,
    what stands on it, nor a part whose facet the zone may hold.  A zone inside the van that
    reaches through the shell is blocked by the shell.
    """
    found = []
    for fitted in build.fittings:
        for zone in fitted.part.access.zones if fitted.part.access else ():
            ignored = _ignored(build, fitted, zone)
            takers = [body for body in (*solids, *fixed) if body.name not in ignored]
            found.append(_placed_zone(build, fitted, zone, takers, build_up))
    return tuple(found)


def _placed_zone(
    build: Build,
    fitted: Fitted,
    zone: Zone,
    takers: Sequence[Solid],
    build_up: BuildUp,
) -> PlacedZone:
    space = zone_space(fitted, zone)
    as_solid = solid(f"{zone.purpose} of {fitted.name}", (space,))
    depths_mm = {
        taker.name: shared.shift_mm
        for taker in takers
        if (shared := overlap(as_solid, taker, slack_mm=SLACK_MM)) is not None
    }
    if fitted.fitting.mounting in INSIDE:
        fit = shell_fit(body=as_solid, shell=build.vehicle.shell, build_up=build_up)
        if fit.spare_mm < -SLACK_MM and fit.face != "cab line":
            depths_mm[f"the {fit.face}"] = -fit.spare_mm
    blocked_by = tuple(sorted(depths_mm, key=lambda name: -depths_mm[name]))
    boxes = [part for taker in takers if taker.name in depths_mm for part in taker.boxes]
    return PlacedZone(
        fitting=fitted.name,
        purpose=zone.purpose,
        space=space,
        blocked_by=blocked_by,
        free_frac=free_frac(space, boxes),
        depth_mm=max(depths_mm.values(), default=0.0),
        waived=_waived(build, fitted.name, zone.purpose),
        shares_with=zone.shares_with,
        always=zone.always,
    )


def _ignored(build: Build, fitted: Fitted, zone: Zone) -> set[str]:
    own = {fitted.name, fitted.fitting.within, fitted.fitting.on}
    for other in build.fittings:
        if fitted.name in (other.fitting.within, other.fitting.on) or any(
            getattr(other.part, facet, None) is not None for facet in zone.may_hold
        ):
            own.add(other.name)
    return own


def _waived(build: Build, name: str, purpose: str) -> str:
    for waiver in build.waivers:
        if waiver.fitting == name and waiver.purpose in ("", purpose):
            return f"{waiver.role}: {waiver.reason}"
    return ""
