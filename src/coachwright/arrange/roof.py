"""Propose solar panels for a roof: the most that it can carry, with proof."""

from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import islice

from coachwright.arrange.checking import checked, judge_of
from coachwright.arrange.model import ObstacleCost, PanelPlace, RoofPlan
from coachwright.arrange.packing import Field, Packed, Spot, pack
from coachwright.arrange.rebuilding import let_go, rebuilt
from coachwright.arrange.roof_field import (
    RoofField,
    RoofWish,
    face_mm,
    is_bonded,
    is_roof_panel,
    mass_kg,
    present_breaches,
    roof_field,
)
from coachwright.arrange.solving import Better, Search
from coachwright.errors import CallError
from coachwright.model.build import Build, Fitting, Mounting
from coachwright.model.part import Part
from coachwright.model.placement import turned_size_mm
from coachwright.model.position import read_position

ValueOf = Callable[[Part, PanelPlace], int]
"""What a panel is worth where it lies, as a whole number: watts, or its energy under the shade of
what stands around it."""
ValueWithout = Callable[[frozenset[str]], ValueOf]
"""The same where some obstacles are left out."""
ALL_OBSTACLES = "all of them"
_QUARTER_DEG = 90.0


def rated_watts(part: Part, _place: PanelPlace) -> int:
    """Return a panel's rated power, wherever it lies."""
    return 0 if part.solar_panel is None else round(part.solar_panel.rated_w)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Task:
    """One roof with everything that its searches share."""

    build: Build
    wish: RoofWish
    roof: RoofField
    search: Search
    value_without: ValueWithout


def propose_roof(
    build: Build,
    wish: RoofWish,
    search: Search,
    *,
    value_of: ValueOf = rated_watts,
    value_without: ValueWithout | None = None,
    on_better: Better | None = None,
    on_obstacle: Callable[[str], None] = lambda _name: None,
) -> RoofPlan:
    """Return the panels that give the most, and what each obstacle costs.

    Parameters
    ----------
    build
        As it is; its panels on the roof are exchanged.
    wish
        Panels to choose from.
    search
        Limits of each single search.
    value_of
        What a panel is worth at its place.
    value_without
        The same where some obstacles are left out; None where it does not depend on them.
    on_better
        Told of each better result of the first search.
    on_obstacle
        Told which obstacle is left out next.

    Raises
    ------
    CallError
        Where there is no panel to choose from.

    Notes
    -----
    Each obstacle's cost: best without it less best with everything.  After an interrupt no further
    search is begun.
    """
    if not wish.panels:
        raise CallError("no panel to choose from; name parts that are solar panels for the roof")
    task = _Task(
        build=build,
        wish=wish,
        roof=roof_field(build, wish),
        search=search,
        value_without=value_without or (lambda _out: value_of),
    )
    packed = _packed(task, value_of, on_better=on_better)
    plan = _plan(task, packed, value_of)
    costs: list[ObstacleCost] = []
    with suppress(KeyboardInterrupt):  # what is found is shown
        for cost in _costs(task, packed, plan.total_w, on_obstacle):
            costs.append(cost)  # noqa: PERF402  # one by one, so that an interrupt keeps the first
    return replace(plan, obstacles=tuple(costs))


def _packed(
    task: _Task,
    value_of: ValueOf,
    *,
    field: Field | None = None,
    on_better: Better | None = None,
) -> Packed:
    roof = task.roof

    def allowed(spot: Spot) -> bool:
        low_mm, high_mm = roof.rows.get((spot.kind.name, spot.turned), (1, 0))
        return low_mm <= spot.low_mm[1] <= high_mm or bool(_platform(task, spot))

    return pack(
        field=field or roof.field,
        kinds=roof.kinds,
        value_of=lambda spot: value_of(roof.parts[spot.kind.name], _place(task, spot, "")),
        search=task.search,
        allowed=allowed,
        on_better=on_better,
    )


def _costs(
    task: _Task, packed: Packed, total_w: float, on_obstacle: Callable[[str], None]
) -> Iterator[ObstacleCost]:
    stopped = packed.proof.stopped
    field, names = task.roof.field, task.roof.obstacles
    left_out = {name: frozenset({name}) for name in names}
    if len(names) > 1:
        left_out[ALL_OBSTACLES] = frozenset(names)
    for name, out in left_out.items():
        if stopped:
            return
        on_obstacle(name)
        blocks = tuple(block for block in field.blocks if block.name not in out)
        without = _packed(task, task.value_without(out), field=replace(field, blocks=blocks))
        stopped = without.proof.stopped
        without_w = sum(_rated_w(task, spot) for spot in without.spots)
        yield ObstacleCost(
            name=name,
            without_w=without_w,
            cost_w=max(0.0, without_w - total_w),
            cost_value=max(0, without.proof.value - packed.proof.value),
            proven=without.proof.proven and packed.proof.proven,
        )


def _rated_w(task: _Task, spot: Spot) -> float:
    panel = task.roof.parts[spot.kind.name].solar_panel
    return 0.0 if panel is None else panel.rated_w


