"""The year of any body of rooms: balances, steps, what is let in and what is drawn."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from coachwright.actions.site_shelf import arrays_of_site
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays
from coachwright.errors import OutOfRange
from coachwright.living.columns import USES
from coachwright.living.given import Given
from coachwright.living.given_body import Passage
from coachwright.living.off_grid import stands
from coachwright.living.simulate import Run, prepare, simulate, year
from coachwright.living.steps import site_steps
from tests.support.boxes import COOLER, box, day, seasons, van, van_body
from tests.support.steady_sky import steady_sky

SITE = arrays_of_site(Catalogue(), "greensboro-nc", None)
SUN_W = SITE.roof.whole_w_per_m2 * 0.6
SUNNY = replace(van().supply, sun_w=SUN_W)


@pytest.fixture(scope="module", name="usual")
def _usual() -> Run:
    return simulate(van(supply=SUNNY), SITE)


def test_every_balance_closes(usual: Run) -> None:
    assert usual.balance.worst_ratio < 1e-9


@given(
    rib=st.floats(0.0, 3.0),
    panels=st.floats(0.0, 3.0),
    capacity=st.floats(20.0, 900.0),
    least=st.floats(0.0, 80.0),
    humid=st.floats(0.4, 1.0),
    heating=st.booleans(),
    cooling=st.booleans(),
    buffer=st.floats(0.0, 10.0),
    through=st.floats(0.0, 90.0),
    from_day=st.integers(0, 364),
)
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_balances_close_whatever_the_design(
    *,
    rib: float,
    panels: float,
    capacity: float,
    least: float,
    humid: float,
    heating: bool,
    cooling: bool,
    buffer: float,
    through: float,
    from_day: int,
) -> None:
    usual = van()
    assert usual.bank is not None
    body = van_body(rib)
    rooms = tuple(replace(room, vapour_buffer_ratio=buffer) for room in body.rooms)

    passage = Passage(
        name="door", rooms=("cabin", "stall"), conductance_w_per_k=1.0, flow_m3_per_h=through
    )
    design = van(
        body=replace(body, rooms=rooms, passages=(passage,)),
        supply=replace(SUNNY, sun_w=SUN_W * panels),
        bank=replace(usual.bank, capacity_ah=capacity),
        air=replace(usual.air, least_m3_per_h=least, humid_frac=humid),
        heater=usual.heater if heating else None,
        cooler=COOLER if cooling else None,
    )
    run = simulate(design, SITE, from_day=from_day, days=25)
    assert run.balance.worst_ratio < 1e-9
    assert np.isfinite(run.months).all()
    for use in USES:
        assert run.whole(f"out.{use}_wh") >= -1e-9
        assert run.whole(f"unmet.{use}_wh") >= 0.0


def test_half_the_step_changes_headline_figures_by_less_than_one_per_cent() -> None:
    design = van(supply=replace(SUNNY, sun_w=SUN_W * 3.0), cooler=None)
    ten = simulate(design, SITE)
    five = simulate(design, SITE, step_min=5.0)
    for name in ("fuel_wh", "heat_wh", "out.fridge_wh", "air_degc_h", "in.sun_wh", "wet_glass_h"):
        assert ten.whole(name) == pytest.approx(five.whole(name), rel=0.01), name
    one = simulate(design, SITE, off_grid=True)
    two = simulate(design, SITE, off_grid=True, step_min=5.0)
    assert stands(one).days_d.mean() == pytest.approx(stands(two).days_d.mean(), rel=0.01)


def test_more_cells_change_headline_figures_by_less_than_one_per_cent(usual: Run) -> None:
    finer = year(prepare(van(supply=SUNNY), SITE, refined=3))
    for name in ("fuel_wh", "heat_wh", "out.fridge_wh", "air_degc_h"):
        assert usual.whole(name) == pytest.approx(finer.whole(name), rel=0.01), name


def test_a_run_again_is_the_same_to_the_last_bit(usual: Run) -> None:
    again = simulate(van(supply=SUNNY), SITE)
    assert (usual.months == again.months).all()
    assert (usual.extremes == again.extremes).all()


def test_a_site_kept_for_other_planes_is_made_anew() -> None:
    bare = box(replace(van_body(), windows=()))
    kept = site_steps(body=bare.body, sky=SITE, heading_deg=None)
    design = van()
    assert (
        simulate(design, SITE, site=kept, days=3).months == simulate(design, SITE, days=3).months
    ).all()


def test_a_step_that_does_not_fit_an_hour_is_refused() -> None:
    with pytest.raises(OutOfRange, match="step_min"):
        simulate(van(), SITE, step_min=7.0)


def test_a_run_of_no_days_is_refused() -> None:
    with pytest.raises(OutOfRange, match="days"):
        simulate(van(), SITE, days=0)


def test_a_name_that_no_sum_has_is_refused(usual: Run) -> None:
    with pytest.raises(OutOfRange, match="columns"):
        usual.by_month("something")


def test_extremes_are_told_by_name(usual: Run) -> None:
    assert usual.by_month("air_low_degc").max() < usual.by_month("air_high_degc").min() + 30.0


def test_series_add_up_to_the_sums() -> None:
    run = simulate(van(supply=SUNNY), SITE, from_day=20, days=10, series=True)
    for name in ("heater", "fridge", "inverter", "bank"):
        assert run.flows_w[f"{name}_w"].sum() / 6.0 == pytest.approx(
            run.whole(f"out.{name}_wh"), abs=1e-6
        )
    assert len(run.nodes_degc["stall"]) == 1440
    assert run.nodes_degc["cabin"].max() == run.extremes[0, 3]


def test_days_go_on_past_the_end_of_december() -> None:
    run = simulate(van(), SITE, from_day=360, days=10)
    assert run.whole("hours_h") == pytest.approx(240.0)
    assert run.by_month("hours_h")[0] == pytest.approx(120.0)


def _held(design: Given, site: SiteArrays) -> Run:
    return simulate(design, site, days=6, start_degc=18.0, series=True)


def test_a_heater_holds_its_set_point_where_it_can() -> None:
    run = _held(van(bank=None), steady_sky(0.0))
    evening = run.nodes_degc["cabin"].reshape(6, 144)[3:, 60:130]
    assert evening.min() == pytest.approx(20.0, abs=1e-6)


def test_a_cooler_leaves_the_reserve_to_the_lights() -> None:
    usual = van()
    assert usual.bank is not None
    design = van(bank=replace(usual.bank, capacity_ah=60.0), heater=None)
    run = simulate(design, steady_sky(32.0, 15.0), days=1, start_degc=30.0, series=True)
    assert run.whole("unmet.cooler_wh") > 0.0
    assert run.whole("out.cooler_wh") > 0.0
    stopped = int(np.flatnonzero(run.flows_w["cooler_w"] == 0.0)[0])
    assert 0.1 < run.flows_w["charge_frac"][stopped] <= 0.2
    assert run.flows_w["direct_w"][stopped] == 25.0


def test_a_cooler_that_may_not_run_off_the_grid_does_not() -> None:
    design = van(cooler=replace(COOLER, enabled=False), pattern=replace(van().pattern))
    run = simulate(design, steady_sky(32.0), days=4, off_grid=True)
    assert run.whole("out.cooler_wh") == 0.0


def test_a_cold_bank_takes_no_charge_until_its_pads_have_warmed_it() -> None:
    usual = van()
    assert usual.bank is not None
    cold = replace(usual.bank, room="outside", pads_w=0.0)
    site = steady_sky(-8.0)
    design = van(supply=replace(SUNNY, sun_w=np.full(8760, 300.0)), bank=cold, heater=None)
    locked = simulate(design, site, days=3, start_charge_frac=0.5)
    assert locked.whole("charged_ah") == 0.0
    assert locked.whole("locked_h") > 20.0
    padded = van(supply=design.supply, bank=replace(cold, pads_w=80.0), heater=None)
    assert simulate(padded, site, days=3, start_charge_frac=0.5).whole("charged_ah") > 0.0


def test_hook_up_serves_sockets_and_charges_the_bank() -> None:
    design = van(pattern=replace(van().pattern, hookup_frac=1.0))
    run = simulate(design, SITE, days=10, start_charge_frac=0.3)
    assert run.whole("in.hookup_wh") > 0.0
    assert run.end_charge_frac > 0.9


def test_an_electric_heater_draws_through_the_inverter_and_lacks_what_it_cannot_give() -> None:
    usual = van()
    assert usual.heater is not None
    electric = replace(usual.heater, electric_ac=True, efficiency_frac=1.0, most_w=2500.0)
    run = simulate(van(heater=electric), steady_sky(-10.0), days=3, start_degc=5.0)
    assert run.whole("out.heater_wh") > 0.0
    assert run.whole("unmet.heater_wh") > 0.0
    assert run.whole("fuel_wh") == 0.0


def test_ventilation_by_the_clock_cools_a_warm_room() -> None:
    body = van_body()
    shut = box(body, seasons=seasons(day(sensible_w=500.0)))
    told = replace(day(sensible_w=500.0), vent_m3_per_h=(200.0,) * 144)
    aired = box(body, seasons=seasons(told))
    site = steady_sky(10.0)
    warm = simulate(shut, site, days=5).end_air_degc[0]
    assert simulate(aired, site, days=5).end_air_degc[0] < warm - 2.0


def test_glass_is_wet_before_lining_when_people_breathe_in_the_cold() -> None:
    run = simulate(van(bank=None), steady_sky(-5.0, -6.0), days=10)
    assert run.whole("wet_glass_h") > run.whole("wet_lining_h")
    assert run.whole("condensed_kg") > 0.0


def test_a_tank_outside_freezes_and_its_heater_keeps_it() -> None:
    usual = van(bank=None)
    cold = steady_sky(-5.0)
    kept = simulate(usual, cold, days=20, start_degc=5.0)
    bare = replace(usual, frost=tuple(replace(each, heated_w=0.0) for each in usual.frost))
    lost = simulate(bare, cold, days=20, start_degc=5.0)
    assert lost.frost_h.sum() == pytest.approx(480.0)
    assert 0.0 < kept.frost_h.sum() < 24.0  # it begins as cold as outside


def test_more_load_never_adds_days() -> None:
    design = van(supply=SUNNY, cooler=None)
    lighter = simulate(design, SITE, off_grid=True)
    warm = replace(design.seasons.warm, dc_w=tuple(60.0 for _ in range(144)))
    heavier = simulate(replace(design, seasons=seasons(warm)), SITE, off_grid=True)
    assert (stands(heavier).days_d <= stands(lighter).days_d + 0.2).all()


def test_stands_do_not_depend_on_how_many_threads_walk_them() -> None:
    run = simulate(van(supply=SUNNY, cooler=None), SITE, off_grid=True)
    one, two = stands(run), stands(run, threads=2)
    assert (one.days_d == two.days_d).all()
    assert (one.still == (one.days_d >= 21.0)).all()


def test_stands_want_a_series_off_the_grid(usual: Run) -> None:
    with pytest.raises(OutOfRange, match="grid"):
        stands(usual)
