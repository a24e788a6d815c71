"""The base vehicle: what the maker delivers, before anything is built in."""

from enum import StrEnum
from typing import Literal

from pydantic import Field

from coachwright.model.part import ID_PATTERN
from coachwright.model.record import (
    Angle,
    Area,
    CurrentPos,
    Density,
    Fraction,
    Length,
    LengthNonNeg,
    LengthPos,
    Mass,
    MassPos,
    Moment,
    Pressure,
    Record,
    Speed,
    Voltage,
    VolumePos,
)
from coachwright.model.tyre_size import SPEED_SYMBOL_PATTERN, TyreSizeText


class Market(StrEnum):
    """Where the vehicle was made for."""

    US = "us"
    EU = "eu"
    UK = "uk"


class Outside(Record):
    """Outside dimensions; x runs rearwards from the front axle."""

    wheelbase_mm: LengthPos
    length_mm: LengthPos
    width_mm: LengthPos
    """Without mirrors."""
    height_mm: LengthPos
    """Above the ground, unladen."""
    front_overhang_mm: LengthPos
    floor_height_mm: LengthPos
    """Load floor above the ground."""
    track_front_mm: LengthPos
    track_rear_mm: LengthPos


class WidthAt(Record):
    """Half of the inner width at one height above the load floor."""

    z_mm: LengthNonNeg
    half_width_mm: LengthPos


class WheelArch(Record):
    """A wheel arch; there is the same one on the other side."""

    x_from_mm: Length
    x_to_mm: Length
    inner_y_mm: LengthPos
    """Distance of its inner face from the centreline."""
    height_mm: LengthPos


class Shell(Record):
    """The inner shell of bare metal."""

    cab_line_mm: Length
    """x behind which the living space begins."""
    rear_mm: Length
    """x of the closed rear doors' inner face at the floor."""
    ceiling_mm: LengthPos
    """Lowest metal of the roof above the load floor."""
    rib_depth_mm: LengthNonNeg = 0.0
    half_widths: tuple[WidthAt, ...] = Field(min_length=2)
    """From the floor upwards."""
    wheel_arches: tuple[WheelArch, ...] = ()


class Aperture(Record):
    """A door opening."""

    name: str
    wall: Literal["left", "right", "rear"]
    from_mm: Length
    """Edge with the smallest x (side doors) or y (rear doors)."""
    clear_width_mm: LengthPos
    clear_height_mm: LengthPos
    sill_mm: LengthNonNeg
    """Above the load floor."""


class RearZone(Record):
    """Something on the closed rear doors that must not be covered."""

    name: str
    kind: Literal["lamp", "plate", "camera", "window", "handle"]
    from_mm: tuple[Length, Length]
    """y and z (from the load floor) of its lower left corner, seen along x."""
    to_mm: tuple[Length, Length]


class Roof(Record):
    """The outside of the roof that can carry something."""

    x_from_mm: Length
    x_to_mm: Length
    half_width_mm: LengthPos
    rails: bool = False
    crown_mm: LengthNonNeg = 0.0
    """How much higher the roof is on the centreline than at `half_width_mm`."""


class UnderbodyZone(Record):
    """A place under the floor, free or taken."""

    name: str
    use: Literal["free", "exhaust", "spare wheel", "fuel tank", "suspension", "driveline"]
    from_mm: tuple[Length, Length, Length]
    to_mm: tuple[Length, Length, Length]


class Ratings(Record):
    """What the maker allows."""

    gross_kg: MassPos
    """GVWR (US) or technically permissible maximum laden mass."""
    front_axle_kg: MassPos
    rear_axle_kg: MassPos
    gross_train_kg: MassPos | None = None
    """GCWR (US) or permissible train mass."""


class Kerb(Record):
    """The vehicle on the scales as the maker states it, with what that includes."""

    front_kg: MassPos
    rear_kg: MassPos
    fuel_frac: Fraction
    """Share of the fuel tank that is included."""
    driver_kg: Mass = 0.0
    """Mass of a driver that is included."""
    tolerance_frac: Fraction = 0.03
    """Half-width of the 95 % band of the maker's figure."""
    cg_height_mm: LengthPos
    """Centre of gravity above the ground."""
    cg_y_mm: Length = 0.0


class Fuel(Record):
    """Fuel and its tank."""

    kind: Literal["diesel", "petrol", "electric"]
    tank_l: VolumePos
    density_kg_per_l: Density
    centre_mm: tuple[Length, Length, Length]
    """Of the tank, in the vehicle's axes."""


