"""What the stage hands to its subjects, and what it says where something is missing."""

import pytest

from coachwright.model.working import Figure
from coachwright.water.model import Water
from coachwright.water.stage import stage
from tests.rules.water_pieces import (
    FRESH,
    OUTSIDE,
    PUMP,
    RUN,
    SEALED,
    STOVE,
    heater,
    store,
    tank,
    tap,
    with_parts,
)
from tests.support.builds import Data, build

INVERTER: Data = {
    "inverter": {
        "continuous": "2 kW",
        "surge": "4 kW",
        "standby": "10 W",
        "efficiency": "80 %",
    }
}
DC: Data = {"dc_load": {"modes": [{"name": "heating", "draw": "200 W"}]}}
AC: Data = {"ac_load": {"modes": [{"name": "heating", "draw": "800 W"}]}}
SHORE: Data = {"ac_load": AC["ac_load"] | {"supply": "shore only"}}
LPG_AIR: Data = {"heater": {"output": "2 kW", "fuel": "LPG", "efficiency": "80 %"}}
TAP_HEAT = 260.0
"""2 x 4 L x 0.9982 x 4186 x 28 K / 3600, by hand. [Wh/day]"""


def made(changes: Data) -> Water:
    return stage(build(changes))


def figure(water: Water, name: str) -> Figure:
    return next(figure for figure in water.figures if figure.name == name)


def test_a_build_without_water_says_what_is_missing() -> None:
    water = made({})
    assert figure(water, "water.days").missing == "fresh tank"
    assert figure(water, "water.days-grey").missing == "grey tank"
    assert figure(water, "water.fresh-mass").value is None
    assert water.stores.limiting == ""
    assert water.gas is None


@pytest.mark.parametrize("changes", [{}, with_parts(FRESH, (tap(), {}), (heater(), {}))])
def test_every_figure_has_a_working_or_says_what_is_missing(changes: Data) -> None:
    for each in made(changes).figures:
        if each.value is None:
            assert each.missing
        else:
            assert each.working is not None
            assert each.working.result == each.value
            assert each.working.unit == each.unit


def test_the_smaller_tank_ends_the_days() -> None:
    water = made(with_parts(FRESH, (tank("grey", "48 L"), {}), (tank("fresh", "24 L"), {})))
    assert water.stores.days_fresh_d == pytest.approx(4)
    assert water.stores.days_grey_d == pytest.approx(2)
    assert water.stores.days_d == pytest.approx(2)
    assert water.stores.limiting == "grey"
    assert figure(water, "water.days").label == "Days on water (grey tank ends them)"


def test_what_the_pump_leaves_is_not_drunk() -> None:
    water = made(with_parts((tank("fresh", "72 L", unusable="12 L"), {})))
    assert water.stores.days_d == pytest.approx(2.5)
    assert water.stores.fresh_full_kg == pytest.approx(72 * 0.9982)
    working = figure(water, "water.days").working
    assert working is not None
    assert "no grey tank" in working.note


def test_heaters_count_for_mass_and_grey() -> None:
    water = made(with_parts(FRESH, (heater(), {})))
    assert water.stores.water_full_kg == pytest.approx(78 * 0.9982)
    assert water.stores.grey_needed_l == 78


def test_a_flushing_toilet_fills_the_black_tank() -> None:
    toilet = {"toilet": {"kind": "flushing", "waste": "5 L", "flush": "1 L"}}
    alone = made(with_parts((toilet, {})))
    assert alone.stores.days_toilet_d == pytest.approx(5 / (2 * 6.7))
    with_tank = made(with_parts((toilet, {}), (tank("black", "67 L"), {})))
    assert with_tank.stores.days_toilet_d == pytest.approx(5)
    assert figure(with_tank, "water.days-toilet").value == pytest.approx(5)


@pytest.mark.parametrize(
    ("load", "expected"),
    [
        (DC, TAP_HEAT),
        (AC, None),
        (SHORE, 0.0),
        ({}, None),
    ],
)
def test_what_the_battery_gives_depends_on_what_feeds_the_heater(
    load: Data, expected: float | None
) -> None:
    water = made(with_parts((heater(electric="200 W") | load, {})))
    found = water.hot_water[0].battery_wh_per_day
    assert found == (None if expected is None else pytest.approx(expected, abs=0.1))


