"""The kernel against solutions in closed form and published figures of a simple hourly method."""

import cmath
import math

import numpy as np
import psychrolib
import pytest

from coachwright.climate.model import HOURS
from coachwright.living.given import AirHeater
from coachwright.living.given_body import Body, Layer, Plane, Room, Surface, Window
from coachwright.living.kernel_physics import cooling, wet_bulb_degc
from coachwright.living.modes import Modes, modes
from coachwright.living.network import Network, network
from coachwright.living.simulate import prepare, simulate
from coachwright.living.vapour import by_enthalpy_table, saturated_table
from coachwright.living.window_nodes import pane_films
from tests.support.boxes import air_box, box, day, seasons, van
from tests.support.steady_sky import steady_sky

COLD = steady_sky(-10.0)


def test_a_lumped_body_cools_along_an_exponential() -> None:
    """E20: C 250 kJ/K, H 60 W/K, from 20 towards −10 degC: 2.6442 degC after an hour (lumped
    capacitance, hand calculation); tolerance 1e-3 K, the step is exact.
    """
    given = air_box(heat_j_per_k=250e3, loss_w_per_k=60.0)
    run = simulate(given, COLD, days=1, start_degc=20.0, series=True)
    assert run.nodes_degc["cabin"][5] == pytest.approx(2.6442, abs=1e-3)


def test_a_lumped_body_follows_a_swing_smaller_and_later() -> None:
    """E21: the same body, swing of 10 K a day: 9.5703 K, 1.1238 h later (first-order filter).

    Hours are joined by straight lines, which takes 0.57 % of a daily swing: (sin x / x)² with
    x = π / 24; tolerance 1e-3 beyond that, 0.01 h.
    """
    clock = (np.arange(HOURS) + 0.5) * 2.0 * np.pi / 24.0
    given = air_box(heat_j_per_k=250e3, loss_w_per_k=60.0)
    run = simulate(given, steady_sky(10.0 * np.cos(clock)), days=30, series=True, step_min=1.0)
    last = run.nodes_degc["cabin"][-1440:]
    at = np.exp(-2j * np.pi * np.arange(1, 1441) / 1440.0)
    swing = 2.0 * np.mean(last * at)
    joined = (math.sin(math.pi / 24.0) / (math.pi / 24.0)) ** 2
    assert abs(swing) / joined == pytest.approx(9.5703, rel=1e-3)
    assert -cmath.phase(swing) * 24.0 / (2.0 * math.pi) == pytest.approx(1.1238, abs=0.01)


def test_a_body_heats_up_in_the_time_of_its_logarithm() -> None:
    """E22: 3000 W from −15 to 20 degC outside −15: 1.393 h (hand calculation, EN 1646-1 grade 3
    asks for 4 h); tolerance 2e-3.
    """
    given = air_box(
        heat_j_per_k=250e3,
        loss_w_per_k=60.0,
        heater=AirHeater(name="heater", most_w=3000.0),
        seasons=seasons(day(heat_degc=40.0)),
    )
    run = simulate(given, steady_sky(-15.0), days=1, start_degc=-15.0, series=True, step_min=1.0)
    reached = np.interp(20.0, run.nodes_degc["cabin"][:180], np.arange(1, 181) / 60.0)
    assert reached == pytest.approx(1.393, rel=2e-3)


CONCRETE = Layer(
    name="concrete",
    thickness_mm=600.0,
    conductivity_w_per_m_k=1.4,
    density_kg_per_m3=2300.0,
    heat_j_per_kg_k=900.0,
)


def _slab(layer: Layer, refined: int = 1) -> Network:
    wall = Surface(
        name="wall",
        area_m2=1.0,
        layers=(layer,),
        plane=Plane(tilt_deg=90.0, sunlit=False),
        emittance_frac=0.0,
        inner_emittance_frac=0.0,
        outer_film_w_per_m2k=1e6,
        inner_film_w_per_m2k=8.0,
    )
    body = Body(rooms=(Room(name="cabin", volume_m3=1.0, leak_per_h=0.0),), surfaces=(wall,))
    return network(body=body, wind_m_per_s=0.0, pressure_pa=101325.0, shut=False, refined=refined)


