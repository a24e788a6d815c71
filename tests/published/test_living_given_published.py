"""Heat, air and people of the coupled year against published values and an open library.

Each case names its published source; "hand" is a hand calculation from the clause that is named.
"""

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as some

from coachwright.living.air_state import (
    balanced_ratio,
    dew_degc,
    humidity_ratio,
    latent_j_per_kg,
    saturation_pa,
    vapour_pa,
    wet_bulb_degc,
)
from coachwright.living.cooling import curve_factor, duty, dx_curve, within_degc
from coachwright.living.envelope import (
    Line,
    envelope,
    layers_m2k_per_w,
    leak_w_per_k,
    plane_w_per_m2k,
)
from coachwright.living.given_body import Layer
from coachwright.living.heating import fuel_heat, fuel_l_per_h, heat_up_h
from coachwright.living.people import awake, burner_water_kg, sealed_rise_ppm
from coachwright.living.ribs import bridged, isothermal_w_per_m_k, zone_width_mm
from coachwright.living.windows import sun_gain_w

psychrolib.SetUnitSystem(psychrolib.SI)

STEEL = Layer(name="steel", thickness_mm=0.9, conductivity_w_per_m_k=50.0)
POLYISO = Layer(name="polyiso", thickness_mm=25.0, conductivity_w_per_m_k=0.0235)
THICK = Layer(name="polyiso", thickness_mm=50.0, conductivity_w_per_m_k=0.0235)
PLY = Layer(name="ply", thickness_mm=3.0, conductivity_w_per_m_k=0.13)
BOARD = Layer(name="ply", thickness_mm=12.0, conductivity_w_per_m_k=0.13)
XPS = Layer(name="XPS", thickness_mm=20.0, conductivity_w_per_m_k=0.026)
VINYL = Layer(name="PVC", thickness_mm=2.0, conductivity_w_per_m_k=0.17)
GLASS = Layer(name="glass", thickness_mm=3.0, conductivity_w_per_m_k=1.0)
PANE = Layer(name="PMMA", thickness_mm=4.0, conductivity_w_per_m_k=0.18)
GAP = Layer(name="gap", thickness_mm=14.0, resistance_m2k_per_w=0.18)


@pytest.mark.parametrize(
    ("layers", "direction", "u_w_per_m2k"),
    [
        # Hand, resistance sum of ISO 6946; conductivities EN 12524 and ASHRAE ch. 26 table 1.
        pytest.param((STEEL, POLYISO, PLY), "horizontal", 0.79559, id="wall"),
        pytest.param((STEEL, THICK, PLY), "up", 0.43654, id="roof"),
        pytest.param((STEEL, XPS, BOARD, VINYL), "down", 0.92309, id="floor"),
        pytest.param((STEEL,), "horizontal", 5.8817, id="bare steel"),
        pytest.param((GLASS,), "horizontal", 5.7803, id="3 mm glass, EN 673"),
        pytest.param((PANE, GAP, PANE), "horizontal", 2.5352, id="acrylic 4-14-4"),
    ],
)
def test_a_plane_part_loses_what_its_layers_say(
    layers: tuple[Layer, ...], direction: str, u_w_per_m2k: float
) -> None:
    found = plane_w_per_m2k(layers=layers, direction=direction)
    assert found == pytest.approx(u_w_per_m2k, rel=1e-3)


def test_the_bounds_of_a_ribbed_wall() -> None:
    """Hand, ISO 6946:2017 6.7.2.3 and 6.7.2.4, 8 % of closed steel: 1.1462 and 5.0173."""
    wall = bridged(
        outside_m2k_per_w=0.04 + layers_m2k_per_w([STEEL]),
        fill_mm=25.0,
        fill_w_per_m_k=0.0235,
        inside_m2k_per_w=0.13 + layers_m2k_per_w([PLY]),
        cover_mm=3.0,
        rib_frac=0.08,
        rib_mm=40.0,
        sheet_mm=0.9,
        metal_w_per_m_k=50.0,
    )
    assert wall.low_w_per_m2k == pytest.approx(1.1462, rel=1e-3)
    assert wall.high_w_per_m2k == pytest.approx(5.0173, rel=1e-3)
    assert wall.low_w_per_m2k < wall.mean_w_per_m2k < wall.high_w_per_m2k
    combined = 2.0 / (1.0 / wall.low_w_per_m2k + 1.0 / wall.high_w_per_m2k)
    assert combined == pytest.approx(1.8662, rel=1e-3)  # (R' + R'') / 2, the standard's own mean


