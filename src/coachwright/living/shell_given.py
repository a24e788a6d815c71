"""From a build's shell and finishes to patches: pieces of one face with the same layers."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from coachwright.living.assumed import assumed
from coachwright.living.coverage import Covered, Told, coverage
from coachwright.living.envelope import plane_w_per_m2k, ribbed
from coachwright.living.given_body import Layer
from coachwright.living.materials import gap_m2k_per_w, material, wood_w_per_m_k
from coachwright.living.panes_given import Pane
from coachwright.living.ribs import Bridged
from coachwright.living.shell_areas import Arch, ShellAreas, shell_areas
from coachwright.model.build import Build
from coachwright.model.part import Part

KG_PER_M3 = 1000.0
MM2_PER_M2 = 1e6
UP, ACROSS, DOWN = "up", "horizontal", "down"
ROOF_DEG, WALL_DEG, FLOOR_DEG = 0.0, 90.0, 180.0
RIGHT_DEG, REAR_DEG, LEFT_DEG = 90.0, 180.0, 270.0
BARE = "bare steel"
_BY_GROUP = {"walls": ACROSS, "doors": ACROSS, "ceiling": UP, "floor": DOWN}


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """One plane of the shell, panes taken off.

    Attributes
    ----------
    surface
        As finishes name it: ``"walls"``, ``"doors"``, ``"ceiling"``, ``"floor"``.
    """

    name: str
    surface: str
    area_m2: float
    tilt_deg: float
    bearing_deg: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Patch:
    """A piece of one face with the same layers.

    Attributes
    ----------
    group
        Pieces of one group and with the same layers may be taken together.
    layers
        From outside inwards.
    """

    name: str
    group: str
    area_m2: float
    layers: tuple[Layer, ...]
    direction: str
    tilt_deg: float
    bearing_deg: float
    absorptance_frac: float
    ribs: Bridged | None = None
    room: str = "cabin"
    lining: tuple[Layer, ...] = ()
    sunlit: bool = True

    @property
    def u_w_per_m2k(self) -> float:
        """With ribs, where it has them."""
        if self.ribs is not None:
            return self.ribs.mean_w_per_m2k
        return plane_w_per_m2k(layers=self.layers, direction=self.direction)

    @property
    def low_w_per_m2k(self) -> float:
        """With every rib a parallel path."""
        return self.ribs.low_w_per_m2k if self.ribs else self.u_w_per_m2k

    @property
    def high_w_per_m2k(self) -> float:
        """With every rib an isothermal plane."""
        return self.ribs.high_w_per_m2k if self.ribs else self.u_w_per_m2k


def areas(build: Build) -> ShellAreas:
    """Return the bare faces of a build's living space."""
    shell = build.vehicle.shell
    return shell_areas(
        half_widths_mm=[(row.z_mm, row.half_width_mm) for row in shell.half_widths],
        ceiling_mm=shell.ceiling_mm,
        length_mm=shell.rear_mm - shell.cab_line_mm,
        arches=[
            Arch(
                length_mm=each.x_to_mm - each.x_from_mm,
                width_mm=max(0.0, shell.half_widths[0].half_width_mm - each.inner_y_mm),
                height_mm=each.height_mm,
            )
            for each in shell.wheel_arches
        ],
    )


def skin(build: Build) -> Layer:
    """Return the steel of the body."""
    steel = material("steel")
    return Layer(
        name="steel",
        thickness_mm=build.vehicle.skin.thickness_mm or assumed("skin").value,
        conductivity_w_per_m_k=steel.conductivity_w_per_m_k,
        density_kg_per_m3=steel.density_kg_per_m3,
        heat_j_per_kg_k=steel.heat_j_per_kg_k,
    )


def colour_frac(build: Build, *, roof: bool) -> float:
    """Return the share of the sun that roof or walls take up."""
    painted = build.vehicle.skin
    stated = painted.roof_absorptance_frac if roof else painted.wall_absorptance_frac
    return assumed("colour").value if stated is None else stated


def faces(build: Build, panes: tuple[Pane, ...]) -> Iterator[Face]:
    """Yield the planes of the living space, with doors apart and panes taken off."""
    found = areas(build)
    side = {"left": found.wall_m2, "right": found.wall_m2}
    doors = {"left": 0.0, "right": 0.0}
    for each in build.vehicle.apertures:
        if each.wall in side:
            door = min(each.clear_width_mm * each.clear_height_mm / MM2_PER_M2, side[each.wall])
            side[each.wall] -= door
            doors[each.wall] += door
    glass = {
        place: sum(pane.face_m2 for pane in panes if pane.place == place)
        for place in ("left", "right", "left door", "right door", "rear", "roof")
    }
    for wall, bearing in (("left", LEFT_DEG), ("right", RIGHT_DEG)):
        share = found.arches_m2 / 2.0
        area = max(0.0, side[wall] - glass[wall]) + share
        yield Face(
            name=f"{wall} wall",
            surface="walls",
            area_m2=area,
            tilt_deg=WALL_DEG,
            bearing_deg=bearing,
        )
        yield Face(
            name=f"{wall} door",
            surface="doors",
            area_m2=max(0.0, doors[wall] - glass[f"{wall} door"]),
            tilt_deg=WALL_DEG,
            bearing_deg=bearing,
        )
    yield Face(
        name="rear doors",
        surface="doors",
        area_m2=max(0.0, found.rear_m2 - glass["rear"]),
        tilt_deg=WALL_DEG,
        bearing_deg=REAR_DEG,
    )
    roof = max(0.0, found.roof_m2 - glass["roof"])
    yield Face(name="roof", surface="ceiling", area_m2=roof, tilt_deg=ROOF_DEG)
    yield Face(name="floor", surface="floor", area_m2=found.floor_m2, tilt_deg=FLOOR_DEG)


