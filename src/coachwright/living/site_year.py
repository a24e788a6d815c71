"""One site's year: the typical year, stands, cold night, hot day, drying."""

from dataclasses import dataclass

from coachwright.climate.model import DesignDay, Hours
from coachwright.living.cold_night import AtNight, cold_night
from coachwright.living.given import Given
from coachwright.living.hot_day import AtDay, cooler_supply, hot_day
from coachwright.living.model import Envelope, MonthOfYear, SiteYear
from coachwright.living.months import months_of_year
from coachwright.living.simulate import Prepared, prepare, year
from coachwright.living.site_steps import kept_steps
from coachwright.living.standing import LONGEST_D, stands
from coachwright.living.stands import Distribution, stands_by_month
from coachwright.living.steps import SiteSteps, Sky
from coachwright.living.taken_apart import inverter_bay, kit_drying
from coachwright.model.build import Build
from coachwright.water.model import Water


@dataclass(frozen=True, kw_only=True, slots=True)
class AtSite:
    """A site as the stage is given it.

    Attributes
    ----------
    sun_w
        Of all fixed panels at their terminals, in each hour.
    """

    site: str
    sky: Sky
    sun_w: Hours
    cold: DesignDay
    hot: DesignDay


@dataclass(frozen=True, kw_only=True, slots=True)
class Walked:
    """A design walked through a year and through its stands."""

    ready: Prepared
    months: tuple[MonthOfYear, ...]
    distribution: Distribution
    balance_error_ratio: float


def walked(given: Given, sky: Sky, site: SiteSteps, water_d: float | None) -> Walked:
    """Walk a design through the typical year and through its stands.

    Parameters
    ----------
    given
        The design.
    sky, site
        The place.
    water_d
        Days that the tanks last; None where nothing limits them. [d]
    """
    ready = prepare(given, sky, site=site)
    run = year(ready)
    followed = stands(year(ready, off_grid=True))
    closed = run.balance
    return Walked(
        ready=ready,
        months=months_of_year(run),
        distribution=stands_by_month(
            lasted_d=followed.lasted_d.tolist(), water_d=water_d, followed_d=LONGEST_D
        ),
        balance_error_ratio=float(
            max(
                abs(closed.heat_ratio),
                abs(closed.vapour_ratio),
                abs(closed.electric_ratio),
                abs(closed.charge_ratio),
            )
        ),
    )


def year_at(build: Build, given: Given, envelope: Envelope, water: Water, at: AtSite) -> SiteYear:
    """Return everything that a year at a site says about a build.

    Parameters
    ----------
    build
        With everything found.
    given, envelope
        Of that build at the site.
    water
        Of that build.
    at
        The site.
    """
    weather, climate = at.sky.weather, build.brief.climate
    site = kept_steps(given, at.sky)
    made = walked(given, at.sky, site, water.stores.days_d)
    night = AtNight(
        given=given,
        sky=at.sky,
        site=site,
        ready=made.ready,
        envelope=envelope,
        design=at.cold,
        outside_degc=min(climate.cold_night_degc, at.cold.air_degc),
    )
    day = AtDay(
        given=given,
        sky=at.sky,
        site=site,
        ready=made.ready,
        design=at.hot,
        outside_degc=max(climate.hot_day_degc, at.hot.air_degc),
    )
    hot = hot_day(day)
    heater = given.heater
    return SiteYear(
        site=at.site,
        title=weather.title,
        origin=str(weather.origin),
        attribution=weather.attribution,
        caution=weather.caution,
        months=made.months,
        stands=() if given.bank is None else made.distribution.months,
        whole_year=made.distribution.whole_year,
        cold_night=cold_night(night),
        hot_day=hot,
        drying=kit_drying(build, given, envelope, at.sky),
        balance_error_ratio=made.balance_error_ratio,
        supply=None if hot is None else cooler_supply(hot, day),
        bay=inverter_bay(build, given, made.months),
        fuel="" if heater is None or heater.electric_ac else heater.fuel,
        fuel_by_mass=heater is not None and heater.fuel_by_mass,
    )
