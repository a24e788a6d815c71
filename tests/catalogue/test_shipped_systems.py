"""The shipped parts of the electrical, water, gas and heat systems agree with themselves."""

import math

import pytest

from coachwright.model.facets import AcLoad, DcLoad
from coachwright.model.facets.body import Step
from coachwright.model.part import Part
from tests.catalogue.shipped import each, having

HEAT_WH_PER_L = {"diesel": 9940.0, "petrol": 8990.0}
"""Lower heating value: GREET / Alternative Fuels Data Center, 128 488 and 116 090 BTU/US gal."""
PROPANE_WH_PER_KG = 12830.0
"""Lower heating value: Alternative Fuels Data Center, 84 250 BTU/US gal at 4.24 lb/US gal."""
LFP_CELL_V = 3.2
"""Nominal voltage of one lithium iron phosphate cell: trade data sheets."""


@each
def test_its_load_surges_above_what_it_draws(part: Part) -> None:
    for load in (part.dc_load, part.ac_load):
        if load is None:
            continue
        highest_w = max(mode.draw_w for mode in load.modes)
        assert load.surge_w == 0.0 or load.surge_w >= highest_w
        assert load.standby_w < highest_w
        assert len({mode.name for mode in load.modes}) == len(load.modes)
        _within_a_day(load)


def _within_a_day(load: DcLoad | AcLoad) -> None:
    assert sum(mode.summer_use_h_per_day for mode in load.modes) <= 24.0
    assert sum(mode.winter_use_h_per_day for mode in load.modes) <= 24.0


@having("battery")
def test_a_battery_holds_what_its_mass_allows(part: Part) -> None:
    """Wh/kg of trade data sheets: lithium iron phosphate 90 to 150, lead 30 to 50."""
    battery = part.battery
    assert battery is not None
    wh_per_kg = battery.nominal_v * battery.capacity_ah / part.body.mass_kg
    low, high = (90.0, 150.0) if battery.chemistry == "LFP" else (30.0, 50.0)
    assert low < wh_per_kg < high
    if battery.chemistry == "LFP":
        cells = battery.nominal_v / LFP_CELL_V
        assert cells == pytest.approx(round(cells))
        assert battery.charge_from_degc >= 0.0  # never charged below freezing: cell data sheets
        assert battery.heated is (part.dc_load is not None)
    assert battery.charge_limit_a <= battery.discharge_limit_a
    shares = [point.capacity_frac for point in battery.cold_capacity]
    assert shares == sorted(shares, reverse=True)


@having("battery")
def test_a_battery_says_its_energy_in_its_name(part: Part) -> None:
    battery = part.battery
    assert battery is not None
    assert f"{battery.capacity_ah:g} Ah" in part.name
    stated = part.description.split(" kWh")[0].rpartition(" ")[2]
    if "kWh" in part.description:
        stored_wh = battery.nominal_v * battery.capacity_ah
        assert float(stated) * 1000.0 == pytest.approx(stored_wh, rel=0.05)


@having("solar_panel")
def test_a_panel_agrees_with_itself(part: Part) -> None:
    """Spread of coefficients: CEC module library of 2019, 5 to 95 %, widened for newer cells."""
    panel = part.solar_panel
    assert panel is not None
    assert panel.rated_voltage_v * panel.rated_current_a == pytest.approx(panel.rated_w, rel=0.05)
    assert 1.1 < panel.open_circuit_v / panel.rated_voltage_v < 1.3
    assert 1.02 < panel.short_circuit_a / panel.rated_current_a < 1.12
    assert -0.0053 <= panel.power_coefficient_frac_per_k <= -0.0026
    assert panel.voltage_coefficient_frac_per_k is not None
    assert -0.0040 <= panel.voltage_coefficient_frac_per_k <= -0.0023
    if not panel.folding:
        area_m2 = part.body.size_mm[0] * part.body.size_mm[1] * 1e-6
        assert 0.13 < panel.rated_w / 1000.0 / area_m2 < 0.235


@having("solar_panel")
def test_a_panel_states_the_fuse_that_its_current_asks_for(part: Part) -> None:
    """NEC 690.8 and 690.9: 1.25 times the short-circuit current, or the maker's rating."""
    panel = part.solar_panel
    assert panel is not None
    if panel.series_fuse_a is not None:
        assert panel.series_fuse_a >= 1.25 * panel.short_circuit_a


@each
def test_converters_lose_a_plausible_share(part: Part) -> None:
    for converter in (part.dcdc_charger, part.shore_charger, part.inverter, part.solar_controller):
        if converter is not None:
            assert 0.85 <= converter.efficiency_frac <= 0.98


