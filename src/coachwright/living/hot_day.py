"""The design hot day: how warm it gets, and how long a full bank carries the air conditioner."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DesignDay
from coachwright.living.cold_night import day_of
from coachwright.living.given import STEPS_PER_DAY, Cooler, Given, Pattern, Seasons
from coachwright.living.model import (
    MILD_INSIDE_DEGC,
    MILD_OUTSIDE_DEGC,
    CoolerSupply,
    HotDay,
)
from coachwright.living.pictures import picture
from coachwright.living.repeated import same_day_w, shifted, steady, under
from coachwright.living.simulate import Prepared, Run, year
from coachwright.living.standing import stands
from coachwright.living.steps import SiteSteps, Sky
from coachwright.model.working import Given as Put
from coachwright.model.working import Working
from coachwright.units import told

_MILD_HUMIDITY_FRAC = 0.5
_RATED_WET_DEGC = 19.44
"""Wet bulb inside at which an air conditioner is rated."""
_MORNING_STEP = STEPS_PER_DAY // 4
_FOLLOWED_D = 1.0
_DIGITS = 2
"""Of a temperature that is compared with a set point: a thermostat's solution is no finer."""
_PRACTICE_FRAC, _PRACTICE_W = 0.25, 3956.0
"""Duty that common practice, without a source, has for a unit of 13,500 BTU/h."""
_PRACTICE_NOTE = (
    f"common practice, no source, has a duty of {_PRACTICE_FRAC:.0%} for a unit of "
    f"{told(_PRACTICE_W, 'W')} at {told(MILD_INSIDE_DEGC, 'degC')} inside and "
    f"{told(MILD_OUTSIDE_DEGC, 'degC')} outside, and does not say for which body, sun, people; m "
    "and n are computed for this body and this unit with windows shut, with the light of the "
    "design hot day and without any: what lies between them is the sun, the rest people, "
    "appliances and fresh air; a unit of half the size runs twice as long"
)


@dataclass(frozen=True, kw_only=True, slots=True)
class AtDay:
    """What the design hot day is computed from.

    Attributes
    ----------
    ready
        The design under the site's own year.
    outside_degc
        Warmest hour: the site's design day, or the brief's where that is hotter.
    """

    given: Given
    sky: Sky
    site: SiteSteps
    ready: Prepared
    design: DesignDay
    outside_degc: float


def hot_day(at: AtDay) -> HotDay | None:
    """Return the design hot day with the air conditioner at work; None without one.

    Parameters
    ----------
    at
        Design, site and day.

    Notes
    -----
    The site's hottest day of that kind, shifted to the design temperature, with its own sun, the
    same day after day, parked, every load met.  The bank begins full at the first step after six
    o'clock in which the air conditioner runs and is followed for a day, with the day's sun on the
    panels and without any.  Duty: mean share of running over the occupied hours in which it is
    wanted at all.

    References
    ----------
    [ashrae-climate], [energyplus-coils]
    """
    cooler = at.given.cooler
    if cooler is None:
        return None
    given = replace(at.given, pattern=Pattern(), cooler=replace(cooler, enabled=True))
    site = shifted(site=at.site, day=at.design.day, air_degc=at.outside_degc, warmest=True)
    sun_w = same_day_w(given.supply.sun_w, at.design.day)
    cooled = _day(given, at, site, sun_w)
    warm = _day(replace(given, cooler=None), at, site, sun_w)
    hours_h = _lasted_h(cooled)
    sunless = replace(cooled, sun_w=np.zeros_like(cooled.sun_w))
    hours_without_sun_h = _lasted_h(sunless)
    duty_frac = _duty_frac(cooled)
    mild_frac, dark_frac = (_mild_duty_frac(given, at, light) for light in (at.design.day, None))
    return HotDay(
        outside_degc=at.outside_degc,
        hours_h=hours_h,
        hours_without_sun_h=hours_without_sun_h,
        duty_frac=duty_frac,
        reached_degc=_warmest_degc(cooled),
        without_degc=_warmest_degc(warm),
        day_wh=cooled.whole("out.cooler_wh"),
        mild_duty_frac=mild_frac,
        picture=picture(run=cooled, title="The design hot day, day after day"),
        working=_working(cooled, duty_frac, mild_frac, dark_frac),
    )


def cooler_supply(day: HotDay, at: AtDay) -> CoolerSupply | None:
    """Return what the air conditioner takes on the design hot day, and what can give it.

    Parameters
    ----------
    day
        Of that design.
    at
        Design, site and day.

    Notes
    -----
    P = P_r f_c f_i at the hottest hour, the indoor wet bulb at its rating point: the most that it
    takes while it runs.
    """
    cooler = at.given.cooler
    if cooler is None:
        return None
    input_w = _full_input_w(cooler, day.outside_degc)
    bank, supply = at.given.bank, at.given.supply
    if cooler.ac:
        can_give_w = supply.inverter_w or None
    else:
        can_give_w = None if bank is None else bank.discharge_limit_a * bank.charge_v[0][1]
    return CoolerSupply(
        name=cooler.name,
        input_w=input_w,
        through_inverter=cooler.ac,
        can_give_w=can_give_w,
        working=Working(
            expression="P = P_r · f",
            given=(
                Put(
                    symbol="P_r",
                    meaning="input at the rating point",
                    value=cooler.rated_input_w,
                    unit="W",
                ),
                Put(
                    symbol="f",
                    meaning="by the temperature of the hottest hour",
                    value=input_w / cooler.rated_input_w,
                    unit="1",
                ),
            ),
            result=input_w,
            unit="W",
            references=("energyplus-coils",),
            note="while it runs; its start is judged with the inverter",
        ),
    )