def test_the_mixed_layer_and_the_zone() -> None:
    """Hand, ISO 6946 6.7.2.4; ASHRAE Handbook of Fundamentals ch. 25/27, zone method."""
    mixed = isothermal_w_per_m_k(rib_frac=0.08, metal_w_per_m_k=50.0, fill_w_per_m_k=0.0235)
    assert mixed == pytest.approx(4.0216, rel=1e-3)
    assert zone_width_mm(face_mm=25.0, depth_mm=28.0) == 81.0


def test_the_loss_of_a_whole_van() -> None:
    """Hand, steady loss after EN 12831: 42.538 W/K, 4.42 W/K, 1643.5 W at 35 K."""
    parts = (
        ("walls", 18.0, (STEEL, POLYISO, PLY), "horizontal"),
        ("roof", 8.0, (STEEL, THICK, PLY), "up"),
        ("floor", 8.0, (STEEL, XPS, BOARD, VINYL), "down"),
        ("glass", 3.0, (GLASS,), "horizontal"),
    )
    lines = []
    for name, area_m2, layers, direction in parts:
        loss = plane_w_per_m2k(layers=layers, direction=direction)
        lines.append(
            Line(
                name=name,
                area_m2=area_m2,
                u_w_per_m2k=loss,
                low_w_per_m2k=loss,
                high_w_per_m2k=loss,
            )
        )
    air = leak_w_per_k(air_m3=13.0, leak_per_h=1.0)
    found = envelope(lines=lines, air_w_per_k=air, held_wh_per_k=0.0)
    assert found.ua_w_per_k == pytest.approx(42.538, rel=1e-3)
    assert found.leak_w_per_k == pytest.approx(4.42, rel=1e-3)
    assert 35.0 * (found.ua_w_per_k + found.leak_w_per_k) == pytest.approx(1643.5, rel=1e-3)


@pytest.mark.parametrize(
    ("curve", "wet_degc", "dry_degc", "capacity", "energy"),
    [
        # Fits of the NREL window-unit tests (Winkler and others 2013) and of the EnergyPlus
        # example file, recomputed from the published coefficients.
        pytest.param("room unit", 19.444, 35.0, 0.99466, 0.99905, id="rating point"),
        pytest.param("room unit", 16.1, 26.667, 0.95208, 0.95511, id="mild"),
        pytest.param("room unit", 19.444, 46.1, 0.86257, 1.33736, id="hot"),
        pytest.param("split", 19.444, 35.0, 0.99998, 1.00016, id="split, rating point"),
        pytest.param("split", 19.444, 46.1, 0.88004, 1.29252, id="split, hot"),
    ],
)
def test_the_curves_of_an_air_conditioner(
    curve: str, wet_degc: float, dry_degc: float, capacity: float, energy: float
) -> None:
    told = dx_curve(curve)
    for six, expected in ((told.capacity_factor, capacity), (told.input_factor, energy)):
        found = curve_factor(six_factor=six, wet_degc=wet_degc, dry_degc=dry_degc)
        assert found == pytest.approx(expected, abs=1e-4)


@pytest.mark.parametrize("curve", ["room unit", "split", "inverter split"])
def test_every_curve_is_one_at_the_rating_point(curve: str) -> None:
    """AHRI 210/240 and ASHRAE 16: 19.44 degC wet bulb inside, 35 degC outside."""
    told = dx_curve(curve)
    for six in (told.capacity_factor, told.input_factor):
        assert curve_factor(six_factor=six, wet_degc=19.444, dry_degc=35.0) == pytest.approx(
            1.0, abs=0.01
        )


def test_a_quarter_of_a_13500_unit() -> None:
    """Hand: 74 degF and 50 % inside, 80 degF outside; 25 % duty is practice without a source."""
    moisture = humidity_ratio(vapour_pa=0.5 * saturation_pa(air_degc=23.333))
    wet = wet_bulb_degc(air_degc=23.333, moisture_ratio=moisture)
    assert wet == pytest.approx(16.520, rel=1e-3)
    curve = dx_curve("room unit")
    capacity_w = 3956.459 * curve_factor(
        six_factor=curve.capacity_factor, wet_degc=wet, dry_degc=26.667
    )
    assert capacity_w == pytest.approx(3820.0, rel=1e-3)
    energy = curve_factor(six_factor=curve.input_factor, wet_degc=wet, dry_degc=26.667)
    full_w = 1500.0 * capacity_w / 3956.459 * energy
    assert full_w == pytest.approx(1351.0, rel=2e-3)
    held = duty(load_w=0.25 * capacity_w, capacity_w=capacity_w, cycling_frac=curve.cycling_frac)
    assert full_w * held.running_frac == pytest.approx(404.0, rel=2e-3)
    assert full_w * held.running_frac * 24.0 / 1000.0 == pytest.approx(9.71, rel=2e-3)


