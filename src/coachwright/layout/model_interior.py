"""What the inside of the van gives the people in it."""

from dataclasses import dataclass

from coachwright.model.working import Figure


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorPass:
    """Whether a part can be brought in, and through which door.

    Attributes
    ----------
    door, spare_mm
        The opening that is best for its largest box, rolled where that helps, and how much larger
        both sides of its section could be there; negative where it passes no opening, None where
        the vehicle states none.
    straight_door, straight_spare_mm
        The same for the box around all of it, carried in upright or on a side, with room behind
        the opening for all of its length.
    """

    name: str
    door: str
    spare_mm: float | None
    straight_door: str
    straight_spare_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadingStep:
    """One big part in the order in which they are brought in.

    Attributes
    ----------
    door
        The first opening that is still free enough for it.
    before
        What must not be in place yet, because it would close the way in.
    """

    name: str
    door: str
    before: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Loading:
    """How the parts come in.

    Attributes
    ----------
    big
        Parts that are too big to be handed in last.
    steps
        Big parts, first one first.
    stuck
        Big parts for which no order was found.
    """

    big: tuple[str, ...]
    passes: tuple[DoorPass, ...]
    steps: tuple[LoadingStep, ...]
    stuck: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Headroom:
    """The tallest that somebody of a given width can be on one way through the van.

    Attributes
    ----------
    clear_mm
        Above the finished floor; 0 where the way is closed at the feet.
    under
        What ends it: a fitting, a wall that leans in, or the ceiling.
    """

    way: str
    width_mm: float
    clear_mm: float
    under: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Sleeper:
    """One traveller and the bed that suits best when all are looked at together."""

    traveller: str
    bed: str
    stature_mm: float
    length_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Bedfellows:
    """Those who lie side by side in one bed.

    Attributes
    ----------
    shoulders_mm
        Their shoulder breadths together.
    measured
        All of them were measured; else the survey's 95th percentile of men stands in, in
        proportion to their stature for children.
    """

    bed: str
    travellers: tuple[str, ...]
    shoulders_mm: float
    width_mm: float
    measured: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class BedSpace:
    """The space above a made-up bed.

    Attributes
    ----------
    top_mm
        Top of the mattress above the finished floor.
    sit_mm
        Clear height above the mattress where it is best to sit up.
    least_mm
        Clear height above the mattress where it is lowest.
    under, least_under
        What ends each.
    other_bed
        The bed above it or below it; empty where it is no bunk.
    missing
        What is missing where the heights are None.
    """

    name: str
    top_mm: float | None
    sit_mm: float | None
    least_mm: float | None
    under: str
    least_under: str
    other_bed: str
    missing: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ToiletSpace:
    """The space around somebody who sits on the toilet.

    Attributes
    ----------
    stowed
        It is put away in a cabinet and taken out to be used: nothing is judged.
    seat_mm
        Top of the toilet above the finished floor, lid down.
    knees_mm
        From its back to what stands in front of the knees, door of the stall closed.
    knees_open_mm
        The same with the stall's door open; None where there is no stall in front.
    reach_mm
        How far the knees come through the open door; 0 where they stay inside.
    in_front
        What ends the room for the knees.
    shoulders_mm
        Free width at the shoulders.
    side_mm
        From the middle of the toilet to the nearer side.
    missing
        What is missing where the figures are None.
    """

    name: str
    stall: str
    stowed: bool
    seat_mm: float
    knees_mm: float | None
    knees_open_mm: float | None
    knees_needed_mm: float
    reach_mm: float
    in_front: str
    shoulders_mm: float | None
    shoulders_needed_mm: float
    side_mm: float | None
    missing: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ShowerSpace:
    """Clear height in a shower, above its tray."""

    name: str
    clear_mm: float
    under: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Worktop:
    """Height of a worktop above the finished floor."""

    name: str
    height_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class TableKnees:
    """Clear height under a table for somebody who sits at it."""

    name: str
    clear_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SeatSpace:
    """The way to one sitting place with a belt, and the space around it.

    Attributes
    ----------
    entry_mm
        Widest of the widths looked at with which a person gets from a door to the place; 0 where
        not even the narrowest does.
    head_mm
        Effective headroom: clear height above the seating reference point and what the body
        reaches below it.
    table_mm
        From the seating reference point forwards to the edge of the nearest table; None where
        there is none.
    """

    name: str
    faces: str
    entry_mm: float
    head_mm: float
    head_under: str
    head_needed_mm: float
    table: str
    table_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class WaysOut:
    """The ways out of one bed.

    Attributes
    ----------
    exits
        Those that count, nearest first.
    behind
        Exits that can only be reached past another one.
    missing
        What is missing to say so.
    """

    bed: str
    exits: tuple[str, ...]
    behind: tuple[str, ...]
    missing: str


@dataclass(frozen=True, kw_only=True, slots=True)
class EscapeOpening:
    """Clear size of a window or hatch that is a way of escape."""

    name: str
    short_mm: float
    long_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class CookingSpace:
    """The space above and beside a cooker.

    Attributes
    ----------
    burner
        It has open flames.
    stated_mm
        Height that the cooker's own clearance asks for; None where it states none.
    """

    name: str
    burner: bool
    above_mm: float
    above: str
    beside_mm: float
    beside: str
    stated_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class VentPlace:
    """Where a vent that cannot be closed sits in a wall or the floor.

    Attributes
    ----------
    low
        In the lower half of the room.
    above_floor_mm
        Its lower edge above the finished floor.
    over_mattress_mm
        Its lower edge above the highest mattress; None without a bed.
    """

    name: str
    low: bool
    above_floor_mm: float
    over_mattress_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class AlarmPlace:
    """Where an alarm sits.

    Attributes
    ----------
    below_ceiling_mm
        From the finished ceiling to its upper edge.
    above_floor_mm
        From the finished floor to its upper edge.
    over_mattress_mm
        Its lower edge above the lowest mattress; None without a bed.
    """

    name: str
    senses: tuple[str, ...]
    below_ceiling_mm: float
    above_floor_mm: float
    over_mattress_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class ExtinguisherPlace:
    """How far an extinguisher is from the opening of the main door; None where that is unknown."""

    name: str
    door: str
    distance_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """The way up from the ground through the main door.

    Attributes
    ----------
    step
        The fitted step; empty where there is none.
    height_mm
        Finished floor (or the sill, where that is higher) above the ground, unladen.
    rises_mm
        From the ground over the step to the floor.
    """

    door: str
    step: str
    height_mm: float
    rises_mm: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Interior:
    """What the inside of the van gives the people in it."""

    loading: Loading
    headrooms: tuple[Headroom, ...]
    sleepers: tuple[Sleeper, ...]
    bedfellows: tuple[Bedfellows, ...]
    bed_spaces: tuple[BedSpace, ...]
    toilets: tuple[ToiletSpace, ...]
    showers: tuple[ShowerSpace, ...]
    worktops: tuple[Worktop, ...]
    tables: tuple[TableKnees, ...]
    seats: tuple[SeatSpace, ...]
    ways_out: tuple[WaysOut, ...]
    escapes: tuple[EscapeOpening, ...]
    cookers: tuple[CookingSpace, ...]
    vents: tuple[VentPlace, ...]
    alarms: tuple[AlarmPlace, ...]
    extinguishers: tuple[ExtinguisherPlace, ...]
    entry: Entry | None
    figures: tuple[Figure, ...] = ()
