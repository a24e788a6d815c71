"""Take what holds water on the design cold night to its subject."""

from coachwright.model.build import INSIDE, Build, Fitted, WaterRun
from coachwright.model.working import Figure
from coachwright.water.assumptions import NIGHTFALL_DEGC
from coachwright.water.frost import FreezingTime, below_freezing_k, freezing_time
from coachwright.water.model import FrostExposure, Place


def take_frost(build: Build) -> tuple[tuple[FrostExposure, ...], tuple[Figure, ...]]:
    """Return what stands in frost and what does not, with the shortest time to freezing."""
    tanks = [_tank(build, fitted) for fitted in build.having("tank")]
    heaters = [_heater(build, fitted) for fitted in build.having("water_heater")]
    runs = [_run(build, run) for run in build.water_runs]
    exposures = tuple(exposure for exposure, _ in tanks) + tuple(heaters) + tuple(runs)
    return exposures, _figures(tanks)


def _place(fitted: Fitted) -> Place:
    heated = fitted.fitting.heated_space
    if heated is None:
        return "inside" if fitted.fitting.mounting in INSIDE else "outside"
    return "heated" if heated else "outside"


def _around_degc(build: Build, place: Place) -> float:
    """Return the air round a place: an unheated van is as cold as the night."""
    warm = place == "heated" or (place == "inside" and any(build.having("heater")))
    return build.brief.habits.night_degc if warm else build.brief.climate.cold_night_degc


def _tank(build: Build, fitted: Fitted) -> tuple[FrostExposure, FreezingTime | None]:
    tank = fitted.part.tank
    assert tank is not None
    place = _place(fitted)
    around = _around_degc(build, place)
    protection = "its own heating" if tank.heated else ""
    below = below_freezing_k(around_degc=around, protected=tank.heated)
    hours = None
    if below > 0 and tank.loss_w_per_k is not None:
        hours = freezing_time(
            volume_l=tank.volume_l,
            start_degc=NIGHTFALL_DEGC,
            around_degc=around,
            loss_w_per_k=tank.loss_w_per_k,
        )
    exposure = FrostExposure(
        name=fitted.name,
        kind="tank",
        place=place,
        around_degc=around,
        protection=protection,
        below_freezing_k=below,
        to_zero_h=hours.to_zero_h if hours else None,
        to_solid_h=hours.to_solid_h if hours else None,
        missing="heat loss of the tank" if below > 0 and hours is None else "",
    )
    return exposure, hours


def _heater(build: Build, fitted: Fitted) -> FrostExposure:
    heater = fitted.part.water_heater
    protected = heater is not None and heater.frost_valve
    place = _place(fitted)
    around = _around_degc(build, place)
    below = below_freezing_k(around_degc=around, protected=protected)
    return FrostExposure(
        name=fitted.name,
        kind="water heater",
        place=place,
        around_degc=around,
        protection="a frost valve" if protected else "",
        below_freezing_k=below,
        to_zero_h=None,
        to_solid_h=None,
        missing="heat loss when cold" if below > 0 else "",
    )


def _run(build: Build, run: WaterRun) -> FrostExposure:
    around = _around_degc(build, run.place)
    below = below_freezing_k(around_degc=around, protected=run.drained)
    return FrostExposure(
        name=run.name,
        kind="run",
        place=run.place,
        around_degc=around,
        protection="drained in frost" if run.drained else "",
        below_freezing_k=below,
        to_zero_h=None,
        to_solid_h=None,
        missing="heat loss of the pipe" if below > 0 else "",
    )


def _figures(tanks: list[tuple[FrostExposure, FreezingTime | None]]) -> tuple[Figure, ...]:
    exposed = [(tank, hours) for tank, hours in tanks if tank.below_freezing_k > 0]
    if not exposed:
        return ()
    unknown = [tank.name for tank, hours in exposed if hours is None]
    known = [hours for _, hours in exposed if hours is not None]
    shortest = min(known, key=lambda hours: hours.to_zero_h) if known and not unknown else None
    return (
        Figure(
            name="water.frost-hours",
            label="Hours until the first full tank reaches freezing",
            value=shortest.to_zero_h if shortest else None,
            unit="h",
            working=shortest.working if shortest else None,
            missing=f"heat loss of {', '.join(unknown)}" if unknown else "",
        ),
    )