def test_a_thick_wall_cools_as_a_half_infinite_solid() -> None:
    """erf(x / 2√(a t)) (Carslaw and Jaeger); at 25 cells over 0.6 m within 1 % of the step."""
    made = _slab(CONCRETE)
    step = modes(network=made, step_s=600.0, radiant_room=0)
    cells = [place for place, name in enumerate(made.names) if "concrete" in name]
    amounts = step.into @ np.full(step.into.shape[1], 1.0)
    drive = np.zeros(made.driven.shape[1] + 2)
    for _ in range(18):
        amounts = step.stay * amounts + step.gain * (step.forced @ drive)
    found = (step.at_all @ amounts)[cells]
    depth_m = (np.arange(len(cells)) + 0.5) * 0.6 / len(cells)
    diffusivity = 1.4 / (2300.0 * 900.0)
    expected = [math.erf(x / (2.0 * math.sqrt(diffusivity * 10800.0))) for x in depth_m]
    half = len(cells) // 2
    assert found[:half] == pytest.approx(expected[:half], abs=0.01)


def test_a_wall_passes_a_daily_swing_as_its_transmission_matrix_says() -> None:
    """Periodic transmittance of a homogeneous slab by complex hyperbolic functions
    (Carslaw and Jaeger; ISO 13786); 200 mm of concrete, within 1 % and 0.1 h.
    """
    layer = Layer(
        name="concrete",
        thickness_mm=200.0,
        conductivity_w_per_m_k=1.4,
        density_kg_per_m3=2300.0,
        heat_j_per_kg_k=900.0,
    )
    made = _slab(layer)
    pulse = 2j * math.pi / 86400.0
    fixed = made.links_w_per_k.astype(complex) + pulse * np.diag(made.heat_j_per_k)
    air = made.air[0]
    fixed[air, :] = 0.0
    fixed[air, air] = 1.0
    driven = made.driven[:, 0].astype(complex)
    driven[air] = 0.0
    at = np.linalg.solve(fixed, driven)
    found = 8.0 * at[made.names.index("wall")]
    grown = cmath.sqrt(pulse * 2300.0 * 900.0 / 1.4) * 0.2
    z = cmath.sinh(grown) / (cmath.sqrt(pulse * 2300.0 * 900.0 / 1.4) * 1.4)
    expected = 1.0 / (z + cmath.cosh(grown) / 8.0 + cmath.cosh(grown) / 1e6)
    assert abs(found) == pytest.approx(abs(expected), rel=0.01)
    late = (cmath.phase(expected) - cmath.phase(found)) * 24.0 / (2.0 * math.pi)
    assert late == pytest.approx(0.0, abs=0.1)


@pytest.mark.parametrize(
    ("layers", "inside_m2k_per_w", "expected_w_per_m2k"),
    [
        ((("steel", 0.9, 50.0), ("foam", 25.0, 0.0235), ("ply", 3.0, 0.13)), 0.13, 0.79559),
        ((("steel", 0.9, 50.0), ("foam", 50.0, 0.0235), ("ply", 3.0, 0.13)), 0.10, 0.43654),
        ((("steel", 0.9, 50.0),), 0.13, 5.8817),
    ],
)
def test_a_wall_loses_what_its_resistances_say(
    layers: tuple[tuple[str, float, float], ...],
    inside_m2k_per_w: float,
    expected_w_per_m2k: float,
) -> None:
    """E01, E02, E04 (ISO 6946 resistance sum, hand calculation), films all convective; 1e-3."""
    wall = Surface(
        name="wall",
        area_m2=10.0,
        layers=tuple(
            Layer(
                name=name,
                thickness_mm=thick_mm,
                conductivity_w_per_m_k=conducts,
                density_kg_per_m3=500.0,
                heat_j_per_kg_k=1000.0,
            )
            for name, thick_mm, conducts in layers
        ),
        plane=Plane(tilt_deg=90.0, sunlit=False),
        emittance_frac=0.0,
        inner_emittance_frac=0.0,
        outer_film_w_per_m2k=25.0,
        inner_film_w_per_m2k=1.0 / inside_m2k_per_w,
    )
    body = Body(rooms=(Room(name="cabin", volume_m3=1.0, leak_per_h=0.0),), surfaces=(wall,))
    assert _steady_w_per_k(body) / 10.0 == pytest.approx(expected_w_per_m2k, rel=1e-3)


@pytest.mark.parametrize("expected_w_per_m2k", [5.91, 5.7803, 2.5352, 2.73, 1.53])
def test_a_window_loses_what_its_u_says(expected_w_per_m2k: float) -> None:
    """U of E09, E10 and of the glazing table (ASHRAE Fundamentals 2009 ch. 15): films and pane
    are split so that their sum is the U told; 1e-3 as radiation in the room has its own node.
    """
    window = Window(
        name="pane",
        area_m2=1.0,
        plane=Plane(tilt_deg=90.0, sky_frac=0.5),
        u_w_per_m2k=expected_w_per_m2k,
        shgc_frac=0.7,
        transmitted_frac=0.6,
    )
    outer, own, inner = pane_films(window)
    assert 1.0 / (1.0 / outer + own + 1.0 / inner) == pytest.approx(expected_w_per_m2k, rel=1e-9)


