"""A network of nodes while it grows: what surfaces, windows and masses lay into it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.errors import OutOfRange
from coachwright.living.given_body import Body, Surface, Window
from coachwright.living.glass_curve import CLEAR_FRAC, DOUBLE_FRAC
from coachwright.living.sunlight import Face, Pane

Grid = NDArray[np.float64]

OUTSIDE_RADIANT_W_PER_M2K = 5.1
"""4 σ T³ at 10 degC. [iso-6946]"""
AIR_J_PER_M3_K = 1.2 * 1006.0
"""Heat held by a cubic metre of air at sea level. [ashrae-psychrometrics]"""
SEA_LEVEL_PA = 101325.0
AIR, SKY, GROUND = 0, 1, 2
"""Columns of what drives the network; the light on planes follows."""

PlaneKey = tuple[str, float, float, tuple[tuple[float, float], ...], float]
"""Kind, tilt, bearing, curve by incidence, share of even light (or −1 for the curve's mean)."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Inner:
    """A face inside a room: its node, area, convection and emittance."""

    node: int
    area_m2: float
    film_w_per_m2k: float
    emittance_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Look:
    """A face on which vapour may condense; kinds are glass, rib and lining."""

    room: int
    kind: int
    area_m2: float
    node: int


GLASS, RIB, LINING = 0, 1, 2


class Making:
    """A network while it grows: nodes, links, and what drives them."""

    def __init__(self, body: Body, wind_m_per_s: float, refined: int, *, shut: bool) -> None:
        self.rooms = {room.name: place for place, room in enumerate(body.rooms)}
        self.stirred_w_per_m2k = body.stirred_w_per_m2k * wind_m_per_s
        self.refined = refined
        self.shut = shut
        self.faces: list[list[Inner]] = [[] for _ in body.rooms]
        self.sun: list[list[Face]] = [[] for _ in body.rooms]
        self.panes: list[list[Pane]] = [[] for _ in body.rooms]
        self.looks: list[Look] = []
        self.names: list[str] = []
        self.heat: list[float] = []
        self.linked: list[tuple[int, int, float]] = []
        self.driven: list[tuple[int, int, float]] = []
        self.lit: list[PlaneKey] = []

    def node(self, name: str, heat_j_per_k: float = 0.0) -> int:
        """Add a node."""
        self.names.append(name)
        self.heat.append(heat_j_per_k)
        return len(self.names) - 1

    def room(self, name: str) -> int:
        """Return the place of a room."""
        if name not in self.rooms:
            raise OutOfRange("room", name, ", ".join(self.rooms) or "a body with rooms")
        return self.rooms[name]

    def face(self, room: int, node: int, area_m2: float, surface: Surface) -> None:
        """Add a face of a surface to a room."""
        inner = Inner(
            node=node,
            area_m2=area_m2,
            film_w_per_m2k=surface.inner_film_w_per_m2k,
            emittance_frac=surface.inner_emittance_frac,
        )
        self.faces[room].append(inner)

    def link(self, one: int, other: int, w_per_k: float) -> None:
        """Let heat go between two nodes."""
        if w_per_k > 0.0 and one != other:
            self.linked.append((one, other, w_per_k))

    def drive(self, node: int, column: int, w_per_k: float) -> None:
        """Let a column of the site drive a node."""
        if w_per_k != 0.0:
            self.driven.append((node, column, w_per_k))

    def light(self, key: PlaneKey) -> int:
        """Return the column of the light on a plane."""
        if key not in self.lit:
            self.lit.append(key)
        return 3 + self.lit.index(key)

    def matrices(self) -> tuple[Grid, Grid]:
        """Return the links, and what the columns do to each node."""
        count = len(self.names)
        links, driven = np.zeros((count, count)), np.zeros((count, 3 + len(self.lit)))
        for one, other, conductance in self.linked:
            links[one, one] += conductance
            links[other, other] += conductance
            links[one, other] -= conductance
            links[other, one] -= conductance
        for node, column, conductance in self.driven:
            driven[node, column] += conductance
            if column <= GROUND:
                links[node, node] += conductance
        return links, driven


def plane_key(surface: Surface) -> PlaneKey:
    """Return the key of the light that a surface takes."""
    return ("whole", surface.plane.tilt_deg, surface.plane.bearing_deg, (), -1.0)


def glass_key(window: Window) -> PlaneKey:
    """Return the key of the light that goes through a window."""
    even_frac = -1.0 if window.diffuse_frac is None else window.diffuse_frac
    tilt_deg, bearing_deg = window.plane.tilt_deg, window.plane.bearing_deg
    return ("glass", tilt_deg, bearing_deg, curve_frac(window), even_frac)


def curve_frac(window: Window) -> tuple[tuple[float, float], ...]:
    """Return a window's gain by incidence: what is told, or that of clear panes."""
    return window.by_incidence_frac or (CLEAR_FRAC if window.panes <= 1 else DOUBLE_FRAC)
