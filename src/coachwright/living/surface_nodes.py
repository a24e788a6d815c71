"""The nodes of an opaque surface and of a mass inside."""

import math

from coachwright.errors import OutOfRange
from coachwright.living.given_body import Mass, Surface
from coachwright.living.nodes import (
    AIR,
    GROUND,
    LINING,
    OUTSIDE_RADIANT_W_PER_M2K,
    RIB,
    SKY,
    Inner,
    Look,
    Making,
    plane_key,
)
from coachwright.living.sunlight import Face

FLOOR_FROM_DEG = 150.0
"""A surface that looks down this much or more is the floor of its room."""
_METAL_W_PER_M_K = 10.0
"""More than this conducts metal alone."""
_GROUND_W_PER_M2K = 1e4
"""From an outer face to the ground that it lies on, without a film."""
_MOST_CELLS = 24
_CELL_S = 600.0


def lay_surface(making: Making, surface: Surface) -> None:
    """Lay a surface from its outer face to its inner one, with its ribs."""
    room, area = making.room(surface.room), surface.area_m2
    outer = making.node(f"{surface.name} outside")
    last, left_m2k_per_w = _through(making, surface, outer)
    inner = making.node(surface.name)
    making.link(last, inner, area / max(left_m2k_per_w, 1e-6))
    rib_m2 = min(surface.bridge_area_m2, 0.95 * area) if surface.bridge_w_per_k > 0.0 else 0.0
    making.face(room, inner, area - rib_m2, surface)
    making.sun[room].append(
        Face(
            node=inner,
            area_m2=area,
            is_floor=surface.plane.tilt_deg >= FLOOR_FROM_DEG,
            absorptance_frac=surface.inner_absorptance_frac,
        )
    )
    if surface.outside not in making.rooms:
        kind = RIB if _is_bare_metal(surface) else LINING
        making.looks.append(Look(room=room, kind=kind, area_m2=area - rib_m2, node=inner))
    if rib_m2 > 0.0:
        rib = making.node(f"{surface.name} rib")
        making.link(outer, rib, surface.bridge_w_per_k)
        making.face(room, rib, rib_m2, surface)
        making.looks.append(Look(room=room, kind=RIB, area_m2=rib_m2, node=rib))
    else:
        making.link(outer, inner, surface.bridge_w_per_k)
    _outside(making, surface, outer)


def _is_bare_metal(surface: Surface) -> bool:
    """Say whether metal is what one sees from inside; condensation counts there as on ribs."""
    return bool(surface.layers) and surface.layers[-1].conductivity_w_per_m_k > _METAL_W_PER_M_K


def _outside(making: Making, surface: Surface, outer: int) -> None:
    area = surface.area_m2
    if surface.outside in making.rooms:
        other = making.rooms[surface.outside]
        inner = Inner(
            node=outer,
            area_m2=area,
            film_w_per_m2k=surface.inner_film_w_per_m2k,
            emittance_frac=surface.emittance_frac,
        )
        making.faces[other].append(inner)
        making.sun[other].append(
            Face(
                node=outer,
                area_m2=area,
                is_floor=False,
                absorptance_frac=surface.absorptance_frac,
            )
        )
    elif surface.outside == "ground":
        making.drive(outer, GROUND, area * _GROUND_W_PER_M2K)
    elif surface.outside == "air":
        film = surface.outer_film_w_per_m2k + making.stirred_w_per_m2k
        radiant = surface.emittance_frac * OUTSIDE_RADIANT_W_PER_M2K
        sky = surface.plane.sky_frac
        making.drive(outer, AIR, area * (film + radiant * (1.0 - sky)))
        making.drive(outer, SKY, area * radiant * sky)
        if surface.plane.sunlit:
            making.drive(outer, making.light(plane_key(surface)), area * surface.absorptance_frac)
    else:
        raise OutOfRange("outside", surface.outside, "air, ground, or the name of a room")


def _through(making: Making, surface: Surface, outer: int) -> tuple[int, float]:
    """Lay the cells of a surface; return the last node and the resistance left behind it."""
    area, at, left = surface.area_m2, outer, 0.0
    for layer in surface.layers:
        thick_m = layer.thickness_mm / 1000.0
        held = thick_m * layer.density_kg_per_m3 * layer.heat_j_per_kg_k
        conducts = layer.conductivity_w_per_m_k
        own = thick_m / conducts if conducts > 0.0 else 0.0
        if layer.resistance_m2k_per_w > 0.0:
            own = layer.resistance_m2k_per_w
        if held <= 0.0:
            left += own
            continue
        cells = making.refined * _cells(thick_m, own, held)
        for cell in range(cells):
            node = making.node(f"{surface.name} {layer.name} {cell}", area * held / cells)
            left += own / cells / 2.0
            making.link(at, node, area / max(left, 1e-6))
            at, left = node, own / cells / 2.0
    return at, left


def _cells(thick_m: float, own_m2k_per_w: float, held_j_per_k: float) -> int:
    """Return how many cells a layer needs: each passes its heat on within a step or so."""
    if thick_m <= 0.0:
        return 1
    fourier = math.sqrt(own_m2k_per_w * held_j_per_k / _CELL_S)
    return min(max(math.ceil(fourier), 1), _MOST_CELLS)


def lay_mass(making: Making, mass: Mass) -> None:
    """Lay a mass of one temperature."""
    room = making.room(mass.room)
    node = making.node(mass.name, mass.heat_j_per_k)
    making.faces[room].append(
        Inner(
            node=node,
            area_m2=mass.area_m2,
            film_w_per_m2k=mass.film_w_per_m2k,
            emittance_frac=mass.emittance_frac,
        )
    )
    making.sun[room].append(
        Face(
            node=node,
            area_m2=0.0,
            is_floor=False,
            absorptance_frac=0.0,
            first_frac=mass.sun_frac,
        )
    )
