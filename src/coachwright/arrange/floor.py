"""Propose floor plans: where the modules of a build can stand, best first."""

import math
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from coachwright.arrange.checking import Checked, Judge, checked, judge_of
from coachwright.arrange.floor_conflict import colliding
from coachwright.arrange.floor_goals import SCALE, add_goals, axle_spare
from coachwright.arrange.floor_groups import FloorWish, Group
from coachwright.arrange.floor_measures import axle_spares_kg, measured, points_count
from coachwright.arrange.floor_model import (
    FloorModel,
    add_apart,
    add_difference,
    add_poses,
    add_room,
    add_twins,
)
from coachwright.arrange.floor_moving import Stand, moved_fittings
from coachwright.arrange.floor_poses import Motion
from coachwright.arrange.floor_problem import FloorProblem, floor_problem
from coachwright.arrange.floor_way import add_way, add_way_in
from coachwright.arrange.model import FloorPlan, FloorProposal, ModulePlace
from coachwright.arrange.rebuilding import rebuilt
from coachwright.arrange.solving import Better, Proof, Search, solve
from coachwright.model.build import Build
from coachwright.units import told

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpSolver

MOST_PLANS = 5
_SHARE_FRAC = 0.4
"""Share of the time left that each plan gets."""
_LEAST_S = 0.2
Told = Callable[[str], None]


@dataclass(frozen=True, kw_only=True, slots=True)
class _Found:
    """A solution of the solver."""

    stands: tuple[Stand, ...]
    way_ends_mm: float
    proof: Proof


def propose_floor(
    build: Build,
    wish: FloorWish,
    search: Search,
    *,
    most: int = MOST_PLANS,
    on_better: Better | None = None,
    on_plan: Told = lambda _words: None,
) -> FloorProposal:
    """Return floor plans that differ clearly, best first, or the wishes that collide.

    Parameters
    ----------
    build
        As it is.
    wish
        What is placed, pinned, freed and turned.
    search
        Limits of all searches together.
    most
        So many plans at most.
    on_better
        Told of each better result of a search.
    on_plan
        Told in words how far it is.

    Raises
    ------
    UnknownName
        Where a name is none of a module.
    CallError
        Where the build has no module.

    Notes
    -----
    Each plan is found by the solver, built, and checked by the layout's own rules before it is
    shown; one that fails is dropped and said.  After an interrupt no further search is begun.
    """
    began_s = time.monotonic()
    problem = floor_problem(build, wish)
    floor = floor_model(problem)
    floor.model.add_bool_and(list(floor.wishes.values())).with_name("all-wishes")
    add_goals(floor, axle_spare(*axle_spares_kg(build)))
    plans: list[FloorPlan] = []
    dropped: list[tuple[str, ...]] = []
    first_s = None
    ending = _Ending()
    judge = judge_of(build)
    ends_s = began_s + search.limit_s
    with suppress(KeyboardInterrupt):  # what is found is shown
        for found in _searches(
            floor, search, most, ends_s=ends_s, ending=ending, on_better=on_better
        ):
            plan, faults = _plan(problem, judge, found)
            if plan is None:
                dropped.append(faults)
            else:
                plans.append(plan)
                first_s = time.monotonic() - began_s if first_s is None else first_s
            on_plan(f"{len(plans)} plans, {len(dropped)} dropped")
            if len(plans) == most:
                break
    conflict: tuple[str, ...] = ()
    if not plans and not dropped and ending.proof is not None and ending.proof.impossible:
        on_plan("looking for what collides")
        conflict = colliding(floor_model(problem), search)
    return FloorProposal(
        plans=tuple(sorted(plans, key=lambda plan: -plan.points_count)),
        dropped=tuple(dropped),
        conflict=conflict,
        complete=ending.proof is not None and ending.proof.impossible,
        first_s=first_s,
        took_s=time.monotonic() - began_s,
        notes=tuple(_notes(problem, plans)),
    )


def floor_model(problem: FloorProblem) -> FloorModel:
    """Return the model of a floor plan, with no wish fixed and nothing to be maximised."""
    from ortools.sat.python import cp_model  # noqa: PLC0415  # half a second

    model = cp_model.CpModel()
    floor = FloorModel(model=model, problem=problem, relaxed=model.new_bool_var("relaxed"))
    add_poses(floor)
    add_room(floor)
    add_apart(floor)
    add_twins(floor)
    add_way(floor)
    add_way_in(floor)
    return floor


@dataclass(kw_only=True, slots=True)
class _Ending:
    """How the last search ended, where it found nothing."""

    proof: Proof | None = None


