"""Living-space facets."""

from typing import Literal

from pydantic import Field

from coachwright.model.record import (
    Angle,
    Area,
    Flow,
    Fraction,
    Insulance,
    Length,
    LengthNonNeg,
    LengthPos,
    Mass,
    Record,
    Volume,
)

Purpose = Literal[
    "drawer",
    "door swing",
    "seat entry",
    "belt path",
    "bed making",
    "working space",
    "cooking clearance",
    "service",
    "filter",
    "filling",
    "ventilation",
    "exit",
    "standing",
    "knees",
    "hatch swing",
    "slide-out travel",
]
"""What an access zone is kept free for."""


class Zone(Record):
    """A space that must stay free; counted from the unturned body's smallest corner."""

    purpose: Purpose
    from_mm: tuple[Length, Length, Length]
    to_mm: tuple[Length, Length, Length]
    may_hold: tuple[str, ...] = ()
    """Facets of parts that may stand in it, such as ``"table"``."""
    shares_with: tuple[Purpose, ...] | None = None
    """Purposes of other zones that it may overlap; any where not given."""
    always: bool = False
    """Kept free all the time, not only while it is used: it passes no door that is mostly closed,
    and nothing moves through it unless `shares_with` says so."""


Pane = Literal[
    "single glass",
    "tinted glass",
    "single acrylic",
    "double acrylic",
    "double glass",
    "opaque",
]
"""What an opening is glazed with; ``"opaque"`` for a lid or vent that lets no light through."""


class Access(Record):
    """The spaces that must stay free around a part."""

    zones: tuple[Zone, ...] = Field(min_length=1)


class Bed(Record):
    """A place to sleep."""

    length_mm: LengthPos
    width_mm: LengthPos
    berths: int = Field(ge=1)
    """Of all beds of the part together."""
    beds: int = Field(default=1, ge=1)
    """Separate beds of this length and width, such as a pair of singles."""
    drop_mm: LengthNonNeg = 0.0
    """How far it comes down for the night from where it stands."""
    limit_kg: Mass | None = None


class SeatPlace(Record):
    """One sitting place of a seat, from the unturned body's smallest corner."""

    name: str
    reference_mm: tuple[Length, Length, Length]
    """The seating reference point."""


class Seat(Record):
    """A seat; a travel seat only where its belts and anchorages are stated."""

    places: tuple[SeatPlace, ...] = Field(min_length=1)
    belt: Literal["none", "lap", "three-point"]
    faces_deg: Angle = 0.0
    """Direction faced before it is turned: 0 forwards, 180 rearwards, 90 to the right."""
    travel_seat: bool = True
    anchorage_evidence: str = ""
    """What shows that seat and anchorage were tested, such as ``"UN R14, R17"``."""


class Carcass(Record):
    """A cabinet."""

    storage_l: Volume = 0.0
    contents_limit_kg: Mass | None = None
    free_vent_m2: Area | None = None
    """Of its openings for air that cannot be closed, low and high together."""


class Opening(Record):
    """A window, hatch or fixed vent."""

    kind: Literal["window", "hatch", "vent", "door"]
    clear_width_mm: LengthPos
    clear_height_mm: LengthPos
    opens: bool = True
    escape: bool = False
    free_vent_m2: Area | None = None
    """Area that cannot be closed."""
    pane: Pane | None = None
    """What is glazed; a single acrylic pane is taken for a window or hatch where not given."""
    own_blind: bool = False
    """Has a blind that shuts the sun out."""


class Blind(Record):
    """Blinds, panels or curtains that are put before panes of the vehicle or of other parts."""

    covers: tuple[Literal["cab", "windows", "hatches"], ...] = Field(min_length=1)
    passes_frac: Fraction
    """Share of the sun that still comes through."""
    insulance_m2k_per_w: Insulance = 0.0
    """Of itself with the air behind it."""


class CabDivider(Record):
    """Closes the cab off from the living space while parked: curtain or bulkhead."""

    insulance_m2k_per_w: Insulance
    """From face to face."""
    exchange_l_per_min: Flow
    """Air that still passes each way."""


class Enclosure(Record):
    """A stall, washroom or locker with an air of its own."""

    insulance_m2k_per_w: Insulance
    """Of its walls, from face to face."""
    exchange_l_per_min: Flow
    """Air that it exchanges with the living space while shut."""


class Detector(Record):
    """An alarm."""

    senses: tuple[Literal["smoke", "CO", "LPG"], ...] = Field(min_length=1)
    standard: str = ""


class Extinguisher(Record):
    """A fire extinguisher or blanket."""

    rating: str
    """As printed, such as ``"10-B:C"``."""


class Light(Record):
    """A lamp; its draw is in the part's DC load."""

    place: Literal["inside", "outside", "work", "reversing"]


class Table(Record):
    """A table, inside or outside."""

    height_mm: LengthPos
    length_mm: LengthPos
    width_mm: LengthPos