@having("inverter")
def test_an_inverter_agrees_with_itself(part: Part) -> None:
    """No-load draw 0.4 to 2.5 % of the rating: bench tests from 60 W to 3 kW."""
    inverter = part.inverter
    assert inverter is not None
    assert 1.5 <= inverter.surge_w / inverter.continuous_w <= 3.0
    assert 0.004 <= inverter.standby_w / inverter.continuous_w <= 0.025
    assert f"{inverter.continuous_w:g} W" in part.name
    assert inverter.output_v in (120.0, 230.0)


@having("tank")
def test_a_tank_fits_its_content(part: Part) -> None:
    tank = part.tank
    assert tank is not None
    boxes = [_sides(step) for step in part.body.steps] or [part.body.size_mm]
    box_l = sum(math.prod(sides_mm) for sides_mm in boxes) * 1e-6
    assert tank.volume_l < box_l < 2.0 * tank.volume_l
    assert tank.unusable_l < 0.1 * tank.volume_l
    assert tank.heated is (part.dc_load is not None)


def _sides(step: Step) -> tuple[float, ...]:
    return tuple(high - low for low, high in zip(step.from_mm, step.to_mm, strict=True))


@having("pump")
def test_a_pump_draws_what_the_water_needs(part: Part) -> None:
    """Most hydraulic power of a falling straight line is a quarter of open flow times cut-out."""
    pump, load = part.pump, part.dc_load
    assert pump is not None
    assert load is not None
    hydraulic_w = pump.open_flow_l_per_min / 60000.0 * pump.cut_out_kpa * 1000.0 / 4.0
    assert hydraulic_w / pump.efficiency_frac < load.modes[0].draw_w


@having("heater")
def test_a_heater_burns_what_its_output_needs(part: Part) -> None:
    heater = part.heater
    assert heater is not None
    assert heater.least_output_w <= heater.output_w
    if heater.fuel in HEAT_WH_PER_L:
        burnt_l_per_h = heater.output_w / heater.efficiency_frac / HEAT_WH_PER_L[heater.fuel]
        assert heater.fuel_use_l_per_h == pytest.approx(burnt_l_per_h, rel=0.03)
    if heater.fuel == "LPG":
        assert part.gas_appliance is not None
        needed_w = heater.output_w / heater.efficiency_frac
        assert part.gas_appliance.input_w == pytest.approx(needed_w, rel=0.03)
    if heater.fuel == "electric":
        assert part.ac_load is not None
        assert heater.output_w == max(mode.draw_w for mode in part.ac_load.modes)


@having("gas_appliance")
def test_a_gas_appliance_burns_what_its_heat_needs(part: Part) -> None:
    gas = part.gas_appliance
    assert gas is not None
    assert gas.use_kg_per_h == pytest.approx(gas.input_w / PROPANE_WH_PER_KG, rel=0.03)


@having("water_heater")
def test_a_water_heater_draws_what_it_heats_with(part: Part) -> None:
    heater = part.water_heater
    assert heater is not None
    assert heater.electric_w + heater.fuel_w + heater.engine_w > 0.0
    if heater.electric_w:
        load = part.ac_load or part.dc_load
        assert load is not None
        assert heater.electric_w in {mode.draw_w for mode in load.modes}
    if heater.fuel_w and part.gas_appliance is not None:
        needed_w = heater.fuel_w / heater.efficiency_frac
        assert part.gas_appliance.input_w == pytest.approx(needed_w, rel=0.05)


@having("air_conditioner")
def test_an_air_conditioner_cools_more_than_it_draws(part: Part) -> None:
    """BTU/Wh of public guides for roof units, 8.4 to 10.8; DC units of trade sheets to 11."""
    load = part.ac_load or part.dc_load
    assert part.air_conditioner is not None
    assert load is not None
    drawn_w = max(mode.draw_w for mode in load.modes)
    assert 8.0 < 3.412 * part.air_conditioner.cooling_w / drawn_w < 11.0


@having("gas_store")
def test_a_gas_store_is_not_counted_with_its_gas(part: Part) -> None:
    store = part.gas_store
    assert store is not None
    # An empty steel or aluminium cylinder weighs at least two fifths of what it holds.
    assert part.body.mass_kg > 0.4 * store.gas_kg
    assert store.gas_kg < 0.5 * math.prod(part.body.size_mm) * 1e-6


@having("gas_store")
def test_a_locker_has_the_vents_of_en_1949_or_of_the_us_model_text(part: Part) -> None:
    """Low only: 2 % of the floor, 100 cm2; split: 1 % each, 50 cm2 each (EN 1949)."""
    store = part.gas_store
    assert store is not None
    if store.floor_m2 is None:
        return
    assert store.low_vent_m2 is not None
    if store.high_vent_m2 is None:
        assert store.low_vent_m2 >= max(0.02 * store.floor_m2, 0.01)
    else:
        assert min(store.low_vent_m2, store.high_vent_m2) >= max(0.01 * store.floor_m2, 0.005)
