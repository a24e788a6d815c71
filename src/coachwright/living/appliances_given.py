"""Make heater, air conditioner, fridges and fresh air from a build."""

from coachwright.living.assumed import assumed
from coachwright.living.body_given import opened_m2
from coachwright.living.cooling import dx_curve
from coachwright.living.given import Air, AirHeater, Cooler, Fridge
from coachwright.living.heating import fuel_heat, high_loss_frac
from coachwright.living.loads_given import airs
from coachwright.living.rooms_given import stalls, vents_m3_per_h
from coachwright.model.build import Build, Fitted
from coachwright.model.facets import AcLoad, DcLoad, Heater, Mode

S_PER_H = 3600.0
_L_PER_M3, _MIN_PER_H = 1000.0, 60.0
_STARTS = ("glow", "start")
"""How a mode that runs only at the start is named."""


def heater(build: Build, *, altitude_mm: float) -> AirHeater | None:
    """Return the air heater: of several the largest that burns something, else the largest.

    Parameters
    ----------
    build
        With everything found.
    altitude_mm
        Of the place above the sea: its loss is taken off the output. [mm]
    """
    told = [(fitted, fitted.part.heater) for fitted in build.having("heater")]
    found = [(fitted, facet) for fitted, facet in told if facet is not None]
    burning = [each for each in found if each[1].fuel not in ("electric", "wood")]
    electric = [each for each in found if each[1].fuel == "electric"]
    if not burning and not electric:
        return None
    fitted, facet = max(burning or electric, key=lambda each: each[1].output_w)
    lost = high_loss_frac(
        altitude_mm=altitude_mm if burning else 0.0,
        full_to_mm=facet.full_to_mm,
        loss_frac_per_km=assumed("altitude-loss").value,
    )
    return _heater(build, fitted, facet, lost)


def _heater(build: Build, fitted: Fitted, facet: Heater, lost_frac: float) -> AirHeater:
    running, starting = _modes(fitted)
    draws = sorted(mode.draw_w for mode in running) or [0.0]
    start = sum(mode.draw_w for mode in starting) * assumed("heater-start").value / _MIN_PER_H
    warmed = stalls(build)
    electric = facet.fuel == "electric"
    heat = None if electric else fuel_heat(facet.fuel)
    by_mass = facet.fuel == "LPG" and heat is not None
    value = 1.0 if heat is None else heat.heat_mj_per_kg if by_mass else heat.heat_mj_per_l
    most = facet.output_w * (1.0 - lost_frac)
    return AirHeater(
        name=fitted.name,
        most_w=most,
        least_w=min(facet.least_output_w, most),
        efficiency_frac=1.0 if electric else facet.efficiency_frac,
        fuel=facet.fuel,
        fuel_mj_per_l=value,
        fuel_by_mass=by_mass,
        draw_most_w=0.0 if electric else _stated_w(facet.draw_w, draws[-1]),
        draw_least_w=0.0 if electric else _stated_w(facet.least_draw_w, draws[0]),
        start_wh=_stated_w(facet.start_wh, 0.0 if electric else start),
        electric_ac=electric and fitted.part.ac_load is not None,
        second_room=warmed[0].name if warmed else "",
        second_frac=warmed[0].share_frac if warmed else 0.0,
    )


def _stated_w(stated_w: float | None, usual_w: float) -> float:
    return usual_w if stated_w is None else stated_w


def _modes(fitted: Fitted) -> tuple[list[Mode], list[Mode]]:
    """Return a heater's modes: running, and at the start."""
    load = fitted.part.dc_load
    every = [] if load is None else list(load.modes)
    starting = [mode for mode in every if any(word in mode.name for word in _STARTS)]
    return [mode for mode in every if mode not in starting], starting


def cooler(build: Build) -> Cooler | None:
    """Return the air conditioners together; curves and share of the largest."""
    told = [(fitted, fitted.part.air_conditioner) for fitted in build.having("air_conditioner")]
    found = [(fitted, facet) for fitted, facet in told if facet is not None]
    if not found:
        return None
    fitted, facet = max(found, key=lambda each: each[1].cooling_w)
    load = _load(fitted)
    curve = dx_curve(facet.curve)
    sensible = facet.sensible_frac
    return Cooler(
        name=fitted.name,
        rated_w=sum(each.cooling_w for _, each in found),
        rated_input_w=sum(_input_w(each, stated.input_w) for each, stated in found),
        capacity_factor=curve.capacity_factor,
        input_factor=curve.input_factor,
        wet_low_degc=curve.wet_low_degc,
        wet_high_degc=curve.wet_high_degc,
        dry_low_degc=curve.dry_low_degc,
        dry_high_degc=curve.dry_high_degc,
        cycling_frac=curve.cycling_frac,
        sensible_frac=assumed("sensible-share").value if sensible is None else sensible,
        ac=isinstance(load, AcLoad),
        enabled=not (isinstance(load, AcLoad) and load.supply == "shore only"),
    )


def _load(fitted: Fitted) -> DcLoad | AcLoad | None:
    return fitted.part.ac_load or fitted.part.dc_load


def _input_w(fitted: Fitted, stated_w: float | None) -> float:
    load = _load(fitted)
    if stated_w is not None:
        return stated_w
    return max((mode.draw_w for mode in load.modes), default=0.0) if load else 0.0


def fridges(build: Build) -> tuple[Fridge, ...]:
    """Return the cold boxes that say around which temperature their duty holds."""
    made = []
    for fitted in build.having("fridge"):
        facet, load = fitted.part.fridge, fitted.part.dc_load or fitted.part.ac_load
        if facet is None or load is None:
            continue
        mode = max(load.modes, key=lambda each: each.duty_frac)
        made.append(
            Fridge(
                name=fitted.name,
                draw_w=mode.draw_w,
                duty_frac=mode.duty_frac,
                at_degc=facet.around_degc,
                inside_degc=facet.inside_degc,
                ac=isinstance(load, AcLoad),
            )
        )
    return tuple(made)


def air(build: Build) -> Air:
    """Return the fresh air beyond leaks and vents: habit, fans, opened hatches."""
    people = len(build.brief.travellers)
    kept = vents_m3_per_h(build)
    fans = [each for each in build.having("fan") if airs(each)]
    flow = sum(each.part.fan.flow_l_per_min for each in fans if each.part.fan is not None)
    return Air(
        least_m3_per_h=max(0.0, people * assumed("fresh-air").value - kept),
        fan_m3_per_h=flow * _MIN_PER_H / _L_PER_M3 * assumed("fan-share").value,
        fan_w=sum(_strongest_w(each) for each in fans),
        hatch_m3_per_h=sum(opened_m2(build)) * assumed("opening-speed").value * S_PER_H,
        humid_frac=assumed("humid").value if fans else 1.0,
    )


def _strongest_w(fitted: Fitted) -> float:
    load = _load(fitted)
    return max((mode.draw_w for mode in load.modes), default=0.0) if load else 0.0