def test_a_cycling_unit() -> None:
    """Hand, EnergyPlus cycling model: 1200 W of 3600 W."""
    held = duty(load_w=1200.0, capacity_w=3600.0, cycling_frac=0.22)
    assert held.load_ratio == pytest.approx(0.3333, abs=1e-4)
    assert held.part_load_frac == pytest.approx(0.8533, rel=1e-3)
    assert held.running_frac == pytest.approx(0.3906, rel=1e-3)


def test_dry_air_is_moved_into_the_range_of_a_curve() -> None:
    assert within_degc(curve=dx_curve("split"), wet_degc=5.0, dry_degc=50.0) == (12.78, 46.11)


def test_the_fuel_of_a_heater() -> None:
    """Hand: 2 kW at 83 %, 35.8 MJ/L; fuel values of the AFDC and GREET."""
    used = fuel_l_per_h(output_w=2000.0, efficiency_frac=0.83, heat_mj_per_l=35.8)
    assert used == pytest.approx(0.2423, rel=1e-3)
    assert used / 2.0 == pytest.approx(0.1212, rel=1e-3)
    assert fuel_heat("LPG").heat_mj_per_l == pytest.approx(23.482, rel=1e-3)
    assert fuel_heat("LPG").heat_wh_per_l == pytest.approx(6522.7, rel=1e-3)
    assert fuel_heat("petrol").heat_mj_per_l == pytest.approx(32.356, rel=1e-3)
    assert fuel_heat("petrol").heat_wh_per_l == pytest.approx(8987.8, rel=1e-3)


def test_the_time_of_a_heat_up() -> None:
    """Hand, t = C / H ln(P / (P - H dT)): 250 kJ/K, 60 W/K, 3 kW, 35 K."""
    found = heat_up_h(power_w=3000.0, loss_w_per_k=60.0, held_wh_per_k=250e3 / 3600.0, rise_k=35.0)
    assert found == pytest.approx(1.393, rel=2e-3)


def test_the_water_of_burnt_propane() -> None:
    """Stoichiometry: C3H8 + 5 O2 gives 4 H2O, 1.6342 kg/kg; half an hour of 2 kW: 126.9 g."""
    molar = 4.0 * 18.01528 / 44.0956
    assert fuel_heat("LPG").water_ratio == pytest.approx(molar, rel=1e-3)
    found = burner_water_kg(burnt_wh=1000.0, heat_mj_per_kg=46.35, water_ratio=molar)
    assert found == pytest.approx(0.1269, rel=2e-3)


def test_the_sun_through_a_windscreen() -> None:
    """Hand, A SHGC I IAC; SHGC of 6 mm green glass: ASHRAE 2009 ch. 15 table 10."""
    given_w = [
        sun_gain_w(area_m2=1.5, shgc_frac=0.54, sun_w_per_m2=600.0, passes_frac=passes)
        for passes in (1.0, 0.35)
    ]
    assert given_w == pytest.approx([486.0, 170.1], rel=1e-3)


@pytest.mark.parametrize(
    ("air_degc", "share", "dew", "wet", "moisture"),
    [
        # psychrolib 2.5.0, ASHRAE Handbook of Fundamentals 2017 ch. 1, 101 325 Pa.
        (20.0, 0.5, 9.272, 13.783, 0.007262),
        (20.0, 0.7, 14.367, 16.441, 0.010214),
        (25.0, 0.6, 16.701, 19.471, 0.011895),
        (5.0, 0.8, 1.841, 3.588, 0.004314),
        (-10.0, 0.8, -12.490, -10.648, 0.001279),
    ],
)
def test_states_of_moist_air(
    air_degc: float, share: float, dew: float, wet: float, moisture: float
) -> None:
    pressure = share * saturation_pa(air_degc=air_degc)
    found = humidity_ratio(vapour_pa=pressure)
    assert found == pytest.approx(moisture, rel=1e-3)
    assert dew_degc(vapour_pa=pressure) == pytest.approx(dew, abs=2e-3)
    assert wet_bulb_degc(air_degc=air_degc, moisture_ratio=found) == pytest.approx(wet, abs=2e-3)
    assert vapour_pa(moisture_ratio=found) == pytest.approx(pressure, rel=1e-9)


