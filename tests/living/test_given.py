"""What a run is given: taken from a build, piece by piece, and as the demos have it."""

from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from coachwright.actions.opening import open_build
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.model import HOURS, Place, Weather
from coachwright.electrics import stage as electrics_stage
from coachwright.electrics.model import Season, Supply
from coachwright.living.body_given import body, envelope_of
from coachwright.living.given import Day, Given
from coachwright.living.loads_given import electric_water, habit_lines, standby_w
from coachwright.living.rooms_given import room_of
from coachwright.living.stage_given import envelope, given
from coachwright.model.build import Build
from coachwright.model.site import SiteOrigin
from coachwright.water import stage as water_stage
from tests.support.builds import build, fitting, part
from tests.support.source import ROOT

DEMOS = ("night-watch", "winter-kit", "four-seats", "troubled")
each_demo = pytest.mark.parametrize("name", DEMOS)


def weather(
    air_degc: float = 15.0, latitude_deg: float = 48.0, altitude_m: float = 0.0
) -> Weather:
    """Return a year that is the same in every hour."""
    flat = np.ones(HOURS)
    return Weather(
        title="made by hand",
        place=Place(
            latitude_deg=latitude_deg, longitude_deg=8.0, altitude_m=altitude_m, zone_h=1.0
        ),
        origin=SiteOrigin.SYNTHETIC,
        sun_min=30.0,
        ghi_w_per_m2=flat * 0.0,
        dni_w_per_m2=flat * 0.0,
        dhi_w_per_m2=flat * 0.0,
        air_degc=flat * air_degc,
        dew_degc=flat * 5.0,
        wind_m_per_s=flat * 2.0,
        pressure_pa=flat * 101_325.0,
    )


def found(made: Build, **told: Any) -> Given:
    """Return what a run of a build is given under a flat year."""
    return given(
        made,
        electrics_stage.stage(made),
        water_stage.stage(made),
        weather(**told),
        sun_w=np.full(HOURS, 100.0),
    )


@cache
def demo(name: str) -> Build:
    """Return a demo's build."""
    return open_build(ROOT / Path("demos") / f"{name}.toml", Catalogue()).build


def _sum_wh(row_w: tuple[float, ...]) -> float:
    return sum(row_w) / 6.0


@each_demo
@pytest.mark.parametrize("season", list(Season))
def test_a_day_takes_what_the_budget_says_for_the_same_loads(name: str, season: Season) -> None:
    """One figure, one place: habit loads by the energy budget, hot water by the water sheet."""
    made = demo(name)
    electrics, water = electrics_stage.stage(made), water_stage.stage(made)
    seasons = found(made).seasons
    warm = season is Season.SUMMER
    day: Day = seasons.warm if warm else seasons.cold
    hot = {each.name: each for each in electric_water(made, water)}
    for supply, row in ((Supply.DC, day.dc_w), (Supply.INVERTER, day.ac_w)):
        told = sum(
            line.summer_wh_per_day if warm else line.winter_wh_per_day
            for line in habit_lines(made, electrics)
            if line.supply is supply
        )
        told += sum(each.use.energy_wh for each in hot.values() if each.supply is supply)
        ready = standby_w(made, electrics, supply) * 24.0 if supply is Supply.INVERTER else 0.0
        assert _sum_wh(row) == pytest.approx(told + ready)


@each_demo
def test_every_line_of_the_budget_is_told_once(name: str) -> None:
    """By habit, as standby, by the kernel, or by the water sheet: none twice, none never."""
    made = demo(name)
    electrics = electrics_stage.stage(made)
    habit = {(line.subject, line.mode) for line in habit_lines(made, electrics)}
    for line in electrics.loads:
        fitted = made.fitted(line.subject)
        if line.standby or line.supply is Supply.SHORE or fitted is None:
            continue
        part_of = fitted.part
        by_kernel = bool(
            part_of.heater
            or part_of.air_conditioner
            or part_of.fridge
            or part_of.battery
            or (part_of.tank and part_of.tank.heated)
            or (part_of.light and part_of.light.place == "inside")
            or (part_of.fan and part_of.opening)
        )
        by_water = part_of.water_heater is not None
        assert ((line.subject, line.mode) in habit) is not (by_kernel or by_water)


