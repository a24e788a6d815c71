"""Turn positions told by other fittings into coordinates, with every fault as data."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from coachwright.errors import Fault
from coachwright.model.build import BuildSheet, Finish, Fitting
from coachwright.model.part import Part
from coachwright.model.placement import Point, turned_size_mm
from coachwright.model.position import AXIS_FACES, AXIS_WORDS, Relation
from coachwright.model.shell import BuildUp, Layer, build_up, narrowest_half_width_mm
from coachwright.model.vehicle import BaseVehicle

AXES = ("x", "y", "z")
_FORWARD = ("behind", "right of", "above")
_BACK = ("ahead of", "left of", "under")
_LOW_FLUSH = ("flush front", "flush left", "flush bottom")
_HIGH_FLUSH = ("flush rear", "flush right", "flush top")


def layers_of(sheet: BuildSheet, parts: Mapping[str, Part]) -> tuple[Layer, ...]:
    """Return the finishes of a sheet as layers on the shell."""
    layers = (
        layer_of(finish, parts[finish.part]) for finish in sheet.finishes if finish.part in parts
    )
    return tuple(layer for layer in layers if layer is not None)


def layer_of(finish: Finish, part: Part) -> Layer | None:
    """Return a finish as a layer on the shell; None where its part is no sheet."""
    facet = part.insulation or part.lining
    if facet is None:
        return None
    return Layer(
        surface=finish.surface,
        thickness_mm=finish.thickness_mm or facet.thickness_mm,
        fills_ribs=part.insulation is not None,
    )


def position_faults(sheet: BuildSheet, file: str, parts: Mapping[str, Part]) -> Iterator[Fault]:
    """Yield the faults of positions that name something else."""
    names = [fitting.name for fitting in sheet.fittings]
    for index, fitting in enumerate(sheet.fittings):
        for axis, position in enumerate(fitting.at_mm):
            if isinstance(position, Relation):
                where = f"fittings[{index}].at[{axis}] ({fitting.name})"
                others = [name for name in names if name != fitting.name]
                for allowed, action in _relation_faults(position, axis, others):
                    yield Fault(
                        file=file,
                        field=where,
                        found=f'"{position.text}"',
                        allowed=allowed,
                        action=action,
                    )
    if all(fitting.part in parts for fitting in sheet.fittings):
        yield from _rings(sheet, file)


def _relation_faults(
    relation: Relation, axis: int, others: list[str]
) -> Iterator[tuple[str, str]]:
    """Yield what is allowed and what to do, for each fault of one relation."""
    if relation.kind not in AXIS_WORDS[axis]:
        yield (
            f"on the {AXES[axis]} axis one of: {', '.join(AXIS_WORDS[axis])}",
            "use a word of this axis: x runs rearwards, y to the right, z upwards",
        )
        return
    # a fitting has two faces on each axis, so "against" it could mean either; a face has no middle
    faces = [
        face
        for face in AXIS_FACES[axis]
        if relation.kind == "against" or (relation.kind == "centred on" and face == "centreline")
    ]
    names = [] if relation.kind == "against" else others
    if relation.target in (*faces, *names):
        return
    if relation.target in others:
        words = [word for word in AXIS_WORDS[axis] if word != "against"]
        yield ", ".join(faces), f"against a fitting, say {' or '.join(words)}"
        return
    close = get_close_matches(relation.target, [*faces, *names], n=1)
    action = f"did you mean {close[0]!r}?" if close else "name one that exists"
    if relation.target in AXIS_FACES[axis]:
        action = f"to a face of the vehicle say against {relation.target}"
    known = ["the name of another fitting"] if names is others else []
    yield (
        " or ".join([*known, *([", ".join(faces)] if faces else [])]),
        action,
    )


def _rings(sheet: BuildSheet, file: str) -> Iterator[Fault]:
    fittings = {fitting.name: fitting for fitting in sheet.fittings}
    for index, fitting in enumerate(sheet.fittings):
        for axis in range(3):
            ring = _ring(fitting, axis, fittings)
            if ring:
                yield Fault(
                    file=file,
                    field=f"fittings[{index}].at[{axis}] ({fitting.name})",
                    found="a ring: " + " → ".join(ring),
                    allowed="positions that end at a length or at the shell",
                    action="give one of them a length",
                )


def _ring(fitting: Fitting, axis: int, fittings: Mapping[str, Fitting]) -> tuple[str, ...]:
    trail = [fitting.name]
    here = fitting
    while isinstance(position := here.at_mm[axis], Relation) and position.target in fittings:
        if position.target == here.name:
            return ()  # its name is refused already
        trail.append(position.target)
        if position.target == fitting.name:
            return tuple(trail)
        if position.target in trail[:-1]:
            return ()
        here = fittings[position.target]
    return ()


@dataclass(kw_only=True)
class _Solver:
    """Coordinates worked out so far, for one sheet without faults."""

    vehicle: BaseVehicle
    fittings: Mapping[str, Fitting]
    sizes_mm: Mapping[str, Point]
    build_up: BuildUp
    known_mm: dict[tuple[str, int], float] = field(default_factory=dict)

    def low_mm(self, name: str, axis: int) -> float:
        """Return a fitting's smallest coordinate on one axis, in mm."""
        key = (name, axis)
        if key not in self.known_mm:
            position = self.fittings[name].at_mm[axis]
            self.known_mm[key] = (
                self._related_mm(name, axis, position)
                if isinstance(position, Relation)
                else position
            )
        return self.known_mm[key]

    def _related_mm(self, name: str, axis: int, relation: Relation) -> float:
        size_mm = self.sizes_mm[name][axis]
        gap_mm = relation.gap_mm
        if relation.target not in self.fittings:
            return self._against_mm(name, axis, relation)
        low_mm = self.low_mm(relation.target, axis)
        high_mm = low_mm + self.sizes_mm[relation.target][axis]
        if relation.kind in _FORWARD:
            return high_mm + gap_mm
        if relation.kind in _BACK:
            return low_mm - gap_mm - size_mm
        if relation.kind in _LOW_FLUSH:
            return low_mm + gap_mm
        if relation.kind in _HIGH_FLUSH:
            return high_mm - gap_mm - size_mm
        return (low_mm + high_mm) / 2 + gap_mm - size_mm / 2

    def _against_mm(self, name: str, axis: int, relation: Relation) -> float:
        size_mm = self.sizes_mm[name][axis]
        gap_mm = relation.gap_mm
        shell = self.vehicle.shell
        outside = self.vehicle.outside
        if relation.target in ("left wall", "right wall"):
            return self._wall_mm(name, relation)
        faces_mm = {
            "cab line": shell.cab_line_mm + gap_mm,
            "rear doors": shell.rear_mm - self.build_up.doors_mm - gap_mm - size_mm,
            "outside front": -outside.front_overhang_mm - gap_mm - size_mm,
            "outside rear": outside.length_mm - outside.front_overhang_mm + gap_mm,
            "centreline": gap_mm - size_mm / 2,
            "outside left": -outside.width_mm / 2 - gap_mm - size_mm,
            "outside right": outside.width_mm / 2 + gap_mm,
            "floor": self.build_up.floor_mm + gap_mm,
            "ceiling": shell.ceiling_mm - self.build_up.ceiling_mm - gap_mm - size_mm,
            "roof": outside.height_mm - outside.floor_height_mm + gap_mm,
            "ground": gap_mm - outside.floor_height_mm,
        }
        return faces_mm[relation.target]

    def _wall_mm(self, name: str, relation: Relation) -> float:
        bottom_mm = self.low_mm(name, 2)
        width_mm, height_mm = self.sizes_mm[name][1:]
        half_mm = (
            narrowest_half_width_mm(self.vehicle.shell, bottom_mm, bottom_mm + height_mm)
            - self.build_up.walls_mm
            - relation.gap_mm
        )
        return -half_mm if relation.target == "left wall" else half_mm - width_mm


def solved_positions(
    sheet: BuildSheet, vehicle: BaseVehicle, parts: Mapping[str, Part]
) -> dict[str, Point]:
    """Return where each fitting of a sheet without faults stands.

    Returns
    -------
    dict
        Reference name → corner of the turned bounding box with the smallest x, y and z. [mm]

    Notes
    -----
    Against a wall the narrowest half-width over the fitting's height counts, less what the
    finishes take; against floor, ceiling and rear doors the finishes count too.
    """
    solver = _Solver(
        vehicle=vehicle,
        fittings={fitting.name: fitting for fitting in sheet.fittings},
        sizes_mm={
            fitting.name: turned_size_mm(parts[fitting.part].body.size_mm, fitting.turn_deg)
            for fitting in sheet.fittings
        },
        build_up=build_up(layers_of(sheet, parts), vehicle.shell.rib_depth_mm),
    )
    return {
        fitting.name: (
            solver.low_mm(fitting.name, 0),
            solver.low_mm(fitting.name, 1),
            solver.low_mm(fitting.name, 2),
        )
        for fitting in sheet.fittings
    }
