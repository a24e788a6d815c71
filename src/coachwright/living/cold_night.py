"""The design cold night: what it takes, what the heater reaches, and the heating grades."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DesignDay
from coachwright.living.given import STEPS_PER_DAY, AirHeater, Day, Given, Pattern, Seasons
from coachwright.living.model import (
    HEAT_UP_FOLLOWED_H,
    ColdNight,
    Envelope,
    HeatingGrade,
)
from coachwright.living.months import fuel_l
from coachwright.living.pictures import picture
from coachwright.living.repeated import shifted, steady, under
from coachwright.living.simulate import Prepared, Run, year
from coachwright.living.steady import Need, heat_need, reached
from coachwright.living.steps import SiteSteps, Sky
from coachwright.reference import limit

_NEARLY_K = 0.05
"""Of a temperature that counts as reached: a thermostat comes near its set point for ever."""
_SOAK_HUMIDITY_FRAC = 0.8
_DIGITS = 2
"""Of a temperature that is compared with a set point: a thermostat's solution is no finer."""


@dataclass(frozen=True, kw_only=True, slots=True)
class AtNight:
    """What the design cold night is computed from.

    Attributes
    ----------
    ready
        The design at its site.
    ready
        The design under the site's own year.
    outside_degc
        Coldest hour: the site's design night, or the brief's where that is colder.
    """

    given: Given
    sky: Sky
    site: SiteSteps
    ready: Prepared
    envelope: Envelope
    design: DesignDay
    outside_degc: float


def cold_night(night: AtNight) -> ColdNight:
    """Return the design cold night with the heater at work.

    Parameters
    ----------
    night
        Design, site and day.

    Notes
    -----
    The site's coldest day of that kind, shifted to the design temperature, the same day after
    day and without any sun, parked, every load met.  The need is steady and counts no gains; the
    lowest temperature is the least within which somebody is in, once with the mean loss of the
    ribs and once with their greatest.

    References
    ----------
    [energy-balance], [ashrae-climate]
    """
    given = replace(night.given, pattern=Pattern())
    site = shifted(
        site=night.site,
        day=night.design.day,
        air_degc=night.outside_degc,
        warmest=False,
        sunless=True,
    )
    dark = np.zeros(len(site.humidity))
    run = _night(under(given, night.sky, site, dark, night.ready), night.design.day)
    low = _night(under(with_most_ribs(given), night.sky, site, dark), night.design.day)
    need = _need(night, site.driving[:24, 0])
    burnt_wh = run.whole("fuel_wh")
    return ColdNight(
        outside_degc=night.outside_degc,
        need_w=need.need_w,
        need_high_w=need.need_high_w,
        heater_w=heater_at_w(given.heater, night.sky),
        reached_degc=_lowest_degc(run),
        reached_low_degc=_lowest_degc(low),
        heat_up_h=heat_up_h(
            night.given,
            night.sky,
            night.ready,
            outside_degc=night.outside_degc,
            wanted_degc=max(day_of(night.given, night.design.day).heat_degc),
        ),
        fuel_l=fuel_l(burnt_wh=burnt_wh, heater=given.heater),
        battery_wh=run.whole("out.heater_wh") + run.whole("out.pads_wh"),
        picture=picture(run=run, title="The design cold night, day after day without sun"),
        working=need.working,
    )


def heating_grades(
    given: Given, sky: Sky, ready: Prepared, envelope: Envelope, wanted: int | None
) -> tuple[HeatingGrade, ...]:
    """Return heating grades 2 and 3 with the heater at full and nobody inside.

    Parameters
    ----------
    given
        The design.
    sky, ready
        Of any place, and the design there: only its height counts.
    envelope
        Its loss.
    wanted
        The grade that the brief asks for; None for none.

    Notes
    -----
    T_i = T_e + P / (UA + c V); the heat-up by the kernel from a body that is as cold as outside.
    """
    made = []
    for grade, row in ((2, "living.grade-two-outside"), (3, "living.grade-three-outside")):
        outside_degc = limit(row).value
        held = reached(
            ua_w_per_k=envelope.ua_w_per_k,
            ua_high_w_per_k=envelope.ua_high_w_per_k,
            fresh_m3_per_h=given.air.least_m3_per_h,
            heater_w=0.0 if given.heater is None else given.heater.most_w,
            outside_degc=outside_degc,
        )
        rise_k = limit("living.grade-three-rise").value
        made.append(
            HeatingGrade(
                grade=grade,
                wanted=wanted is not None and wanted >= grade,
                outside_degc=outside_degc,
                reached_degc=held.inside_degc,
                reached_low_degc=held.inside_low_degc,
                heat_up_h=None
                if row == "living.grade-two-outside"
                else heat_up_h(
                    given,
                    sky,
                    ready,
                    outside_degc=outside_degc,
                    wanted_degc=outside_degc + rise_k,
                ),
                working=held.working,
            )
        )
    return tuple(made)


