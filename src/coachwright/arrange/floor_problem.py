"""A floor plan as a problem: modules with their poses, what stays, and what is wanted."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from coachwright.arrange.floor_groups import FloorWish, Group, groups_of, staying
from coachwright.arrange.floor_poses import Piece, Pose, pieces_of, poses_of
from coachwright.arrange.floor_room import Surroundings, fits_across
from coachwright.errors import UnknownName
from coachwright.layout import stage as layout_stage
from coachwright.layout.aisles import levels
from coachwright.layout.model import Layout
from coachwright.model.build import Build, Fitted
from coachwright.model.placement import placed
from coachwright.reference import limit, table

STEP_MM = 10
"""Grid of the shifts."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Weight:
    """One row of ``floor_weights``."""

    value: float
    unit: str


@cache
def weight(name: str) -> Weight:
    """Return one row of ``floor_weights``.

    Parameters
    ----------
    name
        Id of a row.

    Raises
    ------
    UnknownName
        Where there is no such row.
    """
    rows = {row["id"]: row for row in table("floor_weights")}
    if name not in rows:
        raise UnknownName("weight", name, rows)
    return Weight(value=float(rows[name]["value"]), unit=rows[name]["unit"])


@dataclass(frozen=True, kw_only=True, slots=True)
class Run:
    """Something that is to be close to something else.

    Attributes
    ----------
    kind
        ``"plumbing"`` or ``"cable"``.
    source, user
        Names of fittings.
    """

    kind: str
    source: str
    user: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorProblem:
    """Everything that a floor plan is made from.

    Attributes
    ----------
    groups
        Modules that are placed, and those that are pinned.
    poses
        Name of each module → its poses; of a pinned one only the present.
    around
        What stays.
    aisle_mm
        Least width of the way.
    from_cab
        The way begins at the cab; else at a side door.
    """

    build: Build
    layout: Layout
    groups: tuple[Group, ...]
    poses: Mapping[str, tuple[Pose, ...]]
    around: Surroundings
    aisle_mm: int
    from_cab: bool
    runs: tuple[Run, ...]

    @property
    def placed(self) -> tuple[Group, ...]:
        """The modules that are placed."""
        return tuple(group for group in self.groups if not group.pinned)


def floor_problem(build: Build, wish: FloorWish) -> FloorProblem:
    """Return the problem of placing the modules of a build.

    Parameters
    ----------
    build
        As it is.
    wish
        What is placed, pinned, freed and turned.
    """
    layout = layout_stage.stage(build)
    groups = groups_of(build, wish)
    openings = frozenset(f.name for f in build.fittings if f.part.opening is not None)
    kept = tuple(staying(build, groups))
    least_mm = limit("layout.way-difficult").value if wish.aisle_mm is None else wish.aisle_mm
    return FloorProblem(
        build=build,
        layout=layout,
        groups=groups,
        poses={
            group.name: tuple(
                pose
                for number, pose in enumerate(poses_of(group, build, layout))
                if number == 0 or fits_across(pose, build, layout, openings)
            )
            for group in groups
        },
        around=Surroundings(
            build=build,
            layout=layout,
            staying=tuple(pieces_of(frozenset(f.name for f in kept), build, layout)),
            keepers=dict(_keepers(kept, groups)),
            parts={f.name: f.part for f in build.fittings},
        ),
        aisle_mm=math.ceil(least_mm),
        from_cab=_open_to_cab(layout, least_mm),
        runs=tuple(_runs(build)),
    )


def _keepers(kept: Sequence[Fitted], groups: Sequence[Group]) -> Iterator[tuple[str, str]]:
    heads = {name: group.name for group in groups for name in group.names}
    for fitted in kept:
        yield fitted.name, f"{heads.get(fitted.name, fitted.name)} stays where it is"


def _open_to_cab(layout: Layout, least_mm: float) -> bool:
    """Say whether people pass from the cab to a side door now, or there is no side door."""
    ways = [aisle for aisle in layout.aisles if aisle.way.startswith("cab to ") and not aisle.rear]
    return not ways or all(aisle.passage.width_mm >= least_mm for aisle in ways)


def _runs(build: Build) -> Iterator[Run]:
    inside = [
        f for f in build.fittings if f.fitting.mounting.value in ("floor", "wall", "ceiling")
    ]
    sources = [f for f in inside if f.part.pump is not None] or [
        f for f in inside if f.part.tank is not None
    ]
    for fitted in inside:
        part = fitted.part
        wet = (part.water_outlet, part.water_heater, part.toilet, part.tank)
        if sources and fitted is not sources[0] and any(facet is not None for facet in wet):
            yield Run(kind="plumbing", source=sources[0].name, user=fitted.name)
    batteries = [f for f in inside if f.part.battery is not None]
    for fitted in inside:
        if batteries and _draw_w(fitted) >= weight("heavy-load").value:
            yield Run(kind="cable", source=batteries[0].name, user=fitted.name)


def _draw_w(fitted: Fitted) -> float:
    part = fitted.part
    if part.inverter is not None:
        return part.inverter.continuous_w
    modes = [
        mode.draw_w
        for load in (part.dc_load, part.ac_load)
        if load is not None
        for mode in load.modes
    ]
    return max(modes, default=0.0)


def middle_mm(fitted: Fitted) -> tuple[float, float]:
    """Return the middle of a fitting from above. [mm]."""
    where = placed(fitted)
    return (
        (where.low_mm[0] + where.high_mm[0]) / 2,
        (where.low_mm[1] + where.high_mm[1]) / 2,
    )


def walked(piece: Piece, problem: FloorProblem) -> bool:
    """Say whether a piece stands in the way of who walks through the van."""
    floor_mm = problem.layout.build_up.floor_mm
    heights = levels()
    return (
        piece.zone is None
        and piece.space.low_mm[2] < floor_mm + heights[-1].to_mm
        and piece.space.high_mm[2] > floor_mm + heights[0].from_mm
    )