def _steady_w_per_k(body: Body) -> float:
    made = network(body=body, wind_m_per_s=0.0, pressure_pa=101325.0, shut=False)
    held = made.links_w_per_k.copy()
    air = made.air[0]
    held[air, :] = 0.0
    held[air, air] = 1.0
    source = np.zeros(len(made.names))
    source[air] = 1.0
    at = np.linalg.solve(held, source)
    return float(made.links_w_per_k[air] @ at)


def _simple_hourly(
    *,
    opaque_w_per_k: float,
    window_w_per_k: float,
    fresh_w_per_k: float,
    floor_m2: float,
    inner_m2: float,
    held_j_per_m2_k: float,
) -> tuple[Network, Modes]:
    """Lay the network of the simple hourly method by hand: mass, surfaces, air."""
    h_ms, h_is = 9.1 * 2.5 * floor_m2, 3.45 * inner_m2
    links = np.zeros((3, 3))
    for one, other, w_per_k in ((0, 1, h_is), (1, 2, h_ms)):
        links[one, one] += w_per_k
        links[other, other] += w_per_k
        links[one, other] -= w_per_k
        links[other, one] -= w_per_k
    driven = np.zeros((3, 3))
    for node, w_per_k in ((0, fresh_w_per_k), (1, window_w_per_k), (2, opaque_w_per_k)):
        links[node, node] += w_per_k
        driven[node, 0] = w_per_k
    made = Network(
        names=("air", "surfaces", "mass"),
        heat_j_per_k=np.array([0.0, 0.0, held_j_per_m2_k * floor_m2]),
        links_w_per_k=links,
        driven=driven,
        lit=(),
        air=(0,),
        star=(1,),
        seen=np.zeros((1, 3, 3)),
        seen_area_m2=np.zeros((1, 3)),
    )
    return made, modes(network=made, step_s=3600.0, radiant_room=0)


def _hour(
    made: Network,
    step: Modes,
    *,
    start_degc: float,
    outside_degc: float,
    flows_w: tuple[float, float, float],
) -> tuple[float, float, float, float]:
    """Return the mass after an hour, and means of mass, surfaces and air; flows as its equations
    share them: into air, surfaces, mass.  The method moves the mass by the trapezoid, so here too:
    this tries the network; that the kernel's own step is exact is tried above.
    """
    to_air, to_surfaces, to_mass = flows_w
    drive = np.array([outside_degc, 0.0, 0.0, to_air, to_surfaces])
    begun = step.into @ np.array([start_degc])
    forced = step.forced @ drive + step.out_of.T @ np.array([to_mass])
    half = 1800.0 * step.rate_per_s
    ended = (begun * (1.0 - half) + 3600.0 * forced) / (1.0 + half)
    mean = (begun + ended) / 2.0
    nodes = step.at_all @ mean + step.at_once @ drive
    return float((step.out_of @ ended)[0]), float(nodes[2]), float(nodes[1]), float(nodes[0])


ROOM = {
    "opaque_w_per_k": 0.2 * 1.69,
    "window_w_per_k": 1.1 * 13.5,
    "fresh_w_per_k": 1200.0 * 106.33 * 2.0 / 3600.0,
    "floor_m2": 34.3,
    "inner_m2": 142.38,
    "held_j_per_m2_k": 165e3,
}
VAN = {
    "opaque_w_per_k": 34.0 * 0.8,
    "window_w_per_k": 3.0 * 5.78,
    "fresh_w_per_k": 1200.0 * 13.0 * 1.0 / 3600.0,
    "floor_m2": 8.0,
    "inner_m2": 37.6,
    "held_j_per_m2_k": 40e3,
}


def _shared(body: dict[str, float], inner_w: float, sun_w: float) -> tuple[float, float, float]:
    mass_frac = 2.5 * body["floor_m2"] / body["inner_m2"]
    lost_frac = body["window_w_per_k"] / (9.1 * body["inner_m2"])
    left_w = 0.5 * inner_w + sun_w
    return 0.5 * inner_w, (1.0 - mass_frac - lost_frac) * left_w, mass_frac * left_w


def test_an_hour_without_plant_is_that_of_the_simple_hourly_method() -> None:
    """R01 (ISO 13790 annex C; published unit test of an open 5R1C code): mass 22.334 mean and
    22.668 next, surfaces 22.138, air 20.616 degC; 0.005 K.
    """
    made, step = _simple_hourly(**ROOM)
    flows = _shared(ROOM, 10.0, 2000.0)
    found = _hour(made, step, start_degc=22.0, outside_degc=10.0, flows_w=flows)
    assert found == pytest.approx((22.6680, 22.3340, 22.1376, 20.6158), abs=0.005)


