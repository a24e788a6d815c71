"""Make what one run of the coupled year is given from a build and what was found of it before."""

from coachwright.climate.model import Hours, Weather
from coachwright.electrics.model import Electrics
from coachwright.living.appliances_given import air, cooler, fridges, heater
from coachwright.living.bank_given import bank, supply
from coachwright.living.body_given import body, envelope_of
from coachwright.living.days_given import pattern, seasons, warm_days
from coachwright.living.frost_given import frost
from coachwright.living.given import Given
from coachwright.living.model import Envelope
from coachwright.living.rooms_given import CABIN
from coachwright.model.build import Build
from coachwright.water.model import Water

MM_PER_M = 1000.0
THERMOSTAT_K = 0.5
"""What a thermostat lets the air stray from its set point. [shop-practice-living]"""


def envelope(build: Build) -> Envelope:
    """Return the heat that a build's living space loses for each kelvin.

    Parameters
    ----------
    build
        With everything found.
    """
    return envelope_of(build)


def given(
    build: Build,
    electrics: Electrics,
    water: Water,
    weather: Weather,
    *,
    sun_w: Hours,
    heading_deg: float | None = None,
) -> Given:
    """Return what a run of the coupled year is given.

    Parameters
    ----------
    build
        With everything found.
    electrics, water
        Of that build.
    weather
        Of the place: its height, its half of the earth and how hot it gets count here.
    sun_w
        Of all fixed panels at their terminals, for each hour of the year. [W]
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of all. [deg]

    Returns
    -------
    Given
        Without a bank where the electrics have none.
    """
    habits = build.brief.habits
    first, last = warm_days(weather)
    return Given(
        body=body(build, heading_deg=heading_deg),
        seasons=seasons(build, electrics, water, weather),
        pattern=pattern(build, electrics),
        air=air(build),
        supply=supply(build, electrics, sun_w),
        bank=bank(build, electrics),
        heater=heater(build, altitude_mm=weather.place.altitude_m * MM_PER_M),
        cooler=cooler(build),
        fridges=fridges(build),
        frost=frost(build),
        thermostat_room=CABIN,
        warm_from_day=first,
        warm_to_day=last,
        heading_deg=heading_deg,
        comfort_low_degc=min(habits.day_degc, habits.night_degc) - THERMOSTAT_K,
        comfort_high_degc=habits.most_degc + THERMOSTAT_K,
    )
