"""What the weights discipline finds.

Axes as everywhere: x rearwards from the front axle, y to the right.  Heights here are above the
**ground** (``height_mm``); a height from the load floor is spelt ``z_mm``.
"""

from dataclasses import dataclass
from enum import StrEnum

from coachwright.errors import UnknownName
from coachwright.model.working import Figure, Working
from coachwright.weights.model_label import Seating, WaterLine

__all__ = [
    "AxleSides",
    "Component",
    "Group",
    "LengthBand",
    "Load",
    "LoadCase",
    "MarginLeft",
    "MassBand",
    "MassItem",
    "Seating",
    "Statement",
    "TicketCheck",
    "TicketRow",
    "WaterLine",
    "Weights",
]


class Group(StrEnum):
    """What kind of thing a mass is; the load cases switch the variable groups."""

    BASE = "base vehicle"
    WHEELS = "wheel exchange"
    FITTING = "fitting"
    FINISH = "finish"
    FUEL = "fuel"
    GAS = "gas"
    FRESH = "fresh water"
    HOT_WATER = "water in the heater"
    FLUSH_WATER = "flush water"
    WASTE = "waste water"
    DRIVER = "driver"
    PASSENGER = "passenger"
    LUGGAGE = "luggage"
    CONTENTS = "contents"
    CARGO = "cargo"
    CORRECTION = "weighbridge correction"

    @property
    def words(self) -> str:
        """For people: many things are counted together under some of them."""
        return {Group.FITTING: "fittings", Group.FINISH: "finishes"}.get(self, self.value)


@dataclass(frozen=True, kw_only=True, slots=True)
class MassItem:
    """One mass at one place.

    Attributes
    ----------
    name
        Reference name: the fitting's, the traveller's; unlike any other item's.
    label
        For people.
    mass_kg
        When full or aboard; negative where something lighter took the place of the vehicle's own.
    tolerance_kg
        Half-width of the 95 % band of `mass_kg`.
    systematic_frac
        Share of `tolerance_kg` that is common to all items of the same `pool`.
    pool
        Items whose systematic shares err together; empty where there is none.
    height_mm, z_mm
        Of the centre of mass, above the ground and above the load floor.
    x_tolerance_mm, height_tolerance_mm
        Half-widths of the 95 % bands of `x_mm` and `height_mm`, where they are counted.
    source
        Where the mass and the place come from.
    """

    name: str
    label: str
    group: Group
    mass_kg: float
    tolerance_kg: float
    systematic_frac: float = 0.0
    pool: str = ""
    x_mm: float
    y_mm: float
    z_mm: float
    height_mm: float
    x_tolerance_mm: float = 0.0
    height_tolerance_mm: float = 0.0
    source: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class MassBand:
    """A mass with its one-sided 95 % bounds: true is above `low_kg`, and below `high_kg`."""

    nominal_kg: float
    low_kg: float
    high_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class LengthBand:
    """A length with its one-sided 95 % bounds."""

    nominal_mm: float
    low_mm: float
    high_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleSides:
    """How an axle's load stands on its two sides.

    Attributes
    ----------
    right_frac
        Share of the axle's load on its right side.
    """

    left_kg: float
    right_kg: float
    right_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Load:
    """What one item brings in one load case."""

    item: str
    group: Group
    share_frac: float
    mass_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadCase:
    """One state of the vehicle on the scales.

    Attributes
    ----------
    name
        ``as-delivered``, ``driver-only``, ``travelling``, ``grey-full``, ``front-axle-worst``,
        ``rear-axle-worst``, ``front-axle-least``, ``all-seats``, ``ticket``.
    loads
        Each item that is aboard, in the order of `Weights.items`.
    front_sides, rear_sides
        Rigid frame; each axle's share from the lateral centre of gravity and its own track.
    cg_x, cg_y, cg_height
        Centre of gravity; x from the front axle, y to the right, height above the ground.
    """

    name: str
    label: str
    loads: tuple[Load, ...]
    total: MassBand
    front: MassBand
    rear: MassBand
    front_sides: AxleSides
    rear_sides: AxleSides
    cg_x: LengthBand
    cg_y: LengthBand
    cg_height: LengthBand
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class MarginLeft:
    """What is left under one limit in one load case.

    Attributes
    ----------
    subject
        ``vehicle``, ``front axle`` or ``rear axle``.
    case
        Name of the load case.
    limit_kg
        Gross mass rating or the axle's.
    left
        Limit less load; `low_kg` is what is left at the 95 % bound of the load.
    """

    subject: str
    case: str
    limit_kg: float
    left: MassBand