def heat_up_h(
    given: Given, sky: Sky, ready: Prepared, *, outside_degc: float, wanted_degc: float
) -> float | None:
    """Return how long an empty body as cold as outside takes to get warm [h]; None for never.

    Parameters
    ----------
    given
        The design.
    sky, ready
        Of any place, and the design there: only its height counts.
    outside_degc
        Of the air, and of everything inside at the beginning. [degC]
    wanted_degc
        Of the air inside. [degC]
    """
    soaked = steady(site=ready.site, air_degc=outside_degc, humidity_frac=_SOAK_HUMIDITY_FRAC)
    empty = _empty(given, wanted_degc)
    run = year(
        under(empty, sky, soaked, np.zeros(len(soaked.humidity)), ready),
        series=True,
        off_grid=True,
        days=round(HEAT_UP_FOLLOWED_H / 24.0),
        start_degc=outside_degc,
    )
    warm = run.nodes_degc[given.thermostat_room] >= wanted_degc - _NEARLY_K
    if not warm.any():
        return None
    return (int(np.argmax(warm)) + 1) * run.step_min / 60.0


def with_most_ribs(given: Given) -> Given:
    """Return a design whose ribs conduct as much as they may."""
    surfaces = tuple(
        replace(each, bridge_w_per_k=max(each.bridge_high_w_per_k, each.bridge_w_per_k))
        for each in given.body.surfaces
    )
    return replace(given, body=replace(given.body, surfaces=surfaces))


def heater_at_w(heater: AirHeater | None, sky: Sky) -> float:
    """Return what a heater gives at most at the height of a site [W]."""
    if heater is None:
        return 0.0
    altitude_km = max(sky.weather.place.altitude_m, 0.0) / 1000.0
    return heater.most_w * max(1.0 - heater.altitude_frac_per_km * altitude_km, 0.0)


def _night(ready: Prepared, day: int) -> Run:
    return year(ready, series=True, off_grid=True, from_day=day, days=1)


def _lowest_degc(run: Run) -> float:
    inside = run.nodes_degc[run.given.thermostat_room]
    occupied = np.array(day_of(run.given, run.from_day).occupied_frac) > 0.0
    lowest_degc = float(inside[occupied].min() if occupied.any() else inside.min())
    return round(lowest_degc, _DIGITS)


def _need(night: AtNight, outside: NDArray[np.float64]) -> Need:
    """Return the need of the hour in which the wanted temperature is farthest from outside."""
    wanted = np.array(day_of(night.given, night.design.day).heat_degc)
    by_step = np.repeat(outside, STEPS_PER_DAY // 24)
    at = int(np.argmax(wanted - by_step))
    return heat_need(
        ua_w_per_k=night.envelope.ua_w_per_k,
        ua_high_w_per_k=night.envelope.ua_high_w_per_k,
        fresh_m3_per_h=night.given.air.least_m3_per_h,
        inside_degc=float(wanted[at]),
        outside_degc=float(by_step[at]),
    )


def day_of(given: Given, day: int) -> Day:
    """Return the kind of day that a parked day of the year is."""
    low, high = given.warm_from_day, given.warm_to_day
    warm = low <= day < high if low <= high else day >= low or day < high
    return given.seasons.warm if warm else given.seasons.cold


def _empty(given: Given, wanted_degc: float) -> Given:
    """Return a design with nobody and nothing at work in it but the heater."""
    none = (0.0,) * STEPS_PER_DAY
    day = replace(
        given.seasons.cold,
        sensible_w=none,
        latent_g_per_h=none,
        co2_l_per_h=none,
        gain_w=none,
        vapour_g_per_h=none,
        dc_w=none,
        ac_w=none,
        dark_w=none,
        blinds_frac=none,
        heat_degc=(wanted_degc,) * STEPS_PER_DAY,
        cool_degc=(99.0,) * STEPS_PER_DAY,
    )
    seasons = Seasons(warm=day, cold=day, driving_warm=day, driving_cold=day)
    return replace(given, seasons=seasons, pattern=Pattern())