@each_demo
def test_an_envelope_adds_up(name: str) -> None:
    told = envelope(demo(name))
    assert sum(each.ua_w_per_k for each in told.losses) == pytest.approx(told.ua_w_per_k)
    assert sum(each.share_frac for each in told.losses) == pytest.approx(1.0)
    assert told.ua_low_w_per_k <= told.ua_w_per_k <= told.ua_high_w_per_k
    area = sum(each.area_m2 for each in told.losses)
    assert told.mean_u_w_per_m2k == pytest.approx(told.ua_w_per_k / area)
    assert told.working.result == told.ua_w_per_k


@each_demo
def test_faces_taken_together_lose_as_much(name: str) -> None:
    """A body whose heading is not told has fewer surfaces and panes of the same area."""
    apart, together = body(demo(name), heading_deg=30.0), body(demo(name))
    assert len(together.surfaces) < len(apart.surfaces)
    for before, after in (
        (apart.surfaces, together.surfaces),
        (apart.windows, together.windows),
    ):
        assert sum(each.area_m2 for each in before) == pytest.approx(
            sum(each.area_m2 for each in after)
        )
        assert len({each.name for each in after}) == len(after)
    bridges = [sum(each.bridge_w_per_k for each in some.surfaces) for some in (apart, together)]
    assert bridges[0] == pytest.approx(bridges[1])
    gains = [
        sum(each.area_m2 * each.shgc_frac for each in some.windows) for some in (apart, together)
    ]
    assert gains[0] == pytest.approx(gains[1])


def test_the_register_of_winter_kit_warms_its_wardrobe() -> None:
    told = found(demo("winter-kit"))
    assert told.heater is not None
    assert told.heater.second_room == "drying-wardrobe"
    assert told.heater.second_frac == pytest.approx(0.3)
    assert "drying-wardrobe" in {room.name for room in told.body.rooms}
    walls = [each for each in told.body.surfaces if each.room == "drying-wardrobe"]
    assert [each.outside for each in walls] == ["cabin"]
    (way,) = [each for each in told.body.passages if "drying-wardrobe" in each.rooms]
    assert way.flow_m3_per_h == pytest.approx(15.0 + 0.3 * 3800.0 / (0.34 * 70.0))


def test_night_watch_sleeps_by_day_behind_shut_blinds() -> None:
    told = found(demo("night-watch"), air_degc=10.0)
    day = told.seasons.warm
    assert _sum_wh(day.asleep_frac) == pytest.approx(6.0)
    assert day.asleep_frac[60] == 1.0
    assert day.blinds_frac[60] == 1.0
    assert day.occupied_frac[0] == 0.0
    assert told.cooler is not None
    assert (told.cooler.rated_w, told.cooler.rated_input_w) == (1800.0, 620.0)
    assert not told.cooler.ac
    assert told.cooler.enabled


def test_blinds_are_shut_at_noon_where_it_gets_hot() -> None:
    made = demo("four-seats")
    assert found(made, air_degc=25.0).seasons.warm.blinds_frac[84] == 1.0
    assert found(made, air_degc=15.0).seasons.warm.blinds_frac[84] == 0.0


def test_the_warm_half_year_lies_elsewhere_in_the_south() -> None:
    made = build()
    north, south = found(made), found(made, latitude_deg=-35.0)
    assert (north.warm_from_day, north.warm_to_day) == (90, 273)
    assert (south.warm_from_day, south.warm_to_day) == (273, 90)


Pair = tuple[dict[str, Any], dict[str, Any]]
"""A part, and what its fitting has otherwise."""