def _place(task: _Task, spot: Spot, name: str) -> PanelPlace:
    """Return where the panel itself lies: in the middle of what it and its mounting take."""
    part, rack = task.roof.parts[spot.kind.name], _platform(task, spot)
    turn_deg = _QUARTER_DEG if spot.turned else 0.0
    size_mm = turned_size_mm(part.body.size_mm, turn_deg)
    low = [
        round(
            task.roof.origin_mm[axis]
            + (spot.low_mm[axis] + spot.high_mm[axis] - size_mm[axis]) / 2,
            1,
        )
        for axis in (0, 1)
    ]
    return PanelPlace(
        name=name,
        part=part.id,
        turned=spot.turned,
        low_mm=(low[0], low[1]),
        high_mm=(low[0] + size_mm[0], low[1] + size_mm[1]),
        rated_w=_rated_w(task, spot),
        face_mm=face_mm(task.build, part, rack, task.wish.mount),
        value=0,
        mass_kg=mass_kg(part, None if rack else task.wish.mount),
    )


def _platform(task: _Task, spot: Spot) -> str:
    """Return the rack on which a spot stands, or nothing."""
    for block in task.roof.field.blocks:
        if block.platform and all(
            block.low_mm[axis] <= spot.low_mm[axis] and spot.high_mm[axis] <= block.high_mm[axis]
            for axis in (0, 1)
        ):
            return block.name
    return ""


def _plan(task: _Task, packed: Packed, value_of: ValueOf) -> RoofPlan:
    build, roof = task.build, task.roof
    names = _new_names(build, roof.replaced, len(packed.spots))
    panels, fittings, parts = [], [], []
    for spot, (panel_name, mount_name) in zip(packed.spots, names, strict=True):
        place = _place(task, spot, panel_name)
        part = roof.parts[spot.kind.name]
        panels.append(replace(place, value=value_of(part, place)))
        for fitting, of_part in _fittings(task, spot, place, mount_name):
            fittings.append(fitting)
            parts.append(of_part)
    new = rebuilt(
        build,
        changed=let_go(build, roof.replaced),
        removed=roof.replaced,
        added=list(zip(fittings, parts, strict=True)),
    )
    judged = checked(judge_of(build), new, [f.name for f in fittings], lambda _one, _other: False)
    total_w = sum(panel.rated_w for panel in panels)
    return RoofPlan(
        panels=tuple(panels),
        total_w=total_w,
        proof=packed.proof,
        mass_kg=sum(panel.mass_kg for panel in panels),
        present_w=sum(
            fitted.part.solar_panel.rated_w
            for fitted in build.fittings
            if is_roof_panel(fitted) and fitted.part.solar_panel is not None
        ),
        removed=roof.replaced,
        fittings=tuple(fittings),
        build=new,
        obstacles=(),
        faults=judged.faults,
        cautions=judged.cautions,
        notes=tuple(_notes(task, panels)),
    )


def _new_names(build: Build, replaced: Sequence[str], count: int) -> list[tuple[str, str]]:
    """Return names for panels and their mountings that no fitting has that stays."""
    taken = {fitted.name for fitted in build.fittings} - set(replaced)
    numbers = (
        number
        for number in range(1, len(taken) + count + 1)
        if not taken & {f"solar-{number}", f"solar-rails-{number}"}
    )
    return [(f"solar-{number}", f"solar-rails-{number}") for number in islice(numbers, count)]


def _fittings(
    task: _Task, spot: Spot, place: PanelPlace, mount_name: str
) -> Iterator[tuple[Fitting, Part]]:
    part, mount, rack = task.roof.parts[spot.kind.name], task.wish.mount, _platform(task, spot)
    turn_deg = _QUARTER_DEG if spot.turned else 0.0
    carrier = rack
    if not rack and mount is not None and not is_bonded(part):
        size_mm = turned_size_mm(mount.body.size_mm, turn_deg)
        middle = [(place.low_mm[axis] + place.high_mm[axis]) / 2 for axis in (0, 1)]
        carrier = mount_name
        yield (
            _on_roof(
                mount_name,
                mount,
                (middle[0] - size_mm[0] / 2, middle[1] - size_mm[1] / 2),
                turn_deg,
            ),
            mount,
        )
    yield _on_roof(place.name, part, place.low_mm, turn_deg, carrier), part


def _on_roof(
    name: str, part: Part, low_mm: tuple[float, float], turn_deg: float, carrier: str = ""
) -> Fitting:
    height = f"above {carrier}" if carrier else "against roof"
    return Fitting(
        name=name,
        part=part.id,
        at_mm=(low_mm[0], low_mm[1], read_position(height, from_file=True)),
        turn_deg=turn_deg,
        mounting=Mounting.ROOF,
        on=carrier,
    )


def _notes(task: _Task, panels: Sequence[PanelPlace]) -> Iterator[str]:
    breaches = tuple(present_breaches(task.build, task.roof))
    if breaches:
        yield "the panels that are there now do not keep to these distances: " + "; ".join(
            breaches
        )
    kinds = {panel.part for panel in panels}
    if len(kinds) > 1:
        yield (
            f"panels of {len(kinds)} kinds: unlike panels in one string pull each other down; "
            "give each kind its own controller, or ask for fewer kinds"
        )
    if task.wish.mount is None and any(
        not is_bonded(task.roof.parts[panel.part]) for panel in panels
    ):
        yield "rigid panels lie on the roof here: no mounting was named, so none is weighed"
    if task.roof.field.most_g is None:
        yield "the vehicle's record gives no limit for the roof's load; ask its maker"
