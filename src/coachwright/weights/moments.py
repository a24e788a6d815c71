"""Statics of a two-axle vehicle: axle loads, centre of gravity, side shares."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from coachwright.errors import OutOfRange


@dataclass(frozen=True, kw_only=True, slots=True)
class PointMass:
    """A mass at a place: x from the front axle, y to the right, height above the ground."""

    mass_kg: float
    x_mm: float
    y_mm: float = 0.0
    height_mm: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """The vehicle at rest on level ground.

    Attributes
    ----------
    front_kg, rear_kg
        Axle loads; negative where the axle would lift.
    """

    total_kg: float
    front_kg: float
    rear_kg: float
    cg_x_mm: float
    cg_y_mm: float
    cg_height_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleShare:
    """What one mass puts on each axle; negative where it relieves it."""

    front_kg: float
    rear_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SideSplit:
    """What one axle's load puts on each side."""

    left_kg: float
    right_kg: float
    right_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class LiftedHeight:
    """Height of the centre of gravity found by lifting an axle."""

    angle_deg: float
    cg_height_mm: float


def _positive(name: str, value: float, unit: str) -> None:
    if not value > 0:
        raise OutOfRange(name, value, f"more than 0 {unit}")


def axle_share(*, mass_kg: float, x_mm: float, wheelbase_mm: float) -> AxleShare:
    """Return what one mass puts on each axle.

    Parameters
    ----------
    mass_kg
        The mass. [kg]
    x_mm
        Of its centre, rearwards from the front axle. [mm]
    wheelbase_mm
        Distance of the axles. [mm]

    Returns
    -------
    AxleShare
        Rear and front share; a mass behind the rear axle relieves the front axle.

    Raises
    ------
    OutOfRange
        Where the wheelbase is not positive.

    Notes
    -----
    R = m · x / WB, F = m - R.  Level ground, at rest, two axles.

    References
    ----------
    [body-builder-manual-appendix-b]

    Examples
    --------
    >>> axle_share(mass_kg=100, x_mm=5200, wheelbase_mm=4000)
    AxleShare(front_kg=-30.0, rear_kg=130.0)
    """
    _positive("wheelbase_mm", wheelbase_mm, "mm")
    rear_kg = mass_kg * x_mm / wheelbase_mm
    return AxleShare(front_kg=mass_kg - rear_kg, rear_kg=rear_kg)


def balance(*, masses: Iterable[PointMass], wheelbase_mm: float) -> Balance:
    """Return total, axle loads and centre of gravity of masses at rest on level ground.

    Parameters
    ----------
    masses
        Each with its place.
    wheelbase_mm
        Distance of the axles. [mm]

    Returns
    -------
    Balance
        Total, axle loads and centre of gravity.

    Raises
    ------
    OutOfRange
        Where the wheelbase or the total is not positive.

    Notes
    -----
    W = Σ m, R = Σ m·x / WB, F = W - R, x = Σ m·x / W, and so for y and the height.

    References
    ----------
    [body-builder-manual-appendix-b], [jazar-vehicle-dynamics]

    Examples
    --------
    >>> balance(masses=[PointMass(mass_kg=1765, x_mm=1220)], wheelbase_mm=2840).front_kg
    1006.7957746478874
    """
    _positive("wheelbase_mm", wheelbase_mm, "mm")
    points = tuple(masses)
    total_kg = math.fsum(point.mass_kg for point in points)
    _positive("total_kg", total_kg, "kg")
    moment_x_kg_mm = math.fsum(point.mass_kg * point.x_mm for point in points)
    moment_y_kg_mm = math.fsum(point.mass_kg * point.y_mm for point in points)
    moment_z_kg_mm = math.fsum(point.mass_kg * point.height_mm for point in points)
    share = axle_share(mass_kg=total_kg, x_mm=moment_x_kg_mm / total_kg, wheelbase_mm=wheelbase_mm)
    return Balance(
        total_kg=total_kg,
        front_kg=share.front_kg,
        rear_kg=share.rear_kg,
        cg_x_mm=moment_x_kg_mm / total_kg,
        cg_y_mm=moment_y_kg_mm / total_kg,
        cg_height_mm=moment_z_kg_mm / total_kg,
    )


