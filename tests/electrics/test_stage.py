"""What the stage hands on: the numbers themselves are proven beside it."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.electrics.answers import how_long
from coachwright.electrics.model import Electrics, Season, Supply
from coachwright.electrics.stage import stage
from coachwright.electrics.stage_bank import stated_voltages
from tests.support.builds import Data, build
from tests.support.electrics import (
    AGM,
    CONTROLLER,
    DCDC,
    INVERTER,
    LFP,
    PANEL,
    SHORE,
    fitted,
    load,
)

BANK = ("bank", "battery", LFP)
LAMP = ("lamp", "dc_load", load("100 W"))
KETTLE = ("kettle", "ac_load", load("900 W", hours=1))
AC = ("ac", "inverter", INVERTER)
SUN = ("sun", "solar_controller", CONTROLLER)
ROOF = ("roof", "solar_panel", PANEL)
MAINS = ("mains", "shore_charger", SHORE)
ENGINE = ("engine", "dcdc_charger", DCDC)
TOUGH = ("bank", "battery", LFP | {"charge_from": "-20 degC"})
WARM = {"heater": {"output": "2000 W", "fuel": "diesel"}}


def _made(*facets: tuple[str, str, Data], **changes: Any) -> Electrics:
    return stage(build(fitted(*facets, **changes)))


def test_an_empty_build_has_no_bank_and_says_so() -> None:
    made = _made()
    assert (made.bank, made.bank_missing, made.inverter) == (None, "a battery", None)
    figures = {figure.name: figure for figure in made.figures}
    assert figures["electrics.usable-energy"].missing == "a battery"
    assert figures["electrics.daily-use-summer"].value == 0


def test_every_figure_with_a_value_has_its_working() -> None:
    made = _made(TOUGH, LAMP, KETTLE, AC, SUN, ROOF, MAINS, ENGINE)
    assert len(made.figures) > 20
    for figure in made.figures:
        assert (figure.value is None) == bool(figure.missing), figure.name
        if figure.value is not None:
            assert figure.working is not None, figure.name
            assert figure.working.result == pytest.approx(figure.value), figure.name
            assert figure.working.unit == figure.unit
    assert len({figure.name for figure in made.figures}) == len(made.figures)


def test_the_day_is_the_sum_of_its_lines() -> None:
    made = _made(
        BANK,
        LAMP,
        KETTLE,
        AC,
        ("router", "dc_load", load("8 W", hours=24, standby="2 W")),
        brief__habits__devices=[
            {"name": "phone", "draw": "10 W", "use": "2 h/day", "count": 2},
            {"name": "laptop", "draw": "60 W", "use": "3 h/day", "supply": "inverter"},
        ],
    )
    # hand: 200 + 192 + 48 + 40 Wh at the battery's voltage; 900 + 180 Wh behind the inverter
    use = made.summer.use
    assert use.dc_wh_per_day == pytest.approx(480)
    assert use.ac_wh_per_day == pytest.approx(1080)
    assert use.inverter_standby_wh_per_day == pytest.approx(240)
    assert use.total_wh_per_day == pytest.approx(480 + 1080 / 0.9 + 240)
    on_bank = sum(
        line.summer_wh_per_day / (0.9 if line.supply is Supply.INVERTER else 1.0)
        for line in made.loads
    )
    assert on_bank == pytest.approx(use.total_wh_per_day)


def test_a_fittings_own_use_replaces_the_usual() -> None:
    changes = fitted(BANK, LAMP)
    changes["fittings"][1]["use"] = [
        {"mode": "on", "summer_use": "1 h/day", "winter_use": "5 h/day"}
    ]
    made = stage(build(changes))
    assert made.summer.use.total_wh_per_day == 100
    assert made.winter.use.total_wh_per_day == 500


def test_an_inverter_that_nothing_wants_is_off() -> None:
    assert _made(BANK, LAMP, AC).summer.use.inverter_standby_wh_per_day == 0


def test_an_inverter_sleeps_until_a_standby_load_wakes_it() -> None:
    sleepy = ("ac", "inverter", INVERTER | {"sleeps": True})
    assert _made(BANK, KETTLE, sleepy).summer.use.inverter_standby_wh_per_day == 0
    oven = ("oven", "ac_load", load("900 W", standby="3 W"))
    assert _made(BANK, oven, sleepy).summer.use.inverter_standby_wh_per_day == 240


def test_a_load_of_one_season_leaves_the_inverter_off_in_the_other() -> None:
    mode = {"name": "cool", "draw": "600 W", "summer_use": "3 h/day", "duty": "50 %"}
    made = _made(BANK, ("cooler", "ac_load", {"modes": [mode]}), AC)
    assert made.summer.use.total_wh_per_day == pytest.approx(900 / 0.9 + 240)
    assert made.winter.use.total_wh_per_day == 0


def test_without_an_inverter_the_planning_efficiency_counts() -> None:
    assert _made(BANK, KETTLE).summer.use.total_wh_per_day == pytest.approx(1000)


def test_what_runs_on_shore_power_alone_leaves_the_battery_be() -> None:
    made = _made(BANK, ("heater", "ac_load", load("1000 W", supply="shore only")))
    assert made.summer.use.total_wh_per_day == 0
    assert made.summer.use.shore_only_wh_per_day == 2000
    assert made.runtimes == ()


def test_a_controller_draws_all_day() -> None:
    idle = ("sun", "solar_controller", CONTROLLER | {"standby": "1 W"})
    assert _made(BANK, idle).summer.use.total_wh_per_day == 24


def test_two_in_parallel_and_two_in_series_hold_the_same() -> None:
    twin = ("twin", "battery", LFP)
    beside = _made(BANK, twin).bank
    behind = _made(BANK, twin, ("mains", "shore_charger", SHORE | {"battery": "24 V"})).bank
    assert beside is not None
    assert behind is not None
    assert (beside.capacity_ah, beside.nominal_v, beside.charge_limit_a) == (200, 12.8, 100)
    assert (behind.capacity_ah, behind.nominal_v, behind.charge_limit_a) == (100, 25.6, 50)
    assert behind.usable_wh == pytest.approx(beside.usable_wh) == pytest.approx(2048)


def test_a_battery_too_few_for_a_string_is_no_bank() -> None:
    made = _made(BANK, ("mains", "shore_charger", SHORE | {"battery": "24 V"}))
    assert (made.bank, made.bank_missing) == (
        None,
        "2 batteries in series for the system's voltage",
    )


def test_unlike_batteries_side_by_side_count_as_the_worst() -> None:
    big = LFP | {"capacity": "200 Ah", "charge_limit": "100 A", "usable": "90 %"}
    bank = _made(BANK, ("big", "battery", big)).bank
    assert bank is not None
    assert (bank.capacity_ah, bank.charge_limit_a, bank.kinds) == (300, 100, 2)


def test_unlike_batteries_in_series_have_no_answer() -> None:
    big = LFP | {"capacity": "200 Ah"}
    made = _made(
        BANK, ("big", "battery", big), ("mains", "shore_charger", SHORE | {"battery": "24 V"})
    )
    assert (made.bank, made.bank_missing) == (None, "batteries of one kind in series")


def test_batteries_of_two_chemistries_have_no_answer() -> None:
    made = _made(BANK, ("odd", "battery", AGM))
    assert made.bank_missing == "a bank of one chemistry and voltage"


@pytest.mark.parametrize(
    ("heated_space", "heater", "expected"),
    [(None, False, -8), (None, True, 16), (True, False, 16), (False, True, -8)],
)
def test_a_battery_inside_is_warm_where_the_cabin_is(
    heated_space: bool | None, heater: bool, expected: float
) -> None:
    changes = fitted(BANK, *([("stove", "heater", WARM["heater"])] if heater else []))
    if heated_space is not None:
        changes["fittings"][0]["heated_space"] = heated_space
    assert stage(build(changes)).in_cold[0].battery_degc == expected


def test_a_battery_under_the_floor_is_as_cold_as_the_night() -> None:
    changes = fitted(BANK, ("stove", "heater", WARM["heater"]))
    changes["fittings"][0]["mounting"] = "underbody"
    assert stage(build(changes)).in_cold[0].battery_degc == -8


def test_the_batterys_own_sheet_comes_before_the_usual_table() -> None:
    sheet = [
        {"battery": "25 degC", "capacity": "100 %"},
        {"battery": "-8 degC", "capacity": "60 %"},
    ]
    bank = _made(("bank", "battery", LFP | {"cold_capacity": sheet})).bank
    assert bank is not None
    assert bank.cold_factor == pytest.approx(0.6)
    assert bank.cold_usable_wh == pytest.approx(0.6 * 1024)


def test_too_cold_to_charge_stops_all_sources_in_winter() -> None:
    made = _made(BANK, LAMP, SUN, ROOF, MAINS, ENGINE)
    assert {limit.limited_by for limit in made.winter.limits} == {"too cold to charge"}
    assert made.winter.parked_sun_wh_per_day == 0
    assert made.winter.driving_wh_per_day == 0
    assert made.summer.parked_sun_wh_per_day is not None
    assert made.summer.parked_sun_wh_per_day > 0


def test_each_source_says_what_holds_it_back() -> None:
    made = _made(TOUGH, SUN, ROOF, MAINS, ENGINE)
    named = {limit.source: limit.limited_by for limit in made.summer.limits}
    # the alternator spares 40 A at 12 V: 33.75 A at 12.8 V, above the charger's 30 A
    assert named == {"sun": "panels", "driving": "DC-DC charger", "hook-up": "shore charger"}
    assert all(limit.season is Season.WINTER for limit in made.winter.limits)
    bare = _made(TOUGH)
    assert {limit.limited_by for limit in bare.summer.limits} == {
        "no panel on a charge controller",
        "no DC-DC charger",
        "no shore charger",
    }
    assert all(limit.full_charge_h is None for limit in bare.summer.limits)


def test_a_sun_day_by_hand() -> None:
    made = _made(TOUGH, SUN, ROOF)
    # hand: SAPM open rack at 34 degC, 1 m/s: 34 + 1000 exp(-3.56 - 0.075) + 3 = 63.384 degC;
    # 180 W x (1 - 0.0035 x 38.384) x (1 - 0.08678564) x 0.97 x 5 h = 690.14 Wh
    assert made.summer.parked_sun_wh_per_day == pytest.approx(690.14, rel=2e-4)


def test_panels_are_dealt_out_in_turn() -> None:
    made = _made(
        TOUGH,
        ("sun-a", "solar_controller", CONTROLLER),
        ("sun-b", "solar_controller", CONTROLLER),
        *((f"roof-{at}", "solar_panel", PANEL) for at in range(3)),
    )
    assert [array.panels for array in made.arrays] == [("roof-0", "roof-2"), ("roof-1",)]


def test_folding_panels_work_on_parked_days() -> None:
    folding = ("mat", "solar_panel", PANEL | {"folding": True})
    made = _made(TOUGH, SUN, folding)
    parked, average = made.summer.parked_sun_wh_per_day, made.summer.sun_wh_per_day
    assert parked is not None
    assert average == pytest.approx(parked * 3 / 4)  # three days parked, one driven
    still = _made(TOUGH, SUN, folding, brief__stay__drive="0 h/day")
    assert still.summer.sun_wh_per_day == still.summer.parked_sun_wh_per_day


def test_driving_and_hookup_by_hand() -> None:
    made = _made(TOUGH, MAINS, ENGINE, brief__stay__hookup="50 %")
    # 30 A x 12.8 V x 2 h on one day of four; 20 A x 12.8 V x 10 h would not fit into 1024 Wh
    assert made.summer.driving_wh_per_day == pytest.approx(30 * 12.8 * 2 / 4)
    assert made.summer.hookup_wh_per_day == pytest.approx(1024 / 2)


def test_missing_sun_hours_leave_the_dark_answer() -> None:
    made = _made(TOUGH, LAMP, SUN, ROOF, brief__climate__winter_sun=None)
    assert made.winter.missing == "sun hours in winter"
    assert made.winter.independence.days_d is None
    assert made.winter.independence.without_sun_d is not None
    assert made.winter.balance_wh_per_day is None


def test_without_panels_sun_hours_are_not_missed() -> None:
    made = _made(TOUGH, LAMP, brief__climate__winter_sun=None)
    assert made.winter.missing == ""
    assert made.winter.independence.days_d == made.winter.independence.without_sun_d


def test_a_fast_drain_gives_less_than_the_rated_energy() -> None:
    weak = ("bank", "battery", AGM | {"peukert": 1.2})
    drain = ("heater", "dc_load", load("120 W", hours=24))
    made = _made(weak, drain)
    # hand: 10 A on 100 Ah at 20 h: x = 2, 2^(1 - 1.2) = 0.87055
    assert made.bank is not None
    assert made.summer.usable_wh == pytest.approx(made.bank.usable_wh * 0.87055, rel=1e-4)


def test_how_long_a_load_runs() -> None:
    plain = ("bank", "battery", LFP | {"peukert": 1.0, "usable": "100 %"})
    made = _made(
        plain,
        ("pump", "dc_load", load("128 W")),
        ("router", "dc_load", load("12.8 W", hours=24)),
        brief__reserve="0 %",
    )
    times = {one.subject: one for one in made.runtimes}
    # hand: 100 Ah at 10 A; with 1 A always on 11 A; the router alone 100 h
    assert times["pump"].alone_h == pytest.approx(10)
    assert times["pump"].with_others_h == pytest.approx(100 / 11)
    assert times["router"].with_others_h == pytest.approx(100)
    assert times["pump"].cold_alone_h < 10


def test_how_long_anything_runs() -> None:
    made = _made(("bank", "battery", LFP | {"peukert": 1.0}))
    assert made.bank is not None
    found = how_long(bank=made.bank, draw_w=128, duty_frac=0.5, others_w=12.8)
    # hand: 80 Ah usable over 5 A + 1 A
    assert found.clock_h == pytest.approx(80 / 6)


def test_a_battery_dead_in_the_cold_runs_nothing() -> None:
    sheet = [{"battery": "0 degC", "capacity": "0 %"}]
    made = _made(("bank", "battery", LFP | {"cold_capacity": sheet}), LAMP)
    assert made.runtimes[0].cold_alone_h == 0
    assert made.winter.independence.days_d == 0


def test_loads_at_once() -> None:
    made = _made(BANK, LAMP, KETTLE, ("toaster", "ac_load", load("500 W", surge="700 W")), AC)
    assert made.inverter is not None
    assert (made.inverter.load_w, made.inverter.surge_demand_w) == (1400, 1600)
    # the inverter stops at its 1000 W: 1000 / 0.9 / 12.8 and / 10.5 V
    assert made.inverter.nominal_current_a == pytest.approx(86.81, rel=1e-3)
    assert made.inverter.cut_off_current_a == pytest.approx(105.82, rel=1e-3)
    assert made.largest_single == "kettle"
    assert made.largest_single_a == pytest.approx(900 / 0.9 / 12.8)


def test_an_inverter_without_a_bank_has_no_current() -> None:
    made = _made(KETTLE, AC)
    assert made.inverter is not None
    assert made.inverter.nominal_current_a is None
    assert (made.simultaneous_a, made.largest_single_a) == (None, None)


@settings(max_examples=25, deadline=None)
@given(draw=st.integers(1, 2000), more=st.integers(1, 2000), panels=st.integers(0, 3))
def test_more_load_never_adds_days_of_independence(draw: int, more: int, panels: int) -> None:
    roof = tuple((f"roof-{at}", "solar_panel", PANEL) for at in range(panels))

    def days(watts: int) -> tuple[float, float]:
        made = _made(TOUGH, SUN, *roof, ("load", "dc_load", load(f"{watts} W")))
        summer, winter = made.summer.independence.days_d, made.winter.independence.days_d
        assert summer is not None
        assert winter is not None
        return summer, winter

    before, after = days(draw), days(draw + more)
    assert after[0] <= before[0]
    assert after[1] <= before[1]


@settings(max_examples=25, deadline=None)
@given(
    night=st.integers(-35, 20), colder=st.integers(0, 20), chemistry=st.sampled_from([LFP, AGM])
)
def test_a_colder_night_never_adds_energy(night: int, colder: int, chemistry: Data) -> None:
    def energy_wh(degc: int) -> float:
        bank = _made(
            ("bank", "battery", chemistry), brief__climate__cold_night=f"{degc} degC"
        ).bank
        assert bank is not None
        return bank.cold_usable_wh

    assert energy_wh(night - colder) <= energy_wh(night) + 1e-9


@settings(max_examples=15, deadline=None)
@given(count=st.integers(0, 5))
def test_one_more_panel_never_brings_less(count: int) -> None:
    def sun_wh(panels: int) -> float:
        roof = tuple((f"roof-{at}", "solar_panel", PANEL) for at in range(panels))
        found = _made(TOUGH, SUN, *roof).summer.parked_sun_wh_per_day
        assert found is not None
        return found

    assert sun_wh(count + 1) >= sun_wh(count)


def test_a_device_that_does_two_things_is_named_once() -> None:
    changes = fitted(BANK, ("combi", "inverter", INVERTER))
    changes["own_parts"][1]["shore_charger"] = SHORE
    stated = list(stated_voltages(build(changes)))
    assert [(one.name, one.battery_v) for one in stated] == [("combi", (12.0,))]
