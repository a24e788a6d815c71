"""Fittings against the shell and against each other."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachwright.layout.model import Clash, ShellFit
from coachwright.layout.solids import Box, Solid, apart, box, overlap, solid
from coachwright.model.placement import Point
from coachwright.model.shell import BuildUp, half_width_mm
from coachwright.model.vehicle import Shell


@dataclass(frozen=True, kw_only=True, slots=True)
class _Distance:
    spare_mm: float
    face: str
    corner_mm: Point


def shell_fit(*, body: Solid, shell: Shell, build_up: BuildUp) -> ShellFit:
    """Return how far a solid stands within the finished shell.

    Parameters
    ----------
    body
        In the vehicle's axes.
    shell
        Bare metal.
    build_up
        What the finishes take of it.

    Returns
    -------
    ShellFit
        Smallest distance to a face; negative where the solid stands out of the shell.

    Notes
    -----
    All corners count, and every height between them at which the wall's slope changes.  Walls:
    half width at that height, less the finishes, less abs(y); measured horizontally.  The cab
    line bounds the living space; what stands ahead of it is mounted in the cab.
    """
    worst = min(
        (found for part in body.boxes for found in _distances(part, shell, build_up)),
        key=lambda found: found.spare_mm,
    )
    return ShellFit(
        name=body.name,
        spare_mm=worst.spare_mm,
        face=worst.face,
        corner_mm=worst.corner_mm,
    )


def _distances(part: Box, shell: Shell, build_up: BuildUp) -> Iterator[_Distance]:
    (x0, y0, z0), (x1, y1, z1) = part.low_mm, part.high_mm
    heights = [z0, z1, *(row.z_mm for row in shell.half_widths if z0 < row.z_mm < z1)]
    for height in heights:
        half_mm = half_width_mm(shell, height) - build_up.walls_mm
        yield _Distance(spare_mm=y0 + half_mm, face="left wall", corner_mm=(x0, y0, height))
        yield _Distance(spare_mm=half_mm - y1, face="right wall", corner_mm=(x0, y1, height))
    yield _Distance(
        spare_mm=shell.rear_mm - build_up.doors_mm - x1, face="rear doors", corner_mm=(x1, y0, z0)
    )
    yield _Distance(spare_mm=x0 - shell.cab_line_mm, face="cab line", corner_mm=(x0, y0, z0))
    yield _Distance(spare_mm=z0 - build_up.floor_mm, face="floor", corner_mm=(x0, y0, z0))
    yield _Distance(
        spare_mm=shell.ceiling_mm - build_up.ceiling_mm - z1,
        face="ceiling",
        corner_mm=(x0, y0, z1),
    )


def arch_solids(shell: Shell) -> tuple[Solid, ...]:
    """Return the wheel arches as solids, left and right.

    Notes
    -----
    From the inner face of the arch out to the bare shell at its widest over the arch's height.
    """
    found: list[Solid] = []
    for number, arch in enumerate(shell.wheel_arches, 1):
        outer_mm = _widest_mm(shell, arch.height_mm)
        which = f" {number}" if len(shell.wheel_arches) > 1 else ""
        for side, sign in (("left", -1.0), ("right", 1.0)):
            space = box(
                (arch.x_from_mm, sign * arch.inner_y_mm, 0.0),
                (arch.x_to_mm, sign * outer_mm, arch.height_mm),
            )
            found.append(solid(f"{side} wheel arch{which}", (space,)))
    return tuple(found)


def _widest_mm(shell: Shell, top_mm: float) -> float:
    """Return the largest half-width from the floor up to a height."""
    heights = [0.0, top_mm, *(row.z_mm for row in shell.half_widths if row.z_mm < top_mm)]
    return max(half_width_mm(shell, height) for height in heights)


def clashes(
    *,
    bodies: Sequence[Solid],
    fixed: Sequence[Solid],
    nested: frozenset[frozenset[str]],
    slack_mm: float,
) -> tuple[Clash, ...]:
    """Return the pairs of solids that stand in one place.

    Parameters
    ----------
    bodies
        Fittings.
    fixed
        Parts of the vehicle, such as wheel arches; not compared with each other.
    nested
        Pairs of names that may share space because one is built into the other.
    slack_mm
        Overlaps not deeper than this do not count. [mm]

    Returns
    -------
    tuple of Clash
        Largest shared volume first.

    Notes
    -----
    The solids are sorted along x, and each is compared with those that begin before it ends.

    Examples
    --------
    >>> a = solid("a", (box((0.0, 0.0, 0.0), (100.0, 100.0, 100.0)),))
    >>> b = solid("b", (box((90.0, 0.0, 0.0), (200.0, 100.0, 100.0)),))
    >>> found = clashes(bodies=[a, b], fixed=(), nested=frozenset(), slack_mm=0.5)
    >>> [(clash.one, clash.other, clash.overlap.shift_mm) for clash in found]
    [('a', 'b', 10.0)]
    >>> clashes(bodies=[a, b], fixed=(), nested=frozenset({frozenset("ab")}), slack_mm=0.5)
    ()
    """
    given = {body.name: index for index, body in enumerate(bodies)}
    found = []
    for one, other in _meeting(bodies, fixed, slack_mm):
        if frozenset((one.name, other.name)) in nested:
            continue
        if given.get(other.name, len(given)) < given[one.name]:
            one, other = other, one  # noqa: PLW2901 - named in the order of the build
        shared = overlap(one, other, slack_mm=slack_mm)
        if shared is not None:
            found.append(Clash(one=one.name, other=other.name, overlap=shared))
    return tuple(sorted(found, key=lambda clash: -clash.overlap.volume_l))


def _meeting(
    bodies: Sequence[Solid], fixed: Sequence[Solid], slack_mm: float
) -> Iterator[tuple[Solid, Solid]]:
    """Yield the pairs whose bounds meet; at least the first of each is a fitting."""
    ordered = sorted(bodies, key=lambda body: body.bounds.low_mm[0])
    for index, one in enumerate(ordered):
        end_mm = one.bounds.high_mm[0] - slack_mm
        for other in ordered[index + 1 :]:
            if other.bounds.low_mm[0] >= end_mm:
                break
            if not apart(one.bounds, other.bounds, slack_mm):
                yield one, other
        for part in fixed:
            if not apart(one.bounds, part.bounds, slack_mm):
                yield one, part
