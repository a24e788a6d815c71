"""The headline figures of the road discipline."""

from collections.abc import Iterator

from coachwright.model.working import Figure
from coachwright.road.ground_angles import LimitingPoint
from coachwright.road.model import (
    AxleTyres,
    CrashForce,
    DoorMoment,
    GroundAngles,
    Speedometer,
    Stability,
    TyreSet,
    ZoneLoad,
)
from coachwright.road.overall_size import OverallSize
from coachwright.units import told


def tyre_figures(
    tyres: TyreSet, axles: tuple[AxleTyres, ...], speedometer: Speedometer
) -> Iterator[Figure]:
    """Yield what the tyres carry, their pressures, and what their diameter changes."""
    for axle in axles:
        yield from _axle_figures(axle)
    yield Figure(
        name="road.tyre-diameter",
        label="Overall diameter of the tyre",
        value=tyres.dimensions.diameter_mm,
        unit="mm",
        working=tyres.dimensions.working,
    )
    yield Figure(
        name="road.tyre-diameter-change",
        label="Diameter of the fitted tyre over the placard tyre's",
        value=tyres.change.ratio,
        unit="1",
        working=tyres.change.working,
    )
    yield Figure(
        name="road.speed-true-at-100",
        label=f"True speed where {told(speedometer.at_100.shown_km_per_h, 'km/h')} is shown",
        value=speedometer.at_100.true_km_per_h,
        unit="km/h",
        working=speedometer.at_100.working,
    )


def _axle_figures(axle: AxleTyres) -> Iterator[Figure]:
    name = axle.axle.split(" ")[0]
    yield Figure(
        name=f"road.{name}-tyre-capacity",
        label=f"What the tyres of the {axle.axle} carry",
        value=axle.capacity_kg,
        unit="kg",
        working=axle.capacity_working,
        missing=axle.missing,
    )
    yield Figure(
        name=f"road.{name}-tyre-pressure",
        label=f"Cold pressure advised for the {axle.axle}, never below the placard",
        value=axle.advised_pressure_kpa,
        unit="kPa",
        working=axle.advised_working,
        missing=axle.pressure_missing,
    )


def size_figures(size: OverallSize) -> Iterator[Figure]:
    """Yield the overall size with everything fitted."""
    for name, label, value_mm, working in (
        ("length", "Overall length, with everything", size.length_mm, size.length_working),
        ("width", "Overall width, without mirrors", size.width_mm, size.width_working),
        ("height", "Overall height, with everything", size.height_mm, size.height_working),
    ):
        yield Figure(
            name=f"road.overall-{name}", label=label, value=value_mm, unit="mm", working=working
        )


def angle_figures(angles: GroundAngles) -> Iterator[Figure]:
    """Yield the angles under the vehicle."""
    yield _angle(
        "road.departure-angle", "Departure angle", angles.equipped, "a point behind the rear tyres"
    )
    yield _angle(
        "road.departure-angle-alone",
        "Departure angle of the vehicle alone",
        angles.alone,
        "a point behind the rear tyres",
    )
    yield _angle(
        "road.breakover-angle",
        "Ramp angle of what is fitted between the axles",
        angles.between,
        "a fitting under the floor; the vehicle's own underside is not known",
    )


def _angle(name: str, label: str, limit: LimitingPoint | None, missing: str) -> Figure:
    if limit is None:
        return Figure(name=name, label=label, value=None, unit="deg", missing=missing)
    return Figure(
        name=name,
        label=f"{label}, limited by {limit.point.of}",
        value=limit.angle.exact_deg,
        unit="deg",
        working=limit.angle.working,
    )


def stability_figures(stability: Stability) -> Iterator[Figure]:
    """Yield the static stability factor."""
    yield Figure(
        name="road.static-stability-factor",
        label="Static stability factor, travelling",
        value=stability.travelling.stability_ratio,
        unit="1",
        working=stability.travelling.working,
        low=stability.low_ratio,
        high=stability.high_ratio,
    )


def load_figures(
    zones: tuple[ZoneLoad, ...],
    moments: tuple[DoorMoment, ...],
    crash: tuple[CrashForce, ...],
) -> Iterator[Figure]:
    """Yield what hangs outside, the moments on the doors, and the force in a crash pulse."""
    for zone in zones:
        yield Figure(
            name=f"road.{zone.zone.replace(' ', '-')}-load",
            label=f"Load: {zone.zone}",
            value=zone.load_kg,
            unit="kg",
            working=zone.working,
        )
    for moment in moments:
        yield Figure(
            name=f"road.{moment.zone.replace(' ', '-')}-moment",
            label=f"Moment about the hinge line: {moment.zone}",
            value=moment.load.moment_n_m,
            unit="N m",
            working=moment.load.working,
        )
    for force in crash:
        yield Figure(
            name=f"road.roof-crash-force-{force.source.split('-')[0]}",
            label=f"Force of the roof load at {force.pulse_factor:g} g",
            value=force.pulse.force_n,
            unit="N",
            working=force.pulse.working,
        )
