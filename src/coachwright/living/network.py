"""The body of rooms as a network of nodes: heat stored, heat passed on, heat let in."""

from dataclasses import dataclass

import numpy as np

from coachwright.living.given_body import Body, Room
from coachwright.living.nodes import (
    AIR,
    AIR_J_PER_M3_K,
    GLASS,
    GROUND,
    LINING,
    RIB,
    SEA_LEVEL_PA,
    Grid,
    Look,
    Making,
    PlaneKey,
)
from coachwright.living.radiant import radiant_links_w_per_k
from coachwright.living.sunlight import shares_frac
from coachwright.living.surface_nodes import lay_mass, lay_surface
from coachwright.living.window_nodes import lay_window

_NEAR_COLDEST = 0.1
"""Of the difference between inside and outside: faces as cold as this are judged together."""


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Network:
    """Nodes and what links them.

    Attributes
    ----------
    heat_j_per_k
        Held by each node; 0 where it follows at once.
    links_w_per_k
        Symmetric: what leaves a node for each kelvin, and what goes between two.
    driven
        Into each node for each unit of the driving columns: air, sky, ground, light on planes.
    lit
        The planes of the columns from the fourth on.
    air, star
        Node of each room's air, and of the radiation in it.
    seen
        For each room, weights over the nodes whose mean is the face of glass, rib and lining that
        is judged for condensation; `seen_area_m2` its area, 0 where there is none.
    """

    names: tuple[str, ...]
    heat_j_per_k: Grid
    links_w_per_k: Grid
    driven: Grid
    lit: tuple[PlaneKey, ...]
    air: tuple[int, ...]
    star: tuple[int, ...]
    seen: Grid
    seen_area_m2: Grid

    @property
    def bounds_w_per_k(self) -> Grid:
        """What leaves each node towards air, sky and ground for each kelvin."""
        return np.asarray(self.driven[:, :3].sum(axis=1))


def network(
    *, body: Body, wind_m_per_s: float, pressure_pa: float, shut: bool, refined: int = 1
) -> Network:
    """Return the network of a body.

    Parameters
    ----------
    body
        The rooms and what is around them.
    wind_m_per_s
        Mean of the year, for outer films that grow with it. [m/s]
    pressure_pa
        Mean of the year, for the air's heat. [Pa]
    shut
        With the blinds shut.
    refined
        Times as many cells through each layer, to judge whether there are enough.

    Notes
    -----
    C dT/dt = driven · u − links · T.  Layers are cut into cells no thicker than √(λ Δt / ρ c) for
    Δt = 600 s, each with half its resistance to either side; faces hold no heat.  Outside:
    convection to the air, ε h_r to the sky by its share and to what is at air temperature for the
    rest.  Inside: convection to the room's air, radiation to one node per room (`radiant`).
    Light inside by `sunlight.shares_frac`.  All films are constant.

    References
    ----------
    [iso-6946], [carroll-1980]
    """
    making = Making(body, wind_m_per_s, refined, shut=shut)
    air_j_per_m3_k = AIR_J_PER_M3_K * pressure_pa / SEA_LEVEL_PA
    air = tuple(
        making.node(f"{room.name} air", max(room.volume_m3, 0.01) * air_j_per_m3_k)
        for room in body.rooms
    )
    star = tuple(making.node(f"{room.name} radiation") for room in body.rooms)
    for place, room in enumerate(body.rooms):
        flow_m3_per_s = room.volume_m3 * room.leak_per_h / 3600.0
        making.drive(air[place], AIR, flow_m3_per_s * air_j_per_m3_k)
    for surface in body.surfaces:
        lay_surface(making, surface)
    for window in body.windows:
        lay_window(making, window)
    for mass in body.masses:
        lay_mass(making, mass)
    for place, room in enumerate(body.rooms):
        _inside(making, room, place, air[place], star[place])
    for passage in body.passages:
        one, other = (air[making.room(name)] for name in passage.rooms)
        flow_w_per_k = passage.flow_m3_per_h / 3600.0 * air_j_per_m3_k
        making.link(one, other, passage.conductance_w_per_k + flow_w_per_k)
    links, driven = making.matrices()
    seen, areas = _judged(making.looks, links, driven, len(body.rooms))
    return Network(
        names=tuple(making.names),
        heat_j_per_k=np.array(making.heat),
        links_w_per_k=links,
        driven=driven,
        lit=tuple(making.lit),
        air=air,
        star=star,
        seen=seen,
        seen_area_m2=areas,
    )


def _inside(making: Making, room: Room, place: int, air: int, star: int) -> None:
    faces, sun, panes = making.faces[place], making.sun[place], making.panes[place]
    for face in faces:
        making.link(face.node, air, face.area_m2 * face.film_w_per_m2k)
    links = radiant_links_w_per_k(
        areas_m2=[face.area_m2 for face in faces],
        emittances_frac=[face.emittance_frac for face in faces],
    )
    for face, conductance in zip(faces, links, strict=True):
        making.link(face.node, star, conductance)
    if not any(links):
        making.link(air, star, 1.0)
    parts = shares_frac(faces=sun, panes=panes, floor_frac=room.floor_sun_frac)
    for pane in panes:
        for lit, part in zip(sun, parts, strict=True):
            making.drive(lit.node, pane.column, pane.through_m2 * part)


def _judged(looks: list[Look], links: Grid, driven: Grid, rooms: int) -> tuple[Grid, Grid]:
    """Choose the faces judged for condensation: the coldest of each kind in steady cold."""
    cold = np.zeros(driven.shape[1])
    cold[: GROUND + 1] = -1.0
    warmed = links.copy()
    for place in range(rooms):
        warmed[place, place] += 1e6
    at = np.linalg.solve(warmed, driven @ cold)
    seen, areas = np.zeros((rooms, 3, len(at))), np.zeros((rooms, 3))
    for room in range(rooms):
        for kind in (GLASS, RIB, LINING):
            mine = [look for look in looks if look.room == room and look.kind == kind]
            coldest = min((at[look.node] for look in mine), default=0.0)
            chosen = [look for look in mine if at[look.node] <= coldest + _NEAR_COLDEST]
            areas[room, kind] = sum(look.area_m2 for look in chosen)
            for look in chosen:
                seen[room, kind, look.node] += look.area_m2 / max(areas[room, kind], 1e-9)
    return seen, areas
