"""Edits that put a part into a build, exchange it for another, or take it out."""

from collections.abc import Iterator, Sequence
from itertools import count

from coachwright.actions.fixing import BEHIND_DOORS, HEIGHTS, OUTSIDE_REAR, side_word
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
    at = [_grid(x_mm - length_mm / 2), _grid(y_mm - width_mm / 2), HEIGHTS[fixed]]
    if fixed in BEHIND_DOORS:
        at[0] = OUTSIDE_REAR
    if fixed is Mounting.SIDE:
        at[1] = f"against outside {side_word(y_mm)}"
    entry = {"name": name, "part": part.id, "at": at, "mounting": str(fixed)}
    path = ("changes", "added", name) if sheet.standard else ("fittings", name)
    return name, (Put(path=path, value=entry),)


def exchange(
    sheet: BuildSheet, build: Build, names: Sequence[str], part: Part
) -> tuple[Edit, ...]:
    """Return the edits that put another part in the place of fittings.

    Their own use of loads goes where the new part has no such mode of use.
    """
    return tuple(edit for name in names for edit in _exchanged(sheet, build, name, part))


def _exchanged(sheet: BuildSheet, build: Build, name: str, part: Part) -> Iterator[Edit]:
    here = fitted_of(build, name)
    own = entry_of(sheet, name)
    path = own or ("changes", "exchanged", name)
    listed = any(each.fitting == name for each in sheet.changes.exchanged)
    if own or listed:
        yield Put(path=(*path, "part"), value=part.id)
    else:
        yield Put(path=path, value={"fitting": name, "part": part.id})
    if own and here.fitting.use and not _same_modes(here.part, part):
        yield Take(path=(*own, "use"))


def remove(sheet: BuildSheet, build: Build, names: Sequence[str]) -> tuple[Edit, ...]:
    """Return the edits that take fittings out, with everything that is built into them.

    What stood against them stays where it is: its place becomes a length.
    """
    gone = {fitted_of(build, name).name for name in names}
    gone = gone.union(*(built_into(build, name) for name in names))
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