def test_an_inverter_takes_its_share() -> None:
    water = made(with_parts((heater(electric="800 W") | AC, {}), (INVERTER, {})))
    assert water.hot_water[0].battery_wh_per_day == pytest.approx(TAP_HEAT / 0.8, abs=0.2)


def test_a_heater_has_a_warm_up_for_each_source() -> None:
    water = made(
        with_parts(
            (heater(electric="800 W", fuel="1.5 kW", engine="3 kW"), {}),
            (heater(electric="400 W", loss="400 W"), {}),
        )
    )
    names = [f.name for f in water.figures if f.name.startswith("water.warm-up")]
    assert names == [
        "water.warm-up-electric",
        "water.warm-up-fuel",
        "water.warm-up-engine",
        "water.warm-up-electric-piece-b",
    ]
    # 6 L x 0.9982 x 4186 x 50 K / 800 W / 60, by hand
    assert figure(water, names[0]).value == pytest.approx(26.12, abs=0.01)
    assert figure(water, names[3]).value is None
    assert figure(water, names[3]).missing


@pytest.mark.parametrize(
    ("more", "changes", "fuel"),
    [
        ({}, {}, "diesel"),
        ({}, {"own_vehicle.fuel.kind": "petrol"}, "petrol"),
        ({}, {"own_vehicle.fuel.kind": "electric"}, ""),
        (STOVE, {}, "LPG"),
        (LPG_AIR, {}, "LPG"),
        ({"heater": {"output": "2 kW", "fuel": "petrol"}}, {}, "petrol"),
    ],
)
def test_a_burner_burns_what_is_there(more: Data, changes: Data, fuel: str) -> None:
    water = made(with_parts((heater(fuel="2 kW", efficiency="80 %") | more, {})) | changes)
    hot = water.hot_water[0]
    assert hot.fuel == fuel
    assert (hot.gas_kg_per_day is not None) == (fuel == "LPG")
    assert (hot.fuel_l_per_day is not None) == (fuel in ("diesel", "petrol"))
    if fuel == "LPG":
        assert hot.gas_kg_per_day == pytest.approx(TAP_HEAT / 0.8 * 3.6 / 46_350, rel=1e-3)


def test_a_burner_without_efficiency_burns_an_unknown_amount() -> None:
    water = made(with_parts((heater(fuel="2 kW", efficiency="0 %") | STOVE, {}), (store(), {})))
    assert water.hot_water[0].gas_kg_per_day is None
    assert figure(water, "water.gas-days").missing == "efficiency of what burns gas"


def test_the_worst_run_counts_for_an_outlet() -> None:
    runs = [RUN | {"serves": "piece-a"}, RUN | {"name": "long", "length": "12 m"}]
    runs[1]["serves"] = "piece-a"
    water = made(with_parts((tap(), {}), (PUMP, {}), water_runs=runs))
    assert water.outlets[0].run == "long"
    assert water.outlets[0].pump == "piece-b"
    assert figure(water, "water.flow-piece-a").value == water.outlets[0].flow_l_per_min


def test_a_pump_without_efficiency_is_not_checked() -> None:
    pump = {"pump": PUMP["pump"] | {"efficiency": "0 %"}}
    assert made(with_parts((pump, {}))).pumps == ()


def test_the_first_tank_to_freeze_is_the_figure() -> None:
    slow, fast = tank("grey", "75 L", loss="2 W/K"), tank("grey", "75 L", loss="4 W/K")
    water = made(with_parts((slow, OUTSIDE), (fast, OUTSIDE)))
    # 75 x 0.9982 x 4186 / 4 / 3600 x ln(13/8), by hand
    assert figure(water, "water.frost-hours").value == pytest.approx(10.57, abs=0.01)


def test_a_tank_of_unknown_loss_may_be_the_first_to_freeze() -> None:
    known, unknown = tank("grey", "75 L", loss="2 W/K"), tank("grey", "75 L")
    water = made(with_parts((known, OUTSIDE), (unknown, OUTSIDE)))
    assert figure(water, "water.frost-hours").value is None
    assert figure(water, "water.frost-hours").missing == "heat loss of piece-b"


def test_a_tank_said_to_stand_outside_heat_is_as_cold_as_the_night() -> None:
    air_heater = {"heater": {"output": "2 kW", "fuel": "diesel"}}
    water = made(with_parts((FRESH[0], {"heated_space": False}), (air_heater, {})))
    assert water.frost[0].place == "outside"
    assert water.frost[0].around_degc == -8