HEATER = part(
    "burner",
    heater={"output": "2000 W", "least_output": "900 W", "fuel": "diesel"},
    dc_load={
        "modes": [
            {"name": "low", "draw": "10 W"},
            {"name": "high", "draw": "30 W"},
            {"name": "glowing", "draw": "120 W"},
        ]
    },
)


def with_parts(*pairs: Pair, **more: Any) -> Build:
    """Return the small build with parts and a fitting of each."""
    return build(
        {
            "own_parts": list({each["id"]: each for each, _ in pairs}.values()),
            "fittings": [
                fitting(f"thing-{number}", each["id"], **fields)
                for number, (each, fields) in enumerate(pairs)
            ],
        }
        | more
    )


def test_a_heater_draws_by_its_modes_and_loses_with_height() -> None:
    told = found(with_parts((HEATER, {})), altitude_m=1000.0).heater
    assert told is not None
    assert (told.draw_least_w, told.draw_most_w, told.start_wh) == (10.0, 30.0, 4.0)
    assert told.most_w == pytest.approx(1800.0)
    assert told.least_w == 900.0


def test_what_a_heater_states_comes_before_its_modes() -> None:
    stated = HEATER | {
        "heater": HEATER["heater"]
        | {"draw": "40 W", "least_draw": "8 W", "start": "7 Wh", "full_to": "2000 m"}
    }
    told = found(with_parts((stated, {})), altitude_m=1000.0).heater
    assert told is not None
    assert (told.draw_least_w, told.draw_most_w, told.start_wh) == (8.0, 40.0, 7.0)
    assert told.most_w == 2000.0


def test_an_electric_heater_counts_where_nothing_burns() -> None:
    fan = part(
        "fan-heater",
        heater={"output": "1500 W", "fuel": "electric", "efficiency": "100 %"},
        ac_load={"modes": [{"name": "on", "draw": "1500 W"}], "supply": "shore only"},
    )
    alone = found(with_parts((fan, {}))).heater
    both = found(with_parts((fan, {}), (HEATER, {}))).heater
    assert alone is not None
    assert both is not None
    assert alone.electric_ac
    assert (alone.fuel, both.fuel) == ("electric", "diesel")


def test_gas_is_told_by_mass() -> None:
    gas = HEATER | {"heater": HEATER["heater"] | {"fuel": "LPG"}}
    told = found(with_parts((gas, {}))).heater
    assert told is not None
    assert told.fuel_by_mass
    assert told.fuel_mj_per_l == 46.2


def test_a_build_of_nothing_has_no_bank_no_heater_no_cooler() -> None:
    told = found(build())
    assert (told.bank, told.heater, told.cooler) == (None, None, None)
    assert told.fridges == ()
    assert told.frost == ()
    assert told.supply.sun_w.sum() == 0.0
    assert {each.name for each in told.body.rooms} == {"cabin", "cab"}
    assert {each.name for each in told.body.surfaces} >= {"bare steel", "ceiling", "floor"}


def test_a_cooler_on_shore_power_alone_does_not_run_off_the_grid() -> None:
    unit = part(
        "cooler",
        air_conditioner={"cooling": "2400 W", "input": "900 W", "sensible": "70 %"},
        ac_load={"modes": [{"name": "on", "draw": "950 W"}], "supply": "shore only"},
    )
    told = found(with_parts((unit, {"mounting": "roof"}))).cooler
    assert told is not None
    assert told.ac
    assert not told.enabled
    assert (told.rated_input_w, told.sensible_frac) == (900.0, 0.7)


def test_a_cold_box_follows_the_cabin() -> None:
    box = part(
        "box",
        fridge={"around": "30 degC", "inside": "4 degC"},
        dc_load={
            "modes": [
                {"name": "summer", "draw": "45 W", "duty": "40 %", "summer_use": "24 h/day"},
                {"name": "winter", "draw": "45 W", "duty": "20 %", "winter_use": "24 h/day"},
            ]
        },
    )
    told = found(with_parts((box, {})))
    assert [(each.duty_frac, each.at_degc) for each in told.fridges] == [(0.4, 30.0)]
    assert max(told.seasons.warm.dc_w) == 0.0


