"""Take the build's water and gas services to their subjects."""

from coachwright.model.build import Build
from coachwright.water.model import Water
from coachwright.water.stage_frost import take_frost
from coachwright.water.stage_gas import (
    take_alarms,
    take_combustion,
    take_gas,
    take_lockers,
)
from coachwright.water.stage_hot_water import take_hot_water
from coachwright.water.stage_stores import take_stores
from coachwright.water.stage_supply import take_doses, take_gaps, take_outlets, take_pumps
from coachwright.water.stage_vents import take_vents


def stage(build: Build) -> Water:
    """Return what the water and gas services of a build come to.

    Parameters
    ----------
    build
        With everything found.

    Returns
    -------
    Water
        Results and headline figures.
    """
    stores, store_figures = take_stores(build)
    hot_water, hot_figures = take_hot_water(build)
    outlets, outlet_figures = take_outlets(build)
    frost, frost_figures = take_frost(build)
    gas, gas_figures = take_gas(build, hot_water)
    return Water(
        figures=(
            *store_figures,
            *hot_figures,
            *outlet_figures,
            *frost_figures,
            *gas_figures,
        ),
        stores=stores,
        hot_water=hot_water,
        outlets=outlets,
        pumps=take_pumps(build),
        frost=frost,
        doses=take_doses(build),
        gaps=take_gaps(build),
        lockers=take_lockers(build),
        gas=gas,
        vents=take_vents(build),
        combustion=take_combustion(build),
        alarms=take_alarms(build),
    )
