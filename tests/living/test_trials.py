"""A trial changes what it says and nothing else, and its year moves the way that it must."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from coachwright.actions.site_shelf import arrays_of_site
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays
from coachwright.errors import OutOfRange
from coachwright.living.given import Given
from coachwright.living.given_body import Layer
from coachwright.living.simulate import Run, prepare, year
from coachwright.living.steps import SiteSteps, site_steps
from coachwright.living.stretch import stretch
from coachwright.living.trials import INSULATION_W_PER_M_K, Trial, Tried, tried, tried_given
from tests.support.living_given import given

BUILT = Trial(panels_w=400.0, bank_ah=200.0, insulation_mm=0.0, heat_degc=20.0, shade_frac=0.0)


@cache
def _arrays() -> SiteArrays:
    return arrays_of_site(Catalogue(), "greensboro-nc", None)


@cache
def _given() -> Given:
    return given(np.asarray(_arrays().weather.ghi_w_per_m2 * 0.3))


@cache
def _site() -> SiteSteps:
    return site_steps(body=_given().body, sky=_arrays(), heading_deg=None)


def _changed(**fields: float) -> Given:
    return tried_given(given=_given(), built=BUILT, trial=replace(BUILT, **fields))


@cache
def _tried(**fields: float) -> Tried:
    return tried(given=_changed(**fields), sky=_arrays(), site=_site(), water_d=9.0)


def test_a_trial_of_nothing_changes_nothing() -> None:
    same = _changed()
    assert np.array_equal(same.supply.sun_w, _given().supply.sun_w)
    assert replace(same, supply=_given().supply) == _given()


def test_panels_and_shade_scale_the_sun() -> None:
    more = _changed(panels_w=800.0, shade_frac=0.25)
    assert more.supply.sun_w == pytest.approx(_given().supply.sun_w * 1.5)
    assert more.supply.sun_limit_w == _given().supply.sun_limit_w


def test_a_larger_bank_is_several_side_by_side() -> None:
    bank, was = _changed(bank_ah=500.0).bank, _given().bank
    assert bank is not None
    assert was is not None
    assert bank.capacity_ah == pytest.approx(2.5 * was.capacity_ah)
    assert bank.resistance_ohm == pytest.approx(was.resistance_ohm / 2.5)
    assert bank.charge_limit_a == pytest.approx(2.5 * was.charge_limit_a)


def test_where_there_is_nothing_to_scale_nothing_is_scaled() -> None:
    without = replace(_given(), bank=None)
    none = replace(BUILT, panels_w=0.0, bank_ah=0.0)
    made = tried_given(given=without, built=none, trial=replace(none, panels_w=200.0))
    assert made.bank is None
    assert np.array_equal(made.supply.sun_w, without.supply.sun_w)


def test_insulation_goes_on_what_has_the_weather_outside() -> None:
    for before, after in zip(
        _given().body.surfaces, _changed(insulation_mm=30.0).body.surfaces, strict=True
    ):
        if before.outside != "air":
            assert after == before
            continue
        (added,) = set(after.layers) - set(before.layers)
        assert added.thickness_mm == 30.0
        assert added.conductivity_w_per_m_k == INSULATION_W_PER_M_K
        assert after.layers[0] == before.layers[0]
        assert after.bridge_w_per_k == before.bridge_w_per_k


def test_bare_steel_stays_bare() -> None:
    steel = Layer(name="steel", thickness_mm=1.0, conductivity_w_per_m_k=50.0)
    body = _given().body
    bare = replace(body.surfaces[0], name="bare", layers=(steel,))
    made = tried_given(
        given=replace(_given(), body=replace(body, surfaces=(bare, *body.surfaces))),
        built=BUILT,
        trial=replace(BUILT, insulation_mm=30.0),
    )
    assert made.body.surfaces[0] == bare
    assert made.body.surfaces[1] != body.surfaces[0]


def test_the_set_point_of_the_night_goes_along_with_that_of_the_day() -> None:
    day = _changed(heat_degc=18.0).seasons.cold
    was = _given().seasons.cold
    assert day.heat_degc == tuple(each - 2.0 for each in was.heat_degc)
    assert day.cool_degc == was.cool_degc


@pytest.mark.parametrize("fields", [{"panels_w": 800.0}, {"bank_ah": 400.0}])
def test_more_of_it_never_shortens_a_stand(fields: dict[str, float]) -> None:
    for before, after in zip(_tried().stands, _tried(**fields).stands, strict=True):
        assert after.p10_d >= before.p10_d
        assert after.p50_d >= before.p50_d


def test_shade_never_lengthens_a_stand() -> None:
    for before, after in zip(_tried().stands, _tried(shade_frac=0.5).stands, strict=True):
        assert after.p50_d <= before.p50_d


def test_insulation_and_a_cooler_cabin_save_fuel() -> None:
    assert _tried(insulation_mm=40.0).fuel_l < 0.9 * _tried().fuel_l
    assert _tried(heat_degc=16.0).fuel_l < 0.8 * _tried().fuel_l


def test_comfort_is_a_share_and_falls_where_nobody_heats() -> None:
    assert 0.0 <= _tried(heat_degc=8.0).comfort_frac < _tried().comfort_frac <= 1.0


@cache
def _run() -> Run:
    return year(prepare(_given(), _arrays(), site=_site()), series=True)


def test_a_stretch_is_the_run_s_own_days() -> None:
    cut = stretch(_run(), from_day=30, days=7)
    outside = cut.nodes_degc["outside"]
    assert len(outside) == 7 * 144
    assert np.array_equal(outside, _run().nodes_degc["outside"][30 * 144 : 37 * 144])
    assert len(cut.flows_w["sun_w"]) == len(outside)
    assert (cut.from_day, cut.days) == (30, 7)


@pytest.mark.parametrize("day", [-1, 359])
def test_days_beyond_the_run_are_refused(day: int) -> None:
    with pytest.raises(OutOfRange, match="from_day"):
        stretch(_run(), from_day=day, days=7)
