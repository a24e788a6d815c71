"""From a build and its weights to everything about the road."""

from collections.abc import Iterator

from coachwright.model.build import Build
from coachwright.road import figures
from coachwright.road.model import GroundAngles, Road, Speedometer, TyreSet
from coachwright.road.stage_loads import (
    carrier_loads,
    crash_forces,
    door_moments,
    ladder_states,
    zone_loads,
)
from coachwright.road.stage_outside import ground_angles, size_with_everything, stability
from coachwright.road.stage_tyres import axle_tyres, spare_wheel, speedometer, tyre_set
from coachwright.weights.model import Weights


def stage(build: Build, weights: Weights) -> Road:
    """Return tyres, size, angles, stability and outside loads of a build.

    Parameters
    ----------
    build
        The build.
    weights
        Its axle loads and its centre of gravity.

    Returns
    -------
    Road
        With its figures and what was assumed.
    """
    tyres = tyre_set(build)
    axles = axle_tyres(build, weights, tyres)
    speed = speedometer(build, tyres)
    size, not_counted = size_with_everything(build, tyres)
    angles = ground_angles(build, tyres)
    stable = stability(build, weights, tyres)
    zones = zone_loads(build)
    moments = door_moments(build, zones)
    crash = crash_forces(zones)
    return Road(
        tyres=tyres,
        axles=axles,
        speedometer=speed,
        size=size,
        not_counted=not_counted,
        angles=angles,
        stability=stable,
        zones=zones,
        door_moments=moments,
        carriers=carrier_loads(build),
        ladders=ladder_states(build),
        spare=spare_wheel(build, tyres),
        crash=crash,
        figures=(
            *figures.tyre_figures(tyres, axles, speed),
            *figures.size_figures(size),
            *figures.angle_figures(angles),
            *figures.stability_figures(stable),
            *figures.load_figures(zones, moments, crash),
        ),
        notes=tuple(_notes(build, tyres, speed, angles)),
    )


def _notes(
    build: Build, tyres: TyreSet, speed: Speedometer, angles: GroundAngles
) -> Iterator[str]:
    if tyres.fitting and not speed.known:
        yield "the speedometer is taken as exact on the placard tyre: nothing is stated"
    if tyres.fitting and tyres.change.ratio != 1:
        yield (
            "heights and angles are those on the fitted tyres; the engine turns at "
            f"{tyres.change.gearing_ratio:.3f} of its speed, as with a changed final drive"
        )
    if len(tuple(build.having("tyre"))) > 1:
        yield "more than one tyre set is listed; the first with the mounting wheels counts"
    if angles.between is not None:
        yield "the ramp angle is that of the fittings; the vehicle's own underside is not known"
    rear_mm = build.vehicle.outside.length_mm - build.vehicle.outside.front_overhang_mm
    for cargo in build.brief.cargo:
        if cargo.centre_mm[0] > rear_mm:
            yield (
                f"{cargo.name} lies behind the vehicle and is on no door or hitch: "
                "enter it as the contents of the fitting that carries it"
            )