def test_a_fresh_tank_has_its_dose() -> None:
    # 75 L x 100 mg/L / 52.5 g/L, by hand from ANSI A119.2 section 10.8 as quoted
    dose = made(with_parts((tank("fresh", "75 L"), {}))).doses[0]
    assert dose.strong_ml == pytest.approx(142.9, abs=0.05)
    assert dose.mild_ml == pytest.approx(71.4, abs=0.05)
    assert (dose.strong_h, dose.mild_h) == (1, 4)


def test_gas_days_count_cooking_warm_water_and_heating() -> None:
    use = [{"mode": "on", "summer_use": "0 h/day", "winter_use": "6 h/day"}]
    load = {"dc_load": {"modes": [{"name": "on", "draw": "20 W", "duty": "50 %"}]}}
    water = made(
        with_parts(
            (store(), {}),
            (STOVE, {}),
            (heater(fuel="2 kW", efficiency="80 %") | SEALED, {}),
            (LPG_AIR | load, {"use": use}),
        )
    )
    assert water.gas is not None
    assert water.gas.heating_wh_per_day == 6000
    burned = 600 / 0.55 + TAP_HEAT / 0.8 + 6000 / 0.8
    assert water.gas.days_d == pytest.approx(11 * 46_350 / 3.6 / burned, rel=1e-4)
    assert figure(water, "water.gas-days").value == water.gas.days_d


def test_a_heater_that_turns_down_makes_the_days_a_range() -> None:
    modes = [
        {"name": "fan high", "draw": "22 W", "winter_use": "2 h/day"},
        {"name": "fan low", "draw": "7 W", "winter_use": "9 h/day"},
    ]
    air: Data = LPG_AIR | {"dc_load": {"modes": modes}}
    air["heater"] = air["heater"] | {"least_output": "1 kW"}
    water = made(with_parts((store(), {}), (air, {})))
    days = figure(water, "water.gas-days")
    # 11 kg x 46.35 MJ/kg / 3.6 = 141.6 kWh; 22 and 13 kWh of heat at 0.8
    assert days.value == pytest.approx(141.6 / (22 / 0.8), rel=1e-3)
    assert days.high == pytest.approx(141.6 / (13 / 0.8), rel=1e-3)
    assert days.label == "Days on gas in winter, at least"
    assert water.gas is not None
    assert water.gas.most_days_d == days.high


def test_a_gas_fridge_is_no_cooker() -> None:
    fridge: Data = {"gas_appliance": {"input": "300 W", "use": "23 g/h", "running": "12 h/day"}}
    water = made(with_parts((store(), {}), (fridge, {})))
    assert water.gas is not None
    assert water.gas.cooking_wh_per_day == 0
    assert water.gas.running_wh_per_day == 3600
    assert water.gas.days_d == pytest.approx(141.6 / 3.6, rel=1e-3)


@pytest.mark.parametrize("way", ["on", "within"])
def test_a_cylinder_in_a_locker_is_no_locker_itself(way: str) -> None:
    water = made(with_parts((store(floor="0.14 m2"), {}), (store(), {way: "piece-a"})))
    assert [locker.name for locker in water.lockers] == ["piece-a"]


@pytest.mark.parametrize(
    ("pieces", "missing"),
    [
        ((STOVE, LPG_AIR), "hours that piece-c runs in winter"),
        ((), "anything that burns gas"),
    ],
)
def test_gas_days_say_what_is_missing(pieces: tuple[Data, ...], missing: str) -> None:
    water = made(with_parts((store(), {}), *((piece, {}) for piece in pieces)))
    assert water.gas is not None
    assert water.gas.days_d is None
    assert figure(water, "water.gas-days").missing == missing


def test_flames_and_alarms_are_listed() -> None:
    alarm: Data = {"detector": {"senses": ["CO", "LPG"]}}
    electric: Data = {"heater": {"output": "1 kW", "fuel": "electric"}}
    water = made(
        with_parts((STOVE, {}), (electric, {}), (heater(electric="1 kW"), {}), (alarm, {}))
    )
    assert water.combustion == ("piece-a",)
    assert water.alarms == ("CO", "LPG")