def _searches(
    floor: FloorModel,
    limits: Search,
    most: int,
    *,
    ends_s: float,
    ending: _Ending,
    on_better: Better | None,
) -> Iterator[_Found]:
    """Yield one solution after the other, each clearly different from all before it."""
    for number in range(2 * most):
        left_s = ends_s - time.monotonic()
        if left_s < _LEAST_S and number:
            return
        share_s = max(_LEAST_S, left_s * _SHARE_FRAC)
        solver, proof = solve(floor.model, replace(limits, limit_s=share_s), on_better)
        if not proof.found:
            ending.proof = proof
            return
        found = _Found(
            stands=floor.stands(solver), way_ends_mm=_way_ends_mm(floor, solver), proof=proof
        )
        yield found
        if proof.stopped:
            return
        add_difference(floor, found.stands, f"unlike-{number}")


def _way_ends_mm(floor: FloorModel, solver: "CpSolver") -> float:
    return 0.0 if floor.way_ends is None else float(solver.value(floor.way_ends))


def _plan(
    problem: FloorProblem, judge: Judge, found: _Found
) -> tuple[FloorPlan | None, tuple[str, ...]]:
    """Return the plan, or why it failed its check."""
    changed = moved_fittings(problem.build, found.stands)
    build = rebuilt(problem.build, changed=changed)
    judged = _judged(judge, build, found.stands)
    if judged.faults:
        return None, judged.faults
    measures = measured(problem, build, judged.layout, found.way_ends_mm)
    if measures.aisle_mm < problem.aisle_mm:
        return None, (f"the way is {told(measures.aisle_mm, 'mm')} wide",)
    return (
        FloorPlan(
            places=tuple(_places(found.stands)),
            measures=measures,
            points_count=points_count(measures),
            missing_points=math.ceil((found.proof.bound - found.proof.value) / SCALE),
            proof=found.proof,
            fittings=tuple(changed.values()),
            build=build,
            cautions=judged.cautions,
            way_ends_mm=found.way_ends_mm,
            present=not changed,
        ),
        (),
    )


def _judged(judge: Judge, build: Build, stands: Sequence[Stand]) -> Checked:
    heads = {name: stand.group.name for stand in stands for name in stand.group.names}
    moved = {name for stand in stands if not stand.stays for name in stand.group.names}
    return checked(
        judge,
        build,
        moved,
        lambda one, other: one in heads and heads.get(one) == heads.get(other),
    )


def _places(stands: Sequence[Stand]) -> Iterator[ModulePlace]:
    for stand in sorted(stands, key=lambda each: each.low_x_mm):
        yield ModulePlace(
            name=stand.group.name,
            wall=stand.pose.wall,
            from_mm=stand.low_x_mm,
            to_mm=stand.high_x_mm,
            moved=not stand.stays,
            turned=_turned(stand.pose.motion),
        )


def _turned(motion: Motion) -> str:
    if motion.turn_deg:
        return f"by {motion.turn_deg:.0f} deg"
    if motion.flip_x and motion.flip_y:
        return "half turned"
    if motion.flip_x:
        return "front to rear"
    return "left to right" if motion.flip_y else ""


def _bought_mirrored(group: Group, plans: Sequence[FloorPlan]) -> Iterator[str]:
    """Yield what a plan mirrors although a shop buys it."""
    made = ("carcass", "bed")
    for member in group.members:
        mirrors = {
            fitting.mirror
            for plan in plans
            for fitting in plan.fittings
            if fitting.name == member.name
        }
        joinery = any(getattr(member.part, facet) is not None for facet in made)
        if (not member.fitting.mirror) in mirrors and not joinery:
            yield f"{member.name} is mirrored in some plans; can it be had so?"


def _notes(problem: FloorProblem, plans: Sequence[FloorPlan]) -> Iterator[str]:
    moved = {place.name for plan in plans for place in plan.places if place.moved}
    for group in problem.placed:
        belted = [
            m.name for m in group.members if m.part.seat is not None and m.part.seat.travel_seat
        ]
        if belted and group.name in moved:
            yield (
                f"{belted[0]} moves in some plans: its anchorages were tested where they were; "
                "a moved travel seat needs proof anew from those who may give it"
            )
        yield from _bought_mirrored(group, plans)
        openings = [m.name for m in group.members if m.part.opening is not None]
        if openings and group.name in moved:
            yield f"{', '.join(openings)}: moves with {group.name}; is the hole cut already?"
