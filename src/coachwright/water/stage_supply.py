"""Take pumps, runs and outlets of a build to their subjects."""

from coachwright.model.build import Build, Fitted, WaterRun
from coachwright.model.facets import Pump, WaterOutlet
from coachwright.model.working import Figure
from coachwright.reference import limit
from coachwright.water.hygiene import air_gap_mm, bleach_ml
from coachwright.water.model import OutletFlow, OutletGap, PumpCheck, TankDose
from coachwright.water.pump import OperatingPoint, best_power_w, operating_point

Worst = tuple[OperatingPoint, WaterRun, str]


def take_outlets(build: Build) -> tuple[tuple[OutletFlow, ...], tuple[Figure, ...]]:
    """Return what each outlet gets, with its figure."""
    flows, figures = [], []
    for fitted in build.fittings:
        outlet = fitted.part.water_outlet
        if outlet is None:
            continue
        worst = _worst(build, fitted)
        flow = _flow(build, fitted, outlet, worst)
        flows.append(flow)
        figures.append(
            Figure(
                name=f"water.flow-{fitted.name}",
                label=f"Flow at {fitted.name}, tap wide open",
                value=flow.flow_l_per_min,
                unit="L/min",
                working=worst[0].working if worst else None,
                missing=flow.missing,
            )
        )
    return tuple(flows), tuple(figures)


def _pumps(build: Build) -> list[tuple[Fitted, Pump]]:
    return [(f, f.part.pump) for f in build.fittings if f.part.pump is not None]


def _runs(build: Build, outlet: str) -> list[WaterRun]:
    return [run for run in build.water_runs if run.serves == outlet]


def _worst(build: Build, outlet: Fitted) -> Worst | None:
    """Return the weakest pump through the worst run; None where one of them is missing."""
    points = [
        (
            operating_point(
                open_flow_l_per_min=pump.open_flow_l_per_min,
                cut_out_kpa=pump.cut_out_kpa,
                rise_mm=run.rise_mm,
                length_mm=run.length_mm,
                bore_mm=run.bore_mm,
            ),
            run,
            fitted.name,
        )
        for fitted, pump in _pumps(build)
        for run in _runs(build, outlet.name)
    ]
    return min(points, key=lambda point: point[0].flow_l_per_min, default=None)


def _flow(build: Build, fitted: Fitted, outlet: WaterOutlet, worst: Worst | None) -> OutletFlow:
    if worst is None:
        missing = "pump" if not _pumps(build) else "water run that serves it"
        return OutletFlow(
            outlet=fitted.name,
            run="",
            pump="",
            wanted_l_per_min=outlet.flow_l_per_min,
            flow_l_per_min=None,
            speed_m_per_s=None,
            loss_kpa=None,
            static_kpa=None,
            pressure_kpa=None,
            missing=missing,
        )
    point, run, pump = worst
    return OutletFlow(
        outlet=fitted.name,
        run=run.name,
        pump=pump,
        wanted_l_per_min=outlet.flow_l_per_min,
        flow_l_per_min=point.flow_l_per_min,
        speed_m_per_s=point.speed_m_per_s,
        loss_kpa=point.loss_kpa,
        static_kpa=point.static_kpa,
        pressure_kpa=point.pressure_kpa,
    )


def take_pumps(build: Build) -> tuple[PumpCheck, ...]:
    """Return the power that each pump needs against what its part says it draws."""
    checks = []
    for fitted, pump in _pumps(build):
        load = fitted.part.dc_load
        if pump.efficiency_frac <= 0:
            continue
        checks.append(
            PumpCheck(
                name=fitted.name,
                needed_w=best_power_w(
                    open_flow_l_per_min=pump.open_flow_l_per_min,
                    cut_out_kpa=pump.cut_out_kpa,
                    efficiency_frac=pump.efficiency_frac,
                ),
                stated_w=max(mode.draw_w for mode in load.modes) if load else None,
            )
        )
    return tuple(checks)


def take_gaps(build: Build) -> tuple[OutletGap, ...]:
    """Return the air gap of each tap inside; showers and outside outlets have no basin."""
    bores, least = limit("water.air-gap-bores"), limit("water.air-gap-least")
    return tuple(
        OutletGap(
            name=fitted.name,
            needed_mm=air_gap_mm(
                bore_mm=outlet.bore_mm, bores_factor=bores.value, least_mm=least.value
            ),
            gap_mm=outlet.air_gap_mm,
        )
        for fitted in build.fittings
        if (outlet := fitted.part.water_outlet) is not None and outlet.kind == "tap"
    )


def take_doses(build: Build) -> tuple[TankDose, ...]:
    """Return the bleach that disinfects each fresh tank."""
    strength = limit("water.bleach-strength").value
    mild, strong = limit("water.dose-mild").value, limit("water.dose-strong").value
    return tuple(
        TankDose(
            name=fitted.name,
            volume_l=tank.volume_l,
            strong_ml=bleach_ml(
                volume_l=tank.volume_l, dose_mg_per_l=strong, strength_g_per_l=strength
            ),
            strong_h=limit("water.dose-strong-time").value,
            strong_mg_per_l=strong,
            mild_ml=bleach_ml(
                volume_l=tank.volume_l, dose_mg_per_l=mild, strength_g_per_l=strength
            ),
            mild_h=limit("water.dose-mild-time").value,
            mild_mg_per_l=mild,
        )
        for fitted in build.fittings
        if (tank := fitted.part.tank) is not None and tank.contents == "fresh"
    )
