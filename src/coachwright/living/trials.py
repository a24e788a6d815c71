"""What if: the coupled year of a build with a few things changed, run anew."""

from dataclasses import dataclass, replace

from coachwright.living.changes import larger_bank
from coachwright.living.given import Day, Given, Seasons
from coachwright.living.given_body import Body, Layer, Surface
from coachwright.living.model import Stands
from coachwright.living.months import months_of_year
from coachwright.living.simulate import prepare, year
from coachwright.living.standing import LONGEST_D, stands
from coachwright.living.stands import stands_by_month
from coachwright.living.steps import SiteSteps, Sky

INSULATION_W_PER_M_K = 0.036
"""Of the insulation that is added: as wool has it. [part-maker-data]"""
METAL_W_PER_M_K = 10.0
"""Nothing that insulates or lines conducts as well, and every metal conducts better."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Trial:
    """What is tried.

    Attributes
    ----------
    panels_w
        Rated power of all panels together.
    bank_ah
        Capacity of the bank.
    insulation_mm
        Added wherever a wall, roof, floor or door with the weather outside is covered.
    heat_degc
        The set point by day; that by night goes along with it.
    shade_frac
        Share of the sun on the panels that trees or buildings take.
    """

    panels_w: float
    bank_ah: float
    insulation_mm: float
    heat_degc: float
    shade_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Tried:
    """What a trial came to: stands by month, and sums of the typical year.

    Attributes
    ----------
    fuel_l
        Kilograms for a gas.
    comfort_frac
        Share of the year's occupied hours.
    unmet_wh
        Wanted and not given, of all uses.
    """

    stands: tuple[Stands, ...]
    whole_year: Stands
    fuel_l: float
    comfort_frac: float
    unmet_wh: float


def tried_given(*, given: Given, built: Trial, trial: Trial) -> Given:
    """Return what a run is given with the changes of a trial.

    Parameters
    ----------
    given
        Of the build.
    built
        The same figures as the build has them.
    trial
        What is tried.

    Notes
    -----
    Panels: the sun's power times the ratio of the rated powers and one minus the shade, within
    what the controllers take.  Bank: capacity, current limits and heat capacity times the ratio,
    resistance over it.  Insulation: a layer of the conductivity `INSULATION_W_PER_M_K` behind the
    skin, wherever the skin is covered; bare steel stays bare, and metal that goes through the
    layer stays as it is.  Where the build has no panels or no bank, there is nothing to scale.
    """
    more = trial.panels_w / built.panels_w if built.panels_w > 0.0 else 1.0
    larger = trial.bank_ah / built.bank_ah if built.bank_ah > 0.0 else 1.0
    supply = replace(
        given.supply,
        sun_w=given.supply.sun_w * (more * (1.0 - trial.shade_frac)),
    )
    return replace(
        given,
        supply=supply,
        bank=larger_bank(given.bank, larger) if given.bank and larger > 0.0 else given.bank,
        body=_insulated(given.body, trial.insulation_mm - built.insulation_mm),
        seasons=_warmed(given.seasons, trial.heat_degc - built.heat_degc),
    )


def tried(*, given: Given, sky: Sky, site: SiteSteps, water_d: float | None) -> Tried:
    """Return what a year comes to: stands from every day, and the year under the stay pattern.

    Parameters
    ----------
    given
        Such as `tried_given` makes.
    sky
        Of the site.
    site
        Steps of that site, for the same body.
    water_d
        Days that the tanks last; None where nothing limits them. [d]
    """
    ready = prepare(given, sky, site=site)
    followed = stands(year(ready, off_grid=True))
    found = stands_by_month(
        lasted_d=tuple(float(each) for each in followed.lasted_d),
        water_d=water_d,
        followed_d=LONGEST_D,
    )
    months = months_of_year(year(ready))
    occupied_h = sum(each.occupied_h for each in months)
    outside_h = sum(each.cold_h + each.hot_h for each in months)
    return Tried(
        stands=found.months,
        whole_year=found.whole_year,
        fuel_l=sum(each.fuel_l for each in months),
        comfort_frac=1.0 - outside_h / occupied_h if occupied_h > 0.0 else 1.0,
        unmet_wh=sum(sum(each.unmet_wh.values()) for each in months),
    )


def _insulated(body: Body, added_mm: float) -> Body:
    if added_mm <= 0.0:
        return body
    layer = Layer(
        name="added insulation",
        thickness_mm=added_mm,
        conductivity_w_per_m_k=INSULATION_W_PER_M_K,
    )
    return replace(body, surfaces=tuple(_with(each, layer) for each in body.surfaces))


def _with(surface: Surface, layer: Layer) -> Surface:
    inside = surface.layers[-1] if surface.layers else None
    bare = inside is None or inside.conductivity_w_per_m_k > METAL_W_PER_M_K
    if surface.outside != "air" or bare:
        return surface
    return replace(surface, layers=(*surface.layers[:1], layer, *surface.layers[1:]))


def _warmed(seasons: Seasons, more_k: float) -> Seasons:
    return Seasons(
        warm=_day(seasons.warm, more_k),
        cold=_day(seasons.cold, more_k),
        driving_warm=_day(seasons.driving_warm, more_k),
        driving_cold=_day(seasons.driving_cold, more_k),
    )


def _day(day: Day, more_k: float) -> Day:
    return replace(day, heat_degc=tuple(each + more_k for each in day.heat_degc))
