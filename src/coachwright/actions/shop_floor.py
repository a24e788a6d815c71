"""The shop floor's list: what a build is made of, where it goes, what is here and what is fitted.

Ticks are kept beside the build, never in it: they change no figure and no digest.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from coachwright.actions.benching import Bench, OnBench
from coachwright.errors import UnknownName
from coachwright.model.build import Build, FinishLayer, Fitted, Mounting, WaterRun
from coachwright.model.placement import turned_size_mm
from coachwright.model.position import Relation
from coachwright.store.records import Step, Tick
from coachwright.units import told

_FLUSH_MM = 1.0
"""Nearer than this is at it."""
_MOST_DEEP = 6
"""Things built into things; a build that goes deeper is refused before."""
_GROUPS: tuple[tuple[str, tuple[Mounting, ...]], ...] = (
    ("Under the van", (Mounting.UNDERBODY,)),
    ("Roof", (Mounting.ROOF,)),
    ("Outside of the body", (Mounting.SIDE, Mounting.HITCH, Mounting.WHEELS)),
    ("Living space, from the floor", (Mounting.FLOOR,)),
    ("Living space, on the walls", (Mounting.WALL,)),
    ("Living space, under the ceiling", (Mounting.CEILING,)),
    ("Cab", (Mounting.CAB,)),
    ("Rear doors", (Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT)),
)
LINING, PIPES = "Insulation and lining", "Pipes and hoses"
GROUPS: tuple[str, ...] = (LINING, *(name for name, _ in _GROUPS), PIPES)
"""In the order in which a van is fitted out: lining before what stands on it."""
_MOUNTED = {
    Mounting.FLOOR: "fixed to the floor",
    Mounting.WALL: "fixed to the wall",
    Mounting.CEILING: "hung from the ceiling",
    Mounting.ROOF: "on the roof, outside",
    Mounting.REAR_DOOR_LEFT: "on the left rear door",
    Mounting.REAR_DOOR_RIGHT: "on the right rear door",
    Mounting.UNDERBODY: "under the floor, outside",
    Mounting.CAB: "in the cab",
    Mounting.HITCH: "on the tow hitch",
    Mounting.SIDE: "on the outside of a wall",
    Mounting.WHEELS: "on the wheels",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark:
    """What was last ticked of one step.

    Attributes
    ----------
    done
        Ticked, and nothing has changed since.
    by, at
        Who ticked, and when; nobody where it was never ticked.
    changed
        What has changed since it was ticked; empty where nothing has.
    """

    done: bool = False
    by: str = ""
    at: datetime | None = None
    changed: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Thing:
    """One line of the list.

    Attributes
    ----------
    key
        What it is called in ticks: a fitting's reference name, or words for a layer or a pipe.
    name
        What the part is called.
    where
        Sentences; quantities are told in no units yet.
    part, place
        Which part it is, and where it stands, as ticks remember it.
    """

    key: str
    name: str
    group: str
    where: tuple[str, ...]
    part: str
    place: str
    here: Mark
    fitted: Mark

    def mark(self, step: Step) -> Mark:
        """Return what was ticked of one step."""
        return self.here if step is Step.HERE else self.fitted


@dataclass(frozen=True, kw_only=True, slots=True)
class FloorList:
    """Everything that is to be fitted in one build, and what was ticked.

    Attributes
    ----------
    ticks
        The last made first.
    """

    things: tuple[Thing, ...]
    ticks: tuple[Tick, ...]

    @property
    def here(self) -> int:
        """How many things are here, or fitted already."""
        return sum(each.here.done or each.fitted.done for each in self.things)

    @property
    def fitted(self) -> int:
        """How many things are fitted."""
        return sum(each.fitted.done for each in self.things)

    def left(self) -> "FloorList":
        """Return the list without what is fitted."""
        rest = tuple(each for each in self.things if not each.fitted.done)
        return FloorList(things=rest, ticks=self.ticks)


def floor_list(bench: Bench, work: OnBench) -> FloorList:
    """Return the shop floor's list of a build.

    Parameters
    ----------
    bench
        Where the ticks are kept.
    work
        The build.
    """
    ticks = bench.store.floor.ticks(work.build_id)
    last = {(each.thing, each.step): each for each in ticks}
    order = {name: number for number, name in enumerate(GROUPS)}
    plain = sorted(_things(work.build), key=lambda each: order[each.group])
    things = tuple(
        Thing(
            key=each.key,
            name=each.name,
            group=each.group,
            where=each.where,
            part=each.part,
            place=each.place,
            here=_mark(last.get((each.key, Step.HERE)), each, placed=False),
            fitted=_mark(last.get((each.key, Step.FITTED)), each, placed=True),
        )
        for each in plain
    )
    return FloorList(things=things, ticks=ticks[::-1])


def tick(
    bench: Bench,
    work: OnBench,
    key: str,
    step: Step,
    *,
    done: bool,
    actor: str,
    at: datetime,
) -> None:
    """Keep that somebody ticked a thing off, or took a tick back.

    Parameters
    ----------
    bench
        Where it is kept.
    work
        The build as it is now.
    key
        Of the thing.
    step
        What is ticked.
    done
        False to take a tick back.
    actor
        Who does it.
    at
        When.

    Raises
    ------
    UnknownName
        Where the build has no such thing.
    NotAllowed
        Where the actor's session has ended.
    """
    things = {each.key: each for each in _things(work.build)}
    if key not in things:
        raise UnknownName("thing to be fitted", key, list(things))
    thing = things[key]
    bench.store.floor.tick(
        work.build_id,
        key,
        step,
        done=done,
        part=thing.part,
        place=thing.place,
        actor=actor,
        at=at,
    )


def _mark(last: Tick | None, thing: Thing, *, placed: bool) -> Mark:
    if last is None:
        return Mark()
    changed = ""
    if last.done and last.part != thing.part:
        changed = f"it was {last.part} then, and is {thing.part} now"
    elif last.done and placed and last.place != thing.place:
        changed = "its place or mounting is another since"
    return Mark(done=last.done and not changed, by=last.actor, at=last.at, changed=changed)


def _things(build: Build) -> Iterator[Thing]:
    seen: dict[str, int] = {}
    for layer in build.finishes:
        key = f"{layer.finish.surface} {layer.part.id}"
        seen[key] = seen.get(key, 0) + 1
        yield _layer(layer, key if seen[key] == 1 else f"{key} {seen[key]}")
    carried: dict[str, list[Fitted]] = {}
    for fitted in build.fittings:
        carried.setdefault(fitted.fitting.within, []).append(fitted)
    for fitted in build.fittings:
        if build.fitted(fitted.fitting.within) is None:
            yield from _with_what_is_in_it(build, fitted, carried, range(_MOST_DEEP))
    for run in build.water_runs:
        yield _run(run)


def _with_what_is_in_it(
    build: Build, fitted: Fitted, carried: dict[str, list[Fitted]], deeper: range
) -> Iterator[Thing]:
    yield _fitting(build, fitted)
    if deeper:
        for inner in carried.get(fitted.name, ()):
            yield from _with_what_is_in_it(build, inner, carried, deeper[1:])


def _fitting(build: Build, fitted: Fitted) -> Thing:
    fitting = fitted.fitting
    written = tuple(each.text for each in fitting.at_mm if isinstance(each, Relation))
    where = [", ".join(_held(build, fitted)), "; ".join(_stands(fitted))]
    if written:
        where.append(f"as drawn: {', '.join(written)}")
    if fitting.note:
        where.append(fitting.note)
    corner = " ".join(f"{place_mm:.0f}" for place_mm in fitted.at_mm)
    turned = f"{fitting.turn_deg:g}{' mirrored' if fitting.mirror else ''}"
    return Thing(
        key=fitting.name,
        name=fitted.part.name,
        group=_group(build, fitted),
        where=tuple(where),
        part=fitted.part.id,
        place=f"{corner}; {turned}; {fitting.mounting.value}; {fitting.within}; {fitting.on}",
        here=Mark(),
        fitted=Mark(),
    )


def _group(build: Build, fitted: Fitted) -> str:
    for _ in range(_MOST_DEEP):
        holder = build.fitted(fitted.fitting.within)
        if holder is None:
            break
        fitted = holder
    return next(name for name, mountings in _GROUPS if fitted.fitting.mounting in mountings)


def _held(build: Build, fitted: Fitted) -> Iterator[str]:
    """Yield in words what holds a fitting."""
    within = build.fitted(fitted.fitting.within)
    carrier = build.fitted(fitted.fitting.on)
    if within is not None:
        yield f"built into {within.part.name} ({within.name})"
    elif carrier is not None:
        yield f"carried by {carrier.part.name} ({carrier.name})"
    else:
        yield _MOUNTED[fitted.fitting.mounting]
    if fitted.fitting.turn_deg:
        yield f"turned {fitted.fitting.turn_deg:.0f}° anticlockwise"
    if fitted.fitting.mirror:
        yield "left and right swapped"


def _stands(fitted: Fitted) -> Iterator[str]:
    """Yield in words where a fitting stands, as one measures it with a tape."""
    body = fitted.part.body
    size_mm = turned_size_mm(body.size_mm, fitted.fitting.turn_deg)
    x_mm, y_mm, z_mm = fitted.at_mm
    along = "behind" if x_mm >= 0.0 else "ahead of"
    yield f"its front edge {_mm(abs(x_mm))} {along} the front axle"
    left_mm, right_mm = -y_mm, y_mm + size_mm[1]
    if right_mm <= _FLUSH_MM:
        yield f"left, {_mm(max(-right_mm, 0.0))} to {_mm(left_mm)} from the middle"
    elif left_mm <= _FLUSH_MM:
        yield f"right, {_mm(max(-left_mm, 0.0))} to {_mm(right_mm)} from the middle"
    else:
        yield f"across the middle, {_mm(left_mm)} to the left and {_mm(right_mm)} to the right"
    if abs(z_mm) <= _FLUSH_MM:
        yield "standing on the load floor"
    else:
        side = "above" if z_mm > 0.0 else "below"
        yield f"its underside {_mm(abs(z_mm))} {side} the load floor"


def _layer(layer: FinishLayer, key: str) -> Thing:
    finish = layer.finish
    thick = f", {_mm(finish.thickness_mm)} thick" if finish.thickness_mm is not None else ""
    area = told(finish.area_m2, "m2")
    return Thing(
        key=key,
        name=layer.part.name,
        group=LINING,
        where=(f"on the {finish.surface}, {area}{thick}",),
        part=layer.part.id,
        place=f"{finish.surface} {finish.area_m2:.2f} {finish.thickness_mm or 0.0:.1f}",
        here=Mark(),
        fitted=Mark(),
    )


def _run(run: WaterRun) -> Thing:
    to = f" to {run.serves}" if run.serves else ""
    laid = _LAID[run.place] + (", drained when there is frost" if run.drained else "")
    return Thing(
        key=f"run {run.name}",
        name=f"Water run {run.name}{to}",
        group=PIPES,
        where=(f"{_mm(run.length_mm)} long, {_mm(run.bore_mm)} bore, laid {laid}",),
        part="",
        place=f"{run.length_mm:.0f} {run.bore_mm:.1f} {run.place} {run.serves}",
        here=Mark(),
        fitted=Mark(),
    )


_LAID = {
    "heated": "in heated air",
    "inside": "inside, in air that is not heated",
    "outside": "outside, under the van",
}


def _mm(length_mm: float) -> str:
    return told(length_mm, "mm")
