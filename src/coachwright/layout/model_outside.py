"""What the layout finds outside: roof, rear doors, underbody, ladders, sides, slide-out trays.

Heights "above the ground" are those of the unladen vehicle on its standard tyres.
"""

from dataclasses import dataclass

from coachwright.layout.solids import Box
from coachwright.model.working import Figure


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofPlace:
    """How far a fitting stands over the edge of what carries it on the roof.

    Attributes
    ----------
    carrier
        "roof", or the rack or rail that it stands on.
    overhang_mm
        Largest over the four sides; negative is the distance that is left.
    side
        The side where that is: "front", "rear", "left" or "right".
    """

    name: str
    carrier: str
    overhang_mm: float
    side: str


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofCover:
    """One roof fitting above another that neither carries it nor is carried by it.

    Attributes
    ----------
    overlap_mm
        Smallest shift in plan that frees the lower one; 0 where it is free.
    """

    upper: str
    lower: str
    overlap_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofGap:
    """The nearest neighbour of a roof fitting at its own height, and the gap in plan."""

    name: str
    neighbour: str
    gap_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Deck:
    """A rack that may be stood on.

    Attributes
    ----------
    side_mm
        Side of the largest free square on it.
    """

    name: str
    side_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelFit:
    """A solar panel against the curved roof.

    Attributes
    ----------
    on
        What carries it; empty where it lies on the roof itself.
    bow_mm
        How much the roof falls under the panel, from its highest to its lowest place.
    edge_gap_mm
        From the roof to the underside at the farthest edge: `bow_mm` and the height at which the
        panel is mounted.
    bow_share_frac
        `bow_mm` over the panel's width across the vehicle.
    edge_mm
        Distance of its nearest edge from the roof's outline; negative over the edge.
    """

    name: str
    on: str
    bonded: bool
    bow_mm: float
    edge_gap_mm: float
    bow_share_frac: float
    edge_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class HigherNeighbour:
    """Something on the roof that stands higher than a panel.

    Attributes
    ----------
    rise_mm
        Its top above the panel's.
    distance_mm
        Gap in plan.
    space
        Around it, in the vehicle's axes; for the shading of the panel.
    """

    panel: str
    name: str
    rise_mm: float
    distance_mm: float
    space: Box


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorPlace:
    """A fitting on a rear door against the door's outline.

    Attributes
    ----------
    beyond_hinge_mm, beyond_middle_mm, above_mm, below_mm
        How far it reaches over the hinge line, the meeting edge in the middle, the top and the
        bottom; negative is the distance that is left.  `above_mm` is None where the vehicle does
        not state the top of its doors.
    """

    name: str
    door: str
    beyond_hinge_mm: float
    beyond_middle_mm: float
    above_mm: float | None
    below_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class CoveredZone:
    """A lamp, plate, camera, window or handle at the rear, and what hides it from behind.

    Attributes
    ----------
    covered_frac
        Share of it that is hidden from straight behind.
    covered_by
        Fittings that hide some of it.
    repeated
        Each of them carries its own lamps or plate instead.
    """

    zone: str
    kind: str
    covered_frac: float
    covered_by: tuple[str, ...]
    repeated: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorSwing:
    """How far a rear door opens with everything in place.

    Attributes
    ----------
    hung
        Fittings on it.
    behind
        Fittings behind it, on the hitch.
    open_deg
        Until something touches, or as far as the door goes.
    full_deg
        As far as the bare door goes.
    moving, hits
        What touches what; empty where nothing does.
    tilts
        What it hits can be tilted away, nobody knows how far.
    """

    door: str
    hung: tuple[str, ...]
    behind: tuple[str, ...]
    open_deg: float
    full_deg: float
    moving: str
    hits: str
    tilts: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Hung:
    """A fitting that sticks out behind the vehicle.

    Attributes
    ----------
    place
        Its mounting: a rear door or the hitch.
    added_length_mm
        By which it makes the vehicle longer.
    lowest_mm
        Its lowest edge above the ground.
    gap_mm
        Free depth between the closed doors and what hangs on the hitch; None on a door.
    needed_gap_mm
        Depth that both doors need to open to a right angle, with what hangs on them.
    tilts
        Its carrier tilts away, nobody knows how far.
    on_door_mm, on_hitch_mm
        Length that it would add flat on a door, and on the hitch so far back that both doors open
        to a right angle with nothing on them: the two ways to hang it, compared.
    """

    name: str
    place: str
    added_length_mm: float
    lowest_mm: float
    gap_mm: float | None
    needed_gap_mm: float | None
    tilts: bool
    on_door_mm: float
    on_hitch_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Taken:
    """A place under the floor that the vehicle needs itself and a fitting reaches into."""

    zone: str
    use: str
    shift_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class UnderPlace:
    """A fitting under the floor.

    Attributes
    ----------
    taken
        What it reaches into, and the smallest shift that frees it.
    free_zone
        The free place that holds it best; empty where the vehicle states none.
    outside_mm
        How far it reaches out of that place; 0 where it is inside, None without one.
    clearance_mm
        Its lowest point above the ground.
    exhaust_mm
        Distance from the nearest exhaust; None where the vehicle states none.
    """

    name: str
    taken: tuple[Taken, ...]
    free_zone: str
    outside_mm: float | None
    clearance_mm: float
    exhaust_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class LadderPlace:
    """A ladder as it is placed.

    Attributes
    ----------
    bottom_mm
        Its lowest edge above the ground.
    first_rung_mm
        As its record states it.
    below_roof_mm
        From its top up to the roof; negative where it stands higher.
    clear_width_mm
        As its record states it.
    """

    name: str
    bottom_mm: float
    first_rung_mm: float
    below_roof_mm: float
    clear_width_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class TrayHit:
    """What a tray meets on its way out, and the smallest shift that frees it."""

    name: str
    shift_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Tray:
    """A slide-out tray when it is out.

    Attributes
    ----------
    load
        Fittings on it.
    load_kg
        Their mass with contents.
    way
        "rear", "left", "right" or "front": where it goes.
    leaves
        It comes out of the van.
    opening
        The doorway that it goes through; empty where there is none.
    spare_mm
        Smallest distance to the edge of the doorway; negative where it does not pass.
    beyond_mm
        Free depth that it needs beside or behind the closed vehicle.
    hits
        Worst first.
    top_mm
        Top of the tray and all on it above the ground.
    """

    name: str
    load: tuple[str, ...]
    load_kg: float
    way: str
    leaves: bool
    opening: str
    spare_mm: float | None
    beyond_mm: float
    hits: tuple[TrayHit, ...]
    top_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class BesideDoor:
    """A fitting on the same side as a sliding door.

    Attributes
    ----------
    thickness_mm
        How far it stands out of the side.
    opens
        A window that swings out.
    overlap_mm
        Smallest shift along the side, up or down that takes it out of the way of the door; 0
        where it stands clear.
    """

    name: str
    door: str
    thickness_mm: float
    opens: bool
    overlap_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class OutsideSurface:
    """A table or worktop to use from outside, and its height above the ground."""

    name: str
    height_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Outside:
    """What is fitted outside, and whether it gets in the way.

    What it adds to the length, the free depth behind and the height of the floor are figures.
    """

    roof: tuple[RoofPlace, ...] = ()
    covers: tuple[RoofCover, ...] = ()
    gaps: tuple[RoofGap, ...] = ()
    decks: tuple[Deck, ...] = ()
    panels: tuple[PanelFit, ...] = ()
    higher: tuple[HigherNeighbour, ...] = ()
    door_places: tuple[DoorPlace, ...] = ()
    covered: tuple[CoveredZone, ...] = ()
    swings: tuple[DoorSwing, ...] = ()
    hung: tuple[Hung, ...] = ()
    under: tuple[UnderPlace, ...] = ()
    ladders: tuple[LadderPlace, ...] = ()
    trays: tuple[Tray, ...] = ()
    beside_doors: tuple[BesideDoor, ...] = ()
    surfaces: tuple[OutsideSurface, ...] = ()
    figures: tuple[Figure, ...] = ()