LFP = part(
    "block",
    body={"size": ["500 mm", "250 mm", "220 mm"], "mass": "30 kg"},
    battery={
        "chemistry": "LFP",
        "nominal": "12.8 V",
        "capacity": "200 Ah",
        "charge_limit": "100 A",
        "discharge_limit": "200 A",
        "most_parallel": 2,
    },
)


def test_a_bank_stands_in_the_coldest_of_its_places() -> None:
    inside: Pair = (LFP, {})
    under: Pair = (LFP, {"mounting": "underbody"})
    warm, cold = found(with_parts(inside)).bank, found(with_parts(inside, under)).bank
    assert warm is not None
    assert cold is not None
    assert (warm.room, cold.room) == ("cabin", "outside")
    assert warm.resistance_ohm == pytest.approx(0.0025)
    assert cold.resistance_ohm == pytest.approx(0.00125)
    assert cold.capacity_ah == pytest.approx(400.0)
    shares, volts = zip(*warm.charge_v, strict=True)
    assert list(shares) == sorted(shares)
    assert list(volts) == sorted(volts)
    assert volts[-1] == pytest.approx(4 * 3.375)  # LFP cell at 25 degC, public table


def test_lead_has_its_own_voltage_and_resistance() -> None:
    lead = LFP | {"battery": LFP["battery"] | {"chemistry": "AGM", "nominal": "12 V"}}
    told = found(with_parts((lead, {}))).bank
    assert told is not None
    assert told.charge_v[-1] == (1.0, 12.75)
    assert 0.0 < told.resistance_ohm < 0.008


def test_where_things_stand() -> None:
    made = with_parts(
        (part("tank", tank={"contents": "fresh", "volume": "60 L"}), {}),
        (part("under", tank={"contents": "grey", "volume": "60 L"}), {"mounting": "underbody"}),
        (part("chest"), {"mounting": "cab"}),
        (part("front"), {"at": ["500 mm", "0 mm", "0 mm"]}),
        (
            part("warm", tank={"contents": "grey", "volume": "10 L", "loss": "2 W/K"}),
            {"mounting": "underbody", "heated_space": True},
        ),
    )
    rooms = [room_of(made, each) for each in made.fittings]
    assert rooms == ["cabin", "outside", "cab", "cab", "outside"]
    assert [each.place for each in found(made).frost] == ["cabin", "outside", "cabin"]
    assert found(made).frost[2].ua_w_per_k == 2.0


def test_runs_that_are_emptied_cannot_freeze() -> None:
    run = {"name": "to-sink", "length": "3 m", "bore": "10 mm", "place": "outside"}
    kept = build({"water_runs": [run]})
    emptied = build({"water_runs": [run | {"drained": True}]})
    assert [each.place for each in found(kept).frost] == ["outside"]
    assert found(emptied).frost == ()


def test_a_gas_hob_warms_and_wets_the_air_and_an_electric_one_only_steams() -> None:
    hob = part("hob", gas_appliance={"input": "3600 W", "use": "281 g/h"})
    gas, electric = found(with_parts((hob, {}))), found(build())
    burnt = _sum_wh(gas.seasons.cold.fuel_burner_w)
    assert burnt == pytest.approx(600.0 / 0.55)
    assert _sum_wh(gas.seasons.cold.gain_w) < burnt
    assert _sum_wh(electric.seasons.cold.gain_w) < 0.0
    assert sum(gas.seasons.cold.vapour_g_per_h) > sum(electric.seasons.cold.vapour_g_per_h)


def test_a_shower_inside_steams_once_a_day_for_each() -> None:
    shower = part("shower", water_outlet={"kind": "shower", "flow": "6 L/min"})
    wet, dry = found(with_parts((shower, {}))), found(build())
    more = sum(wet.seasons.cold.vapour_g_per_h) - sum(dry.seasons.cold.vapour_g_per_h)
    assert more / 6.0 == pytest.approx(2 * 240.0)


