"""What the coupled year asks of a body of rooms: surfaces, windows, masses, air.

Nothing here knows of vans: a plain box of a building is told with the same records.  Node names
of the results are those of the surfaces, windows and masses told here.
"""

from dataclasses import dataclass, field


@dataclass(frozen=True, kw_only=True, slots=True)
class Layer:
    """One layer of a surface.

    Attributes
    ----------
    thickness_mm
        0 where only `resistance_m2k_per_w` counts.
    resistance_m2k_per_w
        Instead of thickness over conductivity, for an air gap or a layer without mass.
    """

    name: str
    thickness_mm: float = 0.0
    conductivity_w_per_m_k: float = 0.0
    density_kg_per_m3: float = 0.0
    heat_j_per_kg_k: float = 0.0
    resistance_m2k_per_w: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Plane:
    """Where a surface or window looks.

    Attributes
    ----------
    tilt_deg
        From the horizontal: a roof 0, a wall 90, a floor 180.
    bearing_deg
        Clockwise from where the body heads, as `climate.planes.WALLS_DEG`; of no account where
        the tilt is 0 or 180.
    sky_frac
        Share of the half-space before it that is sky, for long-wave radiation: a roof 1, a wall
        0.5, a floor over the ground 0.
    sunlit
        False where no sun and no sky reaches it, such as a floor or a surface against a room.
    """

    tilt_deg: float
    bearing_deg: float = 0.0
    sky_frac: float = 0.0
    sunlit: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Surface:
    """An opaque surface between a room and outside, ground, or another room.

    Attributes
    ----------
    layers
        From outside inwards.
    outside
        ``"air"``, ``"ground"`` (at `ground_degc` of the body), or the name of another room.
    room
        The room on its inner side.
    absorptance_frac, emittance_frac
        Of its outer face, for sun and for long-wave radiation.
    inner_absorptance_frac, inner_emittance_frac
        Of its inner face.
    outer_film_w_per_m2k, inner_film_w_per_m2k
        Convection alone; radiation is told apart.
    bridge_w_per_k
        Metal that goes through the layers, besides them, from the outer face to the inner one.
    bridge_low_w_per_k, bridge_high_w_per_k
        Its range.
    bridge_area_m2
        Inner face of that metal or of what covers it, out of `area_m2`: it has a temperature of
        its own, which is judged for condensation.  Where 0 the bridge ends at the inner face.
    """

    name: str
    area_m2: float
    layers: tuple[Layer, ...]
    plane: Plane
    outside: str = "air"
    room: str = "cabin"
    absorptance_frac: float = 0.6
    emittance_frac: float = 0.9
    inner_absorptance_frac: float = 0.6
    inner_emittance_frac: float = 0.9
    outer_film_w_per_m2k: float = 20.0
    inner_film_w_per_m2k: float = 2.5
    bridge_w_per_k: float = 0.0
    bridge_low_w_per_k: float = 0.0
    bridge_high_w_per_k: float = 0.0
    bridge_area_m2: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Window:
    """A pane between a room and outside.

    Attributes
    ----------
    u_w_per_m2k
        Of pane and frame with usual films.
    shgc_frac
        Solar heat gain at straight incidence.
    transmitted_frac
        Solar transmittance at straight incidence; the rest of the gain is set free at the pane.
    by_incidence_frac
        Pairs of incidence in degrees and gain as a share of that at straight incidence; the
        kernel's own curve for clear panes where empty.
    diffuse_frac
        Gain of even light as a share of that at straight incidence; None for the curve's mean.
    blind_frac
        Share of the sun that comes through with the blind shut.
    blind_resistance_m2k_per_w
        That a shut blind adds.
    panes
        Of glass, with a gap between two.
    pane_resistance_m2k_per_w
        From face to face; None for what `u_w_per_m2k` and usual films leave.
    outer_film_w_per_m2k, inner_film_w_per_m2k
        Convection alone; None for what usual films leave beside radiation.
    """

    name: str
    area_m2: float
    plane: Plane
    u_w_per_m2k: float
    shgc_frac: float
    transmitted_frac: float
    room: str = "cabin"
    by_incidence_frac: tuple[tuple[float, float], ...] = ()
    diffuse_frac: float | None = None
    blind_frac: float = 1.0
    blind_resistance_m2k_per_w: float = 0.0
    emittance_frac: float = 0.84
    panes: int = 1
    pane_resistance_m2k_per_w: float | None = None
    outer_film_w_per_m2k: float | None = None
    inner_film_w_per_m2k: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Mass:
    """Furniture, stores, water: what holds heat inside a room.

    Attributes
    ----------
    area_m2
        Of its faces, to air and other faces.
    sun_frac
        Share of the sun in the room that falls on it; the rest goes to the surfaces by area and
        absorptance, the floor first where `Room.floor_sun_frac` says so.
    """

    name: str
    heat_j_per_k: float
    area_m2: float
    room: str = "cabin"
    film_w_per_m2k: float = 3.0
    emittance_frac: float = 0.9
    sun_frac: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Room:
    """One air: the cabin, a drying stall, the cab behind its curtain.

    Attributes
    ----------
    leak_per_h
        Air changes with everything shut and the vehicle at rest.
    vapour_buffer_ratio
        Vapour that lining and contents take up, as a multiple of what the air alone would.
    floor_sun_frac
        Share of the transmitted sun that falls on the floor first; None by area.
    heated
        The thermostat stands here, or a register leads here.
    """

    name: str
    volume_m3: float
    leak_per_h: float = 1.0
    vapour_buffer_ratio: float = 1.0
    floor_sun_frac: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Passage:
    """Air and conduction between two rooms: a curtain, an open doorway, a register's return."""

    name: str
    rooms: tuple[str, str]
    conductance_w_per_k: float
    flow_m3_per_h: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Body:
    """A body of rooms.

    Attributes
    ----------
    ground_degc
        Monthly temperature under surfaces whose outside is the ground; None for the air's
        monthly mean.
    stirred_w_per_m2k
        Wind's share of the outer film for each metre per second; 0 keeps the films told.
    """

    rooms: tuple[Room, ...]
    surfaces: tuple[Surface, ...]
    windows: tuple[Window, ...] = ()
    masses: tuple[Mass, ...] = ()
    passages: tuple[Passage, ...] = ()
    ground_degc: tuple[float, ...] | None = None
    stirred_w_per_m2k: float = 0.0
    notes: tuple[str, ...] = field(default=())
