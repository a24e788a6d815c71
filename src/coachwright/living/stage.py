"""Put a build under the weather of its sites, a year long."""

from collections.abc import Sequence

from coachwright.climate.model import Hours, Weather
from coachwright.electrics.model import Electrics
from coachwright.living.changes import Basis, changes
from coachwright.living.cold_night import heating_grades
from coachwright.living.figures import figures
from coachwright.living.fresh_air import fresh_air
from coachwright.living.given import Given
from coachwright.living.model import Change, Envelope, FreshAir, HeatingGrade, Living
from coachwright.living.simulate import prepare
from coachwright.living.site_steps import kept_steps
from coachwright.living.site_year import AtSite, year_at
from coachwright.living.stage_given import envelope, given
from coachwright.living.taken_apart import season_months
from coachwright.model.build import Build
from coachwright.water.model import Water

NO_SITE = "a site whose weather is known: the brief names none under climate.sites"
_MM2_PER_M2 = 1e6


def stage(build: Build, electrics: Electrics, water: Water, places: Sequence[AtSite]) -> Living:
    """Return everything that the coupled year says about a build.

    Parameters
    ----------
    build
        With everything found.
    electrics, water
        Of that build.
    places
        Its sites, in the order of the brief.
    """
    lost = envelope(build)
    years = []
    first: Given | None = None
    for at in places:
        made = given(build, electrics, water, at.sky.weather, sun_w=at.sun_w)
        first = first or made
        years.append(year_at(build, made, lost, water, at))
    return figures(
        Living(
            envelope=lost,
            years=tuple(years),
            changes=(),
            missing="" if years else NO_SITE,
            figures=(),
            grades=() if first is None else _grades(build, first, lost, places[0]),
            fresh_air=None if first is None else _fresh_air(build, first),
            season_months=season_months(build),
        )
    )


def what_if(build: Build, electrics: Electrics, water: Water, at: AtSite) -> tuple[Change, ...]:
    """Return what some changes would do at one site: real runs, so they take a moment.

    Parameters
    ----------
    build
        With everything found.
    electrics, water
        Of that build.
    at
        The site.
    """
    weather: Weather = at.sky.weather

    def given_of(other: Build, sun_w: Hours) -> Given:
        return given(other, electrics, water, weather, sun_w=sun_w)

    return changes(
        Basis(
            build=build,
            given_of=given_of,
            sky=at.sky,
            sun_w=at.sun_w,
            water_d=water.stores.days_d,
            season_months=season_months(build),
        )
    )


def _grades(build: Build, made: Given, lost: Envelope, at: AtSite) -> tuple[HeatingGrade, ...]:
    ready = prepare(made, at.sky, site=kept_steps(made, at.sky))
    return heating_grades(made, at.sky, ready, lost, build.brief.climate.heating_grade)


def _fresh_air(build: Build, made: Given) -> FreshAir:
    shell = build.vehicle.shell
    room = next(each for each in made.body.rooms if each.name == made.thermostat_room)
    width_mm = 2.0 * max(each.half_width_mm for each in shell.half_widths)
    return fresh_air(
        floor_m2=(shell.rear_mm - shell.cab_line_mm) * width_mm / _MM2_PER_M2,
        people_count=len(build.brief.travellers),
        open_m3_per_h=made.air.least_m3_per_h + room.leak_per_h * room.volume_m3,
    )