@pytest.mark.parametrize(
    ("body", "inner_w", "sun_w", "outside_degc", "start_degc", "want_degc", "free_degc", "need_w"),
    [
        (ROOM, 10.0, 4000.0, 25.0, 24.0, 26.0, 26.7590, -264.752),
        (ROOM, 10.0, 2000.0, 10.0, 20.0, 20.0, 19.0594, 328.094),
        (VAN, 150.0, 0.0, -10.0, 10.0, 20.0, 5.2864, 955.46),
    ],
    ids=["R02 cooling", "R03 heating", "R04 van"],
)
def test_the_need_of_an_hour_is_that_of_the_simple_hourly_method(  # noqa: PLR0917
    body: dict[str, float],
    inner_w: float,
    sun_w: float,
    outside_degc: float,
    start_degc: float,
    want_degc: float,
    free_degc: float,
    need_w: float,
) -> None:
    """R02 to R04 (ISO 13790 annex C); 0.01 K and 0.1 %, as the vectors are rounded."""
    made, step = _simple_hourly(**body)
    to_air, to_surfaces, to_mass = _shared(body, inner_w, sun_w)

    def air(heat_w: float) -> float:
        flows = (to_air + heat_w, to_surfaces, to_mass)
        found = _hour(made, step, start_degc=start_degc, outside_degc=outside_degc, flows_w=flows)
        return found[3]

    assert air(0.0) == pytest.approx(free_degc, abs=0.01)
    found_w = 100.0 * (want_degc - air(0.0)) / (air(100.0) - air(0.0))
    assert found_w == pytest.approx(need_w, rel=1e-3)


@pytest.mark.parametrize("at_degc", [12.0, 20.0, 26.67, 38.0])
@pytest.mark.parametrize("humidity_frac", [0.15, 0.5, 0.95])
def test_the_wet_bulb_is_that_of_the_psychrometric_library(
    at_degc: float, humidity_frac: float
) -> None:
    """psychrolib (ASHRAE Fundamentals 2017 ch. 1), within 0.1 K."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    ratio = psychrolib.GetHumRatioFromRelHum(at_degc, humidity_frac, 101325.0)
    expected = psychrolib.GetTWetBulbFromHumRatio(at_degc, ratio, 101325.0)
    tables = saturated_table(pressure_pa=101325.0), by_enthalpy_table(pressure_pa=101325.0)
    assert wet_bulb_degc(*tables, at_degc, ratio) == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize(
    ("wet_degc", "outside_degc", "capacity_ratio", "input_ratio"),
    [
        (19.444, 35.0, 0.99466, 0.99905),
        (16.1, 26.667, 0.95208, 0.95511),
        (19.444, 46.1, 0.86257, 1.33736),
    ],
)
def test_the_cooler_gives_what_its_curves_say(
    wet_degc: float, outside_degc: float, capacity_ratio: float, input_ratio: float
) -> None:
    """C03 to C05: laboratory tests of window units (NREL, as coded in public building programs),
    the kernel's own wet bulb included: 2e-3.
    """
    psychrolib.SetUnitSystem(psychrolib.SI)
    ratio = psychrolib.GetHumRatioFromTWetBulb(26.67, wet_degc, 101325.0)
    ready = prepare(van(), COLD)
    dry_w, wet_w, full_w, running = cooling(
        ready.numbers, ready.tables, 1e9, 26.67, ratio, outside_degc
    )
    assert running == 1.0
    assert dry_w + wet_w == pytest.approx(3000.0 * capacity_ratio, rel=2e-3)
    assert full_w == pytest.approx(1100.0 * capacity_ratio * input_ratio, rel=4e-3)


def test_two_sleepers_bring_the_air_to_its_steady_carbon_dioxide() -> None:
    """P07: 2 × 0.0039 L/s into 7 L/s: 1534 ppm (mass balance with 420 outside); 1 ppm."""
    room = Room(name="cabin", volume_m3=12.0, leak_per_h=7.0 * 3.6 / 12.0)
    sleepers = day(co2_l_per_h=2.0 * 0.0039 * 3600.0)
    given = box(Body(rooms=(room,), surfaces=()), seasons=seasons(sleepers))
    run = simulate(given, COLD, days=1, start_degc=16.0, series=True)
    assert run.rooms["cabin co2_ppm"][-1] == pytest.approx(1534.0, abs=1.0)