@pytest.mark.parametrize(
    ("air_degc", "expected_pa"),
    [(-20, 103.26), (0, 611.15), (10, 1228.00), (20, 2338.80), (30, 4246.03), (70, 31197.90)],
)
def test_saturated_vapour(air_degc: float, expected_pa: float) -> None:
    """psychrolib 2.5.0."""
    assert saturation_pa(air_degc=air_degc) == pytest.approx(expected_pa, rel=1e-4)


@given(
    air_degc=some.floats(-30.0, 50.0),
    share=some.floats(0.05, 1.0),
    pressure_pa=some.floats(70_000.0, 105_000.0),
)
def test_moist_air_agrees_with_an_open_library(
    air_degc: float, share: float, pressure_pa: float
) -> None:
    """psychrolib over a range of air, humidity and height; within 0.02 K and 1e-4."""
    pressure = share * saturation_pa(air_degc=air_degc)
    assert saturation_pa(air_degc=air_degc) == pytest.approx(
        psychrolib.GetSatVapPres(air_degc), rel=1e-6
    )
    moisture = humidity_ratio(vapour_pa=pressure, pressure_pa=pressure_pa)
    assert moisture == pytest.approx(
        psychrolib.GetHumRatioFromRelHum(air_degc, share, pressure_pa), rel=1e-4, abs=1e-7
    )
    assert dew_degc(vapour_pa=pressure) == pytest.approx(
        psychrolib.GetTDewPointFromVapPres(air_degc, pressure), abs=0.02
    )
    assert wet_bulb_degc(
        air_degc=air_degc, moisture_ratio=moisture, pressure_pa=pressure_pa
    ) == pytest.approx(
        psychrolib.GetTWetBulbFromHumRatio(air_degc, moisture, pressure_pa), abs=0.02
    )


@pytest.mark.parametrize(
    ("water_degc", "expected_mj", "within"),
    [(0, 2.5009, 1e-3), (20, 2.4535, 1e-3), (40, 2.4060, 1e-3), (100, 2.2564, 4e-3)],
)
def test_latent_heat(water_degc: float, expected_mj: float, within: float) -> None:
    """CoolProp 8 (IAPWS-95); the straight line of ASHRAE is 0.3 % high at the boil."""
    found = latent_j_per_kg(water_degc=water_degc) / 1e6
    assert found == pytest.approx(expected_mj, rel=within)


@pytest.mark.parametrize(
    ("air_m3_per_h", "moisture", "dew"),
    [(10, 0.010061, 14.14), (20, 0.006728, 8.16), (30, 0.005617, 5.56), (60, 0.004506, 2.45)],
)
def test_two_sleepers_and_their_vapour(air_m3_per_h: float, moisture: float, dew: float) -> None:
    """Hand, steady balance: 40 g/h each, outside 0 degC at 90 %, density 1.2."""
    outside = humidity_ratio(vapour_pa=0.9 * saturation_pa(air_degc=0.0))
    found = balanced_ratio(outside_ratio=outside, vapour_g_per_h=80.0, air_m3_per_h=air_m3_per_h)
    assert found == pytest.approx(moisture, rel=1e-2)
    assert dew_degc(vapour_pa=vapour_pa(moisture_ratio=found)) == pytest.approx(dew, abs=0.1)


def test_carbon_dioxide_of_people() -> None:
    """EnergyPlus default 3.82e-8 m3/s for each watt: 126 W give 0.00481 L/s; hand, 12 m3."""
    seated = awake(room_degc=22.0)
    assert seated.co2_l_per_h / 3600.0 / 115.0 * 126.0 == pytest.approx(0.00481, rel=1e-3)
    rise = sealed_rise_ppm(co2_l_per_h=2 * 0.0039 * 3600.0, air_m3=12.0, hours_h=1.0)
    assert rise == pytest.approx(2340.0, rel=1e-3)
    assert (5000.0 - 420.0) / rise == pytest.approx(1.957, rel=1e-3)


@pytest.mark.parametrize(
    ("room_degc", "sensible_w", "latent_g_per_h"),
    [(20, 90, 36.7), (22, 80, 51.4), (24, 75, 58.8), (26, 65, 73.5)],
)
def test_the_heat_of_a_seated_adult(
    room_degc: float, sensible_w: float, latent_g_per_h: float
) -> None:
    """Jones, Air Conditioning Engineering, 5th edition, table 7.16."""
    found = awake(room_degc=room_degc)
    assert found.sensible_w == pytest.approx(sensible_w, rel=1e-9)
    assert found.latent_g_per_h == pytest.approx(latent_g_per_h, rel=2e-3)