def _full_input_w(cooler: Cooler, outside_degc: float) -> float:
    dry = min(max(outside_degc, cooler.dry_low_degc), cooler.dry_high_degc)
    factors = (cooler.capacity_factor, cooler.input_factor)
    made = [_biquadratic_ratio(each, _RATED_WET_DEGC, dry) for each in factors]
    return cooler.rated_input_w * made[0] * made[1]


def _biquadratic_ratio(
    factor: tuple[float, float, float, float, float, float], wet_degc: float, dry_degc: float
) -> float:
    powers = (
        1.0,
        wet_degc,
        wet_degc**2,
        dry_degc,
        dry_degc**2,
        wet_degc * dry_degc,
    )
    return sum(one * other for one, other in zip(factor, powers, strict=True))


def _day(given: Given, at: AtDay, site: SiteSteps, sun_w: NDArray[np.float64]) -> Run:
    ready = under(given, at.sky, site, sun_w, at.ready)
    return year(ready, series=True, off_grid=True, from_day=at.design.day, days=1)


def _lasted_h(run: Run) -> float | None:
    """Return how long a full bank lasts from the first use of the day; None for a day or more."""
    if run.given.bank is None:
        return 0.0
    running = run.flows_w["cooler_frac"]
    wanted = np.flatnonzero(running[_MORNING_STEP:] > 0.0)
    if not len(wanted):
        return None
    begin_h = (int(wanted[0]) + _MORNING_STEP) * run.step_min / 60.0
    found = stands(run, begin_h=begin_h, most_d=_FOLLOWED_D)
    lasted_d = float(found.lasted_d[0])
    return lasted_d * 24.0 if found.reserve[0] else None


def _duty_frac(run: Run) -> float:
    day = day_of(run.given, run.from_day)
    running = run.flows_w["cooler_frac"]
    inside = run.nodes_degc[run.given.thermostat_room]
    occupied = np.array(day.occupied_frac) > 0.0
    wanted = occupied & ((running > 0.0) | (inside > np.array(day.cool_degc)))
    return float(running[wanted].mean()) if wanted.any() else 0.0


def _warmest_degc(run: Run) -> float:
    """Return the warmest hour within which somebody is in, but for the first of the day."""
    inside = run.nodes_degc[run.given.thermostat_room]
    occupied = np.array(day_of(run.given, run.from_day).occupied_frac) > 0.0
    hour = round(60.0 / run.step_min)
    hourly = np.convolve(inside, np.full(hour, 1.0 / hour), mode="valid")
    whole = np.convolve(occupied, np.ones(hour), mode="valid") >= hour
    came_in = np.concatenate(([False] * hour, ~occupied[:-hour]))[: len(whole)]
    counted = whole & ~came_in
    return round(float(hourly[counted].max() if counted.any() else inside.max()), _DIGITS)


def _mild_duty_frac(given: Given, at: AtDay, light_of_day: int | None) -> float:
    """Return the duty of a day that is as warm all through as common practice has it."""
    held = tuple(MILD_INSIDE_DEGC for _ in range(STEPS_PER_DAY))
    day = replace(day_of(given, at.design.day), cool_degc=held)
    shut = replace(
        given,
        seasons=Seasons(warm=day, cold=day, driving_warm=day, driving_cold=day),
        air=replace(given.air, free_cooling=False),
    )
    site = steady(
        site=at.site,
        air_degc=MILD_OUTSIDE_DEGC,
        humidity_frac=_MILD_HUMIDITY_FRAC,
        light_of_day=light_of_day,
    )
    run = _day(shut, at, site, np.zeros(len(site.humidity)))
    return float(run.flows_w["cooler_frac"].mean())


def _working(run: Run, duty_frac: float, mild_frac: float, dark_frac: float) -> Working:
    bank = run.given.bank
    rated_w = 0.0 if run.given.cooler is None else run.given.cooler.rated_w
    usable_ah = 0.0 if bank is None else bank.capacity_ah * (1.0 - bank.reserve_frac)
    return Working(
        expression="d = Σ r · Δt / Σ Δt",
        given=(
            Put(
                symbol="r", meaning="share of each step that it runs", value=duty_frac, unit="frac"
            ),
            Put(symbol="Δt", meaning="length of a step", value=run.step_min, unit="min"),
            Put(symbol="P", meaning="cooling at the rating point", value=rated_w, unit="W"),
            Put(symbol="C", meaning="usable charge of the bank", value=usable_ah, unit="Ah"),
            Put(symbol="m", meaning="duty of a mild day", value=mild_frac, unit="frac"),
            Put(symbol="n", meaning="the same without sun", value=dark_frac, unit="frac"),
        ),
        result=duty_frac,
        unit="frac",
        references=("ashrae-climate", "energyplus-coils"),
        note=_PRACTICE_NOTE,
    )
