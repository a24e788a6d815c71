"""What the road discipline finds.

Axes as everywhere: x rearwards from the front axle, y to the right; heights here are above the
**ground**, with the fitted tyres.
"""

from dataclasses import dataclass

from coachwright.errors import UnknownName
from coachwright.model.working import Figure, Working
from coachwright.road.carried import CarriedItem, HingeMoment, PulseForce
from coachwright.road.ground_angles import LimitingPoint
from coachwright.road.overall_size import OverallSize
from coachwright.road.speedometer import SpeedometerCheck, TrueSpeed
from coachwright.road.stability import StaticStability
from coachwright.road.tyre_geometry import TyreChange, TyreDimensions


@dataclass(frozen=True, kw_only=True, slots=True)
class TyreSet:
    """The tyres that the vehicle stands on.

    Attributes
    ----------
    fitting
        Reference name of the fitted set; empty where the placard's tyres stay.
    size
        As on the sidewall.
    dual_rear
        Two tyres on each side of the rear axle.
    top_speed_km_per_h
        What the speed symbol allows.
    placard_differences
        Parts of the designation (width, aspect, rim, marking) that differ from the placard.
    clearance_left_mm
        Largest diameter that clears less this tyre's; negative where it does not clear.
    """

    fitting: str
    size: str
    kind: str
    load_index_single: int
    load_index_dual: int | None
    speed_symbol: str
    rated_pressure_kpa: float
    dual_rear: bool
    top_speed_km_per_h: float
    top_speed_status: str
    dimensions: TyreDimensions
    change: TyreChange
    placard_differences: int
    largest_diameter_mm: float
    clearance_left_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleTyres:
    """One axle's tyres against what it carries.

    Attributes
    ----------
    axle
        ``front axle`` or ``rear axle``.
    rating_kg
        Of one tyre from its load index; None where the index that counts is not stated.
    divisor_factor
        By which the rating is divided (passenger-car tyres in the United States).
    capacity_kg
        All tyres of the axle together, after the divisor.
    load_kg, load_high_kg
        Travelling, and its one-sided 95 % bound.
    worst_kg, worst_high_kg
        The axle's worst combination, and its bound.
    heaviest_kg
        The larger of both bounds.
    axle_rating_kg
        GAWR, or the technically permissible mass on the axle.
    needed_pressure_kpa
        For `heaviest_kg` by the European commercial formula; None where it does not apply.
    placard_pressure_kpa
        What the vehicle maker asks for on the placard tyre.
    advised_pressure_kpa
        The larger of the two; never below the placard.
    missing
        Why a value is None.
    """

    axle: str
    tyres: int
    load_index: int | None
    rating_kg: float | None
    divisor_factor: float
    capacity_kg: float | None
    load_kg: float
    load_high_kg: float
    worst_kg: float
    worst_high_kg: float
    heaviest_kg: float
    axle_rating_kg: float
    needed_pressure_kpa: float | None
    placard_pressure_kpa: float
    advised_pressure_kpa: float | None
    capacity_working: Working | None
    pressure_working: Working | None
    advised_working: Working | None
    missing: str
    pressure_missing: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Speedometer:
    """The speedometer after a change of tyres.

    Attributes
    ----------
    known
        Whether the vehicle states what it shows at a true 100 km/h; otherwise it is taken as
        exact on the placard tyre.
    at_100
        True speed where 100 km/h is shown.
    at_top
        The reading at a true top speed against the band.
    """

    known: bool
    at_100: TrueSpeed
    at_top: SpeedometerCheck


@dataclass(frozen=True, kw_only=True, slots=True)
class GroundAngles:
    """Departure angle with and without the equipment, and what hangs between the axles.

    Attributes
    ----------
    wheel_radius_mm
        Static loaded radius used.
    alone, equipped
        The vehicle alone on the same tyres, and with everything behind the rear wheels; None
        where no point lies behind the rear tyres.
    between
        The fitting between the axles with the smallest ramp (breakover) angle; None where
        nothing is fitted there.  The vehicle's own underside is not known.
    lowest_between_mm
        Height of the lowest fitting between the axles.
    """

    wheel_radius_mm: float
    alone: LimitingPoint | None
    equipped: LimitingPoint | None
    between: LimitingPoint | None
    lowest_between_mm: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Stability:
    """Static stability factor travelling, with the bounds of the height of the centre of gravity.

    Attributes
    ----------
    low_ratio, high_ratio
        From the upper and the lower bound of the height.
    """

    travelling: StaticStability
    low_ratio: float
    high_ratio: float