def test_a_curtain_closes_the_cab_and_a_brief_without_drives_never_moves() -> None:
    curtain = part("curtain", cab_divider={"insulance": "0.3 m2 K/W", "exchange": "20 m3/h"})
    shut, open_cab = with_parts((curtain, {"mounting": "cab"})), build()
    ways = [found(made).body.passages[0] for made in (shut, open_cab)]
    assert [round(each.flow_m3_per_h) for each in ways] == [20, 300]
    assert ways[0].conductance_w_per_k > 0.0
    assert ways[1].conductance_w_per_k == 0.0
    assert envelope_of(shut).ua_w_per_k < envelope_of(open_cab).ua_w_per_k
    still = build({"brief.stay.drive": "0 h/day"})
    assert found(still).pattern.parked_d == 0.0
    assert found(open_cab).pattern.parked_d == 3.0


def test_panes_and_colour_that_are_stated_are_taken() -> None:
    plain = build()
    dark = build(
        {
            "own_vehicle.skin": {"roof_absorptance": "95 %", "rib": "12 %", "thickness": "1 mm"},
            "own_vehicle.cab_glass": {"windscreen": "2 m2", "door": "0.5 m2"},
        }
    )
    roofs = [
        next(each for each in body(made).surfaces if each.name == "ceiling")
        for made in (plain, dark)
    ]
    assert [each.absorptance_frac for each in roofs] == [0.3, 0.95]
    assert roofs[1].layers[0].thickness_mm == 1.0
    glass = sum(each.area_m2 for each in body(dark).windows)
    assert glass == pytest.approx(3.0)


def test_a_window_in_a_door_counts_with_the_door() -> None:
    pane = part(
        "pane",
        body={"size": ["600 mm", "30 mm", "400 mm"], "mass": "5 kg"},
        opening={"kind": "window", "clear_width": "500 mm", "clear_height": "300 mm"},
    )
    door = {
        "name": "sliding door",
        "wall": "right",
        "from": "1300 mm",
        "clear_width": "1200 mm",
        "clear_height": "1700 mm",
        "sill": "0 mm",
    }
    place = {"at": ["1500 mm", "850 mm", "900 mm"], "mounting": "wall"}
    made = with_parts((pane, place), **{"own_vehicle.apertures": [door]})
    inside = [each for each in body(made).windows if each.room == "cabin"]
    assert [each.area_m2 for each in inside] == [pytest.approx(0.24)]
    assert inside[0].shgc_frac == pytest.approx(0.78 * 0.15 / 0.24)
    bare = sum(
        each.area_m2 for each in body(made, heading_deg=0.0).surfaces if "right" in each.name
    )
    other = sum(
        each.area_m2 for each in body(made, heading_deg=0.0).surfaces if "left" in each.name
    )
    assert other - bare == pytest.approx(0.24)


def test_a_vent_that_stays_open_leaks_day_and_night() -> None:
    vent = part(
        "vent",
        opening={
            "kind": "vent",
            "clear_width": "200 mm",
            "clear_height": "200 mm",
            "opens": False,
            "free_vent": "400 cm2",
        },
    )
    locker = part("locker", body={"size": ["300 mm", "300 mm", "500 mm"], "mass": "5 kg"})
    tight, open_roof = build(), with_parts((vent, {"mounting": "roof"}))
    hidden = with_parts((locker, {}), (vent, {"within": "thing-0"}))
    rooms = [found(made).body.rooms[0] for made in (tight, open_roof, hidden)]
    flows = [room.leak_per_h * room.volume_m3 for room in rooms]
    assert flows[1] - flows[0] == pytest.approx(0.02 * 0.3 * 3600.0)
    assert flows[2] == pytest.approx(flows[0])
    assert found(tight).air.least_m3_per_h == 20.0
    assert found(open_roof).air.least_m3_per_h == 0.0
    assert envelope(open_roof).leak_w_per_k - envelope(tight).leak_w_per_k == pytest.approx(
        0.34 * 21.6
    )
