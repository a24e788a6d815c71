"""Take out of a build what the drying, the inverter's bay and the season are computed from."""

from collections.abc import Iterator

import numpy as np

from coachwright.climate.model import MONTH_OF_HOUR, Hours
from coachwright.living.assumed import assumed
from coachwright.living.bay import bay_vents
from coachwright.living.cold_night import heater_at_w
from coachwright.living.drying import Around, Kit, Stall, drying
from coachwright.living.envelope import plane_w_per_m2k
from coachwright.living.given import Given
from coachwright.living.given_body import Body, Surface
from coachwright.living.model import Drying, Envelope, InverterBay, MonthOfYear
from coachwright.living.steps import Sky
from coachwright.model.build import Build
from coachwright.model.site import MONTHS

_CABINET_FRAC = 0.8
"""Share of a cabinet's height between the middles of its low and high vents."""
_FREE_STANDING_MM = 300.0
"""Lift around an inverter that stands in no cabinet."""


def season_months(build: Build) -> tuple[int, ...]:
    """Return the months, from 1, in which they travel."""
    names = build.brief.stay.months
    numbers = range(1, len(MONTHS) + 1)
    return tuple(n for n in numbers if not names or MONTHS[n - 1].lower() in names)


def kit_drying(build: Build, given: Given, envelope: Envelope, sky: Sky) -> Drying | None:
    """Return the drying of wet kit in the coldest month of travel; None without a warmed room.

    Parameters
    ----------
    build
        With everything found.
    given, envelope
        Of that build.
    sky
        The site.
    """
    heater = given.heater
    if heater is None or not heater.second_room or heater.second_frac <= 0.0:
        return None
    stall = _stall(given.body, heater.second_room, heater.second_frac)
    season = season_months(build)
    weather = sky.weather
    of_month = _monthly_degc(weather.air_degc), _monthly_degc(weather.dew_degc)
    coldest = min(season, key=lambda number: of_month[0][number - 1]) - 1
    habits = build.brief.habits
    asleep = np.array(given.seasons.cold.asleep_frac) > 0.0
    latent = np.array(given.seasons.cold.latent_g_per_h)
    water_kg = habits.wet_kit_kg or assumed("wet-kit-water").value * len(build.brief.travellers)
    room = next(each for each in given.body.rooms if each.name == given.thermostat_room)
    return drying(
        stall=stall,
        around=Around(
            cabin_degc=max(given.seasons.cold.heat_degc),
            warm_degc=habits.most_degc,
            outside_degc=of_month[0][coldest],
            dew_degc=of_month[1][coldest],
            loss_w_per_k=envelope.ua_w_per_k,
            open_m3_per_h=given.air.least_m3_per_h + room.leak_per_h * room.volume_m3,
            fan_m3_per_h=given.air.fan_m3_per_h,
            humid_frac=min(given.air.humid_frac, 0.95),
            vapour_g_per_h=float(latent[asleep].mean()) if asleep.any() else float(latent.mean()),
            heater_w=heater_at_w(heater, sky),
        ),
        kit=Kit(
            water_kg=water_kg,
            area_m2=water_kg * assumed("wet-kit-area").value,
            speed_m_per_s=assumed("stall-air-speed").value,
        ),
    )


def _monthly_degc(hours: Hours) -> tuple[float, ...]:
    sums = np.bincount(MONTH_OF_HOUR, weights=hours)
    return tuple((sums / np.bincount(MONTH_OF_HOUR)).tolist())


def _stall(body: Body, room: str, share_frac: float) -> Stall:
    passages = [each for each in body.passages if room in each.rooms]
    walls_w_per_k = sum(
        each.area_m2 * plane_w_per_m2k(layers=each.layers, direction="horizontal")
        for each in _walls(body, room)
    )
    return Stall(
        name=room,
        ua_w_per_k=walls_w_per_k + sum(each.conductance_w_per_k for each in passages),
        exchange_m3_per_h=sum(each.flow_m3_per_h for each in passages),
        share_frac=share_frac,
    )


def _walls(body: Body, room: str) -> Iterator[Surface]:
    yield from (each for each in body.surfaces if room in (each.room, each.outside))


def inverter_bay(
    build: Build, given: Given, months: tuple[MonthOfYear, ...]
) -> InverterBay | None:
    """Return where the inverters lose their heat; None where there is none.

    Parameters
    ----------
    build
        With everything found.
    given
        Of that build.
    months
        Of its year.
    """
    inverters = [each for each in build.having("inverter") if each.part.inverter is not None]
    if not inverters:
        return None
    parts = [each.part.inverter for each in inverters if each.part.inverter is not None]
    cabinets = [build.fitted(each.fitting.within) for each in inverters]
    heights = [each.part.body.size_mm[2] for each in cabinets if each is not None]
    made = bay_vents(
        continuous_w=sum(each.continuous_w for each in parts),
        efficiency_frac=min(each.efficiency_frac for each in parts),
        rise_mm=_CABINET_FRAC * min(heights) if heights else _FREE_STANDING_MM,
    )
    room = given.supply.losses_room
    warmest = max(each.air_high_degc for each in months)
    return InverterBay(
        room=room,
        names=tuple(each.name for each in inverters),
        most_loss_w=made.loss_w,
        flow_m3_per_h=made.flow_m3_per_h,
        vent_m2=made.vent_m2,
        warmest_degc=warmest if room == given.thermostat_room else None,
        working=made.working,
    )