def side_split(*, axle_kg: float, cg_y_mm: float, track_mm: float) -> SideSplit:
    """Return an axle's load on its left and right side.

    Parameters
    ----------
    axle_kg
        The axle's load. [kg]
    cg_y_mm
        Of the vehicle's centre of gravity, to the right of the centreline. [mm]
    track_mm
        Of this axle. [mm]

    Returns
    -------
    SideSplit
        Both sides and the right side's share.

    Raises
    ------
    OutOfRange
        Where the track is not positive.

    Notes
    -----
    right share = 0.5 + y / T for each axle.  The frame is taken as rigid and each axle takes its
    part of the lateral moment in proportion to its load; springs of unlike roll stiffness share
    it otherwise, the sum of both axles stays.  At rest, level.

    Examples
    --------
    >>> round(side_split(axle_kg=200, cg_y_mm=600, track_mm=1750).right_kg, 2)
    168.57
    """
    _positive("track_mm", track_mm, "mm")
    right_frac = 0.5 + cg_y_mm / track_mm
    right_kg = axle_kg * right_frac
    return SideSplit(left_kg=axle_kg - right_kg, right_kg=right_kg, right_frac=right_frac)


def on_grade(
    *, total_kg: float, cg_x_mm: float, cg_height_mm: float, wheelbase_mm: float, rise_frac: float
) -> AxleShare:
    """Return the axle loads on a slope, normal to the road, as kilograms.

    Parameters
    ----------
    total_kg
        The vehicle. [kg]
    cg_x_mm
        Of the centre of gravity, rearwards from the front axle. [mm]
    cg_height_mm
        Of the centre of gravity above the road. [mm]
    wheelbase_mm
        Distance of the axles. [mm]
    rise_frac
        Rise over run; positive uphill. [frac]

    Returns
    -------
    AxleShare
        Loads normal to the road divided by g.

    Raises
    ------
    OutOfRange
        Where the wheelbase is not positive.

    Notes
    -----
    F = W (c·cos θ - h·sin θ) / WB and R = W (b·cos θ + h·sin θ) / WB with tan θ = rise, b = x,
    c = WB - x.  At rest or at steady speed without air drag.

    References
    ----------
    [vehicle-dynamics-course-notes]

    Examples
    --------
    >>> on_grade(total_kg=1000, cg_x_mm=2000, cg_height_mm=800, wheelbase_mm=4000, rise_frac=0)
    AxleShare(front_kg=500.0, rear_kg=500.0)
    """
    _positive("wheelbase_mm", wheelbase_mm, "mm")
    angle_rad = math.atan(rise_frac)
    lever_mm = cg_height_mm * math.sin(angle_rad)
    front_mm = (wheelbase_mm - cg_x_mm) * math.cos(angle_rad) - lever_mm
    rear_mm = cg_x_mm * math.cos(angle_rad) + lever_mm
    return AxleShare(
        front_kg=total_kg * front_mm / wheelbase_mm, rear_kg=total_kg * rear_mm / wheelbase_mm
    )


def height_by_lift(
    *,
    total_kg: float,
    front_level_kg: float,
    front_lifted_kg: float,
    wheelbase_mm: float,
    wheel_radius_mm: float,
    lift_mm: float,
) -> LiftedHeight:
    """Return the height of the centre of gravity from weighing with the rear axle lifted.

    Parameters
    ----------
    total_kg
        The vehicle. [kg]
    front_level_kg, front_lifted_kg
        Front axle on the scales, level and with the rear lifted. [kg]
    wheelbase_mm
        Distance of the axles. [mm]
    wheel_radius_mm
        Height of the wheel centres when level. [mm]
    lift_mm
        How far the rear wheels were lifted. [mm]

    Returns
    -------
    LiftedHeight
        The angle and the height above the ground.

    Raises
    ------
    OutOfRange
        Where a mass or length is not positive, or the lift reaches the wheelbase.

    Notes
    -----
    h = r + WB·ΔF / (W·tan θ), sin θ = lift / WB.  Suspension locked, fuel tank full or empty.

    References
    ----------
    [iso-10392]

    Examples
    --------
    >>> found = height_by_lift(total_kg=2500, front_level_kg=1200, front_lifted_kg=1281,
    ...     wheelbase_mm=3500, wheel_radius_mm=360, lift_mm=600)
    >>> round(found.cg_height_mm, 1)
    1011.7
    """
    _positive("total_kg", total_kg, "kg")
    _positive("wheelbase_mm", wheelbase_mm, "mm")
    _positive("lift_mm", lift_mm, "mm")
    if lift_mm >= wheelbase_mm:
        raise OutOfRange("lift_mm", lift_mm, f"less than the wheelbase, {wheelbase_mm:g} mm")
    angle_rad = math.asin(lift_mm / wheelbase_mm)
    moved_kg = front_lifted_kg - front_level_kg
    return LiftedHeight(
        angle_deg=math.degrees(angle_rad),
        cg_height_mm=wheel_radius_mm + wheelbase_mm * moved_kg / (total_kg * math.tan(angle_rad)),
    )
