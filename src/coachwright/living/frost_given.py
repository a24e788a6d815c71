"""Tanks and runs that can freeze."""

from collections.abc import Iterator
from math import pi

from coachwright.living.assumed import assumed
from coachwright.living.given import Frost
from coachwright.living.rooms_given import CABIN, OUTSIDE, WATER_J_PER_L_K, room_of
from coachwright.model.build import Build, Fitted, WaterRun

MM2_PER_M2 = 1e6
MM3_PER_L = 1e6


def frost(build: Build) -> tuple[Frost, ...]:
    """Return the tanks, and the runs that are not emptied, as lumps of water.

    Notes
    -----
    A tank is taken half full; its loss as stated, else 6 W/(m2 K) of its faces.  Freezing itself
    is not followed: hours below 0 °C are counted.

    References
    ----------
    [shop-practice-living]
    """
    return (*_tanks(build), *_runs(build))


def _tanks(build: Build) -> Iterator[Frost]:
    level = assumed("tank-level").value
    for fitted in build.having("tank"):
        tank = fitted.part.tank
        if tank is None:
            continue
        usual = _faces_m2(fitted) * assumed("tank-film").value
        yield Frost(
            name=fitted.name,
            place=_place(build, fitted),
            ua_w_per_k=tank.loss_w_per_k or usual,
            heat_j_per_k=tank.volume_l * level * WATER_J_PER_L_K,
            heated_w=_heater_w(fitted) if tank.heated else 0.0,
        )


def _place(build: Build, fitted: Fitted) -> str:
    stated = fitted.fitting.heated_space
    if stated is None:
        return room_of(build, fitted)
    return CABIN if stated else OUTSIDE


def _faces_m2(fitted: Fitted) -> float:
    length, width, height = fitted.part.body.size_mm
    return 2.0 * (length * width + length * height + width * height) / MM2_PER_M2


def _heater_w(fitted: Fitted) -> float:
    load = fitted.part.dc_load or fitted.part.ac_load
    return max((mode.draw_w for mode in load.modes), default=0.0) if load else 0.0


def _runs(build: Build) -> Iterator[Frost]:
    for run in build.water_runs:
        if run.drained:
            continue
        yield Frost(
            name=run.name,
            place=OUTSIDE if run.place == "outside" else CABIN,
            ua_w_per_k=pi * run.bore_mm * run.length_mm / MM2_PER_M2 * assumed("run-film").value,
            heat_j_per_k=_held_l(run) * WATER_J_PER_L_K,
        )


def _held_l(run: WaterRun) -> float:
    return pi / 4.0 * run.bore_mm**2 * run.length_mm / MM3_PER_L
