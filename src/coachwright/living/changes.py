"""What one change to the build would do: real runs of the year, one for each."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from coachwright.climate.model import Hours
from coachwright.living.given import Bank, Given
from coachwright.living.model import Change, Stands
from coachwright.living.site_steps import kept_steps
from coachwright.living.site_year import Walked, walked
from coachwright.living.steps import Sky
from coachwright.model.build import Build, FinishLayer
from coachwright.units import told

MORE_INSULATION_MM = 20.0
GivenOf = Callable[[Build, Hours], Given]
"""Makes what a run is given of a build and the sun on its panels."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Basis:
    """The design as it is, at one site.

    Attributes
    ----------
    given_of
        Makes what a run is given.
    season_months
        Months, from 1, whose poorest is told.
    """

    build: Build
    given_of: GivenOf
    sky: Sky
    sun_w: Hours
    water_d: float | None
    season_months: tuple[int, ...]


def changes(basis: Basis) -> tuple[Change, ...]:
    """Return what some changes would do: each a real run of year and stands.

    Parameters
    ----------
    basis
        The design as it is.

    Notes
    -----
    One more panel: the sun of all panels times (n + 1)/n, within what the controllers take.  One
    more battery: capacity and limits times (n + 1)/n, resistance the other way.  20 mm more: on
    every layer of insulation, at the expense of nothing.  Shade: no straight sunlight on panels,
    body and glass.
    """
    was = _walk(basis, basis.given_of(basis.build, basis.sun_w), basis.sky)
    return tuple(
        _change(name, was, _walk(basis, given, sky), basis.season_months)
        for name, given, sky in _cases(basis)
    )


def _cases(basis: Basis) -> Iterator[tuple[str, Given, Sky]]:
    build, sky = basis.build, basis.sky
    panels = sum(1 for _ in build.having("solar_panel"))
    batteries = sum(1 for _ in build.having("battery"))
    if panels:
        more = basis.sun_w * ((panels + 1) / panels)
        yield "one more panel", basis.given_of(build, more), sky
    as_is = basis.given_of(build, basis.sun_w)
    if batteries and as_is.bank is not None:
        bank = larger_bank(as_is.bank, (batteries + 1) / batteries)
        yield "one more battery", replace(as_is, bank=bank), sky
    if build.finishes:
        thicker = build.model_copy(update={"finishes": tuple(map(_thicker, build.finishes))})
        name = f"{told(MORE_INSULATION_MM, 'mm')} more insulation"
        yield name, basis.given_of(thicker, basis.sun_w), sky
    shade = shaded(sky)
    yield "a pitch in the shade", basis.given_of(build, shaded_sun_w(sky, basis.sun_w)), shade


def larger_bank(bank: Bank, factor: float) -> Bank:
    """Return a bank so many times as large, of the same batteries."""
    return replace(
        bank,
        capacity_ah=bank.capacity_ah * factor,
        resistance_ohm=bank.resistance_ohm / factor,
        charge_limit_a=bank.charge_limit_a * factor,
        discharge_limit_a=bank.discharge_limit_a * factor,
        pads_w=bank.pads_w * factor,
        heat_j_per_k=bank.heat_j_per_k * factor,
        ua_w_per_k=bank.ua_w_per_k * factor,
        mass_kg=bank.mass_kg * factor,
    )


def shaded(sky: Any) -> Any:
    """Return a site's arrays without straight sunlight."""
    weather = sky.weather
    light = replace(
        weather,
        ghi_w_per_m2=weather.dhi_w_per_m2,
        dni_w_per_m2=weather.dni_w_per_m2 * 0.0,
    )
    return replace(sky, weather=light)


def shaded_sun_w(sky: Sky, sun_w: Hours) -> Hours:
    """Return the sun on the panels by the share of the light that is not straight [W].

    Notes
    -----
    P · G_d / G: cells stay as warm, and the shade of neighbours counts as before.
    """
    weather = sky.weather
    whole = weather.ghi_w_per_m2
    lit = whole > 0.0
    share = 0.0 * whole
    share[lit] = (weather.dhi_w_per_m2[lit] / whole[lit]).clip(0.0, 1.0)
    return sun_w * share


def _thicker(layer: FinishLayer) -> FinishLayer:
    insulation = layer.part.insulation
    if insulation is None:
        return layer
    own_mm = layer.finish.thickness_mm or insulation.thickness_mm
    finish = layer.finish.model_copy(update={"thickness_mm": own_mm + MORE_INSULATION_MM})
    return layer.model_copy(update={"finish": finish})


def _walk(basis: Basis, given: Given, sky: Sky) -> Walked:
    site = kept_steps(given, sky)
    return walked(given, sky, site, basis.water_d)


def _change(name: str, was: Walked, now: Walked, season: tuple[int, ...]) -> Change:
    before, after = (_poorest(each, season) for each in (was, now))
    return Change(
        name=name,
        nine_of_ten_d=after.p10_d,
        was_nine_of_ten_d=before.p10_d,
        fuel_l=sum(each.fuel_l for each in now.months),
        was_fuel_l=sum(each.fuel_l for each in was.months),
        comfort_frac=_comfort_frac(now),
        was_comfort_frac=_comfort_frac(was),
    )


def _poorest(made: Walked, season: tuple[int, ...]) -> Stands:
    months = (each for each in made.distribution.months if each.month in season)
    return min(months, key=lambda each: (each.p10_d, each.p50_d))


def _comfort_frac(made: Walked) -> float:
    occupied_h = sum(each.occupied_h for each in made.months)
    within_h = sum(each.comfort_frac * each.occupied_h for each in made.months)
    return within_h / occupied_h if occupied_h else 1.0