class StandardTyre(Record):
    """The tyre on the placard."""

    size: TyreSizeText
    kind: Literal["passenger", "light truck", "commercial", "camper"]
    load_index_single: int = Field(ge=60, le=130)
    load_index_dual: int | None = Field(default=None, ge=60, le=130)
    speed_symbol: str = Field(pattern=SPEED_SYMBOL_PATTERN)
    rated_pressure_kpa: Pressure
    """Cold pressure at which it carries its rated load."""
    front_pressure_kpa: Pressure
    rear_pressure_kpa: Pressure
    wheel_mass_kg: MassPos
    """One wheel with its tyre."""
    dual_rear: bool = False
    largest_diameter_mm: LengthPos
    """Largest tyre that clears without change to the vehicle."""
    spare_carried: bool = True
    speedometer_at_100_km_per_h: Speed | None = None
    """What the speedometer shows at a true 100 km/h on this tyre; unknown where not given."""


class Alternator(Record):
    """The vehicle's alternator."""

    rated_a: CurrentPos
    system_v: Voltage = 12.0
    vehicle_load_a: CurrentPos
    """What the vehicle itself takes while driving."""
    idle_frac: Fraction
    """Share of the rating that it can give at idle."""
    cruise_frac: Fraction
    """Share of the rating that it can give at cruise."""
    smart: bool
    """Its voltage follows the vehicle's strategy."""


class FactorySeat(Record):
    """A seat that comes with the vehicle."""

    name: str = Field(pattern=ID_PATTERN)
    reference_mm: tuple[Length, Length, Length]
    """Seating reference point."""
    belt: Literal["none", "lap", "three-point"] = "three-point"
    driver: bool = False


class LoadLimits(Record):
    """Where else the maker limits loads; None where the maker gives no figure."""

    roof_moving_kg: Mass | None = None
    roof_standing_kg: Mass | None = None
    rear_door_kg: Mass | None = None
    """On each rear door."""
    rear_door_moment_n_m: Moment | None = None
    """About the hinge line of one rear door."""
    hitch_kg: Mass | None = None
    """Downward load on the hitch."""
    side_kg: Mass | None = None
    """Hung on one side wall or its gutter."""


class RearEnd(Record):
    """What the departure angle and the doors need."""

    lowest_x_mm: Length
    """x of the lowest point behind the rear wheels."""
    lowest_height_mm: LengthPos
    """Its height above the ground."""
    door_hinge_y_mm: LengthPos
    """Distance of each hinge line from the centreline."""
    hitch_x_mm: Length | None = None
    hitch_height_mm: LengthPos | None = None
    """Above the ground."""
    door_top_mm: LengthPos | None = None
    """Top of the rear doors above the load floor."""
    open_deg: Angle = 180.0
    """How far the rear doors open."""
    zones: tuple[RearZone, ...] = ()
    """Lamps, plate, camera and the like."""


class Skin(Record):
    """What sun and cold find of the body; what is not given is assumed and said to be."""

    thickness_mm: LengthPos | None = None
    """Of the sheet."""
    roof_absorptance_frac: Fraction | None = None
    """Share of the sun that the roof's colour takes up."""
    wall_absorptance_frac: Fraction | None = None
    """Share of the sun that the walls' colour takes up."""
    rib_frac: Fraction | None = None
    """Share of walls and roof that ribs stand on."""


class CabGlass(Record):
    """The panes of the cab as they come; what is not given is assumed from the vehicle's width."""

    windscreen_m2: Area | None = None
    door_m2: Area | None = None
    """Of one cab door."""


class BaseVehicle(Record):
    """The unconverted van."""

    id: str = Field(pattern=ID_PATTERN)
    name: str
    market: Market
    year_from: int = Field(ge=1950, le=2100)
    year_to: int = Field(ge=1950, le=2100)
    category: Literal["M1", "N1", "N2", "MPV", "truck"]
    """Class M1, N1, N2 (EU, UK); multipurpose passenger vehicle or truck (US)."""
    top_speed_km_per_h: Speed = 160.0
    outside: Outside
    shell: Shell
    apertures: tuple[Aperture, ...] = ()
    roof: Roof
    underbody: tuple[UnderbodyZone, ...] = ()
    ratings: Ratings
    kerb: Kerb
    fuel: Fuel
    tyre: StandardTyre
    alternator: Alternator
    seats: tuple[FactorySeat, ...] = Field(min_length=1)
    limits: LoadLimits = LoadLimits()
    rear_end: RearEnd
    skin: Skin = Skin()
    cab_glass: CabGlass = CabGlass()