def patches(build: Build, panes: tuple[Pane, ...]) -> tuple[Patch, ...]:
    """Return the living space's shell in patches; finishes lie evenly over faces of one kind."""
    every = [face for face in faces(build, panes) if face.area_m2 > 0.0]
    made = []
    for surface, direction in _BY_GROUP.items():
        here = [face for face in every if face.surface == surface]
        whole = sum(face.area_m2 for face in here)
        for number, covered in enumerate(coverage(area_m2=whole, told=told(build, surface))):
            piece = _piece(build, surface, direction, covered, number)
            made += [
                replace(
                    piece,
                    name=f"{face.name} {number + 1}" if number else face.name,
                    area_m2=face.area_m2 * covered.share_frac,
                    tilt_deg=face.tilt_deg,
                    bearing_deg=face.bearing_deg,
                )
                for face in here
            ]
    return tuple(made)


def told(build: Build, surface: str) -> tuple[Told, ...]:
    """Return the finishes of one surface as the build tells them."""
    return tuple(
        Told(
            area_m2=each.finish.area_m2,
            layer=_layer(each.part, each.finish.thickness_mm),
            insulates=each.part.insulation is not None,
        )
        for each in build.finishes
        if each.finish.surface == surface and (each.part.insulation or each.part.lining)
    )


def _layer(part: Part, thickness_mm: float | None) -> Layer:
    if part.insulation is not None:
        facet = part.insulation
        return Layer(
            name=part.id,
            thickness_mm=thickness_mm or facet.thickness_mm,
            conductivity_w_per_m_k=facet.conductivity_w_per_m_k,
            density_kg_per_m3=facet.density_kg_per_l * KG_PER_M3,
            heat_j_per_kg_k=material("insulation").heat_j_per_kg_k,
        )
    lining = part.lining
    if lining is None:
        return Layer(name=part.id)
    density = lining.density_kg_per_l * KG_PER_M3
    wood = wood_w_per_m_k(density_kg_per_m3=density)
    return Layer(
        name=part.id,
        thickness_mm=thickness_mm or lining.thickness_mm,
        conductivity_w_per_m_k=lining.conductivity_w_per_m_k or wood,
        density_kg_per_m3=density,
        heat_j_per_kg_k=material("plywood").heat_j_per_kg_k,
    )


def air_gap(gap_mm: float) -> Layer:
    """Return the still air behind a lining without insulation."""
    return Layer(
        name="air", thickness_mm=gap_mm, resistance_m2k_per_w=gap_m2k_per_w(gap_mm=gap_mm)
    )


def _piece(build: Build, surface: str, direction: str, covered: Covered, number: int) -> Patch:
    """Return one patch, with no area yet."""
    steel, depth = skin(build), build.vehicle.shell.rib_depth_mm
    between = covered.insulation
    if not between and covered.lining and direction != DOWN and depth > 0.0:
        between = (air_gap(depth),)
    ribs = None
    if between and direction != DOWN and depth > 0.0:
        ribs = ribbed(
            skin=steel,
            insulation=between,
            lining=covered.lining,
            direction=direction,
            rib_depth_mm=depth,
            rib_frac=_rib_frac(build),
            rib_mm=assumed("rib-width").value,
        )
    return Patch(
        name=surface,
        group=_group(surface, covered, number),
        area_m2=0.0,
        layers=(steel, *between, *covered.lining),
        direction=direction,
        tilt_deg=0.0,
        bearing_deg=0.0,
        absorptance_frac=colour_frac(build, roof=direction == UP),
        ribs=ribs,
        lining=covered.lining,
        sunlit=direction != DOWN,
    )


def _group(surface: str, covered: Covered, number: int) -> str:
    """Return what a patch is told as together with others; bare sides and doors are one."""
    if _BY_GROUP[surface] == ACROSS and not covered.insulation and not covered.lining:
        return BARE
    return f"{surface} {number + 1}" if number else surface


def _rib_frac(build: Build) -> float:
    stated = build.vehicle.skin.rib_frac
    return assumed("rib-share").value if stated is None else stated