@dataclass(frozen=True, kw_only=True, slots=True)
class ZoneLoad:
    """What hangs on one place of the vehicle.

    Attributes
    ----------
    zone
        ``roof``, ``roof standing``, ``rear door left``, ``rear door right``, ``hitch``,
        ``side left``, ``side right``.
    limit_kg
        The vehicle maker's; None where none is stated.
    person_kg
        A person counted in `load_kg`.
    """

    zone: str
    load_kg: float
    limit_kg: float | None
    items: tuple[CarriedItem, ...]
    person_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorMoment:
    """Moment of a rear door's load about its hinge line.

    Attributes
    ----------
    limit_n_m
        The vehicle maker's; None where none is stated.
    """

    zone: str
    load: HingeMoment
    limit_n_m: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CarrierLoad:
    """What stands on one carrier, counted through everything that stands on that.

    Attributes
    ----------
    kind
        The carrier's facet: ``rear_door_carrier``, ``hitch_carrier``, ``roof_rack``,
        ``slide_out``.
    standing_kg, standing_limit_kg
        A roof rack with one person on it; None where it is not meant to be stood on.
    """

    carrier: str
    kind: str
    load_kg: float
    limit_kg: float
    standing_kg: float | None
    standing_limit_kg: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class LadderState:
    """A ladder or step, and the heaviest person who may use it.

    Attributes
    ----------
    step
        One step, not a ladder: it has no rungs.
    """

    name: str
    step: bool
    first_rung_mm: float
    rung_spacing_mm: float | None
    clear_width_mm: float
    limit_kg: float | None
    person_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SpareWheel:
    """The spare wheel; `diameter_mm` is None where there is none."""

    source: str
    size: str
    diameter_mm: float | None
    full_size: bool
    difference_frac: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class CrashForce:
    """Force of the roof load on its fixings in a city-crash pulse."""

    source: str
    pulse_factor: float
    pulse: PulseForce


@dataclass(frozen=True, kw_only=True, slots=True)
class Road:
    """Tyres, size, angles, stability and loads outside of one build.

    Attributes
    ----------
    not_counted
        ``name (kind: dimension)`` for each fitting that the jurisdiction leaves out of a
        dimension.
    zones
        Each place outside that can carry something; see `zone`.
    door_moments
        Both rear doors.
    notes
        What was assumed for want of data.
    """

    tyres: TyreSet
    axles: tuple[AxleTyres, ...]
    speedometer: Speedometer
    size: OverallSize
    not_counted: tuple[str, ...]
    angles: GroundAngles
    stability: Stability
    zones: tuple[ZoneLoad, ...]
    door_moments: tuple[DoorMoment, ...]
    carriers: tuple[CarrierLoad, ...]
    ladders: tuple[LadderState, ...]
    spare: SpareWheel
    crash: tuple[CrashForce, ...]
    figures: tuple[Figure, ...]
    notes: tuple[str, ...]

    def axle(self, name: str) -> AxleTyres:
        """Return one axle, ``front axle`` or ``rear axle``.

        Raises
        ------
        UnknownName
            Where there is no such axle.
        """
        for axle in self.axles:
            if axle.axle == name:
                return axle
        raise UnknownName("axle", name, [axle.axle for axle in self.axles])

    def zone(self, name: str) -> ZoneLoad:
        """Return what hangs on one place of the vehicle.

        Raises
        ------
        UnknownName
            Where nothing is known of such a place.
        """
        for zone in self.zones:
            if zone.zone == name:
                return zone
        raise UnknownName("zone", name, [zone.zone for zone in self.zones])