@dataclass(frozen=True, kw_only=True, slots=True)
class Component:
    """One part of a stated mass; negative where it is taken off."""

    name: str
    mass_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Statement:
    """One mass as a rule book defines it, with its components.

    Attributes
    ----------
    name
        ``us-uvw``, ``us-occc``, ``eu-running-order``, ...; the figure is ``weights.<name less
        its first word>``.
    jurisdictions
        Where it is used; every one is given everywhere.
    mass
        Sum of the components, with bounds where the components have a tolerance.
    working
        With the keys of its sources.
    status
        ``read``, ``memory`` or ``practice``: how well its definition is known.
    front, rear
        Axle loads, where the mass is a state of the vehicle.
    """

    name: str
    title: str
    jurisdictions: tuple[str, ...]
    mass: MassBand
    components: tuple[Component, ...]
    working: Working
    status: str = "read"
    front: MassBand | None = None
    rear: MassBand | None = None
    note: str = ""

    @property
    def figure(self) -> str:
        """Name of its figure."""
        return f"weights.{self.name.split('-', 1)[1]}"


@dataclass(frozen=True, kw_only=True, slots=True)
class TicketRow:
    """One reading against the prediction.

    Attributes
    ----------
    subject
        ``vehicle``, ``front axle``, ``rear axle``, ``front left wheel``, ...
    difference_kg
        Weighed less predicted.
    bound_kg
        Half-width of the 95 % band of the difference: the model's tolerance and the scale's error
        in quadrature.
    within
        The difference is not larger than `bound_kg`.
    """

    subject: str
    weighed_kg: float
    predicted_kg: float
    difference_kg: float
    bound_kg: float
    within: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class TicketCheck:
    """A weighbridge ticket against the model.

    Attributes
    ----------
    predicted
        The model, uncorrected, in exactly the ticket's state.
    corrections
        The items of group `Group.CORRECTION` that enter every load case.
    applied
        How the difference was placed, in words.
    """

    date: str
    predicted: LoadCase
    rows: tuple[TicketRow, ...]
    corrections: tuple[MassItem, ...]
    applied: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Weights:
    """Masses, load cases, payload and statements of one build.

    Attributes
    ----------
    added_kg
        Mass of everything that the build fits to the base vehicle, empty.
    items
        Every mass, full or aboard, with the corrections of a ticket last.
    cases
        The load cases; see `case`.
    left
        Payload left against each limit in each load case.
    statements
        Masses as the rule books define them; see `statement`.
    ticket
        The weighbridge ticket against the model; None where there is none.
    notes
        What was assumed for want of data.
    """

    items: tuple[MassItem, ...]
    cases: tuple[LoadCase, ...]
    left: tuple[MarginLeft, ...]
    statements: tuple[Statement, ...]
    seating: Seating
    water_line: WaterLine
    added_kg: float
    ticket: TicketCheck | None
    figures: tuple[Figure, ...]
    notes: tuple[str, ...]

    def case(self, name: str) -> LoadCase:
        """Return one load case.

        Raises
        ------
        UnknownName
            Where there is no such case.
        """
        for case in self.cases:
            if case.name == name:
                return case
        raise UnknownName("load case", name, [case.name for case in self.cases])

    def statement(self, name: str) -> Statement:
        """Return one statement.

        Raises
        ------
        UnknownName
            Where there is no such statement.
        """
        for statement in self.statements:
            if statement.name == name:
                return statement
        raise UnknownName("statement", name, [s.name for s in self.statements])

    def of_elsewhere(self, jurisdiction: str) -> frozenset[str]:
        """Return the names of the figures that belong to the statements of other jurisdictions."""
        return frozenset(
            statement.figure
            for statement in self.statements
            if jurisdiction not in statement.jurisdictions
        )

    def added_by_kg(self, name: str) -> float | None:
        """Return what one fitting or finish adds, empty; None where it is not weighed.

        Parameters
        ----------
        name
            Of its item; wheels that take the place of the vehicle's own add the difference, on
            both axles together.
        """
        found = [
            item.mass_kg
            for item in self.items
            if item.name == name
            or (item.group is Group.WHEELS and item.name.startswith(f"{name}."))
        ]
        return sum(found) if found else None

    def margin(self, subject: str, case: str) -> MarginLeft:
        """Return what is left for the vehicle or an axle in one load case.

        Raises
        ------
        UnknownName
            Where there is no such subject or case.
        """
        for left in self.left:
            if (left.subject, left.case) == (subject, case):
                return left
        known = [f"{left.subject} {left.case}" for left in self.left]
        raise UnknownName("margin", f"{subject} {case}", known)
