"""Edits that put a part into a build, exchange it for another, or take it out."""

from collections.abc import Iterator
from itertools import count

from coachwright.actions.following import AXES, built_into
from coachwright.actions.placing import Wanted, edits_for, entry_of, fitted_of, written_mm
from coachwright.model.build import Build, BuildSheet, Fitted, Mounting
from coachwright.model.part import Part
from coachwright.model.position import Relation
from coachwright.store.edits import Edit, Put, Take

_BY_FACET: tuple[tuple[str, Mounting], ...] = (
    ("rear_door_carrier", Mounting.REAR_DOOR_LEFT),
    ("hitch_carrier", Mounting.HITCH),
    ("solar_panel", Mounting.ROOF),
    ("roof_rack", Mounting.ROOF),
    ("fan", Mounting.ROOF),
    ("awning", Mounting.SIDE),
    ("ladder", Mounting.SIDE),
    ("tyre", Mounting.WHEELS),
    ("light", Mounting.CEILING),
    ("detector", Mounting.CEILING),
    ("outlet", Mounting.WALL),
)
"""Where a part with a facet usually goes; the first that fits."""
_HEIGHTS: dict[Mounting, str] = {
    Mounting.FLOOR: "against floor",
    Mounting.CAB: "against floor",
    Mounting.WALL: "against floor 1200 mm",
    Mounting.CEILING: "against ceiling",
    Mounting.ROOF: "against roof",
    Mounting.UNDERBODY: "against ground 350 mm",
    Mounting.HITCH: "against ground 450 mm",
    Mounting.SIDE: "against floor 400 mm",
    Mounting.REAR_DOOR_LEFT: "against floor 400 mm",
    Mounting.REAR_DOOR_RIGHT: "against floor 400 mm",
    Mounting.WHEELS: "against ground",
}
_OUTSIDE_REAR = frozenset({Mounting.HITCH, Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT})
_GRID_MM = 10.0


def usual_mounting(part: Part) -> Mounting:
    """Return what a part is usually fixed to; a guess that a person sees and can change."""
    for facet, mounting in _BY_FACET:
        if getattr(part, facet) is not None:
            return mounting
    if part.air_conditioner is not None and part.id.startswith("roof"):
        return Mounting.ROOF
    return Mounting.FLOOR


def add(
    sheet: BuildSheet,
    build: Build,
    part: Part,
    *,
    middle_mm: tuple[float, float] | None = None,
    mounting: Mounting | None = None,
) -> tuple[str, tuple[Edit, ...]]:
    """Return the reference name of a new fitting and the edits that put it in.

    Parameters
    ----------
    sheet, build
        As written, and with everything found.
    part
        What is fitted.
    middle_mm
        Where its middle shall stand along and across the vehicle; in the middle of the living
        space where not given.
    mounting
        What it is fixed to; the usual where not given.
    """
    name = _free_name(build, part)
    fixed = mounting or usual_mounting(part)
    shell = build.vehicle.shell
    x_mm, y_mm = middle_mm or ((shell.cab_line_mm + shell.rear_mm) / 2, 0.0)
    length_mm, width_mm, _ = part.body.size_mm
    at = [_grid(x_mm - length_mm / 2), _grid(y_mm - width_mm / 2), _HEIGHTS[fixed]]
    if fixed in _OUTSIDE_REAR:
        at[0] = "against outside rear"
    if fixed is Mounting.SIDE:
        at[1] = f"against outside {'left' if y_mm < 0 else 'right'}"
    entry = {"name": name, "part": part.id, "at": at, "mounting": str(fixed)}
    path = ("changes", "added", name) if sheet.standard else ("fittings", name)
    return name, (Put(path=path, value=entry),)


def exchange(sheet: BuildSheet, build: Build, name: str, part: Part) -> tuple[Edit, ...]:
    """Return the edits that put another part in a fitting's place.

    Its own use of loads goes where the new part has no such mode of use.
    """
    here = fitted_of(build, name)
    own = entry_of(sheet, name)
    if own:
        edits: list[Edit] = [Put(path=(*own, "part"), value=part.id)]
        if here.fitting.use and not _same_modes(here.part, part):
            edits.append(Take(path=(*own, "use")))
        return tuple(edits)
    path = ("changes", "exchanged", name)
    if any(each.fitting == name for each in sheet.changes.exchanged):
        return (Put(path=(*path, "part"), value=part.id),)
    return (Put(path=path, value={"fitting": name, "part": part.id}),)


def remove(sheet: BuildSheet, build: Build, name: str) -> tuple[Edit, ...]:
    """Return the edits that take a fitting out, with everything that is built into it.

    What stood against it stays where it is: its place becomes a length.
    """
    fitted_of(build, name)
    gone = {name, *built_into(build, name)}
    edits: list[Edit] = list(edits_for(sheet, build, _freed(build, gone)))
    waivers = (f"{w.fitting}/{w.purpose}" for w in sheet.waivers if w.fitting in gone)
    edits += (Take(path=("waivers", name)) for name in waivers)
    runs = (run.name for run in sheet.water_runs if run.serves in gone)
    edits += (Take(path=("water_runs", run, "serves")) for run in runs)
    return (*edits, *_taken_out(sheet, [f.name for f in build.fittings if f.name in gone]))


def _freed(build: Build, gone: set[str]) -> Wanted:
    """Return lengths for the places of those that stand against what goes."""
    return {
        fitted.name: {axis: written_mm(fitted.at_mm[axis]) for axis in tied}
        for fitted in build.fittings
        if fitted.name not in gone and (tied := _tied(fitted, gone))
    }


def _tied(fitted: Fitted, gone: set[str]) -> list[int]:
    places = fitted.fitting.at_mm
    return [
        axis
        for axis in AXES
        if isinstance(place := places[axis], Relation) and place.target in gone
    ]


def _taken_out(sheet: BuildSheet, names: list[str]) -> Iterator[Edit]:
    of_standard = [name for name in names if not entry_of(sheet, name)]
    for name in names:
        own = entry_of(sheet, name)
        if own:
            yield Take(path=own)
    changes = sheet.changes
    for name in of_standard:
        if any(each.fitting == name for each in changes.moved):
            yield Take(path=("changes", "moved", name))
        if any(each.fitting == name for each in changes.exchanged):
            yield Take(path=("changes", "exchanged", name))
    if of_standard:
        yield Put(path=("changes", "removed"), value=[*changes.removed, *of_standard])


def _free_name(build: Build, part: Part) -> str:
    taken = {fitted.name for fitted in build.fittings}
    if part.id not in taken:
        return part.id
    return next(name for n in count(2) if (name := f"{part.id}-{n}") not in taken)


def _same_modes(old: Part, new: Part) -> bool:
    return _modes(old) <= _modes(new)


def _modes(part: Part) -> set[str]:
    loads = (part.dc_load, part.ac_load)
    return {mode.name for load in loads if load is not None for mode in load.modes}


def _grid(length_mm: float) -> str:
    return written_mm(round(length_mm / _GRID_MM) * _GRID_MM)
